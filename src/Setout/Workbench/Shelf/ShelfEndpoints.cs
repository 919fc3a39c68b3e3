using Setout.Shop.Documents;
using Setout.Workbench.Beginning;
using Setout.Workbench.Keeping;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;
using Setout.Workbench.Viewing;

namespace Setout.Workbench.Shelf;

/// <summary>The first page.</summary>
internal static class ShelfEndpoints
{
    public static void MapShelf(this IEndpointRouteBuilder routes) =>
        routes.MapGet(Links.Shelf, (HttpContext http, KeptPieces folder, PlanDesk desk, Samples samples, IDocumentStore store, DataKeeping keeping) => Pages.Show<ShelfPage>(ShelfView.Of(folder, desk, BeginView.Empty(samples, Viewer.Of(http).Unit), store, keeping)));
}
