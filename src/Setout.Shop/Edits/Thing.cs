using System.Collections.Immutable;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Something with a key of its own in a text.</summary>
/// <param name="Word">What it is: the word before its key, such as <c>opening</c>; <c>shelf</c>, <c>door</c>, <c>material</c>, <c>kind of drawer</c>, <c>kind of door</c>, <c>finish</c> for what has none.</param>
/// <param name="Key">Its key or name.</param>
/// <param name="Steps">From the outermost map to its map, or to its key in a list.</param>
/// <param name="Node">Its map, or its key.</param>
internal sealed record Thing(string Word, string Key, ImmutableArray<PathStep> Steps, YamlNode Node)
{
    /// <summary>What is called a kind by its word.</summary>
    public const string DrawerKind = "kind of drawer", DoorKind = "kind of door";

    private static readonly (string Section, string Word)[] s_sections = [("materials", "material"), ("drawers", DrawerKind), ("doors", DoorKind), ("finishes", "finish")];

    /// <summary>What stands by name in a section of the text.</summary>
    public static string WordOf(string section) => s_sections.First(s => s.Section == section).Word;

    /// <summary>Its map; an empty one for a key in a list.</summary>
    public YamlMap Map => Node as YamlMap ?? new YamlMap([], default);

    /// <summary>True for what may hold a division, drawers, shelves or doors.</summary>
    public bool Holds => Word is "opening" or "case";

    /// <summary>For people.</summary>
    public string Words => $"{Word} {Key}";

    /// <summary>Its place in the text.</summary>
    public TextPath Path => new("", Steps);

    /// <summary>The list it is an item of; null for a map that stands in no list.</summary>
    public TextPath? List => Steps is [.., { Key: null }] ? Path.Up : null;

    /// <summary>Which item of its list it is.</summary>
    public int Index => Steps[^1].Index;

    /// <summary>The words of one of its keys; null where there is none.</summary>
    public string? Text(string key) => (Map[key] as YamlScalar)?.Text is { Length: > 0 } text ? text : null;

    /// <summary>All things of a text, those outside before those inside of them.</summary>
    public static IEnumerable<Thing> In(YamlNode root)
    {
        if (root is not YamlMap map) yield break;
        foreach ((string section, string word) in s_sections)
            foreach ((YamlScalar name, YamlNode value) in (map[section] as YamlMap)?.Entries ?? [])
                yield return new(word, name.Text, [section, name.Text], value);
        foreach (string section in new[] { "assembly", "parts" })
            foreach (Thing thing in Within(map[section], [section])) yield return thing;
    }

    private static IEnumerable<Thing> Within(YamlNode? node, ImmutableArray<PathStep> steps)
    {
        if (node is YamlList list) return list.Items.SelectMany((item, i) => Within(item, steps.Add(i)));
        if (node is not YamlMap map) return [];
        IEnumerable<Thing> own = TextPath.WordOf(map) is { } word ? [new(word, TextPath.OwnerOf(map)!, steps, map)] : [];
        return own.Concat(map.Entries.SelectMany(e => (e.Key.Text, e.Value) switch
        {
            ("shelves", YamlMap shelves) => Keys("shelf", shelves["down"], [.. steps, "shelves", "down"]),
            ("doors", YamlMap doors) => Keys("door", doors["keys"], [.. steps, "doors", "keys"]),
            _ => Within(e.Value, steps.Add(e.Key.Text)),
        }));
    }

    private static IEnumerable<Thing> Keys(string word, YamlNode? keys, ImmutableArray<PathStep> steps) =>
        keys is YamlList list ? list.Items.Index().Where(i => i.Item is YamlScalar { Text.Length: > 0 }).Select(i => new Thing(word, ((YamlScalar)i.Item).Text, steps.Add(i.Index), i.Item)) : [];
}
