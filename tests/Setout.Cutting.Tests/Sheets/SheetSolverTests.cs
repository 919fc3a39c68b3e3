using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

public class SheetSolverTests
{
    private static readonly SheetInstance s_cabinets = Instance(
        [
            Part("side", 720, 560, 8), Part("deck", 764, 560, 8), Part("shelf", 760, 520, 6), Part("door", 716, 396, 8),
            Part("rail", 764, 100, 8, GrainRule.Free), Part("drawer side", 500, 150, 16, GrainRule.Free), Part("kick", 1600, 96, 2),
        ],
        [Stock("ply", 2440, 1220, 62.5m, null, EdgeTrim.AllRound(Mm(6)))]);

    [Fact]
    public void Solve_Twice_SameLayout()
    {
        SheetOutcome first = Solve(s_cabinets), second = Solve(s_cabinets);
        Assert.Equal(first.Layout, second.Layout);
        Assert.Equal(first.Statistics, second.Statistics);
    }

    [Fact]
    public void Solve_PartOfSheetSize_IsOneSheetWithoutCut()
    {
        SheetOutcome outcome = Solve(Instance([Part("top", 2440, 1220)], [Stock("ply", 2440, 1220)]));
        Assert.Equal(OutcomeStatus.Proven, outcome.Status);
        Assert.Equal(new PartNode("top", Turn.None), Assert.Single(outcome.Layout.Sheets).Root);
    }

    [Fact]
    public void Solve_KerfTakesTheLastTick_NeedsASecondSheet()
    {
        // Two of 300 and one kerf of 3 fill 603 exactly; a tick less and they do not fit.
        SheetInstance With(Length across) => new([Part("a", 500, 300, 2)], [new("s", Mm(500), across, EdgeTrim.None, new Money(1), null)], Mm(3), KeepRule.Nothing);
        Assert.Equal(1, Solve(With(Mm(603))).Score.Sheets);
        SheetOutcome two = Solve(With(Mm(603) - Tick));
        Assert.Equal((2, OutcomeStatus.Proven), (two.Score.Sheets, two.Status));
    }

    [Fact]
    public void Solve_FreePart_IsTurnedWhereThatSavesASheet()
    {
        SheetInstance With(GrainRule grain) => Instance([Part("a", 300, 600, 4, grain)], [Stock("s", 1203, 603)]);
        Assert.Equal(2, Solve(With(GrainRule.Keep)).Score.Sheets);
        SheetInstance wide = Instance([Part("a", 200, 1200, 3, GrainRule.Free)], [Stock("s", 1200, 606)]);
        Assert.Equal((1, OutcomeStatus.Proven), (Solve(wide).Score.Sheets, Solve(wide).Status));
        Assert.Equal(OutcomeStatus.Infeasible, Solve(Instance([Part("a", 200, 1200, 3)], [Stock("s", 1200, 606)])).Status);
    }

    [Fact]
    public void Solve_PartsThatFitNoStock_IsInfeasibleNamesThemAllAndLaysTheRest()
    {
        SheetOutcome outcome = Solve(Instance([Part("long", 3000, 100), Part("fits", 500, 500, 2), Part("wide", 100, 1300)], [Stock("ply", 2440, 1220)]));
        Assert.Equal(OutcomeStatus.Infeasible, outcome.Status);
        Assert.Equal(["long", "wide"], outcome.Reasons.Select(r => r.Subject));
        Assert.Equal([new("long", 1), new PartCount("wide", 1)], outcome.Layout.LeftOut);
        Assert.Equal(1, outcome.Score.Sheets);
        Assert.False(outcome.NoFewerSheets);
    }

    [Fact]
    public void Solve_StockProvenTooLittle_IsInfeasible()
    {
        SheetOutcome outcome = Solve(Instance([Part("a", 1000, 1000, 3)], [Stock("ply", 1500, 1500, 1, 2)]));
        Assert.Equal(OutcomeStatus.Infeasible, outcome.Status);
        Assert.Equal(ReasonKind.StockTooLittle, Assert.Single(outcome.Reasons).Kind);
        Assert.Equal([new PartCount("a", 1)], outcome.Layout.LeftOut);
    }

    [Fact]
    public void Solve_StockRunsOutWithoutProof_IsStoppedWithThatReason()
    {
        // Five of 4 x 2 on 7 x 6: 40 of 42 by area, and no edge-to-edge layout holds them.
        SheetOutcome outcome = Solve(Instance([Part("a", 40, 20, 5, GrainRule.Free)], [Stock("s", 70, 60, 1, 1)], 0));
        Assert.Contains(outcome.Status, new[] { OutcomeStatus.Stopped, OutcomeStatus.Infeasible });
        Assert.NotEmpty(outcome.Reasons);
        Assert.Equal([new PartCount("a", 1)], outcome.Layout.LeftOut);
    }

    [Fact]
    public void Solve_BlankInHand_IsUsedWhereThatSavesMoney()
    {
        var blank = SheetStock.InHand("blank", Mm(600), Mm(400), EdgeTrim.None);
        SheetStock ply = Stock("ply", 1203, 806, 50);
        // Five of 600 x 400: four fill a sheet, the fifth fits the blank exactly.
        SheetOutcome with = Solve(Instance([Part("a", 600, 400, 5)], [ply, blank]));
        Assert.Equal((new Money(50), 2, OutcomeStatus.Proven), (with.Score.Cost, with.Score.Sheets, with.Status));
        // Four need no blank: at equal money fewer sheets win.
        SheetOutcome without = Solve(Instance([Part("a", 600, 400, 4)], [ply, blank]));
        Assert.Equal((new Money(50), 1), (without.Score.Cost, without.Score.Sheets));
        Assert.Equal("ply", without.Layout.Sheets[0].StockId);
    }

