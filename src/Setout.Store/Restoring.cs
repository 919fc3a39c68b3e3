// Over 200 lines: one act in its steps, each of which undoes what was done before it when it fails.
using System.Globalization;
using Microsoft.Data.Sqlite;
using Setout.Shop.Documents;
using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>What a restore did.</summary>
/// <param name="Counts">What is there now.</param>
/// <param name="Kept">The backup of what was there before; null when there was nothing.</param>
public sealed record Restored(StoreCounts Counts, string? Kept);

/// <summary>
/// Puts a backup in the place of what is there. Where a database is there, its pages are written over in one transaction: whoever has it open
/// sees all of the one or all of the other, and a power cut leaves the old. A damaged one is set aside as it is.
/// </summary>
public static class Restoring
{
    private const int MostTries = 3;

    /// <summary>Restores.</summary>
    /// <param name="database">The database; need not exist.</param>
    /// <param name="backup">A backup of ours, of this version or an earlier one.</param>
    /// <param name="time">The clock.</param>
    /// <exception cref="FactStoreException">It could not be done; says in which step, and what stands.</exception>
    public static Restored Run(string database, string backup, TimeProvider time)
    {
        string coming = database + ".coming", step = "reading the backup";
        string? kept = null;
        bool isPlaced = false;
        try
        {
            Look(database, backup);
            bool isSound = false;
            StoreCounts counts;
            for (int i = 1; ; i++)
            {
                step = "keeping what is there";
                if (File.Exists(database)) (isSound, kept) = Keep(database, time);
                StoreStand? stand = isSound ? StandOf(database) : null;
                step = "copying the backup";
                counts = Copy(isSound ? database : null, backup, coming, time);
                // What another program has acknowledged since is to be kept too.
                if (stand is null || i == MostTries || (StandOf(database) == stand && KeptAll(kept, stand.Value))) break;
            }
            step = "putting it in its place";
            if (isSound) Over(coming, database);
            else kept = Beside(coming, database, time);
            isPlaced = true;
            step = "looking at what is there now";
            using SqliteConnection now = Plain.Open(database, SqliteOpenMode.ReadWrite, ShopDatabase.Patience);
            if (Health.Fault(now) is { } fault) throw StoreFault.Damaged(database, fault, null);
            return StoreCounts.Of(now) == counts ? new(counts, kept) : throw StoreFault.Damaged(database, $"it holds {StoreCounts.Of(now)} instead of {counts}", null);
        }
        catch (Exception failed) when (failed is SqliteException or FactStoreException or IOException or UnauthorizedAccessException)
        {
            string why = failed is SqliteException said ? StoreFault.Of(database, said, ShopDatabase.Patience).Fault.Words : failed.Message;
            string remedy = !isPlaced ? "What was there before stands." : kept is null ? "Restore another backup." : $"Go back by restoring '{kept}'.";
            throw FactStoreException.Of("store.not-restored", $"Restoring '{backup}' failed while {step}: {why}", remedy, failed);
        }
        finally
        {
            foreach (string end in (string[])["", "-journal", "-wal", "-shm"]) Remove(coming + end);
        }
    }

    /// <summary>What is in a backup, to be looked at before it is restored. Only for as long as it is used there is a copy beside the database.</summary>
    /// <param name="scratch">A file that is made for it and taken away afterwards.</param>
    /// <param name="backup">A backup of ours, of this version or an earlier one.</param>
    /// <param name="time">The clock.</param>
    /// <param name="look">Looks at it.</param>
    /// <exception cref="FactStoreException">It is no backup of ours, or not whole.</exception>
    public static T LookInto<T>(string scratch, string backup, TimeProvider time, Func<IDocumentStore, StoreCounts, T> look)
    {
        try
        {
            Look(scratch, backup);
            StoreCounts counts = Copy(null, backup, scratch, time);
            using var there = ShopDatabase.OpenToRead(scratch);
            return look(there, counts);
        }
        catch (SqliteException said)
        {
            throw StoreFault.Of(backup, said, ShopDatabase.Patience);
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException)
        {
            throw FactStoreException.Of(StoreFault.NotReachedCode, $"'{backup}' cannot be looked into: {failed.Message}", "Look whether the data folder has room; nothing was changed.", failed);
        }
        finally
        {
            foreach (string end in (string[])["", "-journal", "-wal", "-shm"]) Remove(scratch + end);
        }
    }

    private static void Look(string database, string backup)
    {
        if (!File.Exists(backup)) throw FactStoreException.Of("store.no-backup", $"There is no file '{backup}'.", "");
        if (Path.GetFullPath(backup) == Path.GetFullPath(database)) throw FactStoreException.Of("store.no-backup", "This is the database itself.", "");
        using SqliteConnection connection = Plain.Open(backup, SqliteOpenMode.ReadOnly, ShopDatabase.Patience);
        int version = Schema.VersionOf(connection, backup, ShopDatabase.Version);
        if (version == 0) throw FactStoreException.Of("store.no-backup", $"'{backup}' is empty.", "");
        if (Health.Fault(connection) is { } fault) throw StoreFault.Damaged(backup, fault, null);
    }

