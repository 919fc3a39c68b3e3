using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Store;

/// <summary>
/// Writes a backup: one file that needs nothing else. It is made by SQLite's own backup, which sees one state of the database while others go on
/// writing, and is opened and counted before it has its name. Beside the tables of the database it holds a table <c>texts</c>, so that any program that
/// reads SQLite can show the work.
/// </summary>
internal static class BackupWriting
{
    /// <summary>What a backup is called until it is known to be good.</summary>
    public const string Unfinished = ".unfinished";

    /// <summary>Writes one.</summary>
    /// <param name="database">The database, which may be in use.</param>
    /// <param name="target">The file to be made; not there yet.</param>
    /// <param name="patience">How long to wait for others.</param>
    /// <exception cref="FactStoreException">It could not be made; there is no file of that name then.</exception>
    public static StoreCounts Write(string database, string target, TimeSpan patience)
    {
        string unfinished = target + Unfinished;
        try
        {
            StoreCounts counts = Copy(database, unfinished, patience);
            Check(unfinished, counts);
            using (var file = new FileStream(unfinished, FileMode.Open, FileAccess.ReadWrite)) file.Flush(flushToDisk: true);
            File.Move(unfinished, target);
            return counts;
        }
        catch (Exception failed) when (failed is SqliteException or IOException or UnauthorizedAccessException or FactStoreException)
        {
            Remove(unfinished);
            throw failed switch
            {
                SqliteException said => StoreFault.Of(target, said, patience),
                FactStoreException => failed,
                _ => FactStoreException.Of("store.no-backup", $"No backup could be written as '{target}': {failed.Message}", "Look whether its folder may be written to and has room; nothing else was changed.", failed),
            };
        }
    }

    private static StoreCounts Copy(string database, string unfinished, TimeSpan patience)
    {
        Remove(unfinished);
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(unfinished))!);
        using SqliteConnection source = Plain.Open(database, SqliteOpenMode.ReadWrite, patience);
        using SqliteConnection copy = Plain.Open(unfinished, SqliteOpenMode.ReadWriteCreate, patience);
        StoreCounts counts;
        // What is counted and what is copied is one state.
        using (source.BeginTransaction(deferred: true))
        {
            counts = StoreCounts.Of(source);
            source.BackupDatabase(copy);
        }
        // One file, with nothing beside it.
        copy.Run("PRAGMA journal_mode = DELETE");
        using SqliteTransaction texts = copy.BeginTransaction(deferred: false);
        copy.Run("DROP TABLE IF EXISTS texts; CREATE TABLE texts (file TEXT PRIMARY KEY, text TEXT NOT NULL) STRICT");
        foreach (TextFile file in TextsOf(copy, database)) copy.Run("INSERT INTO texts (file, text) VALUES ($file, $text)", ("$file", file.Path), ("$text", file.Text));
        texts.Commit();
        return counts;
    }

    // The texts as they are in the copy: that they can be read is part of its being good.
    private static ImmutableArray<TextFile> TextsOf(SqliteConnection copy, string path)
    {
        var documents = ImmutableArray.CreateBuilder<(DocumentLine, string)>();
        var logs = ImmutableArray.CreateBuilder<(string, ImmutableArray<LogEntry>)>();
        bool hasDocuments = copy.Number("SELECT count(*) FROM sqlite_schema WHERE name = 'documents'") > 0;
        if (hasDocuments)
        {
            var states = new States(copy, path);
            foreach (DocumentRow row in DocumentRow.All(copy)) documents.Add((row.Line(states), states.TextOf(row.State)));
        }
        using SqliteCommand pieces = copy.Command(hasDocuments
            ? "SELECT p.number, coalesce(d.name, p.name) FROM pieces p LEFT JOIN documents d ON d.piece = p.number ORDER BY 2"
            : "SELECT number, name FROM pieces ORDER BY 2");
        foreach ((long number, string name) in pieces.Rows(row => (row.GetInt64(0), row.GetString(1))))
            logs.Add((name, [.. PieceFacts.Rows(copy, number).Select(r => PieceFacts.EntryOf(path, name, r.Id, r.Text))]));
        return ShopTexts.Of(documents.ToImmutable(), logs.ToImmutable()).Files;
    }

    /// <summary>Opens a backup by itself and counts.</summary>
    /// <exception cref="FactStoreException">It is not whole.</exception>
    private static void Check(string unfinished, StoreCounts wanted)
    {
        using SqliteConnection copy = Plain.Open(unfinished, SqliteOpenMode.ReadOnly, TimeSpan.FromSeconds(1));
        if (Health.Fault(copy) is { } fault) throw StoreFault.Damaged(unfinished, fault, null);
        StoreCounts counts = StoreCounts.Of(copy);
        if (counts != wanted) throw FactStoreException.Of("store.no-backup", $"The backup holds {counts} instead of {wanted}.", "Try again; look after the disk. Nothing else was changed.");
    }

    private static void Remove(string unfinished)
    {
        foreach (string file in (string[])[unfinished, unfinished + "-journal", unfinished + "-wal", unfinished + "-shm"])
        {
            try
            {
                File.Delete(file);
            }
            catch (Exception stays) when (stays is IOException or UnauthorizedAccessException)
            {
                // Its name says that it is no good.
            }
        }
    }
}
