// Over 200 lines: the column generation is one loop with what it needs.
using Setout.Core.Measures;
using Setout.Cutting.Bounds;
using Setout.Cutting.Programs;
using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Patterns;

/// <summary>
/// The linear program over all patterns that can be sawn, by column generation: patterns are sought by <see cref="PatternTable"/>, and where those take more
/// of a part than there are, by <see cref="PatternSearch"/>. Its prices, rounded down to whole numbers, give a proven bound: what all parts
/// are worth against the most that a sheet can be worth. Where a gap is left, every pattern that a cheaper layout could contain is listed, if they are not
/// too many, and an integer program says whether some of them hold all parts: that is a better layout, or the proof that there is none.
/// Sources (titles from memory): Gilmore and Gomory, "Multistage cutting stock problems of two and more dimensions", Operations Research 13, 1965; Farley, "A note on
/// bounding a class of linear programming problems, including cutting stock problems", Operations Research 38, 1990.
/// What it cannot see: anything where the positions of cuts are too many for a table. The last proof, over listed patterns, rests on the library's search in whole numbers.
/// </summary>
internal sealed class PatternBound : IDisposable
{
    private const int ColumnsAtOnce = 8;
    private const int MostListed = 20_000;
    private const long FirstSteps = 500_000;
    private const long TableWork = 2_000_000;
    private const double ListEffort = 2;

    private readonly IPrograms _programs;
    private readonly int[] _counts;
    private readonly PatternProgram? _program;
    private readonly List<Kind> _kinds = [];
    private readonly long[] _areas = [];
    private long _mostSteps = FirstSteps;
    private bool _oneIsTried;
    private bool _isSolved;

    /// <summary>A stock that may be used.</summary>
    private sealed record Kind(int Stock, decimal Cost, int Limit, PatternTable Table, PatternSearch Search, StripPatterns Strips);

    /// <summary>Begins with no patterns at all.</summary>
    public PatternBound(SheetModel model, IPrograms programs)
    {
        _programs = programs;
        _counts = [.. model.Types.Select(t => t.Count)];
        if (!PatternProgram.CanTake(model)) return;
        PatternPart[] parts = PatternProgram.PartsOf(model);
        for (int s = 0; s < model.Stock.Length; s++)
        {
            StockType stock = model.Stock[s];
            if (stock.Limit == 0) continue;
            var table = new PatternTable((int)stock.Along, (int)stock.Across, parts, _counts);
            _kinds.Add(new(s, stock.Cost, stock.Limit, table, new(table, parts, _counts), new((int)stock.Along, (int)stock.Across, parts, _counts)));
        }
        _areas = [.. model.Types.Select(t => t.Along * t.Across)];
        IsUsable = true;
        _program = new(model, [.. _kinds.Select(k => k.Stock)], programs);
    }

    /// <summary>False when positions are too many, or the sizes have no common step; then nothing can be said.</summary>
    public bool IsUsable { get; }

    /// <summary>
    /// True when no other source of patterns is wanted: the linear program was solved to its end, so that no pattern whatever would make it cheaper, or every stock has a
    /// complete table that is quickly filled.
    /// </summary>
    public bool IsEnough => _isSolved || (IsUsable && _kinds.TrueForAll(k => k.Table.IsAffordable && k.Table.Work <= TableWork));

    /// <summary>The patterns met, with their shares in the last answer of the linear program.</summary>
    public List<(int Stock, PatternNode Pattern, double Share)> Patterns { get; } = [];

    /// <summary>A layout found on the way that costs less than any known: patterns by stock. Null when there was none.</summary>
    public List<(int Stock, PatternNode Pattern)>? Better { get; private set; }

    /// <summary>True when nothing more can be said, however much work is spent.</summary>
    public bool IsFinished { get; private set; }

