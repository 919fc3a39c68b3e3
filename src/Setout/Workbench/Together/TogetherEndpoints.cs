using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Workbench.Breakdown;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Together;

/// <summary>The page of several pieces broken down together.</summary>
internal static class TogetherEndpoints
{
    // Several plans at once are several searches; more pieces than this are no winter's work.
    internal const int MostPieces = 12;

    public static void MapTogether(this IEndpointRouteBuilder routes)
    {
        MapCut(routes);
        routes.MapPost(TogetherView.Enough, (HttpRequest request, KeptPieces pieces, PlanDesk desk) => ChangeEndpoints.AnswerAsync(request, Links.Together, (form, _) => form.Back, (_, _) =>
        {
            PieceFile?[] files = [.. request.Query["piece"].OfType<string>().Take(MostPieces).Select(pieces.Read)];
            if (files.Length > 1 && files.All(f => f?.Source is not null) && PiecesTogether.Of(files.Select(f => (f!.FileName, f.Source!))).Source is { } source)
                desk.TakeBestSoFar(DeskName(files.Select(f => f!.Name)), source.Hash);
            return ChangeMaker.Done;
        }));
        routes.MapGet(Links.Together, async (string[]? piece, string? plan, HttpRequest request, KeptPieces pieces, PlanDesk desk, RunDesk runs, CancellationToken cancel) =>
    {
        ImmutableArray<string> names = [.. (piece ?? []).Where(n => n.Length > 0).Distinct(StringComparer.Ordinal).Take(MostPieces)];
        if (names.FirstOrDefault(n => pieces.Read(n) is null) is { } unknown) return Pages.Show<UnknownPage>(UnknownView.Piece(unknown, pieces.Names()), StatusCodes.Status404NotFound);
        ImmutableArray<PieceFile> files = [.. names.Select(n => pieces.Read(n)!)];
        if (files.Length < 2) return Pages.Show<TogetherPage>(TogetherView.Choosing(pieces, names));
        if (files.FirstOrDefault(f => f.Source is null) is { } unread)
            return Pages.Show<TogetherPage>(TogetherView.Refused(pieces, names, [.. unread.Findings.Select(f => Note.Of(f.Finding, unread.FileOf(f.Text)))]));
        foreach (PieceFile file in files)
        {
            ImmutableArray<Finding> stops = [.. desk.SetOut(file.Name, file.Source!).Findings.Where(f => f.Severity == Severity.Stop)];
            if (!stops.IsEmpty) return Pages.Show<TogetherPage>(TogetherView.Refused(pieces, names, [.. stops.Select(f => Note.Of(f, file.FileName)).Select(n => n.Place == NotePlace.None ? n with { Place = new(file.Name, Links.Stage(file.Name, "")) } : n)]));
        }
        (PieceSource? source, Finding? refusal) = PiecesTogether.Of(files.Select(f => (f.FileName, f.Source!)));
        if (refusal is not null) return Pages.Show<TogetherPage>(TogetherView.Refused(pieces, names, [Note.Of(refusal, "")]));
        try
        {
            bool isAnew = plan == BreakdownView.Anew;
            string name = DeskName(names);
            if (await PieceDoor.SoonAsync(runs.OfAsync(name, files, source!, isAnew), request, cancel) is not { } at)
                return Pages.Show<TogetherPage>(TogetherView.Waiting(pieces, names, desk.Last(name, source!.Piece.Shown), TogetherView.WaitsFor(desk, name, names, isAnew)));
            // What it saves is told once each is laid out by itself; the plan itself waits for none of that.
            Plan[]? alone = await PieceDoor.SoonAsync(Task.WhenAll(files.Select(f => desk.PlanAsync(f.Name, f.Source!))), request, cancel);
            return Pages.Show<TogetherPage>(TogetherView.Of(pieces, names, at, source!, alone is null ? [] : [.. alone], alone is null ? TogetherView.Alone(desk, names, isAnew) : null));
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            // A piece was changed while the page waited.
            return Results.Redirect(TogetherView.Href(names));
        }
    });
    }

    // No piece has a slash in its name.
    internal static string DeskName(IEnumerable<string> names) => "/" + string.Join('/', names);

    // A run of several pieces goes into the logs of all of them, in one change.
    private static void MapCut(IEndpointRouteBuilder routes) => routes.MapPost(TogetherView.Cut, async (HttpRequest request, KeptPieces pieces, RunDesk runs, RunChanges changes, CancellationToken cancel) =>
    {
        (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
        if (fields is null) return refusal!;
        PieceFile?[] files = [.. fields["piece"].OfType<string>().Select(pieces.Read)];
        if (files.Length < 2 || files.Any(f => f?.Source is null) || PiecesTogether.Of(files.Select(f => (f!.FileName, f.Source!))).Source is not { } source)
            return Results.Text("These pieces cannot be broken down together any more, so nothing was marked.\n", statusCode: StatusCodes.Status409Conflict);
        SawnPlan? shown = await runs.ShownAsync(DeskName(files.Select(f => f!.Name)), files!, source, fields["plan"].ToString()).WaitAsync(cancel);
        _ = int.TryParse(fields["run"].ToString(), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int run);
        return await ChangeEndpoints.AnswerAsync(request, Links.Together, (form, _) => form.Back, (form, _) => changes.Mark(form, files!, source, shown, run));
    });
}
