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
internal sealed record PlanAtTheSaw(Plan Plan, SawnPlan Sawn, bool IsInHand, Finding? GivenUp);

/// <summary>Finds the plan that a piece is cut by: the one that was begun, as long as it holds; else one of what is left.</summary>
/// <param name="pieces">The pieces as they stand.</param>
/// <param name="desk">Where plans are made.</param>
internal sealed class RunDesk(KeptPieces pieces, PlanDesk desk)
{
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
            Plan plan = await desk.PlanAsync(PlanDesk.InHand(name), before);
            var sawn = SawnPlan.Of(plan);
            if (sawn.Id != begun.Plan) given = Stale("The piece file or the shop file was changed since, or the layouts were stopped before they were done.");
            else if (RunMarking.Next(source.Log, sawn) is { } next)
            {
                given = RunMarking.Of(source, desk.SetOut(name, source), sawn, next.Number, "e0", "2026-01-01T00:00:00Z").Refusal is { } refusal && s_gone.Contains(refusal.Code) ? Stale(refusal.Words) : null;
                if (given is null) return new(plan, sawn, true, null);
            }
        }
        Plan fresh = await desk.PlanAsync(name, source);
        return new(fresh, SawnPlan.Of(fresh), false, given);
    }

    /// <summary>The plan that a page showed, of those that hold now: the one that was begun, or the one of what is left; null where it is neither.</summary>
    /// <param name="name">Under which name it lies on the desk.</param>
    /// <param name="files">The pieces, in order.</param>
    /// <param name="source">Their texts.</param>
    /// <param name="id">What its runs are told by.</param>
    public async Task<SawnPlan?> ShownAsync(string name, IReadOnlyList<PieceFile> files, PieceSource source, string id)
    {
        foreach (bool isAnew in new[] { false, true })
            if ((await OfAsync(name, files, source, isAnew)).Sawn is { } sawn && sawn.Id == id) return sawn;
        return null;
    }

    private static Finding Stale(string why) => new("run.plan-given-up", Severity.Note, "", $"The plan that was cut by before does not hold any more. {why}", "What is left is planned anew below, with the wood that is half cut; its runs are numbered from 1. Print it anew.");
}
