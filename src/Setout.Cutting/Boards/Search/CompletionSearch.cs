// Over 200 lines: the greedy pass, the wide passes and the reopening share one list of candidates and one best layout.
namespace Setout.Cutting.Boards.Search;

/// <summary>
/// Bin completion: board by board, the longest part still waiting goes in, with one of the fillings around it that no waiting
/// part can be added to; the least money for the length used first. A greedy pass gives the first layout; passes of growing width
/// (so many fillings tried at each board) search on; a pass that was cut off nowhere proves its best. Then a few boards at a
/// time are opened and filled anew until the budget is used up.
/// Sources: Korf, "An improved algorithm for optimal bin packing", IJCAI 2003; the greedy pass is the minimum bin slack
/// heuristic of Gupta and Ho, Production Planning and Control 10, 1999, as changed by Fleszar and Hindi, Computers and Operations
/// Research 29, 2002. (Titles from memory.)
/// What it cannot find: on large orders with several stock lengths it stays a heuristic, because its bound on the rest is only
/// length times the best price a length; on boards of several lanes or stretches it sees only some of the ways to fill them.
/// </summary>
internal sealed class CompletionSearch(BoardModel model, SeededRandom random, SearchMeter meter, Func<BoardWork, bool> proven)
{
    private const int DeepestBoards = 500;
    private const int History = 50;
    private static readonly int[] s_widths = [2, 4, int.MaxValue];

    private readonly Completions _completions = new(model, meter);
    private readonly BinSets _sets = new(model, meter);
    private readonly List<BinFill> _bins = [];
    private readonly double _bestPrice = model.Stock.Where(s => s.Limit == int.MaxValue || s.Cost > 0)
        .Select(s => (double)s.Cost / s.Length).DefaultIfEmpty(0).Min() * (1 - 1e-9);
    private readonly bool _oneKind = model.Stock.Length == 1;
    private readonly double _someMoney = 1e-3 * (1 + (double)model.Stock.Max(s => s.Cost));
    private bool _cutOff;
    private long _stopAt;

    /// <summary>The best boards found; parts not on them could not be laid.</summary>
    public List<Filling> Best { get; private set; } = [];

    public decimal BestCost { get; private set; }

    public Int128 BestWaiting { get; private set; } = Int128.MaxValue;

    /// <summary>True when the whole tree was searched: no layout costs less.</summary>
    public bool Exhausted { get; private set; }

    public void Run()
    {
        Greedy(new BoardWork(model), 1, offer: true);
        bool deep = Best.Count <= DeepestBoards;
        for (int i = 0; deep && i < s_widths.Length && !Done(); i++)
        {
            _cutOff = false;
            _stopAt = meter.Work + ((meter.Budget - meter.Work) / 4);
            var work = new BoardWork(model);
            Branch(work, s_widths[i]);
            if (!_cutOff && BestWaiting == 0) Exhausted = true;
        }
        if (BestWaiting == 0) Reopen();
        while (!Done())
        {
            meter.Round();
            Greedy(new BoardWork(model), 2 + random.Below(4), offer: true);
        }
    }

    // Opens a few boards of a whole layout and fills their parts anew; kept by late acceptance on how full the boards are.
    private void Reopen()
    {
        var work = new BoardWork(model);
        foreach (Filling board in Best) work.Add(board);
        var history = new double[History];
        Array.Fill(history, Unrest(work));
        for (long round = 0; work.Boards.Count > 0 && !Done(); round++)
        {
            meter.Round();
            meter.Report(new(BestCost), Best.Count);
            Filling[] before = [.. work.Boards];
            double was = Unrest(work);
            int open = Math.Min(work.Boards.Count, 2 + random.Below(4));
            for (int i = 0; i < open; i++) work.RemoveAt(random.Below(work.Boards.Count));
            meter.Add(work.Boards.Count);
            Greedy(work, 1 + random.Below(3), offer: false);
            double now = work.PoolLength == 0 ? Unrest(work) : double.MaxValue;
            int slot = (int)(round % History);
            if (now <= was || now <= history[slot])
            {
                Offer(work);
            }
            else
            {
                while (work.Boards.Count > 0) work.RemoveLast();
                foreach (Filling board in before) work.Add(board);
                now = was;
            }
            history[slot] = Math.Min(history[slot], now);
        }
    }

    // Money, less for full boards: to fill some boards wholly at the cost of others is the way to save one.
    private double Unrest(BoardWork work)
    {
        double sum = 0;
        foreach (Filling board in work.Boards)
        {
            double full = (double)board.Used / model.Stock[board.Stock].Length;
            sum += ((double)model.Stock[board.Stock].Cost + _someMoney) * (1 - (full * full / 2));
        }
        return sum;
    }

    private bool Done() => meter.Over || Exhausted || (BestWaiting == 0 && BestIsProven());

    private bool BestIsProven()
    {
        var work = new BoardWork(model);
        foreach (Filling board in Best) work.Add(board);
        return proven(work);
    }

