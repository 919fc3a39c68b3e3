using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Store;
using Setout.Workbench.Changing;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Keeping;

/// <summary>The page on how the work is kept: backups made and fetched, all texts fetched.</summary>
internal static class KeepingEndpoints
{
    public static void MapKeeping(this IEndpointRouteBuilder routes)
    {
        routes.MapGet(Links.Keeping, (DataKeeping keeping) => Guarded(() => Shown(keeping)));
        routes.MapPost("/keeping/backup", async (HttpRequest request, DataKeeping keeping, CancellationToken cancel) =>
        {
            (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
            if (fields is null) return refusal!;
            (BackupFile File, StoreCounts Counts)? made = null;
            return await Task.Run(() => Guarded(() =>
            {
                made = keeping.Backups.Make(BackupReason.Asked);
                return Shown(keeping, $"Backed up: {made.Value.Counts}, in {Path.GetFileName(made.Value.File.Path)}.");
            }), cancel);
        });
        routes.MapGet("/keeping/backup/{file}", (string file, DataKeeping keeping) => keeping.Backups.All().FirstOrDefault(b => Path.GetFileName(b.Path) == file) is { } backup
            ? Results.File(backup.Path, "application/vnd.sqlite3", file) : Pages.Show<UnknownPage>(UnknownView.Page($"backup {file}"), StatusCodes.Status404NotFound));
        routes.MapGet("/keeping/texts.zip", (DataKeeping keeping) => Guarded(() =>
        {
            DateTimeOffset now = keeping.Time.GetLocalNow();
            return Results.Bytes(TextArchive.Write(ShopTexts.Of(keeping.Store), now), "application/zip", $"setout-texts-{now:yyyy-MM-dd}.zip");
        }));
    }

    /// <summary>The page, with what was just done.</summary>
    /// <param name="keeping">The data folder.</param>
    /// <param name="done">In words; empty for nothing.</param>
    /// <param name="undo">The change that can be taken back; empty for none.</param>
    public static IResult Shown(DataKeeping keeping, string done = "", string undo = "") => Pages.Show<KeepingPage>(KeepingView.Of(keeping, done, undo));

    /// <summary>Answers what the store refuses as a page.</summary>
    public static IResult Guarded(Func<IResult> answer)
    {
        try
        {
            return answer();
        }
        catch (FactStoreException refused)
        {
            return Refused(refused.Fault);
        }
    }

    /// <summary>A page that says why nothing was done.</summary>
    public static IResult Refused(Finding fault) => Pages.Show<RefusedPage>(RefusedView.Of(fault, "", Links.Keeping), StatusCodes.Status422UnprocessableEntity);
}
