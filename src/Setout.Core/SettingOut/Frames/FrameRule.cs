using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Frames;

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
        // One section for all posts: bays, ties and panels go by it.
        foreach (Divider other in frame.Bays.Items.OfType<Divider>().Where(d => d.Of is { } of && of.Text != frame.Of.Text))
            book.Note("frame.posts-differ", Severity.Stop, other.Key, $"Posts {other.Key} are of {other.Of!.Value.Text}, those of the {name} of {frame.Of.Text}: all posts of a frame are of one material.", $"Leave {book.Hand.Key("of")} out, or build two frames side by side.", other.Of!.Value.Place);
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
        var betweenPosts = new Sum([Term.From("outside depth", 1, depth), Term.From("posts, front and back", -2, thin), .. FrameKeys.OnFaces(frame.Run, -2, railThin)]);
        PartSize tieLength = tenon is { } t ? book.LetIn(betweenPosts, key, "tie.length", $"{name} tie, length", PartRole.Tie, t, "tenons")
            : book.DefineSize(key, "tie.length", $"{name} tie, length", betweenPosts, PartRole.Tie);
        var keys = new FrameKeys(postLength, thin, wide, railThin, railWide, frame.TopRail == Laid.Flat ? railThin : railWide, toe, depth, above, tenon, tieLength)
        { BackTakes = FramePanelRule.BackTakes(book, frame, name, railThin), HasBottom = frame.HasBottomRails, Run = frame.Run };
        if (!FrameRunRule.IsPossible(book, frame) || !FrameBounds.HasInside(book, frame, name, keys)) return;

        ImmutableArray<Term> posts = [Term.From("posts, wide face to the front", postPairs, wide)];
        bool isThrough = frame.Run != RailRun.Between;
        // Rails that run through are cut to the whole width, and the bays are set out on them. Tenoned ones are longer than the bay: the bays are shared out, and the rails follow.
        PartSize? through = isThrough ? FrameRunRule.Length(book, frame, name, width) : null;
        string what = isThrough || tenon is not null ? "clear" : "rail.length", words = isThrough || tenon is not null ? "between posts" : "rail length";
        ImmutableArray<Sharer> sharers = [.. bays.Select(b => new Sharer(b.Key, what, $"bay {b.Key}, {words}", b.Size, FrameBay.ReadAs(book, b)))];
        if (Sharing.Share(book, $"{name}, bays and posts in the width", through?.AsCut ?? width, posts, sharers, restIsCut: !isThrough, isThrough ? null : QuantityKey.Of(key, "outside")) is not { } shared) return;
        ImmutableArray<PartSize> rails = !isThrough && tenon is { } let
            ? [.. shared.Select((s, i) => book.LetIn(new Sum(Term.From("between posts, as set out", 1, s.ToCut)), bays[i].Key, "rail.length", $"bay {bays[i].Key}, rail length", PartRole.Rail, let, "tenons"))]
            : shared;
        book.Define(key, "outside", $"{name}, outside width as built", through is { } whole ? new Sum(Term.From("rail, as cut", 1, whole.AsCut))
            : new Sum([.. posts, .. bays.Select((b, i) => Term.From($"bay {b.Key}, {keys.Between}", 1, rails[i].Made))]));

        FrameSticks sticks = FrameSticks.Place(book, frame, name, keys, bays, rails, through, slim);
        (ExactLength x, ExactLength d, ExactLength h) = (sticks.Wide, sticks.Deep, book.Value(postLength.AsCut));
        book.Add(new($"{key}.post", $"{key}p", $"{name} post", PartRole.Post, stick.Name, postLength, Book.Uncut(wide), thin, 2 * postPairs, Grain.Keep, sticks.Posts, frame.Place));
        book.Add(new($"{key}.tie", $"{key}t", $"{name} tie, front to back", PartRole.Tie, slim.Name, tieLength, Book.Uncut(railWide), railThin, sticks.Ties.Length, Grain.Keep, sticks.Ties, frame.Place));
        foreach (Part rail in sticks.Rails) book.Add(rail);
        List<(Opening Bay, ExactLength X, PartSize Rail)> spaces = [.. bays.Select((b, i) => (b, sticks.BayX[i], rails[i]))];
        Dimension(book, frame, width, height, x, h, spaces);
        book.Show(new(depth, false, Zero, d, 1) { IsDeep = true });
        ImmutableArray<string> ends = [], backs = [];
        if (frame.Panels is { } panels) (ends, backs) = FramePanelRule.Write(book, frame, name, keys, panels, tieLength, spaces, sticks.Ties, d);
        FrameJoints.Write(book, frame, keys, postPairs, sticks.Rails);
        FrameStretchers stretchers = StretcherRule.Write(book, frame, name, keys, spaces, slim, (x, d));

        FrameBounds.Narrow(book, spaces, book.Value(railThin));
        foreach ((Opening bay, ExactLength bayX, PartSize rail) in spaces) FrameBay.Write(book, frame, keys, bay, bayX, rail);
        FrameJoints.Steps(book, frame, name, keys, sticks.Rails, stretchers, [.. ends], [.. backs], (x, d, h, book.Value(toe)));
        StretcherRule.Braces(book, frame, keys, slim, (x, d));
    }

    private static void Dimension(Book book, Frame frame, QuantityKey width, QuantityKey height, ExactLength x, ExactLength h, List<(Opening Bay, ExactLength X, PartSize Rail)> spaces)
    {
        book.Show(new(width, true, Zero, x, 1));
        book.Show(new(height, false, Zero, h, 1));
        book.Show(new(QuantityKey.Of(frame.Key, "toe"), false, Zero, book.Value(QuantityKey.Of(frame.Key, "toe")), 0) { In = Views.Front | Views.Right });
        foreach ((Opening _, ExactLength bayX, PartSize rail) in spaces)
            book.Show(new(rail.Made, true, bayX, bayX + book.Value(rail.Made), 0) { In = Views.Front | Views.Above });
    }
}