    /// <summary>The better of <paramref name="known"/> and what the patterns prove; null when they prove the stock too little. May be called again, and goes on.</summary>
    /// <param name="known">What is proven already.</param>
    /// <param name="best">Money and sheets of the best layout known; null when none holds all parts.</param>
    /// <param name="meter">The work to spend.</param>
    public LayoutBound? Improve(LayoutBound known, Goal? best, SearchMeter meter)
    {
        Patterns.Clear();
        Better = null;
        if (_program is null || IsFinished) return known;
        Goal toReach = best ?? Goal.None;
        known = OnOne(known, toReach, meter);
        // Without a table for every stock nothing more can be proven.
        IsFinished = Better is null && _kinds.Exists(k => !k.Table.IsAffordable);
        if (IsFinished || Better is not null || !toReach.Allows(known.Cost.Amount, known.Count)) return known;
        var prices = new long[_counts.Length];
        var dues = new long[_kinds.Count];
        var capacities = new long[_kinds.Count];
        while (!meter.Over && _program.Solve(prices, dues, CancellationToken.None))
        {
            (int Stock, PatternNode Pattern, double Share)[] shares = [.. _program.Shares];
            bool more = false, proven = true;
            for (int k = 0; k < _kinds.Count; k++)
            {
                (List<PatternNode> found, capacities[k], bool isProven) = Price(_kinds[k], prices, dues[k], meter);
                proven &= isProven;
                more |= found.Count > 0;
                foreach (PatternNode pattern in found) _program.Add(k, pattern);
            }
            meter.Add(_program.Work);
            if (proven && !Take(ref known, prices, capacities)) return null;
            bool reached = !toReach.Allows(known.Cost.Amount, known.Count);
            if (more && !reached && !meter.Over) continue;
            Patterns.AddRange(shares);
            if (reached || more) break;
            if (meter.Over) break;
            _isSolved |= proven;
            if (!proven) _mostSteps *= 4;
            else if (best is { } toBeat) known = List(known, toBeat, prices, dues, meter);
            if (_kinds.Any(k => k.Search.IsFull)) IsFinished = true;
            break;
        }
        return known;
    }

    /// <inheritdoc/>
    public void Dispose() => _program?.Dispose();

    // Patterns worth more than the threshold, and a proven most that any pattern can be worth.
    private (List<PatternNode> Patterns, long Most, bool IsProven) Price(Kind kind, long[] prices, long threshold, SearchMeter meter)
    {
        // A pattern of strips is quicker to find; the table is for when there is none, and for the proof.
        if (kind.Table.Work > TableWork)
        {
            List<PatternNode> strips = kind.Strips.Find(prices, threshold, () => meter.Over);
            meter.Add(kind.Strips.TakeCells() / 16);
            if (strips.Count > 0) return (strips, long.MaxValue, false);
        }
        if (!kind.Table.Fill(prices, () => meter.Over)) return ([], long.MaxValue, false);
        meter.Add(kind.Table.Work / 8);
        long most = kind.Table.Best;
        if (most <= threshold) return ([], Math.Max(most, 1), true);
        PatternNode within = kind.Table.Pattern(prices).Within([.. _counts]);
        long worth = _program!.Counted(within).Sum(c => c.Count * prices[c.Type]);
        if (worth > threshold) return ([within], most, true);
        (List<PatternNode> found, bool finished, long proven) = kind.Search.Find(prices, threshold, _mostSteps, ColumnsAtOnce, () => meter.Over);
        meter.Add(kind.Search.Steps + kind.Table.Work);
        return (found, Math.Min(most, proven), finished);
    }

    // Whether one sheet holds all parts: a pattern of the whole area of the parts is looked for, and any waste beyond what the sheet has to spare ends the way to it.
    private LayoutBound OnOne(LayoutBound known, Goal best, SearchMeter meter)
    {
        if (_oneIsTried || known.Count > 1) return known;
        long[] areas = [.. _areas];
        long whole = areas.Zip(_counts, (a, n) => a * n).Sum();
        bool finished = true;
        foreach (Kind kind in _kinds)
        {
            if (!kind.Table.IsAffordable || !best.Allows(kind.Cost, 1) || whole > (long)kind.Table.Along * kind.Table.Across) continue;
            if (!kind.Table.Fill(areas, () => meter.Over)) return known;
            (List<PatternNode> found, bool done, long _) = kind.Search.Find(areas, whole - 1, 4 * _mostSteps, 1, () => meter.Over);
            meter.Add(kind.Search.Steps + kind.Table.Work);
            finished &= done;
            if (found.Count == 0) continue;
            Better = [(kind.Stock, found[0])];
            return known;
        }
        _oneIsTried = finished && _kinds.TrueForAll(k => k.Table.IsAffordable);
        if (!_oneIsTried || _kinds.Count > 1) return known;
        var two = new Money(2 * _kinds[0].Cost);
        return known with { Count = 2, Cost = known.Cost > two ? known.Cost : two, Method = "search for one sheet" };
    }