    [Theory]
    [InlineData(30, "large")]
    [InlineData(15, "small")]
    [InlineData(100, "large")]
    public void Solve_TwoSizesWithPrices_TakesTheCheaperWay(int small, string expected)
    {
        // Two parts: one large sheet at 55, or two small ones.
        SheetOutcome outcome = Solve(Instance([Part("a", 600, 400, 2)], [Stock("large", 1203, 400, 55), Stock("small", 600, 400, small)]));
        Assert.Equal(new Money(Math.Min(55, 2 * small)), outcome.Score.Cost);
        Assert.All(outcome.Layout.Sheets, s => Assert.Equal(expected, s.StockId));
    }

    [Fact]
    public void Solve_StripsPossible_RipsFirstInStripsOfOneWidth()
    {
        SheetOutcome outcome = Solve(Instance([Part("shelf", 800, 300, 12)], [Stock("ply", 2440, 1220, 60)]));
        Division root = Assert.IsType<Division>(outcome.Layout.Sheets[0].Root);
        Assert.Equal(GrainAxis.Across, root.Axis);
        Assert.All(root.Slices.Where(p => p.Content is Division), p => Assert.Equal(Mm(300), p.Size));
        Assert.Equal(2, outcome.Score.Settings);
    }

    [Fact]
    public void Solve_NoParts_IsAnEmptyProvenLayout()
    {
        SheetOutcome outcome = Solve(Instance([], [Stock("ply", 2440, 1220)]));
        Assert.Equal((OutcomeStatus.Proven, 0), (outcome.Status, outcome.Score.Sheets));
    }

    [Fact]
    public void Solve_CancelledBeforehand_IsStoppedAndSaysSo()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        SheetOutcome outcome = SheetSolvers.Default.Solve(s_cabinets, SolverOptions.Default, null, cancel.Token);
        Assert.Equal(OutcomeStatus.Stopped, outcome.Status);
        Assert.Contains(outcome.Reasons, r => r.Kind == ReasonKind.Cancelled);
    }

    [Fact]
    public void Solve_CancelledOnFirstReport_EndsLongBeforeTheBudget()
    {
        using var cancel = new CancellationTokenSource();
        SheetInstance hard = Instance([Part("a", 771, 433, 31), Part("b", 517, 389, 33), Part("c", 611, 293, 27)], [Stock("ply", 2440, 1220)]);
        Assert.NotEqual(OutcomeStatus.Proven, Solve(hard).Status);
        SheetOutcome outcome = SheetSolvers.Default.Solve(hard, new SolverOptions(long.MaxValue / 2, 1), new Report(_ => cancel.Cancel()), cancel.Token);
        Assert.Equal(OutcomeStatus.Stopped, outcome.Status);
        Assert.Empty(outcome.Layout.LeftOut);
        Assert.True(outcome.Statistics.Work < 5_000_000, $"{outcome.Statistics.Work} steps");
    }

    [Fact]
    public void Solve_BudgetOfZero_StillLaysEverything()
    {
        SheetOutcome outcome = Solve(s_cabinets, 0);
        Assert.Empty(outcome.Layout.LeftOut);
        Assert.Equal(0, outcome.Statistics.Rounds);
    }

    [Fact]
    public void Solve_NegativeBudget_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => Solve(s_cabinets, -1));

    [Fact]
    public void CheckedSolver_BrokenInnerLayout_Throws()
    {
        SheetOutcome good = Solve(s_cabinets);
        var liar = new Fixed(good with { Layout = good.Layout with { Sheets = good.Layout.Sheets.RemoveAt(0) } });
        BrokenLayoutException broken = Assert.Throws<BrokenLayoutException>(() => new CheckedSheetSolver(liar).Solve(s_cabinets, SolverOptions.Default));
        Assert.Contains(broken.Violations, v => v.Rule == "DemandIsMet");
    }

    [Fact]
    public void CheckedSolver_FalseClaims_Throws()
    {
        SheetOutcome good = Solve(s_cabinets);
        SheetOutcome[] lies =
        [
            good with { Score = good.Score with { Cost = good.Score.Cost - new Money(0.01m) } },
            good with { Score = good.Score with { Settings = good.Score.Settings - 1 } },
            good with { Status = OutcomeStatus.Proven, Bound = good.Bound with { Cost = good.Score.Cost - new Money(1) } },
            good with { Bound = good.Bound with { Cost = good.Score.Cost + new Money(1) } },
            good with { Status = OutcomeStatus.Stopped, Reasons = [] },
        ];
        foreach (SheetOutcome lie in lies)
            Assert.Throws<BrokenLayoutException>(() => new CheckedSheetSolver(new Fixed(lie)).Solve(s_cabinets, SolverOptions.Default));
    }

    private sealed class Fixed(SheetOutcome outcome) : ISheetSolver
    {
        public SheetOutcome Solve(SheetInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default) => outcome;
    }

    private sealed class Report(Action<SolverProgress> tell) : IProgress<SolverProgress>
    {
        void IProgress<SolverProgress>.Report(SolverProgress value) => tell(value);
    }
}
