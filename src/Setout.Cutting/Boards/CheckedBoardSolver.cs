using System.Collections.Immutable;

namespace Setout.Cutting.Boards;

/// <summary>Lets no layout out that the checker has not seen; any violation is thrown as our own bug.</summary>
/// <param name="inner">The solver whose outcomes are checked.</param>
public sealed class CheckedBoardSolver(IBoardSolver inner) : IBoardSolver
{
    /// <inheritdoc/>
    /// <exception cref="BrokenLayoutException">The inner solver's layout or claims break a rule.</exception>
    public BoardOutcome Solve(BoardInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default)
    {
        BoardOutcome outcome = inner.Solve(instance, options, progress, cancel);
        ImmutableArray<Violation> violations = BoardChecker.Check(instance, outcome.Layout);
        if (violations.IsEmpty) violations = [.. CheckClaims(instance, outcome)];
        return violations.IsEmpty ? outcome : throw new BrokenLayoutException(violations);
    }

    internal static IEnumerable<Violation> CheckClaims(BoardInstance instance, BoardOutcome outcome)
    {
        foreach (Violation figure in BoardChecker.CheckFigures(instance, outcome.Layout, outcome.Score.Cost, outcome.Score.Boards)) yield return figure;
        BoardScore score = BoardObjective.Score(instance, outcome.Layout);
        if (score != outcome.Score) yield return new("Score", 0, $"the layout scores {score}, but {outcome.Score} is claimed");
        HashSet<string> hopeless = [.. instance.Parts.Where(p => !instance.CanBeLaid(p)).Select(p => p.Id)];
        bool whole = outcome.Layout.LeftOut.IsEmpty;
        bool allThatFit = outcome.Layout.LeftOut.All(l => hopeless.Contains(l.PartId));
        if (allThatFit && (score.Cost < outcome.Bound.Cost || score.Boards < outcome.Bound.Count))
            yield return new("Bound", 0, $"the layout costs {score.Cost} on {score.Boards} boards, below the bound of {outcome.Bound.Cost} and {outcome.Bound.Count}");
        bool proven = whole && score.Cost == outcome.Bound.Cost && (score.Cost.Amount > 0 || score.Boards == outcome.Bound.Count);
        if (outcome.Status == OutcomeStatus.Proven && !proven)
            yield return new("Status", 0, $"called proven at a cost of {score.Cost} on {score.Boards} boards, the bound is {outcome.Bound.Cost} and {outcome.Bound.Count}");
        if (outcome.Status is OutcomeStatus.Proven or OutcomeStatus.Feasible && !whole)
            yield return new("Status", 0, $"called {outcome.Status}, but parts are left out");
        if (outcome.Status is OutcomeStatus.Infeasible or OutcomeStatus.Stopped && outcome.Reasons.IsEmpty)
            yield return new("Status", 0, $"called {outcome.Status} without a reason");
        if (outcome.Status == OutcomeStatus.Infeasible && whole)
            yield return new("Status", 0, "called infeasible, but every part is laid");
    }
}
