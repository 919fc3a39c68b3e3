using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Store;

/// <summary>The facts of one piece in a database.</summary>
internal sealed class PieceFacts(ShopDatabase database, string path, PieceOwner owner) : IFactStore
{
    /// <inheritdoc/>
    public Log Read()
    {
        ImmutableArray<(string Id, string Text)> rows = database.With(connection =>
        {
            // Both questions are answered from one state of the database.
            using SqliteTransaction one = connection.BeginTransaction(deferred: true);
            return owner.Find(connection) is { } piece ? Rows(connection, piece) : [];
        });
        return rows.IsEmpty ? Log.Empty : new([.. rows.Select(r => EntryOf(r.Id, r.Text))]);
    }

    /// <inheritdoc/>
    public int Append(params ImmutableArray<LogEntry> entries) =>
        entries.IsDefaultOrEmpty ? 0 : database.Write(connection => Append(connection, entries), added => added > 0);

    /// <summary>Appends in a transaction of the caller's, which is given up when this throws.</summary>
    /// <returns>How many were new.</returns>
    /// <exception cref="FactStoreException">There is no such piece, an id is taken, or an entry cannot be written.</exception>
    public int Append(SqliteConnection connection, ImmutableArray<LogEntry> entries)
    {
        long? piece = owner.Find(connection);
        ImmutableArray<(LogEntry Entry, string Text)> added = FactText.New(id => piece is { } number ? TextOf(connection, number, id) : null, entries);
        if (added.IsEmpty) return 0;
        if (owner.FindOrMake(connection) is var (holder, fault) && fault is not null) throw new FactStoreException(fault);
        foreach ((LogEntry entry, string text) in added)
            connection.Run("INSERT INTO facts (piece, id, text) VALUES ($piece, $id, $text)", ("$piece", holder), ("$id", entry.Id), ("$text", text));
        return added.Length;
    }

    /// <summary>The facts of a piece as they are kept, in order.</summary>
    public static ImmutableArray<(string Id, string Text)> Rows(SqliteConnection connection, long piece)
    {
        using SqliteCommand select = connection.Command("SELECT id, text FROM facts WHERE piece = $piece ORDER BY place", ("$piece", piece));
        return select.Rows(row => (row.GetString(0), row.GetString(1)));
    }

    private string? TextOf(SqliteConnection connection, long piece, string id)
    {
        using SqliteCommand select = connection.Command("SELECT text FROM facts WHERE piece = $piece AND id = $id", ("$piece", piece), ("$id", id));
        if (select.ExecuteScalar() is not string text) return null;
        EntryOf(id, text);
        return text;
    }

    private LogEntry EntryOf(string id, string text) => EntryOf(path, owner.Shown, id, text);

    /// <summary>The entry of a row.</summary>
    /// <param name="path">The file, for messages.</param>
    /// <param name="piece">Whose, for messages.</param>
    /// <param name="id">The id beside the text.</param>
    /// <param name="text">The text.</param>
    /// <exception cref="FactStoreException">The row holds something else.</exception>
    public static LogEntry EntryOf(string path, string piece, string id, string text)
    {
        try
        {
            LogEntry entry = FactText.Read(text);
            return entry.Id == id ? entry : throw StoreFault.Damaged(path, $"the entry '{id}' of '{piece}' holds another one", null);
        }
        catch (FactStoreException unreadable) when (unreadable.Fault.Code != StoreFault.DamagedCode)
        {
            throw StoreFault.Damaged(path, $"the entry '{id}' of '{piece}' cannot be read: {unreadable.Fault.Words}", unreadable);
        }
    }
}
