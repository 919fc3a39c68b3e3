using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Buying;

/// <summary>The page of the buying list.</summary>
internal static class BuyingEndpoints
{
    public static void MapBuying(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/piece/{name}/buy", (string name, PieceDoor door, CancellationToken cancel) =>
            door.OpenWithPlanAsync(name, (piece, plan) => Pages.Show<BuyingPage>(BuyingView.Of(piece, plan)), cancel));
}
