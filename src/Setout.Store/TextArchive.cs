using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Store;

/// <summary>Texts as one ZIP file: the folder that <see cref="TextFolder"/> writes, in an open form.</summary>
public static class TextArchive
{
    /// <summary>An archive whose texts are larger together is not one of ours.</summary>
    public const long MostBytes = 64L * 1024 * 1024;

    /// <summary>Writes an archive and reads it back.</summary>
    /// <param name="texts">The texts.</param>
    /// <param name="at">The time that its files bear.</param>
    /// <exception cref="FactStoreException">It does not read back as it was written.</exception>
    public static byte[] Write(ShopTexts texts, DateTimeOffset at)
    {
        using var memory = new MemoryStream();
        using (var archive = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8))
        {
            foreach (TextFile file in texts.Files)
            {
                ZipArchiveEntry entry = archive.CreateEntry(file.Path);
                entry.LastWriteTime = at;
                using Stream stream = entry.Open();
                stream.Write(Encoding.UTF8.GetBytes(file.Text));
            }
        }
        memory.Position = 0;
        using (var back = new ZipArchive(memory, ZipArchiveMode.Read, leaveOpen: true, Encoding.UTF8))
        {
            if (back.Entries.Count != texts.Files.Length || back.Entries.Zip(texts.Files).FirstOrDefault(p => p.First.FullName != p.Second.Path || TextOf(p.First) != p.Second.Text) is { First: not null })
                throw FactStoreException.Of("export.not-written", "The archive does not read back as it was written.", "Try again; nothing was changed.");
        }
        return memory.ToArray();
    }

    /// <summary>Reads the texts of an archive. Folders inside it, such as <c>put-away</c>, and what does not end in <c>.yaml</c>, are passed over.</summary>
    /// <param name="stream">The archive; can be sought in.</param>
    /// <exception cref="FactStoreException">It is no archive, or holds too much.</exception>
    public static ImmutableArray<IncomingText> Read(Stream stream)
    {
        try
        {
            using var archive = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true, Encoding.UTF8);
            ZipArchiveEntry[] files = [.. archive.Entries.Where(e => e.FullName.EndsWith(".yaml", StringComparison.Ordinal) && !e.FullName.Contains('/') && !e.FullName.Contains('\\') && !e.FullName.StartsWith('.'))];
            if (files.Length > TextFolder.MostFiles) throw FactStoreException.Of("import.too-many", $"The archive holds more than {TextFolder.MostFiles} texts.", "Put those that are wanted into one of their own.");
            var texts = ImmutableArray.CreateBuilder<IncomingText>();
            long all = 0;
            foreach (ZipArchiveEntry file in files)
            {
                using Stream open = file.Open();
                TextRead<string> read = TextBytes.Read(open);
                texts.Add(new(file.FullName, read.Value, read.Value is null ? read.Findings.First(f => f.Severity == Severity.Stop) : null));
                // What an archive says of the sizes in it is not believed.
                all += read.Value?.Length ?? 0;
                if (all > MostBytes) throw FactStoreException.Of("import.too-many", $"The texts of the archive are larger than {MostBytes / 1024 / 1024} MB.", "Put those that are wanted into one of their own.");
            }
            return texts.ToImmutable();
        }
        catch (Exception broken) when (broken is InvalidDataException or IOException or NotSupportedException or ArgumentException)
        {
            throw FactStoreException.Of("import.unreadable", $"This archive cannot be read: {broken.Message}", "Make it anew, or choose the texts themselves.", broken);
        }
    }

    private static string TextOf(ZipArchiveEntry entry)
    {
        using var reader = new StreamReader(entry.Open(), new UTF8Encoding(false), detectEncodingFromByteOrderMarks: false);
        return reader.ReadToEnd();
    }
}
