using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Store;

namespace Setout.Workbench.Keeping;

/// <summary>
/// Backups that were sent to the workbench and wait to be restored: files of a folder of their own in the data folder, no more than one at a time. What is no backup of ours leaves nothing behind.
/// </summary>
/// <param name="keeping">The data folder.</param>
internal sealed class Uploads(DataKeeping keeping)
{
    /// <summary>Where they are sent.</summary>
    public const string Path = "/keeping/upload";

    /// <summary>The most bytes of one, and all that goes along with it.</summary>
    public const long MostBytes = 2L * 1024 * 1024 * 1024;

    private string Folder => System.IO.Path.Combine(keeping.Place, "incoming");

    /// <summary>The one that waits under a name; null when there is none.</summary>
    /// <param name="name">From an address or a form; only ever compared with those that are there.</param>
    public string? Find(string name) => Directory.Exists(Folder) ? Directory.EnumerateFiles(Folder, "*.db").FirstOrDefault(f => System.IO.Path.GetFileName(f) == name) : null;

    /// <summary>Takes all away.</summary>
    public void Clear()
    {
        try
        {
            if (Directory.Exists(Folder)) Directory.Delete(Folder, recursive: true);
        }
        catch (Exception stays) when (stays is IOException or UnauthorizedAccessException)
        {
            // The next one that comes takes it away.
        }
    }

    /// <summary>Takes the file out of a form, as it comes.</summary>
    /// <returns>Its name here.</returns>
    /// <exception cref="FactStoreException">There is no file, or it is no backup of ours, or there is no room; nothing is left of it.</exception>
    public async Task<string> TakeAsync(HttpRequest request, CancellationToken cancel)
    {
        try
        {
            return await SaveAsync(request, cancel) ?? throw FactStoreException.Of("restore.no-file", "No file was chosen.", "Choose a backup, a file that ends in .db.");
        }
        catch (Exception broken) when (broken is InvalidDataException or BadHttpRequestException or IOException or UnauthorizedAccessException)
        {
            Clear();
            throw FactStoreException.Of("restore.not-taken", $"The file could not be taken: {broken.Message}", "Look whether the data folder has room, and send it again; nothing was changed.", broken);
        }
        catch
        {
            Clear();
            throw;
        }
    }

    private async Task<string?> SaveAsync(HttpRequest request, CancellationToken cancel)
    {
        string boundary = MediaTypeHeaderValue.TryParse(request.ContentType, out MediaTypeHeaderValue? type) ? HeaderUtilities.RemoveQuotes(type.Boundary).Value ?? "" : "";
        if (boundary.Length == 0) return null;
        Clear();
        var reader = new MultipartReader(boundary, request.Body);
        while (await reader.ReadNextSectionAsync(cancel) is { } section)
        {
            if (section.AsFileSection() is not { FileName: { Length: > 0 } sent, FileStream: { } stream }) continue;
            // Of the name that came only what can be no path.
            string name = DocumentName.AsFile(System.IO.Path.GetFileNameWithoutExtension(sent.Replace('\\', '/'))) + ".db", path = System.IO.Path.Combine(Folder, name);
            Directory.CreateDirectory(Folder);
            await using (var file = new FileStream(path + BackupEnding, FileMode.Create, FileAccess.Write)) await stream.CopyToAsync(file, cancel);
            // Looked at before it has a name that anything finds.
            Restoring.LookInto(System.IO.Path.Combine(Folder, "look"), path + BackupEnding, keeping.Time, (_, counts) => counts);
            File.Move(path + BackupEnding, path);
            return name;
        }
        return null;
    }

    private const string BackupEnding = ".unfinished";
}
