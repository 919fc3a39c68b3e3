using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>How a drawer box is put together and hung, and what holds it.</summary>
internal static class BoxWork
{
    public static void Write(BoxCorners corners, BoxSizes sizes, QuantityKey built, QuantityKey slide, ExactLength low)
    {
        Box box = corners.Box;
        (Book book, DrawerKind kind, string key, string name) = (box.Book, box.Kind, box.Key, box.Name);
        bool isSide = kind.Slides == SlideWay.Side;
        QuantityKey? up = isSide ? book.Define(key, "slide.up", $"{name}, middle of the slide above the {box.Space.Ground}", new Sum([
            Term.From($"box above the {box.Space.Ground}", 1, low, new(OriginKind.Worked, "from the fronts below it, and half the room")),
            .. kind.BottomFit == BottomFit.Applied ? [Term.From("bottom, applied below the sides", 1, box.BottomThickness)] : Array.Empty<Term>(), Term.From("half the box height", Rational.Of(1, 2), sizes.SideHeight.AsCut)])) : null;
        BoxCornerRule.Write(corners, sizes);
        Fasten(box, sizes);
        if (kind.Slides != SlideWay.Runners)
        {
            string many = isSide ? (kind.Sheet.Clearance is { } c ? $"one pair a drawer; each takes {book.Say(c.Value)} beside the box" : "one pair a drawer; full extension, 1/2 in class") : "one pair a drawer, with what hooks its front; its leaflet wins";
            string slides = SlideRule.NameOf(kind);
            book.Hardware.Add(new(key, $"{char.ToUpperInvariant(slides[0])}{slides[1..]}, {book.Say(book.Value(slide))}", 1, "pair", many));
        }
        Front(box);
        string back = book.Say(kind.Sheet.Setback?.Value ?? TradeRules.Get("SS7").Length);
        string[] parts = box.HasOwnBack ? [$"{key}.side", $"{key}.end", $"{key}.back", $"{key}.bottom"] : [$"{key}.side", $"{key}.end", $"{key}.bottom"];
        ExactLength outside = book.Value(sizes.SideLength.AsCut) + (corners.Lap is { } lap ? book.Value(lap) : ExactLength.Zero);
        bool isScrewed = kind.Corners is CornerJoint.Pocket or CornerJoint.Butt;
        book.Steps.Add(new(Stage.Drawers, $"Box {key}: {Prepare(kind)}{(kind.BottomFit == BottomFit.Grooved ? "put the bottom in dry, " : "")}{Together(kind.Corners)}. Measure both diagonals before the glue sets.{Last(kind)} Then read its width{book.Enter(built, "WIDTH")}.",
            [.. parts], Diagonals.Of(book.Grid, book.Value(built), outside), isScrewed ? "screws" : "saw")
        { On = key });
        book.Units.Add(new(key, name, UnitKind.Drawer));
        string face = kind.Fronts == FrontWay.Inset ? "the back of the inset front" : "the face";
        if (up is { } middle)
            book.Steps.Add(new(Stage.Drawers, $"Slides for {key}: on the carcase with their middle {book.Say(book.Value(middle))} above the {box.Space.Ground}, front ends {back} behind {face}, on spacers alike left and right; on the box along the middle of its sides, front ends {back} behind its front. So the box comes flush with {face} when it is home.", [], null, "") { Whole = [key] });
        else if (kind.Slides == SlideWay.Under)
        {
            if (kind.BottomFit == BottomFit.Grooved)
                book.Machinings.Add(new($"{key}.end", $"On the back: notch both lower corners for the slides, width and bore by their leaflet ({TradeRules.Get("US7").Cited})", [("up to the bottom", QuantityKey.Of(key, "groove.up"))]) { Numbers = [2], On = Face.Bottom, Caution = "drill" });
            book.Steps.Add(new(Stage.Drawers, $"Slides for {key}: on the carcase level and parallel, front ends {back} behind {face}, by their leaflet, so that the lower edge of the box runs {book.Say(low)} above the {box.Space.Ground}; on the box what hooks it in, under the bottom behind its front.", [], null, "") { Whole = [key] });
        }
        else book.Steps.Add(new(Stage.Drawers, $"Slide {name} in on its runners and try it from end to end; plane what rubs.", [], null, "") { Whole = [key] });
    }

