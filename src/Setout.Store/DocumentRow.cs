using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Documents;

namespace Setout.Store;

/// <summary>A document as one of its revisions left it.</summary>
/// <param name="Number">Of the document in its table.</param>
/// <param name="Id">Its own, for ever.</param>
/// <param name="Kind">What it is a text of.</param>
/// <param name="Revision">Which.</param>
/// <param name="State">The number of the state pointed at.</param>
/// <param name="Name">Its name.</param>
/// <param name="IsPutAway">Whether it was put away.</param>
/// <param name="HeadSince">The revision in which the state pointed at was last changed.</param>
/// <param name="ShelfSince">The revision in which name or place was last changed.</param>
/// <param name="At">When this revision came about.</param>
internal sealed record DocumentRow(long Number, DocumentId Id, DocumentKind Kind, int Revision, long State, string Name, bool IsPutAway, int HeadSince, int ShelfSince, string At)
{
    private const string Select =
        """
        SELECT d.number, d.id, d.kind, m.revision, m.state, m.name, m.put_away, m.head_since, m.shelf_since, c.at
        FROM documents d JOIN moves m ON m.document = d.number JOIN changes c ON c.place = m.change
        """;

    /// <summary>All documents as they stand, by name.</summary>
    public static ImmutableArray<DocumentRow> All(SqliteConnection connection)
    {
        using SqliteCommand select = connection.Command(Select + " WHERE m.revision = (SELECT max(revision) FROM moves WHERE document = d.number) ORDER BY d.name");
        return select.Rows(Read);
    }

    /// <summary>A document as it stands; null when there is none.</summary>
    public static DocumentRow? Find(SqliteConnection connection, DocumentId id) => NumberOf(connection, id) is { } number ? Find(connection, number, null) : null;

    /// <summary>A document by its name as it stands; null when there is none.</summary>
    public static DocumentRow? Find(SqliteConnection connection, string name)
    {
        using SqliteCommand select = connection.Command("SELECT number FROM documents WHERE name = $name", ("$name", name));
        return (long?)select.ExecuteScalar() is { } number ? Find(connection, number, null) : null;
    }

    /// <summary>A document as it stood in a revision; null when there was none.</summary>
    public static DocumentRow? Find(SqliteConnection connection, long number, int? revision)
    {
        using SqliteCommand select = revision is { } wanted
            ? connection.Command(Select + " WHERE d.number = $number AND m.revision = $revision", ("$number", number), ("$revision", wanted))
            : connection.Command(Select + " WHERE d.number = $number ORDER BY m.revision DESC LIMIT 1", ("$number", number));
        return select.Rows(Read) is [var row] ? row : null;
    }

    /// <summary>As the revision before left it; null for the first.</summary>
    public static DocumentRow? Before(SqliteConnection connection, long number, int revision)
    {
        using SqliteCommand select = connection.Command(Select + " WHERE d.number = $number AND m.revision < $revision ORDER BY m.revision DESC LIMIT 1", ("$number", number), ("$revision", revision));
        return select.Rows(Read) is [var row] ? row : null;
    }

    /// <summary>The number of a document in its table; null when there is none.</summary>
    public static long? NumberOf(SqliteConnection connection, DocumentId id)
    {
        using SqliteCommand select = connection.Command("SELECT number FROM documents WHERE id = $id", ("$id", id.Text));
        return (long?)select.ExecuteScalar();
    }

    /// <summary>The document in a list.</summary>
    public DocumentLine Line(States states) => new(Id, Kind, Name, Revision, IsPutAway, states.Of(State), At);

    /// <summary>The document with its text.</summary>
    public Document Whole(SqliteConnection connection, States states)
    {
        DocumentLine line = Line(states);
        return new(line, states.TextOf(State), line.Head.Parent is null ? null : line.Head.Step, RedoOf(connection) is { } next ? states.Of(next).Step : null);
    }

    /// <summary>
    /// The child of the state pointed at that a redo goes to, as things stood in this revision: the one last made. No other can have been undone from since, for
    /// only a redo leads to a child that was there already.
    /// </summary>
    public long? RedoOf(SqliteConnection connection)
    {
        using SqliteCommand select = connection.Command(
            "SELECT state FROM moves WHERE from_state = $state AND kind IN ('edited', 'gone-back') AND revision <= $revision ORDER BY revision DESC LIMIT 1",
            ("$state", State), ("$revision", Revision));
        return (long?)select.ExecuteScalar();
    }

    private static DocumentRow Read(SqliteDataReader row) => new(row.GetInt64(0), new(row.GetString(1)), row.GetString(2) == "shop" ? DocumentKind.Shop : DocumentKind.Piece,
        row.GetInt32(3), row.GetInt64(4), row.GetString(5), row.GetInt64(6) == 1, row.GetInt32(7), row.GetInt32(8), row.GetString(9));
}
