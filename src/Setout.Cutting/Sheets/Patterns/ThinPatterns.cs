namespace Setout.Cutting.Sheets.Patterns;

/// <summary>
/// Good patterns of any number of stages where the lengths that matter are too many for a <see cref="PatternTable"/>: the same programme over rectangles whose sides
/// are some of the lengths. Each rectangle holds one best way to cut it that takes no more of a part than there is, and what that way does not use is given to the
/// rectangle beside it. Each call looks at another choice of lengths. It gives patterns and no figure for what a sheet can be worth, so that no bound can come from it.
/// What it cannot find: patterns whose cuts lie at lengths left out, and those where a worse rectangle would leave better parts for the other.
/// </summary>
internal sealed class ThinPatterns
{
    private const int MostLengths = 220;
    private const int AtOnce = 8;

    private readonly PatternPart[] _parts;
    private int[] _counts = [];
    private readonly int _sideAlong, _sideAcross, _lengths;
    private ThinLengths _along = null!, _across = null!;
    private int _columns, _turn;
    private long[] _best = []; // by length along, then across
    private int[] _usedAlong = [], _usedAcross = [];
    private Piece?[] _pieces = [];

    /// <summary>What is cut from a rectangle: the parts are <see cref="PartCounts"/>.</summary>
    private sealed record Piece(PatternNode Node, long Worth, int[] Parts);

    /// <summary>Patterns for one size of sheet.</summary>
    /// <param name="along">The sheet along the grain.</param>
    /// <param name="across">The sheet across the grain.</param>
    /// <param name="parts">Ways of lying; those that do not fit are left out.</param>
    /// <param name="lengths">How many lengths of each side are looked at, two or more.</param>
    public ThinPatterns(int along, int across, IEnumerable<PatternPart> parts, int lengths = MostLengths)
    {
        (_sideAlong, _sideAcross, _lengths) = (along, across, lengths);
        _parts = [.. parts.Where(p => p.Along <= along && p.Across <= across)];
    }

    /// <summary>Steps of the last call.</summary>
    public long Steps { get; private set; }

    /// <summary>Patterns worth more than a threshold for these prices by type, the best first, with no more of a part than <paramref name="counts"/>.</summary>
    public List<PatternNode> Find(long[] prices, long threshold, Func<bool> stop, int[] counts)
    {
        _counts = counts;
        Steps = 0;
        PatternPart[] wanted = [.. _parts.Where(p => counts[p.Type] > 0 && prices[p.Type] > 0)];
        if (wanted.Length == 0) return [];
        int[] many = [.. wanted.Select(p => counts[p.Type])];
        _along = new(_sideAlong, [.. wanted.Select(p => p.Along)], many, _lengths, _turn);
        _across = new(_sideAcross, [.. wanted.Select(p => p.Across)], many, _lengths, _turn++);
        _columns = _across.At.Length;
        int cells = _along.At.Length * _columns;
        (_best, _usedAlong, _usedAcross, _pieces) = (new long[cells], new int[cells], new int[cells], new Piece?[cells]);
        foreach (PatternPart part in wanted)
        {
            int cell = (_along.Holding(part.Along) * _columns) + _across.Holding(part.Across);
            if (prices[part.Type] > _best[cell]) Set(cell, new(PatternNode.Of(part), prices[part.Type], [PartCounts.Pair(part.Type, 1)]));
        }
        var whole = new List<(long Worth, bool JoinsAlong, int First, int Second)>();
        for (int i = 1; i < _along.At.Length; i++)
            for (int j = 1; j < _columns; j++)
            {
                if (stop()) return [];
                FillCell(i, j, i == _along.At.Length - 1 && j == _columns - 1 ? whole : null, threshold);
            }
        var found = new List<PatternNode>();
        var sets = new HashSet<string>();
        void Offer(Piece piece)
        {
            if (piece.Worth > threshold && sets.Add(string.Join(',', piece.Parts))) found.Add(piece.Node);
        }

        if (_pieces[^1] is { } best) Offer(best);
        foreach ((long worth, bool joinsAlong, int first, int second) in whole.OrderByDescending(w => w.Worth))
        {
            if (found.Count >= AtOnce) break;
            if (Join(joinsAlong, first, second, worth) is { } piece) Offer(piece);
        }
        return found;
    }

    private void Set(int cell, Piece piece)
    {
        _pieces[cell] = piece;
        _best[cell] = piece.Worth;
        (_usedAlong[cell], _usedAcross[cell]) = (piece.Node.Along, piece.Node.Across);
    }

    private void FillCell(int i, int j, List<(long, bool, int, int)>? all, long threshold)
    {
        int row = i * _columns, cell = row + j;
        foreach (int smaller in (ReadOnlySpan<int>)[cell - _columns, cell - 1])
            if (_best[smaller] > _best[cell]) Set(cell, _pieces[smaller]!);
        int along = _along.At[i], across = _across.At[j];
        for (int a = 1; a < i; a++)
        {
            int first = (a * _columns) + j;
            if (_best[first] == _best[first - _columns]) continue;
            int second = (_along.Within(along - _usedAlong[first]) * _columns) + j;
            Try(true, first, second);
        }
        for (int b = 1; b < j; b++)
        {
            int first = row + b;
            if (_best[first] == _best[first - 1]) continue;
            Try(false, first, row + _across.Within(across - _usedAcross[first]));
        }
        Steps += i + j;

        void Try(bool joinsAlong, int first, int second)
        {
            long worth = _best[first] + _best[second];
            if (all is not null && worth > threshold && _best[second] > 0) all.Add((worth, joinsAlong, first, second));
            if (worth > _best[cell] && Join(joinsAlong, first, second, worth) is { } piece) Set(cell, piece);
        }
    }

    // Null when the two together take more than there is.
    private Piece? Join(bool along, int first, int second, long worth)
    {
        if (_pieces[first] is not { } a || _pieces[second] is not { } b || PartCounts.Union(a.Parts, b.Parts, _counts) is not { } both) return null;
        return new(PatternNode.Join(along, a.Node, b.Node), worth, both);
    }
}
