using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Pieces;

namespace Setout.Shop.Texts;

/// <summary>One entry of the stock rack or of the supplier's list.</summary>
/// <param name="Identity">Which wood: see <see cref="MaterialIdentity"/>.</param>
/// <param name="Size">Size, price, how many in hand.</param>
public sealed record ShopStock(string Identity, StockSize Size)
{
    /// <summary>The wood and the section of a board that may be ripped for narrower sticks; null, the default, for one that may not.</summary>
    public Stick? Board { get; init; }
}

/// <summary>The shop: its grid, saws, instruments, stock and prices.</summary>
/// <param name="Name">For people.</param>
/// <param name="Currency">Shown beside amounts; empty when there are no prices.</param>
/// <param name="InchGrid">The grid for pieces in inches.</param>
/// <param name="MetricGrid">The grid for pieces in millimetres.</param>
/// <param name="SheetKerf">Of the saw that breaks sheets down.</param>
/// <param name="BoardKerf">Of the saw that cuts boards to length.</param>
/// <param name="SheetTrim">Trued off each edge of a bought sheet.</param>
/// <param name="BoardTrim">Cut off each end of a bought board.</param>
/// <param name="KeepAlong">An offcut is kept from this length, along the grain...</param>
/// <param name="KeepAcross">... and this width.</param>
/// <param name="KeepBoard">A board end is kept from this length.</param>
/// <param name="Accuracy">How closely it works, its instruments among it.</param>
/// <param name="Stock">The rack and the supplier's list.</param>
/// <param name="Prices">Prices of hardware by name.</param>
/// <param name="Shims">What it keeps for packing, thickest first.</param>
public sealed record Shop(
    string Name, string Currency, Grid InchGrid, Grid MetricGrid, Length SheetKerf, Length BoardKerf, Length SheetTrim, Length BoardTrim,
    Length KeepAlong, Length KeepAcross, Length KeepBoard, Accuracy Accuracy,
    ImmutableArray<ShopStock> Stock, ImmutableDictionary<string, Money> Prices, ImmutableArray<Shim> Shims)
{
    /// <summary>What stays free at the far edges of every sheet, for sheets that are short and kerfs that vary; zero or more, zero by default.</summary>
    public Length SheetSlack { get; init; }

    /// <summary>The most divisions on the way from a sheet to a part, 2 to 9; null, the default, for any number.</summary>
    public int? MostStages { get; init; }

    /// <summary>Of the saw that rips boards, planing of the sawn edges included; zero or more, a full kerf of 1/8 in by default (common practice, no source).</summary>
    public Length RipKerf { get; init; } = Length.FromInches(1, 8);

    /// <summary>
    /// The shop assumed when no shop file is named: 1/32 in or 0.5 mm, a full kerf of 1/8 in, 1/4 in trued off each edge. Common practice, no source,
    /// except the tape, whose source stands with <see cref="Accuracy.Usual"/>. A flat washer of 1/16 in, veneer and card for packing.
    /// </summary>
    public static Shop Usual { get; } = new("a usual shop", "", Grid.ThirtySecond, Grid.HalfMillimetre, Length.FromInches(1, 8), Length.FromInches(1, 8),
        Length.FromInches(1, 4), Length.FromInches(1, 2), Length.FromInches(12), Length.FromInches(6), Length.FromInches(12),
        Accuracy.Usual, [], ImmutableDictionary<string, Money>.Empty,
        [new("flat washer", Length.FromInches(1, 16)), new("veneer", Length.FromInches(1, 40)), new("card", Length.FromInches(1, 64))]);
}

/// <summary>Tells whether an entry of the shop is the wood that a piece names.</summary>
public static class MaterialIdentity
{
    /// <summary>A text that is equal for equal wood.</summary>
    public static string Of(Material material) => material switch
    {
        Panel { Label.Length: > 0 } panel => $"panel {panel.Kind} {panel.Label.Replace("\"", "", StringComparison.Ordinal).Replace(" in", "", StringComparison.Ordinal).Trim()}",
        Panel panel => $"panel {panel.Kind} {panel.Thickness?.Value}",
        Stick { Nominal.Length: > 0 } stick => $"lumber {stick.Nominal}",
        Stick stick => $"stick {stick.Kind} {stick.Thickness?.Value} {stick.Width?.Value}",
        _ => throw new ArgumentOutOfRangeException(nameof(material), material, "A panel or a stick."),
    };
}
