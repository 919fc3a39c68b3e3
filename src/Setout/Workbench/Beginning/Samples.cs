using System.Collections.Immutable;
using Setout.Shop.Documents;
using Setout.Shop.Plans;

namespace Setout.Workbench.Beginning;

/// <summary>A sample to begin with.</summary>
/// <param name="File">Its name without ending.</param>
/// <param name="Name">What it is called.</param>
/// <param name="About">What it is.</param>
public sealed record SamplePiece(string File, string Name, string About);

/// <summary>The samples that come with the program. A name from a form is only ever compared with those that lie there.</summary>
/// <param name="folder">Where they lie; null when there are none.</param>
internal sealed class Samples(string? folder)
{
    private readonly Lazy<ImmutableArray<SamplePiece>> _all = new(() =>
    [
        .. (folder is null || !Directory.Exists(folder) ? [] : Directory.EnumerateFiles(folder, "*.yaml")).Select(f => Path.GetFileNameWithoutExtension(f)).Where(n => n != DocumentName.Shop && !n.EndsWith(".log", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).Select(n => (Name: n, PieceSource.Read(File.ReadAllText(Path.Combine(folder!, n + ".yaml")), null, null).Source)).Where(p => p.Source is not null)
            .Select(p => new SamplePiece(p.Name, p.Source!.Piece.Name, p.Source.Piece.About)),
    ]);

    /// <summary>All of them, by the names of their files.</summary>
    public ImmutableArray<SamplePiece> All => _all.Value;

    /// <summary>The text of one; null when there is none of that name.</summary>
    public string? Text(string file) => All.Any(s => s.File == file) ? File.ReadAllText(Path.Combine(folder!, file + ".yaml")) : null;

    /// <summary>The shop file beside them; null when there is none.</summary>
    public string? Shop => folder is not null && Path.Combine(folder, "shop.yaml") is var path && File.Exists(path) ? File.ReadAllText(path) : null;
}
