namespace Setout.Cutting.Sheets.Patterns;

/// <summary>One way of lying of a type of part.</summary>
/// <param name="Type">The type.</param>
/// <param name="Along">Size along the grain.</param>
/// <param name="Across">Size across the grain.</param>
/// <param name="Turned">Whether it lies turned.</param>
internal readonly record struct PatternPart(int Type, int Along, int Across, bool Turned);

/// <summary>
/// The most that one sheet can be worth when parts have prices and any number of each may be cut, edge to edge: dynamic programming over the
/// rectangles whose sides are raster positions. Exact in whole numbers, so bounds may rest on it; and for each rectangle at the near corner
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
    private readonly long[] _best; // by position along, then across
    private readonly long[] _rest; // what lies beyond, by what is left along and across
    private readonly int[] _rowBeyond, _columnBeyond; // by size of a rectangle at the corner: where to find what lies beyond
    private bool _restIsKnown;

    /// <summary>A table for one size of sheet.</summary>
    /// <param name="along">The sheet along the grain.</param>
    /// <param name="across">The sheet across the grain.</param>
    /// <param name="parts">Ways of lying; those that do not fit are left out.</param>
    /// <param name="counts">How many of each type: only to find the positions.</param>
    public PatternTable(int along, int across, IEnumerable<PatternPart> parts, int[] counts)
    {
        (Along, Across) = (along, across);
        _parts = [.. parts.Where(p => p.Along <= along && p.Across <= across)];
        int[] many = [.. _parts.Select(p => counts[p.Type])];
        _along = new(along, [.. _parts.Select(p => p.Along)], many);
        _across = new(across, [.. _parts.Select(p => p.Across)], many);
        _columns = _across.At.Length;
        long cells = (long)_along.At.Length * _columns;
        Work = cells * (_along.At.Length + _columns) / 4;
        IsAffordable = cells <= MostCells && Work <= MostWork;
        if (!IsAffordable) cells = 0;
        _best = new long[cells];
        _rest = new long[cells];
        _rowBeyond = [.. Enumerable.Range(0, along + 1).Select(x => _along.Below(along - x) * _columns)];
        _columnBeyond = [.. Enumerable.Range(0, across + 1).Select(y => _across.Below(across - y))];
    }

    /// <summary>Above this many cells a table is not made.</summary>
    public const long MostCells = 1_500_000;

    /// <summary>Above this many steps a fill would take too long: about half a second.</summary>
    public const long MostWork = 300_000_000;

    public int Along { get; }

    public int Across { get; }

    /// <summary>Steps of one fill.</summary>
    public long Work { get; }

    /// <summary>False when the table would be too large; then it may not be filled.</summary>
    public bool IsAffordable { get; }

    /// <summary>The most the sheet can be worth at the prices of the last fill.</summary>
    public long Best => _best[^1];

    /// <summary>The most a rectangle can be worth.</summary>
    public long BestOf(int along, int across) => _best[(_along.Below(along) * _columns) + _across.Below(across)];

    /// <summary>The most that what lies beyond a rectangle at the corner can be worth, however the rest is cut.</summary>
    public long Beyond(int along, int across) => _rest[_rowBeyond[along] + _columnBeyond[across]];

    /// <summary>Works out what lies beyond rectangles, once for a fill; before <see cref="Beyond"/> is asked.</summary>
    public void LookBeyond()
    {
        if (!_restIsKnown) FillRest();
    }

    /// <summary>Fills the table for prices by type, zero or more.</summary>
    public void Fill(ReadOnlySpan<long> prices)
    {
        _restIsKnown = false;
        Array.Clear(_best);
        for (int p = 0; p < _parts.Length; p++)
        {
            int i = FromAtLeast(_along, _parts[p].Along), j = FromAtLeast(_across, _parts[p].Across);
            if (i < 0 || j < 0) continue;
            int cell = (i * _columns) + j;
            if (prices[_parts[p].Type] <= _best[cell]) continue;
            _best[cell] = prices[_parts[p].Type];
        }
        int rows = _along.At.Length;
        for (int i = 0; i < rows; i++)
        {
            Span<long> row = _best.AsSpan(i * _columns, _columns);
            if (i > 0)
                for (int j = 0; j < _columns; j++) Raise(i, j, (i - 1) * _columns + j);
            // Crosscuts: two shorter rectangles of the same width, whole rows at once.
            int x = _along.At[i];
            for (int k = 1; k < i && 2 * _along.At[k] <= x; k++)
            {
                ReadOnlySpan<long> near = _best.AsSpan(k * _columns, _columns), far = _best.AsSpan(_along.Below(x - _along.At[k]) * _columns, _columns);
                for (int j = 0; j < row.Length; j++) row[j] = Math.Max(row[j], near[j] + far[j]);
            }
            // Rips, narrow before wide.
            for (int j = 1; j < _columns; j++)
            {
                if (row[j - 1] > row[j]) row[j] = row[j - 1];
                long best = row[j];
                int y = _across.At[j];
                for (int k = 1; k < j && 2 * _across.At[k] <= y; k++) best = Math.Max(best, row[k] + row[_across.Below(y - _across.At[k])]);
                row[j] = best;
            }
        }
    }

    /// <summary>A best way to cut the sheet.</summary>
    public PatternNode Pattern(ReadOnlySpan<long> prices) => Pattern(_along.At.Length - 1, _columns - 1, prices);

    private void Raise(int i, int j, int from)
    {
        int cell = (i * _columns) + j;
        if (_best[from] > _best[cell]) _best[cell] = _best[from];
    }

    // The first position at which a part of this size fits, or -1.
    private static int FromAtLeast(Raster raster, int size)
    {
        int at = Array.BinarySearch(raster.At, size);
        if (at < 0) at = ~at;
        return at < raster.At.Length ? at : -1;
    }

    private PatternNode Pattern(int i, int j, ReadOnlySpan<long> prices)
    {
        long best = _best[(i * _columns) + j];
        if (best == 0) return PatternNode.Nothing;
        while (i > 0 && _best[((i - 1) * _columns) + j] == best) i--;
        while (j > 0 && _best[(i * _columns) + j - 1] == best) j--;
        int x = _along.At[i], y = _across.At[j];
        for (int p = 0; p < _parts.Length; p++)
            if (prices[_parts[p].Type] == best && _parts[p].Along <= x && _parts[p].Across <= y) return PatternNode.Of(_parts[p]);
        for (int k = 1; k < i && 2 * _along.At[k] <= x; k++)
        {
            int other = _along.Below(x - _along.At[k]);
            if (_best[(k * _columns) + j] + _best[(other * _columns) + j] == best)
                return PatternNode.Join(true, Pattern(k, j, prices), Pattern(other, j, prices));
        }
        for (int k = 1; k < j && 2 * _across.At[k] <= y; k++)
        {
            int other = _across.Below(y - _across.At[k]);
            if (_best[(i * _columns) + k] + _best[(i * _columns) + other] == best)
                return PatternNode.Join(false, Pattern(i, k, prices), Pattern(i, other, prices));
        }
        throw new InvalidOperationException("A rectangle is worth more than any way to cut it.");
    }

    // By what is left along (a) and across (b): the rectangle at the corner is the sheet less that. What is beyond it is cut off strip by strip.
    private void FillRest()
    {
        int rows = _along.At.Length;
        for (int a = 0; a < rows; a++)
        {
            int corner = _along.Below(Along - _along.At[a]);
            for (int b = 0; b < _columns; b++)
            {
                int height = _across.Below(Across - _across.At[b]);
                long most = 0;
                for (int k = 1; k <= a; k++)
                    most = Math.Max(most, _best[(k * _columns) + height] + _rest[(_along.Below(_along.At[a] - _along.At[k]) * _columns) + b]);
                for (int k = 1; k <= b; k++)
                    most = Math.Max(most, _best[(corner * _columns) + k] + _rest[(a * _columns) + _across.Below(_across.At[b] - _across.At[k])]);
                _rest[(a * _columns) + b] = most;
            }
        }
        _restIsKnown = true;
    }
}
