using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.SettingOut.Openings;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Cases;

/// <summary>
/// A frame of sticks on the front of a case: stiles over the whole height, rails between them, a mullion before each partition and a rail before each deck,
/// both in the middle of what they cover. Openings at the face are what stays clear between its members.
/// </summary>
internal static class FaceFrameRule
{
    /// <summary>Its sticks and tenons, before the case is sized; null for none.</summary>
    public static FaceFrameSetting? Of(Book book, Case described, string name)
    {
        if (described.FaceFrame is not { } frame) return null;
        string key = described.Key;
        if (book.StickOf(frame.Of, key) is not { } of) return null;
        Stick? stile = frame.Stiles is { } s ? book.StickOf(s, key) : of, rail = frame.Rails is { } r ? book.StickOf(r, key) : of, mullion = frame.Mullions is { } m ? book.StickOf(m, key) : of;
        if (stile is null || rail is null || mullion is null) return null;
        ExactLength t = book.Value(Book.ThicknessOf(stile.Name));
        foreach ((Stick stick, Named? said) in new[] { (rail, frame.Rails), (mullion, frame.Mullions) })
            if (book.Value(Book.ThicknessOf(stick.Name)) != t)
                book.NoteOnce("frame.not-flush", Severity.Warn, key, $"{stick.Name} is {book.Say(book.Value(Book.ThicknessOf(stick.Name)))} thick, the stiles of the face frame are {book.Say(t)}.", "Use sticks of one thickness, or plane them to it.", said?.Place ?? frame.Place);
        return new(frame, key, $"{name} face frame", stile, rail, mullion, frame.Joint == FaceFrameJoint.Tenon ? Tenon(book, key, name, frame, [stile, rail, mullion]) : null);
    }

    private static PartSize Tenon(Book book, string key, string name, FaceFrame frame, Stick[] sticks)
    {
        QuantityKey narrow = Book.SectionWidthOf(sticks.MinBy(s => book.Value(Book.SectionWidthOf(s.Name)))!.Name);
        QuantityKey half = book.Define(key, "frame.tenon-most", $"{name} face frame, to the middle of its narrowest stick", TenonRule.ToTheMiddle(book, narrow));
        PartSize tenon = book.DefineSize(key, "frame.tenon", $"{name} face frame, tenon length", frame.Tenon?.Stated ?? (Working)new Extreme(
        [
            Term.From("usual tenon", 1, Usual.Length(book, "FF1"), new(OriginKind.Rule, "face frame", TradeRules.Get("FF1").Cited)),
            Term.From("to the middle of the narrowest stick", 1, half),
        ], IsLeast: true), Rounding.Down, "down: tenons from both edges must not meet");
        ExactLength width = book.Value(narrow), most = book.Value(half);
        TenonLimit through = new("frame.tenon-through", Severity.Stop, width - TenonRule.LeastLeft, $"goes through a stick {book.Say(width)} wide", most), meets = new("frame.tenon-long", Severity.Warn, most, $"meets one from the other edge in a stick {book.Say(width)} wide");
        TenonRule.Check(book, key, tenon.AsCut, frame.Tenon?.Place ?? frame.Place, through, meets);
        return tenon;
    }

