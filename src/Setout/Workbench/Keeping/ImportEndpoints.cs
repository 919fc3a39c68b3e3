using System.Collections.Immutable;
using System.Text;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Shop.Texts;
using Setout.Store;
using Setout.Workbench.Changing;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Keeping;

/// <summary>Import of texts: seen before it is done, one change, taken back as one.</summary>
internal static class ImportEndpoints
{
    public static void MapImporting(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/keeping/import", async (HttpRequest request, DataKeeping keeping) =>
        {
            (IFormCollection? fields, IResult? refusal) = await FormAsync(request);
            if (fields is null) return refusal!;
            return KeepingEndpoints.Guarded(() =>
            {
                ImmutableArray<IncomingText> texts = [.. fields.Files.Where(f => f.FileName.Length > 0).SelectMany(Read)];
                return texts.IsEmpty ? KeepingEndpoints.Refused(new("import.no-file", Severity.Stop, "", "There is no text among what was chosen.", "Choose piece files, logs or a shop file, which end in .yaml, or a ZIP of them."))
                    : Shown(ImportPlan.Of(keeping.Store, texts), texts, false);
            });
        });
        routes.MapPost("/keeping/import/do", async (HttpRequest request, DataKeeping keeping, ShelfChanges changes) =>
        {
            (IFormCollection? fields, IResult? refusal) = await FormAsync(request);
            if (fields is null) return refusal!;
            return KeepingEndpoints.Guarded(() => Import(fields, keeping, changes));
        });
        routes.MapPost("/keeping/import/take-back", async (HttpRequest request, DataKeeping keeping, ShelfChanges changes) =>
        {
            (IFormCollection? fields, IResult? refusal) = await FormAsync(request);
            if (fields is null) return refusal!;
            return KeepingEndpoints.Guarded(() =>
            {
                if (keeping.Store.Made(fields["made"].ToString()) is not { } made || ChangeUndo.Of(made, fields["change"].ToString(), changes.At) is not { } back)
                    return KeepingEndpoints.Refused(new("import.nothing", Severity.Stop, "", "There is nothing to take back.", ""));
                (_, ChangeOutcome outcome) = changes.Make(back);
                return outcome.Fault is { } fault ? KeepingEndpoints.Refused(fault) : KeepingEndpoints.Shown(keeping, "The import was taken back: texts are what they were, new pieces are put away. Entries of logs stay; void those that are wrong.");
            });
        });
    }

    private static IResult Import(IFormCollection fields, DataKeeping keeping, ShelfChanges changes)
    {
        string id = fields["change"].ToString();
        // Sent again, it is not a second import.
        if (id.Length > 0 && keeping.Store.Made(id) is { } before) return KeepingEndpoints.Shown(keeping, "Imported.", before.Id);
        if (Posted(fields) is not { } texts) return KeepingEndpoints.Refused(new("import.form", Severity.Stop, "", "This form is not one of this workbench.", "Choose the files again; nothing was changed."));
        ImportPlan plan = ImportPlan.Of(keeping.Store, texts);
        if (ImportView.SeenOf(plan) != fields["seen"].ToString()) return Shown(plan, texts, true);
        if (plan.IsEmpty) return KeepingEndpoints.Shown(keeping, "Nothing was changed: all of it is there already.");
        (_, ChangeOutcome outcome) = changes.Make(plan.ToChange(id, changes.At, "files"));
        if (outcome.Fault is not { } fault) return KeepingEndpoints.Shown(keeping, $"Imported: {plan}.", id);
        // The texts stay in the form: they need not be chosen again.
        return Pages.Show<ImportPage>(ImportView.Of(plan, texts, false) with { Fault = fault, Change = id }, StatusCodes.Status422UnprocessableEntity);
    }

    private static IResult Shown(ImportPlan plan, ImmutableArray<IncomingText> texts, bool isOther) => Pages.Show<ImportPage>(ImportView.Of(plan, texts, isOther));

    private static IEnumerable<IncomingText> Read(IFormFile file)
    {
        using Stream stream = file.OpenReadStream();
        // Browsers may send a path; the name is what follows the last slash.
        string name = file.FileName.Replace('\\', '/').Split('/')[^1];
        if (name.EndsWith(".zip", StringComparison.OrdinalIgnoreCase)) return TextArchive.Read(stream);
        TextRead<string> read = TextBytes.Read(stream);
        return [new(name, read.Value, read.Value is null ? read.Findings.First(f => f.Severity == Severity.Stop) : null)];
    }

    // The texts as the list held them; null where they are not.
    private static ImmutableArray<IncomingText>? Posted(IFormCollection fields)
    {
        (string?[] names, string?[] texts) = ([.. fields["name"]], [.. fields["text"]]);
        if (names.Length != texts.Length || names.Length == 0) return null;
        var posted = ImmutableArray.CreateBuilder<IncomingText>();
        foreach ((string? name, string? text) in names.Zip(texts))
        {
            var bytes = new byte[(text ?? "").Length];
            if (!Convert.TryFromBase64String(text ?? "", bytes, out int length) || TextBytes.Decode(bytes.AsSpan(0, length)).Value is not { } held) return null;
            posted.Add(new(name ?? "", held));
        }
        return posted.ToImmutable();
    }

    // A text in a field may be longer than what people type into one; the whole is limited all the same.
    private static Task<(IFormCollection? Fields, IResult? Refusal)> FormAsync(HttpRequest request) => ChangeEndpoints.FormAsync(request,
        new() { ValueLengthLimit = (int)Posts.MostBytes, MultipartBodyLengthLimit = Posts.MostBytes, ValueCountLimit = 2 * TextFolder.MostFiles + 10 });
}
