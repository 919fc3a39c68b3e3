using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Frames;

/// <summary>The quantities of a frame that its bays and panels go by.</summary>
/// <param name="Post">Length of the posts.</param>
/// <param name="PostThin">The smaller size of a post: front to back.</param>
/// <param name="PostWide">The larger size of a post: seen from the front.</param>
/// <param name="RailThin">The smaller size of rails and ties.</param>
/// <param name="RailWide">The larger size of rails and ties: their height where they stand on edge.</param>
/// <param name="TopRail">Height of the top rails as they lie.</param>
/// <param name="Toe">Floor to bottom rail.</param>
/// <param name="Depth">Outside depth.</param>
/// <param name="Above">How far the posts stand over the top rails; null for flush.</param>
/// <param name="Tenon">Length of the tenons; null where there are none.</param>
internal sealed record FrameKeys(
    PartSize Post, QuantityKey PostThin, QuantityKey PostWide, QuantityKey RailThin, QuantityKey RailWide, QuantityKey TopRail, QuantityKey Toe, QuantityKey Depth,
    QuantityKey? Above, QuantityKey? Tenon)
{
    /// <summary>What a panel in the back takes of the depth; null for none.</summary>
    public QuantityKey? BackTakes { get; init; }

    /// <summary>The depth of what stands in a bay.</summary>
    public Sum Inside => new([Term.From("frame depth", 1, Depth), .. BackTakes is { } takes ? [Term.From("back panel, and the wood behind it", -1, takes)] : ImmutableArray<Term>.Empty]);

    /// <summary>What stands over the top rails, as a term.</summary>
    public ImmutableArray<Term> Over(int times) => Above is { } above ? [Term.From("posts over the top rail", times, above)] : [];

    /// <summary>What the clear width of a bay is worked from, in words.</summary>
    public string Between => Tenon is null ? "rail, as cut" : "rail, as cut, between shoulders";
}