    // A layout that costs less than the best known can hold only patterns that are worth nearly what is due for their stock: lists them all and chooses.
    private LayoutBound List(LayoutBound known, Goal best, long[] prices, long[] dues, SearchMeter meter)
    {
        IsFinished = _kinds.Any(k => k.Limit != int.MaxValue || k.Cost == 0);
        if (IsFinished) return known;
        long unit = _kinds.Aggregate(0L, (unit, k) => (long)System.Numerics.BigInteger.GreatestCommonDivisor(unit, Whole(k.Cost)));
        long target = Whole(best.Cost) - unit; // no layout costs between this and the best
        long[] lifted = [.. prices.Select(p => Math.Max(1, p))];
        Int128 need = 0;
        for (int t = 0; t < lifted.Length; t++) need += (Int128)lifted[t] * _counts[t];
        // Money times this is what is due: the largest ratio over the kinds, so that no pattern is worth more than is due for it.
        var caps = new long[_kinds.Count];
        var listed = new List<(int Kind, PatternNode Pattern)>();
        double ratio = 0;
        for (int k = 0; k < _kinds.Count; k++)
        {
            if (!_kinds[k].Table.Fill(lifted, () => meter.Over)) return known;
            (_, bool finished, caps[k]) = _kinds[k].Search.Find(lifted, dues[k] + lifted.Length, _mostSteps, 1, () => meter.Over);
            if (!finished)
            {
                _mostSteps *= 4;
                return known;
            }
            ratio = Math.Max(ratio, (double)caps[k] / Whole(_kinds[k].Cost));
        }
        for (int k = 0; k < _kinds.Count; k++)
        {
            double gap = (target * ratio) - (double)need + 2;
            long threshold = (long)Math.Floor((Whole(_kinds[k].Cost) * ratio) - gap) - 2;
            IsFinished = threshold <= 0;
            if (IsFinished) return known;
            (List<PatternNode> found, bool finished, long _) = _kinds[k].Search.Find(lifted, threshold, 4 * _mostSteps, MostListed, () => meter.Over);
            meter.Add(_kinds[k].Search.Steps);
            if (!finished)
            {
                _mostSteps *= 4;
                IsFinished = found.Count >= MostListed;
                return known;
            }
            listed.AddRange(found.Select(f => (k, f)));
        }
        IsFinished = true;
        if (listed.Count == 0) return known with { Cost = Priced(target + unit), Method = "listed patterns" };
        ProgramColumn[] columns = [.. listed.Select(l => new ProgramColumn(Whole(_kinds[l.Kind].Cost), _counts.Max(), [.. _program!.Counted(l.Pattern).Select(c => (c.Type, c.Count))]))];
        IntegerAnswer answer = _programs.Choose(new([.. _counts.Select(c => new ProgramRow(c, int.MaxValue))], columns, target + 1), new(ListEffort, meter.Seed), meter.Ending);
        if (answer.Counts is { } counts)
        {
            // A better layout moves the goal, and the question is open again.
            IsFinished = false;
            Better = [.. listed.SelectMany((l, i) => Enumerable.Repeat((_kinds[l.Kind].Stock, l.Pattern), counts[i]))];
            return known;
        }
        return answer.Finished ? known with { Cost = Priced(target + unit), Method = "listed patterns" } : known;
    }

    private static long Whole(decimal money) => checked((long)(money * 10_000m));

    private static Money Priced(long whole) => new(whole / 10_000m);

    // False when the stock is proven too little.
    private bool Take(ref LayoutBound known, long[] prices, long[] capacities)
    {
        Int128 need = 0;
        for (int t = 0; t < prices.Length; t++) need += (Int128)prices[t] * _counts[t];
        Cover[] covers = [.. _kinds.Select((k, i) => new Cover(capacities[i], k.Cost, k.Limit))];
        if (CoveringBound.FewestParts(need, covers) is not { } fewest || CoveringBound.LeastMoney(need, covers) is not { } least) return false;
        Money money = MoneyStep.RoundUp(least, _kinds.Select(k => new Money(k.Cost)));
        if (fewest > known.Count) known = known with { Count = fewest };
        if (money > known.Cost) known = known with { Cost = money, Method = "patterns" };
        return true;
    }
}