    /// <summary>Writes stiles and outer rails, and gives the edges of the whole with the frame before them.</summary>
    public static Edges Outer(Book book, CaseShape shape, FaceFrameSetting frame, PartSize sideLength, PartSize deckLength, Edges edges)
    {
        (string key, string name) = (shape.Key, frame.Name);
        QuantityKey stile = Book.SectionWidthOf(frame.Stile.Name), rail = Book.SectionWidthOf(frame.Rail.Name);
        QuantityKey over = book.Define(key, "frame.overhang", $"{name}, over the outside of each side", frame.Described.Overhang?.Stated ?? new Stated(Zero, new(OriginKind.Rule, "flush", "common practice, no source")));
        ImmutableArray<Term> off = shape.Raise is { } raise ? [Term.From("floor to the underside of the bottom", -1, raise)] : [];
        PartSize high = book.DefineSize(key, "frame.height", $"{name} stile, length", new Sum([Term.From("side, as cut", 1, sideLength.AsCut), .. off]), Rounding.Nearest, "to the nearest step");
        PartSize wide = book.DefineSize(key, "frame.rail", $"{name} rail, length", new Sum([.. shape.Outside(book, deckLength), Term.From("over the outside", 2, over), Term.From("stiles", -2, stile), .. frame.Tenons]), Rounding.Nearest, "to the nearest step");
        // What rails and stiles landed on the grid leave is at the right and at the top: the frame is laid on from the left and from below.
        QuantityKey right = book.Define(key, "frame.right", $"{name}, over the outside of the right side as built", new Sum([Term.From("stiles", 2, stile), Term.From("rail, as cut", 1, wide.AsCut), .. frame.Tenons.Select(Negative), .. shape.Outside(book, deckLength).Select(Negative), Term.From("over the left side", -1, over)]));
        book.Define(key, "frame.over-right", $"{name}, beyond the right side", new Extreme([Term.From("over the right side", 1, right), Term.From("the side itself", 1, Zero, new(OriginKind.Worked, "where it is no wider"))], IsLeast: false));
        QuantityKey above = book.Define(key, "frame.above", $"{name}, over the top as built", new Sum([Term.From("stile, as cut", 1, high.AsCut), .. off.Select(Negative), Term.From("side, as cut", -1, sideLength.AsCut)]));
        ExactLength t = book.Value(frame.Thickness), s = book.Value(stile), r = book.Value(rail), h = book.Value(high.AsCut), length = book.Value(wide.AsCut), left = -book.Value(over);
        ExactLength low = book.ValueOr0(shape.Raise), tenon = book.ValueOr0(frame.Tenon?.AsCut), between = length - (tenon * 2);
        Part($"{key}.stile", $"{key}u", $"{name} stile", frame.Stile, high, [new(left, Zero, low, s, t, h), new(left + s + between, Zero, low, s, t, h)]);
        Part($"{key}.frame-rail", $"{key}v", $"{name} rail", frame.Rail, wide, [new(left + s - tenon, Zero, low, length, t, r), new(left + s - tenon, Zero, low + h - r, length, t, r)]);
        FrameEdge Side(string word, QuantityKey beyond) => new(FaceFrameMembers.In(book, key, $"frame.{word}-in", $"{name}, edge of its {word} stile inside the side", frame, frame.Described.Stiles,
            [Term.From("stile", 1, stile), Term.From("over the outside", -1, beyond), Term.From("side", -1, edges.Left.Member)], Rational.One), stile, $"{key}.stile", [Term.From("bottom", 1, edges.Bottom.Member)], edges.Left.Member);
        (FrameEdge before, FrameEdge after) = (Side("left", over), Side("right", right));
        FrameEdge Level(string word, ImmutableArray<Term> beyond) => new(FaceFrameMembers.In(book, key, $"frame.{word}-in", $"{name}, edge of its {word} rail inside the {word}", frame, frame.Described.Rails,
            [Term.From("rail", 1, rail), Term.From(word, -1, edges.Top.Member), .. beyond], Rational.One), rail, $"{key}.frame-rail", [.. frame.OneTenon, Term.From("edge of the stile inside the side", -1, before.In)], edges.Top.Member);
        (FrameEdge lower, FrameEdge upper) = (Level("bottom", []), Level("top", [Term.From("over the top", -1, above)]));
        FaceFrameMembers.Join(book, frame, $"{key}.frame", $"{key}.frame-rail", name, 4, rail, [($"{key}.stile", stile, "the inner edge at both ends", null)]);
        book.Joints.Add(new(JointKind.Butt, $"{key}.stile", Face.Inside, shape.Side, Face.FrontEdge, "glue and clamps"));
        book.Joints.Add(new(JointKind.Butt, $"{key}.frame-rail", Face.Inside, shape.Deck, Face.FrontEdge, "glue and clamps"));
        return new(edges.Left with { Frame = before }, edges.Right with { Frame = after }, edges.Top with { Frame = upper }, edges.Bottom with { Frame = lower });

        void Part(string part, string mark, string words, Stick stick, PartSize size, ImmutableArray<Placement> places) => FaceFrameMembers.Add(book, frame, part, mark, words, stick, size, places);
    }

