using System.Collections.Immutable;
using Setout.Shop.Drawings;
using Setout.Shop.Rack;
using Setout.Shop.ShopEdits;

namespace Setout.Workbench.ShopPages;

/// <summary>What a shop has beside its rack, in lines.</summary>
/// <param name="shop">The shop.</param>
/// <param name="rack">Its rack and what suppliers offer.</param>
/// <param name="chosen">What is chosen.</param>
internal sealed class ShopGroups(ShopFile shop, RackThings rack, string chosen)
{
    private readonly string _text = shop.Document.Text;

    public IEnumerable<ShopGroup> All()
    {
        yield return new("From suppliers", "What can be bought, and what one costs. Layouts choose among these when the rack does not do.",
            [.. rack.Offered.Select(t => Line($"stock.{t.Stock.Item}", $"{t.Wood}, {ShopView.SizeOf(t, shop)}", t.Stock.Size.Price is { } price ? $"{price} {shop.Shop.Currency}" : "no price", false))],
            ShopLinks.Item("stock"), "Add a line");
        if (rack.NoneLeft.Length > 0)
            yield return new("None left", "Counted as none, or all taken.", [.. rack.NoneLeft.Select(i => Line($"stock.{i}", ShopChoices.Words(_text, $"stock.{i}"), "", false))]);
        yield return new("Saws", "What each takes decides which cut is made where, and which is refused.",
        [
            Map("saws.fence", "Table saw, along the fence"), Map("saws.sled", "Sled of the table saw"), Map("saws.guided", "Hand-held saw along a straight edge"), Map("saws.boards", "Crosscut saw for boards"), Map("kerf", "Kerf: what the blades take"),
        ]);
        yield return new("Instruments", "How far each may be off: the chances at Fit go by it.", [Map("instruments", "Within")]);
        yield return new("How closely you work", "How far to either side of the best figure the true one may lie.", [Map("spread", "Spread")]);
        yield return new("Grid, limits and habits", "",
        [
            Map("grid", "Figures to cut land on"), Map("trim", "Trued off bought stock"), Map("keep", "Offcuts are kept from"),
            Line("", "The whole shop", Figure("lift", "heaviest blank for one person") + "; " + Figure("slack", "slack of sheets") + "; " + Figure("most stages", "divisions to a part"), false) with { Href = ShopLinks.Item("whole"), IsChosen = chosen == "whole" },
        ]);
        yield return new("Shims", "Thin stuff kept for packing; a list of your own takes the place of the usual one.",
            ShopTree.Count(_text, "shims") is > 0 and int shims
                ? [.. Enumerable.Range(0, shims).Select(i => Line($"shims.{i}", ShopTree.Said(_text, $"shims.{i}", "name"), ShopTree.Said(_text, $"shims.{i}", "thickness"), false))]
                : [.. shop.Shop.Shims.Select(s => Line("shims", s.Name, Core.Measures.Text.LengthFormat.For(shop.Shown).Text(s.Thickness), true))],
            ShopLinks.Item("shims"), "Add a shim");
        yield return new("Prices of hardware", "By the names that buying lists use.",
            [.. Enumerable.Range(0, ShopTree.Count(_text, "prices")).Select(i => Line($"prices.{i}", ShopTree.Said(_text, $"prices.{i}", "name"), Price(i), false))], ShopLinks.Item("prices"), "Add a price");
    }

    private string Price(int i)
    {
        string pack = ShopTree.Said(_text, $"prices.{i}", "pack");
        return $"{ShopTree.Said(_text, $"prices.{i}", "price")} {shop.Shop.Currency}{(pack.Length > 0 ? $" for {pack}" : "")}";
    }

    private string Figure(string key, string words) => $"{words} {ShopFigures.Of(shop.Shop, shop.Shown, "", key)}";

    private ShopLine Map(string key, string words)
    {
        string[] path = key.Split('.');
        ShopKeys keys = ShopKeys.Of(path.Length == 1 ? path[0] : ShopKeys.Of(path[0])[path[1]]!.Kinds[0]);
        if (ShopTree.SaysNo(_text, key)) return Line(key, words, "not in this shop", false);
        string[] figures = [.. keys.Keys.Select(k => (k.Name, Figure: Of(keys.Kind, key, k.Name))).Where(f => f.Figure.Length > 0).Select(f => $"{Said(keys.Kind, f.Name)} {f.Figure}")];
        return Line(key, words, string.Join("; ", figures), keys.Keys.All(k => ShopTree.Said(_text, key, k.Name).Length == 0));
    }

    private string Of(string kind, string thing, string key) => kind == "guided" && key == "kerf" && ShopTree.Said(_text, thing, key).Length > 0
        ? Core.Measures.Text.LengthFormat.For(shop.Shown).Text(shop.Shop.Saws.Guided!.Kerf) : ShopFigures.Of(shop.Shop, shop.Shown, kind, key);

    private static string Said(string kind, string key) => (kind, key) switch { ("grid", "in") => "in inches", ("grid", "mm") => "in millimetres", ("fence", "room") => "room for", _ => key };

    private ShopLine Line(string key, string words, string figures, bool isUsual) => new(ShopLinks.Item(key), Figures.Phrase(words), Figures.Phrase(figures), isUsual, key == chosen);
}
