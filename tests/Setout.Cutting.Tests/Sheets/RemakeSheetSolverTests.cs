// Over 200 lines: one order after another that changes under a layout, and what must stay.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

public class RemakeSheetSolverTests
{
    private static readonly SheetInstance s_order = Instance(
        [
            Part("side", 720, 560, 8), Part("deck", 764, 560, 8), Part("shelf", 760, 520, 6), Part("door", 716, 396, 8),
            Part("rail", 764, 100, 8, GrainRule.Free), Part("drawer side", 500, 150, 16, GrainRule.Free), Part("kick", 1600, 96, 2),
        ],
        [Stock("ply", 2440, 1220, 62.5m, null, EdgeTrim.AllRound(Mm(6)))]);

    private static readonly SheetOutcome s_before = Solve(s_order);

    private static SheetInstance Remade(SheetInstance order, SheetLayout? before = null) => order with { Before = before ?? s_before.Layout };

    private static SheetInstance Changed(Func<SheetPart, SheetPart?> change, SheetStock[]? stock = null) =>
        new([.. s_order.Parts.Select(change).OfType<SheetPart>()], stock is null ? s_order.Stock : [.. stock], s_order.Kerf, s_order.Keep);

    private static int Of(CutNode node, string id) => node switch
    {
        PartNode part => part.PartId == id ? 1 : 0,
        Division division => division.Slices.Sum(s => Of(s.Content, id)),
        _ => 0,
    };

    [Fact]
    public void Score_Changed_CountsSheetsAsAMultisetBetweenSheetsAndSettings()
    {
        LaidSheet a = s_before.Layout.Sheets[0], b = s_before.Layout.Sheets[^1];
        Assert.NotEqual(a, b);
        Assert.Equal(0, SheetObjective.Changed(null, Layout(a, b)));
        Assert.Equal(0, SheetObjective.Changed(Layout(a, b), Layout(b, a)));
        Assert.Equal(1, SheetObjective.Changed(Layout(a, b), Layout(a, a)));
        Assert.Equal(0, SheetObjective.Changed(Layout(a, a, b), Layout(a, a)));
        SheetScore score = s_before.Score;
        Assert.True(score with { Changed = 1 } > score with { Settings = score.Settings + 9 });
        Assert.True(score with { Changed = 9 } < score with { Sheets = score.Sheets + 1 });
    }

    [Fact]
    public void Solve_NothingChanged_GivesTheSameLayoutBack()
    {
        foreach (int seed in (int[])[1, 2, 3])
        {
            SheetOutcome again = Solve(Remade(s_order), 60_000, seed);
            Assert.Equal(s_before.Layout, again.Layout);
            Assert.Equal((0, s_before.Status), (again.Score.Changed, again.Status));
        }
    }

    [Fact]
    public void Solve_LayoutBeforeIsBetterThanTheNewOne_IsKept()
    {
        // What stands cost less than the quick layout of a search that finds nothing better.
        SheetInstance order = Instance([Part("a", 60, 40, 2)], [Stock("s", 100, 100, 10)], 0);
        var clumsy = new Clumsy();
        SheetOutcome good = Solve(order), held = new RemakeSheetSolver(clumsy).Solve(order with { Before = good.Layout }, SolverOptions.Default);
        Assert.Equal((2, 1), (clumsy.Solve(order, SolverOptions.Default).Score.Sheets, held.Score.Sheets));
        Assert.Equal(good.Layout, held.Layout);
    }

    // Four doors fill a sheet of 1203 x 803; of the backs no more than four lie on one, with wood to spare. Four sheets, whoever lays them out.
    private static SheetInstance DoorsAndBacks(int doors = 8, long lastBack = 500) => Instance(
        [Part("door", 600, 400, doors), Part("back", 500, 390, 7), Part("last back", lastBack, 390)], [Stock("ply", 1203, 803, 50)]);

    private static readonly SheetLayout s_doorsAndBacks = Solve(DoorsAndBacks()).Layout;

    [Fact]
    public void Solve_OnePartDropped_ChangesTheSheetItLayOnAndNoOther()
    {
        SheetOutcome without = Solve(Remade(DoorsAndBacks(doors: 7), s_doorsAndBacks));
        Assert.Equal((new Money(200), 4, 1), (without.Score.Cost, without.Score.Sheets, without.Score.Changed));
        Assert.Equal(3, Of(without.Layout.Sheets[3].Root, "door"));
    }

