using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>Shelves on pins in rows of holes: each stands on the hole nearest to an even share of the height, and is shorter than the opening by its play.</summary>
internal static class PinShelfRule
{
    internal const string Metric = "5 mm";

    /// <summary>The holes of an opening.</summary>
    internal sealed record Rows(QuantityKey Pitch, QuantityKey First, QuantityKey Last, QuantityKey Front, QuantityKey Back, QuantityKey Depth, int Count, string Hole);

    public static void Write(Book book, Space space, Shelves shelves, Panel panel)
    {
        if (!Carriers.Has(book, space, "holes for pins")) return;
        QuantityKey t = Book.ThicknessOf(panel.Name), setback = ShelfRule.Setback(book, space, shelves);
        TradeRule usual = TradeRules.Get("SH3");
        QuantityKey play = book.Define(space.Prefix, "shelf-play", $"{space.Name}, play of its shelves, both ends together",
            shelves.Play?.Stated ?? new Stated(usual.Length, new(OriginKind.Rule, "to lift them out", usual.Cited)));
        if (!ShelfBounds.HasDepth(book, space, shelves, setback) || !ShelfBounds.HasLength(book, space, shelves, play)) return;
        if (RowsOf(book, space, shelves, setback) is not { } rows || !ShelfBounds.HasPitch(book, space, shelves, rows.Pitch, PinHoles.Diameter(rows.Hole))
            || !ShelfBounds.HasRows(book, space, shelves, rows.Front, rows.Back, PinHoles.Diameter(rows.Hole))) return;
        int count = shelves.Keys.Length, last = -1;
        ExactLength filled = Zero, height = book.Value(space.Height), thick = book.Value(t), even = (height - (thick * count)) / (count + 1);
        for (int i = 0; i < count; i++)
        {
            Named key = shelves.Keys[count - 1 - i];
            string name = $"shelf {key.Text}";
            PartSize length = book.DefineSize(key.Text, "length", $"{name}, length", new Sum(Term.From("clear width", 1, space.Width), Term.From("play", -1, play)), PartRole.Shelf);
            PartSize width = book.DefineSize(key.Text, "width", $"{name}, width", new Sum([Term.From("clear depth", 1, space.Depth), Term.From("setback", -1, setback), .. SolidShelf.Room(book, space, panel, false)]), PartRole.Shelf, panel, 1);
            ExactLength meant = (even * (i + 1)) + (thick * i);
            int nearest = (int)((meant - book.Value(rows.First)) / book.Value(rows.Pitch)).Round(Rounding.Nearest), hole = Math.Clamp(nearest, last + 1, rows.Count - count + i);
            last = hole;
            QuantityKey up = book.Define(key.Text, "up", $"{name}, its holes above the bottom of the opening",
                new Sum([Term.From("first hole", 1, rows.First), .. hole == 0 ? ImmutableArray<Term>.Empty : [Term.From("holes above it", hole, rows.Pitch)]]));
            if (book.Value(up) < filled)
                book.NoteOnce("shelf.no-room", Severity.Stop, space.Owner, $"{count} shelves {book.Say(thick)} thick on a pitch of {book.Say(book.Value(rows.Pitch))} do not go into {space.Name}, {book.Say(height)} high.", "Take shelves out.", shelves.Keys[0].Place);
            ExactLength z = space.Z + book.Value(up), x = space.X + ((book.Value(space.Width) - book.Value(length.AsCut)) / 2), y = space.Y + book.Value(setback);
            ImmutableArray<Placement> places = [new(x, y, z, book.Value(length.AsCut), book.Value(width.Made), thick)];
            book.Add(ShelfRule.Shelf(shelves, key, panel, length, width, t, places));
            ShelfStripRule.Write(book, space, shelves, key, length, null, new(x, y, z, Zero, Zero, Zero), book.Value(up) - filled);
            filled = book.Value(up) + thick;
            QuantityKey free = book.Define(key.Text, "play", $"{name}, play at its ends, both together", new Sum(Term.From("clear width", 1, space.Width), Term.From("as cut", -1, length.AsCut)));
            book.Gaps.Add(new(free, $"{name}, play at its ends", Zero, Max(book.Value(play) * 2, FromInches(Rational.Of(1, 4))), "lifts out, and stays on its pins: common practice, no source") { Group = space.Owner });
            foreach (string part in Parts(space)) book.Joints.Add(new(JointKind.Pins, key.Text, Face.Ends, part, Face.Inside, "lies on two pins") { IsLoose = true });
        }
        book.Hardware.Add(new(space.Owner, $"Shelf pin for holes of {rows.Hole}", 4 * count, "piece", "four a shelf: hardware article"));
        Bore(book, space, rows);
        ShelfStripRule.Span(book, space, shelves, panel);
        // What stands inside of the sides closes the way to a shelf that is longer than what it leaves.
        ExactLength past = space is { Edges: { Left.Frame: { } left, Right.Frame: { } right } } ? book.Value(left.In) + book.Value(right.In) : Zero;
        bool isBehind = past > book.Value(play);
        string later = isBehind ? " They go in now: past the face frame they do not go straight." : "";
        book.Steps.Add(new(isBehind ? Stage.Inside : Stage.LooseShelves, $"Put the pins of {space.Name} in, four to a shelf in holes of one height, and lay the shelves on them.{later}", [.. shelves.Keys.Reverse().Select(k => k.Text)], null, ""));
        if (isBehind)
            book.Note("shelf.behind-frame", Severity.Note, space.Owner, $"Shelves of {space.Name} are {book.Say(past - book.Value(play))} longer than the way between the members of the face frame: they go in before it, and come out again only tipped.",
                $"{book.Hand.Write("play", book.Say(past))} or more for shelves that go in and out past it.", shelves.Keys[0].Place);
    }

