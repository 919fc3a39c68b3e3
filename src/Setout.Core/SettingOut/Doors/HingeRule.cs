using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Doors;

/// <summary>
/// On what a door hangs: how many hinges its height and weight ask for, where they sit on door and carcase, and what is cut for them. The
/// leaflet of the hinge wins over all of it.
/// </summary>
internal static class HingeRule
{
    /// <summary>What a helper need not hold: common practice, no source.</summary>
    private const double HeavyKilograms = 10;

    // Millimetres: the cup, and the two screws of its plate from each other (pages on the 32 mm method).
    private const int CupDiameter = 35, PlateHoles = 32;

    public static void Write(Book book, Space space, DoorKind kind, DoorSpot spot, MadeDoor door, bool onLeft, QuantityKey over, Term lower, FaceFrameSetting? frame)
    {
        bool isCup = IsCup(kind);
        (string word, string side) = (isCup ? "cup" : "butt", onLeft ? "left" : "right");
        ExactLength high = book.Value(door.Height);
        Mass? mass = Weights.OfOwner(book, spot.Key);
        double kilograms = mass is { } m ? m.Kilograms.Value + m.Kilograms.Error : 0;
        HingeFact? fits = HingeTable.For(word, high, kilograms);
        HingeFact row = fits ?? HingeTable.All.Where(r => r.Kind == word).MaxBy(r => r.Count)!;
        string weighs = mass is null ? "weight not on record" : string.Create(CultureInfo.InvariantCulture, $"up to {kilograms:0.#} kg ({kilograms * Mass.PoundsPerKilogram:0.#} lb)");
        if (fits is null)
            book.Note("door.heavy", Severity.Warn, spot.Key, $"{spot.Name} is {book.Say(high)} high and weighs {weighs}: more than {row.Count} {word} hinges carry.",
                $"Make it smaller or lighter, or look for hinges that carry it. ({row.Source})", spot.Place);

        QuantityKey? length = isCup ? null : Once(book, kind, "hinge.length", "length of its hinges", "HG6", "usual for a cupboard door");
        ImmutableArray<(string Name, QuantityKey Key)> onDoor = [.. HingePlaces.Of(book, space, kind, spot, door, length, row.Count)];
        Edge edge = onLeft ? space.Edges.Left : space.Edges.Right;
        string ground = space.Ground;
        ImmutableArray<(string Name, QuantityKey Key)> onCarcase = [.. onDoor.Select((p, i) => ($"hinge {i + 1} above the {ground}",
            book.Define(spot.Key, $"plate-{i + 1}", $"{spot.Name}, hinge {i + 1} above the {ground}", new Sum(Term.From("on the door", 1, p.Key), lower))))];
        ExactLength at = book.Corner.X + space.X + (onLeft ? ExactLength.Zero : book.Value(space.Width));
        if (length is { } leaf) Butt(book, kind, spot, door, edge, side, onDoor, onCarcase, over, leaf, at);
        else
        {
            Cup(book, kind, spot, door, edge, side, onDoor, onCarcase, frame, at);
            Place(book, space, kind, spot, door, edge, onLeft, onDoor, onCarcase);
        }
        string name = length is { } long_ ? $"Butt hinge, {book.Say(book.Value(long_))}, with its screws" : $"Cup hinge 35 mm, {Lies(book, kind, edge, over)}, with its plate and screws";
        book.Hardware.Add(new(spot.Key, name, row.Count, "piece", $"{book.Say(high)} high, {weighs}: {row.Source}"));
        Hang(book, space, spot, door, isCup, side, kilograms, lower);
    }

    /// <summary>Whether doors of a kind hang on cup hinges.</summary>
    public static bool IsCup(DoorKind kind) => (kind.Hinge ?? (kind.Lie == DoorLie.Inset ? HingeKind.Butt : HingeKind.Cup)) == HingeKind.Cup;

    private static void Cup(Book book, DoorKind kind, DoorSpot spot, MadeDoor door, Edge edge, string side, ImmutableArray<(string, QuantityKey)> onDoor, ImmutableArray<(string, QuantityKey)> onCarcase,
        FaceFrameSetting? frame, ExactLength at)
    {
        QuantityKey depth = Once(book, kind, "cup.depth", "boring depth of its cups", "HG1", "the deepest of 10.5 to 13 mm"), centre = Once(book, kind, "cup.centre", "middle of its cups from the edge", "HG2", "half a cup and 5 mm");
        TradeRule left = TradeRules.Get("HG5");
        book.Machinings.Add(new(door.Hung, $"Bore cups of 35 mm in the back, along the {side} edge", [("depth", depth), ("middle from the edge", centre), .. onDoor]) { Numbers = DoorHandleRule.Hung(book, door.Hung, side == "left"), On = Face.Inside, Edge = side == "left" ? Face.LeftEdge : Face.RightEdge, Caution = "drill" });
        if (frame is not null) OnFrame(book, kind, spot, frame, edge, side, at, onCarcase);
        else Plates(book, spot, door, edge, onCarcase);
        ExactLength under = book.Value(door.Thickness) - book.Value(depth);
        if (under < left.Length)
            book.NoteOnce("door.thin-for-cup", under.Sign <= 0 ? Severity.Stop : Severity.Warn, spot.Key, $"Cups {book.Say(book.Value(depth))} deep in a door of {book.Say(book.Value(door.Thickness))} leave {book.Say(under)} under them.",
                $"Keep {book.Say(left.Length)} or more: use a thicker door, hinges with a shallower cup, or butts. ({left.Cited})", kind.HingePlace.IsKnown ? kind.HingePlace : kind.Place);
        HingeBounds.Cup(book, spot, door, book.Value(centre) + ExactLength.FromMillimetres(Rational.Of(CupDiameter, 2)));
        if (door.Solid is { } solid && book.Value(solid) - book.Value(centre) - ExactLength.FromMillimetres(Rational.Of(35, 2)) is var rest && rest < left.Length)
            book.NoteOnce("door.stile-narrow-for-cup", Severity.Warn, spot.Key, $"Cups of 35 mm leave {book.Say(rest)} of the stile beside its groove.", "Use wider stiles, a shallower groove, or butts.", kind.HingePlace.IsKnown ? kind.HingePlace : kind.Place);
    }

