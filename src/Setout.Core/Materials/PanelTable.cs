using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Materials;

/// <summary>What is published about a kind of sheet with a label.</summary>
/// <param name="Kind">Such as <c>hardwood plywood</c>.</param>
/// <param name="Label">What the trade calls it, such as <c>3/4</c> or <c>18 mm</c>: a label, not a size.</param>
/// <param name="Default">The thickness that stands in until somebody reads the sheet.</param>
/// <param name="Least">The published lower limit, if there is one.</param>
/// <param name="Most">The published upper limit, if there is one.</param>
/// <param name="DefaultSource">Where the default comes from.</param>
/// <param name="LimitsSource">Where the limits come from.</param>
/// <param name="Basis">Basis code of the limits: see Data/README.md.</param>
public sealed record PanelFact(
    string Kind, string Label, ExactLength Default, ExactLength? Least, ExactLength? Most, string DefaultSource, string LimitsSource, string Basis);

/// <summary>A usual size of sheet.</summary>
/// <param name="Kind">Such as <c>mdf</c>.</param>
/// <param name="Label">Such as <c>4x8 ft</c>.</param>
/// <param name="Along">Along the grain of the face.</param>
/// <param name="Across">Across it.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record SheetSize(string Kind, string Label, Length Along, Length Across, string Source);

/// <summary>Published and customary facts of sheet goods.</summary>
public static class PanelTable
{
    private static readonly Lazy<ImmutableArray<PanelFact>> s_panels = new(() =>
    [
        .. CsvFacts.Read("panels.csv").Select(r => new PanelFact(r["kind"], r["label"], CsvFacts.Length(r["default"]),
            Millimetres(r["least_mm"]), Millimetres(r["most_mm"]), r["default_source"], $"{r["standard"]}: {r["source"]}", r["basis"])),
    ]);

    private static readonly Lazy<ImmutableArray<SheetSize>> s_sizes = new(() =>
    [
        .. CsvFacts.Read("sheet-sizes.csv").Select(r => new SheetSize(r["kind"], r["label"],
            CsvFacts.Length(r["along"]).ToLength(), CsvFacts.Length(r["across"]).ToLength(), r["source"])),
    ]);

    private static readonly Lazy<ImmutableDictionary<string, (double Least, double Most, string Source)>> s_densities = new(() =>
        CsvFacts.Read("densities.csv").ToImmutableDictionary(r => r["kind"], r => (double.Parse(r["least_kg_m3"]), double.Parse(r["most_kg_m3"]), r["source"])));

    /// <summary>All rows.</summary>
    public static ImmutableArray<PanelFact> All => s_panels.Value;

    /// <summary>The kinds of sheet there are facts for.</summary>
    public static IEnumerable<string> Kinds => All.Select(p => p.Kind).Distinct();

    /// <summary>The row of a kind and label, or null.</summary>
    public static PanelFact? Find(string kind, string label) =>
        All.FirstOrDefault(p => p.Kind == kind && Same(p.Label, label));

    /// <summary>The labels known for a kind.</summary>
    public static IEnumerable<string> LabelsOf(string kind) => All.Where(p => p.Kind == kind).Select(p => p.Label);

    /// <summary>The usual sheet sizes of a kind.</summary>
    public static IEnumerable<SheetSize> SizesOf(string kind) => s_sizes.Value.Where(s => s.Kind == kind);

    /// <summary>Kilograms a cubic metre of a kind, as the middle of its published range; null for a kind without one.</summary>
    public static Estimate? DensityOf(string kind) => s_densities.Value.TryGetValue(kind, out (double Least, double Most, string Source) density)
        ? new Estimate((density.Least + density.Most) / 2, (density.Most - density.Least) / 2)
        : null;

    /// <summary>Where the range of densities of a kind is from; null for a kind without one.</summary>
    public static string? DensitySourceOf(string kind) => s_densities.Value.TryGetValue(kind, out (double Least, double Most, string Source) density) ? density.Source : null;

    /// <summary>The mass of so much sheet, from the range of densities of its kind; null for a kind without one.</summary>
    public static Mass? MassOf(string kind, Area area, ExactLength thickness)
    {
        if (DensityOf(kind) is not { } density) return null;
        double cubicMetres = area.ApproximateSquareMillimetres * thickness.ApproximateMillimetres * 1e-9;
        return new(new Estimate(cubicMetres * density.Value, cubicMetres * density.Error));
    }

    private static ExactLength? Millimetres(string text) => text.Length == 0 ? null : CsvFacts.Length(text + " mm");

    // "3/4 in", "3/4\"" and "3/4" are the same label.
    private static bool Same(string a, string b) => Plain(a) == Plain(b);

    private static string Plain(string label) =>
        label.Replace("in", "", StringComparison.Ordinal).Replace("\"", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal);
}
