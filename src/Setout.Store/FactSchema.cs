using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>The tables of the database and how they came about. A step that has been released is never edited; a later one follows it.</summary>
internal static class FactSchema
{
    /// <summary>Stands in the head of the file (SQLite's <c>application_id</c>) and says that it is ours.</summary>
    public const int Mark = 0x5374_6F75;

    /// <summary>
    /// Step n makes version n of version n - 1. Facts are kept from change by the database itself. REPLACE takes rows out without asking the
    /// triggers for taking out, so a row that would replace another is refused before it goes in.
    /// </summary>
    public static ImmutableArray<string> Steps { get; } =
    [
        """
        CREATE TABLE pieces (
            number INTEGER PRIMARY KEY,
            name TEXT NOT NULL UNIQUE CHECK (name <> '')
        ) STRICT;

        -- One fact a row, as the text that a log holds for it; 'place' is the order of appending.
        CREATE TABLE facts (
            place INTEGER PRIMARY KEY AUTOINCREMENT,
            piece INTEGER NOT NULL REFERENCES pieces (number),
            id TEXT NOT NULL CHECK (id <> ''),
            text TEXT NOT NULL CHECK (text <> ''),
            UNIQUE (piece, id)
        ) STRICT;

        CREATE TRIGGER facts_not_edited BEFORE UPDATE ON facts
        BEGIN SELECT RAISE(ABORT, 'facts are appended, never edited'); END;
        CREATE TRIGGER facts_not_taken_out BEFORE DELETE ON facts
        BEGIN SELECT RAISE(ABORT, 'facts are appended, never taken out'); END;
        CREATE TRIGGER facts_not_replaced BEFORE INSERT ON facts
        WHEN EXISTS (SELECT 1 FROM facts WHERE (piece = NEW.piece AND id = NEW.id) OR place = NEW.place)
        BEGIN SELECT RAISE(ABORT, 'facts are appended, never replaced'); END;

        CREATE TRIGGER pieces_not_edited BEFORE UPDATE ON pieces
        BEGIN SELECT RAISE(ABORT, 'a piece keeps its name, since its facts hang on it'); END;
        CREATE TRIGGER pieces_not_taken_out BEFORE DELETE ON pieces
        BEGIN SELECT RAISE(ABORT, 'a piece is not taken out, since its facts hang on it'); END;
        CREATE TRIGGER pieces_not_replaced BEFORE INSERT ON pieces
        WHEN EXISTS (SELECT 1 FROM pieces WHERE name = NEW.name OR number = NEW.number)
        BEGIN SELECT RAISE(ABORT, 'a piece is not replaced, since its facts hang on it'); END;
        """,
    ];

    /// <summary>Brings a database to the last of the steps; all of it or none.</summary>
    /// <exception cref="FactStoreException">The file belongs to another program or to a newer version of this one.</exception>
    public static void Bring(SqliteConnection connection, string path, ImmutableArray<string> steps)
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
        for (int version = VersionOf(connection, path, steps.Length); version < steps.Length; version++) connection.Run(steps[version]);
        connection.Run($"PRAGMA application_id = {Mark}; PRAGMA user_version = {steps.Length}");
        only.Commit();
    }

    private static int VersionOf(SqliteConnection connection, string path, int known)
    {
        long mark = connection.Number("PRAGMA application_id"), version = connection.Number("PRAGMA user_version");
        bool isEmpty = mark == 0 && version == 0 && connection.Number("SELECT count(*) FROM sqlite_schema") == 0;
        if (mark != Mark && !isEmpty)
            throw FactStoreException.Of("store.not-ours", $"'{path}' is a database of another program.", "Name another file; nothing was changed.");
        if (version > known)
            throw FactStoreException.Of("store.newer", $"'{path}' is of version {version}; this program knows version {known}.", "Use a newer program; nothing was changed.");
        return isEmpty ? 0 : (int)version;
    }
}
