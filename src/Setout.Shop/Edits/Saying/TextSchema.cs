using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.Json;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits.Saying;

/// <summary>The published schema of the piece file, to walk along beside a text. It is the one place where all keys stand with their words.</summary>
internal static class TextSchema
{
    private static readonly JsonElement s_root = Load("piece.schema.json");

    /// <summary>The outermost map.</summary>
    public static SchemaNode Piece { get; } = new(s_root, "piece", "");

    /// <summary>What a name in <c>$defs</c> stands for.</summary>
    internal static JsonElement Def(string name) => s_root.GetProperty("$defs").GetProperty(name);

    private static JsonElement Load(string name)
    {
        using Stream stream = typeof(TextSchema).Assembly.GetManifestResourceStream(name)!;
        return JsonDocument.Parse(stream).RootElement;
    }
}

/// <summary>What may stand at a place of a text.</summary>
/// <param name="At">Its schema.</param>
/// <param name="Name">By which the schema calls it; empty for none.</param>
/// <param name="Words">What it is, for people.</param>
internal sealed record SchemaNode(JsonElement At, string Name, string Words)
{
    private ImmutableArray<SchemaNode> _ways;

    /// <summary>The plain ways to write it: words, lists and maps.</summary>
    public ImmutableArray<SchemaNode> Ways => _ways.IsDefault ? _ways = [.. WaysOf(this)] : _ways;

    /// <summary>A map with keys that are known.</summary>
    public bool IsMap => At.TryGetProperty("properties", out _);

    /// <summary>A map whose keys are names of one's own.</summary>
    public bool IsNamed => At.TryGetProperty("additionalProperties", out JsonElement more) && more.ValueKind == JsonValueKind.Object;

    /// <summary>A list.</summary>
    public bool IsList => At.TryGetProperty("items", out _);

    /// <summary>A single word or figure.</summary>
    public bool IsWord => !IsMap && !IsNamed && !IsList;

    /// <summary>A permanent key.</summary>
    public bool IsKey => Name == "key";

    /// <summary>The keys of a map in the order of the schema.</summary>
    public IEnumerable<(string Key, SchemaNode Node)> Keys => At.GetProperty("properties").EnumerateObject().Select(p => (p.Name, Of(p.Value)));

    /// <summary>The keys that a map must have.</summary>
    public FrozenSet<string> Required => At.TryGetProperty("required", out JsonElement keys) ? keys.EnumerateArray().Select(k => k.GetString()!).ToFrozenSet(StringComparer.Ordinal) : [];

    /// <summary>An item of a list.</summary>
    public SchemaNode Item => Of(At.GetProperty("items"));

    /// <summary>What stands under each name.</summary>
    public SchemaNode Each => Of(At.GetProperty("additionalProperties"));

    /// <summary>The words to choose from; none where any may stand.</summary>
    public ImmutableArray<string> Options => At.TryGetProperty("enum", out JsonElement words) ? [.. words.EnumerateArray().Where(w => w.ValueKind == JsonValueKind.String).Select(w => w.GetString()!)] : [];

    /// <summary>What is typed for it.</summary>
    public FieldKind Kind => !Options.IsEmpty ? FieldKind.OneOf : Name switch
    {
        "length" or "length-or-zero" => FieldKind.Length,
        "share" or "graduation" => FieldKind.Share,
        "size" => FieldKind.Size,
        _ => At.TryGetProperty("type", out JsonElement type) && type.ValueKind == JsonValueKind.String && type.GetString() == "integer" ? FieldKind.Count : FieldKind.Words,
    };

    /// <summary>The way in which a value of a text is written; null where it is none of them.</summary>
    public SchemaNode? WayOf(YamlNode node) => node switch
    {
        YamlMap map => Ways.Where(w => w.IsNamed).Concat(Ways.Where(w => w.IsMap).OrderByDescending(w => w.Likeness(map))).FirstOrDefault(),
        YamlList => Ways.FirstOrDefault(w => w.IsList),
        _ => Ways.FirstOrDefault(w => w.IsWord),
    };

    /// <summary>The way in which what stands at a place is written; null where the schema knows none.</summary>
    public static SchemaNode? Beside(YamlNode root, ReadOnlySpan<PathStep> steps)
    {
        SchemaNode? way = TextSchema.Piece.WayOf(root);
        YamlNode? node = root;
        for (int i = 0; i < steps.Length && way is not null; i++)
        {
            node = TextPath.At(root, steps[..(i + 1)]);
            SchemaNode? next = steps[i].Key is { } key ? way.IsNamed ? way.Each : way.IsMap ? way.Keys.Where(k => k.Key == key).Select(k => k.Node).FirstOrDefault() : null : way.IsList ? way.Item : null;
            way = node is null ? null : next?.WayOf(node);
        }
        return way;
    }

    // All keys it must have count most, then those it knows, and against it those it does not.
    private int Likeness(YamlMap map)
    {
        var known = Keys.Select(k => k.Key).ToHashSet(StringComparer.Ordinal);
        int of = map.Entries.Count(e => known.Contains(e.Key.Text));
        return (Required.All(r => map[r] is not null) ? 1000 : 0) + (2 * of) - map.Entries.Length;
    }

    private static SchemaNode Of(JsonElement at)
    {
        string words = at.TryGetProperty("description", out JsonElement own) ? own.GetString()! : "", name = "";
        while (at.TryGetProperty("$ref", out JsonElement reference))
        {
            name = reference.GetString()!.Split('/')[^1];
            at = TextSchema.Def(name);
            if (words.Length == 0 && at.TryGetProperty("description", out own)) words = own.GetString()!;
        }
        return new(at, name, words);
    }

    private static IEnumerable<SchemaNode> WaysOf(SchemaNode node) => node.At.TryGetProperty("anyOf", out JsonElement ways) && !node.IsMap
        ? ways.EnumerateArray().SelectMany(w => Of(w).Ways).Select(w => w.Words.Length > 0 ? w : w with { Words = node.Words })
        : [node];
}
