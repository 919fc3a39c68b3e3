using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Breakdown;

/// <summary>The page of the marking-out drawings.</summary>
internal static class BreakdownEndpoints
{
    public static void MapBreakdown(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/piece/{name}/break-down", (string name, PieceDoor door, CancellationToken cancel) =>
            door.OpenWithPlanAsync(name, (piece, plan) => Pages.Show<BreakdownPage>(BreakdownView.Of(piece, plan)), cancel));
}
