using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>Makes one change in a database.</summary>
/// <param name="database">Which.</param>
/// <param name="path">The file, for messages.</param>
/// <param name="change">The change.</param>
internal sealed class ChangeMaking(ShopDatabase database, string path, Change change)
{
    /// <summary>Makes it whole, or nothing of it.</summary>
    public ChangeAnswer Make()
    {
        if (change.Fault() is { } unfit) return new ChangeRefused(unfit, null);
        string asked;
        try
        {
            asked = change.Fingerprint();
        }
        catch (FactStoreException unwritable)
        {
            return new ChangeRefused(unwritable.Fault, null);
        }
        return database.Write(connection => Answered(connection, asked) ?? Made(connection, asked), answer => answer is ChangeTaken);
    }

    private ChangeAnswer? Answered(SqliteConnection connection, string asked)
    {
        using SqliteCommand select = connection.Command("SELECT place, asked FROM changes WHERE id = $id", ("$id", change.Id));
        if (select.Rows(row => (Place: row.GetInt64(0), Asked: row.GetString(1))) is not [var before]) return null;
        if (before.Asked != asked)
            return Refuse("change.id-taken", "A change of this id was made already, and it was another one.", "Load the page again; nothing was changed.");
        return Answer(connection, before.Place);
    }

    private ChangeAnswer Made(SqliteConnection connection, string asked)
    {
        long place = connection.Number("INSERT INTO changes (id, at, words, asked) VALUES ($id, $at, $words, $asked) RETURNING place",
            ("$id", change.Id), ("$at", change.At), ("$words", change.Words), ("$asked", asked));
        var steps = new DocumentSteps(connection, path, place, change.At);
        int nr = 0;
        for (; nr < change.Documents.Length; nr++)
        {
            (DocumentRow? row, ChangeRefused? refused) = steps.Take(change.Documents[nr], change.NewId(nr));
            if (refused is not null) return refused;
            connection.Run("INSERT INTO answers (change, nr, document, revision) VALUES ($change, $nr, $document, $revision)",
                ("$change", place), ("$nr", nr), ("$document", row!.Number), ("$revision", row.Revision));
        }
        int added = 0;
        try
        {
            foreach (LogAddition log in change.Facts) added += new PieceFacts(database, path, new(log.Document, log.Piece)).Append(connection, log.Entries);
        }
        catch (FactStoreException refused) when (!refused.Fault.Code.StartsWith("store.", StringComparison.Ordinal))
        {
            return new ChangeRefused(refused.Fault, null);
        }
        connection.Run("INSERT INTO answers (change, nr, facts) VALUES ($change, $nr, $facts)", ("$change", place), ("$nr", nr), ("$facts", added));
        return Answer(connection, place);
    }

    private ChangeTaken Answer(SqliteConnection connection, long place)
    {
        var states = new States(connection, path);
        (ImmutableArray<(long Document, int Revision)> documents, int facts) = Answers(connection, place);
        return new([.. documents.Select(d => DocumentRow.Find(connection, d.Document, d.Revision)!.Whole(connection, states))], facts);
    }

    /// <summary>What was answered to a change.</summary>
    public static (ImmutableArray<(long Document, int Revision)> Documents, int Facts) Answers(SqliteConnection connection, long place)
    {
        using SqliteCommand select = connection.Command("SELECT document, revision, facts FROM answers WHERE change = $change ORDER BY nr", ("$change", place));
        ImmutableArray<(long? Document, int Revision, int Facts)> rows =
            select.Rows(row => row.IsDBNull(0) ? ((long?)null, 0, row.GetInt32(2)) : (row.GetInt64(0), row.GetInt32(1), 0));
        return ([.. rows.Where(r => r.Document is not null).Select(r => (r.Document!.Value, r.Revision))], rows.Sum(r => r.Facts));
    }

    private static ChangeRefused Refuse(string code, string words, string remedy) => new(new(code, Severity.Stop, "", words, remedy), null);
}
