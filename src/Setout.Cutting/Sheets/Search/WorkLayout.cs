// Over 200 lines: the state of the search with its one way of adding a part.
using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Search;

/// <summary>How the first cut in a free rectangle may go.</summary>
internal enum FirstCut
{
    /// <summary>Rips first: the part's strip runs the whole length of the free rectangle.</summary>
    Rip,

    /// <summary>Crosscuts first.</summary>
    Crosscut,

    /// <summary>Whichever leaves the better rest.</summary>
    Either,

    /// <summary>Rips first, and in each strip only parts of its own width: few settings, where there is room for it.</summary>
    RipEqual,

    /// <summary>Crosscuts first, and in each strip only parts of its own width.</summary>
    CrosscutEqual,
}

/// <summary>How parts that may be turned may lie.</summary>
internal enum Lie
{
    /// <summary>Either way.</summary>
    Either,

    /// <summary>The longer side along the grain.</summary>
    Along,

    /// <summary>The longer side across the grain.</summary>
    Across,
}

/// <summary>Sheets in the making and the parts not yet laid.</summary>
internal sealed class WorkLayout
{
    private readonly SheetModel _model;
    private readonly int[] _stockUsed;
    private readonly List<WorkSheet> _markedSheets = [];
    private readonly int[] _markedPool;
    private readonly int[] _markedStock;
    private decimal _markedCost;
    private long _mark;
    private int _copied;

    public WorkLayout(SheetModel model)
    {
        _model = model;
        _stockUsed = new int[model.Stock.Length];
        _markedStock = new int[_stockUsed.Length];
        Pool = [.. model.Types.Select(t => t.Count)];
        _markedPool = new int[Pool.Length];
        CountPool();
    }

    private WorkLayout(WorkLayout from)
    {
        _model = from._model;
        _stockUsed = [.. from._stockUsed];
        _markedStock = new int[_stockUsed.Length];
        Pool = [.. from.Pool];
        _markedPool = new int[Pool.Length];
        PoolArea = from.PoolArea;
        PoolCount = from.PoolCount;
        Cost = from.Cost;
        Sheets.AddRange(from.Sheets.Select(s => s.Clone()));
    }

    public List<WorkSheet> Sheets { get; } = [];

    /// <summary>Parts of each type not yet laid.</summary>
    public int[] Pool { get; }

    public double PoolArea { get; private set; }

    public int PoolCount { get; private set; }

    public decimal Cost { get; private set; }

    /// <summary>One way of laying a part is overlooked in so many, where the caller gives a random source.</summary>
    public int BlinkOnceIn { get; set; } = 64;

    /// <summary>How parts that may be turned may lie.</summary>
    public Lie Lie { get; set; }

    public WorkLayout Clone() => new(this);

    public int Left(int stock) => _model.Stock[stock].Limit - _stockUsed[stock];

    public void Open(int stock)
    {
        Sheets.Add(new WorkSheet(_model, stock));
        _stockUsed[stock]++;
        Cost += _model.Stock[stock].Cost;
    }

    public void AddSheet(WorkSheet sheet)
    {
        Sheets.Add(sheet);
        _stockUsed[sheet.Stock]++;
        Cost += _model.Stock[sheet.Stock].Cost;
    }

    /// <summary>Adds a sheet whose parts come from the pool; the pool may be overdrawn until <see cref="TakeSurplus"/>.</summary>
    public void AddLaid(WorkSheet sheet)
    {
        AddSheet(sheet);
        sheet.Count(Pool, -1);
    }

    /// <summary>Takes parts off that lie more often than there are of them, from the sheets that hold least.</summary>
    public void TakeSurplus()
    {
        for (int type = 0; type < Pool.Length; type++)
            foreach (WorkSheet sheet in Pool[type] < 0 ? Sheets.OrderBy(s => s.UsedArea) : Enumerable.Empty<WorkSheet>())
                while (Pool[type] < 0 && sheet.TakeOne(type, Pool)) { }
        CountPool();
    }

    /// <summary>Sheets that changed since the last mark.</summary>
    public IEnumerable<WorkSheet> Changed => Sheets.Where(s => s.SavedAt == _mark);

    /// <summary>Remembers the layout as it is, for <see cref="Undo"/>. Sheets are copied only when they are changed.</summary>
    public void Mark()
    {
        _mark++;
        _markedSheets.Clear();
        _markedSheets.AddRange(Sheets);
        Pool.CopyTo(_markedPool, 0);
        _stockUsed.CopyTo(_markedStock, 0);
        _markedCost = Cost;
    }

