using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Store;

/// <summary>The facts of one piece in a database.</summary>
internal sealed class PieceFacts(FactDatabase database, string path, string name) : IFactStore
{
    /// <inheritdoc/>
    public Log Read()
    {
        ImmutableArray<(string Id, string Text)> rows = database.With(connection =>
        {
            // One statement sees one state of the database.
            using SqliteCommand select = connection.Command("SELECT f.id, f.text FROM facts f JOIN pieces p ON p.number = f.piece WHERE p.name = $name ORDER BY f.place", ("$name", name));
            return select.Rows(row => (row.GetString(0), row.GetString(1)));
        });
        return rows.IsEmpty ? Log.Empty : new([.. rows.Select(r => EntryOf(r.Id, r.Text))]);
    }

    /// <inheritdoc/>
    public int Append(params ImmutableArray<LogEntry> entries) => entries.IsDefaultOrEmpty ? 0 : database.With(connection =>
    {
        // Takes its turn before it looks, so that what it sees stays so until it has written.
        using SqliteTransaction turn = connection.BeginTransaction(deferred: false);
        long? piece = Piece(connection);
        ImmutableArray<(LogEntry Entry, string Text)> added = FactText.New(id => piece is { } number ? TextOf(connection, number, id) : null, entries);
        if (added.IsEmpty) return 0;
        long owner = piece ?? connection.Number("INSERT INTO pieces (name) VALUES ($name) RETURNING number", ("$name", name));
        foreach ((LogEntry entry, string text) in added)
            connection.Run("INSERT INTO facts (piece, id, text) VALUES ($piece, $id, $text)", ("$piece", owner), ("$id", entry.Id), ("$text", text));
        turn.Commit();
        return added.Length;
    });

    private long? Piece(SqliteConnection connection)
    {
        using SqliteCommand select = connection.Command("SELECT number FROM pieces WHERE name = $name", ("$name", name));
        return (long?)select.ExecuteScalar();
    }

    private string? TextOf(SqliteConnection connection, long piece, string id)
    {
        using SqliteCommand select = connection.Command("SELECT text FROM facts WHERE piece = $piece AND id = $id", ("$piece", piece), ("$id", id));
        if (select.ExecuteScalar() is not string text) return null;
        EntryOf(id, text);
        return text;
    }

    private LogEntry EntryOf(string id, string text)
    {
        try
        {
            LogEntry entry = FactText.Read(text);
            return entry.Id == id ? entry : throw StoreFault.Damaged(path, $"the entry '{id}' of '{name}' holds another one", null);
        }
        catch (FactStoreException unreadable) when (unreadable.Fault.Code != StoreFault.DamagedCode)
        {
            throw StoreFault.Damaged(path, $"the entry '{id}' of '{name}' cannot be read: {unreadable.Fault.Words}", unreadable);
        }
    }
}
