using Setout.Cutting.Programs;
using Setout.Cutting.Sheets.Search;

namespace Setout.Cutting.Sheets;

/// <summary>Where sheet solvers come from.</summary>
public static class SheetSolvers
{
    /// <summary>The solver of an everyday job. It holds on to the layout before where there is one; its outcomes are checked before they leave.</summary>
    public static ISheetSolver Default { get; } = Checked(new GoalSheetSolver(null));

    /// <summary>The solver that has linear and integer programs to call on: better bounds, and better layouts where patterns repeat.</summary>
    public static ISheetSolver With(IPrograms programs) => Checked(new GoalSheetSolver(programs));

    private static CheckedSheetSolver Checked(ISheetSolver search) => new(new RemakeSheetSolver(search));
}
