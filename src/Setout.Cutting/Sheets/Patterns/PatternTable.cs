namespace Setout.Cutting.Sheets.Patterns;

/// <summary>One way of lying of a type of part.</summary>
/// <param name="Type">The type.</param>
/// <param name="Along">Size along the grain.</param>
/// <param name="Across">Size across the grain.</param>
/// <param name="Turned">Whether it lies turned.</param>
internal readonly record struct PatternPart(int Type, int Along, int Across, bool Turned);

/// <summary>
/// The most that one sheet can be worth when parts have prices and any number of each may be cut, edge to edge: dynamic programming over the
/// rectangles whose sides are lengths that matter, see <see cref="Raster"/>. Exact in whole numbers, so bounds may rest on it; and for each rectangle at the near corner
/// the most that the rest of the sheet can be worth.
/// Sources (titles from memory): Gilmore and Gomory, "The theory and computation of knapsack functions", Operations Research 14, 1966; Cintra, Miyazawa,
/// Wakabayashi and Xavier, "Algorithms for two-dimensional cutting stock and strip packing problems using dynamic programming and column generation",
/// European Journal of Operational Research 191, 2008.
/// What it cannot see: that there are only so many of a part.
/// </summary>
internal sealed class PatternTable
{
    private readonly PatternPart[] _parts;
    private readonly Raster _along, _across;
    private readonly int _columns;
    private readonly long[] _best; // by length along, then across
    private readonly long[] _rest; // what lies beyond, by what is left along and across
    private readonly int[] _rowBeyond, _columnBeyond; // by size of a rectangle at the corner: where to find what lies beyond
    private bool _restIsKnown;

    /// <summary>A table for one size of sheet.</summary>
    /// <param name="along">The sheet along the grain.</param>
    /// <param name="across">The sheet across the grain.</param>
    /// <param name="parts">Ways of lying; those that do not fit are left out.</param>
    /// <param name="counts">How many of each type: only to find the lengths that matter.</param>
    /// <param name="mostWork">No table is made when one fill would take more steps.</param>
    public PatternTable(int along, int across, IEnumerable<PatternPart> parts, int[] counts, long mostWork = MostWork)
    {
        (Along, Across) = (along, across);
        _parts = [.. parts.Where(p => p.Along <= along && p.Across <= across)];
        int[] many = [.. _parts.Select(p => counts[p.Type])];
        _along = new(along, [.. _parts.Select(p => p.Along)], many, MostLengths);
        _across = new(across, [.. _parts.Select(p => p.Across)], many, MostLengths);
        _columns = _across.At.Length;
        long cells = (long)_along.At.Length * _columns;
        Work = cells + (_along.Cuts.Sum(c => (long)c.Length) * _columns) + (_across.Cuts.Sum(c => (long)c.Length) * _along.At.Length);
        IsAffordable = _along.IsComplete && _across.IsComplete && cells <= MostCells && Work <= mostWork;
        _best = new long[IsAffordable ? cells : 0];
        _rest = new long[_best.Length];
        _rowBeyond = [.. Enumerable.Range(0, along + 1).Select(x => _along.Holding(along - x) * _columns)];
        _columnBeyond = [.. Enumerable.Range(0, across + 1).Select(y => _across.Holding(across - y))];
    }

    /// <summary>Above this many cells a table is not made.</summary>
    public const long MostCells = 4_000_000;

    /// <summary>Above this many steps a fill would take too long: about a fifth of a second.</summary>
    public const long MostWork = 150_000_000;

    private const int MostLengths = 3_000;

    public int Along { get; }

    public int Across { get; }

    /// <summary>Steps of one fill.</summary>
    public long Work { get; }

    /// <summary>False when the table would be too large; then it may not be filled.</summary>
    public bool IsAffordable { get; }

    /// <summary>The most the sheet can be worth at the prices of the last fill.</summary>
    public long Best => _best[^1];

    /// <summary>The most that what lies beyond a rectangle at the corner can be worth, however the rest is cut.</summary>
    public long Beyond(int along, int across) => _rest[_rowBeyond[along] + _columnBeyond[across]];

    /// <summary>Works out what lies beyond rectangles, once for a fill; before <see cref="Beyond"/> is asked. False when it was stopped on the way.</summary>
    public bool LookBeyond(Func<bool> stop) => _restIsKnown || FillRest(stop);

