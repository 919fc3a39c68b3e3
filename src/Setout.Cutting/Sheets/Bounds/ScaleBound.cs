// Over 200 lines: the linear program of one direction and what is made of it belong together.
using Setout.Core.Measures;
using Setout.Cutting.Bounds;
using Setout.Cutting.Programs;
using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Bounds;

/// <summary>
/// Bound by two scales. A scale gives each part a value for one direction and each stock a capacity such that parts that fit
/// beside each other on a line across the stock never have more value than its capacity. Then the products of the values in the two
/// directions count against the products of the capacities, whether the layout can be sawn or not. For a fixed scale of one direction the
/// best scale of the other is the dual answer of a linear program over the lines of parts that fit: so the two are improved in turn. Prices are rounded down to whole
/// numbers and the capacities are worked out for those by an exact knapsack in which no part lies more often than there are of it, so nothing
/// rests on the library's arithmetic. Sizes are rounded down to a coarse grid where they have no common step: what fits still fits.
/// Sources (titles from memory): Fekete and Schepers, "A general framework for bounds for higher-dimensional orthogonal packing problems",
/// Mathematical Methods of Operations Research 60, 2004 (scales); Caprara and Monaci, "Bidimensional packing by bilinear programming",
/// Mathematical Programming 118, 2009 (improving in turn); Scheithauer, "LP-based bounds for the container and multi-container loading problem",
/// International Transactions in Operational Research 6, 1999 (lines).
/// What it cannot see: that cuts run from edge to edge, and anything that no pair of scales can tell.
/// </summary>
internal sealed class ScaleBound
{
    private const int LongestLine = 6000;
    private const int MostColumns = 400;
    private const int MostTurns = 12;
    private const int MostMet = 3000;
    private const double PriceScale = 1e8;

    private readonly IPrograms _programs;
    private readonly List<(int Stock, (int Entry, int Count)[] Line)>[] _met = [[], []]; // lines met so far, along and across
    private int _next; // the start to go on from
    private readonly Entry[] _entries;
    private readonly int[][] _entriesOf; // type to its ways of lying
    private readonly int[] _counts; // of the types
    private readonly Stock[] _stock;
    private readonly LineKnapsack[] _lines; // along, across

    /// <summary>One way of lying of a type.</summary>
    private readonly record struct Entry(int Type, int Along, int Across);

    private sealed record Stock(int Along, int Across, decimal Cost, int Limit)
    {
        public int Extent(int axis) => axis == 0 ? Along : Across;
    }

    /// <summary>Whole values of the entries in one direction, and the capacities of the stock.</summary>
    private sealed record Scale(long[] Values, long[] Capacities);

    public ScaleBound(SheetModel model, IPrograms programs)
    {
        _programs = programs;
        StockType[] stock = [.. model.Stock.Where(s => s.Limit > 0)];
        long gridAlong = Grid(stock.Max(s => s.Along)), gridAcross = Grid(stock.Max(s => s.Across));
        _stock = [.. stock.Select(s => new Stock((int)(s.Along / gridAlong), (int)(s.Across / gridAcross), s.Cost, s.Limit))];
        var entries = new List<Entry>();
        _entriesOf = new int[model.Types.Length][];
        for (int t = 0; t < model.Types.Length; t++)
        {
            PartType type = model.Types[t];
            var own = new List<int>();
            foreach (bool turned in type.MayTurn ? (bool[])[false, true] : [false])
            {
                (long along, long across) = turned ? (type.Across, type.Along) : (type.Along, type.Across);
                if (!stock.Any(s => along <= s.Along && across <= s.Across)) continue;
                own.Add(entries.Count);
                // A size that the grid rounds to nothing takes no place and would be worth anything; one step is the least.
                entries.Add(new(t, (int)(along / gridAlong), (int)(across / gridAcross)));
            }
            _entriesOf[t] = [.. own];
        }
        _entries = [.. entries];
        _counts = [.. model.Types.Select(t => t.Count)];
        int[] counts = [.. _entries.Select(e => _counts[e.Type])];
        IsUsable = _entries.All(e => e.Along > 0 && e.Across > 0);
        _lines = IsUsable
            ? [new([.. _entries.Select(e => e.Along)], counts, _stock.Max(s => s.Along)), new([.. _entries.Select(e => e.Across)], counts, _stock.Max(s => s.Across))]
            : [];
    }

