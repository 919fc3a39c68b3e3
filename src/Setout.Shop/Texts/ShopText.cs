using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads a shop file. What it leaves out is as in <see cref="Shop.Usual"/>.</summary>
public static class ShopText
{
    /// <summary>The version of the shop file that this program reads.</summary>
    public const int Version = 1;

    /// <summary>Reads a text.</summary>
    public static TextRead<Shop> Read(string text, TextLimits? limits = null)
    {
        TextRead<YamlNode> tree = YamlTree.Read(text, limits);
        if (tree.Value is null) return new(null, tree.Findings);
        var context = new TextContext();
        if (tree.Value is not YamlMap root)
        {
            context.Stop("text.wanted-map", tree.Value.Place, "A shop file is made of keys with values.", "Begin with 'setout-shop: 1'.");
            return new(null, [.. context.Findings]);
        }
        var top = new MapReader(context, root);
        if (!TextVersion.Check(context, top, "setout-shop", Version)) return new(null, [.. context.Findings]);
        Shop shop = Read(context, top);
        return new(shop, [.. context.Findings.OrderBy(f => f.Place.Line).ThenBy(f => f.Place.Column)]);
    }

    private static Shop Read(TextContext context, MapReader top)
    {
        Shop usual = Shop.Usual;
        string name = top.Text("name")?.Text ?? usual.Name, currency = top.Text("currency")?.Text ?? usual.Currency;
        if (!top.Has("unit")) top.Missing("unit", "in");
        context.Unit = top.OneOf("unit", LengthUnit.Inch, ("in", LengthUnit.Inch), ("mm", LengthUnit.Millimetre));
        (Length sheetKerf, Length boardKerf) = Pair(top.Map("kerf"), usual.SheetKerf, usual.BoardKerf, mayBeZero: true);
        (Length sheetTrim, Length boardTrim) = Pair(top.Map("trim"), usual.SheetTrim, usual.BoardTrim, mayBeZero: true);
        (Length keepAlong, Length keepAcross, Length keepBoard) = (usual.KeepAlong, usual.KeepAcross, usual.KeepBoard);
        if (top.Map("keep") is { } keep)
        {
            if (keep.Size("sheets") is { } sheets) (keepAlong, keepAcross) = (Tick(sheets.First), Tick(sheets.Second));
            if (keep.Length("boards") is { } boards) keepBoard = Tick(boards);
            keep.Done();
        }
        (Grid inch, Grid metric) = (usual.InchGrid, usual.MetricGrid);
        if (top.Map("grid") is { } grids)
        {
            inch = PieceText.GridOf(grids, "in") ?? inch;
            metric = PieceText.GridOf(grids, "mm") ?? metric;
            grids.Done();
        }
        ImmutableDictionary<string, Length> instruments = usual.Instruments;
        if (top.Map("instruments") is { } tools)
        {
            foreach (string tool in new[] { "tape", "rule", "calliper" })
                if (tools.Length(tool) is { } accuracy) instruments = instruments.SetItem(tool, Tick(accuracy));
            tools.Done();
        }
        var stock = ImmutableArray.CreateBuilder<ShopStock>();
        foreach (MapReader entry in top.Maps("stock"))
        {
            if (MaterialText.Identity(context, new("stock", entry.Place), entry) is not { } material) continue;
            if (MaterialText.Entry(entry, material is Panel) is { } size) stock.Add(new(MaterialIdentity.Of(material), size));
            entry.Done();
        }
        var prices = ImmutableDictionary.CreateBuilder<string, Money>();
        foreach (MapReader entry in top.Maps("prices"))
        {
            string item = entry.Required("name", "Wood screw no. 8 x 1 1/2 in").Text;
            if (entry.Price("price") is { } price) prices[item] = price;
            else if (!entry.Has("price")) entry.Missing("price", "0.06");
            entry.Done();
        }
        top.Done();
        return new(name, currency, inch, metric, sheetKerf, boardKerf, sheetTrim, boardTrim, keepAlong, keepAcross, keepBoard, instruments, stock.ToImmutable(), prices.ToImmutable());
    }

    private static (Length Sheets, Length Boards) Pair(MapReader? map, Length sheets, Length boards, bool mayBeZero)
    {
        if (map is null) return (sheets, boards);
        if (map.Length("sheets", mayBeZero) is { } s) sheets = Tick(s);
        if (map.Length("boards", mayBeZero) is { } b) boards = Tick(b);
        map.Done();
        return (sheets, boards);
    }

    private static Length Tick(Given given) => given.Value.ToNearestTick();
}
