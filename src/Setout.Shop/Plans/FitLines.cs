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
        yield return $"{set.Piece.Name}: {report.Gaps.Length} {(report.Gaps.Length == 1 ? "gap" : "gaps")}. How many come right the first time, on the average; and the chance that all do:";
        static string Line(string name, string now, string then, string all) => $"  {now,16} {then,18} {all,24}  {name}";
        static string Of(GroupFit group, string name) => Line(name, Right(group.Right, group), Right(group.RightMeasured, group), AllAtOnce(group));
        yield return Line("", "as it stands", "measured first", "all at once").TrimEnd();
        yield return Of(report.Whole, "the whole piece");
        foreach (GroupFit group in report.Groups) yield return Of(group, OpeningName(set, group.Key));
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
        string Of(GroupFit now, GroupFit? was, string of)
        {
            string words = $"{Tenths(now.Right)} of {now.Gaps}{of}";
            return was is null || (was.Gaps == now.Gaps && Tenths(was.Right) == Tenths(now.Right)) ? words : $"{words} (it was {Tenths(was.Right)}{(was.Gaps == now.Gaps ? "" : $" of {was.Gaps}")})";
        }
        string groups = string.Concat(after.Groups.Select(g => $"; {OpeningName(set, g.Key)} {Of(g, before.Groups.FirstOrDefault(b => b.Key == g.Key), "")}"));
        yield return $"  right the first time, on the average: {Of(after.Whole, before.Whole, after.Whole.Gaps == 1 ? " gap" : " gaps")}{groups}";
    }

    /// <summary>How many of several gaps come right the first time, in words: <c>about 27 of 37</c>; of a single one its chance.</summary>
    /// <param name="right">How many, on the average.</param>
    /// <param name="group">The gaps.</param>
    public static string Right(Estimate right, GroupFit group)
    {
        if (group.Gaps == 1) return Percent(right.Value == group.Right.Value ? group.Chance : group.ChanceMeasured);
        // A gap in a hundred pieces is none that anybody waits for.
        if (group.Gaps - right.Value < 0.01) return $"all {group.Gaps}";
        int whole = (int)Math.Round(right.Value);
        return whole == group.Gaps ? $"nearly all {group.Gaps}" : whole == 0 ? $"hardly any of {group.Gaps}" : $"about {whole} of {group.Gaps}";
    }

    /// <summary>The chance that all of several come right at once, now and then: <c>3 %, then 24 %</c>.</summary>
    public static string AllAtOnce(GroupFit group)
    {
        (string now, string then) = (Percent(group.Chance), Percent(group.ChanceMeasured));
        return now == then ? now : $"{now}, then {then}";
    }

    // Never more than it is: 36.97 of 37 are not all of them.
    private static string Tenths(Estimate right) => (Math.Floor((right.Value + 0.001) * 10) / 10).ToString("0.0", CultureInfo.InvariantCulture);

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
        return $"{More(reading)} more of {reading.Gaps} {(reading.Gaps == 1 ? "gap" : "gaps")} right";
    }

    private static string More(MeasureFirst reading) => reading.MoreFit.Value < 0.05 ? "under 0.1" : reading.MoreFit.Value.ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>How the whole piece stands once it is read: <c>about 29 of 37</c>.</summary>
    public static string RightThen(FitReport report, MeasureFirst reading) => $"{Right(reading.RightThen, report.Whole with { ChanceMeasured = reading.ChanceThen })}";

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
                string more = More(reading);
                string gaps = reading.Gaps == 1 ? "of 1 gap comes right" : $"of {reading.Gaps} gaps come right";
                string what = reading.Kind == MeasureKind.FirstCut ? $"{reading.Name} [{reading.Key}]" : reading.Key.Text;
                yield return $"  {index + 1,2}. {what}, with a {reading.Instrument}: {more} more {gaps}; {RightThen(report, reading)} of the piece then{(reading.Kind == MeasureKind.Awaited ? " (parts wait for it)" : "")}";
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
