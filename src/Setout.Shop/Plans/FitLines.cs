using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Plans;

/// <summary>Writes what will fit as lines of plain text.</summary>
public static class FitLines
{
    /// <summary>The lines of a report.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="report">Its report.</param>
    /// <param name="most">How many gaps are listed; those least likely to fit come first.</param>
    public static IEnumerable<string> Of(SetPiece set, FitReport report, int most)
    {
        if (report.Gaps.Length == 0)
        {
            yield return $"{set.Piece.Name}: no gap that could fail to fit.";
            yield break;
        }
        yield return $"{set.Piece.Name}: {report.Gaps.Length} gaps. The chance that all of them come right the first time:";
        yield return $"  {"as it stands",14} {"measured first",15}";
        yield return $"  {Percent(report.Whole.Chance),14} {Percent(report.Whole.ChanceMeasured),15}  the whole piece";
        foreach (GroupFit group in report.Groups)
            yield return $"  {Percent(group.Chance),14} {Percent(group.ChanceMeasured),15}  {OpeningName(set, group.Key)}, {group.Gaps} gaps";
        yield return "";
        foreach (string line in Measure(set, report)) yield return line;
        foreach (string line in Gaps(set, report, most)) yield return line;
        foreach (string line in Allowances(set, report)) yield return line;
    }

    // The root of the sum of squares, landed on the finest step that is shown: for reading only.
    private static ExactLength Likely(Spread spread) => spread.RootSumSquare.RoundTo(Grid.SixtyFourth, Rounding.Nearest);

    /// <summary>How the chances changed by a fact, in one line; none where nothing could fail to fit.</summary>
    /// <param name="set">The piece as it is now.</param>
    /// <param name="before">How it stood.</param>
    /// <param name="after">How it stands.</param>
    public static IEnumerable<string> Change(SetPiece set, (GroupFit Whole, ImmutableArray<GroupFit> Groups) before, (GroupFit Whole, ImmutableArray<GroupFit> Groups) after)
    {
        if (after.Whole.Gaps == 0) yield break;
        string Of(GroupFit now, GroupFit? was) => was is null || Percent(was.Chance) == Percent(now.Chance) ? Percent(now.Chance) : $"{Percent(now.Chance)} (it was {Percent(was.Chance)})";
        string groups = string.Concat(after.Groups.Select(g => $"; {OpeningName(set, g.Key)} {Of(g, before.Groups.FirstOrDefault(b => b.Key == g.Key))}"));
        yield return $"  all comes right the first time: {Of(after.Whole, before.Whole)}{groups}";
    }

    /// <summary>A chance in words: <c>63 %</c>, <c>under 1 %</c>, <c>sure</c>.</summary>
    public static string Percent(Chance chance)
    {
        if (chance.Method == ChanceMethod.Certain) return chance.Share.Value > 0.5 ? "sure" : "cannot";
        double share = chance.Share.Value * 100;
        return share < 1 ? "under 1 %" : share > 99 ? "over 99 %" : string.Create(CultureInfo.InvariantCulture, $"{share:0} %");
    }

    /// <summary>What a reading brings: <c>2.0 more of 14 gaps right</c>.</summary>
    public static string Brings(MeasureFirst reading)
    {
        string more = reading.MoreFit.Value < 0.05 ? "under 0.1" : reading.MoreFit.Value.ToString("0.0", CultureInfo.InvariantCulture);
        return $"{more} more of {reading.Gaps} {(reading.Gaps == 1 ? "gap" : "gaps")} right";
    }

    /// <summary>How many of several gaps do not come right the first time, on the average: <c>of 7 gaps about 4.3 not right the first time</c>.</summary>
    /// <param name="gaps">One or more.</param>
    public static string Wrong(IReadOnlyCollection<GapFit> gaps)
    {
        double wrong = gaps.Sum(g => 1 - g.Chance.Share.Value);
        string about = wrong < 0.05 ? "under 0.1" : wrong.ToString("0.0", CultureInfo.InvariantCulture);
        return gaps.Count == 1 ? $"right the first time {Percent(gaps.First().Chance)}" : $"of {gaps.Count} gaps about {about} not right the first time";
    }

