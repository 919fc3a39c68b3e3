using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Drawing.Fits;
using Setout.Drawing.Scenes;
using Setout.Shop.Plans;
using Spread = Setout.Core.Fit.Spread;

namespace Setout.Shop.Drawings;

/// <summary>Turns what will fit into drawings of its gaps, those least likely to fit first.</summary>
public static class GapPictures
{
    /// <summary>How to read the drawing.</summary>
    public const string Legend =
        "Between the two uprights it fits; the chance of that stands at the right. The stroke across is where it stands, the thick line where it lies about two times " +
        "in three, the thin line the worst case; a zigzag lies outside. The second line is once all that is to be measured first has been measured.";

    /// <summary>The drawings; none when there is no gap.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="gaps">What to draw, in this order.</param>
    /// <param name="paper">The paper; more than one drawing where they do not fit on one.</param>
    public static ImmutableArray<Scene> Of(SetPiece set, ImmutableArray<AlikeGaps> gaps, GapPaper paper)
    {
        if (gaps.Length == 0) return [];
        int count = gaps.Sum(g => g.Gaps.Length);
        return GapDrawing.Draw(new GapsInput($"{set.Piece.Name}, gaps", $"{count} gaps with the window each must land in, those least likely to fit first.", set.Piece.Shown, [.. gaps.Select(g => Row(set, g))])
        {
            Footer = Phrase.Of(gaps.Any(g => OutBy(g.First) is not null) ? $"{Legend} A ring: it stands outside." : Legend),
        }, paper);
    }

    /// <summary>All that is drawn of gaps, in words: <c>stands at 1/32, at worst -17/64 to 17/64; it may be 0 to 1/16</c>.</summary>
    public static string Words(SetPiece set, GapFit fit)
    {
        LengthFormat fine = Fine(set);
        string then = fit.Measured == fit.Now ? "" : $" Once measured, at worst {fine.Text(fit.Measured.WorstLow)} to {fine.Text(fit.Measured.WorstHigh)}.";
        string isOut = OutBy(fit) is { } by ? $", out by {fine.Text(by)}" : "";
        return $"Stands at {fine.Text(fit.Now.Value)}{isOut}, at worst {fine.Text(fit.Now.WorstLow)} to {fine.Text(fit.Now.WorstHigh)}; it may be {fine.Text(fit.Gap.Least)} to {fine.Text(fit.Gap.Most)} {UnitOf(set)}.{then}";
    }

    /// <summary>The chance in words: <c>39 %, then 78 %</c>; one alone where measuring changes nothing.</summary>
    public static string Chances(Chance now, Chance then) =>
        FitLines.Percent(now) == FitLines.Percent(then) ? FitLines.Percent(now) : $"{FitLines.Percent(now)}, then {FitLines.Percent(then)}";

    /// <summary>By how much a gap stands outside its window, or null.</summary>
    public static ExactLength? OutBy(GapFit fit)
    {
        ExactLength value = fit.Now.Value;
        return value < fit.Gap.Least ? fit.Gap.Least - value : value > fit.Gap.Most ? value - fit.Gap.Most : null;
    }

    private static LengthFormat Fine(SetPiece set) => set.Piece.Shown == LengthUnit.Inch ? LengthFormat.Inches(64).Bare : LengthFormat.Millimetres(1).Bare;

    private static string UnitOf(SetPiece set) => set.Piece.Shown.Mark;

    private static GapRow Row(SetPiece set, AlikeGaps alike)
    {
        LengthFormat fine = Fine(set);
        GapFit fit = alike.First;
        GapLimit Limit(ExactLength at) => new(at, Phrase.Of(fine.Format(at)));
        GapReach Reach(Spread spread, Chance chance) => new(Limit(spread.WorstLow), Limit(spread.WorstHigh), spread.Mean, spread.StandardDeviation, Phrase.Of(FitLines.Percent(chance)));
        return new(fit.Gap.Key.Text, $"{alike.Name}. {Words(set, fit)} Chance: {Chances(fit.Chance, fit.ChanceMeasured)}.", Phrase.Of(alike.Name), Limit(fit.Gap.Least), Limit(fit.Gap.Most), fit.Now.Value, Reach(fit.Now, fit.Chance))
        {
            Note = Phrase.Of("stands at ").Add(fine.Format(fit.Now.Value)),
            Then = fit.Measured == fit.Now ? null : Reach(fit.Measured, fit.ChanceMeasured),
            Out = OutBy(fit) is { } by ? Phrase.Of("out by ").Add(fine.Format(by)) : Phrase.Empty,
        };
    }
}
