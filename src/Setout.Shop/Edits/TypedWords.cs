using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Finds what was typed that a finding is about.</summary>
internal static class TypedWords
{
    /// <summary>The value that stands at a place of a text, whole, also where the place is a sign within it; that of the key where a key stands there. Empty where there is none.</summary>
    /// <param name="text">A text in YAML.</param>
    /// <param name="place">Of a finding.</param>
    public static string At(string text, Place place) => place.IsKnown && YamlTree.Read(text).Value is { } root ? At(root, place) ?? "" : "";

    private static string? At(YamlNode? node, Place place) => node switch
    {
        YamlScalar scalar => IsIn(scalar, place) ? scalar.Text : null,
        YamlMap map => map.Entries.Select(e => e.Value is YamlScalar value && IsIn(e.Key, place) ? value.Text : At(e.Value, place)).FirstOrDefault(t => t is not null),
        YamlList list => list.Items.Select(i => At(i, place)).FirstOrDefault(t => t is not null),
        _ => null,
    };

    private static bool IsIn(YamlScalar scalar, Place place) => scalar.Place.Line == place.Line && place.Column >= scalar.Place.Column && place.Column <= scalar.Place.Column + scalar.Raw.Length;

    /// <summary>The field that some words were typed into, by name; empty where there is none, or more than one and not each of them is wrong.</summary>
    /// <param name="offer">With the fields.</param>
    /// <param name="typed">The words.</param>
    /// <param name="values">What was typed, by the names of the fields.</param>
    /// <param name="isWrongAnywhere">True for what cannot be read at all: then the first field that it stands in is to blame as well as any.</param>
    public static string FieldOf(Offer offer, string typed, IReadOnlyDictionary<string, string> values, bool isWrongAnywhere = false)
    {
        if (typed.Length == 0) return "";
        string[] fields = [.. offer.Fields.Where(f => (values.TryGetValue(f.Name, out string? value) ? value : f.Default).Trim() is { Length: > 0 } there && (there == typed || IsAmong(f, there, typed) || (offer.Bare is { } unit && FieldUnits.Named(f.Kind, there, unit) == typed))).Select(f => f.Name)];
        return fields.Length == 1 || (isWrongAnywhere && fields.Length > 1) ? fields[0] : "";
    }

    // Where several are typed apart by commas, one of them may be to blame.
    private static bool IsAmong(EditField field, string there, string typed) =>
        field.Kind is FieldKind.Words or FieldKind.Lengths && there.Contains(',', StringComparison.Ordinal) && there.Split(',', StringSplitOptions.TrimEntries).Contains(typed);
}
