using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>
/// What is behind a face frame where drawers run through it. A slide stands flush with the inner edge of the frame, so what lies between that edge and the side
/// or partition is packed: an upright behind the frame and one where the slides end, on each side.
/// </summary>
internal static class PackingRule
{
    // As room for a panel between rails: an upright exactly as high as its place does not go in. Common practice, no source.
    private static readonly ExactLength s_slipIn = FromInches(Rational.Of(1, 16));

    /// <summary>The opening as it is at the face of the frame, for what closes it.</summary>
    public static Space AtFace(Book book, Space space)
    {
        (FrameEdge left, FrameEdge right, FrameEdge top, FrameEdge bottom) = (space.Edges.Left.Frame!, space.Edges.Right.Frame!, space.Edges.Top.Frame!, space.Edges.Bottom.Frame!);
        QuantityKey thick = space.FaceFrame!.Thickness;
        QuantityKey faceWidth = book.Define(space.Prefix, "frame-width", $"{space.Name}, width between the members of the face frame",
            new Sum(Term.From("clear width behind", 1, space.Face.Width), Term.From("frame at the left", -1, left.In), Term.From("frame at the right", -1, right.In)));
        QuantityKey faceHeight = book.Define(space.Prefix, "frame-height", $"{space.Name}, height between the members of the face frame",
            new Sum(Term.From("clear height behind", 1, space.Face.Height), Term.From("frame at the top", -1, top.In), Term.From("frame at the bottom", -1, bottom.In)));
        QuantityKey width = book.DefineSame(space.Prefix, "frame-clear", $"{space.Name}, clear width between frame and packing", "between the members of the frame", faceWidth, Combining.Narrowest, Scatter.Placed);
        QuantityKey height = book.DefineSame(space.Prefix, "frame-clear-height", $"{space.Name}, clear height at the frame", "between the members of the frame", faceHeight, Combining.Narrowest, Scatter.Placed);
        QuantityKey depth = book.Define(space.Prefix, "frame-depth", $"{space.Name}, clear depth from the face of the frame",
            new Sum(Term.From("clear depth behind", 1, space.Depth), Term.From("face frame", 1, thick)), Combining.Narrowest);
        static Edge Framed(FrameEdge frame) => new(frame.Width, EdgeKind.Frame);
        return space with
        {
            Width = width,
            Height = height,
            Depth = depth,
            X = space.X + book.Value(left.In),
            Y = space.Y - book.Value(thick),
            Z = space.Z + book.Value(bottom.In),
            Edges = new(Framed(left), Framed(right), Framed(top), Framed(bottom)),
            Face = new(faceWidth, faceHeight),
            FaceFrame = null,
        };
    }

    /// <summary>Writes the packing of a bank, once its slides are known.</summary>
    public static void Write(Book book, Space space, FaceFrameSetting frame, DrawerBank bank)
    {
        QuantityKey[] slides = [.. bank.Drawers.Select(d => QuantityKey.Of(d.Key, "slide.length")).Where(book.Knows)];
        if (slides.Length == 0) return;
        ExactLength end = slides.Select(book.Value).Min() + TradeRules.Get("SS7").Length;
        Side(book, space, frame, space.Edges.Left, "left", end);
        Side(book, space, frame, space.Edges.Right, "right", end);
    }

    private static void Side(Book book, Space space, FaceFrameSetting frame, Edge side, string where, ExactLength end)
    {
        (FrameEdge edge, string word, bool atLeft) = (side.Frame!, $"packing-{where}", where == "left");
        ExactLength wanted = book.Value(edge.In);
        if (wanted.Sign <= 0) return;
        string name = $"{space.Name}, packing at its {where}";
        if (!frame.Described.IsPacked)
        {
            book.NoteOnce("slide.nothing-behind", Severity.Stop, space.Owner, $"The slides of {space.Name} have nothing behind them: the frame's edge stands {book.Say(wanted)} inside.", "Leave 'packing: no' out, or use a frame flush with the sides and partitions.", frame.Described.Place);
            return;
        }
        if (book.StickOf(frame.Described.Packing ?? frame.Described.Of, frame.Case) is not { } stick) return;
        QuantityKey thick = book.DefineSame(space.Prefix, $"{word}.thickness", $"{name}, thickness", "frame's edge inside of the face it is fixed to", edge.In);
        PartSize length = book.DefineSize(space.Prefix, $"{word}.length", $"{name}, length", new Sum(Term.From("clear height", 1, space.Height),
            Term.From("room to slip it in", -1, s_slipIn, new(OriginKind.Rule, "between top and bottom", "common practice, no source"))), Rounding.Down, "down: it must go between");
        ExactLength stock = book.Value(Book.ThicknessOf(stick.Name)), wide = book.Value(Book.SectionWidthOf(stick.Name)), high = book.Value(length.AsCut), front = space.Y;
        ExactLength rear = Max(front + wide, Min(space.Y + book.Value(space.Depth), end) - wide), right = space.X + book.Value(space.Width) - wanted;
        IEnumerable<Placement> At(ExactLength x) => [new(x, front, space.Z, wanted, wide, high), new(x, rear, space.Z, wanted, wide, high)];
        ImmutableArray<Placement> places = [.. At(atLeft ? space.X : right)];
        string part = $"{space.Prefix}.{word}";
        book.Add(new(part, $"{space.Owner}{(atLeft ? "pl" : "pr")}", name, PartRole.Packing, stick.Name, length, Book.Uncut(Book.SectionWidthOf(stick.Name)), thick, places.Length, Grain.Keep, places, space.Place));
        book.Joints.Add(new("butt", part, Face.Outside, side.Part, Face.Inside, "glue and screws"));
        int screws = Fastening.ScrewsAlong(high) * places.Length;
        ExactLength behind = book.Value(side.Member);
        if (Fastening.IntoFace(book.Piece.Unit, wanted, behind) is { } screw)
            book.Hardware.Add(new(space.Owner, $"Wood screw no. 8 (4 mm), {book.Say(screw)}", screws, "piece", $"{name}, stopping inside what it is fixed to: {Fastening.SpacingWords}"));
        else
            book.NoteOnce("packing.no-screw", Severity.Warn, space.Owner, $"{name}: no usual screw goes through {book.Say(wanted)} and stops inside {book.Say(behind)}.", "Glue it, or screw it from the other side.", space.Place);
        if (stock < wanted)
            book.NoteOnce("packing.too-thin", Severity.Stop, space.Owner, $"{name} must be {book.Say(wanted)} thick; sticks of {stick.Name} are {book.Say(stock)}: nothing would be behind the slides.", $"Write 'packing:' with sticks of {book.Say(wanted)} or more.", frame.Described.Packing?.Place ?? frame.Described.Place);
        else if (stock > wanted) book.Machinings.Add(new(part, "Plane to thickness", [("thickness", thick)]));
        book.Steps.Add(new(Stage.Inside, $"Screw the packing of {space.Name} to its {where}, flush with the inner edge of the frame: an upright right behind the frame, and one that ends {book.Say(rear + wide - (front - book.Value(frame.Thickness)))} behind its face.", [part], null, "screws"));
    }
}