    // False where what is there cannot be read any more.
    private static (bool IsSound, string? Kept) Keep(string database, TimeProvider time)
    {
        try
        {
            ShopDatabase.Open(database, time).Dispose();
            (BackupFile file, StoreCounts counts) = new Backups(database, time).Make(BackupReason.Restore);
            if (!counts.IsEmpty) return (true, file.Path);
            File.Delete(file.Path);
            return (true, null);
        }
        catch (FactStoreException damaged) when (damaged.Fault.Code is StoreFault.DamagedCode or StoreFault.NoDatabaseCode)
        {
            return (false, null);
        }
    }

    private static StoreCounts Copy(string? database, string backup, string coming, TimeProvider time)
    {
        using SqliteConnection copy = Plain.Open(coming, SqliteOpenMode.ReadWriteCreate, ShopDatabase.Patience);
        using (SqliteConnection source = Plain.Open(backup, SqliteOpenMode.ReadOnly, ShopDatabase.Patience)) source.BackupDatabase(copy);
        copy.Run("DROP TABLE IF EXISTS texts");
        Schema.Bring(copy, coming, Schema.Steps);
        copy.Run("PRAGMA journal_mode = DELETE");
        if (database is not null) Revisions(copy, database, coming, time.GetUtcNow().ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture), Path.GetFileName(backup));
        return Health.Fault(copy) is { } fault ? throw StoreFault.Damaged(coming, fault, null) : StoreCounts.Of(copy);
    }

    // A page that is open has seen a revision of what is there now. The restored document gets a later one, so that nothing made on what is gone is taken for made
    // on what has come.
    private static void Revisions(SqliteConnection copy, string database, string coming, string at, string from)
    {
        using SqliteConnection there = Plain.Open(database, SqliteOpenMode.ReadWrite, ShopDatabase.Patience);
        using SqliteTransaction all = copy.BeginTransaction(deferred: false);
        long newest = there.Number(Newest);
        long? change = null;
        long Begin() => copy.Number("INSERT INTO changes (place, id, at, words, asked) VALUES ($place, $id, $at, $words, '') RETURNING place",
            ("$place", Math.Max(newest, copy.Number(Newest)) + 1), ("$id", "restore-" + Guid.NewGuid().ToString("n", CultureInfo.InvariantCulture)), ("$at", at), ("$words", $"restored from {from}"));
        foreach (DocumentRow row in DocumentRow.All(copy))
        {
            if (DocumentRow.Find(there, row.Id) is not { } before) continue;
            if (before.Revision == row.Revision && new States(there, database).TextOf(before.State) == new States(copy, coming).TextOf(row.State)) continue;
            change ??= Begin();
            int revision = Math.Max(before.Revision, row.Revision) + 1;
            new DocumentSteps(copy, coming, change.Value, at).Move("restored", row.State, row with { Revision = revision, HeadSince = revision, ShelfSince = revision });
        }
        // Nor may the stand of the whole be one that was seen before.
        if (change is null && copy.Number(Newest) <= newest) Begin();
        all.Commit();
    }

    private const string Newest = "SELECT coalesce(max(place), 0) FROM changes";

    private static StoreStand StandOf(string database, SqliteOpenMode mode = SqliteOpenMode.ReadWrite)
    {
        using SqliteConnection there = Plain.Open(database, mode, ShopDatabase.Patience);
        return new(there.Number(Newest), there.Number("SELECT coalesce(max(place), 0) FROM facts"));
    }

    private static bool KeptAll(string? kept, StoreStand stand) => kept is null ? stand == default : StandOf(kept, SqliteOpenMode.ReadOnly) == stand;

    private static void Over(string coming, string database)
    {
        using SqliteConnection source = Plain.Open(coming, SqliteOpenMode.ReadOnly, ShopDatabase.Patience), target = Plain.Open(database, SqliteOpenMode.ReadWrite, ShopDatabase.Patience);
        source.BackupDatabase(target);
    }

    // Where there is none, or a damaged one, which is kept as it is; gives where.
    private static string? Beside(string coming, string database, TimeProvider time)
    {
        using (var file = new FileStream(coming, FileMode.Open, FileAccess.ReadWrite)) file.Flush(flushToDisk: true);
        string folder = new Backups(database, time).Folder, stamp = time.GetLocalNow().ToString("yyyy-MM-dd-HHmmss", CultureInfo.InvariantCulture);
        string aside = Path.Combine(folder, $"{Path.GetFileNameWithoutExtension(database)}-{stamp}-damaged.db");
        bool isThere = File.Exists(database);
        if (isThere) Directory.CreateDirectory(folder);
        Move(database, aside);
        try
        {
            File.Move(coming, database);
        }
        catch (IOException)
        {
            Move(aside, database);
            throw;
        }
        return isThere ? aside : null;
    }

    // What stands in the file beside a database belongs to it, and would spoil another.
    private static void Move(string from, string to)
    {
        foreach (string end in (string[])["-wal", "-shm", ""])
            if (File.Exists(from + end)) File.Move(from + end, to + end, overwrite: true);
    }

    private static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception stays) when (stays is IOException or UnauthorizedAccessException)
        {
            // The next restore writes over it.
        }
    }
}
