// Over 200 lines when all are counted: one table of random instances serves every property.
using CsCheck;
using Setout.Core.Measures;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Testing;

namespace Setout.Solvers.Tests;

/// <summary>Boards by patterns, with the library behind the port.</summary>
public sealed class PatternBoardTests
{
    private static readonly IBoardSolver s_solver = BoardSolvers.With(LibraryPrograms.Instance);

    private static Length Mm(long millimetres) => Length.FromMillimetres(millimetres);

    private static BoardOutcome Solve(BoardInstance instance, long budget = 3_000_000) => s_solver.Solve(instance, new(budget, 1));

    // Stock: length, price, limit (0 for none), defect at (0 for none), lanes.
    private static readonly Gen<(int Length, int Price, int Limit, int Defect, int Lanes)> s_stock =
        Gen.Select(Gen.Int[10, 24], Gen.Int[0, 6], Gen.Int[0, 3], Gen.Int[0, 9], Gen.Int[1, 3]);

    private static readonly Gen<BoardInstance> s_tiny = Gen.Select(Gen.Int[1, 9].Array[1, 6], s_stock.Array[1, 3], Gen.Int[0, 2], (parts, stock, kerf) => Make(parts, stock, kerf));

    private static BoardInstance Make(int[] parts, (int Length, int Price, int Limit, int Defect, int Lanes)[] stock, int kerf) => new(
        [.. parts.Select((p, i) => new BoardPart($"p{i}", Mm(p), 1))],
        [.. stock.Select((s, i) => new BoardStock($"s{i}", Mm(s.Length), new(Mm(s.Limit % 2), Length.Zero), new Money(s.Price), s.Limit == 0 ? null : s.Limit)
        {
            Defects = s.Defect < 2 ? [] : [new(Mm(s.Defect), Mm(s.Defect + 1))],
            Rip = s.Lanes == 1 ? null : new(Mm((s.Lanes * 5) + s.Lanes), Mm(5), Mm(1)),
        })], Mm(kerf), Mm(3));

    [Fact]
    public void Solve_TinyInstances_CostsWhatTheBestOfAllLayoutsCosts()
    {
        s_tiny.Holds(instance =>
        {
            BoardOutcome outcome = Solve(instance);
            (decimal Cost, int Boards)? least = EveryBoardLayout.Least(instance);
            Assert.Equal(least is null, !outcome.Layout.LeftOut.IsEmpty);
            if (least is not { } best) return;
            Assert.Equal(new Money(best.Cost), outcome.Score.Cost);
            Assert.True(outcome.Bound.Cost.Amount <= best.Cost, $"bound {outcome.Bound.Cost}, but {best.Cost} is enough");
            if (best.Cost == 0) Assert.True(outcome.Bound.Count <= best.Boards, $"bound {outcome.Bound.Count}, but {best.Boards} are enough");
        }, iter: 300, threads: 1);
    }

    [Fact]
    public void Bound_OfTheSolverWithoutTheLibrary_IsNoHigherThanTheBestOfAllLayouts()
    {
        s_tiny.Holds(instance =>
        {
            BoardOutcome outcome = BoardSolvers.Default.Solve(instance, new(50_000, 1));
            if (EveryBoardLayout.Least(instance) is not { } best || !outcome.Layout.LeftOut.IsEmpty) return;
            Assert.True(outcome.Bound.Cost.Amount <= best.Cost && outcome.Score.Cost.Amount >= best.Cost, $"bound {outcome.Bound.Cost}, best {best.Cost}, found {outcome.Score.Cost}");
        }, iter: 300, threads: 1);
    }

    [Fact]
    public void Solve_PartsInAnotherOrder_CostsTheSame()
    {
        Gen.Select(s_tiny, Gen.Int[0, 1000]).Holds((instance, seed) =>
        {
            BoardPart[] parts = [.. instance.Parts];
            new Random(seed).Shuffle(parts);
            BoardOutcome other = Solve(new([.. parts], instance.Stock, instance.Kerf, instance.KeepFrom));
            BoardOutcome outcome = Solve(instance);
            Assert.Equal((outcome.Score.LeftOut, outcome.Score.Cost, outcome.Bound.Cost), (other.Score.LeftOut, other.Score.Cost, other.Bound.Cost));
        }, iter: 60, threads: 1);
    }

