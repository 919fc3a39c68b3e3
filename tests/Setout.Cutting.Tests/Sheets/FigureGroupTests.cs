using Setout.Core.Measures;
using Setout.Cutting.Sheets.Model;
using Setout.Cutting.Sheets.Search;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

public class FigureGroupTests
{
    private static FigureGroup Group(string id, GrainAxis axis, params string[] parts) => new(id, axis, [.. parts]);

    private static SheetInstance Fronts(GrainAxis axis, long along = 300, long across = 500, int count = 1, SheetStock? stock = null) =>
        Instance([Part("top", along, across, count), Part("middle", along, across, count), Part("bottom", along, across, count)], [stock ?? Stock("ply", 1220, 1000, 50)])
            with
        { Groups = [Group("bank", axis, "top", "middle", "bottom")] };

    [Fact]
    public void Groups_ThatBreakARule_SayWhichAndWhy()
    {
        SheetInstance order = Instance([Part("a", 10, 10, 2), Part("b", 10, 10, 2), Part("c", 10, 10, 3), Part("d", 10, 10, 2, GrainRule.Free)], [Stock("ply", 1000, 1000)]);
        string Thrown(params FigureGroup[] groups) => Assert.Throws<ArgumentException>(() => order with { Groups = [.. groups] }).Message;
        Assert.Contains("group g names 1 parts", Thrown(Group("g", GrainAxis.Along, "a")));
        Assert.Contains("empty id", Thrown(Group("", GrainAxis.Along, "a", "b")));
        Assert.Contains("Two figure groups have the id g", Thrown(Group("g", GrainAxis.Along, "a", "b"), Group("g", GrainAxis.Along, "c", "c", "c")));
        Assert.Contains("names the part x, which there is not", Thrown(Group("g", GrainAxis.Along, "a", "x")));
        Assert.Contains("Part a is in the figure groups g and h", Thrown(Group("g", GrainAxis.Along, "a", "b"), Group("h", GrainAxis.Along, "a", "a")));
        Assert.Contains("Part d of figure group g may be turned", Thrown(Group("g", GrainAxis.Along, "a", "d")));
        Assert.Contains("cut 2 times for part a and 3 times for part c", Thrown(Group("g", GrainAxis.Along, "a", "c")));
        Assert.Contains("asked for 3 times and named 2 times", Thrown(Group("g", GrainAxis.Along, "c", "c")));
        Assert.Contains("unknown direction", Thrown(Group("g", (GrainAxis)7, "a", "b")));
    }

    [Theory]
    [InlineData(GrainAxis.Along)]
    [InlineData(GrainAxis.Across)]
    public void Solve_Group_LiesInOrderOneKerfApart(GrainAxis axis)
    {
        SheetInstance order = Fronts(axis, 300, 300);
        SheetOutcome outcome = Solve(order);
        PlacedRectangle[] parts = [.. SheetFace.Flatten(order, outcome.Layout.Sheets[0]).Where(r => r.Kind == FaceKind.Part)];
        Assert.Equal(["top", "middle", "bottom"], parts.Select(p => p.PartId));
        Assert.Equal([Mm(0), Mm(303), Mm(606)], parts.Select(p => axis == GrainAxis.Along ? p.Place.FromAlong : p.Place.FromAcross));
        Assert.Equal(OutcomeStatus.Proven, outcome.Status);
    }

    [Fact]
    public void Solve_BlockAtStockSize_FitsAndOneTickLongerIsRefusedForAllMembers()
    {
        // Three of 300 and two kerfs are 906 along.
        SheetInstance With(Length along) => Fronts(GrainAxis.Along, stock: new("ply", along, Mm(500), EdgeTrim.None, new Money(50), null));
        Assert.Equal(new Division(GrainAxis.Along, [Slice(300, Lies("top")), Slice(300, Lies("middle")), Slice(300, Lies("bottom"))], Length.Zero),
            Assert.Single(Solve(With(Mm(906))).Layout.Sheets).Root);
        SheetOutcome refused = Solve(With(Mm(906) - Tick));
        Assert.Equal(OutcomeStatus.Infeasible, refused.Status);
        Assert.Equal(["top", "middle", "bottom"], refused.Reasons.Select(r => r.Subject));
        Assert.All(refused.Reasons, r => Assert.Equal(ReasonKind.FigureTooLarge, r.Kind));
        Assert.Contains("the 3 parts top, middle, bottom together (906 mm along by 500 mm across the grain, kerfs between them counted; their figure runs through) are longer than any stock", refused.Reasons[0].Words);
        Assert.Equal(3, refused.Layout.LeftOut.Length);
    }

