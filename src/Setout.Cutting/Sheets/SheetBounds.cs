using Setout.Core.Measures;
using Setout.Cutting.Bounds;

namespace Setout.Cutting.Sheets;

/// <summary>
/// Lower bounds on money and sheets. Kerf: a part with one kerf added to both sides and a trued sheet with one kerf added to both
/// sides turn any layout with kerf into one without, so bounds without kerf hold. For each pair of size functions, one a
/// direction, every part counts the product of its values and every sheet holds the product of its own (Fekete and Schepers,
/// "A general framework for bounds for higher-dimensional orthogonal packing problems", Mathematical Methods of Operations
/// Research 60, 2004); the pair of identities is the area bound. A part that may be turned counts the smaller of its
/// two products. What is left is a covering knapsack over the kinds of stock. The bounds hold even for layouts that no saw could cut,
/// so they may be below what edge-to-edge cuts can reach. A slack makes every sheet smaller by itself; a figure group counts as its block,
/// because nothing else may be cut from that.
/// </summary>
public static class SheetBounds
{
    // Thresholds a direction; fewer for very large orders, where the area decides and time would be lost.
    private static int MostThresholds(int parts) => Math.Clamp(20_000 / parts, 6, 28);

    /// <summary>The bound for all parts that fit some stock; null when all stock together is proven too little for them.</summary>
    public static LayoutBound? Of(SheetInstance instance)
    {
        SheetPart[] parts = [.. instance.Units().Select(u => u.Part)];
        SheetStock[] stock = [.. instance.Stock.Where(s => s.Limit != 0)];
        if (parts.Length == 0) return new(Money.Zero, 0, "nothing to lay");
        long kerf = instance.Kerf.Ticks;
        long wholeAlong = stock.Max(s => instance.UsableAlong(s).Ticks) + kerf, wholeAcross = stock.Max(s => instance.UsableAcross(s).Ticks) + kerf;
        Turn[][] turns = [.. parts.Select(p => Enum.GetValues<Turn>().Where(t => stock.Any(s => instance.Fits(p, t, s))).ToArray())];
        SizeTable[] along = Tables(wholeAlong, kerf, parts, turns, [.. stock.Select(instance.UsableAlong)], lying => lying.Along);
        SizeTable[] across = Tables(wholeAcross, kerf, parts, turns, [.. stock.Select(instance.UsableAcross)], lying => lying.Across);

        Money money = Money.Zero;
        int sheets = 0;
        string method = "";
        var covers = new Cover[stock.Length];
        foreach (SizeTable a in along)
            foreach (SizeTable b in across)
            {
                Int128 need = 0;
                for (int i = 0; i < parts.Length; i++)
                    need += Int128.Min((Int128)a.Upright[i] * b.Upright[i], (Int128)a.Turned[i] * b.Turned[i]) * parts[i].Count;
                for (int s = 0; s < stock.Length; s++)
                    covers[s] = new((Int128)a.Stock[s] * b.Stock[s], stock[s].Cost.Amount, stock[s].Limit ?? int.MaxValue);
                if (method.Length > 0 && CannotRaise(need, covers, money, sheets)) continue;
                if (CoveringBound.FewestParts(need, covers) is not { } fewest) return null;
                sheets = Math.Max(sheets, fewest);
                if (CoveringBound.LeastMoney(need, covers) is not { } least) return null;
                if (method.Length > 0 && least <= money) continue;
                money = least;
                method = $"{a.Name} along, {b.Name} across";
            }
        return new(MoneyStep.RoundUp(money, stock.Select(s => s.Cost)), sheets, method);
    }

    // One kind of stock alone, as many as needed, is a layout of the covering knapsack: the bound cannot be above it.
    private static bool CannotRaise(Int128 need, Cover[] covers, Money money, int sheets)
    {
        bool cheap = false, few = false;
        foreach (Cover cover in covers)
        {
            if (cover.Limit < int.MaxValue || cover.Capacity <= 0) continue;
            Int128 count = (need + cover.Capacity - 1) / cover.Capacity;
            if (count <= sheets) few = true;
            if (count <= int.MaxValue && cover.Cost * (int)count <= money.Amount) cheap = true;
        }
        return cheap && few;
    }

    private sealed record SizeTable(string Name, long[] Upright, long[] Turned, long[] Stock);

    private static SizeTable[] Tables(long whole, long kerf, SheetPart[] parts, Turn[][] turns, Length[] stock, Func<(Length Along, Length Across), Length> side)
    {
        long Size(int part, Turn turn) => side(parts[part].Lying(turn)).Ticks + kerf;
        IEnumerable<long> sizes = Enumerable.Range(0, parts.Length).SelectMany(i => turns[i].Select(t => Size(i, t)));
        return [.. SizeFunction.Family(whole, sizes, MostThresholds(parts.Length)).Select(f => new SizeTable(
            f.Name,
            // A way of lying that fits no stock is replaced by the one that does, so the smaller product is always that of a real one.
            [.. parts.Select((_, i) => f.Of(Size(i, turns[i][0])))],
            [.. parts.Select((_, i) => f.Of(Size(i, turns[i][^1])))],
            [.. stock.Select(s => f.Of(s.Ticks + kerf))]))];
    }
}
