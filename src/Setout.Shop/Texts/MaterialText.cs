using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;

namespace Setout.Shop.Texts;

/// <summary>Reads what wood there is: sheets by kind and label, sticks by their name in the yard or their section.</summary>
internal static class MaterialText
{
    /// <summary>A material of the piece, with the sizes the piece file offers.</summary>
    public static Material? Read(TextContext context, Named name, MapReader map)
    {
        Material? material = Identity(context, name, map);
        if (material is Panel panel) material = panel with { Sizes = [.. map.Maps("sizes").Select(SheetSize).OfType<StockSize>()] };
        else if (material is Stick stick) material = stick with { Sizes = [.. map.Maps("lengths").Select(BoardLength).OfType<StockSize>()] };
        if (material is not null) map.Done();
        return material;
    }

    /// <summary>What wood it is, without sizes: the same words in the piece file and in the shop file.</summary>
    public static Material? Identity(TextContext context, Named name, MapReader map)
    {
        if (map.Has("panel")) return Panel(context, name, map);
        if (map.Has("lumber") || map.Has("stick")) return Stick(context, name, map);
        map.Missing("panel", "hardwood plywood");
        return null;
    }

    private static Panel Panel(TextContext context, Named name, MapReader map)
    {
        Named kind = map.Required("panel", "hardwood plywood");
        string label = map.Text("label")?.Text ?? "";
        Given? thickness = map.Length("thickness");
        if (label.Length == 0 && !map.Has("thickness")) map.Missing("label", "3/4");
        if (!PanelTable.Kinds.Contains(kind.Text) && !map.Has("thickness"))
        {
            string near = NearestWord.Of(kind.Text, PanelTable.Kinds) is { } guess ? $"Did you mean '{guess}'? " : "";
            context.Stop("material.unknown-kind", kind.Place, $"'{kind.Text}' is not a kind of sheet on record.", $"{near}Known: {string.Join(", ", PanelTable.Kinds)}; or give its thickness.", name.Text);
        }
        bool hasGrain = kind.Text.Contains("ply", StringComparison.Ordinal) || !PanelTable.Kinds.Contains(kind.Text);
        Grain grain = map.OneOf("grain", hasGrain ? Grain.Keep : Grain.Free, ("keep", Grain.Keep), ("free", Grain.Free));
        return new(name.Text, kind.Text, label, thickness, grain, [], name.Place);
    }

    private static Stick? Stick(TextContext context, Named name, MapReader map)
    {
        Named? lumber = map.Text("lumber"), wood = map.Text("stick");
        (Given First, Given Second)? section = map.Size("section");
        if (lumber is { } nominal && section is null && LumberTable.Find(nominal.Text) is null)
        {
            context.Stop("material.unknown-lumber", nominal.Place, $"There is no dressed size on record for '{nominal.Text}'.",
                $"Use a size of the yard such as {string.Join(", ", LumberTable.All.Select(l => l.Nominal).Where(n => n.StartsWith("2x", StringComparison.Ordinal)))}, or 'stick:' with a section.", name.Text);
            return null;
        }
        if (lumber is null && section is null)
        {
            if (!map.Has("section")) map.Missing("section", "3 x 3");
            return null;
        }
        Given? thin = null, wide = null;
        if (section is { } given)
            (thin, wide) = given.First.Value <= given.Second.Value ? (given.First, given.Second) : (given.Second, given.First);
        return new(name.Text, section is null ? lumber!.Value.Text.Replace(" ", "", StringComparison.Ordinal) : "", thin, wide, wood?.Text ?? "construction lumber", [], name.Place);
    }

    /// <summary>One size of sheet: <c>{size: 96 x 48, price: 62}</c>.</summary>
    public static StockSize? SheetSize(MapReader map)
    {
        (Given First, Given Second)? size = map.Size("size");
        if (!map.Has("size")) map.Missing("size", "96 x 48");
        StockSize? stock = size is { } s ? Stock(map, s.First, s.Second) : Stock(map, null, null);
        map.Done();
        return stock;
    }

    /// <summary>One length of board: <c>{length: 96, price: 4.20}</c>.</summary>
    public static StockSize? BoardLength(MapReader map)
    {
        Given length = map.RequiredLength("length", "96");
        StockSize? stock = Stock(map, length, null);
        map.Done();
        return stock;
    }

    /// <summary>The size, price and number of a stock entry of the shop file.</summary>
    public static StockSize? Entry(MapReader map, bool isSheet)
    {
        if (isSheet)
        {
            if (!map.Has("size")) map.Missing("size", "96 x 48");
            return map.Size("size") is { } s ? Stock(map, s.First, s.Second) : null;
        }
        return Stock(map, map.RequiredLength("length", "96"), null);
    }

    // What is bought or in hand lies on a tick: a stock size between ticks is landed on the tick below.
    private static StockSize? Stock(MapReader map, Given? along, Given? across)
    {
        Money? price = map.Price("price");
        int have = map.Whole("have", 0, 0, 10_000);
        string name = map.Text("name")?.Text ?? "";
        Given? trim = map.Length("trim", mayBeZero: true);
        return along is { } a ? new(Tick(a), across is { } c ? Tick(c) : null, price, have > 0 ? have : null, name, trim is { } t ? Tick(t) : null) : null;
    }

    private static Length Tick(Given given) => Length.FromTicks((long)given.Value.Ticks.Floor());
}
