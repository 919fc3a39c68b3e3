using System.Collections.Immutable;
using Setout.Commands;
using Setout.Files;
using Setout.Shop.Plans;

namespace Setout.Workbench.Pieces;

/// <summary>A piece file as it was found.</summary>
/// <param name="Name">Its name in addresses: the file's name without ending.</param>
/// <param name="Files">Its texts on disk.</param>
/// <param name="Source">The texts read; null when they cannot be used.</param>
/// <param name="Findings">What is wrong with the texts.</param>
/// <param name="Refusal">Why the file could not be read at all; else empty.</param>
internal sealed record PieceFile(string Name, PieceFiles? Files, PieceSource? Source, ImmutableArray<SourceFinding> Findings, string Refusal);

/// <summary>
/// The folder of pieces. Read afresh at each asking, so that a file changed by hand is seen. A name is only ever compared with the names of
/// the files that lie here, so no name from an address can reach anything else.
/// </summary>
/// <param name="folder">Its path; null when there is none.</param>
internal sealed class PieceFolder(string? folder)
{
    /// <summary>A folder with more files than this is not a folder of pieces.</summary>
    private const int MostFiles = 2000;

    /// <summary>Its path; null when there is none.</summary>
    public string? Path { get; } = folder is null ? null : System.IO.Path.GetFullPath(folder);

    /// <summary>The names of all pieces, in order.</summary>
    public ImmutableArray<string> Names() => Path is null || !Directory.Exists(Path) ? [] :
    [
        .. Directory.EnumerateFiles(Path, "*.yaml").Take(MostFiles).Select(f => System.IO.Path.GetFileName(f))
            .Where(f => !f.StartsWith('.') && f != "shop.yaml" && !f.EndsWith(".log.yaml", StringComparison.Ordinal))
            .Select(f => System.IO.Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal),
    ];

    /// <summary>Reads a piece; null when there is none of that name.</summary>
    public PieceFile? Read(string name)
    {
        if (!Names().Contains(name)) return null;
        try
        {
            var files = PieceFiles.Of(System.IO.Path.Combine(Path!, name + ".yaml"), shop: null);
            (PieceSource? source, ImmutableArray<SourceFinding> findings) = files.Read();
            return new(name, files, source, findings, "");
        }
        catch (UsageException refused)
        {
            return new(name, null, null, [], $"{refused.Message} {refused.Remedy}".TrimEnd());
        }
        catch (Exception broken) when (broken is IOException or UnauthorizedAccessException)
        {
            return new(name, null, null, [], broken.Message);
        }
    }
}