    /// <summary>False when parts are smaller than a step of the coarse grid; then nothing can be said.</summary>
    public bool IsUsable { get; }

    /// <summary>True when every start has been followed to its end.</summary>
    public bool IsFinished { get; private set; }

    /// <summary>The better of <paramref name="known"/> and what the scales prove; null when they prove the stock too little. May be called again, and goes on.</summary>
    /// <param name="known">What is proven already.</param>
    /// <param name="wanted">Ends as soon as this much money and so many sheets are proven.</param>
    /// <param name="meter">The work to spend.</param>
    public LayoutBound? Improve(LayoutBound known, Func<LayoutBound, bool> wanted, SearchMeter meter)
    {
        if (IsFinished || !IsUsable) return known;
        foreach (Scale start in Starts(1).Skip(_next))
        {
            Scale across = start;
            decimal last = -1;
            for (int turn = 0; turn < MostTurns; turn++)
            {
                int axis = turn % 2;
                Scale? best = Best(axis, across, meter);
                if (meter.Over) return known;
                if (best is null) break;
                if (!Take(ref known, best, across, axis, out decimal relaxed)) return null;
                if (wanted(known)) return known;
                if (relaxed <= last * 1.0001m) break;
                last = relaxed;
                across = best;
            }
            _next++;
        }
        IsFinished = true;
        return known;
    }

    private static long Grid(long longest) => (longest + LongestLine - 1) / LongestLine;

    // The sizes themselves, and those of the threshold and rounding functions that differ most.
    private IEnumerable<Scale> Starts(int axis)
    {
        int whole = _stock.Max(s => s.Extent(axis));
        foreach (SizeFunction f in SizeFunction.Family(whole, _entries.Select(e => (long)Size(e, axis)), 6))
            yield return new([.. _entries.Select(e => f.Of(Size(e, axis)))], [.. _stock.Select(s => f.Of(s.Extent(axis)))]);
    }

    private static int Size(Entry entry, int axis) => axis == 0 ? entry.Along : entry.Across;

