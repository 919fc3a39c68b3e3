using Microsoft.Data.Sqlite;
using Setout.Core.Workings;
using Setout.Shop.Documents;

namespace Setout.Store;

/// <summary>Takes the parts of one change, in order, in a transaction that is given up when one is refused.</summary>
/// <param name="connection">In a transaction for writing.</param>
/// <param name="path">The file, for messages.</param>
/// <param name="change">The place of the change.</param>
/// <param name="at">Its time.</param>
internal sealed class DocumentSteps(SqliteConnection connection, string path, long change, string at)
{
    private readonly States _states = new(connection, path);

    /// <summary>Takes a part; gives the document as it left it, or why it cannot be.</summary>
    public (DocumentRow? Row, ChangeRefused? Refused) Take(DocumentChange part, DocumentId newId) => part switch
    {
        NewDocument made => New(made, newId),
        ChangeOfDocument of => Change(of),
        _ => throw new InvalidOperationException("There is no such change."),
    };

    private (DocumentRow?, ChangeRefused?) New(NewDocument made, DocumentId id)
    {
        if (NameFault(made.Name, null) is { } taken) return (null, taken);
        if (DocumentRow.NumberOf(connection, id) is not null)
            return Refuse("change.id-taken", "A change of this id was made already.", "Load the page again; nothing was changed.", null);
        long? piece = made.Kind == DocumentKind.Piece ? PieceOwner.Unowned(connection, made.Name) : null;
        long number = connection.Number("INSERT INTO documents (id, kind, name, fold, piece) VALUES ($id, $kind, $name, $fold, $piece) RETURNING number",
            ("$id", id.Text), ("$kind", made.Kind == DocumentKind.Shop ? "shop" : "piece"), ("$name", made.Name), ("$fold", DocumentName.Fold(made.Name)), ("$piece", (object?)piece ?? DBNull.Value));
        long state = _states.Add(number, null, made.Text, made.Step, at);
        return (Move("made", null, new(number, id, made.Kind, 1, state, made.Name, false, 1, 1, at)), null);
    }

    private (DocumentRow?, ChangeRefused?) Change(ChangeOfDocument part)
    {
        if (DocumentRow.Find(connection, part.Document) is not { } row)
            return Refuse("document.unknown", $"There is no document '{part.Document}'.", "Look at the list of documents.", null);
        int since = part switch
        {
            EditText or UndoStep or RedoStep or GoBack => row.HeadSince,
            SavePoint => 0,
            _ => row.ShelfSince,
        };
        if (part.Revision < since || part.Revision > row.Revision || part.Revision < 1)
            return Refuse(ChangeRefused.Further, $"'{row.Name}' has been changed since: it is at revision {row.Revision}, and this change was made on {part.Revision}.",
                "Look at what stands now, then make the change again or let theirs stand.", row);
        if (row.IsPutAway && part is not (TakeBack or SavePoint or PutAway))
            return Refuse("document.put-away", $"'{row.Name}' was put away.", "Take it back first.", row);
        return part switch
        {
            EditText edit => (To(row, "edited", edit.Text, edit.Step), null),
            GoBack back => Back(row, back),
            UndoStep => _states.Of(row.State).Parent is { } parent ? (Head(row, "undone", parent), null)
                : Refuse("document.nothing-to-undo", $"'{row.Name}' stands at its beginning.", "", row),
            RedoStep => row.RedoOf(connection) is { } next ? (Head(row, "redone", next), null)
                : Refuse("document.nothing-to-redo", $"Nothing of '{row.Name}' was undone here.", "", row),
            SavePoint point => Name(row, point),
            Rename rename => Renamed(row, rename.Name),
            PutAway => (row.IsPutAway ? row : Shelf(row, "put-away", row with { IsPutAway = true }), null),
            _ => (row.IsPutAway ? Shelf(row, "taken-back", row with { IsPutAway = false }) : row, null),
        };
    }

    private DocumentRow To(DocumentRow row, string kind, string text, string step)
    {
        string old = _states.TextOf(row.State);
        return old == text ? row : Head(row, kind, _states.Add(row.Number, (row.State, old), text, step, at));
    }