    private static IEnumerable<string> Measure(SetPiece set, FitReport report)
    {
        if (report.Measure.Length == 0)
        {
            yield return "Measure first: nothing that is still to be read would help.";
        }
        else
        {
            yield return "Measure first";
            foreach ((int index, MeasureFirst reading) in report.Measure.Index())
            {
                string more = string.Create(CultureInfo.InvariantCulture, $"{reading.MoreFit.Value:0.0}");
                string gaps = reading.Gaps == 1 ? "of 1 gap comes right" : $"of {reading.Gaps} gaps come right";
                string what = reading.Kind == MeasureKind.FirstCut ? $"{reading.Name} [{reading.Key}]" : reading.Key.Text;
                yield return $"  {index + 1,2}. {what}, with a {reading.Instrument}: {more} more {gaps}; the whole piece then {Percent(reading.ChanceThen)}{(reading.Kind == MeasureKind.Awaited ? " (parts wait for it)" : "")}";
            }
        }
        yield return "";
    }

    private static IEnumerable<string> Gaps(SetPiece set, FitReport report, int most)
    {
        LengthFormat fine = set.Piece.Shown == LengthUnit.Inch ? LengthFormat.Inches(64).Bare : LengthFormat.Millimetres(1).Bare;
        yield return report.Gaps.Length > most ? $"The {most} gaps least likely to fit ('--all' lists every one)" : "The gaps, the least likely to fit first";
        foreach (GapFit gap in report.Gaps.Select((g, i) => (Gap: g, Index: i)).OrderBy(g => g.Gap.Chance.Share.Value).ThenBy(g => g.Index).Take(most).Select(g => g.Gap))
        {
            yield return $"  {Percent(gap.Chance),9} -> {Percent(gap.ChanceMeasured),-9}  {gap.Gap.Name}  [{gap.Gap.Key}]";
            string planned = gap.Now.Value == set.Worked[gap.Gap.Key] ? fine.Text(gap.Now.Value) : $"{fine.Text(set.Worked[gap.Gap.Key])} by its sum, {fine.Text(gap.Now.Value)} by what was read of others";
            yield return $"      {planned}, likely within {fine.Text(Likely(gap.Now))} of that, at worst {fine.Text(gap.Now.WorstLow)} to {fine.Text(gap.Now.WorstHigh)}; it may be {fine.Text(gap.Gap.Least)} to {fine.Text(gap.Gap.Most)} ({gap.Gap.Source})";
            if (gap.Largest.FirstOrDefault() is { Cause: { } cause }) yield return $"      moved most by: {cause.Words}";
        }
        yield return "";
    }

    /// <summary>What is kept for each allowance and what would be best for this shop, a line each.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="report">Its report.</param>
    /// <param name="hasKeys">Whether the keys are told too, for who types them; default true.</param>
    public static IEnumerable<string> Allowances(SetPiece set, FitReport report, bool hasKeys = true)
    {
        LengthFormat fine = set.Piece.Shown == LengthUnit.Inch ? LengthFormat.Inches(64) : LengthFormat.Millimetres(2);
        foreach (AllowanceAdvice allowance in report.Allowances)
        {
            string Of(Estimate fit) => string.Create(CultureInfo.InvariantCulture, $"{fit.Value:0.0}");
            string name = hasKeys ? $"{allowance.Name} [{allowance.Key}]" : allowance.Name;
            yield return allowance.Best == allowance.Kept
                ? $"{name}: {fine.Text(allowance.Kept)} is best for this shop; {Of(allowance.FitKept)} of {allowance.Gaps} come right on the average once what is listed is measured."
                : $"{name}: {fine.Text(allowance.Kept)}; {fine.Text(allowance.Best)} would be best for this shop: {Of(allowance.FitBest)} of {allowance.Gaps} come right on the average, once what is listed is measured, instead of {Of(allowance.FitKept)}.";
        }
    }

    /// <summary>The name of an opening; its key where it has none.</summary>
    public static string OpeningName(SetPiece set, string key) => set.Openings.FirstOrDefault(o => o.Key == key)?.Name ?? key;
}
