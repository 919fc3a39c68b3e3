using Setout.Core.Measures;
using Setout.Cutting.Bounds;

namespace Setout.Cutting.Boards;

/// <summary>
/// Lower bounds on money and boards. Kerf: a part and a trued board, each one kerf longer, turn any layout with kerf into one
/// without. For each size function every part counts its value and every board holds its own, and a covering knapsack over
/// the stock lengths remains; a board holds what its lanes and clear stretches hold together. The threshold functions give bound L2 of Martello and Toth 1990 (every part size as
/// threshold), the identity gives L1; the other families (see SizeFunction) can only raise it.
/// </summary>
public static class BoardBounds
{
    private const int MostThresholds = 400;

    /// <summary>The bound for all parts that fit some stock; null when all stock together is proven too little for them.</summary>
    public static LayoutBound? Of(BoardInstance instance)
    {
        BoardPart[] parts = [.. instance.Parts.Where(instance.CanBeLaid)];
        BoardStock[] stock = [.. instance.Stock.Where(s => s.Limit != 0)];
        if (parts.Length == 0) return new(Money.Zero, 0, "nothing to lay");
        long kerf = instance.Kerf.Ticks, whole = stock.Max(s => s.ClearStretches().Max(c => c.Extent.Ticks)) + kerf;
        long[][] bins = [.. stock.Select(s => s.ClearStretches().Select(c => c.Extent.Ticks + kerf).ToArray())];
        Money money = Money.Zero;
        int boards = 0;
        string method = "";
        foreach (SizeFunction f in SizeFunction.Family(whole, parts.Select(p => p.Length.Ticks + kerf), MostThresholds))
        {
            Int128 need = 0;
            foreach (BoardPart part in parts) need += (Int128)f.Of(part.Length.Ticks + kerf) * part.Count;
            Cover[] covers = [.. stock.Select((s, i) => new Cover(bins[i].Aggregate((Int128)0, (sum, b) => sum + f.Of(b)) * s.Lanes, s.Cost.Amount, s.Limit ?? int.MaxValue))];
            if (CoveringBound.FewestParts(need, covers) is not { } fewest) return null;
            boards = Math.Max(boards, fewest);
            if (CoveringBound.LeastMoney(need, covers) is not { } least) return null;
            if (method.Length > 0 && least <= money) continue;
            money = least;
            method = f.Name;
        }
        return new(MoneyStep.RoundUp(money, stock.Select(s => s.Cost)), boards, method);
    }
}