    private (DocumentRow?, ChangeRefused?) Back(DocumentRow row, GoBack back)
    {
        if (!_states.IsOf(row.Number, back.State)) return Refuse("document.no-state", $"'{row.Name}' has no state {back.State}.", "Choose one of its history.", row);
        string name = _states.SavePoints(row.Number)[back.State].LastOrDefault() ?? _states.Of(back.State).Step;
        string step = $"back to '{name}'";
        return (To(row, "gone-back", _states.TextOf(back.State), step[..Math.Min(step.Length, Setout.Shop.Documents.Change.LongestWords)]), null);
    }

    private (DocumentRow?, ChangeRefused?) Name(DocumentRow row, SavePoint point)
    {
        // What was pointed at in the revision that was seen; there may be none of that number where a store was restored.
        if (DocumentRow.Find(connection, row.Number, point.Revision) is not { } seen)
            return Refuse(ChangeRefused.Further, $"'{row.Name}' has no revision {point.Revision}.", "Look at what stands now.", row);
        return (_states.Name(seen.State, point.Name) ? Move("named", row.State, row with { Revision = row.Revision + 1, At = at }) : row, null);
    }

    private (DocumentRow?, ChangeRefused?) Renamed(DocumentRow row, string name)
    {
        if (name == row.Name) return (row, null);
        if ((DocumentName.Fault(row.Kind, name) is { } unfit ? new ChangeRefused(unfit, null) : NameFault(name, row)) is { } refused) return (null, refused);
        connection.Run("UPDATE documents SET name = $name, fold = $fold WHERE number = $number", ("$name", name), ("$fold", DocumentName.Fold(name)), ("$number", row.Number));
        return (Shelf(row, "renamed", row with { Name = name }), null);
    }

    private ChangeRefused? NameFault(string name, DocumentRow? own)
    {
        using SqliteCommand select = connection.Command("SELECT number FROM documents WHERE fold = $fold AND number <> $own", ("$fold", DocumentName.Fold(name)), ("$own", own?.Number ?? 0));
        if ((long?)select.ExecuteScalar() is { } number)
        {
            DocumentRow other = DocumentRow.Find(connection, number, null)!;
            return Refuse("document.name-taken", other.IsPutAway ? $"'{other.Name}' was put away and keeps its name." : $"There is a document '{other.Name}' already.",
                other.IsPutAway ? "Take it back and give it another name, or choose another for this one." : "Choose another name.", other).Refused;
        }
        // A new document takes facts over that came for its name; one that is renamed has its own.
        return own is null || PieceOwner.Unowned(connection, name) is null ? null
            : Refuse("document.name-taken", $"There are facts for a piece '{name}' already.", "Choose another name.", own).Refused;
    }

    private DocumentRow Head(DocumentRow row, string kind, long state) =>
        Move(kind, row.State, row with { Revision = row.Revision + 1, HeadSince = row.Revision + 1, State = state, At = at });

    private DocumentRow Shelf(DocumentRow row, string kind, DocumentRow changed) =>
        Move(kind, row.State, changed with { Revision = row.Revision + 1, ShelfSince = row.Revision + 1, At = at });

    /// <summary>Writes a revision.</summary>
    public DocumentRow Move(string kind, long? from, DocumentRow row)
    {
        connection.Run(
            """
            INSERT INTO moves (document, revision, change, kind, from_state, state, name, put_away, head_since, shelf_since)
            VALUES ($document, $revision, $change, $kind, $from, $state, $name, $away, $head, $shelf)
            """,
            ("$document", row.Number), ("$revision", row.Revision), ("$change", change), ("$kind", kind), ("$from", (object?)from ?? DBNull.Value), ("$state", row.State),
            ("$name", row.Name), ("$away", row.IsPutAway ? 1 : 0), ("$head", row.HeadSince), ("$shelf", row.ShelfSince));
        return row;
    }

    private (DocumentRow? Row, ChangeRefused Refused) Refuse(string code, string words, string remedy, DocumentRow? theirs) =>
        (null, new(new(code, Severity.Stop, "", words, remedy), theirs?.Whole(connection, _states)));
}
