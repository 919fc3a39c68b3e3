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

    /// <summary>True when no layout of all parts exists, or the one there is costs the least it can.</summary>
    protected static bool Settles(OutcomeStatus status) => status is OutcomeStatus.Proven or OutcomeStatus.Infeasible;

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

    public SheetPlan Plan => new(panel, Asked(), _outcome ?? throw new InvalidOperationException("Nothing has been searched for yet."), Stock, isPriced);

    protected override IEnumerable<string> Find(SolverOptions options, IProgress<SolverProgress>? progress, CancellationToken cancel)
    {
        SheetOutcome found = solver.Solve(Asked(), options, progress, cancel);
        _outcome = _outcome is { } earlier ? SheetOutcome.BestOf(earlier, found) : found;
        return _outcome.Layout.Sheets.Select(s => s.StockId);
    }

    // What is kept to is settled by what there was at the first search, so that the outcomes of all searches count changed sheets alike.
    private SheetInstance Asked()
    {
        SheetInstance instance = ask(Stock);
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
        BoardOutcome found = solver.Solve(ask(Stock), options, progress, cancel);
        _outcome = _outcome is { } earlier ? BoardOutcome.BestOf(earlier, found) : found;
        return _outcome.Layout.Boards.Select(b => b.StockId);
    }
}
