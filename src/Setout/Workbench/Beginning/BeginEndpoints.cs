using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Edits;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;
using Setout.Workbench.Viewing;

namespace Setout.Workbench.Beginning;

/// <summary>Beginning a piece: from nothing, or with a copy of a sample.</summary>
internal static class BeginEndpoints
{
    public static void MapBeginning(this IEndpointRouteBuilder routes)
    {
        // Whoever asks again for the page that told his slips finds the form.
        routes.MapGet(Links.New, (HttpContext http, Samples samples) => Pages.Show<BeginPage>(BeginView.Empty(samples, Viewer.Of(http).Unit)));
        routes.MapPost(Links.New, async (HttpRequest request, PieceChanges changes, Samples samples) =>
        {
            (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
            if (fields is null) return refusal!;
            string Typed(string field) => fields[field].ToString();
            if (Typed("sample") is { Length: > 0 } sample)
            {
                (string? copy, Finding? fault) = FromSample(changes, samples, Typed("change"), sample);
                return copy is not null ? Results.Redirect(Links.Stage(copy, "")) : Pages.Show<RefusedPage>(RefusedView.Of([fault!], request, fields, Links.Shelf), StatusCodes.Status422UnprocessableEntity);
            }
            (string? made, ImmutableArray<Finding> slips) = FromNothing(changes, f => Typed(f).Trim());
            return made is not null ? Results.Redirect(Links.Stage(made, "")) : Pages.Show<BeginPage>(BeginView.Of(samples, Typed("change"), Typed, slips), StatusCodes.Status422UnprocessableEntity);
        });
    }

    private static (string?, Finding?) FromSample(PieceChanges changes, Samples samples, string id, string sample) => samples.Text(sample) is { } text
        ? changes.Begin(id, sample, text, $"a copy of the sample {sample}") : (null, new("begin.no-sample", Severity.Stop, "", $"There is no sample '{sample}'.", "Choose one of those on the shelf."));

    private static (string?, ImmutableArray<Finding>) FromNothing(PieceChanges changes, Func<string, string> typed)
    {
        Edited made = new NewPiece(typed("name"), BeginView.UnitOf(typed("unit")), BeginView.KindOf(typed("kind")), typed("width"), typed("height"), typed("depth")).Text();
        if (made.Text is not { } text) return (null, made.Findings);
        string name = DocumentName.AsFile(typed("name").ToLowerInvariant().Replace(' ', '-'));
        (string? begun, Finding? fault) = changes.Begin(typed("change"), name == DocumentName.Shop ? name + "-piece" : name, text, made.Name);
        return begun is not null ? (begun, []) : (null, [fault!]);
    }
}
