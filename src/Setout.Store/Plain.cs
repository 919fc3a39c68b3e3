using Microsoft.Data.Sqlite;

namespace Setout.Store;

/// <summary>Connections that are not kept for later: when they are closed, the file is let go of.</summary>
internal static class Plain
{
    /// <summary>Opens one.</summary>
    /// <exception cref="SqliteException">It cannot be opened.</exception>
    public static SqliteConnection Open(string path, SqliteOpenMode mode, TimeSpan patience)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = Path.GetFullPath(path),
            Mode = mode,
            Pooling = false,
            DefaultTimeout = Math.Max(1, (int)patience.TotalSeconds),
            ForeignKeys = true,
        }.ToString());
        try
        {
            connection.Open();
            connection.Run($"PRAGMA busy_timeout = {(int)patience.TotalMilliseconds}; PRAGMA synchronous = FULL; PRAGMA trusted_schema = OFF");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
