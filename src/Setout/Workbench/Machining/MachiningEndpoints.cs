using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Machining;

/// <summary>The page of what is cut and bored into parts.</summary>
internal static class MachiningEndpoints
{
    public static void MapMachining(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/piece/{name}/machine", (string name, PieceDoor door, CancellationToken cancel) =>
            door.OpenWithPlanAsync(name, (piece, plan) => Pages.Show<MachiningPage>(MachiningView.Of(piece, plan)), cancel));
}
