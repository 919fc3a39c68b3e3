using Setout.Cutting.Sheets.Model;
using Setout.Cutting.Sheets.Patterns;

namespace Setout.Cutting.Sheets.Search;

/// <summary>Layouts made of patterns.</summary>
internal static class PatternLayouts
{
    /// <summary>Each pattern on a sheet of its own; parts that would lie too often are taken off.</summary>
    public static WorkLayout Of(SheetModel model, IEnumerable<(int Stock, PatternNode Pattern)> patterns)
    {
        var layout = new WorkLayout(model);
        foreach ((int stock, PatternNode pattern) in patterns) layout.AddLaid(new(model, stock, pattern));
        layout.TakeSurplus();
        layout.CloseEmpty();
        return layout;
    }

    /// <summary>
    /// The whole shares of a linear program's answer, each pattern that often, and what is left laid by the quick orders: the best of these.
    /// Source (title from memory): Waescher and Gau, "Heuristics for the integer one-dimensional cutting stock problem", OR Spektrum 18, 1996.
    /// </summary>
    public static WorkLayout Rounded(SheetModel model, IReadOnlyList<(int Stock, PatternNode Pattern, double Share)> patterns, SearchMeter meter)
    {
        WorkLayout? best = null;
        foreach (double lift in (double[])[1e-6, 0.3, 0.5])
            foreach (int[] order in PartOrders.Of(model))
            {
                if (best is not null && meter.Over) return best;
                WorkLayout layout = Of(model, patterns.SelectMany(p => Enumerable.Repeat((p.Stock, p.Pattern), (int)Math.Floor(p.Share + lift))));
                layout.Fill(order, FirstCut.Either, Goal.None, useBlanks: true, -1, null, meter, mayLeave: best is not null);
                layout.CloseEmpty();
                if (best is null || (layout.PoolArea, layout.Cost, layout.Sheets.Count).CompareTo((best.PoolArea, best.Cost, best.Sheets.Count)) < 0) best = layout;
            }
        return best!;
    }
}
