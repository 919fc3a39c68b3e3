using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Tops;

/// <summary>
/// Laminate on a top: rough sizes with what is trimmed off, the contact adhesive for both faces of every joint, edges before faces. The glue
/// line is left out of account.
/// </summary>
internal static class LaminateRule
{
    /// <summary>Writes what is bonded on.</summary>
    public static void Write(Book book, LaidTop laid, Laminate laminate)
    {
        (TopMakeUp made, string key) = (laid.Made, laid.Top.Key);
        TradeRule usual = TradeRules.Get("TL1");
        QuantityKey over = book.Define(key, "laminate.over", $"{made.Name}, laminate cut over at each edge", laminate.Oversize?.Stated ?? new Stated(usual.Length, new(OriginKind.Rule, "trimmed off each edge", usual.Cited)));
        QuantityKey OfFace(string what, PartSize core, params ReadOnlySpan<TopSide> sides)
        {
            int films = 0;
            foreach (TopSide side in sides) if (made.Laminated.Contains(side)) films++;
            return book.Define(key, $"laminate.{what}", $"{made.Name}, laminate of its face, {what} to cut it to", new Sum([Term.From("core, as cut", 1, core.Made),
                .. films > 0 ? [Term.From("laminate on its edges", films, made.Film)] : ImmutableArray<Term>.Empty, Term.From("over, both edges", 2, over)]));
        }
        QuantityKey length = OfFace("length", laid.Length, TopSide.Left, TopSide.Right), width = OfFace("width", laid.Width, TopSide.Front, TopSide.Back);
        QuantityKey core = book.Define(key, "laminate.core", $"{made.Name}, thickness of what the laminate lies on", new Sum([Term.From("over all", 1, made.Thickness), Term.From("laminate", -1, made.Film),
            .. made.Under is { } under ? [Term.From("on the underside", -1, under)] : ImmutableArray<Term>.Empty]));
        QuantityKey high = book.Define(key, "laminate.strip", $"{made.Name}, laminate of its edges, width to cut it to", new Sum(Term.From("core", 1, core), Term.From("over, both edges", 2, over)));
        string what = laminate.Of.Text;
        void Sheet(string of, string part, ExactLength l, ExactLength w, int count) =>
            book.Hardware.Add(new(key, $"Laminate {of}, for the {part}, {book.Say(l)} x {book.Say(w)}", count, "piece", $"{book.Say(book.Value(over))} over at each edge, to be trimmed: {usual.Cited}"));
        Sheet(what, "face", book.Value(length), book.Value(width), laminate.IsOnBothFaces ? 2 : 1);
        if (made.Under is { } backer && backer != made.Film) Sheet($"backer {book.Say(book.Value(backer))} thick", "underside", book.Value(length), book.Value(width), 1);
        foreach (TopSide side in made.Laminated.Order())
            Sheet(what, TopMakeUp.Word(side), book.Value(side is TopSide.Front or TopSide.Back ? laid.Length.Made : laid.Width.Made) + (book.Value(over) * 2), book.Value(high), 1);
        Adhesive(book, laid, book.Value(core));
        Balance(book, laid, laminate);
        Steps(book, laid, book.Value(over));
    }

    /// <summary>Both faces of every joint are coated: twice what is bonded.</summary>
    private static void Adhesive(Book book, LaidTop laid, ExactLength core)
    {
        (ExactLength l, ExactLength w) = (book.Value(laid.Length.Made), book.Value(laid.Width.Made));
        bool isInch = book.Piece.Unit == LengthUnit.Inch;
        Rational Area(ExactLength a, ExactLength b) => isInch ? a.Inches * b.Inches / 144 : a.Millimetres * b.Millimetres / 10_000;
        Rational bonded = Area(l, w) * (laid.Made.Under is null ? 1 : 2);
        foreach (TopSide side in laid.Made.Laminated) bonded += Area(side is TopSide.Front or TopSide.Back ? l : w, core);
        book.Hardware.Add(new(laid.Top.Key, "Contact adhesive, area to coat", (int)(bonded * 2).Round(Rounding.Up), isInch ? "square foot" : "square decimetre",
            "twice what is bonded, for both faces are coated: definition; how far a can goes stands on the can"));
    }

