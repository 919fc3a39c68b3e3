using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Edits;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Beginning;

/// <summary>Beginning a piece: from nothing, or with a copy of a sample.</summary>
internal static class BeginEndpoints
{
    public static void MapBeginning(this IEndpointRouteBuilder routes) => routes.MapPost("/new", async (HttpRequest request, PieceChanges changes, Samples samples) =>
    {
        (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
        if (fields is null) return refusal!;
        string Typed(string field) => fields[field].ToString().Trim();
        (string? name, Finding? fault) = Typed("sample") is { Length: > 0 } sample ? FromSample(changes, samples, Typed("change"), sample) : FromNothing(changes, Typed);
        return name is not null ? Results.Redirect(Links.Stage(name, ""))
            : Pages.Show<RefusedPage>(RefusedView.Of(fault!, request, fields, Links.Shelf), StatusCodes.Status422UnprocessableEntity);
    });

    private static (string?, Finding?) FromSample(PieceChanges changes, Samples samples, string id, string sample) => samples.Text(sample) is { } text
        ? changes.Begin(id, sample, text, $"a copy of the sample {sample}") : (null, new("begin.no-sample", Severity.Stop, "", $"There is no sample '{sample}'.", "Choose one of those on the shelf."));

    private static (string?, Finding?) FromNothing(PieceChanges changes, Func<string, string> typed)
    {
        NewKind kind = typed("kind") switch { "frame" => NewKind.Frame, "top" => NewKind.Top, _ => NewKind.Case };
        Edited made = new NewPiece(typed("name"), typed("unit") == "mm" ? LengthUnit.Millimetre : LengthUnit.Inch, kind, typed("width"), typed("height"), typed("depth")).Text();
        if (made.Text is not { } text) return (null, made.Findings[0]);
        string name = DocumentName.AsFile(typed("name").ToLowerInvariant().Replace(' ', '-'));
        return changes.Begin(typed("change"), name == DocumentName.Shop ? name + "-piece" : name, text, made.Name);
    }
}
