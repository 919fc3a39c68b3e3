using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>Slides: how thick, and how long. What their leaflet says wins over the rules.</summary>
internal static class SlideRule
{
    private const string Leaflet = "the leaflet of the slides, as given";

    /// <summary>What slides are called.</summary>
    public static string NameOf(DrawerKind kind) => kind.Slides == SlideWay.Under ? "under-mounted slides" : "side-mounted slides";

    /// <summary>
    /// How thick a slide is with its two members together; one figure for a kind of drawer, to be read from the slides in hand. Of a slide under the
    /// box, from the opening to the inside of the box.
    /// </summary>
    public static QuantityKey Thickness(Book book, DrawerKind kind)
    {
        QuantityKey key = QuantityKey.Of(kind.Name, "slide.thickness");
        if (book.Knows(key)) return key;
        bool isUnder = kind.Slides == SlideWay.Under;
        TradeRule space = TradeRules.Get(isUnder ? "US1" : "SS1");
        return book.Define(kind.Name, "slide.thickness", isUnder ? $"slides of {kind.Name}, from the opening to the inside of the box, one side" : $"slides of {kind.Name}, thickness of one",
            kind.Sheet.Clearance?.Stated ?? new Stated(space.Length, new(OriginKind.Rule, isUnder ? "under-mounted" : "side-mounted, 1/2 in class", space.Cited)), scatter: Scatter.Bought);
    }

    /// <summary>The width that the box may take, before the play that is kept: all terms but that.</summary>
    public static ImmutableArray<Term> Room(Box box, QuantityKey opening) =>
    [
        Term.From("clear width along its slides", 1, opening),
        .. box.Kind.Slides == SlideWay.Runners ? ImmutableArray<Term>.Empty : [Term.From("slide, left and right", -2, Thickness(box.Book, box.Kind))],
        .. box.Kind.Slides == SlideWay.Under ? box.BothSides(1) : [],
    ];

    /// <summary>The play aimed for beside the slides of a kind of drawer, both sides together.</summary>
    public static QuantityKey PlayKept(Book book, DrawerKind kind, SlideRoom window)
    {
        QuantityKey key = QuantityKey.Of(kind.Name, "play-kept");
        return book.Knows(key) ? key : book.Define(kind.Name, "play-kept", $"play kept beside the {(kind.Slides == SlideWay.Runners ? "boxes" : "slides")} of {kind.Name}",
            kind.Play?.Stated ?? new Stated(window.Middle, new(OriginKind.Rule, window.MiddleWords, window.Source)));
    }

    /// <summary>The depth that the opening leaves: a front inside it takes its thickness.</summary>
    public static ImmutableArray<Term> Depth(Book book, Space space, DrawerKind kind) =>
        [Term.From("clear depth", 1, space.Depth), .. kind.Fronts == FrontWay.Inset ? [Term.From("front, inset", -1, Book.ThicknessOf(kind.Front.Text))] : ImmutableArray<Term>.Empty];

    /// <summary>The longest slide of the series that leaves the setback and the rear clearance.</summary>
    public static QuantityKey? Pick(Book book, Space space, DrawerKind kind, Drawer drawer)
    {
        bool isUnder = kind.Slides == SlideWay.Under, isInset = kind.Fronts == FrontWay.Inset;
        TradeRule setback = TradeRules.Get("SS7"), rear = TradeRules.Get(isUnder ? "US5" : "SS10"), rule = TradeRules.Get(book.Piece.Unit == Measures.Text.LengthUnit.Inch ? "SS5" : "SS5M");
        (ImmutableArray<ExactLength> series, string cited) = kind.Sheet.Series.IsEmpty ? (rule.Series, rule.Cited) : (kind.Sheet.Series, Leaflet);
        string key = drawer.Key, name = $"drawer {key}";
        Term Kept(string words, Given? given, TradeRule usual, string why) => given is { } g
            ? Term.From(words, -1, g.Value, Origin.Given(g.Place)) : Term.From(words, -1, usual.Length, new(OriginKind.Rule, why, usual.Cited));
        QuantityKey usable = book.Define(key, "slide.usable", $"{name}, depth usable for a slide", new Sum(
        [
            .. Depth(book, space, kind),
            Kept(isInset ? "setback from the front" : "setback from the face", kind.Sheet.Setback, setback, isInset ? "behind an inset front" : "overlay front"),
            Kept("clearance behind", kind.Sheet.Rear, rear, "at least"),
        ]));
        ExactLength depth = book.Value(usable);
        if ((kind.SlideLength ?? kind.Sheet.Length) is { } given)
        {
            if (given.Value > depth)
                book.NoteOnce("slide.too-long", Severity.Stop, key, $"The slide of {book.Say(given.Value)} does not fit: {book.Say(depth)} is usable.", "Give a shorter one, or leave it to be picked.", given.Place);
            return book.Define(key, "slide.length", $"{name}, slide length", given.Stated);
        }
        var fits = series.Where(s => s <= depth).ToList();
        QuantityKey picked = QuantityKey.Of(key, "slide.length");
        if (fits.Count == 0 && !book.IsRead(picked))
        {
            book.NoteOnce("slide.none-fits", Severity.Stop, key, $"No slide of the series fits {name}: {book.Say(depth)} is usable, the shortest is {book.Say(series.Min())}.",
                isInset ? "Make the piece deeper, or let the fronts lie over it: inset ones take their thickness." : "Make the piece deeper.", space.Place);
            return null;
        }
        ExactLength chosen = fits.Count > 0 ? fits.Max() : series.Min();
        var longer = series.Where(s => s > chosen).ToList();
        QuantityKey choice = book.Define(key, "slide.length", $"{name}, slide length",
            new Stated(chosen, new(OriginKind.Choice, $"longest of the series within {book.Say(depth)}", cited)));
        if (book.IsRead(choice)) return Frozen(book, kind, drawer, choice, chosen, depth, usable);
        book.Choices.Add(new(choice, $"{name}, slide", $"{NameOf(kind)}, {book.Say(chosen)}", chosen, $"the longest of the series within the usable depth of {book.Say(depth)}",
            usable, longer.Count > 0 ? longer.Min() : null, chosen));
        return choice;
    }

    /// <summary>What is bought, or what a part was cut to, is not picked again; when another would be, a finding says so.</summary>
    private static QuantityKey Frozen(Book book, DrawerKind kind, Drawer drawer, QuantityKey choice, ExactLength now, ExactLength depth, QuantityKey usable)
    {
        ExactLength had = book.Value(choice);
        string name = $"drawer {drawer.Key}";
        book.Choices.Add(new(choice, $"{name}, slide", $"{NameOf(kind)}, {book.Say(had)}", had, "bought, or its sides are cut: not picked again", usable, null, null));
        if (had > depth)
            book.Note("choice.no-longer-fits", Severity.Warn, drawer.Key, $"The slides of {name} are {book.Say(had)} long; {book.Say(depth)} is usable now.",
                $"Change them for {book.Say(now)} if the shop takes them back, or gain the depth behind: a thinner back, or one let in.", drawer.Place);
        else if (had != now)
            book.Note("choice.would-flip", Severity.Note, drawer.Key, $"The slides of {name} are {book.Say(had)} long; {book.Say(now)} would be picked now.", "They stay: nothing need be done.", drawer.Place);
        return choice;
    }
}
