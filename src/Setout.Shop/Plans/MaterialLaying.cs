using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>The layouts of one material while they are searched for. A later search can only better an earlier one.</summary>
internal abstract class MaterialLaying
{
    public abstract Material Material { get; }

    /// <summary>True when more search cannot change what may be said.</summary>
    public abstract bool IsSettled { get; }

    public abstract void Search(SolverOptions options, CancellationToken cancel);

    /// <summary>True when no layout of all parts exists, or the one there is costs the least it can.</summary>
    protected static bool Settles(OutcomeStatus status) => status is OutcomeStatus.Proven or OutcomeStatus.Infeasible;
}

/// <summary>One kind of sheet.</summary>
internal sealed class SheetLaying(Panel panel, SheetInstance instance, ImmutableArray<StockLine> stock, bool isPriced, ISheetSolver solver) : MaterialLaying
{
    private SheetOutcome? _outcome;

    public override Material Material => panel;

    public override bool IsSettled => _outcome is { } found && Settles(found.Status);

    public SheetPlan Plan => new(panel, instance, _outcome ?? throw new InvalidOperationException("Nothing has been searched for yet."), stock, isPriced);

    public override void Search(SolverOptions options, CancellationToken cancel)
    {
        SheetOutcome found = solver.Solve(instance, options, null, cancel);
        _outcome = _outcome is { } earlier ? SheetOutcome.BestOf(earlier, found) : found;
    }
}

/// <summary>One section of board.</summary>
internal sealed class BoardLaying(Stick stick, BoardInstance instance, ImmutableArray<StockLine> stock, bool isPriced, IBoardSolver solver) : MaterialLaying
{
    private BoardOutcome? _outcome;

    public override Material Material => stick;

    public override bool IsSettled => _outcome is { } found && Settles(found.Status);

    public BoardPlan Plan => new(stick, instance, _outcome ?? throw new InvalidOperationException("Nothing has been searched for yet."), stock, isPriced);

    public override void Search(SolverOptions options, CancellationToken cancel)
    {
        BoardOutcome found = solver.Solve(instance, options, null, cancel);
        _outcome = _outcome is { } earlier ? BoardOutcome.BestOf(earlier, found) : found;
    }
}
