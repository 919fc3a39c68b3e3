using Setout.Cutting.Boards.Search;

namespace Setout.Cutting.Boards;

/// <summary>Where board solvers come from.</summary>
public static class BoardSolvers
{
    /// <summary>The solver of an everyday job; its outcomes are checked before they leave.</summary>
    public static IBoardSolver Default { get; } = new CheckedBoardSolver(new CompletionBoardSolver());
}
