using Setout.Shop.Documents;
using Setout.Workbench.Keeping;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.States;

/// <summary>The page of the history of a piece.</summary>
internal static class StatesEndpoints
{
    public static void MapStates(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/piece/{name}/history", (string name, long? state, long? before, IDocumentStore store, KeptPieces pieces, PieceDoor door, DataKeeping keeping) =>
            store.Find(name) is { Kind: DocumentKind.Piece } document
                ? Pages.Show<StatesPage>(StatesView.Of(document, store, pieces, door, state, before, keeping.Time))
                : Pages.Show<UnknownPage>(UnknownView.Piece(name, pieces.Names()), StatusCodes.Status404NotFound));
}
