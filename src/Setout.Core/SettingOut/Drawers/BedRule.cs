using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>
/// What a drawer runs on between rails: a runner under each of its sides, from the front rail to the rear one, its upper face flush with theirs. What is
/// overhead keeps it from tipping: the runners of the rails above, or a pair of kickers between them, flush with their lower edges.
/// </summary>
internal static class BedRule
{
    /// <summary>Writes what is not there yet: a drawer from the other side may have brought it.</summary>
    public static void Write(Box box, Stick stick)
    {
        (Book book, Space space) = (box.Book, box.Space);
        Member(box, stick, space.Below!, isRunner: true);
        if (space.Above is { } above) Member(box, stick, above, isRunner: false);
        if (space.Bearers is null && (space.Edges.Left.Part.Length == 0 || space.Edges.Right.Part.Length == 0))
            book.NoteOnce("drawer.not-guided", Severity.Note, space.Owner, $"Beside {box.Name} there is nothing between front and rear post that guides it.", "Add 'bearers: STICK' to the bay.", space.Place);
    }

    /// <summary>A rail that a front comes down before stands back at least as far as the front is thick.</summary>
    public static void CheckCovered(Book book, Space space, bool isInset, QuantityKey front)
    {
        RailPair rail = space.Below!;
        ExactLength thick = book.Value(front), room = rail.Front - space.Y;
        if (!isInset)
            book.NoteOnce("rail.covered-idle", Severity.Stop, rail.Part, $"'covered' is of inset fronts, but those of {space.Name} lie on the face.", $"Leave {book.Hand.Key("covered")} out, {book.Hand.OrWrite("fronts", "inset")} in the kind of drawer.", space.Place);
        else if (room < thick)
            book.NoteOnce("rail.in-the-way", Severity.Stop, rail.Part, $"A front {book.Say(thick)} thick cannot come down before {rail.Name}, which stands {book.Say(room)} back.", $"Give the rail a setback that is {book.Say(thick - room)} larger, or leave {book.Hand.Key("covered")} out.", space.Place);
    }

    private static void Member(Box box, Stick stick, RailPair rails, bool isRunner)
    {
        (Book book, Space space) = (box.Book, box.Space);
        bool isFlat = rails.Laid == Laid.Flat;
        QuantityKey thin = Book.ThicknessOf(stick.Name), wide = Book.SectionWidthOf(stick.Name);
        ExactLength high = book.Value(isFlat ? thin : wide), across = book.Value(isFlat ? wide : thin), rail = book.Value(rails.High);
        ExactLength z = isRunner ? space.Z - high : space.Z + book.Value(space.Height), along = book.Value(new Sum(rails.Between));
        // Where they stand face to face the rails carry by themselves.
        if (along.Sign <= 0) return;
        Placement left = new(space.X, rails.Y, z, across, along, high), right = left with { X = space.X + book.Value(space.Width) - across };
        // Runners of the drawer above serve as kickers, and those of a drawer from the other side as runners.
        if (book.Parts.Any(p => p.Role is PartRole.Runner or PartRole.Kicker && p.Placements.Any(b => b.Within(book.Corner.Place(left)).Sign > 0))) return;
        string word = isRunner ? "runner" : "kicker", key = $"{space.Owner}.{word}", name = $"{space.Name} {word}";
        if (book.Knows(QuantityKey.Of(key, "length"))) return;
        if (high > rail)
            book.NoteOnce("runner.higher-than-rail", Severity.Stop, space.Owner, $"Sticks of {stick.Name} lie {book.Say(high)} high between rails of {book.Say(rail)}: they would stand into the opening {(isRunner ? "below" : "above")}.",
                $"Use sticks of {book.Say(rail)} or less.", box.Kind.Runner!.Value.Place);
        PartRole role = isRunner ? PartRole.Runner : PartRole.Kicker;
        PartSize length = book.DefineSize(space.Owner, $"{word}.length", $"{name}, length", new Sum(rails.Between), role);
        ExactLength cut = book.Value(length.AsCut);
        book.Add(new(key, $"{space.Owner}{(isRunner ? 'n' : 'k')}", name, role, stick.Name, length, Book.Uncut(wide), thin, 2, Grain.Keep, [left with { SizeY = cut }, right with { SizeY = cut }], space.Place));
        book.Joints.Add(new(JointKind.Butt, key, Face.Ends, rails.Part, Face.Inside, "glue and two pocket screws an end"));
        Joints.Between(book, $"{space.Owner}.{word}", name, book.Define(space.Owner, $"{word}.clear", $"{name}, clear between the rails", new Sum(rails.Between)), length, []);
        (string pocket, string source) = Fastening.PocketScrew(book, book.Value(thin));
        book.Hardware.Add(new(space.Owner, pocket, 8, "piece", $"2 {word}s, 2 at each end; {source}"));
        string where = isRunner ? "upper faces flush with the upper edges of the rails" : "lower faces flush with the lower edges of the rails", why = isRunner ? "the sides of the drawer run on them" : "they keep the drawer from tipping";
        book.Steps.Add(new(Stage.Inside, $"Set a {word} at each side of {space.Name} between the front and the rear of {rails.Name}, {where}, square to the front: {why}. Glue and pocket-screw it. Wax what rubs.", [key], null, "screws"));
    }
}
