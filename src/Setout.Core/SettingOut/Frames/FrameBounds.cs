using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Frames;

/// <summary>Whether the sticks of a frame leave anything between them: from front to back, between rails, and in each bay beside its slide panels.</summary>
internal static class FrameBounds
{
    /// <summary>True where there is a depth and a height between its sticks; else findings say what leaves none.</summary>
    public static bool HasInside(Book book, Frame frame, string name, FrameKeys keys)
    {
        if (book.HasUnknown) return true;
        ExactLength step = book.Grid.Step.ToExact(), deep = book.Value(keys.Tie.Made), high = book.Value(keys.Post.AsCut) - book.Value(keys.Toe) - book.Value(new Sum([Term.From("top rail", 1, keys.TopRail), .. keys.Bottom(1), .. keys.Over(1)]));
        // Ties stand on edge, whichever way the top rails lie; they may touch where no panel stands between them.
        ExactLength ends = high + book.Value(keys.TopRail) - book.Value(keys.RailWide) - (frame.Panels is { AtEnds: true } ? step : ExactLength.Zero);
        bool isDeep = deep >= step, isHigh = high >= step && ends.Sign >= 0;
        if (!isDeep)
        {
            ExactLength wants = step - deep;
            book.Note("frame.no-depth", Severity.Stop, frame.Key, $"{name} is {book.Say(book.Value(keys.Depth))} deep: its posts{(keys.Run is RailRun.Outside or RailRun.Inside ? " and rails" : "")} leave {book.Say(deep)} between front and back.",
                $"Make it {book.SayAtLeast(wants)} deeper.", frame.Depth.Place);
        }
        if (!isHigh)
        {
            ExactLength left = ExactLength.Min(high, ends), wants = ExactLength.Max(step - high, -ends), toe = book.Value(keys.Toe), above = book.ValueOr0(keys.Above);
            (Given? given, string word, ExactLength size) = above > toe ? (frame.Above, "above", above) : (frame.Toe, "toe", toe);
            string less = size > wants ? $" or {book.Hand.Key(word)} so much less" : "";
            book.Note("frame.no-height", Severity.Stop, frame.Key, $"{name}, {book.Say(book.Value(keys.Post.AsCut))} high, has {book.Say(left)} left between its rails.",
                $"Make it {book.SayAtLeast(wants)} higher{less}.", given is { Place.IsKnown: true } said && size > book.Value(keys.RailWide) ? said.Place : frame.Height.Place);
        }
        return isDeep && isHigh;
    }

    /// <summary>Warns of bays narrower than their rails are thick: what stands there is a block, not a rail.</summary>
    public static void Narrow(Book book, IEnumerable<(Opening Bay, ExactLength X, PartSize Rail)> spaces, ExactLength least)
    {
        foreach ((Opening bay, ExactLength _, PartSize rail) in spaces)
            if (book.Value(rail.Made) < least && !book.HasUnknown)
                book.Note("frame.bay-narrow", Severity.Warn, bay.Key, $"Bay {bay.Key} is {book.Say(book.Value(rail.Made))} wide, less than its rails of {book.Say(least)} are thick.", $"Make it {book.SayAtLeast(least - book.Value(rail.Made))} wider, or leave it out. (common practice, no source)", bay.Size.Place.IsKnown ? bay.Size.Place : bay.Place);
    }

    /// <summary>True where slide panels leave a bay between them, and go in; else a finding.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="bay">The bay.</param>
    /// <param name="clear">Its width between posts.</param>
    /// <param name="high">Its height between rails.</param>
    /// <param name="panel">The thickness of a slide panel.</param>
    /// <param name="slipIn">How much lower slide panels are.</param>
    public static bool TakesPanels(Book book, Opening bay, ExactLength clear, ExactLength high, ExactLength panel, ExactLength slipIn)
    {
        ExactLength step = book.Grid.Step.ToExact(), wide = clear - (panel * 2);
        if (book.HasUnknown || (wide >= step && high - slipIn >= step)) return true;
        if (wide < step)
            book.Note("frame.bay-no-width", Severity.Stop, bay.Key, $"Bay {bay.Key} is {book.Say(clear)} wide: two slide panels of {book.Say(panel)} leave {book.Say(wide)}.", $"Make it {book.SayAtLeast(step - wide)} wider, or leave its slide panels out.", bay.Size.Place.IsKnown ? bay.Size.Place : bay.Place);
        else
            book.Note("frame.bay-no-height", Severity.Stop, bay.Key, $"Bay {bay.Key} is {book.Say(high)} high: slide panels are {book.Say(slipIn)} lower, to slip in.", $"Make the frame {book.SayAtLeast(step + slipIn - high)} higher, or leave its slide panels out.", bay.Place);
        return false;
    }

    /// <summary>True where a setback leaves a depth; else a finding.</summary>
    public static bool HasDepth(Book book, Opening bay, QuantityKey depth)
    {
        ExactLength deep = book.Value(depth), step = book.Grid.Step.ToExact();
        if (book.HasUnknown || deep >= step) return true;
        ExactLength wants = step - deep;
        book.Note("frame.bay-no-depth", Severity.Stop, bay.Key, $"Nothing is left of the depth of bay {bay.Key}: {book.Say(deep)}.",
            bay.Setback is { } back && back.Value > wants / 2 ? $"Make its setback {book.SayAtLeast(wants / 2)} less." : $"Make the frame {book.SayAtLeast(wants)} deeper.", bay.Setback?.Place ?? bay.Place);
        return false;
    }
}