    // The best scale of an axis for a given one of the other: prices of the lines' linear program.
    private Scale? Best(int axis, Scale other, SearchMeter meter)
    {
        double unit = other.Capacities.Max();
        if (unit <= 0) return null;
        using ILinearProgram program = _programs.Linear();
        var rows = new int[_entries.Length];
        var limitRows = new int[_stock.Length];
        double dearest = Math.Max(1e-9, (double)_stock.Max(s => s.Cost));
        for (int e = 0; e < rows.Length; e++)
        {
            bool alone = _entriesOf[_entries[e].Type].Length == 1;
            rows[e] = program.AddRow(alone ? _counts[_entries[e].Type] * (other.Values[e] / unit) : 0, double.PositiveInfinity);
        }
        for (int t = 0; t < _entriesOf.Length; t++)
        {
            if (_entriesOf[t].Length < 2) continue;
            int share = program.AddRow(_counts[t], double.PositiveInfinity);
            foreach (int e in _entriesOf[t]) program.AddColumn(0, _counts[t], [(share, 1.0), (rows[e], -other.Values[e] / unit)]);
        }
        for (int s = 0; s < _stock.Length; s++)
            limitRows[s] = _stock[s].Limit == int.MaxValue || other.Capacities[s] == 0 ? -1 : program.AddRow(double.NegativeInfinity, _stock[s].Limit * (other.Capacities[s] / unit));

        double CostOf(int s) => (double)_stock[s].Cost / dearest * unit / other.Capacities[s];
        void Add(int s, IEnumerable<(int Entry, int Count)> line)
        {
            IEnumerable<(int, double)> entries = line.Select(l => (rows[l.Entry], (double)l.Count));
            program.AddColumn(CostOf(s), double.PositiveInfinity, limitRows[s] < 0 ? entries : entries.Append((limitRows[s], 1.0)));
        }

        if (_met[axis].Count == 0)
            for (int s = 0; s < _stock.Length; s++)
                for (int e = 0; e < _entries.Length; e++)
                {
                    int fits = Math.Min(_counts[_entries[e].Type], _stock[s].Extent(axis) / Size(_entries[e], axis));
                    if (fits > 0) _met[axis].Add((s, [(e, fits)]));
                }
        // The simple lines of the beginning stay, the older half of the others goes.
        int simple = _stock.Length * _entries.Length;
        if (_met[axis].Count > simple + MostMet) _met[axis].RemoveRange(simple, MostMet / 2);
        foreach ((int s, (int Entry, int Count)[] line) in _met[axis])
            if (other.Capacities[s] > 0) Add(s, line);
        LineKnapsack knapsack = _lines[axis];
        var prices = new long[_entries.Length];
        for (int columns = 0; ;)
        {
            if (meter.Over || !program.Solve(CancellationToken.None)) return null;
            for (int e = 0; e < prices.Length; e++) prices[e] = (long)Math.Floor(Math.Max(0, program.Price(rows[e])) * PriceScale);
            knapsack.Fill(prices);
            meter.Add((knapsack.Cells / 2) + (20L * rows.Length));
            bool added = false;
            // All prices are read before the first column is added: a program that has changed has none.
            double[] limitPrices = [.. limitRows.Select(r => r < 0 ? 0 : program.Price(r))];
            for (int s = 0; s < _stock.Length; s++)
            {
                if (other.Capacities[s] == 0) continue;
                double due = CostOf(s) - limitPrices[s];
                int extent = _stock[s].Extent(axis);
                if (knapsack.Best(extent) <= (due * PriceScale * (1 + 1e-6)) + _entries.Length) continue;
                (int, int)[] line = [.. knapsack.Line(extent).Index().Where(l => l.Item > 0)];
                _met[axis].Add((s, line));
                Add(s, line);
                added = true;
            }
            if (!added || ++columns > MostColumns) break;
        }
        return new([.. prices], [.. _stock.Select(s => knapsack.Best(s.Extent(axis)))]);
    }

    // False when the stock is proven too little.
    private bool Take(ref LayoutBound known, Scale a, Scale b, int axis, out decimal relaxed)
    {
        relaxed = 0;
        Int128 need = 0;
        for (int t = 0; t < _entriesOf.Length; t++)
        {
            Int128 least = Int128.MaxValue;
            foreach (int e in _entriesOf[t]) least = Int128.Min(least, (Int128)a.Values[e] * b.Values[e]);
            need += least * _counts[t];
        }
        Cover[] covers = [.. _stock.Select((s, i) => new Cover((Int128)a.Capacities[i] * b.Capacities[i], s.Cost, s.Limit))];
        if (CoveringBound.FewestParts(need, covers) is not { } fewest || CoveringBound.LeastMoney(need, covers) is not { } relaxedMoney) return false;
        Money money = MoneyStep.RoundUp(relaxedMoney, _stock.Select(s => new Money(s.Cost)));
        foreach (Cover cover in covers.Where(c => c.Capacity > 0))
            relaxed = Math.Max(relaxed, (decimal)((double)need / (double)cover.Capacity) * Math.Max(cover.Cost, 1));
        if (fewest > known.Count) known = known with { Count = fewest };
        if (money > known.Cost) known = known with { Cost = money, Method = axis == 0 ? "scales, along last" : "scales, across last" };
        return true;
    }
}
