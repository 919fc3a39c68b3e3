using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>
/// Packing, where drawers do not run right beside what carries them: a slide stands flush with the inner edge of a face frame, and behind doors as far in as an
/// open door and its hinges stand. What lies between is packed: an upright in front and one where the slides end, on each side.
/// </summary>
internal static class PackingRule
{
    // As room for a panel between rails: an upright exactly as high as its place does not go in. Common practice, no source.
    private static readonly ExactLength s_slipIn = FromInches(Rational.Of(1, 16));

    /// <summary>An opening as drawers have it: at the face of the frame, or behind doors as what is packed there leaves it.</summary>
    public static Space ForDrawers(Book book, Space space, DrawerBank bank)
    {
        if (space.Doors is null) return space.FaceFrame is null ? space : AtFace(book, space);
        FrameEdge?[] frames = [space.Edges.Left.Frame, space.Edges.Right.Frame, space.Edges.Top.Frame, space.Edges.Bottom.Frame];
        QuantityKey? left = In(book, space, bank, true), right = In(book, space, bank, false);
        ExactLength stands = Max(book.ValueOr0(space.Doors.Left), book.ValueOr0(space.Doors.Right));
        if (stands.Sign > 0 && Sticks(space.FaceFrame, bank) is null)
            book.Note("drawer.hits-hinge", Severity.Warn, space.Owner, $"An open door and its hinges stand {book.Say(stands)} into {space.Name}: the drawers behind run into them.",
                $"{book.Hand.Write("packing", "STICK")} with the drawers, of sticks {book.Say(stands)} thick or more, or {book.Hand.Key("clear", "0")} in the kind of door where its hinges swing it out of the opening.", space.Place);
        if (left is null && right is null && frames.All(f => f is null)) return space;
        return Within(book, space, left, right, "inner", "what is packed and the frame") with { FaceFrame = null };
    }

    /// <summary>The opening as it is at the face of the frame, for what closes it.</summary>
    public static Space AtFace(Book book, Space space)
    {
        QuantityKey thick = space.FaceFrame!.Thickness;
        Space within = Within(book, space, space.Edges.Left.Frame?.In, space.Edges.Right.Frame?.In, "frame", "the members of the frame");
        QuantityKey depth = book.Define(space.Prefix, "frame-depth", $"{space.Name}, clear depth from the face of the frame",
            new Sum(Term.From("clear depth behind", 1, space.Depth), Term.From("face frame", 1, thick)), Combining.Narrowest);
        return within with { Depth = depth, Y = space.Y - book.Value(thick), FaceFrame = null };
    }

    private static Space Within(Book book, Space space, QuantityKey? left, QuantityKey? right, string what, string between)
    {
        (FrameEdge? top, FrameEdge? bottom, bool isFrame) = (space.Edges.Top.Frame, space.Edges.Bottom.Frame, what == "frame");
        ImmutableArray<Term> In(QuantityKey? stands, string side) => stands is { } s ? [Term.From($"{(isFrame || side is "top" or "bottom" ? "frame" : "frame and packing")} at the {side}", -1, s)] : [];
        string by = isFrame ? "between the members of the face frame" : "clear for its drawers";
        QuantityKey faceWidth = book.Define(space.Prefix, $"{what}-width", $"{space.Name}, width {by}",
            new Sum([Term.From("clear width behind", 1, space.Face.Width), .. In(left, "left"), .. In(right, "right")]));
        QuantityKey faceHeight = book.Define(space.Prefix, $"{what}-height", $"{space.Name}, height {by}",
            new Sum([Term.From("clear height behind", 1, space.Face.Height), .. In(top?.In, "top"), .. In(bottom?.In, "bottom")]));
        QuantityKey width = book.DefineSame(space.Prefix, $"{what}-clear", $"{space.Name}, clear width between {(isFrame ? "frame and packing" : "packing")}", $"between {between}", faceWidth, Combining.Narrowest, Scatter.Placed);
        QuantityKey height = book.DefineSame(space.Prefix, $"{what}-clear-height", $"{space.Name}, clear height {(isFrame ? "at the frame" : "for its drawers")}", $"between {between}", faceHeight, Combining.Narrowest, Scatter.Placed);
        // What lies over the frame goes by its members; hinges find them by the frame.
        static Edge Framed(Edge edge) => edge.Frame is { } frame ? new(frame.Width, EdgeKind.Frame) { Frame = frame } : edge;
        return space with
        {
            Width = width,
            Height = height,
            X = space.X + book.ValueOr0(left),
            Z = space.Z + book.ValueOr0(bottom?.In),
            Edges = new(Framed(space.Edges.Left), Framed(space.Edges.Right), Framed(space.Edges.Top), Framed(space.Edges.Bottom)),
            Face = new(faceWidth, faceHeight),
        };
    }

