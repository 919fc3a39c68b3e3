using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Texts;

/// <summary>Reads a shop file. What it leaves out is as in <see cref="Shop.Usual"/>.</summary>
public static class ShopText
{
    /// <summary>The version of the shop file that this program reads.</summary>
    public const int Version = 1;

    // A saw cut, an instrument's error or a spread of more than this is a slip of the pen: common practice, no source.
    private static readonly Length s_coarsest = Length.FromInches(1);

    // What is thicker than this is cut as a strip, and no shim: common practice, no source.
    private static readonly Length s_thickestShim = Length.FromInches(1, 4);

    /// <summary>Reads a text. Never throws for what is in it.</summary>
    public static TextRead<Shop> Read(string text, TextLimits? limits = null) => Read(text, limits, new(limits));

    internal static TextRead<Shop> Read(string text, TextLimits? limits, TextContext context) =>
        TextKind.Shop.Read(text, limits, context, top => Read(context, top));

    private static Shop Read(TextContext context, MapReader top)
    {
        Shop usual = Shop.Usual;
        string name = top.Text("name")?.Text ?? usual.Name, currency = top.Text("currency", most: 8)?.Text ?? usual.Currency;
        context.Unit = top.Unit("unit");
        (SawLimits saws, ImmutableHashSet<SawWay> told) = SawText.Read(context, top, usual.Saws);
        (Length sheetTrim, Length boardTrim) = Pair(top.Map("trim", "trim"), usual.SheetTrim, usual.BoardTrim, null);
        (Length keepAlong, Length keepAcross, Length keepBoard) = (usual.KeepAlong, usual.KeepAcross, usual.KeepBoard);
        if (top.Map("keep", "keep") is { } keep)
        {
            if (keep.Size("sheets") is { } sheets) (keepAlong, keepAcross) = (Tick(sheets.First), Tick(sheets.Second));
            if (keep.Length("boards") is { } boards) keepBoard = Tick(boards);
        }
        (Grid inch, Grid metric) = (usual.InchGrid, usual.MetricGrid);
        if (top.Map("grid", "grid") is { } grids)
        {
            inch = grids.Grid("in", LengthUnit.Inch) ?? inch;
            metric = grids.Grid("mm", LengthUnit.Millimetre) ?? metric;
        }
        Length slack = top.Length("slack", mayBeZero: true, s_coarsest) is { } spare ? Tick(spare) : usual.SheetSlack;
        int stages = top.Whole("most stages", usual.MostStages ?? 0, 2, SheetInstance.MostStagesEver);
        Accuracy accuracy = Accuracy(top, usual.Accuracy);
        ImmutableArray<ShopStock> stock = Rack(context, top);
        Counting? counted = MaterialText.Counted(context, top);
        (ImmutableDictionary<string, Money> prices, ImmutableDictionary<string, int> packs) = Prices(context, top);
        return new(name, currency, inch, metric, saws, sheetTrim, boardTrim, keepAlong, keepAcross, keepBoard, accuracy, stock, prices, Shims(context, top, usual.Shims))
        {
            Counted = counted,
            Packs = packs,
            Lift = top.Mass("lift", least: 1, most: 200) is { } lift ? lift : usual.Lift,
            SawsTold = told,
            SheetSlack = slack,
            MostStages = stages == 0 ? null : stages,
        };
    }

    private static ImmutableArray<ShopStock> Rack(TextContext context, MapReader top)
    {
        var stock = ImmutableArray.CreateBuilder<ShopStock>();
        var names = new RackNames(context);
        foreach ((int item, MapReader entry) in top.Maps("stock", "stock", "panel: hardwood plywood, label: 3/4, size: 96 x 48").Index())
        {
            if (MaterialText.Entry(context, entry) is not { } line) continue;
            names.Take(line.Identity, line.Size, entry);
            stock.Add(line with { Item = item });
        }
        return stock.ToImmutable();
    }

    private static Accuracy Accuracy(MapReader top, Accuracy usual)
    {
        ImmutableDictionary<string, Length> instruments = usual.Instruments;
        if (top.Map("instruments", "instruments") is { } tools)
        {
            foreach (string tool in new[] { "tape", "rule", "calliper" })
                if (tools.Length(tool, most: s_coarsest) is { } off) instruments = instruments.SetItem(tool, Tick(off));
        }
        Accuracy accuracy = usual with { Instruments = instruments };
        if (top.Map("spread", "spread") is not { } spread) return accuracy;
        Length Within(string key, Length usually) => spread.Length(key, mayBeZero: true, s_coarsest) is { } within ? Tick(within) : usually;
        return accuracy with
        {
            Setting = Within("setting", usual.Setting),
            Repeat = Within("repeat", usual.Repeat),
            Sheet = Within("sheet", usual.Sheet),
            Spot = Within("spot", usual.Spot),
            Section = Within("section", usual.Section),
            Placing = Within("placing", usual.Placing),
            Bought = Within("slides", usual.Bought),
        };
    }

    // A list with nothing in it says that the shop keeps none; only where there is no list does it keep the usual ones.
    private static ImmutableArray<Shim> Shims(TextContext context, MapReader top, ImmutableArray<Shim> usual)
    {
        ImmutableArray<MapReader> written = top.Maps("shims", "shim", "name: washer, thickness: 1/16");
        if (!top.IsThere("shims")) return usual;
        var shims = new List<Shim>();
        var places = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (MapReader entry in written)
        {
            Named name = entry.Required("name", "washer");
            Given thickness = entry.RequiredLength("thickness", "1/16", most: s_thickestShim);
            if (name.Text.Length == 0) continue;
            if (places.TryAdd(name.Text, name.Place)) shims.Add(new(name.Text, Tick(thickness)));
            else context.Stop("shop.shim-twice", name.Place, $"'{TextContext.Shown(name.Text)}' stands among the shims in line {places[name.Text].Line} already.", "Keep one of them, or give it a name of its own.");
        }
        return [.. shims.OrderByDescending(s => s.Thickness)];
    }

    private static (ImmutableDictionary<string, Money> Prices, ImmutableDictionary<string, int> Packs) Prices(TextContext context, MapReader top)
    {
        var packs = ImmutableDictionary.CreateBuilder<string, int>();
        var prices = ImmutableDictionary.CreateBuilder<string, Money>();
        var places = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (MapReader entry in top.Maps("prices", "price-of", "name: Wood screw no. 8 x 1 1/2 in, price: 0.06"))
        {
            Named item = entry.Required("name", "Wood screw no. 8 x 1 1/2 in");
            Money? price = entry.Price("price");
            int pack = entry.Whole("pack", 1, 1, 10_000);
            if (!entry.IsThere("price")) entry.Missing("price", "0.06");
            if (item.Text.Length == 0) continue;
            if (!places.TryAdd(item.Text, item.Place))
                context.Stop("shop.price-twice", item.Place, $"'{TextContext.Shown(item.Text)}' has a price in line {places[item.Text].Line} already.", "Keep one of them.");
            else if (price is { } known)
            {
                prices[item.Text] = known;
                if (pack > 1) packs[item.Text] = pack;
            }
        }
        return (prices.ToImmutable(), packs.ToImmutable());
    }

    private static (Length Sheets, Length Boards) Pair(MapReader? map, Length sheets, Length boards, Length? most) => map is null
        ? (sheets, boards)
        : (map.Length("sheets", mayBeZero: true, most) is { } s ? Tick(s) : sheets, map.Length("boards", mayBeZero: true, most) is { } b ? Tick(b) : boards);

    private static Length Tick(Given given) => given.Value.ToNearestTick();
}
