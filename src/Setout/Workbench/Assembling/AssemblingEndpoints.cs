using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Assembling;

/// <summary>The page of the assembly.</summary>
internal static class AssemblingEndpoints
{
    public static void MapAssembling(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/piece/{name}/assemble", (string name, PieceDoor door) => door.Open(name, piece => Pages.Show<AssemblingPage>(AssemblingView.Of(piece))));
}
