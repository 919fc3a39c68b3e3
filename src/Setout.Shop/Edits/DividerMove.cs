using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>A place that a divider is drawn to while it is dragged.</summary>
/// <param name="Size">The size of the opening before it then.</param>
/// <param name="Typed">The same as it is typed.</param>
/// <param name="Words">What is there, such as <c>equal spaces</c>.</param>
public sealed record DividerSnap(ExactLength Size, string Typed, string Words);

/// <summary>How a partition, a deck, a pair of rails or of posts can be moved between its two openings.</summary>
/// <param name="Key">The divider.</param>
/// <param name="IsAcross">True where it moves to the left and right, false up and down.</param>
/// <param name="Before">The key of the opening at its left or above it.</param>
/// <param name="After">The key of that at its right or below it.</param>
/// <param name="Size">The size of the one before it now.</param>
/// <param name="Room">The sizes of both together: it stands somewhere between nought and this.</param>
/// <param name="Space">Where it stands in the piece, with its thickness.</param>
/// <param name="Snaps">Places worth stopping at, from nought on.</param>
public sealed record DividerMove(string Key, bool IsAcross, string Before, string After, ExactLength Size, ExactLength Room, Placement Space, ImmutableArray<DividerSnap> Snaps)
{
    /// <summary>Of a pair of posts: the part that is drawn for it and for the others of its frame; empty for any other divider.</summary>
    public string Posts { get; init; } = "";

    /// <summary>All dividers of a piece that can be moved by hand: those between two listed openings whose sizes are known.</summary>
    public static ImmutableArray<DividerMove> Of(SetPiece set)
    {
        if (set.IsStopped) return [];
        DividerMove[] all = [.. PiecePlace.In(set.Piece).Select(p => Of(set, p.Key, p.Place)).OfType<DividerMove>()];
        return [.. all.Select(m => m with { Snaps = [.. SnapsOf(set, m, all)] })];
    }

    private static DividerMove? Of(SetPiece set, string key, PiecePlace place)
    {
        if (place.Division is not { } division || PiecePlace.IsCounted(division) || division.Items[place.Index] is not Divider
            || place.Index == 0 || place.Index + 1 >= division.Items.Length || division.Items[place.Index - 1] is not Opening before || division.Items[place.Index + 1] is not Opening after) return null;
        string what = division.IsAcross ? "width" : "height";
        if (set.Openings.FirstOrDefault(o => o.Key == before.Key)?.Space is not { } low || set.Openings.FirstOrDefault(o => o.Key == after.Key)?.Space is not { } high) return null;
        if (SizeOf(set, before, what) is not { } size || SizeOf(set, after, what) is not { } other) return null;
        ExactLength Most(ExactLength a, ExactLength b) => ExactLength.Max(a, b);
        Placement between = division.IsAcross
            ? low with { X = low.X + low.SizeX, SizeX = Most(ExactLength.Zero, high.X - low.X - low.SizeX) }
            : low with { Z = high.Z + high.SizeZ, SizeZ = Most(ExactLength.Zero, low.Z - high.Z - high.SizeZ) };
        return new(key, division.IsAcross, before.Key, after.Key, size, size + other, between, []) { Posts = place.IsBay ? $"{place.Structure.Key}.post" : "" };
    }

    private static ExactLength? SizeOf(SetPiece set, Opening opening, string what)
    {
        if (opening.Size.Value is { } given) return given;
        foreach (string word in new[] { $"set-{what}", what })
            if (set.Worked.Values.TryGetValue(QuantityKey.Of(opening.Key, word), out Worked? worked)) return worked.Value;
        return null;
    }

    private static IEnumerable<DividerSnap> SnapsOf(SetPiece set, DividerMove move, IReadOnlyList<DividerMove> all)
    {
        IEnumerable<(ExactLength Size, string Words)> places =
        [
            (move.Room / Rational.Of(2), "equal spaces"),
            (move.Room / Rational.Of(3), $"a third {(move.IsAcross ? "at the left" : "above")}"),
            (move.Room * Rational.Of(2) / Rational.Of(3), $"a third {(move.IsAcross ? "at the right" : "below")}"),
            // In line: its face towards the first opening with that of another, wherever that stands.
            .. all.Where(o => o.Key != move.Key && o.IsAcross == move.IsAcross)
                .Select(o => (move.Size + (move.IsAcross ? o.Space.X - move.Space.X : move.Space.Z + move.Space.SizeZ - o.Space.Z - o.Space.SizeZ), $"in line with {o.Key}")),
        ];
        return places.Select(p => (Size: p.Size.RoundTo(set.Grid, Rounding.Nearest).Value.ToExact(), p.Words)).Where(p => p.Size.Sign > 0 && p.Size < move.Room)
            .GroupBy(p => p.Size).OrderBy(g => g.Key).Select(g => new DividerSnap(g.Key, Typed(set, g.Key), string.Join(", ", g.Select(p => p.Words).Distinct())));
    }

    private static string Typed(SetPiece set, ExactLength length)
    {
        Figure figure = LengthFormat.For(set.Piece.Unit).Bare.Format(length);
        return figure.IsExact ? figure.ToString() : NamedLength.Exactly(length);
    }
}