    private static IEnumerable<string> Parts(Space space) => Carriers.Beside(space).Select(e => e.Part).Distinct();

    private static Rows? RowsOf(Book book, Space space, Shelves shelves, QuantityKey setback)
    {
        TradeRule pitchRule = TradeRules.Get(book.Piece.Unit == LengthUnit.Inch ? "SH4" : "SH5"), metric = TradeRules.Get("SH5"), edge = TradeRules.Get("SH7"), deepRule = TradeRules.Get("SH6"), left = TradeRules.Get("SH8");
        QuantityKey pitch = book.Define(space.Prefix, "holes.pitch", $"{space.Name}, from hole to hole", shelves.Pitch?.Stated ?? new Stated(pitchRule.Length, new(OriginKind.Rule, "usual pitch", pitchRule.Cited)));
        ExactLength step = book.Value(pitch), height = book.Value(space.Face.Height);
        // Nobody wants a shelf right above the bottom or under the top: three holes are left out at both ends, in a low opening all but one.
        int leave = height >= step * 8 ? 3 : 1;
        int count = (int)((height - (step * (2 * leave))) / step).Floor() + 1, wanted = shelves.Keys.Length;
        if (count < wanted)
        {
            book.Note("shelf.no-holes", Severity.Stop, space.Owner, $"{space.Name} is {book.Say(height)} high: on a pitch of {book.Say(step)} there are {Math.Max(0, count)} holes for {wanted} shelves.",
                $"Take shelves out, or give a smaller {book.Hand.Key("pitch")}.", shelves.Keys[0].Place);
            return null;
        }
        QuantityKey first = book.Define(space.Prefix, "holes.first", $"{space.Name}, lowest hole above the bottom of the opening", new Sum(Term.From("pitch", leave, pitch)));
        QuantityKey last = book.Define(space.Prefix, "holes.last", $"{space.Name}, highest hole above the bottom of the opening", new Sum([Term.From("lowest hole", 1, first), .. count > 1 ? [Term.From("pitch", count - 1, pitch)] : ImmutableArray<Term>.Empty]));
        // As deep as the thinnest panel allows.
        ExactLength least = Carriers.Beside(space).Select(e => book.Value(e.Member) - left.Length).Append(deepRule.Length).Min();
        string hole = step == metric.Length || book.Piece.Unit != LengthUnit.Inch ? Metric : "1/4 in";
        ImmutableArray<Term> fromFront = [Term.From("row", 1, edge.Length, new(OriginKind.Rule, "32 mm method", edge.Cited)), Term.From("setback of the shelves", 1, setback), .. space.Door is { } door ? [Term.From("inset door", 1, door)] : ImmutableArray<Term>.Empty];
        ImmutableArray<Term> fromBack = [Term.From("row", 1, edge.Length, new(OriginKind.Rule, "as at the front", "common practice, no source"))];
        (int atFront, int atBack) = PinHoles.Beside(book, space, (pitch, first, least, count, hole), fromFront, fromBack);
        QuantityKey front = book.Define(space.Prefix, "holes.front", $"{space.Name}, front row from the front edge", new Sum([.. fromFront, .. PinHoles.Moved(book, atFront)]));
        QuantityKey back = book.Define(space.Prefix, "holes.back", $"{space.Name}, back row from the back edge", atBack == 0
            ? new Stated(edge.Length, new(OriginKind.Rule, "as at the front", "common practice, no source")) : new Sum([.. fromBack, .. PinHoles.Moved(book, atBack)]));
        ImmutableArray<Term> limits = [Term.From("usual depth", 1, deepRule.Length, new(OriginKind.Rule, "10 to 13 mm", deepRule.Cited)),
            .. Carriers.Beside(space).DistinctBy(e => e.Member).Select((e, i) => Term.From($"what {e.Part} allows", 1, book.Define(space.Prefix, $"holes.limit-{i + 1}", $"{space.Name}, deepest hole in {e.Part}",
                new Sum(Term.From("panel", 1, e.Member) with { Part = e.Part }, Term.From("left under it", -1, left.Length, new(OriginKind.Rule, "never through", left.Cited))))))];
        QuantityKey depth = book.Define(space.Prefix, "holes.depth", $"{space.Name}, depth of its holes", new Extreme(limits, IsLeast: true));
        return new(pitch, first, last, front, back, depth, count, hole);
    }

    private static void Bore(Book book, Space space, Rows rows)
    {
        foreach (Edge edge in Carriers.Beside(space).DistinctBy(e => e.Part))
        {
            book.Machinings.Add(new(edge.Part, $"Bore two rows of {rows.Count} holes of {rows.Hole} on the inside for shelf pins of {space.Name}", [
                ("from hole to hole", rows.Pitch), ("lowest above the bottom of the opening", rows.First), ("highest", rows.Last), ("front row from the front edge", rows.Front), ("back row from the back edge", rows.Back), ("depth", rows.Depth)])
            { By = [space.Owner], Caution = "drill" });
        }
        PinHoles.Write(book, space, rows);
        book.Steps.Add(new(Stage.Cuts, $"Bore the holes for the shelf pins of {space.Name} before anything is joined: one strip of scrap with the holes in it, its lower end marked, laid against the line of the opening's bottom on every panel; a stop on the bit, never through.", [], null, "drill"));
    }
}
