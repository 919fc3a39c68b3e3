using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>Tiny instances against a search of every edge-to-edge layout, written without any of the solver's code.</summary>
public class SheetBruteForceTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Solve_TinyInstances_EqualsEveryLayoutTried(int kerf)
    {
        var random = new Random(100 + kerf);
        for (int round = 0; round < 60; round++)
        {
            SheetStock[] stock = [Stock("large", random.Next(8, 13), random.Next(7, 11), random.Next(5, 9)), Stock("small", random.Next(5, 9), random.Next(5, 8), random.Next(2, 6))];
            SheetPart[] parts = [.. Enumerable.Range(0, random.Next(2, 6)).Select(i => Part($"p{i}", random.Next(1, 8), random.Next(1, 7), 1, random.Next(2) == 0 ? GrainRule.Free : GrainRule.Keep))];
            SheetInstance instance = Instance(parts, stock, kerf);
            (int cost, int sheets) = new EveryLayout(parts, stock, kerf).Least();
            SheetOutcome outcome = Solve(instance, 100_000);
            Assert.Equal((new Money(cost), sheets), (outcome.Score.Cost, outcome.Score.Sheets));
            Assert.True(outcome.Bound.Cost <= new Money(cost) && outcome.Bound.Count <= sheets, $"bound {outcome.Bound} above {cost} on {sheets}");
        }
    }
}
