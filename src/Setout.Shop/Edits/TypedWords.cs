using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Words that a finding is about, as they stand in a text.</summary>
/// <param name="Words">Word for word; empty where it is about nothing that stands alone.</param>
/// <param name="Key">The key that they stand under; empty where that is not known.</param>
internal readonly record struct TypedAt(string Words, string Key);

/// <summary>Finds what was typed that findings are about.</summary>
internal static class TypedWords
{
    /// <summary>For each finding the value that stands at its place of a text, whole, also where the place is a sign within it; that of the key where a key stands there.</summary>
    /// <param name="text">A text in YAML.</param>
    /// <param name="findings">With places of that text.</param>
    public static ImmutableArray<TypedAt> At(string text, ImmutableArray<Finding> findings) =>
        YamlTree.Read(text).Value is { } root ? [.. findings.Select(f => f.Place.IsKnown ? At(root, "", f.Place) ?? default : default)] : [];

    private static TypedAt? At(YamlNode? node, string key, Place place) => node switch
    {
        YamlScalar scalar => IsIn(scalar, place) ? new(scalar.Text, key) : null,
        YamlMap map => map.Entries.Select(e => e.Value is YamlScalar value && IsIn(e.Key, place) ? new(value.Text, e.Key.Text) : At(e.Value, e.Key.Text, place)).FirstOrDefault(t => t is not null),
        YamlList list => list.Items.Select(i => At(i, key, place)).FirstOrDefault(t => t is not null),
        _ => null,
    };

    private static bool IsIn(YamlScalar scalar, Place place) => scalar.Place.Line == place.Line && place.Column >= scalar.Place.Column && place.Column <= scalar.Place.Column + scalar.Raw.Length;
}
