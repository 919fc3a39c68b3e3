// Over 200 lines: rows, columns and the bound of one linear program belong together.
using Setout.Core.Measures;
using Setout.Cutting.Bounds;
using Setout.Cutting.Programs;

namespace Setout.Cutting.Boards.Search;

/// <summary>
/// The linear program over patterns, its columns generated as they are needed: each row a type of part that must be cut often enough, each column a
/// pattern; boards with limits have a row, boards of several bins a column for the board and a row for each of its slots. The prices of an
/// answer are rounded to whole numbers and the best patterns for them found exactly, which gives new columns and, by a covering
/// knapsack over whole boards, a bound that rests on whole numbers alone.
/// Sources: Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9, 1961; the
/// bound from any prices is Farley's, "A note on bounding a class of linear programming problems, including cutting stock problems",
/// Operations Research 38, 1990. (Titles from memory.)
/// What it cannot find: whole boards; and no bound better than the linear program's rounded up to what boards can cost.
/// </summary>
internal sealed class PatternMaster : IDisposable
{
    private const double Dear = 100, Least = 1e-7;

    private readonly PatternModel _model;
    private readonly PatternPool _pool;
    private PatternWork _work;
    private readonly PatternPricer _pricer;
    private readonly SearchMeter _meter;
    private readonly CancellationToken _stop;
    private readonly ILinearProgram _program;
    private readonly int[] _partRow, _slotRow;
    private readonly List<(Pattern Pattern, int Column)> _columns = [];
    private readonly List<(int Stock, int Column)> _boards = [];
    private readonly List<int> _missing = [];
    private readonly double[] _prices, _slotPrices;
    private readonly int[] _values;
    private int _entries;

    public PatternMaster(PatternModel model, PatternPool pool, PatternWork work, PatternPricer pricer, IPrograms programs, SearchMeter meter, CancellationToken stop)
    {
        (_model, _pool, _work, _pricer, _meter, _stop) = (model, pool, work, pricer, meter, stop);
        _program = programs.Linear();
        _prices = new double[model.Demand.Length];
        _slotPrices = new double[model.Slots.Length];
        _values = new int[model.Demand.Length];
        // Types that do not wait any more keep their row: a program of one shape starts from its last answer.
        _partRow = [.. work.Demand.Select(d => d > 0 ? _program.AddRow(d, double.PositiveInfinity) : -1)];
        for (int t = 0; t < _partRow.Length; t++)
            if (_partRow[t] >= 0) _missing.Add(_program.AddColumn(Dear * Math.Max(1, (double)model.Lengths[t] / model.Lengths[^1]), double.PositiveInfinity, [(_partRow[t], 1)]));
        _slotRow = [.. model.Slots.Select((s, k) => model.IsSingle(s.Stock) && model.Boards.Stock[s.Stock].Limit == int.MaxValue ? -1
            : _program.AddRow(model.IsSingle(s.Stock) ? -(double)work.Left[s.Stock] : -(double)work.Open[k], double.PositiveInfinity))];
        for (int s = 0; s < model.SlotsOf.Length; s++)
            if (!model.IsSingle(s) && model.SlotsOf[s].Length > 0)
                _boards.Add((s, _program.AddColumn(model.Costs[s], work.Left[s] == int.MaxValue ? double.PositiveInfinity : work.Left[s],
                    model.SlotsOf[s].Select(k => (_slotRow[k], (double)model.Slots[k].Bins.Length)))));
        foreach (Pattern pattern in pool.All)
            if (pattern.MostWithin(work.Demand) > 0) Add(pattern);
    }

    /// <summary>Asks from now on for what is left of the work this program was made for.</summary>
    public void MoveTo(PatternWork work)
    {
        _work = work;
        for (int t = 0; t < _partRow.Length; t++)
            if (_partRow[t] >= 0) _program.SetRow(_partRow[t], work.Demand[t], double.PositiveInfinity);
        for (int k = 0; k < _slotRow.Length; k++)
            if (_slotRow[k] >= 0) _program.SetRow(_slotRow[k], -(double)(_model.IsSingle(_model.Slots[k].Stock) ? work.Left[_model.Slots[k].Stock] : work.Open[k]), double.PositiveInfinity);
        foreach ((int stock, int column) in _boards) _program.SetMost(column, work.Left[stock] == int.MaxValue ? double.PositiveInfinity : work.Left[stock]);
        foreach ((Pattern pattern, int column) in _columns) _program.SetMost(column, pattern.MostWithin(work.Demand) > 0 ? double.PositiveInfinity : 0);
        Converged = false;
    }

    /// <summary>Cost of the last answer in the program's measure.</summary>
    public double Value { get; private set; }

    /// <summary>What the last answer costs by the model's prices.</summary>
    public double Price { get; private set; }

    /// <summary>How many parts the last answer leaves out.</summary>
    public double Missing { get; private set; }

    /// <summary>The highest bound so far, by the model's prices.</summary>
    public decimal BoundPrice { get; private set; }

    /// <summary>The most boards that were proven to be needed.</summary>
    public int BoundBoards { get; private set; }

    /// <summary>True when all stock was proven too little.</summary>
    public bool TooLittle { get; private set; }

    /// <summary>True when no pattern is left that could make the program's answer cheaper.</summary>
    public bool Converged { get; private set; }

    /// <summary>True when the bound is what the last answer costs, rounded up.</summary>
    public bool IsAsHighAsItGets => (double)BoundPrice > Price - 1e-9;

