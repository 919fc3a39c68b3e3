using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>What stock a material can come from: the shop's, then the piece file's own, then usual sizes without a price, then wider boards to rip.</summary>
internal static class StockOffers
{
    // Common practice, no source: lengths a yard keeps of construction lumber.
    private static readonly Length[] s_yardLengths = [Length.FromInches(96), Length.FromInches(120), Length.FromInches(144)];

    private const int MostClear = 32;

    private sealed record Offer(StockSize Size, int? RackPlace = null, StickSection? Board = null, string Nominal = "", BoardRip? Rip = null, ShopStock? Rack = null);

    /// <summary>The sizes on offer, in hand first; empty when nothing is known.</summary>
    /// <param name="material">Which wood.</param>
    /// <param name="shop">The shop.</param>
    /// <param name="set">The piece, whose sections count as read.</param>
    public static ImmutableArray<StockLine> For(Material material, Texts.Shop shop, SetPiece set)
    {
        string identity = MaterialIdentity.Of(material);
        List<Offer> offers = [.. shop.Stock.Select((s, i) => (Stock: s, Place: i)).Where(s => s.Stock.Identity == identity).Select(s => new Offer(s.Stock.Size, s.Place, Rack: s.Stock))];
        offers.AddRange(material.Sizes.Where(s => s.Width is null).Select(s => new Offer(s)));
        // Boards to rip are something to cut from beside these, not what a yard sells of this section.
        if (!offers.Any(o => o.Size.InHand is null)) offers.AddRange(Usual(material).Select(s => new Offer(s)));
        if (material is Stick stick) offers.AddRange(ToRip(stick, shop, set));
        // What was taken, or is kept for another piece, is not there.
        offers = [.. offers.Where(o => o.Size.InHand is not 0).OrderBy(o => o.Size.InHand is null ? 1 : 0)];
        ImmutableArray<string> ids = StockIds.Of(offers.Select(o => (o.Size, o.Board)));
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        return [.. offers.Select((o, i) => new StockLine(ids[i], o.Size, Words(o, format)) { RackPlace = o.RackPlace, Rip = o.Rip, Section = o.Board, Reads = o.Rack?.Reads, IsBlank = o.Rack?.IsBlank == true, IsKept = o.Rack?.IsKept == true })];
    }

    /// <summary>True when something is left of a size once its edges or ends are trued, its flaws are cut out and a slack is left free.</summary>
    public static bool Survives(StockLine line, Length habit, Length slack) => Fault(line, habit, slack) is null;

    /// <summary>Says why nothing can be cut from a line that does not survive, as what stops a plan that has nothing else to cut from.</summary>
    public static Finding Refusal(StockLine line, Material material, Length habit, Length slack, LengthFormat format)
    {
        string free = slack.Sign > 0 ? $" and a slack of {format.Text(slack)} is left free" : "", code = Fault(line, habit, slack)!;
        string trimmed = line.Size.Sides is null ? $"{format.Text(line.Size.Trim ?? habit)} is trued off each side" : "its sides are trued as it says";
        (string words, string remedy) = code switch
        {
            "stock.nothing-clear" => ($"Nothing is left of {line.Words} of {material.Name} beside its flaws once {trimmed}.", "Measure the flaws again, make the trim smaller, or take the board out."),
            "stock.too-narrow" => ($"{line.Words} of {material.Name} is {format.Text(line.Rip!.Width)} wide and gives no lane of {format.Text(line.Rip.LaneWidth)}.", "Give the width between the true edges, or take the board out."),
            "stock.too-many-lanes" => ($"{line.Words} of {material.Name} gives more than {BoardInstance.MostStretches} lanes and clear stretches.", "Do not offer it for ripping, or tell flaws that lie close together as one."),
            _ => ($"Nothing is left of {line.Words} of {material.Name} once {trimmed}{free}.", "Make the trim smaller, or take the size out."),
        };
        return new(code, Severity.Stop, material.Name, words, remedy, material.Place);
    }

    private static string? Fault(StockLine line, Length habit, Length slack)
    {
        EdgeTrim trim = TrimOf(line.Size, habit);
        if (line.Size.Along <= trim.AlongStart + trim.AlongEnd + slack || (line.Size.Across is { } across && across <= trim.AcrossStart + trim.AcrossEnd + slack)) return "stock.trim-too-large";
        BoardStock board = Board(line, habit, Money.Zero);
        int stretches = board.ClearStretches().Length;
        return stretches == 0 ? "stock.nothing-clear" : board.Lanes == 0 ? "stock.too-narrow" : (long)board.Lanes * stretches > BoardInstance.MostStretches ? "stock.too-many-lanes" : null;
    }

    /// <summary>The lengths that one board gives between trims and flaws, longest first, each as often as it has lanes; no more of them than anybody cuts anew at one time.</summary>
    public static Length[] Clear(StockLine line, Length habit)
    {
        BoardStock board = Board(line, habit, Money.Zero);
        return [.. board.ClearStretches().Select(c => c.Extent).OrderDescending().SelectMany(c => Enumerable.Repeat(c, board.Lanes)).Take(MostClear)];
    }

    /// <summary>True when every size that has to be bought has a price.</summary>
    public static bool ArePriced(ImmutableArray<StockLine> lines) => lines.All(l => l.Size.InHand is not null || l.Size.Price is not null);

