using System.Collections.Immutable;
using Setout.Shop.Noting;
using Setout.Shop.Texts;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Noting;

/// <summary>What was read and marked, and the forms that say so.</summary>
internal static class NotingEndpoints
{
    public static void MapNoting(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/piece/{name}/facts", (string name, PieceDoor door) => door.Open(name, piece => Pages.Show<FactsPage>(FactsView.Of(piece))));
        routes.MapPost("/piece/{name}/read", (string name, HttpRequest request, FactChanges facts) => NoteAsync(request, name, (form, fields) =>
            facts.Read(name, form, new(Field(fields, "key"), Field(fields, "value")) { With = Field(fields, "with"), Spot = Field(fields, "spot"), Sheet = Optional(fields, "sheet"), IsForced = fields.ContainsKey("force") })));
        routes.MapPost("/piece/{name}/mark", (string name, HttpRequest request, FactChanges facts) => NoteAsync(request, name, (form, fields) =>
            Progresses.TryGetValue(Field(fields, "progress"), out Progress progress)
                ? facts.Mark(name, form, new(progress, [.. fields["what"].SelectMany(w => (w ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries)).Distinct(), .. fields["item"].OfType<string>()]) { Sheet = Optional(fields, "sheet"), IsAgain = fields.ContainsKey("again") })
                : new(new("note.mark", Core.Workings.Severity.Stop, "", "This does not say how far it has come.", "Go back and choose it again."), false)));
        routes.MapPost("/piece/{name}/void", (string name, HttpRequest request, FactChanges facts) => NoteAsync(request, name, (form, fields) => fields.ContainsKey("whole") ? facts.VoidAll(name, form, Field(fields, "entry")) : facts.Void(name, form, Field(fields, "entry"))));
        routes.MapPost("/piece/{name}/put-back", (string name, HttpRequest request, FactChanges facts) => NoteAsync(request, name, (form, fields) => facts.PutBack(name, form, Field(fields, "entry"))));
        routes.MapPost("/piece/{name}/allow", (string name, HttpRequest request, FactChanges facts) => NoteAsync(request, name, (form, fields) => facts.Allow(name, form, Field(fields, "code"), Field(fields, "on"), Field(fields, "because"))));
        routes.MapPost("/piece/{name}/mend", (string name, HttpRequest request, FactChanges facts) => NoteAsync(request, name, (form, fields) =>
            facts.Mend(name, form, Field(fields, "upset"), Field(fields, "remedy"), [.. Enumerable.Range(0, fields.Count).TakeWhile(i => fields.ContainsKey(NotedMending.Field(i))).Select(i => Field(fields, NotedMending.Field(i)))])));
    }

    private static ImmutableDictionary<string, Progress> Progresses { get; } =
        Enum.GetValues<Progress>().ToImmutableDictionary(p => p.ToString().ToLowerInvariant(), StringComparer.Ordinal);

    private static string Field(IFormCollection fields, string name) => fields[name].ToString().Trim();

    private static string? Optional(IFormCollection fields, string name) => Field(fields, name) is { Length: > 0 } value ? value : null;

    private static async Task<IResult> NoteAsync(HttpRequest request, string name, Func<ChangeForm, IFormCollection, ChangeOutcome> make)
    {
        (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
        if (fields is null) return refusal!;
        if (ChangeForm.Of(fields, Links.Stage(name, "")) is not { } form) return Results.Text("This form is not one of this workbench, so nothing was written.\n", statusCode: StatusCodes.Status400BadRequest);
        ChangeOutcome outcome = make(form, fields);
        if (outcome.Faults.IsEmpty) return Results.Redirect(form.Back);
        return Pages.Show<RefusedPage>(RefusedView.OfFact(outcome.Faults, request, fields, form.Back), outcome.IsConflict ? StatusCodes.Status409Conflict : StatusCodes.Status422UnprocessableEntity);
    }
}
