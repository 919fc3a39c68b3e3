using System.Collections.Immutable;
using Setout.Commands;
using Setout.Core.Workings;
using Setout.Shop.Facts;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Files;

/// <summary>The three texts of a piece that a command names: files of a folder, or a piece that the workbench keeps.</summary>
internal abstract record PieceFiles
{
    /// <summary>What names a piece of the workbench begins with.</summary>
    public const char Kept = '@';

    /// <summary>Finds the texts of a piece: those of a path, or those that the workbench keeps of <c>@NAME</c>.</summary>
    /// <param name="piece">What the command names.</param>
    /// <param name="shop">The shop file named; null for the one that stands with the piece.</param>
    /// <param name="data">The data folder named; null for the usual one. It counts for pieces of the workbench alone.</param>
    /// <exception cref="UsageException">There is no such piece.</exception>
    public static PieceFiles Of(string piece, string? shop, string? data = null)
    {
        if (string.IsNullOrWhiteSpace(piece)) throw new UsageException("There is no file name.", "Give the path of a piece file, or @NAME for a piece of the workbench.");
        if (piece[0] == Kept) return KeptFiles.Find(piece[1..], shop, data);
        return data is null ? DiskFiles.Find(piece, shop) : throw new UsageException($"'{piece}' is a file, and '--data' names what the workbench keeps.", $"Leave --data out, or write {Kept}NAME for a piece of the workbench.");
    }

    /// <summary>The piece as commands name it.</summary>
    public abstract string Piece { get; }

    /// <summary>Its name among the pieces of its shop, as a file name.</summary>
    public abstract string FileName { get; }

    /// <summary>Where it stands: pieces of one place have one shop file and one rack.</summary>
    public abstract string Place { get; }

    /// <summary>The log as messages name it.</summary>
    public abstract string LogName { get; }

    /// <summary>The shop file as messages name it; null for the usual shop.</summary>
    public abstract string? Shop { get; }

    /// <summary>Reads all three, and what the other pieces of its shop took from the rack and left. Findings name their text.</summary>
    public abstract (PieceSource? Source, ImmutableArray<SourceFinding> Findings) Read();

    /// <summary>The entries of its log.</summary>
    /// <exception cref="UsageException">They cannot be read.</exception>
    public abstract Log ReadLog();

    /// <summary>Appends to its log.</summary>
    /// <exception cref="UsageException">The entry holds something that would not read back, or cannot be appended.</exception>
    public abstract void Append(LogEntry entry);

    /// <summary>Appends one act to the logs of several pieces: to all of them, or to none that keeps telling of it.</summary>
    /// <param name="entries">The pieces of one shop, each with what comes to its log.</param>
    /// <exception cref="UsageException">One of them cannot be appended to.</exception>
    public static void Append(ImmutableArray<(PieceFiles Files, LogEntry Entry)> entries)
    {
        if (entries.All(e => e.Files is KeptFiles))
        {
            KeptFiles.Append([.. entries.Select(e => ((KeptFiles)e.Files, e.Entry))]);
            return;
        }
        var written = new Stack<(PieceFiles Files, LogEntry Entry)>();
        foreach ((PieceFiles Files, LogEntry Entry) one in entries)
        {
            try
            {
                one.Files.Append(one.Entry);
                written.Push(one);
            }
            catch (Exception failed) when (failed is IOException or UnauthorizedAccessException or UsageException)
            {
                foreach ((PieceFiles files, LogEntry entry) in written) files.Append(new VoidEntry(Entry.NewId(), entry.At, entry.Id));
                throw;
            }
        }
    }

    /// <summary>The text a finding is in.</summary>
    public string FileOf(SourceText text) => text switch
    {
        SourceText.Log => LogName,
        SourceText.Shop => Shop ?? Piece,
        _ => Piece,
    };

    /// <summary>Another piece of the same shop as commands name it.</summary>
    /// <param name="name">Its name as a file name.</param>
    public abstract string Beside(string name);

    /// <summary>Another piece of the same shop.</summary>
    /// <param name="name">Its name as a file name.</param>
    /// <param name="shop">The shop file named; null for the one that stands with it.</param>
    public abstract PieceFiles Other(string name, string? shop);

    /// <summary>When the newest of the texts was last changed: what the plan stands on.</summary>
    public abstract string Stand();

    /// <summary>When that was.</summary>
    public abstract DateTimeOffset ChangedAt { get; }
}
