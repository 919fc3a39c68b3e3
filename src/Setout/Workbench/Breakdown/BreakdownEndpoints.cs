using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Breakdown;

/// <summary>The page of the marking-out drawings and the runs, and where its forms are sent.</summary>
internal static class BreakdownEndpoints
{
    public static void MapBreakdown(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/piece/{name}/break-down", (string name, string? plan, int? run, int? cut, HttpRequest request, PieceDoor door, PlanDesk desk, RunDesk runs, CancellationToken cancel) =>
            door.OpenAsync(name, async (file, source) =>
            {
                bool isAnew = plan == BreakdownView.Anew;
                PlanAtTheSaw? atTheSaw = await PieceDoor.SoonAsync(runs.OfAsync(file, source, isAnew), request, cancel);
                OpenPiece piece = door.Opened(file, source, desk.PlanIfReady(name, source));
                if (atTheSaw is not null) return Pages.Show<BreakdownPage>(BreakdownView.Of(piece, atTheSaw, isAnew, run, cut));
                return Pages.Show<BreakdownPage>(BreakdownView.Waiting(piece, desk.Last(name, piece.Set.Piece.Shown), WaitingView.Of(desk, piece, Links.Stage(name, "break-down"))));
            }, cancel));
        routes.MapPost("/piece/{name}/cut", (string name, HttpRequest request, KeptPieces pieces, RunDesk runs, RunChanges changes, CancellationToken cancel) => PieceDoor.AnewAsync(async () =>
        {
            (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
            if (fields is null) return refusal!;
            if (pieces.Read(name) is not { Source: { } source } file) return Pages.Show<UnknownPage>(UnknownView.Piece(name, pieces.Names()), StatusCodes.Status404NotFound);
            SawnPlan? shown = await runs.ShownAsync(name, [file], source, fields["plan"].ToString()).WaitAsync(cancel);
            _ = int.TryParse(fields["run"].ToString(), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int run);
            return await ChangeEndpoints.AnswerAsync(request, Links.Stage(name, ""), (form, _) => form.Back, (form, _) => changes.Mark(form, [file], source, shown, run));
        }, cancel));
        routes.MapPost("/piece/{name}/enough", (string name, HttpRequest request, KeptPieces pieces, PlanDesk desk) => ChangeEndpoints.AnswerAsync(request, Links.Stage(name, ""), (form, _) => form.Back, (_, _) =>
        {
            if (pieces.Read(name)?.Source is { } source) desk.TakeBestSoFar(name, source.Hash);
            return ChangeMaker.Done;
        }));
    }
}