    /// <summary>Goes back to the last mark.</summary>
    public void Undo()
    {
        Sheets.Clear();
        foreach (WorkSheet sheet in _markedSheets)
        {
            if (sheet.SavedAt == _mark) sheet.Undo();
            Sheets.Add(sheet);
        }
        _markedPool.CopyTo(Pool, 0);
        _markedStock.CopyTo(_stockUsed, 0);
        Cost = _markedCost;
        CountPool();
    }

    /// <summary>Takes a node off a sheet; its parts go back to the pool. The caller counts the pool when it is done.</summary>
    public int Take(WorkSheet sheet, int node)
    {
        Save(sheet);
        return sheet.Take(node, Pool);
    }

    /// <summary>Takes a sheet away; its parts go back to the pool.</summary>
    public void Close(int sheet)
    {
        WorkSheet closed = Sheets[sheet];
        Save(closed);
        closed.Take(WorkSheet.RootNode, Pool);
        Sheets.RemoveAt(sheet);
        _stockUsed[closed.Stock]--;
        Cost -= _model.Stock[closed.Stock].Cost;
        CountPool();
    }

    /// <summary>Takes sheets without parts away.</summary>
    public void CloseEmpty()
    {
        for (int s = Sheets.Count - 1; s >= 0; s--)
            if (Sheets[s].PartCount == 0) Close(s);
    }

    /// <summary>Counts the pool again after it was changed from outside.</summary>
    public void CountPool()
    {
        PoolArea = 0;
        PoolCount = 0;
        for (int t = 0; t < Pool.Length; t++)
        {
            PoolArea += Pool[t] * _model.Types[t].Area;
            PoolCount += Pool[t];
        }
    }

    /// <summary>
    /// Lays as many parts of the pool as find a place, type by type in the given order, each at the place that spoils least of
    /// what the free rectangles promise. Opens sheets as long as the goal allows.
    /// </summary>
    /// <param name="order">Types in the order to lay them.</param>
    /// <param name="firstCut">How a free rectangle may be cut.</param>
    /// <param name="goal">What may be spent.</param>
    /// <param name="useBlanks">Whether blanks in hand may be opened.</param>
    /// <param name="preferred">The kind of stock to open wherever the goal and the part allow it; -1 for the one that costs least for its use.</param>
    /// <param name="blinks">Overlooks a place now and then, so that the same hole is not filled the same way for ever; null for never.</param>
    /// <param name="meter">Counts a step for each free rectangle looked at.</param>
    /// <param name="mayLeave">Whether parts may be left when the caller has enough: true where another layout stands already.</param>
    public void Fill(ReadOnlySpan<int> order, FirstCut firstCut, Goal goal, bool useBlanks, int preferred, SeededRandom? blinks, SearchMeter meter, bool mayLeave = false)
    {
        foreach (int type in order)
        {
            while (Pool[type] > 0)
            {
                if (meter.Cancelled || (meter.Enough && mayLeave)) return;
                if (!TryFind(type, firstCut, blinks, meter, out Spot spot))
                {
                    int stock = ChooseStock(type, goal, useBlanks, preferred, blinks);
                    if (stock < 0) break;
                    Open(stock);
                    if (!TryFind(type, firstCut, null, meter, out spot, Sheets.Count - 1)) break;
                }
                Save(Sheets[spot.Sheet]);
                Sheets[spot.Sheet].Put(spot, type);
                Pool[type]--;
                PoolCount--;
                PoolArea -= _model.Types[type].Area;
            }
        }
    }

    /// <summary>Nodes copied since this was last asked.</summary>
    public int TakeCopied()
    {
        int copied = _copied;
        _copied = 0;
        return copied;
    }

    private void Save(WorkSheet sheet)
    {
        if (sheet.SavedAt == _mark) return;
        sheet.Save(_mark);
        _copied += sheet.Size / 2;
    }

