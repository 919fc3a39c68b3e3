using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Search;

/// <summary>Orders in which parts are laid: large first, by several meanings of large.</summary>
internal static class PartOrders
{
    /// <summary>The orders, ties broken by the other side and then by the caller's order.</summary>
    public static int[][] Of(SheetModel model)
    {
        PartType[] types = model.Types;
        int[] By(Func<PartType, double> first, Func<PartType, double> second) =>
            [.. Enumerable.Range(0, types.Length).OrderByDescending(t => first(types[t])).ThenByDescending(t => second(types[t]))];
        return
        [
            By(t => t.Across, t => t.Along),
            By(t => t.Along, t => t.Across),
            By(t => t.Area, t => t.Across),
            By(t => Math.Max(t.Along, t.Across), t => Math.Min(t.Along, t.Across)),
            By(t => Math.Min(t.Along, t.Across), t => Math.Max(t.Along, t.Across)),
            By(t => t.Along + t.Across, t => t.Area),
        ];
    }

    /// <summary>A random order.</summary>
    public static int[] Shuffled(int types, SeededRandom random)
    {
        int[] order = [.. Enumerable.Range(0, types)];
        for (int i = types - 1; i > 0; i--)
        {
            int j = random.Below(i + 1);
            (order[i], order[j]) = (order[j], order[i]);
        }
        return order;
    }
}
