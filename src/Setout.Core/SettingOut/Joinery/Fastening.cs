using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>
/// Which screw, and how many. The length follows from what it passes through and what it bites into; a point never comes nearer to a far face
/// than <see cref="ShortOfFace"/>. Common practice, no source, unless said otherwise.
/// </summary>
internal static class Fastening
{
    /// <summary>Said beside every count.</summary>
    public const string SpacingWords = "about every 6 to 8 in, no fewer than 2; common practice, no source";

    /// <summary>How much wood stays between the point of a screw and the far face. Common practice, no source.</summary>
    public static readonly ExactLength ShortOfFace = ExactLength.FromInches(Rational.Of(1, 8));

    /// <summary>The least bite that holds a panel: along an edge, or in its thickness. Common practice, no source.</summary>
    public static readonly ExactLength LeastBiteInEdge = ExactLength.FromInches(Rational.Of(3, 4)), LeastBiteInFace = ExactLength.FromInches(Rational.Of(1, 4));

    /// <summary>The least thickness that holds a screw in its edge: what is sold as 1/2 in (12 mm). Common practice, no source.</summary>
    public static readonly ExactLength HoldsInEdge = ExactLength.FromInches(Rational.Of(7, 16));

    /// <summary>The least thickness that a screw holds in without coming out at the far face, by what is sold as 3/8 in (9 mm). Common practice, no source.</summary>
    public static readonly ExactLength HoldsInFace = LeastBiteInFace + ShortOfFace - ExactLength.FromInches(Rational.Of(1, 32));

    // Lengths that shops keep, in the unit of the piece. Common practice, no source.
    private static readonly ImmutableArray<ExactLength> s_inch =
        [.. new[] { (1, 2), (5, 8), (3, 4), (1, 1), (5, 4), (3, 2), (7, 4), (2, 1), (9, 4), (5, 2), (3, 1), (7, 2), (4, 1), (5, 1), (6, 1), (8, 1) }.Select(f => ExactLength.FromInches(Rational.Of(f.Item1, f.Item2)))];

    private static readonly ImmutableArray<ExactLength> s_metric = [.. new[] { 12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 100, 120, 140, 160, 200 }.Select(l => ExactLength.FromMillimetres(l))];

    /// <summary>One near each end and one about every 8 in between.</summary>
    public static int ScrewsAlong(ExactLength length) =>
        Math.Max(2, (int)(length.Inches / 8).Round(Rounding.Up) + 1);

    /// <summary>The shortest screw that passes through and bites at least 3/4 in along an edge or into a post, where no face is near.</summary>
    public static ExactLength IntoEdge(LengthUnit unit, ExactLength through) =>
        Series(unit).Where(l => l >= through + LeastBiteInEdge).DefaultIfEmpty(Series(unit).Max()).Min();

    /// <summary>
    /// The longest screw that passes through and stops short of the far face of what it goes into; null when none of the series bites enough.
    /// </summary>
    public static ExactLength? IntoFace(LengthUnit unit, ExactLength through, ExactLength into)
    {
        var fits = Series(unit).Where(l => l <= through + into - ShortOfFace && l >= through + LeastBiteInFace).ToList();
        return fits.Count == 0 ? null : fits.Max();
    }

    /// <summary>A screw through one panel into the edge of another.</summary>
    public static string PanelScrew(Book book, Panel into, ExactLength through)
    {
        string kind = into.Kind is "mdf" or "particleboard" ? "Panel screw, straight shank" : "Wood screw no. 8 (4 mm)";
        return $"{kind}, {book.Say(IntoEdge(book.Piece.Unit, through))}";
    }

    /// <summary>Says where a screw would split the edge it goes into: less than what is sold as 1/2 in (12 mm).</summary>
    public static void CheckEdge(Book book, string owner, string name, ExactLength thick, Place place)
    {
        if (thick < HoldsInEdge && !book.HasUnknown)
            book.NoteOnce("joint.edge-too-thin", Severity.Warn, owner, $"Screws into the edges of {name}, {book.Say(thick)} thick, split them.",
                $"Use stock of {book.SayAtLeast(HoldsInEdge)} or more, or a joint that is glued into a rabbet or a dado. (common practice, no source)", place);
    }

    /// <summary>Says where stock is too thin for pocket screws: thinner than any that the table has one for.</summary>
    public static void CheckPocket(Book book, string owner, string name, ExactLength thick, Place place)
    {
        if (thick < HoldsInEdge && !book.HasUnknown && TradeRules.PocketScrewFor(thick) is null)
            book.NoteOnce("joint.no-pocket-screw", Severity.Warn, owner, $"No pocket screw suits {name}, {book.Say(thick)} thick: it comes out at the face.",
                $"Use stock of {book.SayAtLeast(HoldsInEdge)} or more, or another joint. (common practice, no source)", place);
    }

    /// <summary>The pocket screw for joining stock of a thickness, with its source.</summary>
    public static (string Name, string Source) PocketScrew(Book book, ExactLength stock)
    {
        if (TradeRules.PocketScrewFor(stock) is not { } row) return ($"Pocket screw, coarse, to suit {book.Say(stock)} stock", "no row in the table; read the jig's own chart");
        string length = LengthFormat.Inch.Text(row.Screw);
        // Pocket screws are sold by the inch; a metric bench sheet says both.
        string both = book.Piece.Unit == LengthUnit.Inch ? length : $"{LengthFormat.Millimetres(0).Text(row.Screw)} ({length})";
        return ($"Pocket screw, coarse, {both}", row.Source);
    }

    private static ImmutableArray<ExactLength> Series(LengthUnit unit) => unit == LengthUnit.Inch ? s_inch : s_metric;
}

/// <summary>What diagonals should read.</summary>
internal static class Diagonals
{
    /// <summary>The diagonal of a rectangle on the shop's grid.</summary>
    public static Length Of(Grid grid, ExactLength width, ExactLength height) =>
        ApproximateLength.Diagonal(width, height).RoundTo(grid, Rounding.Nearest);
}
