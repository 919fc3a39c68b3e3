using System.Collections.Immutable;

namespace Setout.Cutting.Boards;

/// <summary>The port of every board solver.</summary>
public interface IBoardSolver
{
    /// <summary>Lays the parts out. Deterministic: the same instance and options give the same outcome, unless it is cancelled.</summary>
    /// <param name="instance">What to lay out.</param>
    /// <param name="options">Budget in steps, and seed.</param>
    /// <param name="progress">Told now and then, on the calling thread; may be null.</param>
    /// <param name="cancel">Ends the search early with the best layout so far and status <see cref="OutcomeStatus.Stopped"/>; nothing is thrown.</param>
    BoardOutcome Solve(BoardInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default);
}

/// <summary>What a board solver found, and what it may say about it.</summary>
/// <param name="Layout">The layout; its left-out parts are empty unless the status is Infeasible or Stopped.</param>
/// <param name="Status">What is known about it.</param>
/// <param name="Score">The layout's worth by the objective, recomputed from the layout.</param>
/// <param name="Bound">What no layout of the parts that fit some stock can fall below.</param>
/// <param name="Reasons">Why parts are left out or the search stopped; empty otherwise.</param>
/// <param name="Statistics">What the search did.</param>
public sealed record BoardOutcome(
    BoardLayout Layout,
    OutcomeStatus Status,
    BoardScore Score,
    LayoutBound Bound,
    ImmutableArray<CuttingReason> Reasons,
    SolverStatistics Statistics)
{
    /// <summary>True when every part is laid and no layout can use fewer boards (those in hand counted too).</summary>
    public bool NoFewerBoards => Layout.LeftOut.IsEmpty && Score.Boards == Bound.Count;

    /// <summary>True when every part is laid and no layout can cost less.</summary>
    public bool NoLessMoney => Layout.LeftOut.IsEmpty && Score.Cost == Bound.Cost;

    /// <summary>The better layout of two searches of one instance, with the greater bound of the two.</summary>
    public static BoardOutcome BestOf(BoardOutcome first, BoardOutcome second)
    {
        (BoardOutcome better, BoardOutcome other) = second.Score < first.Score ? (second, first) : (first, second);
        (OutcomeStatus status, LayoutBound bound, ImmutableArray<CuttingReason> reasons) = Conclusion.OfTwo(
            (better.Status, better.Bound, better.Reasons), (other.Status, other.Bound, other.Reasons), better.Layout.LeftOut.IsEmpty, better.Score.Cost, better.Score.Boards);
        return better with { Status = status, Bound = bound, Reasons = reasons };
    }
}
