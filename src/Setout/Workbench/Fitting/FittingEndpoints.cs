using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Fitting;

/// <summary>The page of what will fit.</summary>
internal static class FittingEndpoints
{
    public static void MapFitting(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/piece/{name}/fit", (string name, PieceDoor door, CancellationToken cancel) =>
            door.OpenWithFitAsync(name, (piece, report) => Pages.Show<FittingPage>(FittingView.Of(piece, report)), cancel));
}
