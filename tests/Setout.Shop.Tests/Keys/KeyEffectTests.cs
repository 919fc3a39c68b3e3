using System.Text.Json.Nodes;

namespace Setout.Shop.Tests.Keys;

/// <summary>Nothing that a person writes into a piece file is read and then passed over in silence.</summary>
public class KeyEffectTests
{
    // Keys whose value only names a thing for people, or for another text: a name of one's own has no other effect where nothing refers to it. The version has one value.
    private static readonly string[] s_names = ["posts.posts", "setout.setout"];

    /// <summary>
    /// A key that is given where it was not changes something or is refused. One word of a choice, or one sheet, may be what is meant without it; a length, a number or a map never is.
    /// </summary>
    [Fact]
    public void Key_GivenWhereItIsNot_ChangesSomethingOrIsSaid()
    {
        var silent = KeyTrials.All.Where(t => t.Was is null && !t.HasEffect && !KeyTrials.IsOfStock(t.Kind))
            .GroupBy(t => (t.Piece, t.Map, t.Kind, t.Key))
            .Where(g => g.Count() > (IsChoice(g.Key.Kind, g.Key.Key) ? 1 : 0)).SelectMany(g => g).ToList();
        Assert.True(silent.Count == 0, string.Join('\n', silent));
    }

    /// <summary>A name that is nothing known is refused, or stands where a name of one's own belongs.</summary>
    [Fact]
    public void Word_ThatNamesNothing_IsNeverPassedOver()
    {
        var silent = KeyTrials.All.Where(t => t.Value == "\"zzz\"" && !t.HasEffect && !KeyTrials.IsOfStock(t.Kind)).ToList();
        Assert.True(silent.Count == 0, string.Join('\n', silent));
    }

    /// <summary>Each key of the schema, and each word of a choice, has a piece in which it changes what comes out.</summary>
    [Fact]
    public void Schema_EveryKeyAndWord_HasAPieceInWhichItCounts()
    {
        var counts = KeyTrials.All.Where(t => t.HasEffect).ToLookup(t => (t.Kind, t.Key));
        var missing = new List<string>();
        foreach (string kind in SchemaWalk.Kinds)
        {
            foreach ((string key, JsonNode? schema) in SchemaWalk.Properties(kind))
            {
                // Maps and lists inside have their own keys.
                if (IsInner(schema!) || s_names.Contains($"{kind}.{key}")) continue;
                if (!counts[(kind, key)].Any()) missing.Add($"{kind}.{key}");
                if (schema!["enum"] is not JsonArray words) continue;
                foreach (string word in words.Where(w => w!.GetValueKind() == System.Text.Json.JsonValueKind.String).Select(w => $"\"{w}\""))
                    if (!counts[(kind, key)].Any(t => t.Value == word || t.Was == word)) missing.Add($"{kind}.{key} {word}");
            }
        }
        // What is said by leaving a key out is counted by the other words of it.
        missing.RemoveAll(m => m.Split(' ', 2) is [var of, ..] && m.EndsWith('"') && counts.Any(c => of == $"{c.Key.Kind}.{c.Key.Key}") && IsDefault(m));
        Assert.True(missing.Count == 0, string.Join('\n', missing));

        static bool IsDefault(string word) => KeyTrials.All.Any(t => t is { Was: null, HasEffect: false } && $"{t.Kind}.{t.Key} {t.Value}" == word);
    }

    private static bool IsChoice(string kind, string key) =>
        SchemaWalk.Properties(kind)[key] is { } schema && (schema["enum"] is not null || SchemaWalk.Named(schema) is "word" or "side" or "sides" or "one-or-more");

    private static bool IsInner(JsonNode schema) => schema["type"] is JsonArray || schema["type"]?.GetValue<string>() is "array" or "object"
        || (SchemaWalk.Named(schema) is { } name && SchemaWalk.Definition(name)["properties"] is not null);
}
