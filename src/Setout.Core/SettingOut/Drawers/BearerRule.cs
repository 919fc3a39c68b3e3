using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>
/// Bearers: a stick on edge between front and rear post, flush with the faces of the posts that bound the bay. A slide is screwed to it; a drawer on runners
/// is guided by it.
/// </summary>
internal static class BearerRule
{
    /// <summary>Writes the pair of one drawer.</summary>
    public static void Write(Book book, Space space, DrawerKind kind, Drawer drawer)
    {
        if (space.Bearers is not { } bearers || !book.Knows(QuantityKey.Of(drawer.Key, "box.as-built"))) return;
        string key = $"{drawer.Key}.bearer", name = $"drawer {drawer.Key} bearer";
        QuantityKey thin = Book.ThicknessOf(bearers.Stick.Name), wide = Book.SectionWidthOf(bearers.Stick.Name);
        ExactLength thick = book.Value(thin), high = book.Value(wide), bottom = space.Z, top = space.Z + book.Value(space.Height);
        // Its middle at that of the slide, as far as the opening allows; under the box, and beside one on runners, it stands low.
        QuantityKey middle = QuantityKey.Of(drawer.Key, "slide.up");
        ExactLength wanted = book.Knows(middle) ? space.Z + book.Value(middle) - (high / 2) : Low(book, drawer) ?? bottom;
        ExactLength z = Max(bottom, Min(wanted, top - high));
        PartSize length = book.DefineSize(drawer.Key, "bearer.length", $"{name}, length", new Sum(bearers.Between), PartRole.Bearer);
        ExactLength long_ = book.Value(length.AsCut), right = space.X + book.Value(space.Width);
        // A partition beside the opening carries slides by itself.
        ImmutableArray<Placement> places =
        [
            .. space.Edges.Left.Part.Length == 0 ? [new Placement(space.X - thick, bearers.Y, z, thick, long_, high)] : ImmutableArray<Placement>.Empty,
            .. space.Edges.Right.Part.Length == 0 ? [new Placement(right, bearers.Y, z, thick, long_, high)] : ImmutableArray<Placement>.Empty,
        ];
        // Those of a drawer from the other side are there already.
        if (places.IsEmpty || book.Parts.Any(p => p.Role == PartRole.Bearer && p.Placements.Contains(book.Corner.Place(places[0])))) return;
        book.Add(new(key, $"{drawer.Key}g", name, PartRole.Bearer, bearers.Stick.Name, length, Book.Uncut(wide), thin, places.Length, Grain.Keep, places, drawer.Place));
        book.Joints.Add(new(JointKind.Butt, key, Face.Ends, bearers.Post, Face.Inside, "two pocket screws an end"));
        (string pocket, string source) = Fastening.PocketScrew(book, thick);
        book.Hardware.Add(new(drawer.Key, pocket, 4 * places.Length, "piece", $"{places.Length} bearers, 2 at each end; {source}"));
        QuantityKey up = book.Define(drawer.Key, "bearer.up", $"{name}, its lower edge above the {space.Ground}", new Sum(Term.From("from the slide, within the opening", 1, z - bottom, new(OriginKind.Worked, "middle of the slide, less half the bearer"))));
        string why = kind.Slides == SlideWay.Runners ? "they guide the drawer" : "its slides are screwed to them";
        book.Steps.Add(new(Stage.Inside, $"Bearers for {drawer.Key}: between front and rear post, lower edges {(book.Value(up).Sign == 0 ? "level with" : $"{book.Say(book.Value(up))} above")} the {space.Ground}, inner faces flush with those of the posts: {why}. Pocket-screw them from the side away from the drawer.", [key], null, "screws"));
    }

    private static ExactLength? Low(Book book, Drawer drawer)
    {
        Part? side = book.Parts.FirstOrDefault(p => p.Key == $"{drawer.Key}.side");
        return side is null ? null : side.Placements[0].Z - book.Corner.Z;
    }
}
