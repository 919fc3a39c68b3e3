using System.Collections.Immutable;

namespace Setout.Cutting.Runs;

/// <summary>
/// Turns what can be cut the other way round where the runs are fewer then, or cuts that were refused can be made. Equal places are turned together; only those are tried that may
/// save something: by a setting that nothing else has, or by one that is come back to.
/// </summary>
internal static class FewerWaysRound
{
    // Each look plans all cuts once more, which takes long where there are very many.
    private const int MostLooks = 200, MostCuts = 1_000;

    // Settings tried at each look.
    private const int TrialBudget = 300;

    /// <summary>The cuts with places turned; null where none is worth it.</summary>
    /// <param name="cuts">As laid out.</param>
    /// <param name="inTurn">Their runs.</param>
    /// <param name="ways">Chooses saws.</param>
    /// <param name="budget">Settings tried, at most.</param>
    /// <param name="cancel">Ends the search early.</param>
    public static AllCuts? Of(AllCuts cuts, List<List<PlannedCut>> inTurn, CutWays ways, int budget, CancellationToken cancel)
    {
        if (cuts.Count > MostCuts) return null;
        AllCuts best = cuts;
        int looks = 0, settings = new CutsInTurn(cuts).Settings;
        for (bool isBetter = true; isBetter;)
        {
            isBetter = false;
            foreach (WayRound place in WaysRound.Places(best.Materials))
            {
                if (looks++ >= MostLooks || cancel.IsCancellationRequested) return ReferenceEquals(best, cuts) ? null : best;
                ImmutableArray<RunMaterial> turned = WaysRound.Turned(best.Materials, place);
                var other = new AllCuts(turned, ways);
                var order = new CutsInTurn(other);
                int refused = other.Refusals.Count.CompareTo(best.Refusals.Count);
                if (refused > 0 || (refused == 0 && order.Settings >= settings && !IsComeBackTo(place, inTurn))) continue;
                List<List<PlannedCut>> then = order.Runs(Math.Min(budget, TrialBudget), cancel).Runs;
                if ((refused == 0 && CutsInTurn.Count(then).CompareTo(CutsInTurn.Count(inTurn)) >= 0) || !WaysRound.IsSound(turned, best.Materials)) continue;
                (best, inTurn, settings, isBetter) = (other, then, order.Settings, true);
            }
        }
        return ReferenceEquals(best, cuts) ? null : best;
    }

    private static bool IsComeBackTo(WayRound place, List<List<PlannedCut>> inTurn) =>
        inTurn.Where(r => r[0].Setting.IsSet).GroupBy(r => r[0].Setting).Any(g => g.Count() > 1 && (g.Key.Figure == place.Along || g.Key.Figure == place.Beside));
}
