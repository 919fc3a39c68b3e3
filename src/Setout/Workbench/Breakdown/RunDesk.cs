using System.Collections.Concurrent;
using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Texts;
using Setout.Workbench.Pieces;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.Breakdown;

/// <summary>The plan that the saws go by.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Sawn">What it says of the work at the saws.</param>
/// <param name="IsInHand">True where runs of it are cut already; its other runs are still to come.</param>
/// <param name="GivenUp">Why the plan that was cut by before does not hold any more; null where there was none, or it holds.</param>
internal sealed record PlanAtTheSaw(Plan Plan, SawnPlan Sawn, bool IsInHand, Finding? GivenUp)
{
    /// <summary>What of the shop file was changed since the plan was begun, and does not end it; null for nothing.</summary>
    public Finding? Since { get; init; }

    /// <summary>What is to be told of it.</summary>
    public IEnumerable<Finding> Told => new[] { GivenUp, Since }.OfType<Finding>();
}

/// <summary>Finds the plan that a piece is cut by: the one that was begun, as long as it holds; else one of what is left.</summary>
/// <param name="pieces">The pieces as they stand.</param>
/// <param name="desk">Where plans are made.</param>
internal sealed class RunDesk(KeptPieces pieces, PlanDesk desk)
{
    private readonly ConcurrentDictionary<string, Plan> _marked = new(StringComparer.Ordinal);

    // What stands in the way of a run, that only another plan mends.
    private static readonly string[] s_gone = ["run.other-texts", "run.moved", "run.wood-gone", "run.part-cut"];

    /// <summary>The plan of a piece; begun now where that is needed.</summary>
    /// <param name="file">The piece.</param>
    /// <param name="source">Its texts.</param>
    /// <param name="isAnew">True to plan what is left anew, whatever was begun.</param>
    public Task<PlanAtTheSaw> OfAsync(PieceFile file, PieceSource source, bool isAnew) => OfAsync(file.Name, [file], source, isAnew);

    /// <summary>The plan of a piece, or of several together.</summary>
    /// <param name="name">Under which name it lies on the desk.</param>
    /// <param name="files">The pieces, in order.</param>
    /// <param name="source">Their texts.</param>
    /// <param name="isAnew">True to plan what is left anew, whatever was begun.</param>
    public async Task<PlanAtTheSaw> OfAsync(string name, IReadOnlyList<PieceFile> files, PieceSource source, bool isAnew)
    {
        Finding? given = null;
        if (!isAnew && PlanInHand.Of(source) is { } begun && pieces.AsOf(files, begun) is { } before)
        {
            // One that was stopped early cannot be made again: as long as this program runs, it is there.
            Plan plan = _marked.TryGetValue(name, out Plan? marked) && marked.Source.Hash == before.Hash ? marked.Told(before) : await desk.PlanAsync(PlanDesk.InHand(name), before);
            var sawn = SawnPlan.Of(plan);
            (ImmutableArray<string> footing, ImmutableArray<string> other) = ShopFooting.Changed(before.Shop, source.Shop);
            if (sawn.Id != begun.Plan) given = Stale("The piece file was changed since, or the layouts were stopped before they were done.");
            else if (!footing.IsEmpty) given = Stale($"Of the shop file, this was changed since: {string.Join(", ", footing)}.");
            else if (RunMarking.Next(source.Log, sawn) is { } next)
            {
                // What it stands on is as it was, so it holds for the texts as they are now.
                sawn = sawn with { Texts = source.TextHash, Come = ShopFooting.MoreWood(before.Shop, source.Shop) };
                given = RunMarking.Of(source, desk.SetOut(name, source), sawn, next.Number, "e0", "2026-01-01T00:00:00Z").Refusal is { } refusal && s_gone.Contains(refusal.Code) ? Stale(refusal.Words) : null;
                if (given is null) return new(plan, sawn, true, null) { Since = other.IsEmpty ? null : Since(other) };
            }
        }
        Plan fresh = await desk.PlanAsync(name, source);
        return new(fresh, SawnPlan.Of(fresh), false, given);
    }

    /// <summary>The plan that a page showed and that is cut by from now on, of those that hold now: the one that was begun, or the one of what is left; null where it is neither.</summary>
    /// <param name="name">Under which name it lies on the desk.</param>
    /// <param name="files">The pieces, in order.</param>
    /// <param name="source">Their texts.</param>
    /// <param name="id">What its runs are told by.</param>
    public async Task<SawnPlan?> ShownAsync(string name, IReadOnlyList<PieceFile> files, PieceSource source, string id)
    {
        foreach (bool isAnew in new[] { false, true })
        {
            PlanAtTheSaw at = await OfAsync(name, files, source, isAnew);
            if (at.Sawn.Id != id) continue;
            _marked[name] = at.Plan;
            return at.Sawn;
        }
        return null;
    }

    private static Finding Since(ImmutableArray<string> changed) => new("run.shop-changed", Severity.Note, "", $"Since this plan was begun the shop file was changed: {string.Join(", ", changed)}. It goes on as it was begun.",
        "To reckon with the shop as it is now, plan what is left anew.");

    private static Finding Stale(string why) => new("run.plan-given-up", Severity.Note, "", $"The plan that was cut by before does not hold any more. {why}", "What is left is planned anew below, with the wood that is half cut; its runs are numbered from 1. Print it anew.");
}
