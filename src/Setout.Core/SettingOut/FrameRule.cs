using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut;

/// <summary>
/// A frame of sticks: pairs of posts front and back with the wide face to the front; rails between the posts, butted; ties from front
/// post to back post. Drawer bays get two slide panels screwed to the posts, so that slides have something to screw to.
/// </summary>
internal static class FrameRule
{
    // A panel exactly as high as the space between rails does not go in once the frame is closed.
    private static readonly ExactLength s_slipIn = FromInches(Rational.Of(1, 16));

    public static void Write(Book book, Frame frame)
    {
        string key = frame.Key;
        string name = frame.Name.Length > 0 ? frame.Name : "frame";
        if (book.StickOf(frame.Of, key) is not { } stick) return;
        QuantityKey thin = Book.ThicknessOf(stick.Name), wide = Book.SectionWidthOf(stick.Name);
        QuantityKey width = book.Define(key, "width", $"{name}, outside width", frame.Width.Stated);
        QuantityKey height = book.Define(key, "height", $"{name}, height", frame.Height.Stated);
        QuantityKey depth = book.Define(key, "depth", $"{name}, outside depth", frame.Depth.Stated);
        QuantityKey toe = book.Define(key, "toe", $"{name}, floor to bottom rail", frame.Toe.Stated);
        QuantityKey topRail = frame.TopRail == Laid.Flat ? thin : wide;

        var bays = frame.Bays.Items.OfType<Opening>().ToImmutableArray();
        int postPairs = bays.Length + 1;
        PartSize postLength = book.DefineSize(key, "post.length", $"{name} post, length", new Sum(Term.From("height", 1, height)), PartRole.Post);
        PartSize tieLength = book.DefineSize(key, "tie.length", $"{name} tie, length",
            new Sum(Term.From("outside depth", 1, depth), Term.From("posts, front and back", -2, thin)), PartRole.Tie);

        ImmutableArray<Sharer> sharers = [.. bays.Select(b => new Sharer(b.Key, "rail.length", $"bay {b.Key}, rail length", b.Size, ReadAs(book, b)))];
        ImmutableArray<Term> posts = [Term.From("posts, wide face to the front", postPairs, wide)];
        if (Sharing.Share(book, $"{name}, bays and posts in the width", width, posts, sharers, restIsCut: true, QuantityKey.Of(key, "outside")) is not { } rails) return;
        book.Define(key, "outside", $"{name}, outside width as built", new Sum([.. posts, .. bays.Select((b, i) => Term.From($"bay {b.Key}, rail as cut", 1, rails[i].AsCut))]));

        ExactLength p = book.Value(wide), pt = book.Value(thin), h = book.Value(postLength.AsCut), tie = book.Value(tieLength.AsCut);
        // As built: the ties decide how deep the frame comes out.
        ExactLength d = tie + (pt * 2);
        ExactLength toeUp = book.Value(toe), topHigh = book.Value(topRail), topDeep = frame.TopRail == Laid.Flat ? p : pt;
        var postPlaces = ImmutableArray.CreateBuilder<Placement>();
        var tiePlaces = ImmutableArray.CreateBuilder<Placement>();
        ExactLength x = Zero;
        var railParts = new List<Part>();
        var spaces = new List<(Opening Bay, ExactLength X, PartSize Rail)>();
        for (int i = 0; i < postPairs; i++)
        {
            postPlaces.Add(new(x, Zero, Zero, p, pt, h));
            postPlaces.Add(new(x, d - pt, Zero, p, pt, h));
            // End ties stand flush with the outside, inner ones in the middle of their posts.
            ExactLength tieX = i == 0 ? x : i == postPairs - 1 ? x + p - pt : x + ((p - pt) / 2);
            tiePlaces.Add(new(tieX, pt, toeUp, pt, tie, p));
            tiePlaces.Add(new(tieX, pt, h - p, pt, tie, p));
            x += p;
            if (i == bays.Length) break;
            ExactLength rail = book.Value(rails[i].AsCut);
            railParts.Add(new($"{bays[i].Key}.rail", $"{bays[i].Key}r", $"bay {bays[i].Key} rail", PartRole.Rail, stick.Name, rails[i], Book.Uncut(wide), thin, 4, Grain.Keep,
                [
                    new(x, Zero, toeUp, rail, pt, p), new(x, d - pt, toeUp, rail, pt, p),
                    new(x, Zero, h - topHigh, rail, topDeep, topHigh), new(x, d - topDeep, h - topHigh, rail, topDeep, topHigh),
                ], bays[i].Place));
            spaces.Add((bays[i], x, rails[i]));
            x += rail;
        }
        book.Add(new($"{key}.post", $"{key}p", $"{name} post", PartRole.Post, stick.Name, postLength, Book.Uncut(wide), thin, 2 * postPairs, Grain.Keep, postPlaces.ToImmutable(), frame.Place));
        book.Add(new($"{key}.tie", $"{key}t", $"{name} tie, front to back", PartRole.Tie, stick.Name, tieLength, Book.Uncut(wide), thin, 2 * postPairs, Grain.Keep, tiePlaces.ToImmutable(), frame.Place));
        book.Parts.AddRange(railParts);
        Fasten(book, key, postPairs, railParts);
        Dimension(book, frame, width, height, x, h, spaces);

        book.Steps.Add(new(Stage.Carcase, $"Lay front and back of the {name} out flat on the floor: rails between posts, bottom rails {book.Say(toeUp)} up, pockets to the inside. Glue, clamp and drive two pocket screws an end. Measure both diagonals of each before the last screws; pull the longer one in until they read alike.",
            [$"{key}.post", .. railParts.Select(r => r.Key)], Diagonals.Of(book.Grid, x, h), "lift"));
        book.Steps.Add(new(Stage.Carcase, "Stand front and back up with a helper and screw the ties between them, two structural screws an end from outside through the post, pilots drilled. Check the diagonals of both ends.",
            [$"{key}.tie"], Diagonals.Of(book.Grid, d, h), "lift"));

        foreach ((Opening bay, ExactLength bayX, PartSize rail) in spaces)
            WriteBay(book, frame, bay, bayX, rail, postLength, toe, wide, topRail, depth);
    }

