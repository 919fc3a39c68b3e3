using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>What stock a material can come from: the shop's, then the piece file's own, then usual sizes without a price.</summary>
internal static class StockOffers
{
    // Common practice, no source: lengths a yard keeps of construction lumber.
    private static readonly Length[] s_yardLengths = [Length.FromInches(96), Length.FromInches(120), Length.FromInches(144)];

    /// <summary>The sizes on offer, in hand first; empty when nothing is known.</summary>
    public static ImmutableArray<StockLine> For(Material material, Texts.Shop shop, LengthUnit unit)
    {
        string identity = MaterialIdentity.Of(material);
        IEnumerable<StockSize> sizes = shop.Stock.Where(s => s.Identity == identity).Select(s => s.Size);
        sizes = [.. sizes, .. material.Sizes];
        if (!sizes.Any(s => s.InHand is null))
        {
            sizes = sizes.Concat(material switch
            {
                // The usual size; what is longer must be asked for.
                Panel panel => PanelTable.SizesOf(panel.Kind).Where(s => s.Along <= Length.FromMillimetres(2600) && s.Across <= Length.FromMillimetres(2600)).Select(s => new StockSize(s.Along, s.Across, null, null, "", null)),
                Stick { Nominal.Length: > 0 } => s_yardLengths.Select(l => new StockSize(l, null, null, null, "", null)),
                _ => [],
            });
        }
        LengthFormat format = LengthFormat.For(unit);
        return
        [
            .. sizes.OrderBy(s => s.InHand is null ? 1 : 0)
                .Select((s, i) => new StockLine($"{(s.InHand is null ? "buy" : "have")}-{i + 1}", s, Words(s, format))),
        ];
    }

    /// <summary>True when something is left of a size once its edges or ends are trued and a slack is left free.</summary>
    public static bool Survives(StockLine line, Length habit, Length slack)
    {
        Length gone = ((line.Size.Trim ?? habit) * 2) + slack;
        return line.Size.Along > gone && (line.Size.Across is not { } across || across > gone);
    }

    /// <summary>True when every size that has to be bought has a price.</summary>
    public static bool ArePriced(ImmutableArray<StockLine> lines) => lines.All(l => l.Size.InHand is not null || l.Size.Price is not null);

    /// <summary>As stock of sheets. Without prices, square feet stand in for money.</summary>
    public static ImmutableArray<SheetStock> Sheets(ImmutableArray<StockLine> lines, bool isPriced, Length trim) =>
    [
        .. lines.Select(l => new SheetStock(l.Id, l.Size.Along, l.Size.Across!.Value, EdgeTrim.AllRound(l.Size.Trim ?? trim),
            l.Size.InHand is not null ? Money.Zero : isPriced ? l.Size.Price!.Value
                : new Money(Math.Round((decimal)(l.Size.Along * l.Size.Across.Value).ApproximateSquareFeet, 4)), l.Size.InHand)),
    ];

    /// <summary>As stock of boards. Without prices, feet stand in for money.</summary>
    public static ImmutableArray<BoardStock> Boards(ImmutableArray<StockLine> lines, bool isPriced, Length trim) =>
    [
        .. lines.Select(l => new BoardStock(l.Id, l.Size.Along, new(l.Size.Trim ?? trim, l.Size.Trim ?? trim),
            l.Size.InHand is not null ? Money.Zero : isPriced ? l.Size.Price!.Value
                : new Money(Math.Round(l.Size.Along.ToMillimetres() / 304.8m, 4)), l.Size.InHand)),
    ];

    private static string Words(StockSize size, LengthFormat format)
    {
        string words = size.Across is { } across ? $"{format.Bare.Text(size.Along)} x {format.Text(across)}" : format.Text(size.Along);
        return size.Name.Length > 0 ? $"{size.Name} ({words})" : words;
    }
}
