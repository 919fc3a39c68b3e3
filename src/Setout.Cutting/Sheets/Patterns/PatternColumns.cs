using Setout.Cutting.Programs;
using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Patterns;

/// <summary>
/// Patterns to make layouts of. The linear program over the patterns met asks for better and better ones of <see cref="StripPatterns"/> and, where those have
/// none, of <see cref="ThinPatterns"/>. Neither source sees every pattern, so nothing is proven here, and no bound is given to anyone.
/// Sources (titles from memory): Gilmore and Gomory, "Multistage cutting stock problems of two and more dimensions", Operations Research 13, 1965; Waescher and Gau,
/// "Heuristics for the integer one-dimensional cutting stock problem", OR Spektrum 18, 1996 (whole sheets first, then the program anew for what is left).
/// What it cannot find: a layout for which a sheet must be given up that was taken early.
/// </summary>
internal sealed class PatternColumns : IDisposable
{
    private const int Rounds = 2;
    private const double Enough = 0.75; // a share that is taken for a whole sheet

    private readonly PatternProgram? _program;
    private readonly List<Kind> _kinds = [];
    private readonly int[] _counts;
    private readonly double _dearest;

    /// <summary>A stock that may be used.</summary>
    private sealed record Kind(int Stock, StripPatterns Strips, ThinPatterns Thin);

    /// <summary>Begins with no patterns at all.</summary>
    public PatternColumns(SheetModel model, IPrograms programs)
    {
        _counts = [.. model.Types.Select(t => t.Count)];
        if (!PatternProgram.CanTake(model)) return;
        PatternPart[] parts = PatternProgram.PartsOf(model);
        int[] stocks = [.. Enumerable.Range(0, model.Stock.Length).Where(s => model.Stock[s].Limit > 0)];
        foreach (int s in stocks)
        {
            int along = (int)model.Stock[s].Along, across = (int)model.Stock[s].Across;
            _kinds.Add(new(s, new(along, across, parts, _counts), new(along, across, parts)));
        }
        _dearest = (double)stocks.Max(s => model.Stock[s].Cost);
        _program = new(model, stocks, programs);
        IsUsable = true;
    }

    /// <summary>False when sizes or types are too many.</summary>
    public bool IsUsable { get; }

    /// <summary>True when no source knows a better pattern.</summary>
    public bool IsFinished { get; private set; }

    /// <summary>The patterns met, with their shares in the last answer of the linear program.</summary>
    public List<(int Stock, PatternNode Pattern, double Share)> Patterns { get; } = [];

    /// <summary>Takes a pattern that was found elsewhere.</summary>
    public void Offer(int stock, PatternNode pattern) => _program!.Add(_kinds.FindIndex(k => k.Stock == stock), pattern);

    /// <summary>Looks for better patterns until there are none or the work is spent. May be called again, and goes on.</summary>
    public void Improve(SearchMeter meter)
    {
        Patterns.Clear();
        long[] prices = new long[_counts.Length], dues = new long[_kinds.Count];
        while (!meter.Over && _program!.Solve(prices, dues, meter.Ending))
        {
            (int Stock, PatternNode Pattern, double Share)[] shares = [.. _program.Shares];
            bool more = AddBetter(prices, dues, _counts, meter);
            if (more && !meter.Over) continue;
            Patterns.AddRange(shares);
            IsFinished = !more && !meter.Over;
            break;
        }
    }

    /// <summary>
    /// Whole sheets one after the other: those of which the linear program wants one or nearly so, or else the one it wants most, then the program anew for the parts that are left, with
    /// patterns sought for these. Ends early where the layout would not cost less than <paramref name="below"/>; then there are parts on none of the sheets.
    /// </summary>
    /// <param name="below">What must be spent less than.</param>
    /// <param name="meter">The work to spend.</param>
    public List<(int Stock, PatternNode Pattern)> Dive(Goal below, SearchMeter meter)
    {
        var taken = new List<(int Stock, PatternNode Pattern)>();
        int[] left = [.. _counts], takenOf = new int[_kinds.Count];
        long[] prices = new long[_counts.Length], dues = new long[_kinds.Count];
        double spent = 0, most = _dearest == 0 ? below.Sheets : (double)below.Cost / _dearest;
        while (!meter.Cancelled && !meter.Enough && Array.Exists(left, n => n > 0))
        {
            _program!.Ask(left, takenOf);
            bool solved = _program.Solve(prices, dues, meter.Ending);
            for (int round = 0; solved && round < Rounds && !meter.Over && AddBetter(prices, dues, left, meter); round++) solved = _program.Solve(prices, dues, meter.Ending);
            if (!solved || spent + _program.Cost > most - 1e-6) break;
            (int Kind, PatternNode Pattern, double Share)[] shares = [.. _program.KindShares.Where(s => s.Share > 1e-6)];
            double largest = shares.Select(s => s.Share).DefaultIfEmpty().Max();
            int before = taken.Count;
            foreach ((int kind, PatternNode pattern, double share) in shares)
            {
                if (share < Math.Min(largest, Enough)) continue;
                for (int n = Math.Max(1, (int)(share + 1 - Enough)); n > 0 && _program.LimitOf(kind) > takenOf[kind]; n--)
                {
                    PatternNode within = pattern.Within(left);
                    if (within == PatternNode.Nothing) break;
                    taken.Add((_kinds[kind].Stock, within));
                    takenOf[kind]++;
                    spent += _program.CostOf(kind);
                }
                if (largest < Enough) break;
            }
            if (taken.Count == before) break;
        }
        _program!.Ask(_counts, new int[_kinds.Count]);
        return taken;
    }

    /// <inheritdoc/>
    public void Dispose() => _program?.Dispose();

    private bool AddBetter(long[] prices, long[] dues, int[] counts, SearchMeter meter)
    {
        bool more = false;
        for (int k = 0; k < _kinds.Count; k++)
            foreach (PatternNode pattern in Find(_kinds[k], prices, dues[k], counts, meter))
            {
                _program!.Add(k, pattern);
                more = true;
            }
        meter.Add(_program!.Work);
        return more;
    }

    // A pattern of strips is quicker to find; the other source is for when there is none.
    private static List<PatternNode> Find(Kind kind, long[] prices, long threshold, int[] counts, SearchMeter meter)
    {
        List<PatternNode> found = kind.Strips.Find(prices, threshold, () => meter.Over, counts);
        meter.Add(kind.Strips.TakeCells() / 48);
        if (found.Count > 0) return found;
        found = kind.Thin.Find(prices, threshold, () => meter.Over, counts);
        meter.Add(kind.Thin.Steps / 8);
        return found;
    }
}
