using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Shop.Plans;

namespace Setout.Shop.Drawings;

/// <summary>Gaps that are alike in every figure that is shown: the play of four equal drawers is said once.</summary>
/// <param name="Name">Such as <c>drawers L1, L2, L3, L4: slide play</c>.</param>
/// <param name="Gaps">One or more, in the order they were set out.</param>
public sealed record AlikeGaps(string Name, ImmutableArray<GapFit> Gaps)
{
    // Beyond this a list of names is no longer read.
    private const int MostNamed = 8;

    /// <summary>The figures of all of them.</summary>
    public GapFit First => Gaps[0];

    /// <summary>The gaps of a report, those least likely to fit first, alike ones together.</summary>
    public static ImmutableArray<AlikeGaps> Of(FitReport report) =>
    [
        .. report.Gaps.Select((g, i) => (Gap: g, Index: i)).GroupBy(g => Likeness(g.Gap))
            .OrderBy(g => g.First().Gap.Chance.Share.Value).ThenBy(g => g.First().Index)
            .Select(g => new AlikeGaps(NameOf([.. g.Select(x => x.Gap.Gap.Name)]), [.. g.Select(x => x.Gap)])),
    ];

    private static (string, ExactLength, ExactLength, string, (ExactLength, ExactLength, ExactLength, long, string), (ExactLength, ExactLength, ExactLength, long, string)) Likeness(GapFit fit) =>
        (Parted(fit.Gap.Name).What, fit.Gap.Least, fit.Gap.Most, fit.Gap.Source, Likeness(fit.Now, fit.Chance), Likeness(fit.Measured, fit.ChanceMeasured));

    // The likely range is drawn, not written: to a thousandth of a millimetre it is the same line.
    private static (ExactLength, ExactLength, ExactLength, long, string) Likeness(Spread spread, Chance chance) =>
        (spread.Value, spread.WorstLow, spread.WorstHigh, (long)Math.Round(spread.StandardDeviation.Millimetres.Value * 1000), FitLines.Percent(chance));

    /// <summary>One name for several: <c>drawer L1, slide play</c> and <c>drawer L2, slide play</c> are <c>drawers L1, L2: slide play</c>.</summary>
    internal static string NameOf(ImmutableArray<string> names)
    {
        if (names.Length == 1) return names[0];
        string[] owners = [.. names.Select(n => Parted(n).Owner)];
        string what = Parted(names[0]).What;
        string after = what.Length > 0 ? $": {what}" : "";
        string[] kinds = [.. owners.Select(o => o[..(o.LastIndexOf(' ') + 1)].TrimEnd()).Distinct()];
        bool isOneKind = kinds is [{ Length: > 0 }];
        string[] own = [.. owners.Select(o => isOneKind ? o[(o.LastIndexOf(' ') + 1)..] : o)];
        string list = string.Join(", ", own.Take(MostNamed)) + (own.Length > MostNamed ? $" and {own.Length - MostNamed} more" : "");
        return $"{(isOneKind ? kinds[0] + "s " : "")}{list}{after}";
    }

    private static (string Owner, string What) Parted(string name)
    {
        int comma = name.IndexOf(", ", StringComparison.Ordinal);
        return comma < 0 ? (name, "") : (name[..comma], name[(comma + 2)..]);
    }
}
