using Setout.Shop.Documents;
using Setout.Shop.Plans;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;
using Setout.Workbench.ShopPages;

namespace Setout.Workbench.Buying;

/// <summary>The page of the buying list, and where it is told that something is bought.</summary>
internal static class BuyingEndpoints
{
    public static void MapBuying(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/piece/{name}/buy", (string name, HttpRequest request, PieceDoor door, PlanDesk desk, IDocumentStore store, KeptPieces pieces, CancellationToken cancel) =>
            door.OpenSoonAsync(name, request, (piece, plan) => Pages.Show<BuyingPage>(plan is not null ? BuyingView.Of(piece, plan, ShopFile.Of(store, pieces)?.Document.Revision)
                : BuyingView.Waiting(piece, desk.Last(name, piece.Set.Piece.Shown), WaitingView.Of(desk, piece, Links.Stage(name, "buy")))), cancel));
        routes.MapPost("/piece/{name}/bought", (string name, HttpRequest request, KeptPieces pieces, PlanDesk desk, BoughtChanges changes, CancellationToken cancel) => PieceDoor.AnewAsync(async () =>
        {
            if (pieces.Read(name) is not { Source: { } source } file) return Pages.Show<UnknownPage>(UnknownView.Piece(name, pieces.Names()), StatusCodes.Status404NotFound);
            Plan plan = await desk.PlanAsync(name, source).WaitAsync(cancel);
            return await ChangeEndpoints.AnswerAsync(request, Links.Stage(name, ""), (form, _) => form.Back, (form, fields) => changes.Bought(form, file, plan, fields["item"].ToString(), ChangeForm.Values(fields)));
        }, cancel));
    }
}
