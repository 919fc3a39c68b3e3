using Setout.Core.Measures;
using Setout.Cutting.Sheets.Model;
using Setout.Cutting.Sheets.Search;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

public class SlackAndStagesTests
{
    private static readonly SheetStock s_ply = Stock("ply", 1000, 600, 40, null, EdgeTrim.AllRound(Mm(5)));

    private static SheetInstance Order(Length slack, params SheetPart[] parts) => Instance(parts, [s_ply]) with { Slack = slack };

    [Fact]
    public void Slack_OutOfRange_SaysWhy()
    {
        SheetInstance order = Order(Length.Zero, Part("a", 10, 10));
        Assert.Contains("The slack is -1 mm", Assert.Throws<ArgumentException>(() => order with { Slack = Mm(-1) }).Message);
        Assert.Contains("Nothing is left of stock ply, 990 mm by 590 mm once trued, if a slack of 590 mm stays free", Assert.Throws<ArgumentException>(() => order with { Slack = Mm(590) }).Message);
        Assert.Equal(Tick, (order with { Slack = Mm(590) - Tick }).UsableAcross(s_ply));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    public void MostStages_OutOfRange_SaysWhy(int stages) =>
        Assert.Contains($"At most {stages} stages", Assert.Throws<ArgumentException>(() => Order(Length.Zero, Part("a", 10, 10)) with { MostStages = stages }).Message);

    [Fact]
    public void Equals_SlackStagesGroupsOrBeforeDiffer_IsNotEqual()
    {
        SheetInstance order = Order(Length.Zero, Part("a", 10, 10), Part("b", 10, 10));
        SheetInstance[] all =
        [
            order, order with { Slack = Tick }, order with { MostStages = 3 },
            order with { Groups = [new("g", GrainAxis.Along, ["a", "b"])] }, order with { Groups = [new("g", GrainAxis.Across, ["a", "b"])] },
            order with { Before = Layout(new LaidSheet("ply", Lies("a"))) },
        ];
        Assert.Equal(all.Length, all.Distinct().Count());
        Assert.Equal(all[3], order with { Groups = [new("g", GrainAxis.Along, ["a", "b"])] });
    }

    [Fact]
    public void Validate_SlackTakesTheLastTick_SaysThatItIsTheSlack()
    {
        var top = new SheetPart("top", Mm(985), Mm(585), 1, GrainRule.Keep);
        Assert.Empty(Order(Mm(5), top).Validate());
        CuttingReason reason = Assert.Single(Order(Mm(5) + Tick, top).Validate());
        Assert.Equal((ReasonKind.PartTooLarge, "top"), (reason.Kind, reason.Subject));
        Assert.Contains("would fit stock ply, 990 mm by 590 mm once trued, but for the slack of 5.00000625 mm that stays free", reason.Words);
        Assert.Contains("which is 985 mm at most once trued and with a slack of 5 mm", Order(Mm(5), Part("rail", 991, 50)).Validate()[0].Words);
    }

    [Fact]
    public void Validate_OneStageOnly_RefusesWhatMustBeCutBothWays()
    {
        SheetInstance order = Order(Length.Zero, Part("strip", 990, 100), Part("square", 989, 100)) with { MostStages = 1 };
        CuttingReason reason = Assert.Single(order.Validate());
        Assert.Equal((ReasonKind.StagesTooFew, "square"), (reason.Kind, reason.Subject));
        Assert.Contains("takes 2 divisions there, and at most 1 may be made", reason.Words);
        Assert.Equal(2, (order with { Slack = Tick }).Validate().Length);
        SheetInstance group = Order(Length.Zero, Part("a", 400, 590), Part("b", 300, 590)) with { MostStages = 1, Groups = [new("g", GrainAxis.Along, ["a", "b"])] };
        Assert.Empty(group.Validate());
        SheetInstance uneven = Order(Length.Zero, Part("a", 400, 590), Part("b", 300, 589));
        Assert.Equal(2, (uneven with { MostStages = 1, Groups = group.Groups }).Validate().Length);
        Assert.Empty((uneven with { MostStages = 2, Groups = group.Groups }).Validate());
        SheetInstance apart = Order(Length.Zero, Part("a", 400, 580), Part("b", 300, 579)) with { MostStages = 1, Groups = group.Groups };
        Assert.Contains("take 2 divisions there", apart.Validate()[0].Words);
        Assert.Empty((apart with { MostStages = 2 }).Validate());
    }

    [Fact]
    public void Solve_Slack_CountsAsWoodThatIsNotThere()
    {
        // Two of 490 and a kerf of 3 need 983 of 990: a slack of 7 passes, a tick more takes a second sheet.
        SheetOutcome one = Solve(Order(Mm(7), Part("a", 490, 500, 2))), two = Solve(Order(Mm(7) + Tick, Part("a", 490, 500, 2)));
        Assert.Equal((1, 1, OutcomeStatus.Proven), (one.Score.Sheets, one.Bound.Count, one.Status));
        Assert.Equal((2, 2, OutcomeStatus.Proven), (two.Score.Sheets, two.Bound.Count, two.Status));
    }

    [Theory]
    [InlineData(3, 0)]
    [InlineData(2, 0)]
    [InlineData(4, 1)]
    public void Write_Slack_GoesToTheLeftOverAtTheFarEdge(long slack, long leftOver)
    {
        // The part fills what the slack leaves. Up to one kerf the slack becomes dust; beyond it the rest is waste.
        SheetOutcome outcome = Solve(Order(Mm(slack), Part("top", 990 - slack, 590 - slack)));
        Division first = Assert.IsType<Division>(outcome.Layout.Sheets[0].Root);
        Assert.Equal(leftOver == 0 ? Mm(slack) : Length.Zero, first.Dust);
        if (leftOver > 0) Assert.Equal(new(Mm(leftOver), WasteNode.Instance), first.Slices[^1]);
    }

    [Fact]
    public void Solve_SlackBesideColumns_IsRippedOffOnceNotColumnByColumn()
    {
        SheetOutcome outcome = Solve(Order(Mm(10), Part("a", 240, 580, 4)));
        Division root = Assert.IsType<Division>(Assert.Single(outcome.Layout.Sheets).Root);
        Assert.Equal((GrainAxis.Across, 2), (root.Axis, root.Slices.Length));
        Assert.Equal(Mm(580), root.Slices[0].Size);
    }

    [Theory]
    [InlineData(null, GrainAxis.Across)]
    [InlineData(3, GrainAxis.Across)]
    [InlineData(2, GrainAxis.Along)]
    public void Write_StripWorthRippingOffFirst_OnlyWhereStagesAllow(int? most, GrainAxis first)
    {
        // Columns of two rows leave a strip of 990 by 184 across the whole sheet; ripping it off first makes the second stage a third.
        SheetInstance order = Order(Length.Zero, Part("a", 300, 200, 2), Part("b", 400, 403)) with { MostStages = most };
        var model = new SheetModel(order);
        LaidSheet laid = new TreeWriter(model).Write(0, Written.Along(
            Written.Across(Written.Lies(model, "a"), Written.Lies(model, "a")), Written.Lies(model, "b")));
        Assert.Empty(SheetChecker.Check(order, new([laid], [])));
        Assert.Equal(first, Assert.IsType<Division>(laid.Root).Axis);
    }

    [Theory]
    [InlineData(597, true)]
    [InlineData(598, false)]
    public void Model_StockThatNoSumOfPartsEnds_SaysSo(long across, bool ends)
    {
        // One step of the grid is 97 and its kerf; the sheet ends on a step only if nothing of it is rounded off.
        StockType stock = Assert.Single(new SheetModel(Instance([Part("a", 97, 97)], [Stock("s", 997, across)])).Stock);
        Assert.Equal((true, ends), (stock.EndsAlong, stock.EndsAcross));
        StockType slack = Assert.Single(new SheetModel(Instance([Part("a", 97, 97)], [Stock("s", 1097, 100 + across)]) with { Slack = Mm(100) }).Stock);
        Assert.False(slack.EndsAlong || slack.EndsAcross);
        Assert.Equal(10, slack.Along);
    }
}
