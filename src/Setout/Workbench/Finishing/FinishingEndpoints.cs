using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Finishing;

/// <summary>The page of what is finished, with what and how much of it.</summary>
internal static class FinishingEndpoints
{
    public static void MapFinishing(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/piece/{name}/finish", (string name, PieceDoor door) => door.Open(name, piece => Pages.Show<FinishingPage>(FinishingView.Of(piece))));
}