    [Fact]
    public void Solve_OnePartLarger_ChangesItsSheetAndTheOthersStay()
    {
        SheetOutcome larger = Solve(Remade(DoorsAndBacks(lastBack: 501), s_doorsAndBacks));
        Assert.Equal((new Money(200), 1), (larger.Score.Cost, larger.Score.Changed));
        LaidSheet itsOwn = Assert.Single(s_doorsAndBacks.Sheets, s => Of(s.Root, "last back") > 0);
        Assert.Equal(s_doorsAndBacks.Sheets.Remove(itsOwn), larger.Layout.Sheets[..3]);
        Assert.Equal(1, Of(larger.Layout.Sheets[3].Root, "last back"));
    }

    [Fact]
    public void Solve_SheetsAlreadyCut_TheRestKeepsItsLayout()
    {
        foreach (int cut in Enumerable.Range(0, s_before.Layout.Sheets.Length))
        {
            CutNode done = s_before.Layout.Sheets[cut].Root;
            SheetInstance rest = Changed(p => p.Count > Of(done, p.Id) ? p with { Count = p.Count - Of(done, p.Id) } : null);
            SheetLayout left = s_before.Layout with { Sheets = s_before.Layout.Sheets.RemoveAt(cut) };
            Assert.Equal(left, Solve(Remade(rest, left), 60_000).Layout);
        }
    }

    [Fact]
    public void Solve_BlankInHand_TakesThePlaceOfASheet()
    {
        // Three sheets of four shelves; one was cut in half and two of its shelves are done. Its other half is in hand.
        SheetInstance order = Instance([Part("shelf", 600, 400, 12)], [Stock("ply", 1203, 803, 50)]);
        SheetLayout before = Solve(order).Layout;
        Assert.Equal(3, before.Sheets.Length);
        SheetInstance now = Instance([Part("shelf", 600, 400, 10)], [Stock("ply", 1203, 803, 50), SheetStock.InHand("half", Mm(1203), Mm(400), EdgeTrim.None)]);
        SheetOutcome outcome = Solve(Remade(now, before));
        Assert.Equal((new Money(100), 3, 1), (outcome.Score.Cost, outcome.Score.Sheets, outcome.Score.Changed));
        Assert.Equal(["ply", "ply", "half"], outcome.Layout.Sheets.Select(s => s.StockId));
        Assert.Equal(before.Sheets[..2], outcome.Layout.Sheets[..2]);
    }

    [Fact]
    public void Solve_KeepingEverySheetWouldCostOneMore_GivesUpAsManyAsItMust()
    {
        // Four sheets of three parts where four fit; four parts more fill them without a fifth sheet, which a fifth part could not.
        SheetStock ply = Stock("ply", 400, 100, 10);
        SheetInstance loose = Instance([Part("a", 100, 100, 12)], [ply], 0);
        SheetLayout before = Layout([.. Enumerable.Repeat(new LaidSheet("ply", Crosscuts(Length.Zero,
            Slice(100, Lies("a")), Slice(100, Lies("a")), Slice(100, Lies("a")), Slice(100, WasteNode.Instance))), 4)]);
        Assert.Empty(SheetChecker.Check(loose, before));
        // By itself the order needs three sheets, so of the four loose ones none or few can stay.
        SheetOutcome three = Solve(Remade(loose, before));
        Assert.Equal((new Money(30), 3), (three.Score.Cost, three.Score.Changed));
        SheetOutcome thirteen = Solve(Remade(Instance([Part("a", 100, 100, 13)], [ply], 0), before));
        Assert.Equal((new Money(40), 1), (thirteen.Score.Cost, thirteen.Score.Changed));
        SheetOutcome fifteen = Solve(Remade(Instance([Part("a", 100, 100, 15)], [ply], 0), before));
        Assert.Equal((new Money(40), 3), (fifteen.Score.Cost, fifteen.Score.Changed));
    }

