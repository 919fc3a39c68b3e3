using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>The layouts of one material while they are searched for. A later search can only better an earlier one.</summary>
internal abstract class MaterialLaying
{
    // Each is a search of its own.
    private const int MostWithout = 4;

    private readonly RackAccount _rack;

    /// <param name="stock">What the material is offered.</param>
    /// <param name="rack">Tells what of it other materials took.</param>
    protected MaterialLaying(ImmutableArray<StockLine> stock, RackAccount rack)
    {
        (Stock, _rack) = (stock, rack);
        rack.Offer(stock);
    }

    public abstract Material Material { get; }

    /// <summary>True when more search cannot change what may be said.</summary>
    public abstract bool IsSettled { get; }

    /// <summary>True when there are layouts to keep to.</summary>
    public virtual bool KeepsTo => false;

    /// <summary>What it may use as it stands; settled anew at each search.</summary>
    protected ImmutableArray<StockLine> Stock { get; private set; }

    public void Search(SolverOptions options, IProgress<string>? progress, CancellationToken cancel)
    {
        Stock = _rack.Left(Material.Name, Stock);
        _rack.Take(Material.Name, Stock, Find(options, progress is null ? null : new Told(Material.Name, progress), cancel));
    }

    /// <summary>Searches with what it may use, and gives the id of each sheet or board of the best layout.</summary>
    protected abstract IEnumerable<string> Find(SolverOptions options, IProgress<SolverProgress>? progress, CancellationToken cancel);

    /// <summary>
    /// The stock with less of what is whole in the rack than a layout took of it: once with none, once with one less. Empty where no blank is begun, or where nothing whole was taken. Wood that is
    /// begun is used up first where that costs no more money, even where it takes more pieces of it.
    /// </summary>
    /// <param name="used">The id of each sheet or board of the layout.</param>
    protected IEnumerable<ImmutableArray<StockLine>> WithLessFresh(IEnumerable<string> used)
    {
        if (!Stock.Any(l => l is { IsBlank: true, Size.InHand: > 0 })) return [];
        HashSet<string> fresh = [.. Stock.Where(l => l is { IsBlank: false, Size.InHand: > 0 }).Select(l => l.Id)];
        Dictionary<string, int> taken = used.Where(fresh.Contains).CountBy(id => id).ToDictionary();
        if (taken.Count == 0) return [];
        ImmutableArray<StockLine> none = [.. Stock.Select(l => fresh.Contains(l.Id) ? With(l, 0) : l)];
        if (taken.Values.Sum() == 1) return [none];
        string last = taken.MaxBy(t => t.Value).Key;
        return [none, [.. Stock.Select(l => fresh.Contains(l.Id) ? With(l, taken.GetValueOrDefault(l.Id) - (l.Id == last ? 1 : 0)) : l)]];
    }

    /// <summary>
    /// The stock with less of what is kept for no part than a layout took of it: once with none, then without one of those that it took. Empty where no wood was left for parts of the piece, or
    /// where nothing kept was taken. No more of what is whole in the rack is offered than the layout took.
    /// </summary>
    /// <param name="used">The id of each sheet or board of the layout.</param>
    protected IEnumerable<ImmutableArray<StockLine>> WithLessKept(IEnumerable<string> used)
    {
        if (!Stock.Any(l => l is { IsBlank: true, IsKept: false, Size.InHand: > 0 })) return [];
        Dictionary<string, int> taken = used.CountBy(id => id).ToDictionary();
        string[] kept = [.. Stock.Where(l => l.IsKept && taken.ContainsKey(l.Id)).Select(l => l.Id)];
        ImmutableArray<StockLine> Offer(IEnumerable<string> keeps) =>
        [
            .. Stock.Select(l => l.IsKept ? With(l, keeps.Contains(l.Id) ? l.Size.InHand!.Value : 0) : l is { IsBlank: false, Size.InHand: > 0 } ? With(l, taken.GetValueOrDefault(l.Id)) : l),
        ];
        return kept.Length == 0 ? [] : kept.Length == 1 ? [Offer([])] : [Offer([]), .. kept.Take(MostWithout).Select(without => Offer(kept.Where(k => k != without)))];
    }

    private static StockLine With(StockLine line, int inHand) => line with { Size = line.Size with { InHand = inHand } };

    /// <summary>True when no layout of all parts exists, or the one there is costs the least it can.</summary>
    protected static bool Settles(OutcomeStatus status) => status is OutcomeStatus.Proven or OutcomeStatus.Infeasible;

    /// <summary>What may be said of a layout that takes more pieces than another of the same money: where nothing costs money, fewest pieces are part of the proof.</summary>
    protected static OutcomeStatus Status(OutcomeStatus found, Money cost, bool isFewest) => found == OutcomeStatus.Proven && cost == Money.Zero && !isFewest ? OutcomeStatus.Feasible : found;