    /// <summary>Fills the table for prices by type, zero or more. False when it was stopped on the way; then it holds nothing to go by.</summary>
    public bool Fill(ReadOnlySpan<long> prices, Func<bool> stop)
    {
        _restIsKnown = false;
        Array.Clear(_best);
        foreach (PatternPart part in _parts)
        {
            int cell = (FromAtLeast(_along, part.Along) * _columns) + FromAtLeast(_across, part.Across);
            _best[cell] = Math.Max(_best[cell], prices[part.Type]);
        }
        for (int i = 0; i < _along.At.Length; i++)
        {
            if (stop()) return false;
            Span<long> row = _best.AsSpan(i * _columns, _columns);
            if (i > 0) Raise(row, _best.AsSpan((i - 1) * _columns, _columns));
            // Crosscuts: two shorter rectangles of the same width, whole rows at once.
            foreach ((int a, int b) in _along.Cuts[i])
            {
                ReadOnlySpan<long> near = _best.AsSpan(a * _columns, _columns), far = _best.AsSpan(b * _columns, _columns);
                for (int j = 0; j < row.Length; j++) row[j] = Math.Max(row[j], near[j] + far[j]);
            }
            // Rips, narrow before wide.
            for (int j = 1; j < row.Length; j++)
            {
                long best = Math.Max(row[j], row[j - 1]);
                foreach ((int a, int b) in _across.Cuts[j]) best = Math.Max(best, row[a] + row[b]);
                row[j] = best;
            }
        }
        return true;
    }

    /// <summary>A best way to cut the sheet.</summary>
    public PatternNode Pattern(ReadOnlySpan<long> prices) => Pattern(_along.At.Length - 1, _columns - 1, prices);

    private static void Raise(Span<long> row, ReadOnlySpan<long> before)
    {
        for (int j = 0; j < row.Length; j++) row[j] = Math.Max(row[j], before[j]);
    }

    // The first length that a part of this size fits.
    private static int FromAtLeast(Raster raster, int size)
    {
        int at = Array.BinarySearch(raster.At, size);
        return at < 0 ? ~at : at;
    }

    private PatternNode Pattern(int i, int j, ReadOnlySpan<long> prices)
    {
        long best = _best[(i * _columns) + j];
        if (best == 0) return PatternNode.Nothing;
        while (i > 0 && _best[((i - 1) * _columns) + j] == best) i--;
        while (j > 0 && _best[(i * _columns) + j - 1] == best) j--;
        int x = _along.At[i], y = _across.At[j];
        foreach (PatternPart part in _parts)
            if (prices[part.Type] == best && part.Along <= x && part.Across <= y) return PatternNode.Of(part);
        foreach ((int a, int b) in _along.Cuts[i])
            if (_best[(a * _columns) + j] + _best[(b * _columns) + j] == best) return PatternNode.Join(true, Pattern(a, j, prices), Pattern(b, j, prices));
        foreach ((int a, int b) in _across.Cuts[j])
            if (_best[(i * _columns) + a] + _best[(i * _columns) + b] == best) return PatternNode.Join(false, Pattern(i, a, prices), Pattern(i, b, prices));
        throw new InvalidOperationException("A rectangle is worth more than any way to cut it.");
    }

    // By what is left along (a) and across (b): the rectangle at the corner is the sheet less that. What is beyond it is cut off strip by strip.
    private bool FillRest(Func<bool> stop)
    {
        Array.Clear(_rest);
        for (int a = 0; a < _along.At.Length; a++)
        {
            if (stop()) return false;
            int corner = _along.Holding(Along - _along.At[a]) * _columns;
            for (int b = 0; b < _columns; b++)
            {
                int depth = _across.Holding(Across - _across.At[b]);
                // All that is left in one strip, or a part of it in a strip and the rest beyond that.
                long most = Math.Max(_best[(a * _columns) + depth] + _rest[b], _best[corner + b] + _rest[a * _columns]);
                foreach ((int p, int q) in _along.Cuts[a])
                    most = Math.Max(most, Math.Max(_best[(p * _columns) + depth] + _rest[(q * _columns) + b], _best[(q * _columns) + depth] + _rest[(p * _columns) + b]));
                foreach ((int p, int q) in _across.Cuts[b])
                    most = Math.Max(most, Math.Max(_best[corner + p] + _rest[(a * _columns) + q], _best[corner + q] + _rest[(a * _columns) + p]));
                _rest[(a * _columns) + b] = a == 0 && b == 0 ? 0 : most;
            }
        }
        return _restIsKnown = true;
    }
}
