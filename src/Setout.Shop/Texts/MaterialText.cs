using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Texts;

/// <summary>Reads what wood there is: sheets by kind and label, sticks by their name in the yard or their section.</summary>
internal static class MaterialText
{
    // No sheet is thicker: common practice, no source.
    private static readonly Length s_thickestSheet = Length.FromInches(4);

    /// <summary>A material of the piece, with the sizes the piece file offers.</summary>
    public static Material? Read(TextContext context, Named name, MapReader map)
    {
        if (Wood(map, "") is not { } word) return null;
        var names = new RackNames(context);
        StockSize? Named(MapReader entry, StockSize? size)
        {
            names.Take(name.Text, size, entry);
            return size;
        }

        if (word == "panel")
        {
            ImmutableArray<StockSize> sheets = [.. map.Maps("sizes", "sheet-size", "size: 96 x 48, price: 62").Select(m => Named(m, Sheet(m))).OfType<StockSize>()];
            int stages = map.Whole("most stages", 0, 2, SheetInstance.MostStagesEver);
            return Panel(context, name, map) with { Sizes = sheets, Edges = Edges(map), MostStages = stages == 0 ? null : stages };
        }
        Stick? stick = Stick(context, name, map, word);
        StickSection? section = stick is null ? null : StickSection.Of(stick);
        // Read in any case, so that what is wrong with them is told at once.
        ImmutableArray<StockSize> boards =
            [.. map.Maps("lengths", "board-length", "length: 96, price: 4.20").Select(m => Named(m, BoardText.OfPiece(context, m, section))).OfType<StockSize>()];
        return stick is null ? null : stick with { Sizes = boards };
    }

    /// <summary>An entry of the rack or of the supplier's list in the shop file: the same words for the wood, then one size. Null when it is of no use.</summary>
    public static ShopStock? Entry(TextContext context, MapReader map)
    {
        if (Wood(map, "stock-") is not { } word) return null;
        Named name = new("", map.PlaceOf(word));
        Material? material = word == "panel" ? Panel(context, name, map) : Stick(context, name, map, word);
        StockSize? size = word == "panel" ? Sheet(map, isShop: true) : BoardText.OfShop(context, map, isShop: true);
        bool mayBeRipped = word != "panel" && map.YesNo("rip", false);
        string piece = map.Text("for")?.Text ?? "", lot = map.Text("lot")?.Text ?? "";
        ExactLength? reads = word == "panel" && map.Length("read", most: s_thickestSheet) is { } read ? read.Value : null;
        Counting? counted = Counted(context, map);
        // Both are of the very thing in the rack.
        if (word == "panel" && map.IsThere("read") && !map.IsThere("have")) map.Missing("have", "1", "stock.read-to-buy", "A thickness is read here of a sheet that has to be bought; it is of one in the rack.");
        else if (counted is not null && !map.IsThere("have")) map.Missing("have", "1", "stock.counted-to-buy", "What has to be bought is not counted; what is in the rack is.");
        if (material is null || size is null) return null;
        return new(MaterialIdentity.Of(material), size) { Board = mayBeRipped ? (Stick)material : null, For = piece, Reads = reads, Lot = lot, Counted = counted };
    }

    /// <summary>When wood was counted, or null.</summary>
    internal static Counting? Counted(TextContext context, MapReader map)
    {
        if (map.Text("counted") is not { } text) return null;
        if (Counting.Read(text.Text) is { } counted) return counted;
        context.Stop("text.wanted-day", text.Place, $"'{TextContext.Shown(text.Text)}' is neither a day nor a time.", "Write it as 2026-11-27, or as 2026-11-27T17:30:00+01:00 when more was cut that day after counting or before.");
        return null;
    }

    private static string? Wood(MapReader map, string kind) => map.Which("This does not say what wood it is.",
        "Begin it with 'panel: hardwood plywood', 'lumber: 2x4' or 'stick: oak'.", ("panel", kind + "panel"), ("lumber", kind + "lumber"), ("stick", kind + "stick"));

