using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Setout.Shop.Edits;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Edits;

/// <summary>What a splice should make of a tree, done anew on another kind of tree that is changed in place.</summary>
internal static class TreeOracle
{
    public static JsonNode? Of(YamlNode node) => node switch
    {
        YamlMap map => new JsonObject(map.Entries.Select(e => KeyValuePair.Create(e.Key.Text, Of(e.Value)))),
        YamlList list => new JsonArray([.. list.Items.Select(Of)]),
        YamlScalar scalar => JsonValue.Create(scalar.Text),
        _ => throw new InvalidOperationException(),
    };

    /// <summary>The tree as it should come out; keys in their order.</summary>
    public static string After(YamlNode root, ImmutableArray<PathStep> steps, Splice splice, string? behind)
    {
        JsonNode top = new JsonObject { ["root"] = Of(root) };
        ImmutableArray<PathStep> all = ["root", .. steps];
        JsonNode Walk(int count) => all[..count].Aggregate(top, (n, s) => s.Key is { } key ? n[key]! : n[s.Index]!);
        switch (splice)
        {
            case SetValue set when Walk(all.Length - 1) is JsonArray list: list[all[^1].Index] = Of(set.Value); break;
            case SetValue set:
                var map = (JsonObject)Walk(all.Length - 1);
                if (map.ContainsKey(all[^1].Key!)) map[all[^1].Key!] = Of(set.Value);
                else map.Insert(behind is null ? 0 : map.IndexOf(behind) + 1, all[^1].Key!, Of(set.Value));
                break;
            case Removal when Walk(all.Length - 1) is JsonArray list: list.RemoveAt(all[^1].Index); break;
            case Removal: ((JsonObject)Walk(all.Length - 1)).Remove(all[^1].Key!); break;
            case Addition add when Walk(all.Length) is JsonArray list: list.Insert(add.Index, Of(add.Value)); break;
            case Moving move:
                var items = (JsonArray)Walk(all.Length);
                JsonNode moved = items[move.From]!;
                items.RemoveAt(move.From);
                items.Insert(move.To, moved);
                break;
        }
        return top["root"]!.ToJsonString();
    }
}