    /// <summary>How far from the side or partition the drawers begin: what the frame stands in, and behind doors what an open one does; null for right beside it.</summary>
    private static QuantityKey? In(Book book, Space space, DrawerBank bank, bool atLeft)
    {
        (Edge edge, QuantityKey? open) = atLeft ? (space.Edges.Left, space.Doors?.Left) : (space.Edges.Right, space.Doors?.Right);
        // Without sticks to pack with it stays as it is; the drawers are looked at then.
        if (open is not { } clear || Sticks(space.FaceFrame, bank) is null) return edge.Frame?.In;
        (string side, QuantityKey key) = atLeft ? ("left", QuantityKey.Of(space.Prefix, "packing-left.in")) : ("right", QuantityKey.Of(space.Prefix, "packing-right.in"));
        return book.Knows(key) ? key : book.Define(space.Prefix, $"packing-{side}.in", $"{space.Name}, from what is at its {side} to its drawers",
            new Sum([.. edge.Frame is { } frame ? [Term.From("edge of the frame", 1, frame.In)] : ImmutableArray<Term>.Empty, Term.From("open door and hinges", 1, clear)]));
    }

    private static Named? Sticks(FaceFrameSetting? frame, DrawerBank bank) => bank.Packing ?? (frame is { Described.IsPacked: true } ? frame.Described.Packing ?? frame.Described.Of : null);

    /// <summary>Writes the packing of a bank, once its boxes are known.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="space">The opening behind the frame.</param>
    /// <param name="run">The opening as the drawers have it.</param>
    /// <param name="bank">Its drawers.</param>
    public static void Write(Book book, Space space, Space run, DrawerBank bank)
    {
        if (!book.Piece.DrawerKinds.TryGetValue(bank.Like.Text, out DrawerKind? kind)) return;
        bool onRunners = kind.Slides == SlideWay.Runners;
        QuantityKey[] lengths = [.. bank.Drawers.Select(d => QuantityKey.Of(d.Key, onRunners ? "runner.length" : "slide.length")).Where(book.Knows)];
        if (bank.Packing is { } idle && book.ValueOr0(In(book, space, bank, true)).Sign <= 0 && book.ValueOr0(In(book, space, bank, false)).Sign <= 0)
            book.Note("packing.idle", Severity.Note, space.Owner, $"The drawers of {space.Name} run right beside what carries them: there is nothing to pack.", $"Leave {book.Hand.Key("packing")} out.", idle.Place);
        if (lengths.Length == 0) return;
        ExactLength setback = onRunners ? Zero : kind.Sheet.Setback?.Value ?? TradeRules.Get("SS7").Length, front = kind.Fronts == FrontWay.Inset ? book.Value(Book.ThicknessOf(kind.Front.Text)) : Zero;
        ExactLength end = run.Y + front + setback + lengths.Select(book.Value).Min();
        if (In(book, space, bank, true) is { } left) Side(book, space, bank, left, "left", end);
        if (In(book, space, bank, false) is { } right) Side(book, space, bank, right, "right", end);
    }

