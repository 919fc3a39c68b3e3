using System.Text.Json.Nodes;

namespace Setout.Shop.Tests.Keys;

/// <summary>Values that a key may have by the published schema, far from every default.</summary>
internal static class Candidates
{
    /// <summary>Values to try.</summary>
    /// <param name="piece">The piece, whose names may be used.</param>
    /// <param name="key">The key.</param>
    /// <param name="schema">What the schema says of its value.</param>
    public static IEnumerable<JsonNode> Of(JsonNode piece, string key, JsonNode schema)
    {
        if (schema["enum"] is JsonArray words)
            return words.Where(w => w!.GetValueKind() == System.Text.Json.JsonValueKind.String).Select(w => w!.DeepClone());
        if (schema["anyOf"] is JsonArray any) return any.SelectMany(a => Of(piece, key, a!));
        if (SchemaWalk.Named(schema) is { } name) return ByName(piece, key, name);
        if (schema["items"] is { } items) return Of(piece, key, items).Take(3).Select(i => new JsonArray(i.DeepClone()));
        if (IsType(schema, "integer")) return [JsonValue.Create(3), JsonValue.Create(7)];
        return schema["additionalProperties"] is JsonObject ? [] : [JsonValue.Create("zzz")];
    }

    private static IEnumerable<JsonNode> ByName(JsonNode piece, string key, string name)
    {
        switch (name)
        {
            case "length" or "length-or-zero": return [JsonValue.Create("7/16 in"), JsonValue.Create("2 3/8 in")];
            case "share": return [JsonValue.Create("7 in"), JsonValue.Create("2 parts")];
            case "size": return [JsonValue.Create("50 in x 30 in"), JsonValue.Create("2 1/4 in x 1 1/8 in")];
            case "key": return [JsonValue.Create("ZQ" + (piece.ToJsonString().Length % 7))];
            case "price": return [JsonValue.Create(7.5)];
            case "word": return Words(piece, key).Select(w => JsonValue.Create(w));
        }
        JsonObject definition = SchemaWalk.Definition(name);
        if (definition["properties"] is null) return Of(piece, key, definition);
        // The least map of its kind, of each material.
        var required = SchemaWalk.Required(name).ToList();
        JsonObject? Least(int variant)
        {
            var map = new JsonObject();
            foreach (string each in required)
            {
                List<JsonNode> values = [.. Of(piece, each, SchemaWalk.Properties(name)[each]!)];
                if (values.Count == 0) return null;
                map[each] = values[Math.Min(variant, values.Count - 1)].DeepClone();
            }
            return map;
        }
        return new[] { Least(0), Least(1) }.OfType<JsonObject>().DistinctBy(m => m.ToJsonString());
    }

    private static IEnumerable<string> Words(JsonNode piece, string key) => key switch
    {
        "like" => (piece["drawers"] as JsonObject ?? []).Concat(piece["doors"] as JsonObject ?? []).Select(p => p.Key),
        "name" or "catch" or "machine" or "for" or "label" or "panel" or "stick" or "lumber" => ["zzz"],
        _ => [.. Material(piece, "panel").Take(1), .. Material(piece, "stick").Concat(Material(piece, "lumber")).Take(1), "zzz"],
    };

    private static IEnumerable<string> Material(JsonNode piece, string word) =>
        (piece["materials"] as JsonObject ?? []).Where(p => p.Value is JsonObject map && map.ContainsKey(word)).Select(p => p.Key);

    private static bool IsType(JsonNode schema, string type) =>
        schema["type"] is JsonValue one ? one.GetValue<string>() == type : schema["type"] is JsonArray some && some.Any(s => s!.GetValue<string>() == type);
}
