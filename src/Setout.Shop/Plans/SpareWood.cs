using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>What is kept of the sheets and boards of a layout, by the stock they are, as the buying list says it.</summary>
internal static class SpareWood
{
    // More than this is told by its number.
    private const int MostTold = 3;

    /// <summary>Of sheets: the id of the stock to the sizes kept, largest first.</summary>
    public static ILookup<string, string> Of(SheetPlan plan, LengthFormat format) => plan.Outcome.Layout.Sheets
        .SelectMany(s => SheetFace.Flatten(plan.Instance, s).Where(p => p.Kind == FaceKind.Keep).Select(p => (s.StockId, p.Place)))
        .OrderByDescending(k => k.Place.Along * k.Place.Across).ToLookup(k => k.StockId, k => $"{format.Bare.Text(k.Place.Along)} x {format.Text(k.Place.Across)}");

    /// <summary>Of boards: the id of the stock to the lengths kept, longest first.</summary>
    public static ILookup<string, string> Of(BoardPlan plan, LengthFormat format) => plan.Outcome.Layout.Boards
        .SelectMany(b => b.Stretches.Where(s => s.Use == LeftOverUse.Keep).Select(s => (b.StockId, s.LeftOver)))
        .OrderByDescending(k => k.LeftOver).ToLookup(k => k.StockId, k => format.Text(k.LeftOver));

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
