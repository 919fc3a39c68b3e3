using Setout.Core.Measures;

namespace Setout.Cutting.Boards.Search;

/// <summary>
/// An instance as the search sees it: every part and every trued board one kerf longer, so that kerf is gone; parts of one
/// length are one type, longest first. Lengths in ticks.
/// </summary>
internal sealed class BoardModel
{
    public BoardModel(BoardInstance instance)
    {
        Instance = instance;
        long kerf = instance.Kerf.Ticks;
        Types = [.. instance.Parts.Where(instance.CanBeLaid)
            .GroupBy(p => p.Length.Ticks + kerf)
            .OrderByDescending(g => g.Key)
            .Select(g => new BoardType(g.Key, g.Sum(p => p.Count), [.. g]))];
        Stock = [.. instance.Stock.Select(s => new BoardKind(s, Bins(s, kerf), s.Cost.Amount, s.Limit ?? int.MaxValue))];
    }

    public BoardInstance Instance { get; }

    public BoardType[] Types { get; }

    public BoardKind[] Stock { get; }

    private static long[] Bins(BoardStock stock, long kerf) =>
        [.. Enumerable.Repeat(stock.ClearStretches(), stock.Lanes).SelectMany(lane => lane.Select(c => c.Extent.Ticks + kerf))];
}

/// <summary>Parts of one length.</summary>
internal sealed record BoardType(long Length, int Count, BoardPart[] Parts);

/// <summary>A stock: a board of it is a set of bins, one for each clear stretch of each lane, lane by lane.</summary>
internal sealed record BoardKind(BoardStock Stock, long[] Bins, decimal Cost, int Limit)
{
    /// <summary>All bins together.</summary>
    public long Length { get; } = Bins.Sum();

    /// <summary>The longest bin.</summary>
    public long Longest { get; } = Bins.Max();

    /// <summary>A plain board.</summary>
    public bool IsSingle => Bins.Length == 1;
}

/// <summary>What lies in one bin.</summary>
/// <param name="Parts">Type and count, longest first.</param>
/// <param name="Used">Lengths added up.</param>
internal sealed record BinFill((int Type, int Count)[] Parts, long Used)
{
    public static BinFill Nothing { get; } = new([], 0);
}

/// <summary>A board of the search: its stock and how many of each type it gives, as pairs.</summary>
/// <param name="Stock">Index of the stock.</param>
/// <param name="Parts">Type and count, longest first.</param>
/// <param name="Used">Lengths added up.</param>
internal sealed record Filling(int Stock, (int Type, int Count)[] Parts, long Used)
{
    /// <summary>What lies in each bin; null for a plain board, where it is all in one.</summary>
    public BinFill[]? Bins { get; private init; }

    /// <summary>Bin by bin, as many as the stock has.</summary>
    public static Filling Of(int stock, BinFill[] bins) => bins.Length == 1
        ? new(stock, bins[0].Parts, bins[0].Used)
        : new(stock,
            [.. bins.SelectMany(b => b.Parts).GroupBy(p => p.Type).OrderBy(g => g.Key).Select(g => (g.Key, g.Sum(p => p.Count)))],
            bins.Sum(b => b.Used))
        { Bins = bins };

    public BinFill[] AllBins => Bins ?? [new BinFill(Parts, Used)];
}

/// <summary>Boards in the making and the parts not yet laid.</summary>
internal sealed class BoardWork
{
    private readonly BoardModel _model;

    public BoardWork(BoardModel model)
    {
        _model = model;
        Pool = [.. model.Types.Select(t => t.Count)];
        Left = [.. model.Stock.Select(s => s.Limit)];
        foreach (BoardType type in model.Types) PoolLength += (Int128)type.Length * type.Count;
    }

    public List<Filling> Boards { get; } = [];

    public int[] Pool { get; }

    public int[] Left { get; }

    public Int128 PoolLength { get; private set; }

    public decimal Cost { get; private set; }

    public void Add(Filling board)
    {
        Boards.Add(board);
        Left[board.Stock]--;
        Cost += _model.Stock[board.Stock].Cost;
        PoolLength -= board.Used;
        foreach ((int type, int count) in board.Parts) Pool[type] -= count;
    }

    public void RemoveLast() => RemoveAt(Boards.Count - 1);

    public void RemoveAt(int at)
    {
        Filling board = Boards[at];
        Boards.RemoveAt(at);
        Left[board.Stock]++;
        Cost -= _model.Stock[board.Stock].Cost;
        PoolLength += board.Used;
        foreach ((int type, int count) in board.Parts) Pool[type] += count;
    }
}
