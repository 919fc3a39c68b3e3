using Setout.Cutting.Sheets.Search;

namespace Setout.Cutting.Sheets;

/// <summary>Where sheet solvers come from.</summary>
public static class SheetSolvers
{
    /// <summary>The solver of an everyday job; its outcomes are checked before they leave.</summary>
    public static ISheetSolver Default { get; } = new CheckedSheetSolver(new GoalSheetSolver());
}