    private bool TryFind(int type, FirstCut firstCut, SeededRandom? blinks, SearchMeter meter, out Spot best, int from = 0)
    {
        PartType part = _model.Types[type];
        best = default;
        double least = double.MaxValue;
        long steps = 0;
        bool isLimited = _model.MostStages != int.MaxValue;
        bool mayRip = firstCut is not (FirstCut.Crosscut or FirstCut.CrosscutEqual), mayCrosscut = firstCut is not (FirstCut.Rip or FirstCut.RipEqual);
        // Blinks come by chance, on average once in so many places.
        int untilBlink = blinks is null ? int.MaxValue : NextBlink(blinks);
        for (int s = from; s < Sheets.Count; s++)
        {
            ReadOnlySpan<FreeRectangle> all = Sheets[s].Free;
            steps += all.Length;
            for (int f = 0; f < all.Length; f++)
            {
                ref readonly FreeRectangle free = ref all[f];
                if ((Lie != Lie.Across || !part.MayTurn) && free.Along >= part.Along && free.Across >= part.Across) Try(in free, s, f, part.Along, part.Across, false, ref best, ref least);
                if (Lie != Lie.Along && part.MayTurn && free.Along >= part.Across && free.Across >= part.Along) Try(in free, s, f, part.Across, part.Along, true, ref best, ref least);
            }
        }
        meter.Add(steps + 1);
        return least < double.MaxValue;

        void Try(in FreeRectangle free, int s, int f, long along, long across, bool turned, ref Spot best, ref double least)
        {
            long restAlong = free.Along - along, restAcross = free.Across - across;
            // A strip is as wide as its parts, or it is to be ripped off the sheet yet.
            if (firstCut == FirstCut.RipEqual && restAcross != 0 && free.Parent == NodeKind.Along) return;
            if (firstCut == FirstCut.CrosscutEqual && restAlong != 0 && free.Parent == NodeKind.Across) return;
            if (mayRip && !Blink() && MayBeCut(s, in free, restAlong, restAcross, NodeKind.Across))
            {
                double lost = free.Promise - WorkSheet.Promise(_model, restAlong, across) - WorkSheet.Promise(_model, free.Along, restAcross);
                if (lost < least) (least, best) = (lost, new(s, f, turned, NodeKind.Across));
            }
            if (mayCrosscut && !Blink() && MayBeCut(s, in free, restAlong, restAcross, NodeKind.Along))
            {
                double lost = free.Promise - WorkSheet.Promise(_model, along, restAcross) - WorkSheet.Promise(_model, restAlong, free.Across);
                if (lost < least) (least, best) = (lost, new(s, f, turned, NodeKind.Along));
            }
            if (!isLimited || !part.Trims || !_model.FewEnoughAlone(type, in free)) return;
            bool inLine = part.Figure == GrainAxis.Along;
            if (!(inLine ? mayCrosscut : mayRip)) return;
            double lostAlone = free.Promise - (inLine ? WorkSheet.Promise(_model, restAlong, free.Across) : WorkSheet.Promise(_model, free.Along, restAcross));
            if (lostAlone < least) (least, best) = (lostAlone, new(s, f, turned, inLine ? NodeKind.Along : NodeKind.Across, Alone: true));
        }

        bool MayBeCut(int s, in FreeRectangle free, long restAlong, long restAcross, NodeKind first) =>
            !isLimited || _model.FewEnough(type, Sheets[s].Stock, in free, restAlong, restAcross, first);

        bool Blink()
        {
            if (--untilBlink > 0) return false;
            untilBlink = blinks is null ? int.MaxValue : NextBlink(blinks);
            return blinks is not null;
        }
    }

    private int NextBlink(SeededRandom blinks) => 1 + blinks.Below(2 * BlinkOnceIn);

    // The stock that costs least for the area it can usefully give; a random other one now and then.
    private int ChooseStock(int type, Goal goal, bool useBlanks, int preferred, SeededRandom? blinks)
    {
        int best = -1, seen = 0;
        bool any = blinks is not null && blinks.OnceIn(4);
        double least = double.MaxValue;
        for (int s = 0; s < _model.Stock.Length; s++)
        {
            StockType stock = _model.Stock[s];
            if (Left(s) <= 0 || !_model.Fits(type, s) || !goal.Allows(Cost + stock.Cost, Sheets.Count + 1)) continue;
            bool inHand = stock.Cost == 0 && stock.Limit < int.MaxValue;
            if (inHand && !useBlanks) continue;
            // Without prices the larger sheet is the better one; in hand comes before bought.
            double useful = Math.Min(stock.Area, PoolArea);
            double price = inHand ? -stock.Area : stock.Cost > 0 ? (double)stock.Cost / useful : -stock.Area / (1 + stock.Area);
            if (s == preferred) return s;
            if (any ? blinks!.OnceIn(++seen) : price < least) (least, best) = (price, s);
        }
        return best;
    }
}
