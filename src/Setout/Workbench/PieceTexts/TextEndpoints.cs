using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.PieceTexts;

/// <summary>The page of the text.</summary>
internal static class TextEndpoints
{
    public static void MapText(this IEndpointRouteBuilder routes) => routes.MapGet("/piece/{name}/text", (string name, KeptPieces pieces) => pieces.Read(name) is { } file
        ? Pages.Show<TextPage>(TextView.Of(file)) : Pages.Show<UnknownPage>(UnknownView.Piece(name, pieces.Names()), StatusCodes.Status404NotFound));
}