    private static Panel Panel(TextContext context, Named name, MapReader map)
    {
        Named kind = map.Required("panel", "hardwood plywood");
        string label = map.Text("label")?.Text ?? "";
        Given? thickness = map.Length("thickness");
        bool isThere = map.IsThere("thickness"), isKnown = PanelTable.Kinds.Contains(kind.Text);
        if (kind.Text.Length > 0 && !isKnown && !isThere)
        {
            string near = NearestWord.Of(kind.Text, PanelTable.Kinds) is { } guess ? $"Did you mean '{guess}'? " : "";
            context.Stop("material.unknown-kind", kind.Place, $"'{TextContext.Shown(kind.Text)}' is not a kind of sheet on record.",
                $"{near}Known: {string.Join(", ", PanelTable.Kinds)}; or give its thickness.", name.Text);
        }
        else if (!map.IsThere("label") && !isThere) map.Missing("label", "3/4");
        bool hasGrain = kind.Text.Contains("ply", StringComparison.Ordinal) || !isKnown;
        Grain grain = map.OneOf("grain", hasGrain ? Grain.Keep : Grain.Free, ("keep", Grain.Keep), ("free", Grain.Free));
        return new(name.Text, kind.Text, label, thickness, grain, [], name.Place);
    }

    /// <summary>What is done with the seen edges: one word, and what it needs.</summary>
    private static EdgeTreatment Edges(MapReader map)
    {
        EdgeWork work = map.OneOf("edges", EdgeWork.Raw, ("raw", EdgeWork.Raw), ("chamfered", EdgeWork.Chamfered), ("banded", EdgeWork.Banded), ("lipped", EdgeWork.Lipped));
        Given? band = map.Length("band");
        Named? lip = map.Text("lip");
        return new(work, band, lip, map.PlaceOf("edges"));
    }

    private static Stick? Stick(TextContext context, Named name, MapReader map, string word)
    {
        Named said = map.Required(word, word == "lumber" ? "2x4" : "oak");
        (Given First, Given Second)? section = map.Size("section", "in either order", "3/4 x 1 1/2");
        bool isThere = map.IsThere("section");
        if (word == "lumber" && !isThere)
        {
            if (said.Text.Length == 0) return null;
            if (LumberTable.Find(said.Text) is { } fact) return new(name.Text, fact.Nominal, null, null, "construction lumber", [], name.Place);
            context.Stop("material.unknown-lumber", said.Place, $"There is no dressed size on record for '{TextContext.Shown(said.Text)}'.",
                $"Use a size of the yard such as {string.Join(", ", LumberTable.All.Select(l => l.Nominal).Where(n => n.StartsWith("2x", StringComparison.Ordinal)))}, or add its section.", name.Text);
            return null;
        }
        if (!isThere) map.Missing("section", "3 x 3");
        if (section is not { } given) return null;
        (Given thin, Given wide) = given.First.Value <= given.Second.Value ? (given.First, given.Second) : (given.Second, given.First);
        return new(name.Text, "", thin, wide, word == "stick" ? said.Text : "construction lumber", [], name.Place);
    }

    private static StockSize? Sheet(MapReader map, bool isShop = false)
    {
        (Given First, Given Second)? size = map.Size("size");
        if (!map.IsThere("size")) map.Missing("size", "96 x 48");
        return Stock(map, size?.First, size?.Second, isShop ? "sheet-trim" : "");
    }

    /// <summary>What every stock says. What is bought or in hand lies on a tick: a size between ticks is landed on the tick below. Null when it is of no use.</summary>
    /// <param name="map">To be read.</param>
    /// <param name="along">Its length along the grain.</param>
    /// <param name="across">Its size across; null for a board.</param>
    /// <param name="sides">The kind of map that tells a trim by side; empty where a trim is one length.</param>
    internal static StockSize? Stock(MapReader map, Given? along, Given? across, string sides = "")
    {
        Money? price = map.Price("price");
        bool isCounted = map.Has("have");
        int have = map.Whole("have", 0, 0, 10_000);
        string name = map.Text("name")?.Text ?? "";
        bool isBySide = sides.Length > 0 && map.Node("trim") is YamlMap;
        TrimBySide? bySide = isBySide && map.Map("trim", sides) is { } trims ? BySide(trims, sides == "sheet-trim") : null;
        Given? trim = isBySide ? null : map.Length("trim", mayBeZero: true);
        // An entry of which none is left is neither in hand nor for sale.
        if (along is not { } a || (isCounted && have == 0)) return null;
        return new(Tick(a), across is { } c ? Tick(c) : null, price, isCounted ? have : null, name, trim is { } t ? Tick(t) : null) { Sides = bySide };
    }

    private static TrimBySide BySide(MapReader map, bool isSheet)
    {
        Length? Off(string side) => map.Length(side, mayBeZero: true) is { } given ? Tick(given) : null;
        return new(isSheet ? Off("near edge") : null, isSheet ? Off("far edge") : null, Off("near end"), Off("far end"));
    }

    private static Length Tick(Given given) => Length.FromTicks((long)given.Value.Ticks.Floor());
}
