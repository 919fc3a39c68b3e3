using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Openings;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Cases;

/// <summary>
/// How far top and bottom of a case span, as shelves do. A partition that meets them is where a span ends. A top laid on carries the one; floor, base, feet and
/// what the case stands on carry the other, and so do a kick board in front and a back that is screwed on behind it. One edge that is held, by a rail of a face
/// frame, a kick board, a back that is screwed on or a hanging rail, counts as a strip under a shelf does. Both are fixed at their ends, where a shelf lies loose: a beam that is fixed sags a fifth as far, so that it may span
/// half as far again for the same (fourth root of 5: beam tables). The span of a shelf itself is common practice, no source.
/// </summary>
internal static class CaseSpan
{
    private static readonly Rational s_fixed = Rational.Of(3, 2);

    /// <summary>Warns of each of the two that spans further than is usual.</summary>
    public static void Look(Book book, CaseShape shape, QuantityKey clearWidth)
    {
        Case described = shape.Described;
        if (book.HasUnknown) return;
        bool isBacked = shape.Back is { Hold: not BackHold.Grooved }, isFramed = shape.FrameThickness is not null;
        if (!IsUnderTop(book, described))
            Span(book, shape, "top", Widest(book, described.Content, clearWidth, isTop: true), isBacked || isFramed || described.HangingRail is not null, "Divide what is under it with a partition, lay a top on it");
        if (IsCarried(described, isBacked)) return;
        Span(book, shape, "bottom", Widest(book, described.Content, clearWidth, isTop: false), isBacked || isFramed || described.Toe is not null,
            described.IsHung ? "Divide the case with a partition, or hang two" : "Write 'back: {of: SHEET, fit: rabbeted}' for one that carries its rear edge, divide the case with a partition");
    }

    private static bool IsUnderTop(Book book, Case described) => book.Piece.Members.OfType<Top>().Any(t => t.On.IsDefaultOrEmpty
        ? !book.Piece.Members.OfType<Structure>().Any(s => s.Stand.On.Any(n => n.Text == described.Key))
        : t.On.Any(n => n.Text == described.Key));

    private static bool IsCarried(Case described, bool isBacked) => described.Base is not null || described.Feet is not null || (described.Toe is not null ? isBacked : !described.IsHung);

    /// <summary>The widest opening right under the top, or right above the bottom.</summary>
    private static ExactLength Widest(Book book, OpeningContent? content, QuantityKey width, bool isTop)
    {
        Opening[] openings = content is Division division ? [.. division.Items.OfType<Opening>().Where(o => book.Knows(QuantityKey.Of(o.Key, "width")))] : [];
        if (content is DoorFilling doors) return Widest(book, doors.Behind, width, isTop);
        if (openings.Length == 0) return book.Value(width);
        Opening[] beside = ((Division)content!).IsAcross ? openings : [isTop ? openings[0] : openings[^1]];
        return beside.Max(o => Widest(book, o.Content, QuantityKey.Of(o.Key, "width"), isTop));
    }

    private static void Span(Book book, CaseShape shape, string word, ExactLength span, bool hasStrip, string remedy)
    {
        (ExactLength loose, string cited) = ShelfStripRule.MostSpan(book, shape.Panel, hasStrip);
        ExactLength most = loose * s_fixed;
        if (span <= most) return;
        book.Note("case.long-span", Severity.Warn, shape.Key, $"The {word} of {shape.Name} spans {book.Say(span)} with nothing under it; about {book.SayAtMost(most)} is usual for what it is.",
            $"{remedy}, so that it spans {book.SayAtMost(most)} or less, or use a thicker sheet: what it carries decides, and is not worked out here. ({cited})", shape.Described.Width.Place);
    }
}
