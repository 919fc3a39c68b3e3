using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Solvers;

namespace Setout.Commands;

/// <summary>The pipeline with the solvers of this program: one for command line and workbench.</summary>
internal static class Planner
{
    /// <summary>Makes plans.</summary>
    public static PlanMaker Maker { get; } = new(SheetSolvers.With(LibraryPrograms.Instance), BoardSolvers.With(LibraryPrograms.Instance));
}