    [Fact]
    public void Validate_BlockThatFitsOnlyTurnedOrWithoutSlack_SaysSo()
    {
        Assert.Contains("would fit as a block stock ply only if they were turned", Fronts(GrainAxis.Along, stock: Stock("ply", 500, 906)).Validate()[0].Words);
        SheetInstance tight = Fronts(GrainAxis.Along, stock: Stock("ply", 906, 510)) with { Slack = Mm(1) };
        Assert.Contains("but for the slack of 1 mm", tight.Validate()[0].Words);
    }

    [Fact]
    public void Of_BlocksOfWhichTwoDoNotFit_CountAsBlocks()
    {
        // Two blocks of 606 and a kerf need 1215; a sheet holds five single fronts, but one block only.
        SheetInstance grouped = Fronts(GrainAxis.Along, 200, 300, 3, Stock("ply", 1214, 590, 10));
        Assert.Equal(2, SheetBounds.Of(grouped with { Groups = [] })!.Count);
        Assert.Equal(3, SheetBounds.Of(grouped)!.Count);
        SheetOutcome outcome = Solve(grouped);
        Assert.Equal((new Money(30), OutcomeStatus.Proven), (outcome.Score.Cost, outcome.Status));
    }

    [Fact]
    public void Solve_MembersThatDiffer_AreTrimmedFromTheBlock()
    {
        SheetInstance order = Instance([Part("wide", 300, 500), Part("narrow", 200, 380), Part("peg", 100, 80, 4)], [Stock("ply", 1220, 600, 50)])
            with
        { Groups = [Group("row", GrainAxis.Along, "narrow", "wide")] };
        SheetOutcome outcome = Solve(order);
        Assert.Equal((1, 0), (outcome.Score.Sheets, outcome.Layout.LeftOut.Length));
        PlacedRectangle[] parts = [.. SheetFace.Flatten(order, outcome.Layout.Sheets[0]).Where(r => r.PartId is "wide" or "narrow")];
        Assert.Equal(["narrow", "wide"], parts.Select(p => p.PartId));
        Assert.Equal(parts[0].Place.FromAcross, parts[1].Place.FromAcross);
    }

    [Fact]
    public void Solve_EqualFrontsNamedThreeTimes_AreCutAsOftenAsTheCountHoldsThem()
    {
        SheetInstance order = Instance([Part("front", 300, 500, 6)], [Stock("ply", 1000, 1010, 50)]) with { Groups = [Group("bank", GrainAxis.Along, "front", "front", "front")] };
        SheetOutcome outcome = Solve(order);
        Assert.Equal((1, OutcomeStatus.Proven), (outcome.Score.Sheets, outcome.Status));
        Assert.Equal(6, SheetFace.Flatten(order, outcome.Layout.Sheets[0]).Count(r => r.PartId == "front"));
    }

    [Fact]
    public void Model_Group_IsOneTypeThatCannotTurn()
    {
        var model = new SheetModel(Fronts(GrainAxis.Along, 300, 500, 4));
        PartType type = Assert.Single(model.Types);
        Assert.Equal((Mm(909).Ticks, Mm(503).Ticks, false, 4), (type.Along * model.Step, type.Across * model.Step, type.MayTurn, type.Count));
        Assert.Equal((0, 1, 1), (type.StagesBelow(GrainAxis.Along), type.StagesBelow(GrainAxis.Across), type.StagesBelow(null)));
    }

