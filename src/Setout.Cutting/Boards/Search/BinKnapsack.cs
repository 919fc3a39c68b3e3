using System.Numerics;

namespace Setout.Cutting.Boards.Search;

/// <summary>
/// The most valuable filling of a bin, for every bin length up to the longest at once: dynamic programming over a bounded knapsack in whole
/// numbers, so that its answer is exact. A type that may be taken often is split into bundles of 1, 2, 4 and so on. Sources: Bellman's
/// recursion; the bundles as in Martello and Toth, "Knapsack Problems", 1990. (Titles from memory.)
/// What it cannot do: lengths are indices, so a fine grid costs memory and time; the caller chooses the grid.
/// </summary>
/// <param name="weights">Length of each type on the grid; zero or more.</param>
/// <param name="capacity">The longest bin.</param>
internal sealed class BinKnapsack(int[] weights, int capacity)
{
    private const int KeptCells = 6_000_000;

    private readonly List<(int Type, int Count, int Weight, int Value)> _bundles = [];
    private readonly List<int[]> _kept = [new int[capacity + 1]];
    private readonly int[][] _scratch = [[], []];
    private int[][] _block = [];
    private int _keepEvery = 1;
    private int[] _last = [];

    public int Capacity { get; } = capacity;

    /// <summary>Steps of the last run, in cells.</summary>
    public long Cells { get; private set; }

    /// <summary>Works out every bin length.</summary>
    /// <param name="values">Of one of each type; types of value zero or less are left out. All that fit together stay below 2^31.</param>
    /// <param name="counts">How many of each type there are.</param>
    public void Run(int[] values, int[] counts)
    {
        _bundles.Clear();
        for (int t = 0; t < weights.Length; t++)
        {
            if (values[t] <= 0 || weights[t] > Capacity) continue;
            int most = weights[t] == 0 ? counts[t] : Math.Min(counts[t], Capacity / weights[t]);
            for (int bundle = 1; most > 0; bundle *= 2)
            {
                int take = Math.Min(bundle, most);
                _bundles.Add((t, take, take * weights[t], take * values[t]));
                most -= take;
            }
        }
        Cells = (long)(_bundles.Count + 1) * (Capacity + 1);
        _keepEvery = Cells <= KeptCells ? 1 : (int)Math.Ceiling(Math.Sqrt(_bundles.Count));
        int[] from = _kept[0];
        for (int i = 0; i < _bundles.Count; i++)
        {
            int[] to = (i + 1) % _keepEvery == 0 ? Kept((i + 1) / _keepEvery) : Scratch(i % 2);
            Layer(from, to, _bundles[i].Weight, _bundles[i].Value);
            from = to;
        }
        _last = from;
    }

    /// <summary>The most value in a bin of this length.</summary>
    public int Best(int length) => _last[Math.Min(length, Capacity)];

    /// <summary>Type and count of a filling of that value, in the order of the types.</summary>
    public (int Type, int Count)[] Take(int length)
    {
        int at = Math.Min(length, Capacity);
        var counts = new SortedDictionary<int, int>();
        for (int block = _bundles.Count == 0 ? -1 : (_bundles.Count - 1) / _keepEvery; block >= 0; block--)
        {
            int first = block * _keepEvery, end = Math.Min(_bundles.Count, first + _keepEvery);
            if (_keepEvery > 1) Recall(first, end);
            for (int i = end - 1; i >= first; i--)
            {
                int[] before = _keepEvery == 1 ? _kept[i] : i == first ? _kept[block] : _block[i - first - 1];
                int[] after = _keepEvery == 1 ? _kept[i + 1] : _block[i - first];
                if (before[at] == after[at]) continue;
                (int type, int count, int weight, int _) = _bundles[i];
                counts[type] = counts.GetValueOrDefault(type) + count;
                at -= weight;
            }
        }
        return [.. counts.Select(c => (c.Key, c.Value))];
    }

    private void Recall(int first, int end)
    {
        if (_block.Length < end - first) _block = [.. Enumerable.Range(0, _keepEvery).Select(_ => new int[Capacity + 1])];
        int[] from = _kept[first / _keepEvery];
        for (int i = first; i < end; i++)
        {
            Layer(from, _block[i - first], _bundles[i].Weight, _bundles[i].Value);
            from = _block[i - first];
        }
    }

    private int[] Kept(int index)
    {
        while (_kept.Count <= index) _kept.Add(new int[Capacity + 1]);
        return _kept[index];
    }

    private int[] Scratch(int index)
    {
        if (_scratch[index].Length == 0) _scratch[index] = new int[Capacity + 1];
        return _scratch[index];
    }

    /// <summary>What one more bundle makes of every length.</summary>
    public static void Layer(int[] from, int[] to, int weight, int value)
    {
        int at = Math.Min(weight, to.Length);
        Array.Copy(from, to, at);
        var add = new Vector<int>(value);
        for (; at <= to.Length - Vector<int>.Count; at += Vector<int>.Count)
            Vector.Max(new Vector<int>(from, at), new Vector<int>(from, at - weight) + add).CopyTo(to, at);
        for (; at < to.Length; at++) to[at] = Math.Max(from[at], from[at - weight] + value);
    }
}
