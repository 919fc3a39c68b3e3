using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;

namespace Setout.Shop.Outputs;

/// <summary>The files of a plan in one ZIP file, for whoever has pages and no folder to write them to.</summary>
public static class PlanArchive
{
    // A fixed time, so that the same plan is the same file.
    private static readonly DateTimeOffset s_fixed = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Puts them into one.</summary>
    public static byte[] Of(ImmutableArray<PlanFile> files)
    {
        using var memory = new MemoryStream();
        using (var archive = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8))
        {
            foreach (PlanFile file in files)
            {
                ZipArchiveEntry entry = archive.CreateEntry(file.Path);
                entry.LastWriteTime = s_fixed;
                using Stream stream = entry.Open();
                stream.Write(file.Content);
            }
        }
        return memory.ToArray();
    }
}
