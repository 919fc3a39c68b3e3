using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Measures.Text;

namespace Setout.Shop.Edits;

/// <summary>Names the unit of figures in fields, where the unit of the text and that of the person differ.</summary>
internal static partial class FieldUnits
{
    /// <summary>Fields with what stands in them at first in named units.</summary>
    public static ImmutableArray<EditField> Named(ImmutableArray<EditField> fields, LengthUnit bare) => [.. fields.Select(f => f with { Default = Named(f.Kind, f.Default, bare) })];

    /// <summary>What stands in a field, with its units named; what is no length stays as it is.</summary>
    /// <param name="kind">Of the field.</param>
    /// <param name="text">What stands in it.</param>
    /// <param name="bare">The unit of figures that name none.</param>
    public static string Named(FieldKind kind, string text, LengthUnit bare) => kind switch
    {
        FieldKind.Length or FieldKind.Share => NamedLength.Of(text, bare),
        FieldKind.Size => string.Join(" x ", Times().Split(text).Select(t => NamedLength.Of(t.Trim(), bare))),
        FieldKind.Lengths => string.Join(", ", text.Split(',').Select(t => NamedLength.Of(t.Trim(), bare))),
        _ => text,
    };

    /// <summary>Whether one of the figures in a field looks like one of the other unit: see <see cref="NamedLength.MayBeOther"/>.</summary>
    public static bool MayBeOther(FieldKind kind, string text, LengthUnit bare) => kind switch
    {
        FieldKind.Length or FieldKind.Share => NamedLength.MayBeOther(text, bare),
        FieldKind.Size => Times().Split(text).Any(t => NamedLength.MayBeOther(t.Trim(), bare)),
        FieldKind.Lengths => text.Split(',').Any(t => NamedLength.MayBeOther(t.Trim(), bare)),
        _ => false,
    };

    [GeneratedRegex("[xX\u00d7]")]
    private static partial Regex Times();
}
