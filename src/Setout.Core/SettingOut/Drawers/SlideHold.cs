using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>
/// What side-mounted slides are screwed to: a screw bites 1/4 in and stops 1/8 in short of the far face, so sides of a box and what stands beside the opening
/// are of what is sold as 3/8 in (9 mm) or more (common practice, no source).
/// </summary>
internal static class SlideHold
{
    /// <summary>Notes sides of a box, or what carries its slides, that are too thin for screws.</summary>
    public static void Look(Box box)
    {
        if (box.Kind.Slides != SlideWay.Side) return;
        Book book = box.Book;
        Thin(box, $"the sides of {box.Name}", "come through into the box", book.Value(box.SideThickness), box.Kind.Sides.Place);
        foreach (Edge edge in new[] { box.Space.Edges.Left, box.Space.Edges.Right })
            if (edge.Part.Length > 0) Thin(box, edge.Part, "come out at its far face", book.Value(edge.Beside ?? edge.Member), box.Drawer.Place);
    }

    private static void Thin(Box box, string what, string comes, ExactLength thick, Place place)
    {
        Book book = box.Book;
        if (book.HasUnknown || thick >= Fastening.HoldsInFace) return;
        book.NoteOnce("slide.no-screw", Severity.Warn, box.Key, $"Slides are screwed to {what}, {book.Say(thick)} thick: screws that hold {comes}.",
            $"Use stock of {book.SayAtLeast(Fastening.HoldsInFace)} or more there, bolt the slides through, {book.Hand.OrWrite("slides", "runners")}. (common practice, no source)", place);
    }
}
