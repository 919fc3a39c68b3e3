using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Shop.Edits;
using Setout.Workbench.Shell;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.SetOut;

/// <summary>What the script needs to let sizes be typed and dividers be dragged on the drawing without asking for a page first.</summary>
/// <param name="Sizes">The dimensions with what is typed at them, as JSON.</param>
/// <param name="Grips">The dividers with where they can go, as JSON.</param>
/// <param name="Wide">Scale and place of the drawing for a desk: 1 to how many, paper x of nought, paper y of the floor. Empty where nothing is dragged.</param>
/// <param name="Narrow">The same of that for a phone.</param>
public sealed record LiveData(string Sizes, string Grips, string Wide, string Narrow)
{
    /// <summary>Why what is chosen is not moved by hand; empty where it is, and for nothing chosen.</summary>
    public string Stays { get; init; } = "";

    private sealed record Typed(string Key, string At, string Choice, string Field, string Words, string Text, string Usual, string Href);

    private sealed record Dimension(string Key, Typed? Own, ImmutableArray<Typed> From);

    private sealed record Snap(double Size, string Typed, string Words);

    private sealed record Grip(string Key, string Also, bool Across, string Before, string After, double Size, double Room, ImmutableArray<long> Step, ImmutableArray<Snap> Snaps, ImmutableArray<double> Box);

    private static readonly JsonSerializerOptions s_json = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    internal static LiveData Of(SetPiece set, string piece, IEnumerable<string> dimensions, Views from, ElevationDrawing wide, ElevationDrawing narrow, Shop.Texts.Shop shop, string? asked) =>
        new(SizesOf(set, piece, dimensions, shop), from == Views.Front ? JsonSerializer.Serialize(DividerMove.Of(set).Select(m => Of(set, m)), s_json) : "[]", Place(wide), Place(narrow))
        {
            Stays = asked is not { Length: > 0 } ? "" : from == Views.Front ? StandsStill.Why(set, asked.Split('#')[0]) ?? "" : MovedInFront,
        };

    /// <summary>Of a view on which sizes are typed and nothing is moved by hand.</summary>
    internal static LiveData OfSizes(SetPiece set, string piece, IEnumerable<string> dimensions, Shop.Texts.Shop shop, string? asked) =>
        new(SizesOf(set, piece, dimensions, shop), "[]", "", "") { Stays = asked is { Length: > 0 } ? MovedInFront : "" };

    private const string MovedInFront = "What stands between openings is moved in the view from the front.";

    private static string SizesOf(SetPiece set, string piece, IEnumerable<string> dimensions, Shop.Texts.Shop shop)
    {
        Typed Given(GivenSize given) => new(given.Key, given.At, given.Choice.Id, given.Field.Name, given.Choice.Words, given.Field.Default, given.Field.Usual, Links.Size(piece, given.Key));
        ImmutableArray<Dimension> sizes = [.. dimensions.Select(k => DrawnSize.Of(set, k, shop)).Select(d => new Dimension(d.Key, d.Own is null ? null : Given(d.Own), [.. d.From.Select(Given)]))];
        return JsonSerializer.Serialize(sizes, s_json);
    }

    private static Grip Of(SetPiece set, DividerMove move)
    {
        bool isInch = set.Piece.Unit == LengthUnit.Inch;
        double Of(ExactLength length) => (isInch ? length.Inches : length.Millimetres).ToDouble();
        Core.Measures.Rational step = isInch ? set.Grid.Step.ToExact().Inches : set.Grid.Step.ToExact().Millimetres;
        static double Short(ExactLength length) => Math.Round(length.ToNearestTick().ApproximateMillimetres, 3);
        Placement space = move.Space;
        return new(move.Key, move.Posts, move.IsAcross, move.Before, move.After, Of(move.Size), Of(move.Room), [(long)step.Numerator, (long)step.Denominator],
            [.. move.Snaps.Select(s => new Snap(Of(s.Size), s.Typed, s.Words))], [Short(space.X), Short(space.Z), Short(space.SizeX), Short(space.SizeZ)]);
    }

    private static string Place(ElevationDrawing drawing) =>
        string.Create(CultureInfo.InvariantCulture, $"{drawing.Scale} {drawing.Origin.X:0.###} {drawing.Origin.Y:0.###}");
}
