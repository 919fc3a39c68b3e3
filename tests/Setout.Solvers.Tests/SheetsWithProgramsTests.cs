using Setout.Core.Measures;
using Setout.Cutting;
using Setout.Cutting.Sheets;
using Setout.Cutting.Tests.Sheets;

namespace Setout.Solvers.Tests;

/// <summary>Sheets laid out with the library behind the bounds.</summary>
public class SheetsWithProgramsTests
{
    private static readonly ISheetSolver s_solver = SheetSolvers.With(LibraryPrograms.Instance);

    private static Length Mm(long millimetres) => Length.FromMillimetres(millimetres);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Solve_TinyOrders_CostsWhatTheBestOfEveryLayoutDoes(int kerf)
    {
        var random = new Random(500 + kerf);
        int proven = 0;
        for (int round = 0; round < 40; round++)
        {
            SheetStock[] stock =
            [
                new("large", Mm(random.Next(8, 13)), Mm(random.Next(7, 11)), EdgeTrim.None, new Money(random.Next(5, 9)), null),
                new("small", Mm(random.Next(5, 9)), Mm(random.Next(5, 8)), EdgeTrim.None, new Money(random.Next(2, 6)), null),
            ];
            SheetPart[] parts = [.. Enumerable.Range(0, random.Next(2, 7)).Select(i =>
                new SheetPart($"p{i}", Mm(random.Next(1, 8)), Mm(random.Next(1, 7)), 1, random.Next(2) == 0 ? GrainRule.Free : GrainRule.Keep))];
            var instance = new SheetInstance([.. parts], [.. stock], Mm(kerf), KeepRule.Nothing);
            if (!instance.Validate().IsEmpty) continue;
            (int cost, int sheets) = new EveryLayout(parts, stock, kerf).Least();
            SheetOutcome outcome = s_solver.Solve(instance, new SolverOptions(400_000, 1));
            Assert.Equal(new Money(cost), outcome.Score.Cost);
            Assert.True(outcome.Bound.Cost <= new Money(cost) && outcome.Bound.Count <= sheets, $"bound {outcome.Bound} above {cost} on {sheets}");
            if (outcome.Status == OutcomeStatus.Proven) proven++;
        }
        // A bound that stopped working would show here.
        Assert.InRange(proven, 25, 40);
    }

    // Nine backs and door panels that fill three sheets of 96 x 48 in, found and proven only by way of patterns (sizes in 1/32 in, one kerf of 1/8 in taken off).
    private static readonly SheetInstance s_tight = new(
        [
            .. new (int Along, int Across, int Count, GrainRule Grain)[]
            {
                (1092, 772, 1, GrainRule.Free), (686, 580, 5, GrainRule.Free), (956, 568, 1, GrainRule.Free), (1454, 428, 2, GrainRule.Free), (1108, 1044, 1, GrainRule.Free),
                (958, 428, 4, GrainRule.Free), (1924, 1156, 1, GrainRule.Keep), (948, 756, 1, GrainRule.Keep), (670, 708, 4, GrainRule.Free),
            }
            .Select((p, i) => new SheetPart($"p{i}", Mm(p.Along - 4), Mm(p.Across - 4), p.Count, p.Grain)),
        ],
        [new("sheet", Mm(3056), Mm(1520), EdgeTrim.None, new Money(60), null)], Mm(4), KeepRule.Nothing);

    [Fact]
    public void Solve_TightOrder_IsThreeSheetsAndProven()
    {
        SheetOutcome outcome = s_solver.Solve(s_tight, new SolverOptions(30_000_000, 1));
        Assert.Equal((3, OutcomeStatus.Proven), (outcome.Score.Sheets, outcome.Status));
    }

    // Hopper 2000, the first of the sets t1, kerf 0: the parts fill one sheet of 200 x 200 without waste, but not by cuts from edge to edge. Joining all rectangles without
    // waste two by two, which is another way to look, gives 19 and none of them is the sheet.
    [Fact]
    public void Solve_ZeroWasteThatNoSawReaches_IsTwoSheetsAndProven()
    {
        string line = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "small_checks.jsonl")).First(l => l.Contains("\"D-hopper-t1a\"", StringComparison.Ordinal));
        using var document = System.Text.Json.JsonDocument.Parse(line);
        var instance = new SheetInstance(
            [.. document.RootElement.GetProperty("parts").EnumerateArray().Select((p, i) => new SheetPart($"p{i}", Mm(p[0].GetInt64()), Mm(p[1].GetInt64()), p[2].GetInt32(), GrainRule.Keep))],
            [new("sheet", Mm(200), Mm(200), EdgeTrim.None, new Money(1), null)], Length.Zero, KeepRule.Nothing);
        SheetOutcome outcome = s_solver.Solve(instance, new SolverOptions(3_000_000, 1));
        Assert.Equal((2, OutcomeStatus.Proven), (outcome.Score.Sheets, outcome.Status));
    }

    [Fact]
    public void Solve_Twice_GivesTheSame()
    {
        SheetOutcome one = s_solver.Solve(s_tight, new SolverOptions(2_000_000, 7)), two = s_solver.Solve(s_tight, new SolverOptions(2_000_000, 7));
        Assert.Equal(one.Layout, two.Layout);
        Assert.Equal(one.Bound, two.Bound);
        Assert.Equal(one.Statistics, two.Statistics);
    }

    [Fact]
    public void Solve_Enough_EndsWithoutDoubt()
    {
        using var enough = new CancellationTokenSource();
        enough.Cancel();
        SheetOutcome outcome = s_solver.Solve(s_tight, SolverOptions.Until(enough.Token));
        Assert.Equal(OutcomeStatus.Feasible, outcome.Status);
        Assert.Empty(outcome.Reasons);
    }

    [Fact]
    public void Solve_Cancelled_GivesTheBestSoFarAndSaysSo()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        SheetOutcome outcome = s_solver.Solve(s_tight, new SolverOptions(2_000_000, 1), null, cancel.Token);
        Assert.Equal(OutcomeStatus.Stopped, outcome.Status);
        Assert.Contains(outcome.Reasons, r => r.Kind == ReasonKind.Cancelled);
    }

    // The outside check of kerf: kerf k on parts and sheets is no kerf on parts and sheets that are k larger.
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(4)]
    public void Solve_KerfOrLargerSizes_GivesTheSameFigures(int kerf)
    {
        SheetInstance With(int smaller, int saw) => new(
            [.. s_tight.Parts.Select(p => p with { Along = p.Along + Mm(4 - smaller), Across = p.Across + Mm(4 - smaller) })],
            [.. s_tight.Stock.Select(s => s with { Along = s.Along + Mm(4 - smaller), Across = s.Across + Mm(4 - smaller) })], Mm(saw), KeepRule.Nothing);
        SheetOutcome none = s_solver.Solve(With(0, 0), new SolverOptions(1_000_000, 1)), sawn = s_solver.Solve(With(kerf, kerf), new SolverOptions(1_000_000, 1));
        Assert.Equal((none.Score.Cost, none.Score.Sheets, none.Bound), (sawn.Score.Cost, sawn.Score.Sheets, sawn.Bound));
    }
}
