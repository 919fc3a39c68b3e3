using Setout.Cutting.Programs;
using Setout.Cutting.Sheets.Search;

namespace Setout.Cutting.Sheets;

/// <summary>Where sheet solvers come from.</summary>
public static class SheetSolvers
{
    /// <summary>The solver of an everyday job; its outcomes are checked before they leave.</summary>
    public static ISheetSolver Default { get; } = new CheckedSheetSolver(new GoalSheetSolver(null));

    /// <summary>The solver that has linear and integer programs to call on: better bounds, and better layouts where patterns repeat.</summary>
    public static ISheetSolver With(IPrograms programs) => new CheckedSheetSolver(new GoalSheetSolver(programs));
}
