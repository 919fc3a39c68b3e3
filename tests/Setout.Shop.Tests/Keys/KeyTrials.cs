using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using Setout.Shop.Tests.Texts;

namespace Setout.Shop.Tests.Keys;

/// <summary>One key of one map, given a value that it had not, and whether anything came of it.</summary>
/// <param name="Piece">The file.</param>
/// <param name="Map">Where the map is.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Key">The key.</param>
/// <param name="Was">What it had before; null where it was not there.</param>
/// <param name="Value">What it was given; null where it was taken out.</param>
/// <param name="HasEffect">Whether anything at all came out otherwise: a refusal, a finding, a size, a place, a word.</param>
internal sealed record KeyTrial(string Piece, string Map, string Kind, string Key, string? Was, string? Value, bool HasEffect)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Piece} {Map}: {Kind}.{Key} {(Was is null ? "" : $"from {Was} ")}to {Value ?? "nothing"}";
}

/// <summary>
/// Tries of each key that the published schema allows in each map of each piece of the repository: given where it is not, and taken out or changed where it is.
/// Maps alike (the same kind at the same kind of place, with the same keys and words) are tried once.
/// </summary>
internal static class KeyTrials
{
    private sealed record Try(string Piece, string Before, string After, KindOfMap Map, string Key, string? Was, string? Value);

    private static readonly JsonSerializerOptions s_plain = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly Lazy<ImmutableArray<KeyTrial>> s_all = new(Run);

    // What shows only once parts are laid out on stock.
    private static readonly ImmutableHashSet<string> s_ofStock = ["panel", "lumber", "stick", "sheet-size", "board-length", "flaw"];

    /// <summary>All tries with what came of them.</summary>
    public static ImmutableArray<KeyTrial> All => s_all.Value;

    /// <summary>True for what is said of stock: an entry that no layout uses changes nothing.</summary>
    public static bool IsOfStock(string kind) => s_ofStock.Contains(kind);

    private static ImmutableArray<KeyTrial> Run()
    {
        string[] folders = ["tests/Setout.Shop.Tests/SettingOut/Pieces", "tests/Setout.Shop.Tests/Keys/Pieces"];
        string[] files = [.. Repository.PieceSamples, .. folders.SelectMany(f => Directory.GetFiles(Path.Combine(Repository.Root, f), "*.yaml").Order(StringComparer.Ordinal))];
        var seen = new HashSet<string>(StringComparer.Ordinal);
        Try[] tries = [.. files.SelectMany(f => Of(f, seen))];
        var before = new ConcurrentDictionary<(string, bool), string>();
        var done = new KeyTrial[tries.Length];
        Parallel.For(0, tries.Length, i =>
        {
            Try t = tries[i];
            bool isLaid = IsOfStock(t.Map.Kind) || t.Key == "figure";
            try
            {
                string was = before.GetOrAdd((t.Before, isLaid), k => Outcome.Of(k.Item1, k.Item2));
                done[i] = new(t.Piece, t.Map.Path, t.Map.Kind, t.Key, t.Was, t.Value, Outcome.Of(t.After, isLaid) != was);
            }
            catch (Exception e)
            {
                throw new InvalidOperationException($"{t.Piece} {t.Map.Path}: {t.Map.Kind}.{t.Key} to {t.Value ?? "nothing"}: {e}", e);
            }
        });
        return [.. done];
    }

    private static IEnumerable<Try> Of(string file, HashSet<string> seen)
    {
        JsonNode whole = SchemaTests.Json(File.ReadAllText(file));
        string text = whole.ToJsonString(s_plain), name = Path.GetFileName(file);
        foreach (KindOfMap map in SchemaWalk.Maps(whole).ToList())
        {
            foreach ((string key, JsonNode? schema) in SchemaWalk.Properties(map.Kind))
            {
                bool isThere = map.Map.ContainsKey(key);
                string alike = string.Join(',', map.Map.Select(p => p.Key + (IsWord(map.Kind, p.Key) ? $"={p.Value}" : "")));
                if (!seen.Add($"{map.Above}|{map.Kind}|{alike}|{key}")) continue;
                string? was = isThere ? map.Map[key]!.ToJsonString(s_plain) : null;
                // A map is only taken out; its own keys are tried by themselves.
                IEnumerable<JsonNode?> values = map.Map[key] is JsonObject ? [] : Candidates.Of(whole, key, schema!).Where(v => v is not JsonObject { Count: 0 } && v.ToJsonString(s_plain) != was);
                if (isThere) values = values.Prepend(null);
                foreach (JsonNode? value in values)
                {
                    JsonNode copy = whole.DeepClone();
                    JsonObject there = SchemaWalk.Maps(copy).First(m => m.Path == map.Path).Map;
                    if (value is null) there.Remove(key);
                    else there[key] = value.DeepClone();
                    yield return new(name, text, copy.ToJsonString(s_plain), map, key, was, value?.ToJsonString(s_plain));
                }
            }
        }
    }

    private static bool IsWord(string kind, string key) => SchemaWalk.Properties(kind)[key]?["enum"] is not null;
}
