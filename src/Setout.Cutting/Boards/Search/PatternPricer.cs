namespace Setout.Cutting.Boards.Search;

/// <summary>
/// Finds the most valuable pattern for every slot, on a grid fit for the work. Where the whole numbers of the lengths are small
/// enough, one grid is exact. Else a coarse grid with parts rounded up gives patterns that hold, and one with parts rounded
/// down gives values that no pattern can pass; both stay valid, only weaker.
/// Sources (titles from memory): that the most valuable pattern is a knapsack: Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations
/// Research 9, 1961, and "Part II", 11, 1963. The two coarse grids are our own, no source.
/// What it cannot find: on a coarse grid, a pattern that fills its board to less than a step for each part; and the value that none can pass is then too high.
/// </summary>
internal sealed class PatternPricer
{
    private const long MostCells = 40_000_000, MostRoughCells = 4_000_000, QuickCells = 500_000;
    private const int MostCapacity = 1 << 20;

    private readonly PatternModel _model;
    private readonly SearchMeter _meter;
    private readonly Grid _full, _bound;
    private readonly Grid? _quick;

    public PatternPricer(PatternModel model, SearchMeter meter)
    {
        _model = model;
        _meter = meter;
        long longest = model.Slots.Max(s => s.Length);
        long bundles = model.Lengths.Select((l, t) => (long)(1 + Math.Log2(Math.Max(1, Math.Min(model.Demand[t], longest / l))))).Sum();
        IsExact = longest <= MostCapacity && bundles * longest <= MostCells;
        long finest = Math.Max(1_000, Math.Min(MostCapacity, MostRoughCells / bundles));
        long step = IsExact ? 1 : (longest + finest - 1) / finest;
        _full = new(model, step, up: true);
        _bound = IsExact ? _full : new(model, step, up: false);
        long coarse = Math.Max(1_000, QuickCells / bundles);
        if (longest / step > 2 * coarse) _quick = new(model, (longest + coarse - 1) / coarse, up: true);
    }

    /// <summary>True when the full grid loses nothing.</summary>
    public bool IsExact { get; }

    /// <summary>True when there is a coarse grid that is much quicker than the full one.</summary>
    public bool HasQuick => _quick is not null;

    /// <summary>Values as whole numbers, so scaled that no bin can hold 2^30; gives the scale.</summary>
    public double Round(double[] prices, int[] values)
    {
        double longest = _model.Slots.Max(s => s.Length), densest = 0;
        for (int t = 0; t < prices.Length; t++) densest = Math.Max(densest, prices[t] / _model.Lengths[t] * (longest + 1));
        // A grid that rounds parts down can hold twice as many.
        double scale = densest <= 0 ? 1 : (1 << (IsExact ? 29 : 28)) / densest;
        for (int t = 0; t < prices.Length; t++) values[t] = (int)Math.Max(0, Math.Floor(prices[t] * scale));
        return scale;
    }

    /// <summary>Runs a grid; its best fillings are then asked for.</summary>
    public void Run(int[] values, int[] counts, bool quick) => Run(quick && _quick is not null ? _quick : _full, values, counts);

    /// <summary>Value of the best pattern of a slot in the last run.</summary>
    public long Best(int slot) => _now!.Best(slot);

    /// <summary>The best pattern of a slot in the last run.</summary>
    public Pattern Take(int slot) => new(slot, _now!.Take(slot));

    /// <summary>For each slot a value that no pattern within these counts can pass.</summary>
    public long[] NoneAbove(int[] values, int[] counts)
    {
        Run(_bound, values, counts);
        return [.. Enumerable.Range(0, _model.Slots.Length).Select(Best)];
    }

    private Grid? _now;

    private void Run(Grid grid, int[] values, int[] counts)
    {
        _now = grid;
        grid.Table.Run(values, counts);
        _meter.Add((grid.Table.Cells / 64) + 20);
    }

    private sealed class Grid
    {
        private readonly int[] _slots;

        public Grid(PatternModel model, long step, bool up)
        {
            _slots = [.. model.Slots.Select(s => (int)(s.Length / step))];
            Table = new([.. model.Lengths.Select(l => (int)Math.Min(int.MaxValue, (up ? l + step - 1 : l) / step))], _slots.Max());
        }

        public BinKnapsack Table { get; }

        public long Best(int slot) => Table.Best(_slots[slot]);

        public (int Type, int Count)[] Take(int slot) => Table.Take(_slots[slot]);
    }
}
