using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Documents;

namespace Setout.Store;

/// <content>Documents: each answer comes from one state of the database.</content>
public sealed partial class ShopDatabase
{
    /// <inheritdoc/>
    public ImmutableArray<DocumentLine> Documents() => Asked(connection =>
    {
        var states = new States(connection, _path);
        return ImmutableArray.CreateRange(DocumentRow.All(connection), row => row.Line(states));
    });

    /// <inheritdoc/>
    public Document? Find(DocumentId id) => Asked(connection => Whole(connection, DocumentRow.Find(connection, id)));

    /// <inheritdoc/>
    public Document? Find(string name) => Asked(connection => Whole(connection, DocumentRow.Find(connection, name)));

    /// <inheritdoc/>
    public Document? Find(DocumentId id, int revision) => Asked(connection =>
        DocumentRow.NumberOf(connection, id) is { } number ? Whole(connection, DocumentRow.Find(connection, number, revision)) : null);

    /// <inheritdoc/>
    public ImmutableArray<HistoryLine> History(DocumentId id) => Asked<ImmutableArray<HistoryLine>>(connection =>
    {
        if (DocumentRow.Find(connection, id) is not { } row) return [];
        var states = new States(connection, _path);
        ILookup<long, string> names = states.SavePoints(row.Number);
        return [.. states.OfDocument(row.Number).Select(s => new HistoryLine(s, [.. names[s.Number]], s.Number == row.State))];
    });

    /// <inheritdoc/>
    public string? TextOf(DocumentId id, long state) => Asked(connection =>
    {
        var states = new States(connection, _path);
        return DocumentRow.NumberOf(connection, id) is { } number && states.IsOf(number, state) ? states.TextOf(state) : null;
    });

    /// <inheritdoc/>
    public ChangeAnswer Make(Change change) => new ChangeMaking(this, _path, change).Make();

    /// <inheritdoc/>
    public ChangeRecord? Made(string id) => Asked(connection =>
    {
        using SqliteCommand select = connection.Command("SELECT place, at, words FROM changes WHERE id = $id", ("$id", id));
        if (select.Rows(row => (Place: row.GetInt64(0), At: row.GetString(1), Words: row.GetString(2))) is not [var made]) return null;
        var states = new States(connection, _path);
        using SqliteCommand moves = connection.Command("SELECT document, min(revision), max(revision) FROM moves WHERE change = $change GROUP BY document ORDER BY document", ("$change", made.Place));
        ImmutableArray<ChangedDocument> documents = ImmutableArray.CreateRange(moves.Rows(row => (Document: row.GetInt64(0), First: row.GetInt32(1), Last: row.GetInt32(2))), m =>
            new ChangedDocument(DocumentRow.Before(connection, m.Document, m.First)?.Line(states), DocumentRow.Find(connection, m.Document, m.Last)!.Line(states)));
        return new ChangeRecord(id, made.At, made.Words, documents, ChangeMaking.Answers(connection, made.Place).Facts);
    });

    /// <inheritdoc/>
    public StoreStand Stand() => Asked(connection =>
        new StoreStand(connection.Number("SELECT coalesce(max(place), 0) FROM changes"), connection.Number("SELECT coalesce(max(place), 0) FROM facts")));

    private Document? Whole(SqliteConnection connection, DocumentRow? row) => row?.Whole(connection, new(connection, _path));

    private T Asked<T>(Func<SqliteConnection, T> ask) => With(connection =>
    {
        using SqliteTransaction one = connection.BeginTransaction(deferred: true);
        return ask(connection);
    });
}
