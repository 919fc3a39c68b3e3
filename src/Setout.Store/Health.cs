using System.Collections.Immutable;
using Microsoft.Data.Sqlite;

namespace Setout.Store;

/// <summary>Whether a database is whole.</summary>
internal static class Health
{
    /// <summary>What is wrong with the file and with what its rows point at; null when nothing is.</summary>
    public static string? Fault(SqliteConnection connection)
    {
        using SqliteCommand check = connection.Command("PRAGMA integrity_check(3)");
        ImmutableArray<string> said = check.Rows(row => row.GetString(0));
        if (said is not ["ok"]) return string.Join("; ", said);
        using SqliteCommand keys = connection.Command("PRAGMA foreign_key_check");
        return keys.Rows(row => row.GetString(0)) is [var table, ..] ? $"a row of '{table}' points at nothing" : null;
    }
}
