using System.Text.Json.Nodes;
using Setout.Shop.Tests.Texts;

namespace Setout.Shop.Tests.Keys;

/// <summary>A map of a piece file with the kind that the published schema says it is.</summary>
/// <param name="Path">Where it is, as a path of JSON.</param>
/// <param name="Kind">The name of its definition; <c>setout</c> for the whole file.</param>
/// <param name="Above">The kinds and keys that lead to it, from the outside.</param>
/// <param name="Map">Itself.</param>
internal sealed record KindOfMap(string Path, string Kind, string Above, JsonObject Map);

/// <summary>Walks a piece file by the published schema.</summary>
internal static class SchemaWalk
{
    private static readonly JsonObject s_schema = JsonNode.Parse(Repository.Read("docs", "schemas", "piece.schema.json"))!.AsObject();

    /// <summary>What a map of a kind may hold, by key.</summary>
    public static JsonObject Properties(string kind) => (kind == "setout" ? s_schema : Definition(kind))["properties"]!.AsObject();

    /// <summary>The kinds of map there are.</summary>
    public static IEnumerable<string> Kinds => s_schema["$defs"]!.AsObject().Where(d => d.Value!["properties"] is not null).Select(d => d.Key).Append("setout");

    /// <summary>The keys that a map of a kind must have.</summary>
    public static IEnumerable<string> Required(string kind) => ((kind == "setout" ? s_schema : Definition(kind))["required"] as JsonArray ?? []).Select(r => r!.GetValue<string>());

    /// <summary>A definition by its name.</summary>
    public static JsonObject Definition(string name) => s_schema["$defs"]![name]!.AsObject();

    /// <summary>All maps of a piece file.</summary>
    public static IEnumerable<KindOfMap> Maps(JsonNode piece) => Of(piece, new JsonObject { ["$whole"] = true }, "");

    /// <summary>The name that a reference names; null where there is none.</summary>
    public static string? Named(JsonNode schema) => schema["$ref"]?.GetValue<string>()["#/$defs/".Length..];

    private static IEnumerable<KindOfMap> Of(JsonNode? node, JsonNode schema, string above)
    {
        if (node is null) yield break;
        if (schema["$whole"] is not null)
        {
            foreach (KindOfMap found in Inside(node.AsObject(), "setout", above)) yield return found;
            yield break;
        }
        if (Named(schema) is { } name)
        {
            JsonObject definition = Definition(name);
            if (definition["properties"] is null)
                foreach (KindOfMap found in Of(node, definition, above)) yield return found;
            else if (node is JsonObject map)
                foreach (KindOfMap found in Inside(map, name, above)) yield return found;
            yield break;
        }
        if (schema["anyOf"] is JsonArray any)
        {
            foreach (JsonNode? one in any)
            {
                if (!Fits(node, one!)) continue;
                foreach (KindOfMap found in Of(node, one!, above)) yield return found;
                yield break;
            }
            yield break;
        }
        if (node is JsonArray list && schema["items"] is { } items)
            foreach (KindOfMap found in list.SelectMany(i => Of(i, items, above))) yield return found;
        if (node is JsonObject named && schema["additionalProperties"] is JsonObject inner)
            foreach (KindOfMap found in named.SelectMany(p => Of(p.Value, inner, above))) yield return found;
    }

    private static IEnumerable<KindOfMap> Inside(JsonObject map, string kind, string above)
    {
        yield return new(map.GetPath(), kind, above, map);
        foreach ((string key, JsonNode? value) in map)
        {
            if (Properties(kind)[key] is not { } schema) continue;
            foreach (KindOfMap found in Of(value, schema, $"{above}/{kind}.{key}")) yield return found;
        }
    }

    // Which of several: a map that has what its kind requires, a list, or a word.
    private static bool Fits(JsonNode node, JsonNode schema)
    {
        if (Named(schema) is not { } name) return node is JsonArray == (schema["items"] is not null) || (node is JsonObject && schema["additionalProperties"] is not null);
        JsonObject definition = Definition(name);
        return definition["properties"] is null ? node is JsonValue : node is JsonObject map && Required(name).All(map.ContainsKey);
    }
}
