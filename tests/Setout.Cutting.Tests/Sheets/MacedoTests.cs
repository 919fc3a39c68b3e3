using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>
/// Orders of wood-working firms (Macedo et al. 2010; Silva et al. 2010), kerf 0. The bounds are those computed with the
/// benchmark set by area and pairs of dual feasible functions; the upper limits are what this engine reached when the test was written.
/// </summary>
public class MacedoTests
{
    [Theory]
    [InlineData("macedo-a17", GrainRule.Keep, 5, 5)]
    [InlineData("macedo-a17", GrainRule.Free, 5, 5)]
    [InlineData("macedo-a25", GrainRule.Keep, 17, 18)]
    [InlineData("macedo-a25", GrainRule.Free, 16, 17)]
    [InlineData("macedo-a43", GrainRule.Keep, 7, 7)]
    [InlineData("macedo-a43", GrainRule.Free, 6, 6)]
    public void Solve_OrdersOfFirms_StaysWithinWhatWasReached(string id, GrainRule grain, int knownBound, int reached)
    {
        SheetInstance instance = OutsideData.Sheets(id, grain);
        SheetOutcome outcome = SheetSolvers.Default.Solve(instance, new SolverOptions(4_000_000, 1));
        Assert.Empty(SheetChecker.Check(instance, outcome.Layout));
        Assert.Equal(knownBound, outcome.Bound.Count);
        Assert.InRange(outcome.Score.Sheets, knownBound, reached);
        Assert.Equal(outcome.Score.Sheets == knownBound, outcome.Status == OutcomeStatus.Proven);
    }
}
