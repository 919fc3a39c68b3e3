using Setout.Core.Pieces;

namespace Setout.Shop.Edits;

/// <summary>Where an opening, or what stands between two, is found in a piece.</summary>
/// <param name="Structure">The frame or case.</param>
/// <param name="Division">The division it is in; null for one that stands back to back with another.</param>
/// <param name="Index">Which item of that.</param>
/// <param name="Content">What the opening holds; null for open.</param>
internal sealed record PiecePlace(Structure Structure, Division? Division, int Index, OpeningContent? Content)
{
    /// <summary>The opening whose division it is in; null where that is the structure itself.</summary>
    public Opening? Around { get; init; }

    /// <summary>True for a bay of a frame.</summary>
    public bool IsBay => Structure is Frame && Around is null && Division is not null;

    /// <summary>True for openings that are counted, not listed: all have one place in the text.</summary>
    public static bool IsCounted(OpeningContent? content) => content is Division { Items: [var first, var second, ..] } && first.Place == second.Place;

    /// <summary>All openings and dividers of a piece by their keys.</summary>
    public static IEnumerable<(string Key, PiecePlace Place)> In(Piece piece) => piece.Members.OfType<Structure>().SelectMany(s => s switch
    {
        Frame frame => Within(s, frame.Bays, null),
        Case @case => Within(s, @case.Content, null),
        _ => [],
    });

    private static IEnumerable<(string, PiecePlace)> Within(Structure structure, OpeningContent? content, Opening? around)
    {
        if (content is DoorFilling doors) return Within(structure, doors.Behind, around);
        if (content is not Division division) return [];
        return division.Items.SelectMany((item, i) => item is not Opening opening
            ? [(item.Key, new PiecePlace(structure, division, i, null) { Around = around })]
            : Within(structure, opening.Content, opening).Concat(opening.Behind is { } behind ? Within(structure, behind.Content, behind).Prepend((behind.Key, new PiecePlace(structure, null, 0, behind.Content) { Around = opening })) : [])
                .Prepend((opening.Key, new PiecePlace(structure, division, i, opening.Content) { Around = around })));
    }

    /// <summary>What holds a drawer, a shelf or a door: the key of an opening or of a case, and what that holds.</summary>
    public static (string Key, OpeningContent Content)? Holding(Piece piece, string key)
    {
        foreach ((string opening, OpeningContent? content) in In(piece).Where(p => p.Place.Division?.Items[p.Place.Index] is Opening or null).Select(p => (p.Key, p.Place.Content)).Concat(piece.Members.OfType<Case>().Select(c => (c.Key, c.Content))))
        {
            foreach (OpeningContent? layer in new[] { content, (content as DoorFilling)?.Behind })
            {
                if (layer is DrawerBank bank && bank.Drawers.Any(d => d.Key == key)) return (opening, layer);
                if (layer is Shelves shelves && shelves.Keys.Any(k => k.Text == key)) return (opening, layer);
                if (layer is DoorFilling doors && doors.Keys.Any(k => k.Text == key)) return (opening, layer);
            }
        }
        return null;
    }
}
