using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.SetOut;

/// <summary>The page of the first stage.</summary>
internal static class SetOutEndpoints
{
    public static void MapSetOut(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/piece/{name}", (string name, string? size, string? view, string? turn, string? tip, string? apart, PieceDoor door) =>
            door.Open(name, piece => Pages.Show<SetOutPage>(SetOutView.Of(piece, size, view, TurningControls.Asked(turn, tip, apart)))));
}
