using Setout.Cutting.Programs;
using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Patterns;

/// <summary>
/// The linear program over the patterns met so far: each part at least as often as it is wanted, each stock at most as often as there is of it. It gives prices to look for
/// better patterns with, rounded to whole numbers.
/// </summary>
internal sealed class PatternProgram : IDisposable
{
    private const double PriceScale = 1e7;
    private const int LongestSide = 8000;
    private const int MostTypes = 2_000;

    private readonly ILinearProgram _program;
    private readonly double[] _costs;
    private readonly int[] _rows;
    private readonly int[] _limits;
    private readonly int[] _most;
    private readonly int[] _stocks;
    private readonly int _types;
    private readonly List<(int Column, int Kind, PatternNode Pattern)> _columns = [];

    /// <summary>Begins with no patterns at all.</summary>
    /// <param name="model">The parts.</param>
    /// <param name="stocks">The kinds of stock that may be used, as indexes in the model.</param>
    /// <param name="programs">The library.</param>
    public PatternProgram(SheetModel model, int[] stocks, IPrograms programs)
    {
        (_stocks, _types) = (stocks, model.Types.Length);
        _program = programs.Linear();
        double dearest = (double)stocks.Max(s => model.Stock[s].Cost);
        _costs = [.. stocks.Select(s => dearest == 0 ? 1 : (double)model.Stock[s].Cost / dearest)];
        _rows = [.. model.Types.Select(t => _program.AddRow(t.Count, double.PositiveInfinity))];
        _most = [.. stocks.Select(s => model.Stock[s].Limit)];
        _limits = [.. stocks.Select(s => model.Stock[s].Limit == int.MaxValue ? -1 : _program.AddRow(double.NegativeInfinity, model.Stock[s].Limit))];
        // Parts that no column holds yet, at a price no one would pay.
        foreach (int row in _rows) _program.AddColumn(4, double.PositiveInfinity, [(row, 1.0)]);
    }

    /// <summary>Steps that one solve stands for.</summary>
    public long Work => (50L * _rows.Length) + (10L * _columns.Count);

    /// <summary>The patterns met, with their shares in the last answer.</summary>
    public IEnumerable<(int Stock, PatternNode Pattern, double Share)> Shares => KindShares.Select(c => (_stocks[c.Kind], c.Pattern, c.Share));

    /// <summary>False when types or positions are too many for patterns to be looked for.</summary>
    public static bool CanTake(SheetModel model) => model.Types.Length <= MostTypes && model.Stock.Max(s => Math.Max(s.Along, s.Across)) <= LongestSide;

    /// <summary>Ways of lying of all parts.</summary>
    public static PatternPart[] PartsOf(SheetModel model) => [.. model.Types.SelectMany((t, i) => t.MayTurn
        ? new PatternPart[] { new(i, (int)t.Along, (int)t.Across, false), new(i, (int)t.Across, (int)t.Along, true) }
        : [new(i, (int)t.Along, (int)t.Across, false)])];

    /// <summary>Solves anew; false when there is no answer.</summary>
    /// <param name="prices">What one of each type is worth, rounded down.</param>
    /// <param name="dues">What a sheet of each kind must be worth at least to be of use, rounded up.</param>
    /// <param name="stop">Ends it early; then there is no answer.</param>
    public bool Solve(long[] prices, long[] dues, CancellationToken stop)
    {
        if (!_program.Solve(stop)) return false;
        for (int t = 0; t < prices.Length; t++) prices[t] = (long)Math.Floor(Math.Max(0, _program.Price(_rows[t])) * PriceScale);
        for (int k = 0; k < dues.Length; k++)
            dues[k] = (long)Math.Ceiling((_costs[k] - (_limits[k] < 0 ? 0 : Math.Min(0, _program.Price(_limits[k])))) * PriceScale * (1 + 1e-7)) + 1;
        return true;
    }

    /// <summary>What the last answer costs, as a share of the dearest stock.</summary>
    public double Cost => _program.Cost;

    /// <summary>What one of a kind of stock costs, in the same measure.</summary>
    public double CostOf(int kind) => _costs[kind];

    /// <summary>How many there are of a kind of stock.</summary>
    public int LimitOf(int kind) => _most[kind];

    /// <summary>Asks for other counts of the parts, and allows fewer of each kind of stock; the next solve goes on from the last.</summary>
    /// <param name="counts">By type.</param>
    /// <param name="taken">How many of each kind are taken already.</param>
    public void Ask(int[] counts, int[] taken)
    {
        for (int t = 0; t < counts.Length; t++) _program.SetRow(_rows[t], counts[t], double.PositiveInfinity);
        for (int k = 0; k < taken.Length; k++)
            if (_limits[k] >= 0) _program.SetRow(_limits[k], double.NegativeInfinity, _most[k] - taken[k]);
    }

    /// <summary>The kind, the pattern and the share in the last answer of each pattern met.</summary>
    public IEnumerable<(int Kind, PatternNode Pattern, double Share)> KindShares => _columns.Select(c => (c.Kind, c.Pattern, _program.Share(c.Column)));

    /// <summary>Adds a pattern for a kind of stock.</summary>
    public void Add(int kind, PatternNode pattern)
    {
        IEnumerable<(int, double)> entries = Counted(pattern).Select(c => (_rows[c.Type], (double)c.Count));
        _columns.Add((_program.AddColumn(_costs[kind], double.PositiveInfinity, _limits[kind] < 0 ? entries : entries.Append((_limits[kind], 1.0))), kind, pattern));
    }

    /// <summary>Types in a pattern, and how many of each.</summary>
    public IEnumerable<(int Type, long Count)> Counted(PatternNode pattern)
    {
        var counts = new int[_types];
        pattern.Count(counts);
        return counts.Index().Where(c => c.Item > 0).Select(c => (c.Index, (long)c.Item));
    }

    /// <inheritdoc/>
    public void Dispose() => _program.Dispose();
}
