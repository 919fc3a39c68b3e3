using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.SettingOut.Openings;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Frames;

/// <summary>One bay of a frame: its clear size, and the slide panels screwed to the posts so that slides have something to screw to.</summary>
internal static class FrameBay
{
    // A panel exactly as high as the space between rails does not go in once the frame is closed.
    private static readonly ExactLength s_slipIn = FromInches(Rational.Of(1, 16));

    // Its clear width is another one once it has slide panels: the name says between what.
    private const string BetweenPanels = "clear width between slide panels";

    public static void Write(Book book, Frame frame, FrameKeys keys, Opening bay, ExactLength x, PartSize rail)
    {
        FrameSpaces spaces = FrameSpaces.Of(book, frame, keys, bay);
        string name = $"bay {bay.Key}";
        QuantityKey faceHeight = book.Define(bay.Key, "face-height", $"{name}, height between the rails",
            new Sum([Term.From("post, as cut", 1, keys.Post.AsCut), Term.From(keys.HasBottom ? "floor to bottom rail" : "floor to the bay", -1, keys.Toe), .. keys.Bottom(-1),
                Term.From(frame.TopRail == Laid.Flat ? "top rail, laid flat" : "top rail, on edge", -1, keys.TopRail), .. keys.Over(-1)]));
        QuantityKey height = book.DefineSame(bay.Key, "height", $"{name}, clear height", "between the rails", faceHeight, Combining.Narrowest, Scatter.Placed);
        ExactLength z = book.Value(new Sum([Term.From("floor to the bay", 1, keys.Toe), .. keys.Bottom(1)]));
        Panel? panel = bay.SlidePanels is { } named ? book.PanelOf(named, bay.Key) : null;
        if (panel is null)
        {
            if (bay.SlidePanels is not null) return;
            QuantityKey open = book.DefineSame(bay.Key, "width", $"{name}, clear width", keys.Between, rail.Made, Combining.Narrowest, Scatter.Placed);
            QuantityKey? setback = bay.Setback is { } back ? book.Define(bay.Key, "setback", $"{name}, setback of what stands in it", back.Stated) : null;
            Sum inside_ = setback is { } s ? new([.. keys.Inside.Terms, Term.From("setback, front and back", -2, s)]) : keys.Inside;
            QuantityKey deep = book.Define(bay.Key, "depth", $"{name}, clear depth", inside_, Combining.Narrowest);
            if (!FrameBounds.HasDepth(book, bay, deep)) return;
            BackToBackRule.Fill(book, spaces.Into(new(bay.Key, bay.Key, name, open, height, deep, x, book.ValueOr0(setback), z, FrameEdges(keys, null, ""), frame.Of, $"{frame.Key}.post", bay.Place, new(rail.Made, faceHeight),
                TakesSlides: spaces.Bearers is not null)), bay);
            return;
        }
        QuantityKey t = Book.ThicknessOf(panel.Name);
        if (!FrameBounds.TakesPanels(book, bay, book.Value(rail.Made), book.Value(height), book.Value(t), s_slipIn)) return;
        PartSize length = book.DefineSize(bay.Key, "panel.length", $"{name} slide panel, height", new Sum(Term.From("clear height", 1, height),
            Term.From("room to slip it in", -1, s_slipIn, new(OriginKind.Rule, "between the rails", "common practice, no source"))), PartRole.SlidePanel);
        PartSize across = book.DefineSize(bay.Key, "panel.width", $"{name} slide panel, depth", keys.Inside, PartRole.SlidePanel, panel, 1);
        ExactLength tv = book.Value(t), high = book.Value(length.AsCut), deepest = book.Value(across.Made), clear = book.Value(rail.Made);
        book.Add(new($"{bay.Key}.panel", $"{bay.Key}p", $"{name} slide panel", PartRole.SlidePanel, panel.Name, length, across, t, 2, panel.Grain,
            [new(x, Zero, z, tv, deepest, high), new(x + clear - tv, Zero, z, tv, deepest, high)], bay.Place)
        { Seen = new(1, 0) });
        book.Joints.Add(new(JointKind.Butt, $"{bay.Key}.panel", Face.Outside, $"{frame.Key}.post", Face.Inside, "glue and screws into both posts"));
        int screws = 4 * Fastening.ScrewsAlong(high);
        book.Hardware.Add(new(bay.Key, Fastening.PanelScrew(book, panel, tv), screws, "piece", $"2 panels on 2 posts each: {Fastening.SpacingWords}"));
        book.Steps.Add(new(Stage.Inside, $"Glue and screw the slide panels of bay {bay.Key} to the inside of front and back posts, front edges flush with the posts.", [$"{bay.Key}.panel"], null, ""));
        QuantityKey faceWidth = book.Define(bay.Key, "face-width", $"{name}, width between the slide panels at the face",
            new Sum([Term.From(keys.Between, 1, rail.Made), .. book.Thicknesses("slide panels", -1, $"{bay.Key}.panel", panel.Name, 2)]));
        QuantityKey slipped = book.Define(bay.Key, "panel.room", $"{name}, room above its slide panels",
            new Sum(Term.From("clear height", 1, height), Term.From("slide panel, as cut", -1, length.AsCut)));
        book.Gaps.Add(new(slipped, $"{name}, slide panel between the rails", Zero, s_slipIn * 2, "to slip in, and not more than twice the room kept: common practice, no source"));
        QuantityKey width = book.DefineSame(bay.Key, "width", $"{name}, {BetweenPanels}", "between the slide panels", faceWidth, Combining.Narrowest, Scatter.Placed);
        QuantityKey inside = book.DefineSame(bay.Key, "depth", $"{name}, clear depth", "slide panel, as cut", across.Made, Combining.Narrowest);
        BackToBackRule.Fill(book, spaces.Into(new(bay.Key, bay.Key, name, width, height, inside, x + tv, Zero, z, FrameEdges(keys, t, $"{bay.Key}.panel"), bay.SlidePanels!.Value, $"{bay.Key}.panel", bay.Place, new(faceWidth, faceHeight))), bay);
    }

    /// <summary>A bay is read between its slide panels where it has some: what is read, and the two panels, come to its rails.</summary>
    public static ImmutableArray<Term> ReadAs(Book book, Opening bay)
    {
        Term Clear(string words) => Term.From($"bay {bay.Key}, {words}", 1, QuantityKey.Of(bay.Key, "width"));
        return bay.SlidePanels is { } panels && book.Piece.Materials.GetValueOrDefault(panels.Text) is Panel panel
            ? [Clear(BetweenPanels), .. book.Thicknesses($"slide panels of {bay.Key}", 1, $"{bay.Key}.panel", panel.Name, 2)]
            : [Clear("clear width")];
    }

    private static Edges FrameEdges(FrameKeys keys, QuantityKey? panel, string part)
    {
        Edge post = new(keys.PostWide, EdgeKind.Frame, panel, part) { Start = panel is null ? [Term.From("floor to bottom rail", 1, keys.Toe), .. keys.Bottom(1)] : [] };
        return new(post, post, new(keys.TopRail, EdgeKind.Frame), new(keys.RailWide, EdgeKind.Frame) { IsOpen = !keys.HasBottom });
    }
}
