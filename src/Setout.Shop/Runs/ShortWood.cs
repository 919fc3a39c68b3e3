using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>Says which wood is too short to be held by hand beside a standing blade, and what holds it.</summary>
internal sealed class ShortWood(Plan plan, BlankNames names)
{
    // A hand that holds less than this is near the blade: common practice, no source.
    private static readonly Length s_short = Length.FromInches(12);

    // A sliver of waste that falls off needs nobody to hold it.
    private static readonly Length s_sliver = Length.FromInches(1);

    // More names than these are not read.
    private const int MostNames = 6;

    /// <summary>What a run asks for: a sentence each; nothing where all that it cuts is long enough on both sides of the blade.</summary>
    public IEnumerable<string> Holds(Run run)
    {
        if (run.Way == SawWay.Guide) yield break;
        if (run.Way == SawWay.Fence)
        {
            // Both sides of the cut are as long there as the blank is.
            if (Names(run.Cuts.Where(c => Extent(c.Blank, c.Axis == GrainAxis.Along ? GrainAxis.Across : GrainAxis.Along) < s_short)) is { Length: > 0 } along)
                yield return $"{Upper(Which(along))} {(IsOne(along) ? "is" : "are")} short along the fence: two push blocks that hold down and forward; with a stick at the end alone {(IsOne(along) ? "it turns" : "they turn")}.";
            yield break;
        }
        string to = run.Way == SawWay.Sled ? " to the sled" : "";
        string[] off = Names(run.Cuts.Where(c => IsLong(c) && IsOffShort(run, c)));
        string[] whole = [.. Names(run.Cuts.Where(c => !IsLong(c) && (IsOffShort(run, c) || IsRestShort(c)))).Except(off)];
        string[] rest = [.. Names(run.Cuts.Where(c => IsLong(c) && IsRestShort(c))).Except(off).Except(whole)];
        if (whole.Length > 0) yield return $"Clamp {Which(whole)}{to}: {(IsOne(whole) ? "it is" : "they are")} short.";
        if (off.Length > 0) yield return $"Clamp {Which(off)}{to}: what comes off is short, and no hand holds it at the stop.";
        if (rest.Length > 0) yield return $"Clamp {Which(rest)}{to}{(run.Cuts.CountBy(c => names.Spoken(c.Blank)).Any(n => n.Value > 1 && rest.Contains(n.Key)) ? " for the last cut" : "")}: what remains is short.";
    }

    // Long enough for a hand on one side at least, wherever it is cut.
    private bool IsLong(RunCut cut) => Extent(cut.Blank, cut.Axis) >= s_short * 2;

    // What is trued or cut away is waste that nobody holds.
    private bool IsOffShort(Run run, RunCut cut) => run.Kind is not (RunKind.True or RunKind.Clear) && cut.Off is { } id && Extent(id, cut.Axis) < s_short;

    private bool IsRestShort(RunCut cut) =>
        cut.Rest is { } id && Extent(id, cut.Axis) is var length && length < s_short && (plan.Runs.Blanks[id].Use != BlankUse.Waste || length >= s_sliver);

    private Length Extent(int blank, GrainAxis axis) => axis == GrainAxis.Along ? plan.Runs.Blanks[blank].Along : plan.Runs.Blanks[blank].Across;

    private string[] Names(IEnumerable<RunCut> cuts) => [.. cuts.Select(c => names.Spoken(c.Blank)).Distinct()];

    private static string Which(string[] all) => all.Length > MostNames ? "each short blank" : CutLines.Names(all);

    private static bool IsOne(string[] all) => all.Length is 1 or > MostNames;

    private static string Upper(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