    private static void Balance(Book book, LaidTop laid, Laminate laminate)
    {
        if (laid.Made.Layers.Select(l => l.Panel).Where(p => WoodMoves.Solid(p) is not null).MaxBy(p => WoodMoves.Share(p, book.Piece.MoistureChange)) is { } solid)
        {
            ExactLength wide = book.Value(laid.Width.Made), by = wide * WoodMoves.Share(solid, book.Piece.MoistureChange);
            if (by > Usual.Length(book, "WD1"))
                book.Note("wood.cross-grain", Severity.Warn, laid.Top.Key, $"The {laid.Name} of {WoodMoves.Solid(solid)!.Name} moves {book.Say(by)} across its {book.Say(wide)} under laminate that does not: it cracks, or the top draws hollow.",
                    $"Use plywood, MDF or particleboard under laminate. (a joint takes about {book.Say(Usual.Length(book, "WD1"))}: {TradeRules.Get("WD1").Cited})", laminate.Place);
        }
        TradeRule rule = TradeRules.Get("TL3");
        if (laid.Made.Under is null)
            book.Note("laminate.unbalanced", Severity.Warn, laid.Top.Key, $"The {laid.Name} is laminated on one face only: it draws hollow as the air changes.",
                $"{book.Hand.Write("backer", book.Say(ExactLength.Max(rule.Length, book.Value(laid.Made.Film))))} or {book.Hand.Key("faces", "both")}, or let this stand where the top is held flat all over. ({rule.Cited})", laminate.Place);
        else if (laminate is { Backer: { } backer, IsOnBothFaces: false } && backer.Value < book.Value(laid.Made.Film))
            book.Note("laminate.thin-backer", Severity.Note, laid.Top.Key, $"The backer of {laid.Name} is {book.Say(backer.Value)} thick and its face {book.Say(book.Value(laid.Made.Film))}.",
                $"A backer about as thick as the face keeps flat better; paint and varnish do not balance laminate. ({TradeRules.Get("TL2").Cited})", backer.Place);
        if (laminate is { Backer: not null, IsOnBothFaces: true })
            book.Note("laminate.two-undersides", Severity.Warn, laid.Top.Key, $"The {laid.Name} is laminated on both faces and has a backer as well.", "Take one of them out; the backer is passed over.", laminate.Place);
    }

    private static void Steps(Book book, LaidTop laid, ExactLength over)
    {
        TradeRule radius = TradeRules.Get("TL2");
        QuantityKey corner = book.Define(laid.Top.Key, "laminate.corner", $"{laid.Name}, least radius of an inside corner in its laminate", new Stated(radius.Length, new(OriginKind.Rule, "prevents cracks", radius.Cited)));
        const string bond = "Coat both faces, wait until neither marks a finger (the can says how long), lay it on over sticks, draw them out and press with a roller from the middle outward: it cannot be shifted once it touches.";
        if (!laid.Made.Laminated.IsEmpty)
            book.Steps.Add(new(Stage.Top, $"Laminate the edges of the {laid.Name} first, so that the face covers their joint. {bond} Trim the {book.Say(over)} over flush with both faces of the core.", [], null, "cement") { On = laid.Top.Key });
        if (laid.Made.Under is not null) book.Steps.Add(new(Stage.Top, $"Laminate the underside of the {laid.Name}. {bond} Trim it flush.", [], null, "cement") { On = laid.Top.Key });
        book.Steps.Add(new(Stage.Top, $"Laminate the face of the {laid.Name} last. {(laid.Made.Under is null && laid.Made.Laminated.IsEmpty ? bond : "Bond it in the same way.")} Trim it flush and ease the edge with a file. Round the inside corners of any cut-out to {book.Say(book.Value(corner))} or more, and drill holes for screws larger than the screws.", [], null, "cement") { On = laid.Top.Key });
        book.Steps.Add(new(Stage.Top, $"Trim the laminate of the {laid.Name} with a bit that has a bearing, one light cut at a time.", [], null, "router") { On = laid.Top.Key });
        foreach (Well well in laid.Top.Wells) book.Machinings.Add(new(laid.Parts[0], $"round the inside corners of the opening of well {well.Key}: laminate cracks from a sharp one", [("radius", corner)]) { On = Face.Top, Caution = "router" });
    }
}