    [Theory]
    [InlineData(GrainAxis.Along, 380, null)]
    [InlineData(GrainAxis.Along, 380, 4)]
    [InlineData(GrainAxis.Along, 500, 3)]
    [InlineData(GrainAxis.Across, 380, null)]
    [InlineData(GrainAxis.Across, 500, 3)]
    public void Write_BlockInEveryPlace_TakesTheStagesTheModelSays(GrainAxis axis, long narrow, int? most)
    {
        // A block and a plain part: side by side, one behind the other, and each of those within a strip and a column.
        SheetInstance order = Instance(
            axis == GrainAxis.Along ? [Part("a", 300, 500), Part("b", 200, narrow), Part("c", 150, 450)] : [Part("a", 500, 300), Part("b", narrow, 200), Part("c", 450, 150)],
            [Stock("ply", 1397, 1397)], 3, KeepRule.Nothing) with
        { Groups = [Group("g", axis, "a", "b")], MostStages = most };
        var model = new SheetModel(order);
        int group = Array.FindIndex(model.Types, t => t.Figure is not null);
        Node Block() => Written.Lies(model, "g");
        Node Plain() => Written.Lies(model, "c");
        (Node Tree, GrainAxis Parent, int Depth)[] trees =
        [
            (Written.Along(Written.Across(Block()), Plain()), GrainAxis.Across, 2),
            (Written.Across(Written.Along(Block()), Plain()), GrainAxis.Along, 2),
            (Written.Along(Written.Across(Block(), Plain())), GrainAxis.Across, 2),
            (Written.Across(Written.Along(Block(), Plain())), GrainAxis.Along, 2),
        ];
        foreach ((Node tree, GrainAxis parent, int depth) in trees)
        {
            LaidSheet laid = new TreeWriter(model).Write(0, tree);
            Assert.Empty(SheetChecker.Check(order with { MostStages = null }, new([laid], [])));
            Assert.True(Math.Max(Deepest(laid.Root, "a"), Deepest(laid.Root, "b")) <= depth + model.Types[group].StagesBelow(parent), $"{laid.Root} for {axis} in {parent}");
        }
    }

    [Theory]
    [InlineData(500, 2)]
    [InlineData(380, 3)]
    public void Write_FewStagesAndSlack_TrimsMembersOneByOne(long narrow, int most)
    {
        // Between two crosscuts of its own direction, with slack beyond it: no rip before the members are apart.
        SheetInstance order = Instance([Part("a", 300, 500), Part("b", 200, narrow), Part("c", 150, 500)], [Stock("ply", 1000, 510)], 3, KeepRule.Nothing)
            with
        { Groups = [Group("g", GrainAxis.Along, "a", "b")], MostStages = most, Slack = Mm(10) };
        var model = new SheetModel(order);
        LaidSheet laid = new TreeWriter(model).Write(0, Written.Along(Written.Lies(model, "g"), Written.Lies(model, "c")));
        Assert.Empty(SheetChecker.Check(order with { MostStages = 2 }, new([laid], [])));
    }

    [Theory]
    [InlineData(GrainAxis.Along, 0)]
    [InlineData(GrainAxis.Across, 0)]
    [InlineData(GrainAxis.Along, 10)]
    [InlineData(GrainAxis.Across, 10)]
    public void Solve_MembersDifferAndTwoStages_EachIsTrimmedFromTheFullSheet(GrainAxis axis, long slack)
    {
        // Two blocks of 503 and a kerf are 1009 of 1100 less the slack: one sheet, nothing beside a block, the peg beyond both.
        SheetPart Lying(string id, long inLine, long other, int count) => axis == GrainAxis.Along ? Part(id, inLine, other, count) : Part(id, other, inLine, count);
        SheetInstance order = Instance([Lying("a", 300, 400, 2), Lying("b", 200, 310, 2), Lying("peg", 60, 90, 1)],
            [axis == GrainAxis.Along ? Stock("ply", 1100, 600, 50) : Stock("ply", 600, 1100, 50)]) with
        { Groups = [Group("g", axis, "a", "b")], MostStages = 2, Slack = Mm(slack) };
        SheetOutcome outcome = Solve(order);
        Assert.Equal((OutcomeStatus.Proven, 1), (outcome.Status, outcome.Score.Sheets));
        Division root = Assert.IsType<Division>(outcome.Layout.Sheets[0].Root);
        Assert.Equal((axis, 2, 2), (root.Axis, Deepest(root, "a"), Deepest(root, "b")));
    }

    [Fact]
    public void Solve_BlockOfMembersThatDifferIsOneTickTooLong_IsRefusedAtTwoStagesToo()
    {
        SheetInstance With(Length along) => Instance([Part("a", 300, 400), Part("b", 200, 310)], [new("ply", along, Mm(600), EdgeTrim.None, new Money(50), null)])
            with
        { Groups = [Group("g", GrainAxis.Along, "a", "b")], MostStages = 2 };
        Assert.Empty(Solve(With(Mm(503))).Layout.LeftOut);
        Assert.Equal(ReasonKind.FigureTooLarge, Solve(With(Mm(503) - Tick)).Reasons[0].Kind);
    }

    // Divisions on the way to this part; below zero where it does not lie.
    private static int Deepest(CutNode node, string id) => node switch
    {
        PartNode part when part.PartId == id => 0,
        Division division => 1 + division.Slices.Max(s => Deepest(s.Content, id)),
        _ => -99,
    };
}
