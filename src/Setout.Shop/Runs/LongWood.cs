using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>Says where the end of a long blank is to be held up, so that it neither tips off the saw nor lifts at the blade.</summary>
internal static class LongWood
{
    // A blank longer than this tips off the saw by itself: common practice, no source.
    private static readonly Length s_long = Length.FromInches(48);

    // More names than these are not read.
    private const int MostNames = 6;

    /// <summary>What a run asks for; nothing where all its blanks are short.</summary>
    public static IEnumerable<string> Supports(Plan plan, Run run, BlankNames names)
    {
        Length most = run.Way == SawWay.Sled && plan.Source.Shop.Saws.Sled is { } sled ? sled.Longest : s_long;
        string[] far = [.. run.Cuts.Where(c => Reach(run, plan.Runs.Blanks[c.Blank], c) > most).Select(c => names.Spoken(c.Blank)).Distinct()];
        if (far.Length == 0) yield break;
        string which = far.Length > MostNames ? "each long blank" : CutLines.Names(far);
        if (run.Way == SawWay.Sled) yield return $"Support the long end of {which} level with the sled.";
        if (run.Way == SawWay.Stop) yield return $"Support the long end of {which} level with the saw's rest.";
        if (run.Way == SawWay.Fence) yield return $"Support {which} level with the table before, behind and beside the blade.";
    }

    // Across the sled or the rest it is the length that hangs over; at the fence all of the blank.
    private static Length Reach(Run run, RunBlank blank, RunCut cut) => run.Way switch
    {
        SawWay.Guide => Length.Zero,
        SawWay.Fence => Length.Max(blank.Along, blank.Across),
        _ => cut.Axis == GrainAxis.Along ? blank.Along : blank.Across,
    };
}
