using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Frames;

/// <summary>Where the sticks of a frame stand.</summary>
/// <param name="Posts">In pairs, front and back, from the left.</param>
/// <param name="Ties">In pairs, bottom and top, from the left; top only where there are no bottom rails.</param>
/// <param name="Rails">Their parts: one for each bay, or one where they run through.</param>
/// <param name="BayX">From the left of the frame to each bay.</param>
/// <param name="Wide">Over the end posts as set out.</param>
/// <param name="Deep">Front to back as built.</param>
internal sealed record FrameSticks(ImmutableArray<Placement> Posts, ImmutableArray<Placement> Ties, List<Part> Rails, ImmutableArray<ExactLength> BayX, ExactLength Wide, ExactLength Deep)
{
    /// <summary>Places them all.</summary>
    public static FrameSticks Place(Book book, Frame frame, string name, FrameKeys keys, ImmutableArray<Opening> bays, ImmutableArray<PartSize> rails, PartSize? through, Stick slim)
    {
        ExactLength p = book.Value(keys.PostWide), pt = book.Value(keys.PostThin), r = book.Value(keys.RailWide), rt = book.Value(keys.RailThin), h = book.Value(keys.Post.AsCut), tie = book.Value(keys.Tie.Made);
        ExactLength into = book.ValueOr0(keys.Tenon), up = book.ValueOr0(keys.Above);
        // As built: the ties decide how deep the frame comes out.
        ExactLength d = book.Value(new Sum(keys.BuiltDepth)), toeUp = book.Value(keys.Toe), topHigh = book.Value(keys.TopRail), topDeep = frame.TopRail == Laid.Flat ? r : rt;
        // Of rails on the faces of the posts one or the other stands further in.
        ExactLength post = frame.Run == RailRun.Outside ? rt : Zero, face = frame.Run == RailRun.Inside ? pt : Zero, tieY = pt + (frame.Run is RailRun.Outside or RailRun.Inside ? rt : Zero) - into;
        var posts = ImmutableArray.CreateBuilder<Placement>();
        var ties = ImmutableArray.CreateBuilder<Placement>();
        var bayX = ImmutableArray.CreateBuilder<ExactLength>();
        var parts = new List<Part>();
        ImmutableArray<Placement> Rails(ExactLength from, ExactLength length) =>
        [
            .. keys.HasBottom ? [new Placement(from, face, toeUp, length, rt, r), new Placement(from, d - rt - face, toeUp, length, rt, r)] : ImmutableArray<Placement>.Empty,
            new(from, face, h - up - topHigh, length, topDeep, topHigh), new(from, d - topDeep - face, h - up - topHigh, length, topDeep, topHigh),
        ];
        void Add(string key, string mark, string words, PartSize size, ImmutableArray<Placement> places, Workings.Place place) =>
            parts.Add(new(key, mark, words, PartRole.Rail, slim.Name, size, Book.Uncut(keys.RailWide), keys.RailThin, places.Length, Grain.Keep, places, place));
        ExactLength x = Zero;
        for (int i = 0; i <= bays.Length; i++)
        {
            posts.Add(new(x, post, Zero, p, pt, h));
            posts.Add(new(x, d - pt - post, Zero, p, pt, h));
            // End ties stand flush with the outside, inner ones in the middle of their posts.
            ExactLength tieX = i == 0 ? x : i == bays.Length ? x + p - rt : x + ((p - rt) / 2);
            if (keys.HasBottom) ties.Add(new(tieX, tieY, toeUp, rt, tie + (into * 2), r));
            ties.Add(new(tieX, tieY, h - up - r, rt, tie + (into * 2), r));
            x += p;
            if (i == bays.Length) break;
            ExactLength clear = book.Value(rails[i].Made);
            if (through is null) Add($"{bays[i].Key}.rail", $"{bays[i].Key}r", $"bay {bays[i].Key} rail", rails[i], Rails(x - into, clear + (into * 2)), bays[i].Place);
            bayX.Add(x);
            x += clear;
        }
        if (through is not null) Add($"{frame.Key}.rail", $"{frame.Key}r", $"{name} rail", through, Rails(Zero, book.Value(through.AsCut)), frame.Place);
        return new(posts.ToImmutable(), ties.ToImmutable(), parts, bayX.ToImmutable(), x, d);
    }
}
