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

    /// <summary>The same without sheets that are parted: what is left of them is other wood by now.</summary>
    /// <param name="parted">The material and which sheet of its layout, from 0.</param>
    public EarlierLayouts Without(ImmutableHashSet<(string Material, int Sheet)> parted) =>
        this with { ByMaterial = ByMaterial.ToImmutableSortedDictionary(m => m.Key, m => m.Value with { Sheets = [.. m.Value.Sheets.Where((_, i) => !parted.Contains((m.Key, i)))] }, StringComparer.Ordinal) };

    /// <summary>The layout of a material, or null.</summary>
    public SheetLayout? Of(string material) => ByMaterial.GetValueOrDefault(material);
}
