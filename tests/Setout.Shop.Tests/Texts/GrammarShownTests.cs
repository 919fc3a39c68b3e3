using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Texts;

/// <summary>Each key and each word of the piece file for structures, openings, drawers, doors, shelves, tops and wells is used by a sample or by a test piece that the page on setting out names.</summary>
public partial class GrammarShownTests
{
    private const string Pieces = "tests/Setout.Shop.Tests/SettingOut/Pieces";

    // What is for sale and in hand is no part of setting out; the page on the shop file has its own examples.
    private static readonly string[] s_stock = ["sheet-size", "board-length", "flaw", "lumber"];

    private static readonly JsonObject s_schema = JsonNode.Parse(Repository.Read("docs", "schemas", "piece.schema.json"))!.AsObject();

    private static IEnumerable<string> Files => Setout.Testing.Repository.FilesIn(Pieces, "*.yaml").Concat(Repository.PieceSamples);

    [Fact]
    public void EachKeyAndWord_IsUsedBySomePiece()
    {
        var used = new HashSet<string>(StringComparer.Ordinal);
        foreach (string file in Files) Use(s_schema, YamlTree.Read(File.ReadAllText(Setout.Testing.Repository.PathOf(file))).Value!, "piece", used);
        var all = new HashSet<string>(StringComparer.Ordinal);
        All(s_schema, "piece", all, []);
        Assert.True(all.Count > 400);
        string missing = string.Join(", ", all.Where(k => !s_stock.Any(s => k.StartsWith(s + ".", StringComparison.Ordinal))).Except(used).Where(k => !IsShownListed(k, used)).Order(StringComparer.Ordinal));
        Assert.True(missing.Length == 0, missing);
    }

    private static readonly string[] s_listed = ["opening-across", "opening-down", "partition", "deck"];

    // Openings by number are written out into the list they stand for: what fills one there is shown as that of a listed one.
    private static bool IsShownListed(string key, HashSet<string> used) =>
        key.StartsWith("counted-", StringComparison.Ordinal) && key[key.IndexOf('.', StringComparison.Ordinal)..] is var rest && s_listed.Any(m => used.Contains(m + rest));

    /// <summary>The table of the page: each piece it names for a thing has the words it says.</summary>
    [Fact]
    public void TableOfThings_EachPiece_HasItsWords()
    {
        string page = Repository.Read("docs", "setting-out.md");
        (string Words, string Pieces)[] rows = [.. Row().Matches(page[page.IndexOf("## What shows what", StringComparison.Ordinal)..]).Select(m => (m.Groups[1].Value, m.Groups[2].Value))];
        Assert.True(rows.Length > 20);
        foreach ((string words, string pieces) in rows)
        {
            foreach (string piece in Quoted().Matches(pieces).Select(m => m.Groups[1].Value))
            {
                string text = File.ReadAllText(Setout.Testing.Repository.PathOf(Files.Single(f => Path.GetFileNameWithoutExtension(f) == piece)));
                Assert.All(Quoted().Matches(words).Select(m => m.Groups[1].Value), w => Assert.Contains(w, text, StringComparison.Ordinal));
            }
        }
    }

    [GeneratedRegex(@"^\| (?:[^|`]+): (`[^|]+) \| ([^|]+) \|", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex("`([^`]+)`")]
    private static partial Regex Quoted();

    private static (string Name, JsonObject Node) Resolved(JsonObject schema, string name)
    {
        while (schema["$ref"] is { } reference)
        {
            name = reference.GetValue<string>().Split('/')[^1];
            schema = s_schema["$defs"]![name]!.AsObject();
        }
        return (name, schema);
    }

    private static JsonObject[] Ways(JsonObject schema) => schema["properties"] is not null ? [] : [.. (schema["anyOf"] ?? schema["oneOf"])?.AsArray().Select(a => a!.AsObject()) ?? []];

    private static string Word(JsonNode? word) => word?.ToJsonString() switch { "true" => "yes", "false" => "no", { } text => text.Trim('"'), null => "" };

    private static bool Fits(JsonObject schema, YamlNode node)
    {
        (_, schema) = Resolved(schema, "");
        if (Ways(schema) is { Length: > 0 } ways) return ways.Any(w => Fits(w, node));
        if (schema["enum"] is JsonArray words) return node is YamlScalar scalar && words.Any(w => Word(w) == scalar.Text);
        string[] types = schema["type"] switch { JsonArray many => [.. many.Select(t => t!.GetValue<string>())], { } one => [one.GetValue<string>()], _ => [] };
        return node switch
        {
            YamlMap map => (types.Length == 0 || types.Contains("object")) && map.Entries.All(e => schema["properties"]?[e.Key.Text] is not null || schema["additionalProperties"] is JsonObject)
                && (schema["required"]?.AsArray().All(r => map.Entries.Any(e => e.Key.Text == r!.GetValue<string>())) ?? true),
            YamlList => types.Length == 0 || types.Contains("array"),
            _ => types.Length == 0 || types.Intersect(["string", "number", "integer", "boolean", "null"]).Any(),
        };
    }

    private static void Use(JsonObject schema, YamlNode node, string name, HashSet<string> used)
    {
        (name, schema) = Resolved(schema, name);
        if (Ways(schema) is { Length: > 0 } ways)
        {
            if (ways.FirstOrDefault(w => Fits(w, node)) is { } way) Use(way, node, name, used);
            return;
        }
        switch (node)
        {
            case YamlMap map:
                foreach (var entry in map.Entries)
                {
                    string key = entry.Key.Text;
                    if (schema["properties"]?[key] is JsonObject property)
                    {
                        used.Add($"{name}.{key}");
                        Use(property, entry.Value, $"{name}.{key}", used);
                    }
                    else if (schema["additionalProperties"] is JsonObject other) Use(other, entry.Value, name, used);
                }
                break;
            case YamlList list:
                foreach (YamlNode item in list.Items) Use(schema["items"]!.AsObject(), item, name, used);
                break;
            case YamlScalar scalar when schema["enum"] is not null:
                used.Add($"{name}={scalar.Text}");
                break;
        }
    }

    private static void All(JsonObject schema, string name, HashSet<string> all, HashSet<string> seen)
    {
        (name, schema) = Resolved(schema, name);
        foreach (JsonObject way in Ways(schema)) All(way, name, all, seen);
        if (schema["properties"] is JsonObject properties && seen.Add(name))
        {
            foreach ((string key, JsonNode? property) in properties)
            {
                all.Add($"{name}.{key}");
                All(property!.AsObject(), $"{name}.{key}", all, seen);
            }
        }
        if (schema["additionalProperties"] is JsonObject other) All(other, name, all, seen);
        if (schema["items"] is JsonObject items) All(items, name, all, seen);
        if (schema["enum"] is JsonArray words) all.UnionWith(words.Select(w => $"{name}={Word(w)}"));
    }
}