    // What a person waits for is a better layout; that the search goes on is told by the first report alone.
    private sealed class Told(string material, IProgress<string> progress) : IProgress<SolverProgress>
    {
        private (Money Cost, int Count)? _last;

        public void Report(SolverProgress value)
        {
            if (_last == (value.BestCost, value.BestCount)) return;
            _last = (value.BestCost, value.BestCount);
            progress.Report($"{material}: {value.BestCount} so far");
        }
    }
}

/// <summary>One kind of sheet.</summary>
internal sealed class SheetLaying(Panel panel, Func<ImmutableArray<StockLine>, SheetInstance> ask, SheetLayout? before, ImmutableArray<StockLine> stock, bool isPriced, ISheetSolver solver, RackAccount rack)
    : MaterialLaying(stock, rack)
{
    private SheetOutcome? _outcome;
    private SheetLayout? _before;

    public override Material Material => panel;

    public override bool IsSettled => _outcome is { } found && Settles(found.Status);

    public override bool KeepsTo => before is not null;

    public SheetPlan Plan => new(panel, Asked(Stock), _outcome ?? throw new InvalidOperationException("Nothing has been searched for yet."), Stock, isPriced);

    protected override IEnumerable<string> Find(SolverOptions options, IProgress<SolverProgress>? progress, CancellationToken cancel)
    {
        SheetOutcome Thriftier(SheetOutcome found, Func<IEnumerable<string>, IEnumerable<ImmutableArray<StockLine>>> withLess)
        {
            foreach (ImmutableArray<StockLine> less in withLess(found.Layout.Sheets.Select(s => s.StockId)))
            {
                SheetOutcome begun = solver.Solve(Asked(less), options, progress, cancel);
                if (!begun.Layout.LeftOut.IsEmpty || begun.Score.Cost > found.Score.Cost) continue;
                return found with { Layout = begun.Layout, Score = begun.Score, Status = Status(found.Status, begun.Score.Cost, begun.Score.Sheets == found.Bound.Count), Statistics = begun.Statistics };
            }
            return found;
        }
        SheetOutcome found = Thriftier(Thriftier(solver.Solve(Asked(Stock), options, progress, cancel), WithLessFresh), WithLessKept);
        _outcome = _outcome is { } earlier ? SheetOutcome.BestOf(earlier, found) : found;
        return _outcome.Layout.Sheets.Select(s => s.StockId);
    }

    // What is kept to is settled by what there was at the first search, so that the outcomes of all searches count changed sheets alike.
    private SheetInstance Asked(ImmutableArray<StockLine> stock)
    {
        SheetInstance instance = ask(stock);
        return before is null ? instance : instance with { Before = _before ??= EarlierSheets.Today(instance, before) };
    }
}

/// <summary>One section of board.</summary>
internal sealed class BoardLaying(Stick stick, Func<ImmutableArray<StockLine>, BoardInstance> ask, ImmutableArray<StockLine> stock, bool isPriced, IBoardSolver solver, RackAccount rack)
    : MaterialLaying(stock, rack)
{
    private BoardOutcome? _outcome;

    public override Material Material => stick;

    public override bool IsSettled => _outcome is { } found && Settles(found.Status);

    public BoardPlan Plan => new(stick, ask(Stock), _outcome ?? throw new InvalidOperationException("Nothing has been searched for yet."), Stock, isPriced);

    protected override IEnumerable<string> Find(SolverOptions options, IProgress<SolverProgress>? progress, CancellationToken cancel)
    {
        BoardOutcome Thriftier(BoardOutcome found, Func<IEnumerable<string>, IEnumerable<ImmutableArray<StockLine>>> withLess)
        {
            foreach (ImmutableArray<StockLine> less in withLess(found.Layout.Boards.Select(b => b.StockId)))
            {
                BoardOutcome begun = solver.Solve(ask(less), options, progress, cancel);
                if (!begun.Layout.LeftOut.IsEmpty || begun.Score.Cost > found.Score.Cost) continue;
                return found with { Layout = begun.Layout, Score = begun.Score, Status = Status(found.Status, begun.Score.Cost, begun.Score.Boards == found.Bound.Count), Statistics = begun.Statistics };
            }
            return found;
        }
        BoardOutcome found = Thriftier(Thriftier(solver.Solve(ask(Stock), options, progress, cancel), WithLessFresh), WithLessKept);
        _outcome = _outcome is { } earlier ? BoardOutcome.BestOf(earlier, found) : found;
        return _outcome.Layout.Boards.Select(b => b.StockId);
    }
}
