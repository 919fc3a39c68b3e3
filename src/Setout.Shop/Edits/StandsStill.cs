using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Edits;

/// <summary>Why something on the drawing cannot be moved by hand, and what is done instead.</summary>
public static class StandsStill
{
    /// <summary>A sentence or two; null for what <see cref="DividerMove"/> moves, and for what is not known.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="key">What is chosen: a thing, a part (<c>C.side</c>) or a size.</param>
    public static string? Why(SetPiece set, string key)
    {
        if (set.IsStopped || key.Length == 0 || DividerMove.Of(set).Any(m => m.Key == key || key == m.Posts || key.StartsWith(m.Key + ".", StringComparison.Ordinal))) return null;
        Piece piece = set.Piece;
        bool isPart = set.Parts.Any(p => p.Key == key);
        if (!isPart && !piece.Keys.ContainsKey(key) && set.Worked.Values.ContainsKey(new(key))) return "A size is not moved but typed: Enter on it opens it.";
        string owner = piece.Keys.ContainsKey(key) ? key : new QuantityKey(key).Owner;
        if (PiecePlace.Holding(piece, owner) is { } held) return OfHeld(owner, held.Key, held.Content);
        if (PiecePlace.In(piece).FirstOrDefault(p => p.Key == owner) is { Place: { } place }) return isPart && key != owner ? ByTheSizesOf(place.Structure.Key) : OfPlace(set, owner, place);
        return piece.Members.FirstOrDefault(m => m.Key == owner) switch
        {
            Structure when isPart => ByTheSizesOf(owner),
            Structure => $"{owner} stands where the text says, beside or on others: it is not moved by hand.",
            Top => $"{owner} lies on what it covers: type its overhangs, or the height of what it lies on.",
            _ => isPart || piece.Keys.ContainsKey(key) ? "It stands where the parts round it put it." : null,
        };
    }

    private static string ByTheSizesOf(string structure) => $"It stands where the sizes of {structure} put it: type one of those.";

    private static string OfHeld(string key, string opening, OpeningContent content) => content switch
    {
        Shelves { Fit: ShelfFit.Adjustable } => $"{key} hangs on pins and is drawn where the shelves of {opening} share its height evenly. At the bench it goes into any of its holes.",
        Shelves => $"{key} cannot be moved by itself: the shelves of {opening} share its height evenly. A deck in place of a shelf can be moved.",
        DrawerBank { Graduated: not null } => $"{key} stands where the graduated heights of the fronts in {opening} put it.",
        DrawerBank => $"{key} stands where the heights of the fronts in {opening} put it: type the height of a front, or move {key} up or down by a whole place.",
        _ => $"{key} hangs where {opening} is: move what stands beside that.",
    };

    private static string? OfPlace(SetPiece set, string key, PiecePlace place)
    {
        if (PiecePlace.IsCounted(place.Division)) return "The openings there are counted and equal. List them one by one first; then what stands between them can be moved.";
        if (place.Division is not { } division) return $"{key} has half of the depth, back to back with the opening before it.";
        if (division.Items[place.Index] is Divider) return $"{key} stands beside an opening whose size is not known: mend the division in the text.";
        string[] beside = [.. DividerMove.Of(set).Where(m => m.Before == key || m.After == key).Select(m => m.Key)];
        if (beside.Length > 0) return $"An opening is moved by what stands beside it: choose {string.Join(" or ", beside)}.";
        return division.Items.Length == 1 ? $"{key} fills {place.Around?.Key ?? place.Structure.Key}: there is nothing beside it to move." : $"{key} is as wide and high as what stands round it.";
    }
}