    /// <summary>As stock of sheets. Without prices, square feet stand in for money.</summary>
    public static ImmutableArray<SheetStock> Sheets(ImmutableArray<StockLine> lines, bool isPriced, Length trim) =>
    [
        .. lines.Select(l => new SheetStock(l.Id, l.Size.Along, l.Size.Across!.Value, TrimOf(l.Size, trim),
            l.Size.InHand is not null ? Money.Zero : isPriced ? l.Size.Price!.Value
                : new Money(Math.Round((decimal)(l.Size.Along * l.Size.Across.Value).ApproximateSquareFeet, 4)), l.Size.InHand)),
    ];

    /// <summary>As stock of boards. Without prices, feet of the section stand in for money; a board to rip counts as many times as it is wider.</summary>
    public static ImmutableArray<BoardStock> Boards(ImmutableArray<StockLine> lines, bool isPriced, Length trim) =>
    [
        .. lines.Select(l => Board(l, trim, l.Size.InHand is not null ? Money.Zero : isPriced ? l.Size.Price!.Value
            : new Money(Math.Round(l.Size.Along.ToMillimetres() / 304.8m * (l.Rip is { } rip ? rip.Width.ToMillimetres() / rip.LaneWidth.ToMillimetres() : 1), 4)))),
    ];

    /// <summary>What goes off each side of a size, with the shop's habit where it says nothing of its own.</summary>
    internal static EdgeTrim TrimOf(StockSize size, Length habit)
    {
        (Length nearEdge, Length farEdge, Length nearEnd, Length farEnd) = size.Trims(habit);
        return new(nearEnd, farEnd, nearEdge, farEdge);
    }

    private static BoardStock Board(StockLine line, Length trim, Money cost) =>
        new(line.Id, line.Size.Along, new(TrimOf(line.Size, trim).AlongStart, TrimOf(line.Size, trim).AlongEnd), cost, line.Size.InHand)
        {
            Defects = [.. line.Size.Flaws.Select(f => new BoardStretch(f.From, f.To))],
            Rip = line.Rip,
        };

    private static IEnumerable<StockSize> Usual(Material material) => material switch
    {
        // The usual size; what is longer must be asked for.
        Panel panel => PanelTable.SizesOf(panel.Kind).Where(s => s.Along <= Length.FromMillimetres(2600) && s.Across <= Length.FromMillimetres(2600)).Select(s => new StockSize(s.Along, s.Across, null, null, "", null)),
        Stick { Nominal.Length: > 0 } => s_yardLengths.Select(l => new StockSize(l, null, null, null, "", null)),
        _ => [],
    };

    private static IEnumerable<Offer> ToRip(Stick stick, Texts.Shop shop, SetPiece set)
    {
        foreach ((int place, ShopStock stock, StickSection section, string sawn) in Ripping.Boards(stick, shop))
        {
            Length width = Length.FromTicks((long)section.Width.Ticks.Floor());
            BoardRip rip = Ripping.Of(width, stick, sawn, set, shop.RipKerf);
            // A stick that reads larger than its name may leave no lane in a board that nobody offered for it alone.
            if (rip.Lanes > 0) yield return new(stock.Size with { Width = width }, place, section, stock.Board!.Nominal, rip, stock);
        }
        foreach (StockSize size in stick.Sizes.Where(s => s.Width is not null))
            yield return new(size, null, new(StickSection.Of(stick)?.Thickness ?? ExactLength.Zero, size.Width!.Value), "", Ripping.Of(size.Width.Value, stick, "width", set, shop.RipKerf));
    }

    private static string Words(Offer offer, LengthFormat format)
    {
        StockSize size = offer.Size;
        LengthFormat written = Written(offer, format);
        string section = offer.Board is not { } board ? "" : offer.Nominal.Length > 0 ? $"{offer.Nominal}, " : $"{written.Bare.Text(board.Thickness)} x {written.Text(board.Width)}, ";
        string flaws = size.Flaws.Length switch { 0 => "", 1 => ", 1 flaw", var many => $", {many} flaws" };
        string words = size.Across is { } across ? $"{written.Bare.Text(size.Along)} x {written.Text(across)}" : $"{section}{written.Text(size.Along)}{flaws}";
        if (size.Name.Length > 0) words = $"{size.Name} ({words})";
        if (offer.Rack?.Reads is { } reads) words += $", reads {SumFigure.Of(reads, format.Unit)} {format.Unit.Mark}";
        if (offer.Rack is { LeftBy.Length: > 0 } left) words += $", kept from {left.LeftBy}";
        return offer.Rack is { Lot.Length: > 0 } of ? $"{words}, lot {of.Lot}" : words;
    }

    // A size that the unit of the piece only comes near was written in the other one, as sheets are sold: it is said as it was written. What a run left is not sold.
    private static LengthFormat Written(Offer offer, LengthFormat format)
    {
        if (offer.Rack?.IsBlank == true) return format;
        LengthUnit other = format.Unit.Other;
        ExactLength[] figures = [offer.Size.Along.ToExact(), .. offer.Size.Across is { } across ? [across.ToExact()] : Array.Empty<ExactLength>()];
        return !Array.TrueForAll(figures, f => IsOn(f, format.Unit)) && Array.TrueForAll(figures, f => IsOn(f, other)) ? LengthFormat.For(other) : format;
    }

    // On the finest figure that is shown: 1/64 in, or half a millimetre.
    private static bool IsOn(ExactLength figure, LengthUnit unit) => (figure.Ticks / Rational.Of(unit == LengthUnit.Inch ? Length.FromInches(1, 64).Ticks : Length.TicksPerMillimetre / 2)).IsWhole;
}
