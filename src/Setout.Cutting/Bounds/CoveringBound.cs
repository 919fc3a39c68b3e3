using Setout.Core.Measures;

namespace Setout.Cutting.Bounds;

/// <summary>A stock as a bound sees it: how much it holds, what it costs, how many there are.</summary>
/// <param name="Capacity">Zero or more, in the measure of the bound.</param>
/// <param name="Cost">Zero or more.</param>
/// <param name="Limit">How many there are.</param>
internal readonly record struct Cover(Int128 Capacity, decimal Cost, int Limit);

/// <summary>
/// The least money, and the fewest sheets or boards, whose capacities add up to a need: an integer covering knapsack. Money
/// is found by depth-first branch and bound over the kinds of stock, cheapest per capacity first; when that takes too long its linear
/// relaxation (fill up by price, the last in part) is given instead, which is weaker but as valid.
/// Sources (titles from memory): the relaxation is Dantzig's, "Discrete-variable extremum problems", Operations Research 5, 1957; the depth-first search that of Horowitz and
/// Sahni, "Computing partitions with applications to the knapsack problem", Journal of the ACM 21, 1974, turned from packing to covering.
/// What it cannot see: that a part lies on one sheet or board whole. It knows sums of capacity alone.
/// </summary>
internal static class CoveringBound
{
    private const int MostNodes = 5_000;

    /// <summary>The fewest sheets or boards that hold the need, or null when all together hold less.</summary>
    public static int? FewestParts(Int128 need, IEnumerable<Cover> stock)
    {
        int slices = 0;
        foreach (Cover cover in stock.Where(c => c.Capacity > 0).OrderByDescending(c => c.Capacity))
        {
            if (need <= 0) break;
            Int128 wanted = Slices(need, cover.Capacity);
            if (wanted <= cover.Limit) return checked(slices + (int)Int128.Min(wanted, int.MaxValue - slices));
            slices += cover.Limit;
            need -= cover.Capacity * cover.Limit;
        }
        return need <= 0 ? slices : null;
    }

    /// <summary>The least money for stock that holds the need, or null when all together hold less.</summary>
    public static Money? LeastMoney(Int128 need, IEnumerable<Cover> stock)
    {
        Cover[] usable = [.. stock.Where(c => c.Capacity > 0 && c.Limit > 0)];
        foreach (Cover free in usable.Where(c => c.Cost == 0))
            need -= free.Limit == int.MaxValue ? Int128.Max(need, 0) : free.Capacity * free.Limit;
        if (need <= 0) return Money.Zero;
        Cover[] paid = [.. usable.Where(c => c.Cost > 0).OrderBy(c => c.Cost / (decimal)c.Capacity).ThenByDescending(c => c.Capacity)];
        decimal relaxed = Relaxed(need, paid, 0);
        if (relaxed == decimal.MaxValue) return null;
        decimal best = decimal.MaxValue;
        int nodes = 0;
        Branch(need, paid, 0, 0, ref best, ref nodes);
        return new(nodes > MostNodes ? relaxed : best);
    }

    private static Int128 Slices(Int128 need, Int128 capacity) => (need + capacity - 1) / capacity;

    private static void Branch(Int128 need, Cover[] paid, int from, decimal spent, ref decimal best, ref int nodes)
    {
        if (need <= 0)
        {
            best = Math.Min(best, spent);
            return;
        }
        if (++nodes > MostNodes || from == paid.Length) return;
        decimal rest = Relaxed(need, paid, from);
        if (rest == decimal.MaxValue || spent + rest >= best) return;
        Cover cover = paid[from];
        int most = (int)Int128.Min(Slices(need, cover.Capacity), cover.Limit);
        for (int count = most; count >= 0 && nodes <= MostNodes; count--)
            Branch(need - (cover.Capacity * count), paid, from + 1, spent + (cover.Cost * count), ref best, ref nodes);
    }

    // Never above the true least money: the quotient is cut off at eight decimals.
    private static decimal Relaxed(Int128 need, Cover[] paid, int from)
    {
        decimal money = 0;
        for (int i = from; i < paid.Length; i++)
        {
            Int128 wanted = Slices(need, paid[i].Capacity);
            if (wanted <= paid[i].Limit)
            {
                decimal share = (decimal)((double)need / (double)paid[i].Capacity * (1 - 1e-12));
                return money + (Math.Floor(paid[i].Cost * share * 100_000_000m) / 100_000_000m);
            }
            money += paid[i].Cost * paid[i].Limit;
            need -= paid[i].Capacity * paid[i].Limit;
        }
        return decimal.MaxValue;
    }
}