    [Fact]
    public void Solve_SheetsNoLongerSound_AreNotKept()
    {
        SheetLayout before = s_before.Layout;
        SheetInstance[] changed =
        [
            new(s_order.Parts, s_order.Stock, Mm(4), s_order.Keep),
            Changed(p => p, [s_order.Stock[0] with { Along = Mm(2500) }]),
            Changed(p => p, [s_order.Stock[0] with { Id = "birch" }]),
        ];
        foreach (SheetInstance order in changed)
        {
            SheetOutcome outcome = Solve(Remade(order, before), 60_000);
            Assert.Equal(outcome.Score.Sheets, outcome.Score.Changed);
            Assert.Empty(outcome.Layout.LeftOut);
        }
    }

    [Fact]
    public void Solve_StockOfBeforeHasALimit_KeepsNoMoreThanThereIs()
    {
        SheetInstance order = Instance([Part("a", 100, 100, 6)], [Stock("old", 200, 100, 5), Stock("new", 200, 100, 5)], 0);
        SheetLayout before = Layout([.. Enumerable.Repeat(new LaidSheet("old", Crosscuts(Length.Zero, Slice(100, Lies("a")), Slice(100, Lies("a")))), 3)]);
        SheetInstance scarce = new(order.Parts, [order.Stock[0] with { Limit = 2 }, order.Stock[1]], Length.Zero, order.Keep);
        SheetOutcome outcome = Solve(Remade(scarce, before));
        Assert.Equal(["old", "old", "new"], outcome.Layout.Sheets.Select(s => s.StockId));
        Assert.Equal(1, outcome.Score.Changed);
    }

    [Fact]
    public void Solve_FigureGroupsInBefore_StayWholeOnKeptSheets()
    {
        SheetInstance order = Instance([Part("a", 300, 500, 3), Part("b", 300, 500, 3), Part("c", 200, 200, 5)], [Stock("ply", 620, 1010, 10)])
            with
        { Groups = [new("g", GrainAxis.Along, ["a", "b"])] };
        SheetOutcome before = Solve(order);
        SheetInstance fewer = Instance([Part("a", 300, 500, 3), Part("b", 300, 500, 3), Part("c", 200, 201, 5)], [Stock("ply", 620, 1010, 10)]) with { Groups = order.Groups };
        SheetOutcome after = Solve(Remade(fewer, before.Layout));
        Assert.Equal(before.Score.Cost, after.Score.Cost);
        Assert.True(after.Score.Changed < after.Score.Sheets, $"{after.Score.Changed} of {after.Score.Sheets}");
    }

    [Fact]
    public void Solve_Twice_SameLayoutAndWork()
    {
        SheetInstance order = Remade(Changed(p => p.Id == "shelf" ? p with { Across = p.Across - Mm(1) } : p));
        SheetOutcome first = Solve(order, 60_000), second = Solve(order, 60_000);
        Assert.Equal(first.Layout, second.Layout);
        Assert.Equal(first.Statistics, second.Statistics);
        Assert.True(first.Statistics.Work > Solve(order with { Before = null }, 45_000).Statistics.Work);
    }

    [Fact]
    public void Solve_NoLayoutBefore_PassesThrough() =>
        Assert.Equal(new RemakeSheetSolver(new Clumsy()).Solve(s_order, SolverOptions.Default).Statistics, new Clumsy().Solve(s_order, SolverOptions.Default).Statistics);

