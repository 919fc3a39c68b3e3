// Over 200 lines: opening and reaching one file, with every way in which it is refused.
using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Documents;
using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>
/// A database (SQLite, one file) with the documents of a shop and the facts of its pieces. It may be used from several threads and by several programs at once: writers
/// wait for each other up to <see cref="Patience"/>, readers wait for nobody. Each call has a connection of its own; a change is acknowledged
/// when it has been flushed to the disk. While programs use it, its newest changes may stand in a file beside it that ends in
/// <c>-wal</c>: the two belong together.
/// </summary>
public sealed partial class ShopDatabase : IDocumentStore, IDisposable
{
    /// <summary>How long a writer waits for others.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly string _path;
    private readonly TimeSpan _patience;
    private readonly string _connectionText;

    private readonly bool _isToRead;

    // Writers of this program pass it side by side; a restore stops them, so that nothing is acknowledged that it then writes over.
    private readonly ReaderWriterLockSlim _gate = new();

    private ShopDatabase(string path, TimeSpan patience, SqliteOpenMode mode, bool isAlone = false)
    {
        _path = path;
        _patience = patience;
        _isToRead = mode == SqliteOpenMode.ReadOnly;
        _connectionText = new SqliteConnectionStringBuilder
        {
            DataSource = isAlone ? new Uri(Path.GetFullPath(path)).AbsoluteUri + "?immutable=1" : Path.GetFullPath(path),
            Mode = mode,
            // Whole seconds, and 0 would be for ever.
            DefaultTimeout = Math.Max(1, (int)patience.TotalSeconds),
            ForeignKeys = true,
        }.ToString();
    }

    /// <summary>The version of the tables that this program makes and uses; an older database is brought to it when it is opened.</summary>
    public static int Version => Schema.Steps.Length;

    /// <summary>Opens a database; makes it when there is none.</summary>
    /// <param name="path">The file; its folder has to be there.</param>
    /// <exception cref="FactStoreException">The file is no database, is damaged, belongs to another program or to a newer version of this one, or cannot be reached.
    /// It was left as it is.</exception>
    public static ShopDatabase Open(string path) => Open(path, TimeProvider.System);

    /// <inheritdoc cref="Open(string)"/>
    /// <param name="path">The file; its folder has to be there.</param>
    /// <param name="time">The clock, for the name of the backup that is made before an older database is brought up.</param>
    public static ShopDatabase Open(string path, TimeProvider time) => Open(path, Schema.Steps, Patience, time);

    /// <summary>
    /// Opens a database of this version or a newer one to read and export. Nothing in it can be changed, and nothing is written. It may lie on a medium that
    /// cannot be written to.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <exception cref="FactStoreException">The file is no database, is damaged, belongs to another program or to an older version of this one, or cannot be reached.</exception>
    public static ShopDatabase OpenToRead(string path)
    {
        if (!File.Exists(path)) throw FactStoreException.Of("store.not-reached", $"There is no file '{path}'.", "Look at its name.");
        var database = new ShopDatabase(path, Patience, SqliteOpenMode.ReadOnly);
        try
        {
            database.Look();
        }
        catch (FactStoreException unreachable) when (unreachable.Fault.Code == StoreFault.NotReachedCode && (!File.Exists(path + "-wal") || new FileInfo(path + "-wal").Length == 0))
        {
            // Readers of a database in use share a file beside it. Where that cannot be made and no change waits in the log, the file is all there is.
            database.Dispose();
            database = new(path, Patience, SqliteOpenMode.ReadOnly, isAlone: true);
            database.Look();
        }
        return database;
    }

    /// <summary>Opens a database that another program has open, to change it too; null where it is of another version than this program's.</summary>
    internal static ShopDatabase? OpenBeside(string path)
    {
        var database = new ShopDatabase(path, Patience, SqliteOpenMode.ReadWrite);
        if (database.Asked(connection => Schema.VersionOf(connection, path, int.MaxValue)) == Version) return database;
        database.Dispose();
        return null;
    }

    private void Look()
    {
        int version = Asked(connection => Schema.VersionOf(connection, _path, int.MaxValue));
        if (version < Version)
            throw FactStoreException.Of("store.older", $"'{_path}' is of version {version}; this program reads version {Version} and newer.", "Open it where it can be written to: it is brought up then, after a backup.");
    }

    internal static ShopDatabase Open(string path, ImmutableArray<string> steps, TimeSpan patience, TimeProvider? time = null)
    {
        // What another program has left in the log beside the file goes into the file when a writer closes it: not before the version is known.
        if (File.Exists(path + "-wal") && new FileInfo(path + "-wal").Length > 0)
        {
            using var look = new ShopDatabase(path, patience, SqliteOpenMode.ReadOnly);
            look.Asked(connection => Schema.VersionOf(connection, path, steps.Length));
        }
        var database = new ShopDatabase(path, patience, SqliteOpenMode.ReadWriteCreate);
        try
        {
            database.With(connection =>
            {
                Schema.Bring(connection, path, steps, () => new Backups(path, time ?? TimeProvider.System).Make(BackupReason.Upgrade, patience).File.Path);
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

    /// <inheritdoc/>
    public ImmutableArray<string> Pieces() => With(connection =>
    {
        using SqliteCommand select = connection.Command("SELECT coalesce(d.name, p.name) AS name FROM pieces p LEFT JOIN documents d ON d.piece = p.number ORDER BY 1");
        return select.Rows(row => row.GetString(0));
    });

    /// <inheritdoc/>
    public IFactStore FactsOf(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        return new PieceFacts(this, _path, new(null, name));
    }

    /// <inheritdoc/>
    public IFactStore FactsOf(DocumentId id) => new PieceFacts(this, _path, new(id, ""));

    /// <summary>Lets go of the file. What was acknowledged is on the disk already.</summary>
    public void Dispose()
    {
        using var connection = new SqliteConnection(_connectionText);
        SqliteConnection.ClearPool(connection);
        _gate.Dispose();
    }

    /// <summary>Puts a backup in the place of what is there, while this program has it open: writers wait until it is done.</summary>
    /// <param name="backup">A backup of ours, of this version or an earlier one.</param>
    /// <param name="time">The clock.</param>
    /// <exception cref="FactStoreException">It could not be done; says in which step, and what stands.</exception>
    public Restored Restore(string backup, TimeProvider time)
    {
        _gate.EnterWriteLock();
        try
        {
            return Restoring.Run(_path, backup, time);
        }
        finally
        {
            _gate.ExitWriteLock();
        }
    }

    /// <summary>Does something in a transaction for writing, which <paramref name="isGood"/> lets stand: it takes its turn before it looks, so that what it sees
    /// stays so until it has written.</summary>
    internal T Write<T>(Func<SqliteConnection, T> write, Func<T, bool> isGood)
    {
        if (_isToRead) throw FactStoreException.Of("store.read-only", $"'{_path}' was opened to read only.", "Open it with a program of its version, in a folder that can be written to; nothing was changed.");
        _gate.EnterReadLock();
        try
        {
            return With(connection =>
            {
                using SqliteTransaction turn = connection.BeginTransaction(deferred: false);
                T written = write(connection);
                if (isGood(written)) turn.Commit();
                return written;
            });
        }
        finally
        {
            _gate.ExitReadLock();
        }
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