    /// <summary>Fills board after board by the best of its candidates, or by a random one of the first few.</summary>
    private void Greedy(BoardWork work, int width, bool offer)
    {
        while (!meter.Cancelled)
        {
            List<Filling> candidates = Candidates(work, all: false, out int longest);
            if (longest < 0) break;
            if (candidates.Count == 0)
            {
                // No stock is left for this length: it waits, and the shorter ones go on.
                _skipped.Add(longest);
                continue;
            }
            int pick = width == 1 ? 0 : Math.Min(candidates.Count - 1, random.OnceIn(3) ? random.Below(width) : 0);
            work.Add(candidates[pick]);
            if (offer && width > 1 && BestWaiting == 0 && Hopeless(work)) break;
        }
        _skipped.Clear();
        if (offer) Offer(work);
    }

    private readonly HashSet<int> _skipped = [];

    private void Branch(BoardWork work, int width)
    {
        if (meter.Work >= _stopAt || meter.Over)
        {
            _cutOff = true;
            return;
        }
        meter.Report(new(BestCost), Best.Count);
        if (work.PoolLength == 0)
        {
            Offer(work);
            return;
        }
        if (BestWaiting == 0 && Hopeless(work)) return;
        List<Filling> candidates = Candidates(work, all: true, out int _);
        if (candidates.Count > width) _cutOff = true;
        for (int i = 0; i < Math.Min(width, candidates.Count); i++)
        {
            work.Add(candidates[i]);
            Branch(work, width);
            work.RemoveLast();
            if (meter.Work >= _stopAt || meter.Over || (BestWaiting == 0 && BestIsProven()))
            {
                // What is not looked at any more must not count as searched.
                _cutOff = true;
                return;
            }
        }
    }

    // True when the boards so far and the least the rest can cost are no better than the best layout.
    private bool Hopeless(BoardWork work)
    {
        if (_oneKind)
        {
            long whole = model.Stock[0].Length;
            return work.Boards.Count + ((work.PoolLength + whole - 1) / whole) >= Best.Count;
        }
        Int128 rest = work.PoolLength;
        for (int s = 0; s < model.Stock.Length; s++)
            if (model.Stock[s].Cost == 0 && model.Stock[s].Limit < int.MaxValue) rest -= (Int128)work.Left[s] * model.Stock[s].Length;
        decimal least = work.Cost + (rest > 0 ? (decimal)((double)rest * _bestPrice) : 0);
        return least > BestCost || (least == BestCost && work.Boards.Count + (work.PoolLength > 0 ? 1 : 0) >= Best.Count);
    }

    private List<Filling> Candidates(BoardWork work, bool all, out int longest)
    {
        var found = new List<Filling>();
        longest = Array.FindIndex(work.Pool, c => c > 0);
        while (longest >= 0 && _skipped.Contains(longest)) longest = Array.FindIndex(work.Pool, longest + 1, c => c > 0);
        if (longest < 0) return found;
        for (int s = 0; s < model.Stock.Length; s++)
        {
            if (work.Left[s] <= 0 || model.Types[longest].Length > model.Stock[s].Longest) continue;
            if (!model.Stock[s].IsSingle)
            {
                _cutOff = true;
                _sets.List(work.Pool, longest, s, all ? 8 : 3, found);
                continue;
            }
            long leastUsed = 0;
            if (_oneKind && BestWaiting == 0 && all)
            {
                // What may be wasted in all if one board is to be saved.
                Int128 spare = ((Int128)(Best.Count - 1 - work.Boards.Count) * model.Stock[s].Length) - work.PoolLength;
                leastUsed = (long)Int128.Max(0, model.Stock[s].Length - Int128.Max(0, spare));
            }
            _bins.Clear();
            if (!_completions.List(work.Pool, longest, model.Stock[s].Length, leastUsed, _bins)) _cutOff = true;
            foreach (BinFill bin in _bins) found.Add(new(s, bin.Parts, bin.Used));
        }
        List<Filling> sorted = [.. found.OrderBy(Price).ThenByDescending(f => f.Used).ThenBy(f => f.Parts.Sum(p => p.Count))];
        return sorted;
    }

    // Money for the length used; boards in hand by what they waste, always before bought ones.
    private double Price(Filling filling)
    {
        BoardKind kind = model.Stock[filling.Stock];
        if (kind.Cost > 0) return (double)kind.Cost / filling.Used;
        return -(double)filling.Used / kind.Length;
    }

    private void Offer(BoardWork work)
    {
        if (meter.Cancelled && work.PoolLength > 0 && Best.Count > 0) return;
        int order = work.PoolLength.CompareTo(BestWaiting);
        if (order == 0) order = work.Cost.CompareTo(BestCost);
        if (order == 0) order = work.Boards.Count.CompareTo(Best.Count);
        if (order >= 0) return;
        Best = [.. work.Boards];
        BestCost = work.Cost;
        BestWaiting = work.PoolLength;
        meter.Improved();
    }
}