    private static void Plates(Book book, DoorSpot spot, MadeDoor door, Edge edge, ImmutableArray<(string, QuantityKey)> onCarcase)
    {
        TradeRule setback = TradeRules.Get("HG4");
        QuantityKey plate = book.Define(spot.Key, "plate-setback", $"{spot.Name}, middle of its plates from the front edge", new Sum([
            Term.From("setback", 1, setback.Length, new(OriginKind.Rule, "first row of the 32 mm method", setback.Cited)), .. spot.IsInset ? [Term.From("door", 1, door.Thickness)] : Array.Empty<Term>()]));
        if (edge.Part.Length > 0)
            book.Machinings.Add(new(edge.Part, $"Screw holes for the plates of {spot.Name}, two of them 32 mm apart about the middle of each", [("from the front edge", plate), .. onCarcase]) { By = [spot.Key], Caution = "drill" });
    }

    /// <summary>Plates for a face frame are screwed to the inner edge of its stile or mullion; their leaflet says how far in.</summary>
    private static void OnFrame(Book book, DoorKind kind, DoorSpot spot, FaceFrameSetting frame, Edge edge, string side, ExactLength at, ImmutableArray<(string, QuantityKey)> onCarcase)
    {
        book.Machinings.Add(new(edge.Frame!.Part, $"Screw holes for the plates of {spot.Name} in the edge towards it, about the middle of each", onCarcase) { Numbers = Bored.Nearest(book, edge.Frame!.Part, at, side == "left"), On = side == "left" ? Face.RightEdge : Face.LeftEdge, Caution = "drill" });
        TradeRule least = TradeRules.Get("HG8");
        ExactLength thick = book.Value(frame.Thickness), wanted = Usual.Length(book, "HG8");
        if (thick < wanted)
            book.NoteOnce("door.frame-thin-for-plate", Severity.Warn, spot.Key, $"The plates of cup hinges lie on the edge of the face frame, which is {book.Say(thick)} thick.",
                $"Use sticks of {book.Say(wanted)} or more, hinges whose leaflet says less, or let the door in on butts. ({least.Cited})", frame.Described.Place);
    }

    /// <summary>Where the cups are on the door, and the holes of the plates on what it hangs at.</summary>
    private static void Place(Book book, Space space, DoorKind kind, DoorSpot spot, MadeDoor door, Edge edge, bool onLeft, ImmutableArray<(string Name, QuantityKey Key)> onDoor, ImmutableArray<(string Name, QuantityKey Key)> onCarcase)
    {
        (int Number, Placement Box)[] hung = [.. Bored.Members(book, door.Hung)];
        if (hung.Length == 0) return;
        (int number, Placement box) = onLeft ? hung[0] : hung[^1];
        ExactLength centre = book.Value(QuantityKey.Of(kind.Name, "cup.centre")), cup = ExactLength.FromMillimetres(CupDiameter), x = onLeft ? box.X + centre : box.X + box.SizeX - centre;
        foreach ((string _, QuantityKey at) in onDoor)
            book.Bores.Add(new(spot.Key, "cup", door.Hung, number, Along.Y, x, box.Y + box.SizeY, box.Z + book.Value(at), cup, book.Value(QuantityKey.Of(kind.Name, "cup.depth"))));
        ExactLength face = book.Corner.X + space.X + (onLeft ? ExactLength.Zero : book.Value(space.Width)), apart = ExactLength.FromMillimetres(PlateHoles) / 2;
        // On a face frame the plates are on its edge, where their leaflet says.
        if (edge.Frame is not null || Bored.Beside(book, edge.Part, face, onLeft) is not { } panel) return;
        HingeBounds.Plates(book, space, kind, spot, edge, panel.Box, [.. onCarcase.Select(p => book.Value(p.Key))], apart);
        foreach ((string _, QuantityKey at) in onCarcase)
            foreach (ExactLength off in new[] { -apart, apart })
                book.Bores.Add(new(spot.Key, "plate", edge.Part, panel.Number, Along.X, face, panel.Box.Y + book.Value(QuantityKey.Of(spot.Key, "plate-setback")), book.Corner.Z + space.Z + book.Value(at) + off, ExactLength.Zero, ExactLength.Zero));
    }

