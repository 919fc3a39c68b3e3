using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Doors;

/// <summary>
/// Slab doors of solid wood: their grain stands upright, so they grow wider in damp air, away from their hinges. The gap at the closing edge, or where a pair
/// meets, is larger by what they move; one that was given must hold it.
/// </summary>
/// <param name="Room">What the doors of an opening are narrower, all together; null where the gap was given.</param>
/// <param name="Of">Their boards.</param>
internal sealed record SlabRoom(QuantityKey? Room, Panel Of)
{
    /// <summary>What comes off the width they share.</summary>
    public ImmutableArray<Term> Less => Room is { } room ? [Term.From("room for what they move", -1, room)] : [];

    /// <summary>The room of slabs of solid wood; null for other doors, and for a single one that lies over the edges and meets nothing.</summary>
    public static SlabRoom? Define(Book book, Space space, DoorKind kind, int count)
    {
        if (kind.Make is not Slab slab || book.Piece.Materials.GetValueOrDefault(slab.Of.Text) is not Panel panel || WoodMoves.Solid(panel) is not { } wood) return null;
        if (kind.Lie != DoorLie.Inset && count == 1) return null;
        if (kind.Gap is not null) return new(null, panel);
        QuantityKey wide = kind.Lie == DoorLie.Inset ? space.Width : space.Face.Width;
        return new(book.Define(space.Prefix, "door-room", $"{space.Name}, what its doors of solid wood move across their grain", new Sum(WoodMoves.Term(panel, wood, book.Piece.MoistureChange, wide))), panel);
    }

    /// <summary>Says where a gap that was given does not hold what the doors move.</summary>
    public void Check(Book book, Space space, DoorKind kind, ImmutableArray<MadeDoor> made)
    {
        if (Room is not null || kind.Gap is not { } gap) return;
        ExactLength needs = made.Aggregate(ExactLength.Zero, (sum, door) => sum + book.Value(WoodMoves.Of(book, door.Hung, $"door {door.Hung}", Of, door.Width)!.Value));
        if (gap.Value < needs)
            book.NoteOnce("wood.no-room", Severity.Warn, space.Owner, $"The doors of {space.Name} move {book.Say(needs)} across their grain; a gap of {book.Say(gap.Value)} {(made.Length > 1 ? "where they meet" : "beside them")} closes in damp air, and they bind.",
                $"Leave {book.SayAtLeast(needs)} or more, or leave {book.Hand.Key("gap")} out to have it worked out; a framed door or one of plywood moves less.", gap.Place);
    }
}
