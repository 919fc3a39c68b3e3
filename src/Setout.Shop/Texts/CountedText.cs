using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>
/// Openings that are counted instead of listed: so many equal ones with the same filling. They are written out into the list that they stand for, and that is read as any other, so
/// that both forms come to the same by construction. Opening 2 of key A is A2, what stands between it and the next A2-3, and a key S inside of it A2-S: keys begin with a letter, so these never meet.
/// </summary>
internal static class CountedText
{
    private const int Most = 50;

    private static readonly string[] s_contents = ["across", "down", "drawers", "shelves", "doors"];

    // Keys whose word stands for a thing; of lists of such words the last two.
    private static readonly string[] s_keyed = ["opening", "partition", "deck", "rail", "drawer"], s_listed = ["down", "keys"];

    /// <summary>The items of the list; empty where it cannot be written out, with a finding.</summary>
    public static ImmutableArray<MapReader> Items(TextContext context, MapReader map, string word, string between)
    {
        if (map.Map(word, $"counted-{word}") is not { } counted) return [];
        string member = between;
        if (!counted.Has("openings")) counted.Missing("openings", "4");
        int count = counted.Whole("openings", 0, 2, Most);
        string key = counted.Key("key");
        (YamlScalar, YamlNode)[] ofMember = [.. Entries(counted, member == "partition" ? ["of", "grain", "doubled"] : ["of"])], ofOpening = [.. Entries(counted, s_contents)];
        if (count == 0 || key.Length == 0) return [];
        Place place = counted.PlaceOf("key");
        var items = ImmutableArray.CreateBuilder<MapReader>();
        for (int i = 1; i <= count; i++)
        {
            string own = $"{key}{i}";
            items.Add(Item("opening", own, [.. ofOpening.Select(e => (e.Item1, Renamed(e.Item2, e.Item1.Text, own)))]));
            if (i < count) items.Add(Item(member, $"{own}-{i + 1}", ofMember));
        }
        return items.ToImmutable();

        MapReader Item(string kind, string name, IEnumerable<(YamlScalar, YamlNode)> more) => new(context, new([(new YamlScalar(kind, place), new YamlScalar(name, place)), .. more], counted.Place), "division-item");
    }

    /// <summary>The list that counted openings stand for, to be written in their place; null where they cannot be written out.</summary>
    /// <param name="counted">The map that stands in place of the list.</param>
    /// <param name="between">What stands between two: <c>partition</c> or <c>deck</c>.</param>
    public static YamlList? Listed(YamlMap counted, string between)
    {
        if (counted["openings"] is not YamlScalar { Text: var number } || !int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count is < 2 or > Most || counted["key"] is not YamlScalar { Text: { Length: > 0 } key }) return null;
        var items = ImmutableArray.CreateBuilder<YamlNode>();
        for (int i = 1; i <= count; i++)
        {
            string own = $"{key}{i}";
            items.Add(Item("opening", own, counted.Entries.Where(e => s_contents.Contains(e.Key.Text)).Select(e => (e.Key, Renamed(e.Value, e.Key.Text, own)))));
            if (i < count) items.Add(Item(between, $"{own}-{i + 1}", counted.Entries.Where(e => e.Key.Text is "of" or "grain" or "doubled")));
        }
        return new(items.ToImmutable(), default);

        static YamlMap Item(string kind, string name, IEnumerable<(YamlScalar, YamlNode)> more) => (YamlMap)Anew(new YamlMap([(new(kind, default), new YamlScalar(name, default)), .. more], default));
    }

    // Without what it was written as before.
    private static YamlNode Anew(YamlNode node) => node switch
    {
        YamlMap map => new YamlMap([.. map.Entries.Select(e => (new YamlScalar(e.Key.Text, default), Anew(e.Value)))], default),
        YamlList list => new YamlList([.. list.Items.Select(Anew)], default),
        _ => new YamlScalar(((YamlScalar)node).Text, default),
    };

    private static IEnumerable<(YamlScalar, YamlNode)> Entries(MapReader map, string[] keys)
    {
        foreach (string key in keys)
            if (map.Node(key) is { } node) yield return (new(key, map.KeyPlaceOf(key)), node);
    }

    private static YamlNode Renamed(YamlNode node, string under, string own) => node switch
    {
        // What is in openings counted inside of these takes the keys of those.
        YamlMap counted when counted["openings"] is not null => counted with { Entries = [.. counted.Entries.Select(e => (e.Key, e is { Key.Text: "key", Value: YamlScalar { Text.Length: > 0 } key } ? Own(key, own) : e.Value))] },
        YamlMap map => map with { Entries = [.. map.Entries.Select(e => (e.Key, e.Value is YamlScalar { Text.Length: > 0 } scalar && s_keyed.Contains(e.Key.Text) ? Own(scalar, own) : Renamed(e.Value, e.Key.Text, own)))] },
        YamlList list => list with { Items = [.. list.Items.Select(i => i is YamlScalar { Text.Length: > 0 } scalar && s_listed.Contains(under) ? Own(scalar, own) : Renamed(i, under, own))] },
        _ => node,
    };

    private static YamlScalar Own(YamlScalar scalar, string own) => scalar with { Text = $"{own}-{scalar.Text}" };
}
