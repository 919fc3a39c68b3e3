using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Texts;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.Breakdown;

/// <summary>Marks runs as cut: parts, wood taken and wood left, in the logs of all pieces that the run belongs to, in one change.</summary>
/// <param name="maker">Makes changes.</param>
internal sealed class RunChanges(ChangeMaker maker)
{
    /// <summary>Marks a run of the plan that the page showed.</summary>
    /// <param name="form">What every form sends along.</param>
    /// <param name="files">The pieces that the run may belong to.</param>
    /// <param name="source">The texts as they are now: of the piece, or of several together.</param>
    /// <param name="plan">The plan; null where the plan shown is none of those that hold now.</param>
    /// <param name="run">The number of the run.</param>
    public ChangeOutcome Mark(ChangeForm form, IReadOnlyCollection<PieceFile> files, PieceSource source, SawnPlan? plan, int run)
    {
        if (maker.IsMade(form)) return ChangeMaker.Done;
        if (plan is null)
            return ChangeMaker.Refuse("run.other-plan", "The plan has changed since this page was shown, so nothing was marked.", "Look at the runs as they are on the page now. If this run is cut already, mark its parts one by one.") with { IsConflict = true };
        (MarkEntry? entry, Finding? refusal) = RunMarking.Of(source, source.SetOut(), plan, run, EntryIds.Of(form.Id), maker.Here);
        if (entry is null) return new(refusal!, refusal!.Code == "run.marked");
        ImmutableArray<LogAddition> facts = source.Together is { } together
            ? [.. together.Split(entry).Select(s => LogAddition.To(files.First(f => f.FileName == s.Member.File).Document.Id, s.Entry))]
            : [LogAddition.To(files.First().Document.Id, entry)];
        return maker.Make(files.First().Name, new Change(form.Id, maker.At, $"run {run} of {plan.Runs.Runs.Length} is cut") { Facts = facts });
    }
}