    /// <summary>Solves with the columns there are; false when there is no answer.</summary>
    public bool Solve()
    {
        _meter.Add(4_000 + (10L * _entries));
        if (!_program.Solve(_stop)) return false;
        Value = _program.Cost;
        double price = 0;
        foreach ((int stock, int column) in _boards) price += (double)_model.Prices[stock] * _program.Share(column);
        foreach ((Pattern pattern, int column) in _columns)
            if (_model.IsSingle(_model.Slots[pattern.Slot].Stock)) price += (double)_model.Prices[_model.Slots[pattern.Slot].Stock] * _program.Share(column);
        Price = price;
        for (int t = 0; t < _prices.Length; t++) _prices[t] = _partRow[t] < 0 ? 0 : Math.Max(0, _program.Price(_partRow[t]));
        for (int k = 0; k < _slotPrices.Length; k++) _slotPrices[k] = _slotRow[k] < 0 ? 0 : _program.Price(_slotRow[k]);
        Missing = _missing.Sum(_program.Share);
        return true;
    }

    /// <summary>Adds the patterns that the prices of the last answer ask for; false when there are none.</summary>
    /// <param name="quickOnly">Where there is a coarse grid, only that is asked.</param>
    public bool Generate(bool quickOnly = false)
    {
        double scale = _pricer.Round(_prices, _values);
        if (_pricer.HasQuick && (Generate(scale, quick: true) || quickOnly)) return true;
        if (Generate(scale, quick: false)) return true;
        Converged = true;
        return false;
    }

    /// <summary>Works out what the prices of the last answer prove.</summary>
    public void Prove()
    {
        _pricer.Round(_prices, _values);
        long[] best = _pricer.NoneAbove(_values, _work.Demand);
        Int128 need = 0;
        for (int t = 0; t < _values.Length; t++) need += (Int128)_values[t] * _work.Demand[t];
        Cover[] covers = [.. _model.SlotsOf.Select((slots, s) => new Cover(
            slots.Aggregate((Int128)0, (sum, k) => sum + ((Int128)best[k] * _model.Slots[k].Bins.Length)), _model.Prices[s], _model.Boards.Stock[s].Limit))];
        if (CoveringBound.FewestParts(need, covers) is not { } boards || CoveringBound.LeastMoney(need, covers) is not { } money)
        {
            TooLittle = true;
            return;
        }
        BoundBoards = Math.Max(BoundBoards, boards);
        BoundPrice = Math.Max(BoundPrice, MoneyStep.RoundUp(money, _model.Prices.Select(p => new Money(p))).Amount);
    }

    /// <summary>Patterns that the last answer uses, and how much of each.</summary>
    public List<(Pattern Pattern, double Share)> Shares()
    {
        var found = new List<(Pattern, double)>();
        foreach ((Pattern pattern, int column) in _columns)
        {
            double share = _program.Share(column);
            if (share > 1e-6) found.Add((pattern, share));
        }
        return found;
    }

    /// <summary>By how much a pattern would make the last answer dearer at least, in the program's measure; by no more than the prices say.</summary>
    public double Reduced(Pattern pattern)
    {
        double cost = CostOf(pattern.Slot);
        foreach ((int type, int count) in pattern.Parts) cost -= _prices[type] * count;
        return cost;
    }

    /// <summary>What one more of each type costs in the last answer, in whole numbers fit for a <see cref="PatternList"/>.</summary>
    public int[] Values()
    {
        _pricer.Round(_prices, _values);
        return [.. _values];
    }

    public void Dispose() => _program.Dispose();

    private bool Generate(double scale, bool quick)
    {
        int[] counts = [.. _work.Demand];
        bool any = false;
        // After the best patterns, the best of the parts that these do not hold: columns that go together.
        for (int round = 0; round < 12 && !_meter.Cancelled; round++)
        {
            _pricer.Run(_values, counts, quick);
            var wanted = new List<(double Reduced, int Slot)>();
            for (int k = 0; k < _model.Slots.Length; k++)
            {
                if (!_work.CanTake(k)) continue;
                double reduced = CostOf(k) - (_pricer.Best(k) / scale);
                if (reduced < -Least) wanted.Add((reduced, k));
            }
            if (wanted.Count == 0) break;
            bool added = false;
            foreach ((double _, int slot) in wanted.OrderBy(w => w.Reduced).Take(8))
            {
                Pattern pattern = _pricer.Take(slot);
                if (_pool.Add(pattern))
                {
                    Add(pattern);
                    added = any = true;
                }
                foreach ((int type, int _) in pattern.Parts) counts[type] = 0;
            }
            if (!added || (round >= 3 && !quick && _pricer.HasQuick)) break;
        }
        return any;
    }

    // What the bin itself costs: the board, or what its row asks for it.
    private double CostOf(int slot)
    {
        int stock = _model.Slots[slot].Stock;
        return (_model.IsSingle(stock) ? _model.Costs[stock] : 0) + _slotPrices[slot];
    }

    private void Add(Pattern pattern)
    {
        int stock = _model.Slots[pattern.Slot].Stock;
        IEnumerable<(int, double)> entries = pattern.Parts.Select(p => (_partRow[p.Type], (double)p.Count));
        if (_slotRow[pattern.Slot] >= 0) entries = entries.Append((_slotRow[pattern.Slot], -1));
        int column = _program.AddColumn(_model.IsSingle(stock) ? _model.Costs[stock] : 0, double.PositiveInfinity, entries);
        _columns.Add((pattern, column));
        _entries += pattern.Parts.Length + 1;
    }
}
