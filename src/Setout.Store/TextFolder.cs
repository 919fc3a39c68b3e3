using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Store;

/// <summary>Texts in a folder: written whole or not at all, read file by file.</summary>
public static class TextFolder
{
    /// <summary>A folder with more texts than this is not one of ours.</summary>
    public const int MostFiles = 2000;

    /// <summary>Writes texts into a folder that is new or empty, reads them back, and only then gives it its name.</summary>
    /// <exception cref="FactStoreException">The folder holds something, or cannot be written; there is nothing new then.</exception>
    public static void Write(ShopTexts texts, string folder)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (File.Exists(full) || (Directory.Exists(full) && Directory.EnumerateFileSystemEntries(full).Any()))
            throw FactStoreException.Of("export.not-empty", $"'{folder}' is there and is not an empty folder.", "Name a new one; nothing was written.");
        string unfinished = $"{full}.{Guid.NewGuid().ToString("n", CultureInfo.InvariantCulture)[..8]}.unfinished";
        try
        {
            Directory.CreateDirectory(unfinished);
            foreach (TextFile file in texts.Files)
            {
                string path = Path.Combine(unfinished, file.Path);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                byte[] bytes = Encoding.UTF8.GetBytes(file.Text);
                using (var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write))
                {
                    stream.Write(bytes);
                    stream.Flush(flushToDisk: true);
                }
                if (!File.ReadAllBytes(path).AsSpan().SequenceEqual(bytes)) throw new IOException($"'{file.Path}' does not read back as it was written.");
            }
            if (Directory.Exists(full)) Directory.Delete(full);
            Directory.Move(unfinished, full);
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException)
        {
            Remove(unfinished);
            throw FactStoreException.Of("export.not-written", $"'{folder}' cannot be written: {failed.Message}", "Look whether the folder above it may be written to and has room; nothing was left there.", failed);
        }
    }

    /// <summary>Reads the texts of a folder, or one file. Folders inside it, and what does not end in <c>.yaml</c>, are passed over.</summary>
    /// <exception cref="FactStoreException">There is no such folder or file, or it holds too much.</exception>
    public static ImmutableArray<IncomingText> Read(string path)
    {
        try
        {
            if (!Directory.Exists(path))
                return Path.Exists(path) ? [ReadFile(path)] : throw FactStoreException.Of("import.not-there", $"There is no file or folder '{path}'.", "Look at its name.");
            string[] files = [.. Directory.EnumerateFiles(path, "*.yaml").Where(f => !Path.GetFileName(f).StartsWith('.')).Take(MostFiles + 1).Order(StringComparer.Ordinal)];
            return files.Length <= MostFiles ? [.. files.Select(ReadFile)]
                : throw FactStoreException.Of("import.too-many", $"'{path}' holds more than {MostFiles} texts.", "Put those that are wanted into a folder of their own.");
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException)
        {
            throw FactStoreException.Of("import.unreadable", $"'{path}' cannot be read: {failed.Message}", "Look whether you may read it.", failed);
        }
    }

    private static IncomingText ReadFile(string path)
    {
        string name = Path.GetFileName(path);
        try
        {
            var file = new FileInfo(path);
            // A pipe has no length, and opening it would wait for ever.
            if (((FileInfo?)file.ResolveLinkTarget(returnFinalTarget: true) ?? file).Length == 0)
                return Unreadable(name, "It is empty, or no file at all.");
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            TextRead<string> read = TextBytes.Read(stream);
            return new(name, read.Value, read.Value is null ? read.Findings.First(f => f.Severity == Severity.Stop) : null);
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException)
        {
            return Unreadable(name, failed.Message);
        }
    }

    private static IncomingText Unreadable(string name, string why) => new(name, null, new("import.unreadable", Severity.Stop, "", why, "Leave it out, or mend it."));

    private static void Remove(string folder)
    {
        try
        {
            if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
        }
        catch (Exception stays) when (stays is IOException or UnauthorizedAccessException)
        {
            // Its name says that it is no good.
        }
    }
}
