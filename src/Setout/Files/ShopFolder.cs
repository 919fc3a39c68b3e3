using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Files;

/// <summary>
/// The pieces of a shop on disk: the piece files of one folder, each with its log beside it. Only those whose log tells of wood are read, and none is set out. What cannot be read is a finding,
/// whatever it is: what lies beside a piece does not stop it.
/// </summary>
/// <param name="Pieces">Those whose logs tell of wood, by name.</param>
/// <param name="Unread">What is not known, each with the name of its piece file.</param>
internal sealed record ShopFolder(ImmutableArray<ShopPiece> Pieces, ImmutableArray<(string Name, Finding Finding)> Unread)
{
    /// <summary>A folder with more logs than this is not a folder of pieces.</summary>
    private const int MostLogs = 2000;

    private const string LogEnding = ".log.yaml";

    // No entry tells of wood without it.
    private const string Wood = "took";

    /// <summary>Reads a folder.</summary>
    /// <param name="folder">Its path.</param>
    /// <param name="but">The name of a piece file that is left out, with all that shares its log; null for none.</param>
    public static ShopFolder Read(string folder, string? but = null)
    {
        var pieces = ImmutableArray.CreateBuilder<ShopPiece>();
        var unread = ImmutableArray.CreateBuilder<(string, Finding)>();
        string own = but is null ? "" : Path.GetFileNameWithoutExtension(but);
        foreach (string stem in Stems(folder, unread).Where(s => s != own)) Read(folder, stem, pieces, unread);
        return new(pieces.ToImmutable(), unread.ToImmutable());
    }

    /// <summary>The same without one piece.</summary>
    /// <param name="piece">The name of its file.</param>
    public ShopFolder Without(string piece)
    {
        string own = Path.GetFileNameWithoutExtension(piece);
        return new([.. Pieces.Where(p => Path.GetFileNameWithoutExtension(p.Name) != own)], [.. Unread.Where(u => Path.GetFileNameWithoutExtension(u.Name) != own)]);
    }

    private static IEnumerable<string> Stems(string folder, ImmutableArray<(string, Finding)>.Builder unread)
    {
        string[] stems = [];
        string? why = Try(() => stems =
        [
            .. Directory.EnumerateFiles(folder, "*" + LogEnding).Select(f => Path.GetFileName(f)[..^LogEnding.Length]).Where(s => s.Length > 0 && !s.StartsWith('.')).Order(StringComparer.Ordinal),
        ]);
        if (why is null && stems.Length > MostLogs) why = $"more than {MostLogs} logs lie there";
        if (why is not null) unread.Add(("", ShopPiece.Unread(Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)), why, "What other pieces took from the rack or left is not known.")));
        return stems.Take(MostLogs);
    }

    private static void Read(string folder, string stem, ImmutableArray<ShopPiece>.Builder pieces, ImmutableArray<(string, Finding)>.Builder unread)
    {
        string name = stem + ".yaml", logName = stem + LogEnding;
        Log? log = null;
        string? why = Try(() =>
        {
            if (Text(Path.Combine(folder, logName)) is { } text && text.Contains(Wood, StringComparison.Ordinal)) log = Sound(LogText.Read(text));
        });
        if (why is not null) unread.Add((name, ShopPiece.Unread(logName, why, $"What {stem} took from the rack, and what it left, is not known.")));
        if (log is null || !log.Standing.OfType<MarkEntry>().Any(e => e.TellsOfWood)) return;
        Piece? piece = null;
        why = Try(() => piece = Text(Path.Combine(folder, name)) is { } text ? Sound(PieceText.Read(text)) : throw new IOException("it is empty"));
        if (why is not null) unread.Add((name, ShopPiece.Unread(name, why, $"Which wood {stem} took from the rack, and which it left, is not known; its blanks are known by their names alone.")));
        pieces.Add(piece is null ? ShopPiece.Of(name, log) : new(name, piece, log));
    }

    // Null where there is nothing in it. A pipe or a device has no length, and would keep us waiting for ever.
    private static string? Text(string path)
    {
        var file = new FileInfo(path);
        if (file.LinkTarget is not null && file.ResolveLinkTarget(returnFinalTarget: true) is { } target) file = new(target.FullName);
        if (Directory.Exists(file.FullName)) throw new IOException("it is a folder");
        if (!file.Exists) throw new IOException("it is not there");
        if (file.Length == 0) return null;
        using FileStream stream = LogFile.OpenRead(path);
        return Sound(TextBytes.Read(stream));
    }

    private static T Sound<T>(TextRead<T> read) where T : class
    {
        if (read.IsSound) return read.Value!;
        Finding fault = read.Findings.First(f => f.Severity == Severity.Stop);
        throw new IOException($"{(fault.Place.IsKnown ? $"line {fault.Place.Line}: " : "")}{fault.Words}");
    }

    private static string? Try(Action read)
    {
        try
        {
            read();
            return null;
        }
        catch (Exception broken) when (broken is IOException or UnauthorizedAccessException)
        {
            return broken.Message;
        }
    }
}
