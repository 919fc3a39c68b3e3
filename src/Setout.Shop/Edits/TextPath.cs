using System.Collections.Immutable;
using System.Globalization;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>One step inwards: to the value of a key, or to an item of a list.</summary>
public readonly record struct PathStep
{
    private PathStep(string? key, int index) => (Key, Index) = (key, index);

    /// <summary>The key; null for an item of a list.</summary>
    public string? Key { get; }

    /// <summary>Which item, from 0; 0 for a key.</summary>
    public int Index { get; }

    /// <summary>To the value of a key.</summary>
    public static implicit operator PathStep(string key) => new(key, 0);

    /// <summary>To an item of a list, from 0.</summary>
    public static implicit operator PathStep(int index) => new(null, index);

    /// <inheritdoc/>
    public override string ToString() => Key ?? (Index + 1).ToString(CultureInfo.InvariantCulture);
}

/// <summary>Names one value of a text: the map it stands in by its owner, then keys and items inwards.</summary>
/// <param name="Owner">A permanent key, or the name of a material or of a kind of drawer or door; empty for the outermost map.</param>
/// <param name="Steps">Such as <c>width</c>, or <c>drawers</c>, <c>down</c> and 0. None for the owner itself.</param>
public sealed record TextPath(string Owner, ImmutableArray<PathStep> Steps)
{
    // The words whose value is a permanent key, and the maps whose keys are names.
    private static readonly ImmutableArray<string> s_owners = ["frame", "case", "top", "opening", "partition", "deck", "posts", "rail", "stretcher", "drawer", "slot", "well", "part"];
    private static readonly ImmutableArray<string> s_named = ["materials", "drawers", "doors", "finishes"];

    /// <summary>The path of a value.</summary>
    public static TextPath Of(string owner, params ReadOnlySpan<PathStep> steps) => new(owner, [.. steps]);

    /// <summary>The path of something inwards of this one.</summary>
    public TextPath To(params ReadOnlySpan<PathStep> steps) => new(Owner, [.. Steps, .. steps]);

    /// <summary>What this one stands in.</summary>
    public TextPath Up => new(Owner, Steps[..^1]);

    /// <inheritdoc/>
    public bool Equals(TextPath? other) => other is not null && Owner == other.Owner && Steps.AsSpan().SequenceEqual(other.Steps.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Owner, Steps.Length, Steps.IsEmpty ? default : Steps[^1]);

    /// <inheritdoc/>
    public override string ToString() => string.Join(" / ", Steps.Select(s => s.ToString()).Prepend(Owner).Where(k => k.Length > 0));

    /// <summary>For people, inner things first: <c>fit of back of case C</c>, <c>seams of layers 2 of top T</c>, <c>finish oil</c>.</summary>
    /// <param name="owner">What the owner is called; null for its key.</param>
    public string Words(string? owner = null)
    {
        var words = new List<string>();
        foreach (PathStep step in Steps)
        {
            // An item goes by its number in its list, and what has a name of its own by what it is and that.
            if (step.Key is null && words.Count > 0) words[^1] += $" {step}";
            else if (Owner.Length == 0 && words is [var section] && s_named.Contains(section)) words[0] = $"{Thing.WordOf(section)} {step}";
            else words.Add(step.ToString());
        }
        words.Reverse();
        string of = owner ?? Owner;
        if (of.Length > 0) words.Add(of);
        else if (words is [var only] && !only.Contains(' ', StringComparison.Ordinal)) words.Add("the piece");
        return words.Count == 0 ? "the piece" : string.Join(" of ", words);
    }

    /// <summary>The steps from the outermost value of a text; null where the owner is not there.</summary>
    internal ImmutableArray<PathStep>? From(YamlNode root) => Find(root, Owner) is { } owner ? [.. owner, .. Steps] : null;

    /// <summary>The steps to the map that an owner has; null where there is none.</summary>
    internal static ImmutableArray<PathStep>? Find(YamlNode root, string owner)
    {
        if (owner.Length == 0) return root is YamlMap ? [] : null;
        var steps = new List<PathStep>();
        if (Walk(root)) return [.. steps];
        foreach (string named in s_named)
            if (((root as YamlMap)?[named] as YamlMap)?[owner] is YamlMap) return [named, owner];
        return null;

        bool Walk(YamlNode node)
        {
            if (OwnerOf(node) == owner) return true;
            if (node is YamlMap map) return map.Entries.Any(e => Into(e.Key.Text, e.Value));
            return node is YamlList list && list.Items.Index().Any(i => Into(i.Index, i.Item));
        }

        bool Into(PathStep step, YamlNode node)
        {
            steps.Add(step);
            if (Walk(node)) return true;
            steps.RemoveAt(steps.Count - 1);
            return false;
        }
    }

    /// <summary>The permanent key of what a map describes; null for any other value.</summary>
    internal static string? OwnerOf(YamlNode node) => WordOf(node) is { } word ? ((YamlScalar)((YamlMap)node)[word]!).Text : null;

    /// <summary>What a map describes, such as <c>opening</c>; null for any other value.</summary>
    internal static string? WordOf(YamlNode node) => node is YamlMap map
        ? map.Entries.Where(e => e.Value is YamlScalar { Text.Length: > 0 } && s_owners.Contains(e.Key.Text)).Select(e => e.Key.Text).FirstOrDefault()
        : null;

    /// <summary>What stands at the end of some steps; null where they lead nowhere.</summary>
    internal static YamlNode? At(YamlNode root, ReadOnlySpan<PathStep> steps)
    {
        YamlNode? node = root;
        foreach (PathStep step in steps)
            node = step.Key is { } key ? (node as YamlMap)?[key] : node is YamlList list && step.Index >= 0 && step.Index < list.Items.Length ? list.Items[step.Index] : null;
        return node;
    }
}