    private static void Butt(Book book, DoorKind kind, DoorSpot spot, MadeDoor door, Edge edge, string side, ImmutableArray<(string, QuantityKey)> onDoor, ImmutableArray<(string, QuantityKey)> onCarcase, QuantityKey over, QuantityKey length, ExactLength at)
    {
        QuantityKey closed = Once(book, kind, "hinge.closed", "thickness of its hinges, closed", "HG7", "two leaves and what is between");
        if (!spot.IsInset)
            book.NoteOnce("door.butt-on-overlay", Severity.Warn, spot.Key, "Butts under a door that lies over the edges need their gains in the edge of the carcase and the back of the door, and show.", "Use 'hinge: cup', or let the door in: 'lies: inset'.", kind.HingePlace.IsKnown ? kind.HingePlace : kind.Place);
        ImmutableArray<Term> gap = spot.IsInset ? [Term.From("gap beside the door", -1, over)] : [];
        QuantityKey half = book.Define(spot.Key, "gain.half", $"{spot.Name}, half of what its hinges are thicker than the gap", new Sum([Term.From("hinge, closed", 1, closed), .. gap], Rational.Of(1, 2)));
        QuantityKey gain = book.Define(spot.Key, "gain.depth", $"{spot.Name}, depth of the gains", new Extreme([Term.From("half of what is thicker", 1, half), Term.From("nothing", 1, ExactLength.Zero, new(OriginKind.Rule, "never less"))], IsLeast: false));
        book.Machinings.Add(new(door.Hung, $"Gains for butts in the {side} edge", [("depth", gain), ("length", length), .. onDoor]) { Numbers = DoorHandleRule.Hung(book, door.Hung, side == "left"), On = side == "left" ? Face.LeftEdge : Face.RightEdge });
        string into = edge.Frame?.Part ?? edge.Part;
        if (into.Length > 0) book.Machinings.Add(new(into, $"Gains for the butts of {spot.Name}", [("depth", gain), ("length", length), .. onCarcase]) { Numbers = Bored.Nearest(book, into, at, side == "left"), On = edge.Frame is not null ? (side == "left" ? Face.RightEdge : Face.LeftEdge) : Face.Inside, Edge = edge.Frame is null ? Face.FrontEdge : null });
    }

    /// <summary>A figure of the hinges of a kind of door, to be read from those in hand.</summary>
    private static QuantityKey Once(Book book, DoorKind kind, string what, string words, string rule, string why)
    {
        QuantityKey key = QuantityKey.Of(kind.Name, what);
        TradeRule usual = TradeRules.Get(rule);
        return book.Knows(key) ? key : book.Define(kind.Name, what, $"doors of {kind.Name}, {words}", new Stated(usual.Length, new(OriginKind.Default, $"{why}; read the hinges in hand", usual.Cited)), scatter: Scatter.Bought);
    }

    /// <summary>Which hinge is to be bought: cup hinges are made for one way of lying.</summary>
    private static string Lies(Book book, DoorKind kind, Edge edge, QuantityKey over)
    {
        if (kind.Lie == DoorLie.Inset) return edge.Frame is null ? "inset" : "inset, for a face frame";
        string word = edge.Frame is not null ? "for a face frame" : edge.Kind == EdgeKind.Frame ? "on a frame" : edge.Kind == EdgeKind.CaseOutside && kind.Lie == DoorLie.Overlay ? "full overlay" : "half overlay";
        return $"{word}, {book.Say(book.Value(over))} over the edge";
    }

    private static void Hang(Book book, Space space, DoorSpot spot, MadeDoor door, bool isCup, string side, double kilograms, Term lower)
    {
        string carcase = (side == "left" ? space.Edges.Left : space.Edges.Right).Frame is null ? "carcase" : "frame";
        ExactLength at = book.Value(new Sum(lower));
        string level = at.Sign >= 0 ? $"{book.Say(at)} above the {space.Ground}" : $"{book.Say(-at)} below the {space.Ground}";
        bool isHeavy = kilograms >= HeavyKilograms;
        string hands = isHeavy ? "Two people: one holds it on a block" : "Rest it on a block";
        string how = isCup
            ? $"press the hinges into their cups and screw them, screw the plates to the {carcase}, hook in and set the gaps with the screws of the hinges"
            : $"cut the gains on door and {carcase}, screw each butt with one screw a leaf, try the swing, then drive the rest";
        book.Steps.Add(new(Stage.Doors, $"Hang {spot.Name} of {space.Name} on the {side}: {how}. {hands} with its lower edge {level}.", door.Hung == spot.Key ? [spot.Key] : [], null, isHeavy ? "lift" : "screws") { On = "", Whole = door.Hung == spot.Key ? [] : [spot.Key] });
    }
}
