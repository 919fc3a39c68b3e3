using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Workbench.Changing;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Keeping;

/// <summary>Where the forms of the shelf and of the history are sent.</summary>
internal static class ShelfChangeEndpoints
{
    public static void MapShelfChanges(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/piece/{name}/rename", (string name, HttpRequest request, ShelfChanges changes) =>
            ChangeAsync(request, name, (form, fields) => changes.Make(name, form, id => new Rename(id, form.Revision, fields["to"].ToString().Trim()))));
        routes.MapPost("/piece/{name}/put-away", (string name, HttpRequest request, ShelfChanges changes) => ChangeAsync(request, name, (form, _) => changes.Make(name, form, id => new PutAway(id, form.Revision)), isToShelf: true));
        routes.MapPost("/piece/{name}/take-back", (string name, HttpRequest request, ShelfChanges changes) => ChangeAsync(request, name, (form, _) => changes.Make(name, form, id => new TakeBack(id, form.Revision))));
        routes.MapPost("/piece/{name}/save-point", (string name, HttpRequest request, ShelfChanges changes) =>
            ChangeAsync(request, name, (form, fields) => changes.Make(name, form, id => new SavePoint(id, form.Revision, fields["point"].ToString().Trim()))));
        routes.MapPost("/piece/{name}/go-back", (string name, HttpRequest request, ShelfChanges changes) =>
            ChangeAsync(request, name, (form, fields) => changes.Make(name, form, id => new GoBack(id, form.Revision, long.TryParse(fields["state"].ToString(), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out long state) ? state : 0))));
        routes.MapPost("/piece/{name}/begin-from", async (string name, HttpRequest request, PieceChanges changes, IDocumentStore store) =>
        {
            (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
            if (fields is null) return refusal!;
            string to = fields["to"].ToString().Trim();
            if (store.Find(name) is not { Kind: DocumentKind.Piece } from) return Refused(new("piece.gone", Severity.Stop, "", $"There is no piece '{name}' any more.", "Look at the shelf."), request, fields, Links.Shelf);
            if (DocumentName.Fault(DocumentKind.Piece, to) is { } unfit) return Refused(unfit, request, fields, Links.Shelf);
            (string? made, Finding? fault) = changes.Begin(fields["change"].ToString(), to, from.Text, $"begun from {name}");
            return made is not null ? Results.Redirect(Links.Stage(made, "")) : Refused(fault!, request, fields, Links.Shelf);
        });
    }

    private static async Task<IResult> ChangeAsync(HttpRequest request, string name, Func<ChangeForm, IFormCollection, (Document?, ChangeOutcome)> make, bool isToShelf = false)
    {
        (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
        if (fields is null) return refusal!;
        if (ChangeForm.Of(fields, Links.Stage(name, "")) is not { } form) return Results.Text("This form is not one of this workbench, so nothing was changed.\n", statusCode: StatusCodes.Status400BadRequest);
        bool isOnShelf = isToShelf || fields["back"] == Links.Shelf;
        (Document? document, ChangeOutcome outcome) = make(form, fields);
        if (outcome.Fault is { } fault) return Refused(fault, request, fields, isOnShelf ? Links.Shelf : form.Back, outcome.IsConflict);
        if (isOnShelf) return Results.Redirect(Links.Shelf);
        // Pages of a piece that was renamed lie under its new name.
        return Results.Redirect(document is not null && document.Name != name ? Links.Stage(document.Name, "") + form.Back[Links.Stage(name, "").Length..] : form.Back);
    }

    private static IResult Refused(Finding fault, HttpRequest request, IFormCollection fields, string back, bool isConflict = false) =>
        Pages.Show<RefusedPage>(RefusedView.Of([fault], request, fields, back, isConflict), isConflict ? StatusCodes.Status409Conflict : StatusCodes.Status422UnprocessableEntity);
}
