using System.Collections.Immutable;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>The layouts of sheets that a shop already follows, from an earlier plan of the same piece.</summary>
/// <param name="ByMaterial">By the name of the material.</param>
/// <param name="Fingerprint">Changes when any of the layouts does; empty for none.</param>
public sealed record EarlierLayouts(ImmutableSortedDictionary<string, SheetLayout> ByMaterial, string Fingerprint)
{
    /// <summary>None.</summary>
    public static EarlierLayouts None { get; } = new(ImmutableSortedDictionary.Create<string, SheetLayout>(StringComparer.Ordinal), "");

    /// <summary>True when there is nothing to keep to.</summary>
    public bool IsEmpty => ByMaterial.IsEmpty;

    /// <summary>The layout of a material, or null.</summary>
    public SheetLayout? Of(string material) => ByMaterial.GetValueOrDefault(material);
}
