using System.Collections.Immutable;
using System.Globalization;
using Setout.Commands;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Files;

/// <summary>The three texts of a piece on disk.</summary>
/// <param name="Piece">The piece file.</param>
/// <param name="Log">The log beside it; may not exist yet.</param>
/// <param name="Shop">The shop file; null for the usual shop.</param>
internal sealed record PieceFiles(string Piece, string Log, string? Shop)
{
    /// <summary>Finds the texts: the log beside the piece, and the shop file named or standing beside it as <c>shop.yaml</c>.</summary>
    public static PieceFiles Of(string piece, string? shop)
    {
        if (string.IsNullOrWhiteSpace(piece)) throw new UsageException("There is no file name.", "Give the path of a piece file.");
        if (piece.StartsWith('@')) throw new UsageException($"'{piece}' names a piece kept in the workbench, which this version does not have yet.", "Give the path of a piece file.");
        if (Directory.Exists(piece)) throw new UsageException($"'{piece}' is a folder.", "Give the path of a piece file.");
        if (!File.Exists(piece)) throw new UsageException($"There is no file '{piece}'.", Near(piece));
        if (shop is not null && !File.Exists(shop)) throw new UsageException($"There is no shop file '{shop}'.", "");
        string folder = Path.GetDirectoryName(Path.GetFullPath(piece))!;
        string beside = Path.Combine(folder, "shop.yaml");
        return new(piece, Path.Combine(folder, Path.GetFileNameWithoutExtension(piece) + ".log.yaml"), shop ?? (File.Exists(beside) ? beside : null));
    }

    /// <summary>Reads all three, and what the other pieces of its folder took from the rack and left. Findings name their file.</summary>
    /// <param name="shop">The pieces of the folder where they are read already; null to read them.</param>
    public (PieceSource? Source, ImmutableArray<SourceFinding> Findings) Read(ShopFolder? shop = null)
    {
        var findings = ImmutableArray.CreateBuilder<SourceFinding>();
        string? piece = TextOf(Piece, SourceText.Piece, findings);
        string? log = File.Exists(Log) ? TextOf(Log, SourceText.Log, findings) : null;
        // A log that another writer has just made and not yet written holds no facts; neither does an empty one.
        if (string.IsNullOrWhiteSpace(log)) log = null;
        string? stock = Shop is null ? null : TextOf(Shop, SourceText.Shop, findings);
        if (piece is null || findings.Count > 0) return (null, findings.ToImmutable());
        (PieceSource? source, ImmutableArray<SourceFinding> faults) = PieceSource.Read(piece, log, stock);
        if (source is null) return (null, faults);
        string name = Path.GetFileName(Piece);
        ShopFolder others = shop?.Without(name) ?? ShopFolder.Read(Path.GetDirectoryName(Path.GetFullPath(Piece))!, name);
        return (source.Beside(name, others.Pieces, others.Unread.Select(u => u.Finding)), faults);
    }

    /// <summary>The file a finding is in.</summary>
    public string FileOf(SourceText text) => text switch
    {
        SourceText.Log => Log,
        SourceText.Shop => Shop ?? Piece,
        _ => Piece,
    };

    /// <summary>The path of another piece file of the same folder.</summary>
    /// <param name="name">Its name.</param>
    public string Beside(string name) => Path.Combine(Path.GetDirectoryName(Piece) ?? "", name);

    /// <summary>When the newest of the texts was last changed: what the plan stands on.</summary>
    public string Stand()
    {
        DateTime newest = new[] { Piece, Log, Shop }.Where(f => f is not null && File.Exists(f)).Max(f => File.GetLastWriteTime(f!));
        return "from texts of " + newest.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
    }

    private static string? TextOf(string path, SourceText text, ImmutableArray<SourceFinding>.Builder findings)
    {
        using FileStream stream = LogFile.OpenRead(path);
        TextRead<string> read = TextBytes.Read(stream);
        findings.AddRange(read.Findings.Select(f => new SourceFinding(text, f)));
        return read.Value;
    }

    private static string Near(string path)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        if (!Directory.Exists(folder)) return $"There is no folder '{Path.GetDirectoryName(path)}' either.";
        IEnumerable<string> texts = Directory.EnumerateFiles(folder, "*.yaml").Take(200).Select(f => Path.GetFileName(f)).Where(f => !f.EndsWith(".log.yaml", StringComparison.Ordinal));
        return NearestWord.Of(Path.GetFileName(path), texts.Order(StringComparer.Ordinal)) is { } guess ? $"Did you mean '{guess}'?" : "";
    }
}