    [Fact]
    public void Solve_Cancelled_IsStoppedOrProvenAndStillWhole()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        SheetOutcome outcome = SheetSolvers.Default.Solve(Remade(s_order), SolverOptions.Default, null, cancel.Token);
        Assert.Equal(s_before.Layout, outcome.Layout);
        Assert.Equal(s_before.Status == OutcomeStatus.Proven ? OutcomeStatus.Proven : OutcomeStatus.Stopped, outcome.Status);
    }

    [Fact]
    public void Solve_PartThatFitsNothing_IsRefusedAndTheRestStays()
    {
        SheetInstance order = new([.. s_order.Parts, Part("mast", 4000, 100)], s_order.Stock, s_order.Kerf, s_order.Keep);
        SheetOutcome outcome = Solve(Remade(order), 60_000);
        Assert.Equal(OutcomeStatus.Infeasible, outcome.Status);
        Assert.Equal("mast", Assert.Single(outcome.Reasons).Subject);
        Assert.Equal(s_before.Layout.Sheets, outcome.Layout.Sheets);
    }

    // Solves for real; what it was asked is kept, and laying out anew takes all the time it has.
    private sealed class Timed(SolverProgress told, Action pass) : ISheetSolver
    {
        public List<(int Parts, long Budget, bool Enough)> Asked { get; } = [];

        public long Work { get; init; }

        public SheetOutcome Solve(SheetInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default)
        {
            bool isFirst = Asked.Count == 0, wasEnough = options.Enough.IsCancellationRequested;
            if (isFirst) pass();
            Asked.Add((instance.PartsInAll, options.WorkBudget, options.Enough.IsCancellationRequested));
            Assert.False(wasEnough);
            progress?.Report(told);
            SheetOutcome found = SheetBuild.Solve(instance, 20_000);
            return found with { Statistics = found.Statistics with { Work = isFirst ? Work : 1 } };
        }
    }

    private sealed class Heard : List<SolverProgress>, IProgress<SolverProgress>
    {
        public void Report(SolverProgress value) => Add(value);
    }

    [Theory]
    [InlineData(90_000_000, 30_000_000)]
    [InlineData(90, SolverOptions.DefaultWorkBudget)]
    public void Solve_ForATime_KeepingHasItsShareOfIt(long work, long forKeeping)
    {
        using CancellationTokenSource mostly = new(), enough = new();
        var timed = new Timed(new(0, 0, new Money(0), 0), mostly.Cancel) { Work = work };
        SheetOutcome larger = new RemakeSheetSolver(timed).Solve(Remade(DoorsAndBacks(lastBack: 501), s_doorsAndBacks), SolverOptions.Until(enough.Token) with { MostlyEnough = mostly.Token });
        Assert.Equal(1, larger.Score.Changed);
        // Laying out anew was told to end; the try that keeps three sheets, one of 2 + bits(3), was not.
        Assert.Equal([(16, long.MaxValue, true), (4, forKeeping / 4, false)], timed.Asked);
    }

    [Fact]
    public void Solve_ForATimeWithNothingToKeep_IsNotCutShort()
    {
        using CancellationTokenSource mostly = new(), enough = new();
        var timed = new Timed(new(0, 0, new Money(0), 0), mostly.Cancel);
        new RemakeSheetSolver(timed).Solve(Remade(DoorsAndBacks(), Layout()), SolverOptions.Until(enough.Token) with { MostlyEnough = mostly.Token });
        Assert.Equal([(16, long.MaxValue, false)], timed.Asked);
    }

    [Theory]
    [InlineData(50, 1, 200, 4)]     // with the three kept sheets of 50 as good as the new layout
    [InlineData(200, 4, 200, 4)]    // no better than it
    [InlineData(40, 1, 190, 4)]
    public void Solve_WhatIsLaidBesideKeptSheets_IsToldOfTheWholeLayout(int cost, int count, int toldCost, int toldCount)
    {
        var heard = new Heard();
        var timed = new Timed(new(5, 9, new Money(cost), count), () => { }) { Work = 1000 };
        new RemakeSheetSolver(timed).Solve(Remade(DoorsAndBacks(lastBack: 501), s_doorsAndBacks), SolverOptions.Default, heard);
        Assert.Equal(2, heard.Count);
        Assert.Equal(new(1005, SolverOptions.DefaultWorkBudget, new Money(toldCost), toldCount), heard[1]);
    }

    // One part a sheet, in the corner.
    private sealed class Clumsy : ISheetSolver
    {
        public SheetOutcome Solve(SheetInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default)
        {
            SheetStock stock = instance.Stock[0];
            LaidSheet Alone(SheetPart part) => new(stock.Id, Rips(Length.Zero,
                Slice(part.Across, Crosscuts(Length.Zero, Slice(part.Along, Lies(part.Id)), Rest(stock.TruedAlong - part.Along - instance.Kerf))),
                Rest(stock.TruedAcross - part.Across - instance.Kerf)));
            SheetLayout layout = new([.. instance.Parts.SelectMany(p => Enumerable.Repeat(Alone(p), p.Count))], []);
            return new(layout, OutcomeStatus.Feasible, SheetObjective.Score(instance, layout), SheetBounds.Of(instance)!, [], new(1, 0, 0, "clumsy"));
        }

        private static Slice Rest(Length size) => new(size, WasteNode.Instance);
    }
}
