using Setout.Cutting.Programs;

namespace Setout.Cutting.Boards.Search;

/// <summary>
/// Searches all layouts within a limit, from the full list of patterns that one can use: at each node the linear program over
/// the patterns still allowed gives prices, which are rounded to whole numbers; what they prove exactly ends the node or strikes patterns out;
/// then the type that fewest patterns hold is covered by each of them in turn, and a pattern that was tried is struck out for those after
/// it. Source: branching as in exact cover (Knuth, "Dancing links", 2000), the bound as in branch and price; titles from memory.
/// What it cannot do: boards of several bins, and free boards beside paid ones; and a wide slack makes the list too long.
/// </summary>
internal sealed class PatternSearch(PatternModel model, IPrograms programs, SearchMeter meter, CancellationToken stop)
{
    private List<Pattern> _patterns = [];
    private long[] _units = [];
    private long _nodes;
    private List<int> _path = [];
    private int[] _row = [];
    private ILinearProgram? _program;

    /// <summary>True when this search can say anything about the model.</summary>
    public static bool Fits(PatternModel model) => model.PriceStep > 0 && model.Slots.All(s => model.IsSingle(s.Stock))
        && model.Prices.All(p => p > 0 && p / model.PriceStep <= 1_000_000);

    /// <summary>Looks for a layout that costs at most so many steps.</summary>
    /// <param name="patterns">Every pattern that such a layout can use; see <see cref="PatternList"/>.</param>
    /// <param name="units">Price of each stock in steps.</param>
    /// <param name="target">The limit in steps.</param>
    /// <param name="nodes">The most nodes.</param>
    /// <param name="found">The layout.</param>
    /// <returns>True when the search came to its end: without a layout there is none.</returns>
    public bool Run(List<Pattern> patterns, long[] units, long target, long nodes, out PatternWork? found)
    {
        (_patterns, _units, _nodes) = (patterns, units, nodes);
        _path = [];
        using ILinearProgram program = programs.Linear();
        _program = program;
        _row = [.. model.Demand.Select(d => program.AddRow(d, double.PositiveInfinity))];
        foreach (Pattern pattern in patterns)
            program.AddColumn(units[model.Slots[pattern.Slot].Stock], double.PositiveInfinity, pattern.Parts.Select(p => (_row[p.Type], (double)p.Count)));
        int[] left = [.. model.Boards.Stock.Select(s => s.Limit)];
        Verdict verdict = Visit([.. model.Demand], left, [.. Enumerable.Range(0, patterns.Count)], target, null);
        found = verdict == Verdict.Found ? Write() : null;
        return verdict != Verdict.CutOff;
    }

    private enum Verdict
    {
        None,
        Found,
        CutOff,
    }

    private Verdict Visit(int[] demand, int[] left, List<int> allowed, long target, long[]? known)
    {
        if (demand.All(d => d == 0)) return Verdict.Found;
        if (_nodes-- <= 0 || meter.Over) return Verdict.CutOff;
        allowed = [.. allowed.Where(p => left[StockOf(p)] > 0 && _units[StockOf(p)] <= target && Useful(p, demand))];
        // What the prices of the node above prove costs nothing to ask first.
        meter.Add(1 + (allowed.Count / 8));
        if (known is not null && !Strike(known, demand, allowed, target)) return Verdict.None;
        if (Scarcest(demand, allowed) < 0) return Verdict.None;
        (Dictionary<int, double> shares, long[] values) = Price(demand, allowed);
        if (!Strike(values, demand, allowed, target)) return Verdict.None;
        if (stop.IsCancellationRequested) return Verdict.CutOff;
        int type = Scarcest(demand, allowed);
        if (type < 0) return Verdict.None;
        bool cutOff = false;
        int[] branch = [.. allowed.Where(p => CountOf(p, type) > 0).OrderByDescending(p => shares.GetValueOrDefault(p)).ThenBy(p => p)];
        foreach (int pattern in branch)
        {
            int[] rest = [.. demand];
            foreach ((int t, int count) in _patterns[pattern].Parts) rest[t] = Math.Max(0, rest[t] - count);
            int stock = StockOf(pattern);
            if (left[stock] < int.MaxValue) left[stock]--;
            _path.Add(pattern);
            Verdict verdict = Visit(rest, left, allowed, target - _units[stock], values);
            if (verdict == Verdict.Found) return verdict;
            _path.RemoveAt(_path.Count - 1);
            if (left[stock] < int.MaxValue) left[stock]++;
            cutOff |= verdict == Verdict.CutOff;
            if (_nodes <= 0 || meter.Over) return Verdict.CutOff;
            allowed.Remove(pattern);
        }
        return cutOff ? Verdict.CutOff : Verdict.None;
    }

