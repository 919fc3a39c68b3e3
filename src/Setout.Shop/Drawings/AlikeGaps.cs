using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Shop.Plans;

namespace Setout.Shop.Drawings;

/// <summary>Gaps that are alike in every figure that is shown: the play of four equal drawers is said once.</summary>
/// <param name="Name">Such as <c>drawers L1, L2, L3, L4: slide play</c>.</param>
/// <param name="Gaps">One or more, in the order they were set out.</param>
public sealed record AlikeGaps(string Name, ImmutableArray<GapFit> Gaps)
{
    // Beyond this a list of names is no longer read; so many in a row are said as a range.
    private const int MostNamed = 8, LeastRange = 5;

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
        string[] said = isOneKind ? [.. Ranged(own)] : own;
        string list = string.Join(", ", said.Take(MostNamed)) + (said.Length > MostNamed ? ", and others" : "");
        return $"{(isOneKind ? Many(kinds[0]) + " " : "")}{list}{after}";
    }

    private static string Many(string kind) => kind.EndsWith("shelf", StringComparison.Ordinal) ? kind[..^1] + "ves" : kind + "s";

    /// <summary>Keys that count up, such as D1, D2, and so on to D10, as <c>D1 to D10</c>.</summary>
    private static IEnumerable<string> Ranged(string[] keys)
    {
        static (string Letters, int Number)? Counted(string key)
        {
            int digits = key.Length - key.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9').Length;
            return digits is > 0 and <= 6 ? (key[..^digits], int.Parse(key.AsSpan(key.Length - digits), CultureInfo.InvariantCulture)) : null;
        }
        for (int i = 0, next; i < keys.Length; i = next)
        {
            next = i + 1;
            if (Counted(keys[i]) is { } first)
                while (next < keys.Length && Counted(keys[next]) is { } later && later == (first.Letters, first.Number + next - i)) next++;
            if (next - i >= LeastRange) yield return $"{keys[i]} to {keys[next - 1]}";
            else foreach (string key in keys[i..next]) yield return key;
        }
    }

    private static (string Owner, string What) Parted(string name)
    {
        int comma = name.IndexOf(", ", StringComparison.Ordinal);
        return comma < 0 ? (name, "") : (name[..comma], name[(comma + 2)..]);
    }
}
