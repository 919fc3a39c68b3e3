using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Doors;

/// <summary>
/// What a door is pulled by and what holds it shut, both at its closing edge: in the middle of its height, or as far from one end as on every door of its row.
/// </summary>
internal static class DoorHandleRule
{
    /// <summary>Writes the holes of the handle, and the catch.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="kind">The kind of door.</param>
    /// <param name="spot">The door.</param>
    /// <param name="door">As it comes out.</param>
    /// <param name="onLeft">True where it hangs on the left, and so closes on the right.</param>
    public static void Write(Book book, DoorKind kind, DoorSpot spot, MadeDoor door, bool onLeft)
    {
        string edge = onLeft ? "right" : "left";
        if (kind.Handles is { } handles) Handle(book, kind, handles, spot, door, edge);
        if (kind.Catch is not { } word) return;
        book.Hardware.Add(new(spot.Key, word, 1, "piece", "one a door, with its screws; common practice, no source"));
        book.Steps.Add(new(Stage.Doors, $"Fix the catch of {spot.Name} inside, at its {edge} edge: its body under what closes the opening above, its plate on the back of the door where the two meet when the door is shut.", [], null, "screws"));
    }

    private static void Handle(Book book, DoorKind kind, DoorHandles handles, DoorSpot spot, MadeDoor door, string edge)
    {
        (string key, string name) = (spot.Key, spot.Name);
        QuantityKey? apart = handles.Apart is { } pitch ? book.Define(key, "handle.apart", $"{name}, holes of its handle apart", pitch.Stated) : null;
        QuantityKey across = book.Define(key, "handle.across", $"{name}, from its closing edge to its handle", handles.FromEdge?.Stated
            ?? (door.Stile is { } stile ? new Sum([Term.From("stile", 1, stile)], Rational.Of(1, 2)) : (Working)Usual.Or(book, null, "HD3", "from the edge of a slab")));
        bool fromBottom = handles.FromBottom is not null;
        // Two holes stand one above the other.
        QuantityKey along = book.Define(key, "handle.along", $"{name}, from its {(fromBottom ? "lower" : "upper")} end to the first hole of its handle", (handles.FromBottom ?? handles.FromTop)?.Stated
            ?? (handles.IsInLine ? Usual.Or(book, null, "HD1", "in line across a row")
            : (Working)new Sum([Term.From("door", 1, door.Height), .. apart is { } a ? [Term.From("holes apart", -1, a)] : ImmutableArray<Term>.Empty], Rational.Of(1, 2))));
        QuantityKey hole = book.Define(key, "handle.hole", $"{name}, holes of its handle", handles.Hole?.Stated ?? Usual.Or(book, null, "HD2", "for its screws"));
        string end = fromBottom ? "lower" : "upper", where = door.Stile is null ? "" : " in the stile that closes";
        book.Machinings.Add(new(door.Hung, apart is null ? $"Drill one hole through{where} for the handle, near the {edge} edge" : $"Drill two holes through{where} for the handle, upright, near the {edge} edge",
            [("from that edge", across), ($"from the {end} end", along), .. apart is { } between ? [("apart", between)] : ImmutableArray<(string, QuantityKey)>.Empty, ("hole", hole)])
        { Numbers = Hung(book, door.Hung, edge == "left"), On = Face.Outside, Edge = edge == "left" ? Face.LeftEdge : Face.RightEdge, Caution = "drill" });
        book.Hardware.Add(new(key, handles.Of, 1, "piece", "one a door"));
        ExactLength half = book.Value(hole) / 2, wide = book.Value(door.Stile ?? door.Width), at = book.Value(across), first = book.Value(along), last = first + book.ValueOr0(apart), high = book.Value(door.Height);
        if (at < half || at + half > wide || first < half || last + half > high)
            book.NoteOnce("handle.off-door", Severity.Stop, key, $"The holes of the handle of {name} do not lie on {(door.Stile is null ? "it" : "its stile")}, {book.Say(wide)} by {book.Say(high)}.",
                at < half || at + half > wide ? $"Make {book.Hand.Key("from edge")} {book.Say(half)} to {book.Say(wide - half)}." : $"Leave {book.Hand.Key("from top")} or {book.Hand.Key("from bottom")} out, or make it smaller.", handles.Place);
        else if (door.Solid is { } solid && at + half > book.Value(solid))
            book.NoteOnce("handle.in-groove", Severity.Warn, key, $"The holes of the handle of {name} come into the groove of its panel, {book.Say(book.Value(solid))} from the edge.", $"Make {book.Hand.Key("from edge")} {book.Say(book.Value(solid) - half)} at most.", handles.Place);
    }

    /// <summary>Which member of a door is at its left or right: of a slab the only one, of two stiles one.</summary>
    internal static System.Collections.Immutable.ImmutableArray<int> Hung(Book book, string part, bool isLeft) =>
        [.. Bored.Members(book, part).OrderBy(m => isLeft ? m.Box.X : -m.Box.X).Take(1).Select(m => m.Number)];
}
