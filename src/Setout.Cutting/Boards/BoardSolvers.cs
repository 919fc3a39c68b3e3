using Setout.Cutting.Boards.Search;
using Setout.Cutting.Programs;

namespace Setout.Cutting.Boards;

/// <summary>Where board solvers come from.</summary>
public static class BoardSolvers
{
    /// <summary>The solver of an everyday job without a library of programs; its outcomes are checked before they leave.</summary>
    public static IBoardSolver Default { get; } = new CheckedBoardSolver(new CompletionBoardSolver());

    /// <summary>The solver that proves everyday jobs, with linear and integer programs at hand; its outcomes are checked before they leave.</summary>
    /// <param name="programs">The library behind its port.</param>
    public static IBoardSolver With(IPrograms programs) => new CheckedBoardSolver(new PatternBoardSolver(programs));
}
