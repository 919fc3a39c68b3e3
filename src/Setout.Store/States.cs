using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Data.Sqlite;
using Setout.Shop.Documents;

namespace Setout.Store;

/// <summary>The states of documents in a database.</summary>
/// <param name="connection">Where they are; what is asked together is asked in one transaction.</param>
/// <param name="path">The file, for messages.</param>
internal sealed class States(SqliteConnection connection, string path)
{
    /// <summary>After so many splices a text is kept whole again, so that reading one never takes longer.</summary>
    public const int DeepestSplice = 40;

    private const string Columns = "number, parent, step, at";

    /// <summary>A state; it has to be there.</summary>
    public DocumentState Of(long number)
    {
        using SqliteCommand select = connection.Command($"SELECT {Columns} FROM states WHERE number = $number", ("$number", number));
        return select.Rows(Read) is [var state] ? state : throw StoreFault.Damaged(path, $"the state {number} is missing", null);
    }

    /// <summary>All states of a document, in the order they were made.</summary>
    public ImmutableArray<DocumentState> OfDocument(long document)
    {
        using SqliteCommand select = connection.Command($"SELECT {Columns} FROM states WHERE document = $document ORDER BY number", ("$document", document));
        return select.Rows(Read);
    }

    /// <summary>True when a document has this state.</summary>
    public bool IsOf(long document, long number) =>
        connection.Number("SELECT count(*) FROM states WHERE number = $number AND document = $document", ("$number", number), ("$document", document)) == 1;

    /// <summary>The names of save points by state, each list in order of naming.</summary>
    public ILookup<long, string> SavePoints(long document)
    {
        using SqliteCommand select = connection.Command(
            "SELECT p.state, p.name FROM save_points p JOIN states s ON s.number = p.state WHERE s.document = $document ORDER BY p.place", ("$document", document));
        return select.Rows(row => (State: row.GetInt64(0), Name: row.GetString(1))).ToLookup(p => p.State, p => p.Name);
    }

    /// <summary>The text of a state.</summary>
    public string TextOf(long number)
    {
        using SqliteCommand select = connection.Command(
            """
            WITH RECURSIVE chain (parent, depth, head_kept, tail_kept, text, sum, nr) AS (
                SELECT parent, depth, head_kept, tail_kept, text, sum, 0 FROM states WHERE number = $number
                UNION ALL
                SELECT s.parent, s.depth, s.head_kept, s.tail_kept, s.text, s.sum, c.nr + 1 FROM states s JOIN chain c ON s.number = c.parent
                WHERE c.depth > 0 AND s.depth = c.depth - 1
            )
            SELECT depth, head_kept, tail_kept, text, sum FROM chain ORDER BY nr DESC
            """, ("$number", number));
        ImmutableArray<(int Depth, TextSplice Splice, string Sum)> chain =
            select.Rows(row => (row.GetInt32(0), new TextSplice(row.GetInt32(1), row.GetInt32(2), row.GetString(3)), row.GetString(4)));
        if (chain is not [{ Depth: 0 }, ..]) throw StoreFault.Damaged(path, $"the text of state {number} is missing", null);
        try
        {
            string text = chain.Skip(1).Aggregate(chain[0].Splice.Middle, (old, next) => next.Splice.On(old));
            return SumOf(text) == chain[^1].Sum ? text : throw StoreFault.Damaged(path, $"the text of state {number} is not what was kept", null);
        }
        catch (ArgumentOutOfRangeException shorter)
        {
            throw StoreFault.Damaged(path, $"the text of state {number} is not what was kept", shorter);
        }
    }

    /// <summary>Adds a state.</summary>
    /// <param name="document">Whose.</param>
    /// <param name="parent">The state it is made of, with its text; null for the first.</param>
    /// <param name="text">Its own.</param>
    /// <param name="step">What made it.</param>
    /// <param name="at">When.</param>
    public long Add(long document, (long Number, string Text)? parent, string text, string step, string at)
    {
        long depth = parent is { } of ? connection.Number("SELECT depth FROM states WHERE number = $number", ("$number", of.Number)) + 1 : 0;
        TextSplice splice = depth > 0 ? TextSplice.Between(parent!.Value.Text, text) : default;
        // A splice that is hardly shorter saves nothing.
        if (depth is 0 or > DeepestSplice || splice.Middle.Length > text.Length / 2) (depth, splice) = (0, new(0, 0, text));
        return connection.Number(
            """
            INSERT INTO states (document, parent, step, at, depth, head_kept, tail_kept, text, sum)
            VALUES ($document, $parent, $step, $at, $depth, $head, $tail, $text, $sum) RETURNING number
            """,
            ("$document", document), ("$parent", (object?)parent?.Number ?? DBNull.Value), ("$step", step), ("$at", at),
            ("$depth", depth), ("$head", splice.Head), ("$tail", splice.Tail), ("$text", splice.Middle), ("$sum", SumOf(text)));
    }

    /// <summary>Gives a state a name; false when it has it already.</summary>
    public bool Name(long state, string name)
    {
        if (connection.Number("SELECT count(*) FROM save_points WHERE state = $state AND name = $name", ("$state", state), ("$name", name)) > 0) return false;
        connection.Run("INSERT INTO save_points (state, name) VALUES ($state, $name)", ("$state", state), ("$name", name));
        return true;
    }

    private static DocumentState Read(SqliteDataReader row) => new(row.GetInt64(0), row.IsDBNull(1) ? null : row.GetInt64(1), row.GetString(2), row.GetString(3));

    private static string SumOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
