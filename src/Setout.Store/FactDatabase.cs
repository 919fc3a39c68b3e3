using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>
/// A database (SQLite, one file) with the facts of many pieces. It may be used from several threads and by several programs at once: writers
/// wait for each other up to <see cref="Patience"/>, readers wait for nobody. Each call has a connection of its own; a change is acknowledged
/// when it has been flushed to the disk. While programs use it, its newest changes may stand in a file beside it that ends in
/// <c>-wal</c>: the two belong together.
/// </summary>
public sealed class FactDatabase : IDisposable
{
    /// <summary>How long a writer waits for others.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly string _path;
    private readonly TimeSpan _patience;
    private readonly string _connectionText;

    private FactDatabase(string path, TimeSpan patience)
    {
        _path = path;
        _patience = patience;
        _connectionText = new SqliteConnectionStringBuilder
        {
            DataSource = Path.GetFullPath(path),
            // Whole seconds, and 0 would be for ever.
            DefaultTimeout = Math.Max(1, (int)patience.TotalSeconds),
            ForeignKeys = true,
        }.ToString();
    }

    /// <summary>The version of the tables that this program makes and uses; an older database is brought to it when it is opened.</summary>
    public static int Version => FactSchema.Steps.Length;

    /// <summary>Opens a database; makes it when there is none.</summary>
    /// <param name="path">The file; its folder has to be there.</param>
    /// <exception cref="FactStoreException">The file is no database, is damaged, belongs to another program or to a newer version of this one, or cannot be reached.
    /// It was left as it is.</exception>
    public static FactDatabase Open(string path) => Open(path, FactSchema.Steps, Patience);

    internal static FactDatabase Open(string path, ImmutableArray<string> steps, TimeSpan patience)
    {
        var database = new FactDatabase(path, patience);
        try
        {
            database.With(connection =>
            {
                FactSchema.Bring(connection, path, steps);
                return 0;
            });
            return database;
        }
        catch
        {
            database.Dispose();
            throw;
        }
    }

    /// <summary>The names of all pieces that facts were appended to, in order.</summary>
    /// <exception cref="FactStoreException">The database cannot be read.</exception>
    public ImmutableArray<string> Pieces() => With(connection =>
    {
        using SqliteCommand select = connection.Command("SELECT name FROM pieces ORDER BY name");
        return select.Rows(row => row.GetString(0));
    });

    /// <summary>The facts of one piece. It need not be there yet: it comes with its first fact.</summary>
    /// <param name="name">Its name; large and small letters differ.</param>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    public IFactStore FactsOf(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        return new PieceFacts(this, _path, name);
    }

    /// <summary>Lets go of the file. What was acknowledged is on the disk already.</summary>
    public void Dispose()
    {
        using var connection = new SqliteConnection(_connectionText);
        SqliteConnection.ClearPool(connection);
    }

    /// <summary>Does something over a connection; what SQLite says goes into words.</summary>
    internal T With<T>(Func<SqliteConnection, T> use)
    {
        try
        {
            using var connection = new SqliteConnection(_connectionText);
            connection.Open();
            // These are properties of the connection, not of the file.
            connection.Run($"PRAGMA busy_timeout = {(int)_patience.TotalMilliseconds}; PRAGMA synchronous = FULL; PRAGMA trusted_schema = OFF");
            return use(connection);
        }
        catch (SqliteException said)
        {
            throw StoreFault.Of(_path, said, _patience);
        }
    }
}
