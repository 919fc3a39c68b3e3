using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>The tables of the database and how they came about. A step that has been released is never edited; a later one follows it.</summary>
internal static class Schema
{
    /// <summary>Stands in the head of the file (SQLite's <c>application_id</c>) and says that it is ours.</summary>
    public const int Mark = 0x5374_6F75;

    /// <summary>
    /// Step n makes version n of version n - 1. Facts are kept from change by the database itself. REPLACE takes rows out without asking the
    /// triggers for taking out, so a row that would replace another is refused before it goes in.
    /// </summary>
    public static ImmutableArray<string> Steps { get; } = [SchemaSteps.Facts, SchemaSteps.Documents];

    /// <summary>Brings a database to the last of the steps; all of it or none.</summary>
    /// <param name="connection">To the database.</param>
    /// <param name="path">The file, for messages.</param>
    /// <param name="steps">The steps.</param>
    /// <param name="backUp">Called before an older database is changed, while nobody else can write; gives the backup's file. What it throws stops the upgrade.</param>
    /// <exception cref="FactStoreException">The file belongs to another program or to a newer version of this one, or could not be brought up.</exception>
    public static void Bring(SqliteConnection connection, string path, ImmutableArray<string> steps, Func<string>? backUp = null)
    {
        using (connection.BeginTransaction(deferred: true))
        {
            // All that is asked is answered from one state: between two questions another program may just be making the tables.
            if (VersionOf(connection, path, steps.Length) == steps.Length) return;
        }
        // Takes effect outside a transaction only. It stays with the file.
        connection.Run("PRAGMA journal_mode = WAL");
        using SqliteTransaction only = connection.BeginTransaction(deferred: false);
        // Another program may have been faster: ask again, now that nobody else can write.
        int version = VersionOf(connection, path, steps.Length);
        if (version == steps.Length) return;
        string? backup = version > 0 ? backUp?.Invoke() : null;
        try
        {
            long facts = version > 0 ? connection.Number("SELECT count(*) FROM facts") : 0;
            for (int step = version; step < steps.Length; step++) connection.Run(steps[step]);
            connection.Run($"PRAGMA application_id = {Mark}; PRAGMA user_version = {steps.Length}");
            if (version > 0 && (Health.Fault(connection) ?? (connection.Number("SELECT count(*) FROM facts") == facts ? null : "facts are missing")) is { } fault) throw StoreFault.Damaged(path, fault, null);
            only.Commit();
        }
        catch (Exception failed) when (version > 0 && failed is SqliteException or FactStoreException)
        {
            throw FactStoreException.Of("store.no-upgrade", $"'{path}' is of version {version} and could not be brought to version {steps.Length}: {failed.Message.TrimEnd('.')}.",
                $"It was left as it is: go on with the program that made it.{(backup is null ? "" : $" A copy of it is '{backup}'.")}", failed);
        }
    }

    /// <summary>The version of a database that is ours; 0 for an empty one.</summary>
    /// <exception cref="FactStoreException">It belongs to another program, or is of a later version than is known.</exception>
    public static int VersionOf(SqliteConnection connection, string path, int known)
    {
        long mark = connection.Number("PRAGMA application_id"), version = connection.Number("PRAGMA user_version");
        bool isEmpty = mark == 0 && version == 0 && connection.Number("SELECT count(*) FROM sqlite_schema") == 0;
        if (mark != Mark && !isEmpty)
            throw FactStoreException.Of("store.not-ours", $"'{path}' is a database of another program.", "Name another file; nothing was changed.");
        if (version > known)
            throw FactStoreException.Of(StoreFault.NewerCode, $"'{path}' is of version {version}; this program knows version {known}.", "Use a newer program; nothing was changed.");
        return isEmpty ? 0 : (int)version;
    }
}
