using Setout.Cutting.Sheets.Model;
using Setout.Cutting.Sheets.Patterns;

namespace Setout.Cutting.Sheets.Search;

/// <summary>Layouts made of patterns.</summary>
internal static class PatternLayouts
{
    /// <summary>Each pattern on a sheet of its own as long as there is stock; parts that would lie too often are taken off.</summary>
    public static WorkLayout Of(SheetModel model, IEnumerable<(int Stock, PatternNode Pattern)> patterns)
    {
        var layout = new WorkLayout(model);
        foreach ((int stock, PatternNode pattern) in patterns)
            if (layout.Left(stock) > 0) layout.AddLaid(new(model, stock, pattern));
        layout.TakeSurplus();
        layout.CloseEmpty();
        return layout;
    }

    /// <summary>A sheet of a search as a pattern.</summary>
    public static PatternNode PatternOf(SheetModel model, Node node) => node.Kind switch
    {
        NodeKind.Part when model.Types[node.Type] is var type =>
            PatternNode.Of(node.Turned ? new(node.Type, (int)type.Across, (int)type.Along, true) : new(node.Type, (int)type.Along, (int)type.Across, false)),
        NodeKind.Along or NodeKind.Across => node.Slices!.Aggregate(PatternNode.Nothing, (all, slice) => PatternNode.Join(node.Kind == NodeKind.Along, all, PatternOf(model, slice))),
        _ => PatternNode.Nothing,
    };

    /// <summary>The first of these patterns, and what they do not hold laid by the quick orders: the best over how many of the last are left away.</summary>
    public static WorkLayout Begun(SheetModel model, IReadOnlyList<(int Stock, PatternNode Pattern)> patterns, SearchMeter meter)
    {
        WorkLayout? best = null;
        for (int away = 0; away <= Math.Min(MostAway, patterns.Count); away++)
            foreach (int[] order in PartOrders.Of(model))
            {
                if (best is not null && meter.Over) return best;
                Keep(ref best, Filled(model, patterns.Take(patterns.Count - away), order, meter, mayLeave: true));
            }
        return best!;
    }

    private const int MostAway = 4;

    private static WorkLayout Filled(SheetModel model, IEnumerable<(int Stock, PatternNode Pattern)> patterns, int[] order, SearchMeter meter, bool mayLeave)
    {
        WorkLayout layout = Of(model, patterns);
        layout.Fill(order, FirstCut.Either, Goal.None, useBlanks: true, -1, null, meter, mayLeave);
        layout.CloseEmpty();
        return layout;
    }

    private static void Keep(ref WorkLayout? best, WorkLayout layout)
    {
        if (best is null || (layout.PoolArea, layout.Cost, layout.Sheets.Count).CompareTo((best.PoolArea, best.Cost, best.Sheets.Count)) < 0) best = layout;
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
                Keep(ref best, Filled(model, patterns.SelectMany(p => Enumerable.Repeat((p.Stock, p.Pattern), (int)Math.Floor(p.Share + lift))), order, meter, mayLeave: best is not null));
            }
        return best!;
    }
}
