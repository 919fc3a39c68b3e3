using System.Collections.Immutable;
using System.Globalization;
using Setout.Shop.Edits;
using Setout.Shop.Texts;

namespace Setout.Shop.ShopEdits;

/// <summary>A map of a shop file: one that is there, or one that could be.</summary>
/// <param name="Key">How it is named: <c>saws.fence</c>, <c>stock.3</c> (from 0); empty for the outermost map.</param>
/// <param name="Path">Where it stands.</param>
/// <param name="Keys">What it may say.</param>
/// <param name="Node">What stands there; null for nothing.</param>
internal sealed record ShopPlace(string Key, TextPath Path, ShopKeys Keys, YamlNode? Node)
{
    // The words that tell which kind of wood a line of stock is, as the schema names its kinds.
    private const string OfStock = "stock-";

    /// <summary>The word that names the outermost map.</summary>
    public const string Whole = "whole";

    /// <summary>The map there; null for nothing, and for a word in its place.</summary>
    public YamlMap? Map => Node as YamlMap;

    /// <summary>True for an item of a list.</summary>
    public bool IsItem => Path.Steps is [.., { Key: null }];

    /// <summary>The key that holds it; null for an item and for the whole.</summary>
    public ShopKey? Holder { get; private init; }

    /// <summary>A single value there; empty for none.</summary>
    public string Text(string key) => (Map?[key] as YamlScalar)?.Text ?? "";

    /// <summary>The place of a name; null where there can be none.</summary>
    public static ShopPlace? Find(YamlMap root, string key)
    {
        var place = new ShopPlace("", TextPath.Of(""), ShopKeys.Of(""), root);
        if (key == Whole) return place;
        foreach (string step in key.Split('.', StringSplitOptions.RemoveEmptyEntries))
        {
            if (place.Inner(step) is not { } inner) return null;
            place = inner;
        }
        return place.Key.Length > 0 ? place : null;
    }

    /// <summary>All maps that are there, the outermost first.</summary>
    public static IEnumerable<ShopPlace> All(YamlMap root) => new ShopPlace("", TextPath.Of(""), ShopKeys.Of(""), root).AndWithin();

    private IEnumerable<ShopPlace> AndWithin()
    {
        IEnumerable<ShopPlace?> within = IsList ? Enumerable.Range(0, (Node as YamlList)?.Items.Length ?? 0).Select(i => Inner(i.ToString(CultureInfo.InvariantCulture)))
            : Keys.Keys.Where(k => k.Kinds.Length > 0).Select(k => Inner(k.Name));
        IEnumerable<ShopPlace> all = within.OfType<ShopPlace>().Where(p => p.Node is not null).SelectMany(p => p.AndWithin());
        return Map is null || IsList ? all : all.Prepend(this);
    }

    // What stands under a key, or at a number of a list.
    private ShopPlace? Inner(string step)
    {
        if (List is not null)
        {
            if (!int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out int at) || Node is not YamlList list || at >= list.Items.Length || list.Items[at] is not YamlMap map) return null;
            return KindOf(map, List) is { } kind ? new($"{Key}.{step}", Path.To(at), ShopKeys.Of(kind), map) : null;
        }
        if (Keys[step] is not { Kinds.IsEmpty: false } found) return null;
        YamlNode? node = Map?[step];
        TextPath path = Path.To(step);
        string name = Key.Length == 0 ? step : $"{Key}.{step}";
        return found.Value == ShopValue.List ? new(name, path, Keys, node) { List = found } : new ShopPlace(name, path, ShopKeys.Of(found.Kinds[0]), node) { Holder = found };
    }

    /// <summary>The key of a list, where this is one; null for a map.</summary>
    public ShopKey? List { get; private init; }

    /// <summary>True where this is a list and none of its items.</summary>
    public bool IsList => List is not null;

    /// <summary>Of which kind an item of a list is; null where it is of none.</summary>
    private static string? KindOf(YamlMap item, ShopKey list) => list.Kinds.Length == 1 ? list.Kinds[0]
        : list.Kinds.FirstOrDefault(k => k.StartsWith(OfStock, StringComparison.Ordinal) && item[k[OfStock.Length..]] is not null);

    /// <summary>What it is, for people and for the names of steps.</summary>
    public string Words => Keys.Kind switch
    {
        _ when IsList => Path.Steps[^1].Key!,
        "" => "the shop",
        "stock-panel" => Said("panel", "label", "thickness", "size", "name"),
        "stock-lumber" => Said("lumber", "length", "name"),
        "stock-stick" => Said("stick", "section", "length", "name"),
        "price-of" or "shim" => Said("name"),
        "flaw" => $"flaw from {Text("from")} to {Text("to")}",
        "fence" => "table saw",
        "sled" => "sled",
        "guided" => "hand-held saw",
        "board-saw" => "crosscut saw for boards",
        _ => Path.Steps.LastOrDefault(s => s.Key is not null).Key ?? "",
    };

    private string Said(params ReadOnlySpan<string> keys)
    {
        var words = new List<string>();
        foreach (string key in keys)
            if (Text(key) is { Length: > 0 } text) words.Add(key is "label" or "thickness" ? text + "," : text);
        return string.Join(' ', words);
    }
}