    private static string Prepare(DrawerKind kind)
    {
        string corner = kind.Corners switch
        {
            CornerJoint.Rabbet => "rabbet the ends of the sides, ",
            CornerJoint.Dado => "rabbet the front ends of the sides and cut their dadoes for the back, ",
            CornerJoint.LockRabbet => "cut the dadoes in the sides and the tongues on the ends, ",
            CornerJoint.BoxJoint => "cut the fingers, ",
            CornerJoint.HalfBlindDovetail => "cut the tails, then sockets and pins to them, ",
            CornerJoint.ThroughDovetail => "cut the tails, then the pins to them, ",
            _ => "",
        };
        return corner + kind.BottomFit switch
        {
            BottomFit.Grooved => "groove sides and ends, ",
            BottomFit.SlidIn => "groove the sides and the front, ",
            BottomFit.LetIn => "rabbet the lower inside edges, ",
            _ => "",
        };
    }

    private static string Together(CornerJoint joint) => joint switch
    {
        CornerJoint.Pocket => "glue and screw ends between the sides",
        CornerJoint.Butt => "glue the ends between the sides and screw them through the sides",
        CornerJoint.Rabbet => "glue the ends into the rabbets and pin them through the sides",
        CornerJoint.Dado or CornerJoint.LockRabbet => "glue the ends into the sides and clamp",
        _ => "glue the corners together and clamp",
    };

    private static string Last(DrawerKind kind) => kind.BottomFit switch
    {
        BottomFit.SlidIn => " Last of all slide the bottom in from behind, without glue, and screw it up into the back.",
        BottomFit.Applied => " Then glue and screw the bottom on from below, flush all round: it keeps the box square.",
        BottomFit.LetIn => " Then glue and pin the bottom into its rabbet: it keeps the box square.",
        _ => "",
    };

    private static void Fasten(Box box, BoxSizes sizes)
    {
        (Book book, string key) = (box.Book, box.Key);
        ExactLength side = book.Value(Book.ThicknessOf(box.Sides.Name));
        int screws = 4 * Math.Max(2, (int)(book.Value(sizes.SideHeight.ToCut).Inches / 3).Round(Rounding.Down));
        if (box.Kind.Corners == CornerJoint.Pocket)
        {
            (string screw, string source) = Fastening.PocketScrew(book, side);
            Fastening.CheckPocket(book, key, $"the sides of {box.Name}", side, box.Kind.Sides.Place);
            book.Hardware.Add(new(key, screw, screws, "piece", $"4 corners; {source}"));
        }
        else if (box.Kind.Corners == CornerJoint.Butt)
        {
            Fastening.CheckEdge(book, key, $"the ends of {box.Name}", side, box.Kind.Sides.Place);
            book.Hardware.Add(new(key, Fastening.PanelScrew(book, box.Sides, side), screws, "piece", "4 corners, through the sides; common practice, no source"));
        }
        else if (box.Kind.Corners == CornerJoint.Rabbet)
            book.Hardware.Add(new(key, $"Pin or brad, {book.Say(Fastening.IntoEdge(book.Piece.Unit, side - book.Value(QuantityKey.Of(key, "corner.depth").ToCut)))}", screws, "piece", $"4 corners, through what is left of the sides; {TradeRules.Get("DJ1").Source}"));
    }

    private static void Front(Box box)
    {
        FrontRoom.Slots(box);
        (Book book, DrawerKind kind, string key) = (box.Book, box.Kind, box.Key);
        ExactLength behind = book.Value(Book.ThicknessOf(box.Sides.Name)), front = book.Value(Book.ThicknessOf(kind.Front.Text));
        if (Fastening.IntoFace(book.Piece.Unit, behind, front) is { } through)
            book.Hardware.Add(new(key, $"Pan-head screw for false fronts, {book.Say(through)}", 4, "piece", "four a front, stopping inside it; common practice, no source"));
        else if (!book.IsUnknown(kind.Front.Text) && !book.IsUnknown(box.Sides.Name))
            book.NoteOnce("front.no-screw", Severity.Warn, key, $"No usual screw holds a front of {book.Say(front)} through a box of {book.Say(behind)} without coming out.", "Use a thicker front, or glue it on.", kind.Front.Place);
    }
}
