using System.Collections.Immutable;
using Setout.Commands;
using Setout.Shop.Facts;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Files;

/// <summary>The three texts of a piece on disk.</summary>
internal sealed record DiskFiles : PieceFiles
{
    private DiskFiles(string piece, string log, string? shop) => (Piece, LogName, Shop) = (piece, log, shop);

    /// <summary>Finds the texts: the log beside the piece, and the shop file named or standing beside it as <c>shop.yaml</c>.</summary>
    public static DiskFiles Find(string piece, string? shop)
    {
        if (Directory.Exists(piece)) throw new UsageException($"'{piece}' is a folder.", "Give the path of a piece file.");
        if (!File.Exists(piece)) throw new UsageException($"There is no file '{piece}'.", Near(piece));
        if (shop is not null && !File.Exists(shop)) throw new UsageException($"There is no shop file '{shop}'.", "");
        string folder = Path.GetDirectoryName(Path.GetFullPath(piece))!;
        string beside = Path.Combine(folder, "shop.yaml");
        return new(piece, Path.Combine(folder, Path.GetFileNameWithoutExtension(piece) + ".log.yaml"), shop ?? (File.Exists(beside) ? beside : null));
    }

    /// <summary>The path of the piece file.</summary>
    public override string Piece { get; }

    /// <inheritdoc/>
    public override string FileName => Path.GetFileName(Piece);

    /// <inheritdoc/>
    public override string Place => Path.GetDirectoryName(Path.GetFullPath(Piece))!;

    /// <summary>The path of the log; may not exist yet.</summary>
    public override string LogName { get; }

    /// <summary>The path of the shop file; null for the usual shop.</summary>
    public override string? Shop { get; }

    /// <inheritdoc/>
    public override (PieceSource? Source, ImmutableArray<SourceFinding> Findings) Read()
    {
        var findings = ImmutableArray.CreateBuilder<SourceFinding>();
        string? piece = TextOf(Piece, SourceText.Piece, findings);
        string? log = File.Exists(LogName) ? TextOf(LogName, SourceText.Log, findings) : null;
        // A log that another writer has just made and not yet written holds no facts; neither does an empty one.
        if (string.IsNullOrWhiteSpace(log)) log = null;
        string? stock = Shop is null ? null : TextOf(Shop, SourceText.Shop, findings);
        if (piece is null || findings.Count > 0) return (null, findings.ToImmutable());
        (PieceSource? source, ImmutableArray<SourceFinding> faults) = PieceSource.Read(piece, log, stock);
        if (source is null) return (null, faults);
        var others = ShopFolder.Read(Place, FileName);
        return (source.Beside(FileName, others.Pieces, others.Unread.Select(u => u.Finding)), faults);
    }

    /// <inheritdoc/>
    public override Log ReadLog()
    {
        try
        {
            return new LogFile(LogName).Read();
        }
        catch (FactStoreException refused)
        {
            throw new UsageException(refused.Fault.Words, refused.Fault.Remedy);
        }
    }

    /// <inheritdoc/>
    public override void Append(LogEntry entry) => LogFile.Append(LogName, entry);

    /// <inheritdoc/>
    public override string Beside(string name) => Path.Combine(Path.GetDirectoryName(Piece) ?? "", name);

    /// <inheritdoc/>
    public override PieceFiles Other(string name, string? shop) => Find(Beside(name), shop);

    /// <inheritdoc/>
    public override string Stand() => "from texts of " + EntryTime.Say(ChangedAt.ToLocalTime().DateTime);

    /// <inheritdoc/>
    public override DateTimeOffset ChangedAt => new[] { Piece, LogName, Shop }.Where(f => f is not null && File.Exists(f)).Max(f => new DateTimeOffset(File.GetLastWriteTimeUtc(f!)));

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
