using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Runs;

/// <summary>Which run made each side of each blank true: 0 where it was true from the start, null while it is raw.</summary>
internal sealed class SideRuns
{
    private readonly int?[][] _by;

    /// <summary>Follows the runs of a plan.</summary>
    public SideRuns(RunPlan plan)
    {
        BlankSide[] sides = Enum.GetValues<BlankSide>();
        _by = [.. plan.Blanks.Select(b => sides.Select(s => b.IsRaw(s) ? null : (int?)0).ToArray())];
        foreach (Run run in plan.Runs)
        {
            foreach (RunCut cut in run.Cuts)
            {
                BlankSide far = cut.Axis == GrainAxis.Along ? BlankSide.FarEnd : BlankSide.FarEdge;
                // What a rough cut takes off is not true there; what it leaves is.
                if (cut.Off is { } off) _by[off] = With(_by[cut.Blank], far, run.Kind == RunKind.Rough ? null : run.Number);
                if (cut.Rest is { } rest) _by[rest] = With(_by[cut.Blank], cut.From, run.Number);
            }
        }
    }

    /// <summary>The run that made a side true.</summary>
    public int? Of(int blank, BlankSide side) => _by[blank][(int)side];

    /// <summary>A true side that a cut is made square to, near ones first; null where there is none yet.</summary>
    public BlankSide? SquareTo(RunCut cut)
    {
        (BlankSide near, BlankSide far) = cut.Axis == GrainAxis.Along ? (BlankSide.NearEdge, BlankSide.FarEdge) : (BlankSide.NearEnd, BlankSide.FarEnd);
        return Of(cut.Blank, near) is not null ? near : Of(cut.Blank, far) is not null ? far : null;
    }

    private static int?[] With(int?[] sides, BlankSide side, int? run)
    {
        int?[] made = [.. sides];
        made[(int)side] = run;
        return made;
    }
}
