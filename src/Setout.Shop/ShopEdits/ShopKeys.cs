using System.Collections.Immutable;
using System.Text.Json;

namespace Setout.Shop.ShopEdits;

/// <summary>What a key of a shop file holds.</summary>
public enum ShopValue
{
    /// <summary>A length in any usual form.</summary>
    Length,

    /// <summary>Two lengths, such as <c>96 x 48</c>.</summary>
    Size,

    /// <summary>A word, a name, a day, a weight or an amount of money.</summary>
    Words,

    /// <summary>A whole number.</summary>
    Count,

    /// <summary>One of some words.</summary>
    OneOf,

    /// <summary>Keys of its own.</summary>
    Map,

    /// <summary>A list of maps.</summary>
    List,
}

/// <summary>A key of a shop file.</summary>
/// <param name="Name">As it is written.</param>
/// <param name="Value">What it holds.</param>
/// <param name="About">What it says, in a sentence or two.</param>
public sealed record ShopKey(string Name, ShopValue Value, string About)
{
    /// <summary>What may be chosen, for <see cref="ShopValue.OneOf"/>.</summary>
    public ImmutableArray<string> Options { get; init; } = [];

    /// <summary>The kinds of maps it may hold: one of a map, one or more of a list; of a length those it may be told by instead.</summary>
    public ImmutableArray<string> Kinds { get; init; } = [];

    /// <summary>True where it has to be there.</summary>
    public bool IsNeeded { get; init; }

    /// <summary>True for a map that <c>no</c> may stand for: there is none.</summary>
    public bool MayBeNo { get; init; }

    /// <summary>True for a single value.</summary>
    public bool IsField => Value is not (ShopValue.Map or ShopValue.List);
}

/// <summary>A kind of map in a shop file, by the published schema. So a form can ask for nothing that the reader does not know, and leaves nothing out.</summary>
/// <param name="Kind">Its name in the schema, such as <c>fence</c>; empty for the whole text.</param>
/// <param name="About">What it says.</param>
/// <param name="Keys">In the order of the schema.</param>
public sealed record ShopKeys(string Kind, string About, ImmutableArray<ShopKey> Keys)
{
    private const string Defs = "#/$defs/";

    private static readonly Lazy<ImmutableDictionary<string, ShopKeys>> s_all = new(Read);

    /// <summary>Of a kind of map.</summary>
    /// <exception cref="KeyNotFoundException">There is no such kind: a fault in the code.</exception>
    public static ShopKeys Of(string kind) => s_all.Value[kind];

    /// <summary>The key of a name; null for none.</summary>
    public ShopKey? this[string name] => Keys.FirstOrDefault(k => k.Name == name);

    private static ImmutableDictionary<string, ShopKeys> Read()
    {
        using Stream stream = typeof(ShopKeys).Assembly.GetManifestResourceStream("shop.schema.json") ?? throw new InvalidOperationException("The schema of the shop file is not inside the program.");
        using var schema = JsonDocument.Parse(stream);
        JsonElement root = schema.RootElement, defs = root.GetProperty("$defs");
        var all = ImmutableDictionary.CreateBuilder<string, ShopKeys>();
        all.Add("", Map("", root, defs));
        foreach (JsonProperty def in defs.EnumerateObject().Where(d => IsMap(d.Value))) all.Add(def.Name, Map(def.Name, def.Value, defs));
        return all.ToImmutable();
    }

    private static bool IsMap(JsonElement def) => def.TryGetProperty("properties", out _);

    private static ShopKeys Map(string kind, JsonElement def, JsonElement defs)
    {
        HashSet<string> needed = [.. def.TryGetProperty("required", out JsonElement required) ? required.EnumerateArray().Select(r => r.GetString()!) : []];
        return new(kind, Words(def), [.. def.GetProperty("properties").EnumerateObject().Select(p => Key(p, defs) with { IsNeeded = needed.Contains(p.Name) })]);
    }

    private static ShopKey Key(JsonProperty property, JsonElement defs)
    {
        (string name, JsonElement value) = (property.Name, property.Value);
        string? of = Ref(value);
        string about = Words(value) is { Length: > 0 } said ? said : of is not null ? Words(defs.GetProperty(of)) : "";
        if (value.TryGetProperty("items", out JsonElement items)) return new(name, ShopValue.List, about) { Kinds = [.. Refs(items)] };
        if (value.TryGetProperty("enum", out JsonElement words)) return new(name, ShopValue.OneOf, about) { Options = [.. words.EnumerateArray().Where(w => w.ValueKind == JsonValueKind.String).Select(w => w.GetString()!)] };
        string[] refs = [.. Refs(value)], maps = [.. refs.Where(r => IsMap(defs.GetProperty(r)))];
        if (maps.Length > 0) return new(name, refs.Any(r => r.StartsWith("length", StringComparison.Ordinal)) ? ShopValue.Length : ShopValue.Map, about) { Kinds = [.. maps], MayBeNo = refs.Contains("absent") };
        if (value.TryGetProperty("type", out JsonElement type) && type.ValueKind == JsonValueKind.String && type.GetString() == "integer") return new(name, ShopValue.Count, about);
        return new(name, of switch { "length" or "length-or-zero" => ShopValue.Length, "size" => ShopValue.Size, _ => ShopValue.Words }, about);
    }

    private static IEnumerable<string> Refs(JsonElement value) => Ref(value) is { } one ? [one]
        : value.TryGetProperty("anyOf", out JsonElement any) ? any.EnumerateArray().Select(Ref).OfType<string>() : [];

    private static string? Ref(JsonElement value) => value.TryGetProperty("$ref", out JsonElement to) ? to.GetString()![Defs.Length..] : null;

    private static string Words(JsonElement value) => value.TryGetProperty("description", out JsonElement words) ? words.GetString()! : "";
}