    private static Term Negative(Term term) => term with { Times = -term.Times };

    /// <summary>What a face frame stands out over the left side of its case, and that of the neighbour on the left over its right side, as terms.</summary>
    public static ImmutableArray<Term> OverLeft(Book book, string key, string? left) =>
        [.. Known(book, key, "frame.overhang", "left"), .. left is null ? [] : OverRight(book, left)];

    /// <summary>What a face frame stands out over the right side of its case, as a term.</summary>
    public static ImmutableArray<Term> OverRight(Book book, string key) => Known(book, key, "frame.over-right", "right");

    /// <summary>What the face frame of the neighbour at the right, which is not written yet, is said to stand out over its left side.</summary>
    public static ImmutableArray<Term> OfNeighbour(Book book, string key) =>
        book.Piece.Members.OfType<Case>().FirstOrDefault(c => c.Stand.Beside?.Text == key) is { FaceFrame.Overhang: { } over } next
            ? [Term.From($"face frame of {next.Key} over its left side", 1, over.Value, Origin.Given(over.Place))]
            : [];

    private static ImmutableArray<Term> Known(Book book, string key, string what, string side) =>
        book.Knows(QuantityKey.Of(key, what)) ? [Term.From($"face frame of {key} over its {side} side", 1, QuantityKey.Of(key, what))] : [];

    /// <summary>Frames that stand out into one another, or into a case without one.</summary>
    public static void CheckBeside(Book book, Structure described)
    {
        if (described.Stand.Beside is not { } left) return;
        ExactLength over = new[] { described.Key, left.Text }.SelectMany(k => Known(book, k, "frame.overhang", "")).Aggregate(Zero, (sum, t) => sum + book.Value(t.Of!.Value)), room = book.Value(new Sum([.. Standing.Fillers(book, left.Text, described.Key)]));
        if (over.Sign > 0 && over >= room)
            book.Note("frame.overhang-meets", Severity.Stop, described.Key, $"Between {left.Text} and {described.Key} face frames stand {book.Say(over)} out over the sides; there is {book.Say(room)}.",
                $"Leave the overhang out, or put a filler wider than {book.Say(over)} between the two.", (described as Case)?.FaceFrame?.Overhang?.Place ?? left.Place);
    }

    /// <summary>The step that makes the frame and puts it on; packing, which goes by its edges, comes after it wherever it goes in past it.</summary>
    public static void Step(Book book, FaceFrameSetting frame, ImmutableArray<Part> inside, ExactLength w, ExactLength h)
    {
        List<AssemblyStep> later = book.Steps.FindAll(s => inside.Any(p => p.Role == PartRole.Packing && s.Parts.Contains(p.Key) && PackingRule.ComesAfter(book, s, p)));
        book.Steps.RemoveAll(later.Contains);
        string how = frame.Described.Joint switch
        {
            FaceFrameJoint.Tenon => "Cut mortises before tenons, fit each tenon to its mortise, then glue and clamp",
            FaceFrameJoint.Pocket => "Clamp each joint flush on its face, then drive pocket screws from behind",
            _ => "Drill with one guide from the marked faces, then glue and clamp",
        };
        book.Steps.Add(new(Stage.Inside, $"Make the {frame.Name} face down on a flat bench: mullions and middle rails first, then stiles. {how}. Measure both diagonals. Glue it to the front edges of the case, mullions in the middle of their partitions.",
            [.. inside.Where(p => p.Role == PartRole.FaceFrame).Select(p => p.Key)], Diagonals.Of(book.Grid, w, h), "screws")
        { IsMadeFirst = true });
        book.Steps.AddRange(later);
    }
}
