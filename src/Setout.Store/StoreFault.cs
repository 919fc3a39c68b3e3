using Microsoft.Data.Sqlite;
using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>What SQLite says, in words with a remedy.</summary>
internal static class StoreFault
{
    // Result codes: https://www.sqlite.org/rescode.html
    private const int Permission = 3, Busy = 5, Locked = 6, ReadOnly = 8, InputOutput = 10, Corrupt = 11, Full = 13, CannotOpen = 14, NoDatabase = 26;

    /// <summary>The code of a database that does not hold what it should.</summary>
    public const string DamagedCode = "store.damaged";

    /// <summary>The code of a file that is no database.</summary>
    public const string NoDatabaseCode = "store.no-database";

    /// <summary>The code of a file that cannot be read and written.</summary>
    public const string NotReachedCode = "store.not-reached";

    /// <summary>The code of a database of a newer version.</summary>
    public const string NewerCode = "store.newer";

    /// <summary>The refusal for an error.</summary>
    public static FactStoreException Of(string path, SqliteException said, TimeSpan patience) => said.SqliteErrorCode switch
    {
        NoDatabase => FactStoreException.Of(NoDatabaseCode, $"'{path}' is no database, or its beginning is damaged.", Restore, said),
        Corrupt => Damaged(path, said.Message, said),
        Busy or Locked => FactStoreException.Of("store.busy", $"Another program has been writing to '{path}' for {patience.TotalSeconds:0.###} seconds.",
            "Close it, then try again; nothing was written.", said),
        Full => FactStoreException.Of("store.full", $"There is no room left for '{path}'.", "Make room on the disk, then try again; nothing was written.", said),
        Permission or ReadOnly or InputOutput or CannotOpen => FactStoreException.Of(NotReachedCode, $"'{path}' cannot be read and written here: {said.Message}",
            "Look whether its folder is there and may be written to; nothing was written.", said),
        // Tables that are not what the version says.
        _ => Damaged(path, said.Message, said),
    };

    /// <summary>The refusal for a database that does not hold what it should.</summary>
    /// <param name="path">The file.</param>
    /// <param name="how">What was found.</param>
    /// <param name="cause">What the system said, if it said something.</param>
    public static FactStoreException Damaged(string path, string how, Exception? cause) => FactStoreException.Of(DamagedCode, $"'{path}' is damaged: {how.TrimEnd('.')}.", Restore, cause);

    private const string Restore = "Put a copy from before in its place, keeping the damaged file for whoever can mend it; nothing was changed.";
}
