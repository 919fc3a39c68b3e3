using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Runs;

namespace Setout.Shop.Plans;

/// <summary>What is kept of the sheets and boards of a layout, by the stock they are, as the buying list says it.</summary>
internal static class SpareWood
{
    // More than this is told by its number.
    private const int MostTold = 3;

    /// <summary>Of sheets: the id of the stock to the sizes kept, largest first.</summary>
    /// <param name="plan">The layout.</param>
    /// <param name="runs">The runs, which settle the size of what they leave.</param>
    /// <param name="material">Its index in the runs.</param>
    /// <param name="format">How figures are written.</param>
    public static ILookup<string, string> Of(SheetPlan plan, RunPlan runs, int material, LengthFormat format) => plan.Outcome.Layout.Sheets
        .SelectMany((s, i) => Left(runs, material, i) is { Length: > 0 } left
            ? left.Select(b => (s.StockId, b.Along, b.Across, Raw: RawSides.Words(b)))
            : SheetFace.Flatten(plan.Instance, s).Where(p => p.Kind == FaceKind.Keep).Select(p => (s.StockId, p.Place.Along, p.Place.Across, Raw: "")))
        .OrderByDescending(k => k.Along * k.Across).ToLookup(k => k.StockId, k => $"{format.Bare.Text(k.Along)} x {format.Text(k.Across)}{Aside(k.Raw)}");

    /// <summary>Of boards: the id of the stock to the lengths kept, longest first.</summary>
    /// <param name="plan">The layout.</param>
    /// <param name="runs">The runs, which settle the size of what they leave.</param>
    /// <param name="material">Its index in the runs.</param>
    /// <param name="format">How figures are written.</param>
    public static ILookup<string, string> Of(BoardPlan plan, RunPlan runs, int material, LengthFormat format) => plan.Outcome.Layout.Boards
        .SelectMany((s, i) => Left(runs, material, i) is { Length: > 0 } left
            ? left.Select(b => (s.StockId, Long: b.Along, Raw: RawSides.Words(b)))
            : s.Stretches.Where(t => t.Use == LeftOverUse.Keep).Select(t => (s.StockId, Long: t.LeftOver, Raw: "")))
        .OrderByDescending(k => k.Long).ToLookup(k => k.StockId, k => $"{format.Text(k.Long)}{Aside(k.Raw)}");

    // What the runs leave has its raw sides still on; wood that no run cuts yet is as the layout has it.
    private static RunBlank[] Left(RunPlan runs, int material, int stock) => [.. runs.Blanks.Where(b => b.Material == material && b.Stock == stock && b.Use == BlankUse.Keep)];

    private static string Aside(string raw) => raw.Length > 0 ? $" ({raw})" : "";

    /// <summary>In words; empty for nothing.</summary>
    public static string Words(IEnumerable<string> kept)
    {
        (string Size, int Count)[] sizes = [.. kept.CountBy(k => k).Select(k => (k.Key, k.Value))];
        if (sizes.Length == 0) return "";
        string told = string.Join(", ", sizes.Take(MostTold).Select(s => s.Count == 1 ? s.Size : $"{s.Count} of {s.Size}"));
        int more = sizes.Skip(MostTold).Sum(s => s.Count);
        return $"leaves {told}{(more > 0 ? $" and {more} smaller" : "")} to keep";
    }
}
