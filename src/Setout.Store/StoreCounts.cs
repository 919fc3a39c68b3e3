using Microsoft.Data.Sqlite;

namespace Setout.Store;

/// <summary>How many of each thing a database holds.</summary>
/// <param name="Documents">Piece files and shop files, those put away too.</param>
/// <param name="States">Their states.</param>
/// <param name="Changes">Changes made.</param>
/// <param name="Pieces">Pieces with facts.</param>
/// <param name="Facts">Facts of all of them.</param>
public sealed record StoreCounts(long Documents, long States, long Changes, long Pieces, long Facts)
{
    /// <summary>True when there is nothing.</summary>
    public bool IsEmpty => Documents + States + Changes + Pieces + Facts == 0;

    /// <inheritdoc/>
    public override string ToString() => $"{Documents} documents with {States} states, {Facts} entries in {Pieces} {(Pieces == 1 ? "log" : "logs")}";

    internal static StoreCounts Of(SqliteConnection connection)
    {
        long Count(string table) =>
            connection.Number("SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = $table", ("$table", table)) == 0 ? 0 : connection.Number($"SELECT count(*) FROM {table}");
        return new(Count("documents"), Count("states"), Count("changes"), Count("pieces"), Count("facts"));
    }
}
