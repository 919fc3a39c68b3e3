using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Cutting.Runs;

namespace Setout.Shop.Texts;

/// <summary>One entry of the stock rack or of the supplier's list.</summary>
/// <param name="Identity">Which wood: see <see cref="MaterialIdentity"/>.</param>
/// <param name="Size">Size, price, how many in hand.</param>
public sealed record ShopStock(string Identity, StockSize Size)
{
    /// <summary>The wood and the section of a board that may be ripped for narrower sticks; null, the default, for one that may not.</summary>
    public Stick? Board { get; init; }

    /// <summary>The name of the piece it is kept for; empty, the default, for all.</summary>
    public string For { get; init; } = "";

    /// <summary>The thickness measured on this very sheet; null, the default, where nobody has read it.</summary>
    public ExactLength? Reads { get; init; }

    /// <summary>What the shop calls the lot it came with; empty, the default, where that is not said.</summary>
    public string Lot { get; init; } = "";

    /// <summary>True for a blank that the log of a piece left: it stands on no line of the shop file.</summary>
    public bool IsBlank { get; init; }

    /// <summary>True for such a blank that is worth keeping, and was not left for parts of the piece.</summary>
    public bool IsKept { get; init; }

    /// <summary>Of a blank: the piece that left it, where that is another; else empty.</summary>
    public string LeftBy { get; init; } = "";

    /// <summary>When it was counted last; null, the default, for as the whole rack.</summary>
    public Counting? Counted { get; init; }

    /// <summary>Which item of <c>stock</c> in the text it is, from 0; -1, the default, for what stands on no line.</summary>
    public int Item { get; init; } = -1;
}

/// <summary>The shop: its grid, saws, instruments, stock and prices.</summary>
/// <param name="Name">For people.</param>
/// <param name="Currency">Shown beside amounts; empty when there are no prices.</param>
/// <param name="InchGrid">The grid for pieces in inches.</param>
/// <param name="MetricGrid">The grid for pieces in millimetres.</param>
/// <param name="Saws">What its saws take, and what they cannot.</param>
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
    string Name, string Currency, Grid InchGrid, Grid MetricGrid, SawLimits Saws, Length SheetTrim, Length BoardTrim,
    Length KeepAlong, Length KeepAcross, Length KeepBoard, Accuracy Accuracy,
    ImmutableArray<ShopStock> Stock, ImmutableDictionary<string, Money> Prices, ImmutableArray<Shim> Shims)
{
    /// <summary>What stays free at the far edges of every sheet, for sheets that are short and kerfs that vary; zero or more, zero by default.</summary>
    public Length SheetSlack { get; init; }

    /// <summary>The most divisions on the way from a sheet to a part, 2 to 9; null, the default, for any number.</summary>
    public int? MostStages { get; init; }

    /// <summary>Saws that the shop file tells of, if only that they are not there; the others are taken as usual. None for a usual shop.</summary>
    public ImmutableHashSet<SawWay> SawsTold { get; init; } = [];

    /// <summary>How many of a thing are sold together, by its name, two or more; what is not named is sold singly.</summary>
    public ImmutableDictionary<string, int> Packs { get; init; } = ImmutableDictionary<string, int>.Empty;

    /// <summary>When the rack was counted last; null, the default, when that is not said: what the logs took is taken off what the lines have.</summary>
    public Counting? Counted { get; init; }

    /// <summary>The heaviest blank that one person lifts: above zero; by default <see cref="Lifting.OnePerson"/>, 23 kg (51 lb), of the NIOSH lifting equation.</summary>
    public Mass Lift { get; init; } = new(Estimate.Of(Lifting.OnePerson));

    /// <summary>What sheets are laid out with: the larger of the kerfs of the saws that break them down, so that a layout can be sawn by each of them.</summary>
    public Length SheetKerf => Length.Max(Saws.Fence?.Kerf ?? Length.Zero, Saws.Guided?.Kerf ?? Length.Zero);

    /// <summary>What boards are laid out with: of the saw that cuts them to length; where a shop has none, of those that take its place.</summary>
    public Length BoardKerf => Saws.Boards?.Kerf ?? SheetKerf;

    /// <summary>Of the saw that rips boards, planing of the sawn edges included; zero or more.</summary>
    public Length RipKerf => Saws.RipKerf;

    /// <summary>
    /// The shop assumed when no shop file is named: 1/32 in or 0.5 mm, the saws of <see cref="SawLimits.Usual"/>, 1/4 in trued off each edge. Common practice, no source,
    /// except the tape, whose source stands with <see cref="Accuracy.Usual"/>. A flat washer of 1/16 in, veneer and card for packing.
    /// </summary>
    public static Shop Usual { get; } = new("a usual shop", "", Grid.ThirtySecond, Grid.HalfMillimetre, SawLimits.Usual,
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
