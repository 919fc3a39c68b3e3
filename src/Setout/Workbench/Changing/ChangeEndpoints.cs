using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Changing;

/// <summary>Where forms are sent, and where windows hear of changes.</summary>
internal static class ChangeEndpoints
{
    public static void MapChanges(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/piece/{name}/edit", (string name, HttpRequest request, PieceChanges changes) => ChangeAsync(request, name, (form, fields) =>
            changes.Edit(name, form, fields["key"].ToString(), fields["choice"].ToString(), fields.Keys.Where(k => k.StartsWith(ChangeForm.Field, StringComparison.Ordinal)).ToDictionary(k => k[ChangeForm.Field.Length..], k => fields[k].ToString()))));
        routes.MapPost("/piece/{name}/text", (string name, HttpRequest request, PieceChanges changes) => ChangeAsync(request, name, (form, fields) => changes.Text(name, form, fields["text"].ToString())));
        routes.MapPost("/piece/{name}/undo", (string name, HttpRequest request, PieceChanges changes) => ChangeAsync(request, name, (form, _) => changes.Undo(name, form)));
        routes.MapPost("/piece/{name}/redo", (string name, HttpRequest request, PieceChanges changes) => ChangeAsync(request, name, (form, _) => changes.Redo(name, form)));
        routes.MapGet("/changes", ListenAsync);
    }

    /// <summary>Reads a form; null with the answer where it cannot be read.</summary>
    public static async Task<(IFormCollection? Fields, IResult? Refusal)> FormAsync(HttpRequest request)
    {
        try
        {
            return (await request.ReadFormAsync(), null);
        }
        catch (Exception broken) when (broken is InvalidDataException or BadHttpRequestException or IOException)
        {
            return (null, Results.Text("This form cannot be read, so nothing was changed.\n", statusCode: StatusCodes.Status400BadRequest));
        }
    }

    // Afterwards the page is shown anew, by its own address.
    private static async Task<IResult> ChangeAsync(HttpRequest request, string name, Func<ChangeForm, IFormCollection, ChangeOutcome> make)
    {
        (IFormCollection? fields, IResult? refusal) = await FormAsync(request);
        if (fields is null) return refusal!;
        if (ChangeForm.Of(fields, Links.Stage(name, "")) is not { } form) return Results.Text("This form is not one of this workbench, so nothing was changed.\n", statusCode: StatusCodes.Status400BadRequest);
        ChangeOutcome outcome = make(form, fields);
        if (outcome.Fault is not { } fault) return Results.Redirect(outcome.Chosen.Length > 0 ? Links.Size(name, outcome.Chosen) : form.Back);
        string typed = fields["text"].ToString() is { Length: > 0 } text ? text : string.Join('\n', fields.Where(f => f.Key.StartsWith(ChangeForm.Field, StringComparison.Ordinal)).Select(f => f.Value.ToString()));
        return Pages.Show<RefusedPage>(RefusedView.Of(fault, typed, form.Back), outcome.IsConflict ? StatusCodes.Status409Conflict : StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task ListenAsync(HttpContext http, ChangeWatch watch, IDocumentStore store, IHostApplicationLifetime life, CancellationToken cancel)
    {
        http.Response.ContentType = "text/event-stream";
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(cancel, life.ApplicationStopping);
        async Task TellAsync()
        {
            StoreStand stand = store.Stand();
            await http.Response.WriteAsync($"data: {stand.Change}.{stand.Fact}\n\n", ends.Token);
            await http.Response.Body.FlushAsync(ends.Token);
        }
        try
        {
            await TellAsync();
            await foreach (bool _ in watch.Changes(ends.Token)) await TellAsync();
        }
        catch (OperationCanceledException) when (ends.IsCancellationRequested)
        {
            // The window was closed, or the program ends.
        }
    }
}
