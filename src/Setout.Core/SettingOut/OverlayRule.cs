using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>How far fronts and doors lie over what bounds their opening.</summary>
internal static class OverlayRule
{
    /// <summary>How far a front or door lies over one side of its opening: as given, or by the rule of what is there.</summary>
    public static QuantityKey Of(Book book, Space space, Given? wanted, Edge edge, QuantityKey gap, string side, FrontWay way = FrontWay.Overlay)
    {
        string name = $"{space.Name}, fronts over the {side}";
        string what = $"overlay-{side}";
        TradeRule reveal = TradeRules.Get("RV3"), onFrame = TradeRules.Get("OV1");
        if (wanted is null && (way == FrontWay.HalfOverlay || (way == FrontWay.Overlay && edge.Kind == EdgeKind.Shared)) && book.Value(gap) > book.Value(edge.Member) && !book.HasUnknown)
            book.NoteOnce("front.wide-gap", Severity.Warn, space.Owner, $"Fronts with {book.Say(book.Value(gap))} between them do not reach the edge of {book.Say(book.Value(edge.Member))} that they share: what is behind them shows.", $"Make the gap {book.SayAtMost(book.Value(edge.Member))} or less.", space.Place);
        if (wanted is { } past && edge.Kind == EdgeKind.Shared && past.Value > book.Value(edge.Member))
            book.NoteOnce("front.covers-opening", Severity.Stop, space.Owner, $"Fronts that lie {book.Say(past.Value)} over an edge of {book.Say(book.Value(edge.Member))} cover what is beyond it.", $"Make the overlay {book.SayAtMost((book.Value(edge.Member) - book.Value(gap)) / 2)} or less, or leave it out to have it worked out.", past.Place);
        else if (wanted is { } over && over.Value > book.Value(edge.Member))
            book.NoteOnce("front.overhang", Severity.Warn, space.Owner, $"Fronts that lie {book.Say(over.Value)} over an edge of {book.Say(book.Value(edge.Member))} stand out past it.", "Make the overlay smaller, or leave it out to have it worked out.", over.Place);
        if (wanted is { } given) return book.Define(space.Prefix, what, name, WithPanel(edge, Term.From("overlay", 1, given.Value, Origin.Given(given.Place))));
        if (way == FrontWay.Inset && edge.IsCovered) return book.Define(space.Prefix, what, name, new Sum(Term.From("rail, covered whole", 1, edge.Member)));
        if (way == FrontWay.Inset) return book.Define(space.Prefix, what, name, new Sum(Term.From("gap, inside the opening", -1, gap)));
        if (edge.IsOpen) return book.Define(space.Prefix, what, name, new Stated(ExactLength.Zero, new(OriginKind.Rule, "no rail to lie over", "common practice, no source")));
        if (way == FrontWay.HalfOverlay)
            return book.Define(space.Prefix, what, name, new Sum([.. edge.Beside is { } beside ? [Term.From("edge of the slide panel", 2, beside) with { Part = edge.Part }] : ImmutableArray<Term>.Empty,
                edge.Beside is null ? Term.From("edge, half of it", 1, edge.Member) with { Part = edge.Part } : Term.From("post, half of it", 1, edge.Member), Term.From("gap", -1, gap)], Rational.Of(1, 2)));
        return edge.Kind switch
        {
            EdgeKind.CaseOutside => book.Define(space.Prefix, what, name, new Sum(Term.From("edge of the case", 1, edge.Member) with { Part = edge.Part },
                Term.From("reveal kept", -1, reveal.Length, new(OriginKind.Rule, "full overlay", reveal.Cited)))),
            EdgeKind.Shared => book.Define(space.Prefix, what, name, new Sum([Term.From("shared edge", 1, edge.Member) with { Part = edge.Part }, Term.From("gap", -1, gap)], Rational.Of(1, 2))),
            _ => book.Define(space.Prefix, what, name, WithPanel(edge, Term.From("over post or rail", 1, onFrame.Length, new(OriginKind.Rule, "overlay on a frame", onFrame.Cited)))),
        };
    }

    private static Sum WithPanel(Edge edge, Term over) =>
        edge.Beside is { } panel ? new(Term.From("edge of the slide panel", 1, panel) with { Part = edge.Part }, over) : new(over);
}
