namespace Setout.Cutting.Sheets.Bounds;

/// <summary>
/// The most that parts lying beside each other on one line can be worth: a bounded knapsack by dynamic programming over whole sizes, every
/// count at most as often as there are parts. Exact in whole numbers: bounds rest on it.
/// Sources (titles from memory): the lines of parts are the strips of Gilmore and Gomory, "Multistage cutting stock problems of two and more dimensions", Operations
/// Research 13, 1965; the bundles of 1, 2, 4 and so on are in Martello and Toth, "Knapsack Problems", 1990.
/// What it cannot see: whether the parts of a line can lie so on a sheet with others; and sizes are places in a table, so the caller has to choose a coarse enough step.
/// </summary>
internal sealed class LineKnapsack
{
    private readonly int[] _sizes;
    private readonly int _whole;
    private readonly long[] _best;
    private readonly int[] _slot; // for each split item: its type
    private readonly int[] _times; // and how many of it
    private readonly bool[][] _taken;

    /// <summary>A line with places for these parts.</summary>
    /// <param name="sizes">Sizes, above zero.</param>
    /// <param name="counts">How many of each, one or more.</param>
    /// <param name="whole">The longest line that is asked for.</param>
    public LineKnapsack(int[] sizes, int[] counts, int whole)
    {
        _sizes = sizes;
        _whole = whole;
        _best = new long[whole + 1];
        var slot = new List<int>();
        var times = new List<int>();
        for (int i = 0; i < sizes.Length; i++)
        {
            // 1, 2, 4 … and a rest: every count up to the most is a sum of some of them.
            int left = Math.Min(counts[i], whole / sizes[i]);
            for (int t = 1; left > 0; t *= 2)
            {
                int take = Math.Min(t, left);
                slot.Add(i);
                times.Add(take);
                left -= take;
            }
        }
        _slot = [.. slot];
        _times = [.. times];
        _taken = new bool[_slot.Length][];
        for (int k = 0; k < _slot.Length; k++) _taken[k] = new bool[whole + 1];
    }

    /// <summary>Cells worked through in one fill, for the count of work.</summary>
    public long Cells => (long)_slot.Length * (_whole + 1);

    /// <summary>Fills the table for these prices, zero or more.</summary>
    public void Fill(ReadOnlySpan<long> prices)
    {
        Array.Clear(_best);
        for (int k = 0; k < _slot.Length; k++)
        {
            bool[] taken = _taken[k];
            Array.Clear(taken);
            long price = prices[_slot[k]] * _times[k];
            if (price == 0) continue;
            int size = _sizes[_slot[k]] * _times[k];
            long[] best = _best;
            for (int x = _whole; x >= size; x--)
            {
                long with = best[x - size] + price;
                if (with <= best[x]) continue;
                best[x] = with;
                taken[x] = true;
            }
        }
    }

    /// <summary>The most a line of this length can be worth at the prices of the last fill.</summary>
    public long Best(int length) => length <= 0 ? 0 : _best[Math.Min(length, _whole)];

    /// <summary>The parts of a best line of this length: how many of each type.</summary>
    public int[] Line(int length)
    {
        var line = new int[_sizes.Length];
        int x = Math.Min(length, _whole);
        for (int k = _slot.Length - 1; k >= 0; k--)
        {
            if (x <= 0 || !_taken[k][x]) continue;
            line[_slot[k]] += _times[k];
            x -= _sizes[_slot[k]] * _times[k];
        }
        return line;
    }
}
