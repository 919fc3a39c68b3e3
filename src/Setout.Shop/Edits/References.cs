using System.Collections.Immutable;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Words of a text that stand for something else in it.</summary>
internal static class References
{
    // Where one thing names another by its key, and where it names a material.
    private static readonly ImmutableArray<string> s_things = ["beside", "on", "bay"];
    private static readonly ImmutableArray<string> s_materials =
        ["of", "sides", "bottom", "front", "back", "lip", "runner", "packing", "slide panels", "bearers", "rails", "stiles", "mullions", "bottom rail", "panel", "platform", "layers", "on"];

    /// <summary>Refuses where something stands by what is to be taken out.</summary>
    public static void WantNone(EditDraft draft, string[] keys)
    {
        foreach ((Thing by, string word, string key, bool _) in Uses(draft, s_things).Where(u => keys.Contains(u.Text) && !keys.Contains(u.By.Key)))
            throw draft.Refused("edit.stands-by", key, $"{Fillings.Capital(by.Words)} says '{word}: {key}', which would not be there.", $"Change '{word}' of {by.Key} first, or take {by.Key} out.");
    }

    /// <summary>Refuses where something is made of a material or like a kind.</summary>
    public static void WantUnused(EditDraft draft, Thing thing)
    {
        string[] users = [.. UsersOf(draft, thing).Distinct()];
        if (users.Length > 0) throw draft.Refused("edit.in-use", thing.Key, $"{Fillings.Capital(thing.Words)} is used by {string.Join(", ", users.Take(6))}{(users.Length > 6 ? " and more" : "")}.", "Give these another one first.");
    }

    private static IEnumerable<string> UsersOf(EditDraft draft, Thing thing) => thing.Word switch
    {
        "material" => Uses(draft, s_materials).Where(u => u.Text == thing.Key && u.By.Key != thing.Key).Select(u => u.By.Key),
        _ => Uses(draft, ["like"]).Where(u => u.Text == thing.Key && u.IsDoor == (thing.Word == Thing.DoorKind)).Select(u => u.By.Key),
    };

    private static IEnumerable<(Thing By, string Word, string Text, bool IsDoor)> Uses(EditDraft draft, ImmutableArray<string> words)
    {
        Thing[] things = [.. draft.Things.Where(t => t.Node is YamlMap)];
        foreach (Thing thing in things)
            foreach ((string word, string text, bool isDoor) in Within(thing.Map, false))
                yield return (thing, word, text, isDoor);

        // What stands in another thing is found there.
        IEnumerable<(string, string, bool)> Within(YamlMap map, bool isDoor) => map.Entries.SelectMany(e => e.Value switch
        {
            YamlScalar scalar when words.Contains(e.Key.Text) => [(e.Key.Text, scalar.Text, isDoor)],
            YamlList list => list.Items.SelectMany(i => i is YamlScalar scalar && words.Contains(e.Key.Text) ? [(e.Key.Text, scalar.Text, isDoor)] : i is YamlMap inner && TextPath.WordOf(inner) is null ? Within(inner, isDoor) : Enumerable.Empty<(string, string, bool)>()),
            YamlMap inner when TextPath.WordOf(inner) is null => Within(inner, e.Key.Text == "doors"),
            _ => Enumerable.Empty<(string, string, bool)>(),
        });
    }
}
