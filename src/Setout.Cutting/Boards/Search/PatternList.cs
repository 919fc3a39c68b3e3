namespace Setout.Cutting.Boards.Search;

/// <summary>
/// Lists every pattern that a layout within a limit can use. Whole-number values of the parts, and a scale such that no pattern is worth
/// more than its board's price times the scale, leave a slack between the limit and what all parts are worth; a pattern that
/// falls short by more than the slack is in no such layout. Only patterns to which no part can be added are listed: any layout can be
/// turned into one of those that makes too many parts. All in whole numbers.
/// Sources (titles from memory): values of parts against prices of boards as in Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations
/// Research 9, 1961; leaving out what falls short by more than the slack is fixing by reduced costs, a textbook argument (Nemhauser and Wolsey, "Integer and
/// combinatorial optimization", 1988).
/// What it cannot find: patterns of boards of several bins; and where the slack is wide or the lengths are fine there are too many, and it gives up with none.
/// </summary>
internal sealed class PatternList
{
    private const long MostCells = 24_000_000, MostSteps = 3_000_000;
    private const int MostPatterns = 12_000;

    private readonly PatternModel _model;
    private readonly int[] _values;
    private readonly int[][] _rest;
    private readonly (int Type, int Count)[] _taken;
    private long _steps;
    private int _slot, _depth;
    private long _least;

    private PatternList(PatternModel model, int[] values, int longest)
    {
        (_model, _values) = (model, values);
        _taken = new (int, int)[model.Lengths.Length];
        // The most that the types from each on can add, for every length left.
        _rest = new int[model.Lengths.Length + 1][];
        _rest[^1] = new int[longest + 1];
        for (int t = model.Lengths.Length - 1; t >= 0; t--)
        {
            int[] now = _rest[t + 1];
            long length = model.Lengths[t];
            int left = length > longest ? 0 : (int)Math.Min(model.Demand[t], longest / length);
            for (int bundle = 1; left > 0; bundle *= 2)
            {
                int take = Math.Min(bundle, left), weight = (int)(take * length), value = take * values[t];
                int[] next = new int[longest + 1];
                BinKnapsack.Layer(now, next, weight, value);
                now = next;
                left -= take;
            }
            _rest[t] = now;
        }
    }

    /// <summary>The patterns, with their slack; null when there are too many or the lengths are too fine.</summary>
    /// <param name="model">Boards of one bin each.</param>
    /// <param name="values">Of one part of each type; all that fit into a bin stay below 2^30.</param>
    /// <param name="units">Price of each stock in whole steps; above zero.</param>
    /// <param name="target">The limit in the same steps.</param>
    /// <param name="meter">Counts the work.</param>
    public static List<Pattern>? Of(PatternModel model, int[] values, long[] units, long target, SearchMeter meter)
    {
        long longest = model.Slots.Max(s => s.Length);
        if (longest > int.MaxValue / 4 || (longest + 1) * (model.Lengths.Length + 1) > MostCells) return null;
        var list = new PatternList(model, values, (int)longest);
        meter.Add(longest * model.Lengths.Length / 32);
        long scale = model.Slots.Max(s => (list._rest[0][s.Length] + units[s.Stock] - 1) / units[s.Stock]);
        Int128 need = 0;
        for (int t = 0; t < values.Length; t++) need += (Int128)values[t] * model.Demand[t];
        Int128 slack = ((Int128)scale * target) - need;
        var found = new List<Pattern>();
        if (slack < 0) return found;
        for (int k = 0; k < model.Slots.Length; k++)
        {
            list._slot = k;
            list._least = (long)Int128.Max(0, ((Int128)scale * units[model.Slots[k].Stock]) - slack);
            bool whole = list.Visit(0, (int)model.Slots[k].Length, 0, long.MaxValue, found);
            if (!whole) break;
        }
        meter.Add(list._steps / 4);
        return list._steps > MostSteps || found.Count > MostPatterns ? null : found;
    }

    // Shortest: the shortest length of which more could be taken.
    private bool Visit(int type, int space, long value, long shortest, List<Pattern> found)
    {
        if (++_steps > MostSteps || found.Count > MostPatterns) return false;
        if (value + _rest[type][space] < _least) return true;
        if (type == _model.Lengths.Length)
        {
            if (shortest > space) found.Add(new(_slot, _taken[.._depth]));
            return true;
        }
        long length = _model.Lengths[type];
        int most = (int)Math.Min(_model.Demand[type], space / length);
        for (int take = most; take >= 0; take--)
        {
            if (take > 0) _taken[_depth++] = (type, take);
            bool whole = Visit(type + 1, space - (int)(take * length), value + ((long)take * _values[type]),
                take < _model.Demand[type] ? Math.Min(shortest, length) : shortest, found);
            if (take > 0) _depth--;
            if (!whole) return false;
        }
        return true;
    }
}
