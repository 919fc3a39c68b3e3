using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Says;

/// <summary>The page of all that can be said of a thing.</summary>
internal static class SaysEndpoints
{
    public static void MapSays(this IEndpointRouteBuilder routes) => routes.MapGet("/piece/{name}/says", (string name, string? of, PieceDoor door, HttpContext http) => door.Open(name, piece => SaysView.Of(piece, of ?? "") is { } view
        ? Pages.Show<SaysPage>(view) : Pages.Show<UnknownPage>(UnknownView.Page(http.Request.Path + http.Request.QueryString), StatusCodes.Status404NotFound)));
}