    private static void Side(Book book, Space space, DrawerBank bank, QuantityKey stands, string where, ExactLength end)
    {
        (Edge side, string word, bool atLeft) = (where == "left" ? space.Edges.Left : space.Edges.Right, $"packing-{where}", where == "left");
        ExactLength wanted = book.Value(stands);
        if (wanted.Sign <= 0) return;
        string name = $"{space.Name}, packing at its {where}";
        Place place = bank.Packing?.Place ?? space.FaceFrame!.Described.Packing?.Place ?? space.FaceFrame.Described.Place;
        if (Sticks(space.FaceFrame, bank) is not { } sticks)
        {
            book.NoteOnce("slide.nothing-behind", Severity.Stop, space.Owner, $"The slides of {space.Name} have nothing behind them: the frame's edge stands {book.Say(wanted)} inside.", $"Leave {book.Hand.Key("packing")} out, or use a frame flush with the sides and partitions.", place);
            return;
        }
        Panel? sheet = book.Piece.Materials.GetValueOrDefault(sticks.Text) as Panel;
        Stick? stick = sheet is null ? book.StickOf(sticks, space.Owner) : null;
        if (sheet is null && stick is null) return;
        QuantityKey thick = book.DefineSame(space.Prefix, $"{word}.thickness", $"{name}, thickness", space.Doors is null ? "frame's edge inside of the face it is fixed to" : "from the face it is fixed to", stands);
        PartSize length = book.DefineSize(space.Prefix, $"{word}.length", $"{name}, length", new Sum(Term.From("clear height", 1, space.Height),
            Term.From("room to slip it in", -1, s_slipIn, new(OriginKind.Rule, "between top and bottom", "common practice, no source"))), Rounding.Down, "down: it must go between");
        // A stick is planed to what is wanted; a strip of a sheet is ripped to it, and its thickness shows from the front.
        PartSize across = sheet is null ? Book.Uncut(Book.SectionWidthOf(stick!.Name)) : book.DefineSize(space.Prefix, $"{word}.ripped", $"{name}, ripped to", new Sum(Term.From("thickness wanted", 1, thick)), Rounding.Nearest, "to the nearest step");
        (string material, QuantityKey thin) = sheet is null ? (stick!.Name, thick) : (sheet.Name, Book.ThicknessOf(sheet.Name));
        ExactLength stock = book.Value(sheet is null ? Book.ThicknessOf(material) : across.AsCut), wide = book.Value(sheet is null ? across.AsCut : thin), high = book.Value(length.AsCut), front = space.Y;
        ExactLength rear = Max(front + wide, Min(space.Y + book.Value(space.Depth), end) - wide), right = space.X + book.Value(space.Width) - wanted;
        IEnumerable<Placement> At(ExactLength x) => [new(x, front, space.Z, wanted, wide, high), new(x, rear, space.Z, wanted, wide, high)];
        ImmutableArray<Placement> places = [.. At(atLeft ? space.X : right)];
        string part = $"{space.Prefix}.{word}";
        book.Add(new(part, $"{space.Owner}{(atLeft ? "pl" : "pr")}", name, PartRole.Packing, material, length, across, thin, places.Length, sheet?.Grain ?? Grain.Keep, places, space.Place));
        book.Joints.Add(new(JointKind.Butt, part, Face.Outside, side.Part, Face.Inside, "glue and screws"));
        int screws = Fastening.ScrewsAlong(high) * places.Length;
        ExactLength behind = book.Value(side.Single ?? side.Member);
        if (Fastening.IntoFace(book.Piece.Unit, wanted, behind) is { } screw)
            book.Hardware.Add(new(space.Owner, $"Wood screw no. 8 (4 mm), {book.Say(screw)}", screws, "piece", $"{name}, stopping inside what it is fixed to: {Fastening.SpacingWords}"));
        else
            book.NoteOnce("packing.no-screw", Severity.Warn, space.Owner, $"{name}: no usual screw goes through {book.Say(wanted)} and stops inside {book.Say(behind)}.", "Glue it, or screw it from the other side.", space.Place);
        if (stock < wanted && sheet is null)
            book.NoteOnce("packing.too-thin", Severity.Stop, space.Owner, $"{name} must be {book.Say(wanted)} thick; sticks of {material} are {book.Say(stock)}: nothing would be behind the slides.", $"{book.Hand.Say("Write 'packing:' with", "Set “packing” to")} sticks of {book.Say(wanted)} or more, which are planed to it, or with a sheet, which is ripped to it.", place);
        else if (stock > wanted && sheet is null) book.Machinings.Add(new(part, "Plane to thickness", [("thickness", thick)]) { On = Face.Outside });
        string ends = space.FaceFrame is { } frame
            ? $", flush with the inner edge of the frame: an upright right behind the frame, and one that ends {book.Say(rear + wide - (front - book.Value(frame.Thickness)))} behind its face."
            : $": an upright {(front.Sign == 0 ? "flush with" : $"{book.Say(front)} behind")} the front edges, and one that ends {book.Say(rear + wide)} behind them.";
        if (space.Doors is not null && space.FaceFrame is { } before) ends = $": an upright right behind the frame, and one that ends {book.Say(rear + wide - (front - book.Value(before.Thickness)))} behind its face.";
        // Above and below, rails that stand into the opening leave less height than the uprights have.
        (ExactLength way, ExactLength face) = FrameWay(book, space.Prefix) ?? (high, Zero);
        bool isTipped = high > way && (Tips(high, wide, way, book.Value(space.Height), book.Value(space.Depth)) || Tips(high, wanted, way, book.Value(space.Height), face));
        string past = isTipped ? " Tip each in past the frame, one end first, and stand it up behind it."
            : high > way || (space.FaceFrame is not null && FrameWay(book, space.Prefix) is null) ? " It goes in before the frame, which closes the way to it: lay the frame on dry first and mark its inner edges." : "";
        book.Steps.Add(new(Stage.Inside, $"Screw the packing of {space.Name} to its {where}{ends}{past}", [part], null, "screws") { IsTipped = isTipped });
    }

    /// <summary>Whether packing goes in past the frame, so that it can come after it and be fitted to its edges.</summary>
    public static bool ComesAfter(Book book, AssemblyStep step, Part packing) =>
        step.IsTipped || (FrameWay(book, packing.Key[..packing.Key.LastIndexOf('.')]) is { } way && book.Value(packing.Length.AsCut) <= way.High);

    /// <summary>The opening of a face frame that packing goes in by; null where none is in its way.</summary>
    private static (ExactLength High, ExactLength Wide)? FrameWay(Book book, string prefix) => book.Knows(QuantityKey.Of(prefix, "frame-height"))
        ? (book.Value(QuantityKey.Of(prefix, "frame-height")), book.Value(QuantityKey.Of(prefix, "frame-width")))
        : null;

    /// <summary>
    /// Whether a stick of a length and thickness can be tipped so far that it goes through a height, and be stood up again: tipped it takes less across than its thickness
    /// and the root of l² - (h - t)², stood up its diagonal. Geometry, in squares so that no root is drawn; a little on the safe side.
    /// </summary>
    private static bool Tips(ExactLength length, ExactLength thick, ExactLength way, ExactLength room, ExactLength across)
    {
        static Rational Square(ExactLength side) => side.Millimetres * side.Millimetres;
        return way > thick && across > thick && Square(room) >= Square(length) + Square(thick) && Square(across - thick) >= Square(length) - Square(way - thick);
    }
}
