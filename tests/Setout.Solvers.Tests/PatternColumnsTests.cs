using Setout.Core.Measures;
using Setout.Cutting;
using Setout.Cutting.Sheets;

namespace Setout.Solvers.Tests;

/// <summary>Orders whose lengths are too many for a complete table, so that patterns come from the sources without proof.</summary>
public class PatternColumnsTests
{
    private static readonly ISheetSolver s_solver = SheetSolvers.With(LibraryPrograms.Instance);

    private static Length Mm(long millimetres) => Length.FromMillimetres(millimetres);

    // Sizes to the millimetre on large sheets, all free to turn; of the second stock there are few.
    private static SheetInstance Order(int seed, int? few)
    {
        var random = new Random(seed);
        SheetPart[] parts = [.. Enumerable.Range(0, 24).Select(i => new SheetPart($"p{i}", Mm(random.Next(211, 1200)), Mm(random.Next(157, 800)), random.Next(2, 9), GrainRule.Free))];
        SheetStock[] stock = few is null
            ? [new("large", Mm(2750), Mm(1830), EdgeTrim.None, new Money(50), null)]
            : [new("large", Mm(2750), Mm(1830), EdgeTrim.None, new Money(50), null), new("few", Mm(2440), Mm(1220), EdgeTrim.None, new Money(20), few)];
        return new([.. parts], [.. stock], Mm(3), KeepRule.Nothing);
    }

    [Theory]
    [InlineData(1, null)]
    [InlineData(2, 3)]
    [InlineData(3, 0)]
    public void Solve_NoCompleteTable_LaysAllWithinStockAndAboveTheBound(int seed, int? few)
    {
        SheetInstance instance = Order(seed, few);
        SheetOutcome outcome = s_solver.Solve(instance, new SolverOptions(15_000_000, 1));
        Assert.Empty(outcome.Layout.LeftOut);
        Assert.Empty(SheetChecker.Check(instance, outcome.Layout));
        Assert.True(few is null || outcome.Layout.Sheets.Count(s => s.StockId == "few") <= few);
        Assert.True(outcome.Bound.Cost <= outcome.Score.Cost);
        Assert.True(outcome.Bound.Count <= outcome.Score.Sheets);
    }

    [Fact]
    public void Solve_Twice_GivesTheSame()
    {
        SheetInstance instance = Order(4, 2);
        SheetOutcome one = s_solver.Solve(instance, new SolverOptions(8_000_000, 7)), two = s_solver.Solve(instance, new SolverOptions(8_000_000, 7));
        Assert.Equal(one.Layout, two.Layout);
        Assert.Equal(one.Bound, two.Bound);
        Assert.Equal(one.Statistics, two.Statistics);
    }
}
