using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>The side play that a pair of slides takes, both sides together.</summary>
/// <param name="Least">The least.</param>
/// <param name="Most">The most.</param>
/// <param name="Words">Both in words, with their source.</param>
/// <param name="MiddleWords">What the middle is the middle of.</param>
/// <param name="Source">Where the limits come from.</param>
internal sealed record SlideRoom(ExactLength Least, ExactLength Most, string Words, string MiddleWords, string Source)
{
    /// <summary>
    /// Which way the ends of a box are landed: down, so that the box goes in, where the window has room for a step below its middle; else to the nearest
    /// step, which is at most half a step off.
    /// </summary>
    public (Rounding Way, string Why) Landing(Grid grid) => Middle + grid.Step <= Most
        ? (Rounding.Down, "down: it must go inside")
        : (Rounding.Nearest, "to the nearest step: the play these slides take has no room for a whole one");

    /// <summary>True when no figure on the grid is sure to land inside.</summary>
    public bool IsFinerThan(Grid grid) => Landing(grid).Way == Rounding.Nearest && grid.Step > Most - Least;

    /// <summary>What to aim for.</summary>
    public ExactLength Middle => (Least + Most) / 2;

    public static SlideRoom Of(SlideWindow window)
    {
        if (window == SlideWindow.Narrow)
        {
            TradeRule narrow = TradeRules.Get("SS3N");
            return new(narrow.Series[0], narrow.Series[1], $"0.4 to 1.0 mm in all: {narrow.Cited}", "the middle of 0.4 to 1.0 mm, two sides", narrow.Cited);
        }
        TradeRule habit = TradeRules.Get("SS2");
        return new(ExactLength.Zero, habit.Length * 2, $"0 to 1/32 in a side: {habit.Cited}", "the middle of 0 to 1/32 in a side, two sides", habit.Cited);
    }
}

/// <summary>Slides: how thick, and how long.</summary>
internal static class SlideRule
{
    /// <summary>How thick a slide is with its two members together; one figure for a kind of drawer, to be read from the slides in hand.</summary>
    public static QuantityKey Thickness(Book book, DrawerKind kind)
    {
        QuantityKey key = QuantityKey.Of(kind.Name, "slide.thickness");
        TradeRule space = TradeRules.Get("SS1");
        return book.Knows(key) ? key : book.Define(kind.Name, "slide.thickness", $"slides of {kind.Name}, thickness of one",
            new Stated(space.Length, new(OriginKind.Rule, "side-mounted, 1/2 in class", space.Cited)), scatter: Scatter.Bought);
    }

    /// <summary>The play aimed for beside the slides of a kind of drawer, both sides together.</summary>
    public static QuantityKey PlayKept(Book book, DrawerKind kind, SlideRoom window)
    {
        QuantityKey key = QuantityKey.Of(kind.Name, "play-kept");
        return book.Knows(key) ? key : book.Define(kind.Name, "play-kept", $"play kept beside the slides of {kind.Name}",
            kind.Play?.Stated ?? new Stated(window.Middle, new(OriginKind.Rule, window.MiddleWords, window.Source)));
    }

    /// <summary>The longest slide of the series that leaves the setback and the rear clearance.</summary>
    public static QuantityKey? Pick(Book book, Space space, DrawerKind kind, Drawer drawer)
    {
        TradeRule setback = TradeRules.Get("SS7"), rear = TradeRules.Get("SS10"), series = TradeRules.Get(book.Piece.Unit == Measures.Text.LengthUnit.Inch ? "SS5" : "SS5M");
        string key = drawer.Key, name = $"drawer {key}";
        QuantityKey usable = book.Define(key, "slide.usable", $"{name}, depth usable for a slide",
            new Sum(Term.From("clear depth", 1, space.Depth),
                Term.From("setback from the face", -1, setback.Length, new(OriginKind.Rule, "overlay front", setback.Cited)),
                Term.From("clearance behind", -1, rear.Length, new(OriginKind.Rule, "at least", rear.Cited))));
        ExactLength depth = book.Value(usable);
        if (kind.SlideLength is { } given)
        {
            if (given.Value > depth)
                book.NoteOnce("slide.too-long", Severity.Stop, key, $"The slide of {book.Say(given.Value)} does not fit: {book.Say(depth)} is usable.", "Give a shorter one, or leave it to be picked.", given.Place);
            return book.Define(key, "slide.length", $"{name}, slide length", given.Stated);
        }
        var fits = series.Series.Where(s => s <= depth).ToList();
        QuantityKey picked = QuantityKey.Of(key, "slide.length");
        if (fits.Count == 0 && !book.IsRead(picked))
        {
            book.NoteOnce("slide.none-fits", Severity.Stop, key, $"No slide of the series fits {name}: {book.Say(depth)} is usable, the shortest is {book.Say(series.Series.Min())}.",
                "Make the piece deeper.", space.Place);
            return null;
        }
        ExactLength chosen = fits.Count > 0 ? fits.Max() : series.Series.Min();
        var longer = series.Series.Where(s => s > chosen).ToList();
        QuantityKey choice = book.Define(key, "slide.length", $"{name}, slide length",
            new Stated(chosen, new(OriginKind.Choice, $"longest of the series within {book.Say(depth)}", series.Cited)));
        if (book.IsRead(choice)) return Frozen(book, drawer, choice, chosen, depth, usable);
        book.Choices.Add(new(choice, $"{name}, slide", $"side-mounted slides, {book.Say(chosen)}", chosen, $"the longest of the series within the usable depth of {book.Say(depth)}",
            usable, longer.Count > 0 ? longer.Min() : null, chosen));
        return choice;
    }

    /// <summary>What is bought, or what a part was cut to, is not picked again; when another would be, a finding says so.</summary>
    private static QuantityKey Frozen(Book book, Drawer drawer, QuantityKey choice, ExactLength now, ExactLength depth, QuantityKey usable)
    {
        ExactLength had = book.Value(choice);
        string name = $"drawer {drawer.Key}";
        book.Choices.Add(new(choice, $"{name}, slide", $"side-mounted slides, {book.Say(had)}", had, "bought, or its sides are cut: not picked again", usable, null, null));
        if (had > depth)
            book.Note("choice.no-longer-fits", Severity.Warn, drawer.Key, $"The slides of {name} are {book.Say(had)} long; {book.Say(depth)} is usable now.",
                $"Change them for {book.Say(now)} if the shop takes them back, or gain the depth behind: a thinner back, or one let in.", drawer.Place);
        else if (had != now)
            book.Note("choice.would-flip", Severity.Note, drawer.Key, $"The slides of {name} are {book.Say(had)} long; {book.Say(now)} would be picked now.", "They stay: nothing need be done.", drawer.Place);
        return choice;
    }
}
