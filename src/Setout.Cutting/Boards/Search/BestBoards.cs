namespace Setout.Cutting.Boards.Search;

/// <summary>The best boards found by any method: least length waiting, then least money, then fewest boards.</summary>
internal sealed class BestBoards(BoardModel model, SearchMeter meter)
{
    private readonly Int128 _all = model.Types.Aggregate((Int128)0, (sum, t) => sum + ((Int128)t.Length * t.Count));

    public List<Filling> Boards { get; private set; } = [];

    public Int128 Waiting { get; private set; } = Int128.MaxValue;

    public decimal Cost { get; private set; }

    /// <summary>Which method found them.</summary>
    public string FoundBy { get; private set; } = "";

    /// <summary>True when every part is laid.</summary>
    public bool IsWhole => Waiting == 0;

    public bool Offer(List<Filling> boards, string foundBy)
    {
        Int128 waiting = _all;
        decimal cost = 0;
        foreach (Filling board in boards)
        {
            waiting -= board.Used;
            cost += model.Stock[board.Stock].Cost;
        }
        int order = waiting.CompareTo(Waiting);
        if (order == 0) order = cost.CompareTo(Cost);
        if (order == 0) order = boards.Count.CompareTo(Boards.Count);
        if (order >= 0) return false;
        (Boards, Waiting, Cost, FoundBy) = (boards, waiting, cost, foundBy);
        meter.Improved();
        return true;
    }
}