    private static void Fasten(Book book, string key, int postPairs, List<Part> rails)
    {
        foreach (Part rail in rails) book.Joints.Add(new("butt", rail.Key, Face.Ends, $"{key}.post", Face.Inside, "glue and two pocket screws an end, pockets on the inside"));
        book.Joints.Add(new("butt", $"{key}.tie", Face.Ends, $"{key}.post", Face.Inside, "two structural screws an end, through the post"));
        // A screw from outside would go through the wide face of the post and leave half an inch in end grain: rails are pocket-screwed.
        (string pocket, string source) = Fastening.PocketScrew(book, book.Value(rails[0].Thickness));
        book.Hardware.Add(new(key, pocket, 16 * rails.Count, "piece", $"{8 * rails.Count} rail ends, 2 each; {source}"));
        ExactLength through = book.Value(rails[0].Thickness), bite = Fastening.LeastBiteInEdge * 2;
        book.Hardware.Add(new(key, $"Structural wood screw, {book.Say(Fastening.IntoEdge(book.Piece.Unit, through + bite))}", 8 * postPairs, "piece",
            $"{4 * postPairs} tie ends, 2 each through the post; common practice, no source"));
    }

    private static void Dimension(Book book, Frame frame, QuantityKey width, QuantityKey height, ExactLength x, ExactLength h, List<(Opening Bay, ExactLength X, PartSize Rail)> spaces)
    {
        book.Dimensions.Add(new(width, true, Zero, x, 1));
        book.Dimensions.Add(new(height, false, Zero, h, 1));
        book.Dimensions.Add(new(QuantityKey.Of(frame.Key, "toe"), false, Zero, book.Value(QuantityKey.Of(frame.Key, "toe")), 0));
        foreach ((Opening _, ExactLength bayX, PartSize rail) in spaces)
            book.Dimensions.Add(new(rail.AsCut, true, bayX, bayX + book.Value(rail.AsCut), 0));
    }

