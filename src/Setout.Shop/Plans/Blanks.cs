using System.Collections.Immutable;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>The wood that parts can be cut anew from: what stands in the rack, then what can be bought; trued, and without the slack that the shop leaves free.</summary>
public static class Blanks
{
    // More of one kind than anybody cuts anew at one time.
    private const int MostAlike = 8;

    /// <summary>All blanks for a piece.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="shop">The shop.</param>
    public static ImmutableArray<Blank> Of(SetPiece set, Texts.Shop shop)
    {
        var blanks = ImmutableArray.CreateBuilder<Blank>();
        foreach (Material material in set.Piece.Materials.Values.OrderBy(m => m.Place.Line).ThenBy(m => m.Name, StringComparer.Ordinal))
        {
            Length habit = material is Panel ? shop.SheetTrim : shop.BoardTrim, slack = material is Panel ? shop.SheetSlack : Length.Zero;
            foreach (StockLine line in StockOffers.For(material, shop, set).Where(l => StockOffers.Survives(l, habit, slack)))
            {
                EdgeTrim trim = StockOffers.TrimOf(line.Size, habit);
                Length across = line.Size.Across is { } wide ? wide - trim.AcrossStart - trim.AcrossEnd - slack : set.Worked.Values.TryGetValue(QuantityKeyOfWidth(material), out var width) ? width.Value.ToNearestTick() : Length.Zero;
                // What the shop has costs nothing more; a size without a price still has to be bought.
                Money? price = line.Size.InHand is null ? line.Size.Price ?? Money.Zero : null;
                Length[] lengths = material is Panel ? [line.Size.Along - trim.AlongStart - trim.AlongEnd - slack] : StockOffers.Clear(line, habit);
                for (int i = 0; i < Math.Min(line.Size.InHand ?? MostAlike, MostAlike); i++)
                    blanks.AddRange(lengths.Select(along => new Blank(line.Task, material.Name, along, across, price) { Piece = line.RackPlace is { } place ? $"{place}, {i}" : "" }));
            }
        }
        return blanks.ToImmutable();
    }

    private static Core.Workings.QuantityKey QuantityKeyOfWidth(Material material) => Core.Workings.QuantityKey.Of(material.Name, "width");
}
