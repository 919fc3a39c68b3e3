using Setout.Shop.Documents;
using Setout.Workbench.Beginning;
using Setout.Workbench.Keeping;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Shelf;

/// <summary>The first page.</summary>
internal static class ShelfEndpoints
{
    public static void MapShelf(this IEndpointRouteBuilder routes) =>
        routes.MapGet(Links.Shelf, (KeptPieces folder, PlanDesk desk, Samples samples, IDocumentStore store, DataKeeping keeping) => Pages.Show<ShelfPage>(ShelfView.Of(folder, desk, samples, store, keeping)));
}
