using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Workbench.BenchSheets;
using Setout.Workbench.Breakdown;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Together;

/// <summary>The page of several pieces broken down together, what is printed of them, and where its forms are sent.</summary>
internal static class TogetherEndpoints
{
    public static void MapTogether(this IEndpointRouteBuilder routes)
    {
        routes.MapGet(Links.Together, (string[]? piece, string? plan, HttpRequest request, KeptPieces pieces, PlanDesk desk, RunDesk runs, CancellationToken cancel) => PieceDoor.AnewAsync(async () =>
        {
            (ChosenPieces? chosen, IResult? instead) = ChosenPieces.Of(piece, pieces, desk);
            if (chosen is null) return instead!;
            bool isAnew = plan == BreakdownView.Anew;
            if (await PieceDoor.SoonAsync(runs.OfAsync(chosen.DeskName, chosen.Files, chosen.Source, isAnew), request, cancel) is not { } at)
                return Pages.Show<TogetherPage>(TogetherView.Waiting(pieces, chosen.Names, desk.Last(chosen.DeskName, chosen.Source.Piece.Shown), TogetherView.WaitsFor(desk, chosen.DeskName, chosen.Names, isAnew)));
            // What it saves is told once each is laid out by itself; the plan itself waits for none of that.
            Plan[]? alone = await PieceDoor.SoonAsync(Task.WhenAll(chosen.Files.Select(f => desk.PlanAsync(f.Name, f.Source!))), request, cancel);
            return Pages.Show<TogetherPage>(TogetherView.Of(pieces, chosen, at, isAnew, alone is null ? [] : [.. alone], alone is null ? TogetherView.Alone(desk, chosen.Names, isAnew) : null));
        }, cancel));
        MapPapers(routes);
        routes.MapPost(TogetherView.Enough, (HttpRequest request, KeptPieces pieces, PlanDesk desk) => ChangeEndpoints.AnswerAsync(request, Links.Together, (form, _) => form.Back, (_, _) =>
        {
            if (ChosenPieces.Sent(request.Query["piece"], pieces) is { } chosen) desk.TakeBestSoFar(chosen.DeskName, chosen.Source.Hash);
            return ChangeMaker.Done;
        }));
        // A run of several pieces goes into the logs of all of them, in one change.
        routes.MapPost(TogetherView.Cut, (HttpRequest request, KeptPieces pieces, RunDesk runs, RunChanges changes, CancellationToken cancel) => PieceDoor.AnewAsync(async () =>
        {
            (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
            if (fields is null) return refusal!;
            if (ChosenPieces.Sent(fields["piece"], pieces) is not { } chosen)
                return Results.Text("These pieces cannot be broken down together any more, so nothing was marked.\n", statusCode: StatusCodes.Status409Conflict);
            SawnPlan? shown = await runs.ShownAsync(chosen.DeskName, chosen.Files, chosen.Source, fields["plan"].ToString()).WaitAsync(cancel);
            _ = int.TryParse(fields["run"].ToString(), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int run);
            return await ChangeEndpoints.AnswerAsync(request, Links.Together, (form, _) => form.Back, (form, _) => changes.Mark(form, chosen.Files, chosen.Source, shown, run));
        }, cancel));
    }

    // The plan that the page shows, by what the command writes it with.
    private static void MapPapers(IEndpointRouteBuilder routes)
    {
        void Map(string address, Func<ChosenPieces, Plan, string?, CancellationToken, IResult> write) =>
            routes.MapGet(address, (string[]? piece, string? plan, string? paper, HttpRequest request, KeptPieces pieces, PlanDesk desk, RunDesk runs, CancellationToken cancel) => PieceDoor.AnewAsync(async () =>
            {
                (ChosenPieces? chosen, IResult? instead) = ChosenPieces.Of(piece, pieces, desk);
                if (chosen is null) return instead!;
                bool isAnew = plan == BreakdownView.Anew;
                // Where layouts take longer the page says how far they have come.
                if (await PieceDoor.SoonAsync(runs.OfAsync(chosen.DeskName, chosen.Files, chosen.Source, isAnew), request, cancel) is not { } at) return Results.Redirect(TogetherView.Href(chosen.Names, isAnew));
                return at.Plan.IsStopped ? BenchSheetEndpoints.Stopped("see the notes at the pieces") : write(chosen, at.Plan, paper, cancel);
            }, cancel));
        Map(TogetherView.BenchSheets, (chosen, plan, paper, cancel) =>
            BenchSheetEndpoints.File(plan, chosen.Stand, BenchSheetEndpoints.PaperOf(paper, chosen.Paper), null, string.Join("-and-", chosen.Names), null, cancel));
        Map(TogetherView.AllFiles, (chosen, plan, paper, cancel) =>
            Results.File(PlanArchive.Of(PlanFiles.Of(plan, chosen.Stand, BenchSheetEndpoints.PaperOf(paper, chosen.Paper), null, cancel)), "application/zip", $"{string.Join("-and-", chosen.Names)}-plan.zip"));
    }
}