    // Shares and whole-number prices of the linear program of what waits; none of either when it has no answer.
    private (Dictionary<int, double> Shares, long[] Values) Price(int[] demand, List<int> allowed)
    {
        var shares = new Dictionary<int, double>();
        long[] values = new long[demand.Length];
        ILinearProgram program = _program!;
        for (int t = 0; t < demand.Length; t++) program.SetRow(_row[t], demand[t], double.PositiveInfinity);
        bool[] open = new bool[_patterns.Count];
        foreach (int pattern in allowed) open[pattern] = true;
        for (int p = 0; p < open.Length; p++) program.SetMost(p, open[p] ? double.PositiveInfinity : 0);
        meter.Add(4_000 + (20L * allowed.Count));
        if (!program.Solve(stop)) return (shares, values);
        foreach (int pattern in allowed)
            if (program.Share(pattern) is > 1e-6 and var share) shares[pattern] = share;
        double[] prices = [.. _row.Select((r, t) => demand[t] > 0 ? Math.Max(0, program.Price(r)) : 0)];
        double round = (1L << 40) / Math.Max(1e-9, prices.Max());
        for (int t = 0; t < values.Length; t++) values[t] = (long)Math.Floor(prices[t] * round);
        return (shares, values);
    }

    // False when these prices prove that nothing within the limit is left; else strikes out the patterns that they prove useless.
    private bool Strike(long[] values, int[] demand, List<int> allowed, long target)
    {
        Int128 need = 0;
        for (int t = 0; t < values.Length; t++) need += (Int128)values[t] * demand[t];
        long[] worth = new long[allowed.Count];
        long scale = 0;
        for (int i = 0; i < worth.Length; i++)
        {
            foreach ((int type, int count) in _patterns[allowed[i]].Parts) worth[i] += values[type] * Math.Min(count, demand[type]);
            long units = _units[StockOf(allowed[i])];
            scale = Math.Max(scale, (worth[i] + units - 1) / units);
        }
        Int128 slack = ((Int128)scale * target) - need;
        if (slack < 0) return false;
        int kept = 0;
        for (int i = 0; i < worth.Length; i++)
            if (((Int128)scale * _units[StockOf(allowed[i])]) - worth[i] <= slack) allowed[kept++] = allowed[i];
        allowed.RemoveRange(kept, allowed.Count - kept);
        return true;
    }

    // The type that waits and that fewest patterns hold; -1 when one is in none.
    private int Scarcest(int[] demand, List<int> allowed)
    {
        int[] held = new int[demand.Length];
        foreach (int pattern in allowed)
            foreach ((int type, int _) in _patterns[pattern].Parts) held[type]++;
        int scarcest = -1;
        for (int t = 0; t < demand.Length; t++)
        {
            if (demand[t] == 0) continue;
            if (held[t] == 0) return -1;
            if (scarcest < 0 || held[t] < held[scarcest]) scarcest = t;
        }
        return scarcest;
    }

    private int StockOf(int pattern) => model.Slots[_patterns[pattern].Slot].Stock;

    private int CountOf(int pattern, int type)
    {
        foreach ((int t, int count) in _patterns[pattern].Parts)
            if (t == type) return count;
        return 0;
    }

    private bool Useful(int pattern, int[] demand)
    {
        foreach ((int type, int _) in _patterns[pattern].Parts)
            if (demand[type] > 0) return true;
        return false;
    }

    private PatternWork Write()
    {
        var work = new PatternWork(model);
        foreach (int pattern in _path) work.TakeWithin(_patterns[pattern]);
        return work;
    }
}
