using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Frames;

/// <summary>What a bay of a frame gives to all that stands in it: the rails below and above, what further rails go by, bearers between its posts.</summary>
/// <param name="Railing">What rails go by that divide it.</param>
/// <param name="Below">Its bottom rails; null where slide panels carry what is in it.</param>
/// <param name="Above">Its top rails.</param>
/// <param name="Bearers">The sticks between front and rear post; null for none.</param>
internal sealed record FrameSpaces(Railing Railing, RailPair? Below, RailPair? Above, BearerSetting? Bearers)
{
    /// <summary>Works out what a bay gives.</summary>
    public static FrameSpaces Of(Book book, Frame frame, FrameKeys keys, Opening bay)
    {
        bool hasPanels = bay.SlidePanels is not null, isFlat = frame.TopRail == Laid.Flat;
        bool isOutside = keys.Run == RailRun.Outside, isInside = keys.Run == RailRun.Inside;
        ImmutableArray<Term> deep = keys.BuiltDepth;
        Term[] Posts(bool there, int times) => there ? [Term.From("posts outside the rails", times, keys.PostThin)] : [];
        Term[] Rails(bool there, int times) => there ? [Term.From("rails on the faces of the posts", times, keys.RailThin)] : [];
        ExactLength faces = isInside ? book.Value(keys.PostThin) : Zero, posts = isOutside ? book.Value(keys.RailThin) : Zero;
        RailPair Pair(string name, QuantityKey high, Laid laid, QuantityKey through) => new(keys.RailOf(frame.Key, bay.Key), name, high, laid,
            [.. deep, .. Posts(isInside, -2), Term.From(laid == Laid.Flat ? "rails, laid flat" : "rails, on edge", -2, through)], faces, faces + book.Value(through));
        Idle(book, bay, hasPanels);
        return new(
            new(frame.Key, frame.Rails ?? frame.Of, frame.Corner, keys.Tenon, $"{frame.Key}.post", keys.PostWide, keys.PostThin, keys.BackTakes,
                [.. deep, .. Rails(isOutside, -2), .. keys.BackTakes is { } takes ? [Term.From("back panel, and the wood behind it", -1, takes)] : ImmutableArray<Term>.Empty], posts,
                (book.Value(QuantityKey.Of(frame.Key, "outside")), book.Value(new Sum(deep))), !hasPanels),
            hasPanels || !keys.HasBottom ? null : Pair($"the bottom rails of bay {bay.Key}", keys.RailWide, Laid.OnEdge, keys.RailThin),
            Pair($"the top rails of bay {bay.Key}", keys.TopRail, frame.TopRail, isFlat ? keys.RailWide : keys.RailThin),
            !hasPanels && bay.Bearers is { } named && book.StickOf(named, bay.Key) is { } stick ? new(stick, keys.BetweenPosts, $"{frame.Key}.post", posts + book.Value(keys.PostThin)) : null);
    }

    /// <summary>A space with all of it.</summary>
    public Space Into(Space space) => space with { Railing = Railing, Below = Below, Above = Above, Bearers = Bearers };

    private static void Idle(Book book, Opening bay, bool hasPanels)
    {
        if (!hasPanels) return;
        foreach ((string word, Place? place) in new[] { ("bearers", bay.Bearers?.Place), ("setback", bay.Setback?.Place) })
            if (place is { } there) book.Note("frame.bay-idle", Severity.Stop, bay.Key, $"'{word}' has nothing to say in bay {bay.Key}: its slide panels reach from post to post.", $"Leave {book.Hand.Key(word)} or {book.Hand.Key("slide panels")} out.", there);
    }
}
