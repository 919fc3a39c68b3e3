using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Cutting.Runs;
using Setout.Shop.Edits;
using Setout.Shop.Texts;

namespace Setout.Shop.Rack;

/// <summary>Something that stands in the rack, or that a supplier offers.</summary>
/// <param name="Stock">What it is; of a line of the shop with what is left of its count.</param>
/// <param name="Wood">The wood, in words.</param>
public sealed record RackThing(ShopStock Stock, string Wood)
{
    /// <summary>The entry that left it, of a blank; null for a line of the shop.</summary>
    public LeftBlank? Blank { get; init; }

    /// <summary>What was taken from the line since it was counted.</summary>
    public ImmutableArray<TakenByPiece> TakenBy { get; init; } = [];

    /// <summary>What was taken beyond its count, which cannot be so.</summary>
    public ImmutableArray<TakenByPiece> TooMany { get; init; } = [];

    /// <summary>True for sheets, false for boards.</summary>
    public bool IsSheet => Stock.Size.Across is not null;

    /// <summary>How many are there; 0 for what has to be bought.</summary>
    public int Count => Stock.Size.InHand ?? 0;

    /// <summary>Whose it is, in words: for which piece it is kept or cut on, or that it waits for a reading; empty for what is for all.</summary>
    public string For => Blank is not { } blank ? Stock.For.Length > 0 ? $"kept for {Stock.For}" : "" : blank.Wood.Use switch
    {
        BlankUse.Work => $"to be cut on for {Called(blank)}",
        BlankUse.Waiting => $"whole until a reading, for {Called(blank)}",
        _ => "",
    };

    /// <summary>Who left it, in words; empty for a line of the shop.</summary>
    public string LeftBy => Blank is { } blank ? $"left by {Called(blank)}" : "";

    /// <summary>What the ones that are there cost, by the price of one; null where that is not known.</summary>
    public Money? Worth => Stock.Size.Price is { } price ? price * Count : null;

    private static string Called(LeftBlank blank) => blank.By.Piece.Name.Length > 0 ? blank.By.Piece.Name : blank.By.Name;
}

/// <summary>The rack of a shop as it stands, for all of its pieces at once.</summary>
/// <param name="InHand">What is there: lines of the shop, then blanks that runs left; by wood, the larger first.</param>
/// <param name="Offered">What suppliers offer, in the order of the text.</param>
/// <param name="NoneLeft">Places in the text of lines whose count is 0, or of which all is taken.</param>
public sealed record RackThings(ImmutableArray<RackThing> InHand, ImmutableArray<RackThing> Offered, ImmutableArray<int> NoneLeft)
{
    /// <summary>Of a shop and the logs of its pieces.</summary>
    /// <param name="shop">As written.</param>
    /// <param name="lines">How many items the stock of its text has.</param>
    /// <param name="ledger">Of all pieces of the shop.</param>
    public static RackThings Of(Texts.Shop shop, int lines, WoodLedger ledger)
    {
        RackThing[] all = [.. StockInHand.Lines(ledger, shop).Select(l => new RackThing(l.Stock, WoodOf(l.Stock)) { TakenBy = l.TakenBy, TooMany = l.TooMany })];
        IEnumerable<RackThing> blanks = ledger.Blanks.Select(b => StockInHand.Line(b.By.Piece, b.Wood) is { } line && !StockInHand.StandsInRack(line, shop) ? new RackThing(line, WoodOf(line)) { Blank = b } : null).OfType<RackThing>();
        RackThing[] there = [.. all.Where(t => t.Count > 0).Concat(blanks)];
        HashSet<int> known = [.. all.Where(t => t.Count > 0 || t.Stock.Size.InHand is null).Select(t => t.Stock.Item)];
        return new(
            [.. there.OrderByDescending(t => t.IsSheet).ThenBy(t => t.Wood, StringComparer.Ordinal).ThenByDescending(t => t.Stock.Size.Along).ThenByDescending(t => t.Stock.Size.Across ?? Length.Zero).ThenBy(t => t.Stock.Size.Name, StringComparer.Ordinal)],
            [.. all.Where(t => t.Stock.Size.InHand is null)],
            [.. Enumerable.Range(0, lines).Where(i => !known.Contains(i))]);
    }

    /// <summary>What the wood in hand costs by its prices, and how many things have none.</summary>
    public (Money Sum, int Unpriced) Worth => (InHand.Aggregate(Money.Zero, (sum, t) => sum + (t.Worth ?? Money.Zero)), InHand.Count(t => t.Worth is null));

    private static string WoodOf(ShopStock stock) => Wood.Of(stock) is { } wood ? wood.Words : stock.Identity;
}
