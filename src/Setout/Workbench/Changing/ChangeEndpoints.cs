using System.Text.Json;
using Microsoft.AspNetCore.Http.Features;
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
            changes.Edit(name, form, fields["key"].ToString(), fields["choice"].ToString(), ChangeForm.Values(fields))));
        routes.MapPost("/piece/{name}/text", (string name, HttpRequest request, PieceChanges changes) => ChangeAsync(request, name, (form, fields) => changes.Text(name, form, fields["text"].ToString())));
        routes.MapPost("/piece/{name}/undo", (string name, HttpRequest request, PieceChanges changes) => ChangeAsync(request, name, (form, fields) => changes.Undo(name, form, fields.ContainsKey(PieceChanges.Sure))));
        routes.MapPost("/piece/{name}/redo", (string name, HttpRequest request, PieceChanges changes) => ChangeAsync(request, name, (form, fields) => changes.Redo(name, form, fields.ContainsKey(PieceChanges.Sure))));
        routes.MapGet("/changes", ListenAsync);
    }

    /// <summary>Reads a form; null with the answer where it cannot be read.</summary>
    /// <param name="request">With the form.</param>
    /// <param name="limits">How much it may hold; the usual by default.</param>
    public static async Task<(IFormCollection? Fields, IResult? Refusal)> FormAsync(HttpRequest request, FormOptions? limits = null)
    {
        try
        {
            return (await (limits is null ? request.ReadFormAsync() : request.ReadFormAsync(limits)), null);
        }
        catch (Exception broken) when (broken is InvalidDataException or BadHttpRequestException)
        {
            return (null, Results.Text("This form cannot be read, so nothing was changed.\n", statusCode: StatusCodes.Status400BadRequest));
        }
        catch (Exception full) when (full is IOException or UnauthorizedAccessException)
        {
            // Files that come with a form wait in the folder for temporary files.
            return (null, Results.Text($"What was sent could not be taken, so nothing was changed: {full.Message}\nLook whether '{Path.GetTempPath()}' may be written to and has room, go back and send it again.\n", statusCode: StatusCodes.Status507InsufficientStorage));
        }
    }

    private static Task<IResult> ChangeAsync(HttpRequest request, string name, Func<ChangeForm, IFormCollection, ChangeOutcome> make) =>
        AnswerAsync(request, Links.Stage(name, ""), (form, outcome) => outcome.Chosen is { } chosen && form.IsDrawing(Links.Stage(name, "")) ? Links.SizeSeenAs(form.Back, name, chosen) : form.Back, make);

    /// <summary>Makes the change that a form asks for. Afterwards the page is shown anew, by its own address; a change that is not made is answered with why, and with what was typed.</summary>
    /// <param name="request">With the form.</param>
    /// <param name="home">The address that all pages begin with to which the form may lead back.</param>
    /// <param name="next">The page to show when the change is made.</param>
    /// <param name="make">Makes it.</param>
    public static async Task<IResult> AnswerAsync(HttpRequest request, string home, Func<ChangeForm, ChangeOutcome, string> next, Func<ChangeForm, IFormCollection, ChangeOutcome> make)
    {
        (IFormCollection? fields, IResult? refusal) = await FormAsync(request);
        if (fields is null) return refusal!;
        if (ChangeForm.Of(fields, home) is not { } form) return Results.Text("This form is not one of this workbench, so nothing was changed.\n", statusCode: StatusCodes.Status400BadRequest);
        ChangeOutcome outcome = make(form, fields);
        if (outcome.Faults.IsEmpty) return Results.Redirect(next(form, outcome));
        return Pages.Show<RefusedPage>(RefusedView.Of(outcome.Faults, request, fields, form.Back, outcome.IsConflict), outcome.IsConflict ? StatusCodes.Status409Conflict : StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task ListenAsync(HttpContext http, ChangeWatch watch, IDocumentStore store, PlanDesk desk, IHostApplicationLifetime life, CancellationToken cancel)
    {
        http.Response.ContentType = "text/event-stream";
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(cancel, life.ApplicationStopping);
        string told = "";
        async Task TellAsync()
        {
            // Where the store cannot be read, the page that is asked for next says so.
            if (PageStand.Now(store, desk) is not { } stand) return;
            string now = $"event: laying\ndata: {JsonSerializer.Serialize(desk.LayingOut)}\n\ndata: {stand}\n\n";
            if (now == told) return;
            told = now;
            await http.Response.WriteAsync(now, ends.Token);
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
