using System.Globalization;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.SetOut;

/// <summary>What follows while one types: trials, and what steps cost.</summary>
internal static class LiveEndpoints
{
    public static void MapLive(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/piece/{name}/trial", TryAsync);
        routes.MapGet("/piece/{name}/cost", async (string name, string? against, KeptPieces pieces, PieceDoor door, Comparing comparing, Shop.Documents.IDocumentStore store, CancellationToken cancel) =>
        {
            if (pieces.Read(name) is not { Source: not null } file) return door.Open(name, _ => Results.NotFound());
            CostLine cost = await comparing.OfKeptAsync(file, State(against), cancel);
            return door.Open(name, piece => Pages.Show<CostPage>(CostView.Of(piece, cost, State(against), store)));
        });
    }

    // The drawing first and alone, since it is waited for; then the page; then what the layouts say, which is given up when the next key is pressed.
    private static async Task<IResult> TryAsync(string name, HttpRequest request, Trials trials, Comparing comparing, CancellationToken cancel)
    {
        (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
        if (fields is null) return refusal!;
        string Field(string field) => fields[field].ToString();
        if (trials.Make(name, Field("key"), Field("choice"), ChangeForm.Values(fields)) is not { } trial) return Results.Text($"There is no piece '{name}' any more.", statusCode: StatusCodes.Status404NotFound);
        // Half a figure is what one types on the way to a whole one: no error, but why in place of a page.
        if (trial.Piece is not { } piece) return Results.Json(Slip.Of(trial.Faults).Select(s => new { field = s.Field, words = s.Told }));
        string? size = Field("size") is { Length: > 0 } asked ? asked : null, view = Field("view") is { Length: > 0 } word ? word : null;
        Drawing.Turning.Standpoint from = TurningControls.Asked(Field("turn"), Field("tip"), Field("apart"));
        switch (Field("part"))
        {
            case "page":
                return Pages.Show<SetOutPage>(SetOutView.Of(piece, size, view, from, isTextOnly: true));
            case "plan":
                OpenPiece planned = piece with { Plan = piece.Set.IsStopped ? null : await comparing.SmallPlanAsync(piece.Source, cancel) };
                CostLine cost = await comparing.OfTrialAsync(piece, State(Field("against")), cancel);
                return Pages.Show<SetOutPage>(SetOutView.Of(planned, size, view, from, isTextOnly: true) with { Cost = cost.Line });
            default:
                return Pages.Show<TrialDrawing>(new TrialView(trial.Edited.Name, DrawingView.One(piece.Set, size, view, from, Field("paper") == "narrow"), ChosenSize.Of(piece, size)));
        }
    }

    private static long? State(string? text) => long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out long state) ? state : null;
}