/// <summary>
/// A frame of sticks: pairs of posts front and back with the wide face to the front; rails between the posts, butted, dowelled or tenoned; ties
/// from front post to back post. Drawer bays get two slide panels screwed to the posts, so that slides have something to screw to.
/// </summary>
internal static class FrameRule
{
    public static void Write(Book book, Frame frame)
    {
        string key = frame.Key;
        string name = Standing.NameOf(book, frame, "frame");
        if (book.StickOf(frame.Of, key) is not { } stick || book.StickOf(frame.Rails ?? frame.Of, key) is not { } slim) return;
        QuantityKey thin = Book.ThicknessOf(stick.Name), wide = Book.SectionWidthOf(stick.Name), railThin = Book.ThicknessOf(slim.Name), railWide = Book.SectionWidthOf(slim.Name);
        QuantityKey width = book.Define(key, "width", $"{name}, outside width", frame.Width.Stated);
        QuantityKey height = book.Define(key, "height", $"{name}, height", frame.Height.Stated);
        QuantityKey depth = book.Define(key, "depth", $"{name}, outside depth", frame.Depth.Stated);
        QuantityKey toe = book.Define(key, "toe", $"{name}, floor to bottom rail", frame.Toe.Stated);
        QuantityKey? above = frame.Above is { } over ? book.Define(key, "above", $"{name}, posts over the top rail", over.Stated) : null;
        QuantityKey? tenon = FrameJoints.Tenon(book, frame, name, wide, thin);

        var bays = frame.Bays.Items.OfType<Opening>().ToImmutableArray();
        int postPairs = bays.Length + 1;
        PartSize postLength = book.DefineSize(key, "post.length", $"{name} post, length", new Sum(Term.From("height", 1, height)), PartRole.Post);
        var betweenPosts = new Sum(Term.From("outside depth", 1, depth), Term.From("posts, front and back", -2, thin));
        PartSize tieLength = tenon is { } t ? book.LetIn(betweenPosts, key, "tie.length", $"{name} tie, length", PartRole.Tie, t, "tenons")
            : book.DefineSize(key, "tie.length", $"{name} tie, length", betweenPosts, PartRole.Tie);
        var keys = new FrameKeys(postLength, thin, wide, railThin, railWide, frame.TopRail == Laid.Flat ? railThin : railWide, toe, depth, above, tenon)
        { BackTakes = FramePanelRule.BackTakes(book, frame, name, railThin) };

        // Tenoned rails are longer than the bay: the bays are shared out, and the rails follow.
        ImmutableArray<Sharer> sharers = [.. bays.Select(b => new Sharer(b.Key, tenon is null ? "rail.length" : "clear", tenon is null ? $"bay {b.Key}, rail length" : $"bay {b.Key}, between posts", b.Size, FrameBay.ReadAs(book, b)))];
        ImmutableArray<Term> posts = [Term.From("posts, wide face to the front", postPairs, wide)];
        if (Sharing.Share(book, $"{name}, bays and posts in the width", width, posts, sharers, restIsCut: true, QuantityKey.Of(key, "outside")) is not { } shared) return;
        ImmutableArray<PartSize> rails = tenon is { } let
            ? [.. shared.Select((s, i) => book.LetIn(new Sum(Term.From("between posts, as set out", 1, s.ToCut)), bays[i].Key, "rail.length", $"bay {bays[i].Key}, rail length", PartRole.Rail, let, "tenons"))]
            : shared;
        book.Define(key, "outside", $"{name}, outside width as built", new Sum([.. posts, .. bays.Select((b, i) => Term.From($"bay {b.Key}, {keys.Between}", 1, rails[i].Made))]));

        ExactLength p = book.Value(wide), pt = book.Value(thin), r = book.Value(railWide), rt = book.Value(railThin), h = book.Value(postLength.AsCut), tie = book.Value(tieLength.Made);
        ExactLength into = tenon is { } deep ? book.Value(deep) : Zero, up = above is { } a ? book.Value(a) : Zero;
        // As built: the ties decide how deep the frame comes out.
        ExactLength d = tie + (pt * 2);
        ExactLength toeUp = book.Value(toe), topHigh = book.Value(keys.TopRail), topDeep = frame.TopRail == Laid.Flat ? r : rt;
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
            ExactLength tieX = i == 0 ? x : i == postPairs - 1 ? x + p - rt : x + ((p - rt) / 2);
            tiePlaces.Add(new(tieX, pt - into, toeUp, rt, tie + (into * 2), r));
            tiePlaces.Add(new(tieX, pt - into, h - up - r, rt, tie + (into * 2), r));
            x += p;
            if (i == bays.Length) break;
            ExactLength rail = book.Value(rails[i].Made), from = x - into, length = rail + (into * 2);
            railParts.Add(new($"{bays[i].Key}.rail", $"{bays[i].Key}r", $"bay {bays[i].Key} rail", PartRole.Rail, slim.Name, rails[i], Book.Uncut(railWide), railThin, 4, Grain.Keep,
                [
                    new(from, Zero, toeUp, length, rt, r), new(from, d - rt, toeUp, length, rt, r),
                    new(from, Zero, h - up - topHigh, length, topDeep, topHigh), new(from, d - topDeep, h - up - topHigh, length, topDeep, topHigh),
                ], bays[i].Place));
            spaces.Add((bays[i], x, rails[i]));
            x += rail;
        }
        book.Add(new($"{key}.post", $"{key}p", $"{name} post", PartRole.Post, stick.Name, postLength, Book.Uncut(wide), thin, 2 * postPairs, Grain.Keep, postPlaces.ToImmutable(), frame.Place));
        book.Add(new($"{key}.tie", $"{key}t", $"{name} tie, front to back", PartRole.Tie, slim.Name, tieLength, Book.Uncut(railWide), railThin, 2 * postPairs, Grain.Keep, tiePlaces.ToImmutable(), frame.Place));
        foreach (Part rail in railParts) book.Add(rail);
        Dimension(book, frame, width, height, x, h, spaces);
        ImmutableArray<string> ends = [], backs = [];
        if (frame.Panels is { } panels) (ends, backs) = FramePanelRule.Write(book, frame, name, keys, panels, tieLength, spaces, tiePlaces.ToImmutable(), d);
        FrameJoints.Write(book, frame, name, keys, postPairs, railParts, [.. ends], [.. backs], (x, d, h, toeUp));

        foreach ((Opening bay, ExactLength bayX, PartSize rail) in spaces) FrameBay.Write(book, frame, keys, bay, bayX, rail);
    }

    private static void Dimension(Book book, Frame frame, QuantityKey width, QuantityKey height, ExactLength x, ExactLength h, List<(Opening Bay, ExactLength X, PartSize Rail)> spaces)
    {
        book.Show(new(width, true, Zero, x, 1));
        book.Show(new(height, false, Zero, h, 1));
        book.Show(new(QuantityKey.Of(frame.Key, "toe"), false, Zero, book.Value(QuantityKey.Of(frame.Key, "toe")), 0));
        foreach ((Opening _, ExactLength bayX, PartSize rail) in spaces)
            book.Show(new(rail.Made, true, bayX, bayX + book.Value(rail.Made), 0));
    }
}