    private static void WriteBay(
        Book book, Frame frame, Opening bay, ExactLength x, PartSize rail, PartSize post, QuantityKey toe, QuantityKey wide, QuantityKey topRail, QuantityKey depth)
    {
        string name = $"bay {bay.Key}";
        QuantityKey faceHeight = book.Define(bay.Key, "face-height", $"{name}, height between the rails",
            new Sum(Term.From("post, as cut", 1, post.AsCut), Term.From("floor to bottom rail", -1, toe), Term.From("bottom rail, on edge", -1, wide),
                Term.From(frame.TopRail == Laid.Flat ? "top rail, laid flat" : "top rail, on edge", -1, topRail)));
        QuantityKey height = book.DefineSame(bay.Key, "height", $"{name}, clear height", "between the rails", faceHeight, Combining.Narrowest, Scatter.Placed);
        ExactLength z = book.Value(toe) + book.Value(wide);
        Panel? panel = bay.SlidePanels is { } named ? book.PanelOf(named, bay.Key) : null;
        if (panel is null)
        {
            if (bay.SlidePanels is not null) return;
            QuantityKey open = book.DefineSame(bay.Key, "width", $"{name}, clear width", "rail, as cut", rail.AsCut, Combining.Narrowest, Scatter.Placed);
            QuantityKey deep = book.DefineSame(bay.Key, "depth", $"{name}, clear depth", "frame depth", depth, Combining.Narrowest);
            OpeningRule.Fill(book, new(bay.Key, bay.Key, name, open, height, deep, x, Zero, z, FrameEdges(wide, topRail, null, ""), frame.Of, $"{frame.Key}.post", bay.Place, new(rail.AsCut, faceHeight), TakesSlides: false), bay.Content);
            return;
        }
        QuantityKey t = Book.ThicknessOf(panel.Name);
        PartSize length = book.DefineSize(bay.Key, "panel.length", $"{name} slide panel, height", new Sum(Term.From("clear height", 1, height),
            Term.From("room to slip it in", -1, s_slipIn, new(OriginKind.Rule, "between the rails", "common practice, no source"))), PartRole.SlidePanel);
        PartSize across = book.DefineSize(bay.Key, "panel.width", $"{name} slide panel, depth", new Sum(Term.From("frame depth", 1, depth)), PartRole.SlidePanel);
        ExactLength tv = book.Value(t), high = book.Value(length.AsCut), deepest = book.Value(across.AsCut), clear = book.Value(rail.AsCut);
        book.Add(new($"{bay.Key}.panel", $"{bay.Key}p", $"{name} slide panel", PartRole.SlidePanel, panel.Name, length, across, t, 2, panel.Grain,
            [new(x, Zero, z, tv, deepest, high), new(x + clear - tv, Zero, z, tv, deepest, high)], bay.Place));
        book.Joints.Add(new("butt", $"{bay.Key}.panel", Face.Outside, $"{frame.Key}.post", Face.Inside, "glue and screws into both posts"));
        int screws = 4 * Fastening.ScrewsAlong(high);
        book.Hardware.Add(new(bay.Key, Fastening.PanelScrew(book, panel, tv), screws, "piece", $"2 panels on 2 posts each: {Fastening.SpacingWords}"));
        book.Steps.Add(new(Stage.Inside, $"Glue and screw the slide panels of bay {bay.Key} to the inside of front and back posts, front edges flush with the posts.", [$"{bay.Key}.panel"], null, ""));
        QuantityKey faceWidth = book.Define(bay.Key, "face-width", $"{name}, width between the slide panels at the face",
            new Sum([Term.From("rail, as cut", 1, rail.AsCut), .. book.Thicknesses("slide panels", -1, $"{bay.Key}.panel", panel.Name, 2)]));
        QuantityKey slipped = book.Define(bay.Key, "panel.room", $"{name}, room above its slide panels",
            new Sum(Term.From("clear height", 1, height), Term.From("slide panel, as cut", -1, length.AsCut)));
        book.Gaps.Add(new(slipped, $"{name}, slide panel between the rails", Zero, s_slipIn * 2, "to slip in, and not more than twice the room kept: common practice, no source"));
        QuantityKey width = book.DefineSame(bay.Key, "width", $"{name}, clear width", "between the slide panels", faceWidth, Combining.Narrowest, Scatter.Placed);
        QuantityKey inside = book.DefineSame(bay.Key, "depth", $"{name}, clear depth", "slide panel, as cut", across.AsCut, Combining.Narrowest);
        OpeningRule.Fill(book, new(bay.Key, bay.Key, name, width, height, inside, x + tv, Zero, z, FrameEdges(wide, topRail, t, $"{bay.Key}.panel"), bay.SlidePanels!.Value, $"{bay.Key}.panel", bay.Place, new(faceWidth, faceHeight)), bay.Content);
    }

    /// <summary>A bay is read between its slide panels where it has some: what is read, and the two panels, come to its rails.</summary>
    private static ImmutableArray<Term> ReadAs(Book book, Opening bay)
    {
        Term clear = Term.From($"bay {bay.Key}, clear width", 1, QuantityKey.Of(bay.Key, "width"));
        return bay.SlidePanels is { } panels && book.Piece.Materials.GetValueOrDefault(panels.Text) is Panel panel
            ? [clear, .. book.Thicknesses($"slide panels of {bay.Key}", 1, $"{bay.Key}.panel", panel.Name, 2)]
            : [clear];
    }

    private static Edges FrameEdges(QuantityKey post, QuantityKey topRail, QuantityKey? panel, string part) => new(
        new(post, EdgeKind.Frame, panel, part), new(post, EdgeKind.Frame, panel, part), new(topRail, EdgeKind.Frame), new(post, EdgeKind.Frame));
}
