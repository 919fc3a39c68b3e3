using Microsoft.Data.Sqlite;
using Setout.Core.Workings;
using Setout.Shop.Documents;

namespace Setout.Store;

/// <summary>
/// Whose facts are meant: those of a document, whatever it is called, or those of a piece of a name. A piece that facts came for first is
/// taken over by the document that comes under its name. In its own table a piece keeps the name it had when its first fact came.
/// </summary>
/// <param name="Document">The document; null where a name tells it.</param>
/// <param name="Name">The name; empty where the document is told.</param>
internal sealed record PieceOwner(DocumentId? Document, string Name)
{
    /// <summary>For messages.</summary>
    public string Shown => Document is { } id ? id.Text : Name;

    /// <summary>The number of the piece; null while it has no facts.</summary>
    public long? Find(SqliteConnection connection)
    {
        if (Doc(connection) is { } document) return document.Piece;
        return Document is null ? Unowned(connection, Name) : null;
    }

    /// <summary>The number of the piece, which is made where it is not there yet; or why there can be none.</summary>
    public (long Number, Finding? Fault) FindOrMake(SqliteConnection connection)
    {
        if (Doc(connection) is { } document)
        {
            if (document.IsShop) return (0, new("document.no-log", Severity.Stop, "", $"'{document.Name}' is a shop file and has no log.", "Name the piece."));
            if (document.Piece is { } there) return (there, null);
            long made = Insert(connection, document.Name);
            connection.Run("UPDATE documents SET piece = $piece WHERE number = $number", ("$piece", made), ("$number", document.Number));
            return (made, null);
        }
        if (Document is not null) return (0, new("document.unknown", Severity.Stop, "", $"There is no document '{Document}'.", "Look at the list of documents."));
        if (Unowned(connection, Name) is { } number) return (number, null);
        if (IsTaken(connection, Name))
            return (0, new("document.unknown", Severity.Stop, "", $"No piece is called '{Name}' any more.", "Look at the list of documents for its name now."));
        return (Insert(connection, Name), null);
    }

    /// <summary>The piece of a name that no document has yet; null when there is none.</summary>
    public static long? Unowned(SqliteConnection connection, string name)
    {
        using SqliteCommand select = connection.Command(
            "SELECT number FROM pieces p WHERE name = $name AND NOT EXISTS (SELECT 1 FROM documents d WHERE d.piece = p.number)", ("$name", name));
        return (long?)select.ExecuteScalar();
    }

    private (long Number, string Name, bool IsShop, long? Piece)? Doc(SqliteConnection connection)
    {
        using SqliteCommand select = Document is { } id
            ? connection.Command("SELECT number, name, kind, piece FROM documents WHERE id = $id", ("$id", id.Text))
            : connection.Command("SELECT number, name, kind, piece FROM documents WHERE name = $name", ("$name", Name));
        return select.Rows(row => (row.GetInt64(0), row.GetString(1), row.GetString(2) == "shop", row.IsDBNull(3) ? (long?)null : row.GetInt64(3))) is [var found] ? found : null;
    }

    private static bool IsTaken(SqliteConnection connection, string name) => connection.Number("SELECT count(*) FROM pieces WHERE name = $name", ("$name", name)) > 0;

    private static long Insert(SqliteConnection connection, string name)
    {
        // Another document, called otherwise now, may have begun its log under this name.
        string own = name;
        for (int i = 2; IsTaken(connection, own); i++) own = $"{name} ({i})";
        return connection.Number("INSERT INTO pieces (name) VALUES ($name) RETURNING number", ("$name", own));
    }
}