    [Fact]
    public void Solve_KerfAsPartOfEveryLength_IsTheSameLayout()
    {
        Gen.Select(Gen.Int[1, 40].Array[1, 25], Gen.Int[40, 90], Gen.Int[40, 90], Gen.Int[1, 4]).Holds((parts, one, two, kerf) =>
        {
            BoardInstance instance = Make(parts, [(one, 5, 0, 0, 1), (two, 7, 0, 0, 2)], kerf);
            var enlarged = new BoardInstance([.. instance.Parts.Select(p => p with { Length = p.Length + instance.Kerf })],
                [.. instance.Stock.Select(s => s with { Length = s.Length + instance.Kerf })], Length.Zero, instance.KeepFrom);
            BoardOutcome outcome = Solve(instance, 500_000), other = Solve(enlarged, 500_000);
            Assert.Equal(outcome.Layout.Boards.Select(b => b.StockId), other.Layout.Boards.Select(b => b.StockId));
            Assert.Equal(outcome.Layout.Boards.SelectMany(b => b.Stretches).Select(s => string.Join(' ', s.PartIds)), other.Layout.Boards.SelectMany(b => b.Stretches).Select(s => string.Join(' ', s.PartIds)));
        }, iter: 40, threads: 1);
    }

    [Fact]
    public void Solve_MiddlingInstances_BoundNeverPassesWhatTheOtherSolverFinds()
    {
        Gen.Select(Gen.Long[20_000_000, 220_000_000], Gen.Int[1, 4]).Array[5, 25].Select(Gen.Long[300_000_000, 500_000_000].Array[1, 3], Gen.Int[0, 700_000]).Holds((parts, boards, kerf) =>
        {
            var instance = new BoardInstance([.. parts.Select((p, i) => new BoardPart($"p{i}", Length.FromTicks(p.Item1), p.Item2))],
                [.. boards.Select((b, i) => new BoardStock($"s{i}", Length.FromTicks(b), EndTrim.None, new Money(Math.Round(b / 10_000_000m, 2)), i == 2 ? 3 : null)
                {
                    Rip = i == 1 ? new(Mm(150), Mm(70), Mm(3)) : null,
                })], Length.FromTicks(kerf), Mm(300));
            BoardOutcome with = Solve(instance), without = BoardSolvers.Default.Solve(instance, SolverOptions.Default);
            Assert.True(with.Bound.Cost <= without.Score.Cost, $"bound {with.Bound.Cost} above {without.Score.Cost}");
            Assert.True(without.Bound.Cost <= with.Score.Cost, $"bound {without.Bound.Cost} above {with.Score.Cost}");
            Assert.True(with.Bound.Count <= without.Score.Boards && without.Bound.Count <= with.Score.Boards, $"{with.Bound.Count} {with.Score.Boards} {without.Bound.Count} {without.Score.Boards}");
        }, iter: 25, threads: 1);
    }

    // Three lengths that fill 100 only as 50+30+20: by hand, 20 of each need 20 boards and waste nothing.
    [Fact]
    public void Solve_BoardsFullToTheEnd_IsProven()
    {
        BoardOutcome outcome = Solve(new([new("a", Mm(50), 20), new("b", Mm(30), 20), new("c", Mm(20), 20)],
            [new("s", Mm(100), EndTrim.None, new Money(3), null)], Length.Zero, Mm(10)));
        Assert.Equal((OutcomeStatus.Proven, new Money(60)), (outcome.Status, outcome.Score.Cost));
    }

    [Fact]
    public void Solve_TwiceWithOneSeed_IsTheSame()
    {
        var random = new Random(3);
        var instance = new BoardInstance([.. Enumerable.Range(0, 40).Select(i => new BoardPart($"p{i}", Mm(random.Next(150, 900)), random.Next(1, 4)))],
            [new("a", Mm(2400), new(Mm(10), Mm(10)), new Money(20), null), new("b", Mm(3000), EndTrim.None, new Money(26), 5)], Mm(3), Mm(300));
        BoardOutcome one = Solve(instance), two = Solve(instance);
        Assert.Equal(one.Layout, two.Layout);
        Assert.Equal((one.Statistics, one.Bound), (two.Statistics, two.Bound));
    }

    [Fact]
    public void Solve_CancelledOrNoBudgetOrNothing_StillAnswers()
    {
        var instance = new BoardInstance([new("a", Mm(700), 9), new("b", Mm(500), 8)], [new("s", Mm(2400), EndTrim.None, new Money(3), null)], Mm(3), Mm(300));
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        Assert.Equal(OutcomeStatus.Stopped, s_solver.Solve(instance, SolverOptions.Default, null, cancel.Token).Status);
        Assert.Empty(Solve(instance, 0).Layout.LeftOut);
        Assert.Empty(s_solver.Solve(instance, SolverOptions.Until(cancel.Token)).Layout.LeftOut);
        Assert.Empty(Solve(new([], instance.Stock, Mm(3), Mm(300))).Layout.Boards);
        BoardOutcome tooLittle = Solve(new(instance.Parts, [instance.Stock[0] with { Limit = 3 }], Mm(3), Mm(300)));
        Assert.Equal(OutcomeStatus.Infeasible, tooLittle.Status);
    }
}
