using Setout.Shop.Facts;
using Setout.Store;
using Setout.Workbench.Changing;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Keeping;

/// <summary>Restoring: a backup is looked into, and only then put in the place of what is there.</summary>
internal static class RestoreEndpoints
{
    public static void MapRestoring(this IEndpointRouteBuilder routes)
    {
        routes.MapPost(Uploads.Path, async (HttpRequest request, Uploads uploads, CancellationToken cancel) =>
        {
            try
            {
                return Results.Redirect($"{Links.Keeping}/restore?upload={Uri.EscapeDataString(await uploads.TakeAsync(request, cancel))}");
            }
            catch (FactStoreException refused)
            {
                return KeepingEndpoints.Refused(refused.Fault);
            }
        });
        routes.MapGet("/keeping/restore", (string? backup, string? upload, DataKeeping keeping, Uploads uploads) => KeepingEndpoints.Guarded(() => Find(backup, upload, keeping, uploads) is var (field, path)
            ? Pages.Show<RestorePage>(RestoreView.Of(field, path, keeping)) : Gone()));
        routes.MapPost("/keeping/restore", async (HttpRequest request, DataKeeping keeping, Uploads uploads, ChangeWatch watch) =>
        {
            (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
            if (fields is null) return refusal!;
            // Not given up when the window is closed: it is done or not.
            return await Task.Run(() => KeepingEndpoints.Guarded(() =>
            {
                if (Find(fields["backup"], fields["upload"], keeping, uploads) is not var (field, path)) return Gone();
                Restored restored = keeping.Store.Restore(path, keeping.Time);
                watch.Tell();
                if (field == "upload") uploads.Clear();
                return KeepingEndpoints.Shown(keeping, $"Restored from {Path.GetFileName(path)}: {restored.Counts}.{(restored.Kept is { } kept ? $" What was there before is kept in {Path.GetFileName(kept)}." : "")}");
            }));
        });
        routes.MapPost("/keeping/leave", async (HttpRequest request, Uploads uploads) =>
        {
            (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(request);
            if (fields is null) return refusal!;
            uploads.Clear();
            return Results.Redirect(Links.Keeping);
        });
    }

    private static (string Field, string Path)? Find(string? backup, string? upload, DataKeeping keeping, Uploads uploads)
    {
        if (backup is { Length: > 0 } && keeping.Backups.All().FirstOrDefault(b => Path.GetFileName(b.Path) == backup) is { } file) return ("backup", file.Path);
        return upload is { Length: > 0 } && uploads.Find(upload) is { } path ? ("upload", path) : null;
    }

    private static IResult Gone() => Pages.Show<UnknownPage>(UnknownView.Page("that backup"), StatusCodes.Status404NotFound);
}
