using System.Collections.Immutable;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>What a splice makes of the tree of a text. It knows nothing of how texts are written: what was spliced is read again and held against it.</summary>
internal static class Expected
{
    /// <summary>The tree after a splice; null where there is no such place.</summary>
    /// <param name="root">The tree before.</param>
    /// <param name="steps">From the outermost value to the place of the splice.</param>
    /// <param name="splice">What is done there.</param>
    public static YamlNode? Of(YamlNode root, ReadOnlySpan<PathStep> steps, Splice splice)
    {
        switch (splice)
        {
            case SetValue or Removal when steps.Length == 1: return Within(root, steps[0], splice);
            case Addition or Moving when steps.IsEmpty: return OfList(root, splice);
            case var _ when steps.IsEmpty: return null;
        }
        if (TextPath.At(root, steps[..1]) is not { } inner || Of(inner, steps[1..], splice) is not { } changed) return null;
        return steps[0].Key is { } key
            ? ((YamlMap)root) with { Entries = [.. ((YamlMap)root).Entries.Select(e => e.Key.Text == key ? (e.Key, changed) : e)] }
            : ((YamlList)root) with { Items = ((YamlList)root).Items.SetItem(steps[0].Index, changed) };
    }

    private static YamlNode? Within(YamlNode node, PathStep step, Splice splice)
    {
        bool isThere = TextPath.At(node, [step]) is not null;
        return (node, splice, step.Key) switch
        {
            (YamlMap map, SetValue set, { } key) when isThere => map with { Entries = [.. map.Entries.Select(e => e.Key.Text == key ? (e.Key, set.Value) : e)] },
            (YamlMap map, SetValue set, { } key) => map with { Entries = map.Entries.Insert(set.Behind(map) + 1, (new(key, default), set.Value)) },
            (YamlMap map, Removal, { } key) when isThere => map with { Entries = [.. map.Entries.Where(e => e.Key.Text != key)] },
            (YamlList list, SetValue set, null) when isThere => list with { Items = list.Items.SetItem(step.Index, set.Value) },
            (YamlList list, Removal, null) when isThere => list with { Items = list.Items.RemoveAt(step.Index) },
            _ => null,
        };
    }

    private static YamlNode? OfList(YamlNode node, Splice splice) => (node, splice) switch
    {
        (YamlList list, Addition add) when add.Index >= 0 && add.Index <= list.Items.Length => list with { Items = list.Items.Insert(add.Index, add.Value) },
        // A key with nothing behind it, and an empty map, are lists still to be begun.
        (YamlScalar { Text: "" } or YamlMap { Entries.Length: 0 }, Addition { Index: 0 } add) => new YamlList([add.Value], default),
        (YamlList list, Moving move) when Has(list, move.From) && Has(list, move.To) => list with { Items = list.Items.RemoveAt(move.From).Insert(move.To, list.Items[move.From]) },
        _ => null,
    };

    private static bool Has(YamlList list, int index) => index >= 0 && index < list.Items.Length;

    /// <summary>True when both trees say the same in the same order.</summary>
    public static bool IsSame(YamlNode a, YamlNode b) => (a, b) switch
    {
        (YamlScalar x, YamlScalar y) => x.Text == y.Text,
        (YamlList x, YamlList y) => x.Items.Length == y.Items.Length && x.Items.Zip(y.Items).All(p => IsSame(p.First, p.Second)),
        (YamlMap x, YamlMap y) => x.Entries.Length == y.Entries.Length && x.Entries.Zip(y.Entries).All(p => p.First.Key.Text == p.Second.Key.Text && IsSame(p.First.Value, p.Second.Value)),
        _ => false,
    };
}
