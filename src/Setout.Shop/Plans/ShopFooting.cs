using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Cutting.Runs;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>Wood that has come into the rack.</summary>
/// <param name="Identity">Of the wood.</param>
/// <param name="Along">Along the grain.</param>
/// <param name="Across">Across it; null for a board.</param>
/// <param name="Name">What the shop calls it; empty for no name.</param>
/// <param name="Count">How many; above zero.</param>
public sealed record WoodCome(string Identity, Length Along, Length? Across, string Name, int Count);

/// <summary>
/// What of the shop file a plan stands on once it is cut by: the grid, saws and their kerfs, what is trued off and kept, the wood. Prices, names, instruments and remarks may change under it, and
/// more wood may come: they would make another plan, and spoil none.
/// </summary>
public static class ShopFooting
{
    private const string Wood = "the wood";

    /// <summary>One text that changes when any of it does, whatever way it is written.</summary>
    public static string Of(Texts.Shop shop) => string.Join('\n', Parts(shop).Select(p => $"{p.What}: {p.Value}"));

    /// <summary>What differs between two shops, in words; what a plan stands on is told apart from what it does not.</summary>
    /// <param name="then">When the plan was made.</param>
    /// <param name="now">Now.</param>
    public static (ImmutableArray<string> Footing, ImmutableArray<string> Other) Changed(Texts.Shop then, Texts.Shop now)
    {
        var other = ImmutableArray.CreateBuilder<string>();
        if (then.Name != now.Name) other.Add($"its name, now {now.Name}");
        if (then.Currency != now.Currency) other.Add("the currency");
        if (!then.Stock.Select(s => s.Size.Price).SequenceEqual(now.Stock.Select(s => s.Size.Price))) other.Add("prices of wood");
        if (!Same(then.Prices, now.Prices) || !Same(then.Packs, now.Packs)) other.Add("prices of hardware");
        if (!then.Shims.SequenceEqual(now.Shims)) other.Add("shims");
        bool hasMore = !MoreWood(then, now).IsEmpty;
        if (hasMore) other.Add("more wood in the rack");
        return ([.. Parts(then).Zip(Parts(now)).Where(p => p.First.Value != p.Second.Value && !(hasMore && p.First.What == Wood)).Select(p => p.First.What)], other.ToImmutable());
    }

    /// <summary>The wood that has come into the rack, where nothing else of the wood was changed; empty where none has, or more than that was changed.</summary>
    /// <param name="then">When the plan was made.</param>
    /// <param name="now">Now.</param>
    public static ImmutableArray<WoodCome> MoreWood(Texts.Shop then, Texts.Shop now)
    {
        // Each line is there as it was, perhaps with more of it; and others that are in hand. What is to be bought may not change: it would be another sheet.
        if (then.Counted?.Text != now.Counted?.Text) return [];
        List<ShopStock> left = [.. now.Stock];
        var come = ImmutableArray.CreateBuilder<WoodCome>();
        void Came(ShopStock line, int count)
        {
            if (count > 0) come.Add(new(line.Identity, line.Size.Along, line.Size.Across, line.Size.Name, count));
        }
        foreach (ShopStock line in then.Stock)
        {
            int at = left.FindIndex(s => Stock(s, false) == Stock(line, false) && (s.Size.InHand is null ? line.Size.InHand is null : s.Size.InHand >= line.Size.InHand));
            if (at < 0) return [];
            Came(line, (left[at].Size.InHand ?? 0) - (line.Size.InHand ?? 0));
            left.RemoveAt(at);
        }
        if (left.Exists(s => s.Size.InHand is null)) return [];
        foreach (ShopStock line in left) Came(line, line.Size.InHand!.Value);
        return come.ToImmutable();
    }

    private static bool Same<T>(ImmutableDictionary<string, T> a, ImmutableDictionary<string, T> b) =>
        a.Count == b.Count && a.All(p => b.TryGetValue(p.Key, out T? other) && EqualityComparer<T>.Default.Equals(p.Value, other));

    private static ImmutableArray<(string What, string Value)> Parts(Texts.Shop shop) =>
    [
        ("the grid", $"{L(shop.InchGrid.Step)} {L(shop.MetricGrid.Step)}"),
        ("saws and kerfs", Saws(shop.Saws)),
        ("what is trued off", $"{L(shop.SheetTrim)} {L(shop.BoardTrim)} {L(shop.SheetSlack)}"),
        ("what is kept", $"{L(shop.KeepAlong)} {L(shop.KeepAcross)} {L(shop.KeepBoard)}"),
        ("how often a sheet is divided", $"{shop.MostStages?.ToString(CultureInfo.InvariantCulture)}"),
        ("what one person lifts", string.Create(CultureInfo.InvariantCulture, $"{shop.Lift.Kilograms.Value:R}")),
        (Wood, $"{shop.Counted?.Text}\n{string.Join('\n', shop.Stock.Select(s => Stock(s, true)))}"),
    ];

    private static string L(Length? length) => length is { } known ? known.Ticks.ToString(CultureInfo.InvariantCulture) : "-";

    private static string Saws(SawLimits saws) => string.Join("; ",
        saws.Fence is { } f ? $"fence {L(f.Kerf)} {L(f.Widest)} {L(f.Room)} {L(f.Narrowest)} {L(f.NarrowestCarried)}" : "",
        saws.Sled is { } s ? $"sled {L(s.Deepest)} {L(s.Longest)}" : "",
        saws.Guided is { } g ? $"guided {L(g.Kerf)} {L(g.Shoe)} {L(g.Longest)} {L(g.Rough)}" : "",
        saws.Boards is { } b ? $"boards {L(b.Kerf)} {L(b.Widest)}" : "",
        L(saws.RipKerf));

    private static string Stock(ShopStock stock, bool isCounted)
    {
        StockSize size = stock.Size;
        string sides = size.Sides is { } by ? $"{L(by.NearEdge)} {L(by.FarEdge)} {L(by.NearEnd)} {L(by.FarEnd)}" : "";
        string board = stock.Board is { } stick ? MaterialIdentity.Of(stick) : "";
        return string.Create(CultureInfo.InvariantCulture,
            $"{stock.Identity}|{board}|{L(size.Along)} {L(size.Across)} {L(size.Width)}|{(isCounted ? size.InHand : null)}|{size.Name}|{L(size.Trim)} {sides}|{string.Join(' ', size.Flaws.Select(f => $"{L(f.From)}-{L(f.To)}"))}|{stock.For}|{stock.Reads}|{stock.Counted?.Text}");
    }
}
