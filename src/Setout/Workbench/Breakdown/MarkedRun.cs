using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Runs;
using Setout.Workbench.Changing;
using Setout.Workbench.Shell;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.Breakdown;

/// <summary>How far a run is.</summary>
/// <param name="Cut">When it was cut; empty where it is to be cut.</param>
/// <param name="Entry">The id of the entry that marks it; empty for none.</param>
/// <param name="IsNext">Whether it is the next to be cut.</param>
/// <param name="Form">What goes along when it is marked; null where it cannot be yet.</param>
/// <param name="Wait">Why it cannot be marked yet; empty where it can, or is.</param>
/// <param name="Step">The page with its first step; empty for none.</param>
public sealed record MarkedRun(string Cut, string Entry, bool IsNext, FormHead? Form, string Wait, string Step)
{
    /// <summary>The sheets and boards that it begins, by their letters, of which the rack does not know; empty for none.</summary>
    public string NotInRack { get; init; } = "";
}

/// <summary>How far the runs of a plan are.</summary>
/// <param name="Runs">In the order of the runs.</param>
/// <param name="PlanId">What tells them from those of any other plan.</param>
/// <param name="Facts">Where marks are voided.</param>
/// <param name="PlanAnew">The page of what is left, planned anew; null where it is that.</param>
/// <param name="Pieces">The pieces that are broken down together, by their documents; none for one piece.</param>
public sealed record MarkedRuns(ImmutableArray<MarkedRun> Runs, string PlanId, string Facts, string? PlanAnew, ImmutableArray<string> Pieces)
{
    /// <summary>Where wood is said to be bought.</summary>
    public string Buy { get; init; } = ShopPages.ShopLinks.Shop;

    /// <summary>Of a plan.</summary>
    /// <param name="source">The texts as they are now.</param>
    /// <param name="set">Set out from them.</param>
    /// <param name="at">The plan.</param>
    /// <param name="form">What goes along with a mark.</param>
    /// <param name="step">The page with the first step of a run; an empty address for none.</param>
    internal static ImmutableArray<MarkedRun> Of(PieceSource source, SetPiece set, PlanAtTheSaw at, Func<FormHead> form, Func<int, string> step)
    {
        int? next = RunMarking.Next(source.Log, at.Sawn)?.Number;
        MarkedRun One(int number)
        {
            if (WoodLedger.EntryOf(source.Log, at.Sawn.Id, number) is { } there) return new($"cut {When.Of(there.At, TimeProvider.System)}", there.Id, false, null, "", step(number));
            // Only for what it says: nothing is marked here.
            Finding? refusal = RunMarking.Of(source, set, at.Sawn, number, "e0", "2026-01-01T00:00:00Z").Refusal;
            return new("", "", number == next, refusal is null ? form() : null, refusal is null ? "" : refusal.Code == "run.earlier" ? refusal.Remedy : refusal.Words, step(number)) { NotInRack = NotInRack(source, set, at.Sawn, number) };
        }
        return [.. at.Sawn.Runs.Runs.Select(r => One(r.Number))];
    }

    private static string NotInRack(PieceSource source, SetPiece set, SawnPlan plan, int number)
    {
        Cutting.Runs.Run run = plan.Runs.Runs.First(r => r.Number == number);
        return string.Join(", ", plan.TakenBy(run).Zip(RunMarking.TakenBy(source, set, plan, run)).Where(t => t.Second.Source == Shop.Texts.WoodSource.Bought)
            .Select(t => plan.Names[t.First.Id]).Where(n => n.Length > 0).Distinct());
    }
}
