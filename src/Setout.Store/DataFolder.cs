using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>
/// A data folder in use by this program: one database, its backups beside it, and the lock that keeps a second program out. The folder is found by
/// <see cref="DataPlace"/>.
/// </summary>
public sealed class DataFolder : IDisposable
{
    /// <summary>The name of the database in it.</summary>
    public const string DatabaseName = "setout.db";

    // As the system calls them; lower case.
    private static readonly string[] s_network = ["nfs", "nfs4", "cifs", "smb", "smb2", "smbfs", "afpfs", "9p", "fuse.sshfs", "webdav"];

    private readonly FolderLock _lock;

    private DataFolder(string path, FolderLock held, ShopDatabase database, Backups backups, ImmutableArray<Finding> warnings) =>
        (Path, _lock, Database, Backups, Warnings) = (path, held, database, backups, warnings);

    /// <summary>The folder's full path.</summary>
    public string Path { get; }

    /// <summary>Documents and facts.</summary>
    public ShopDatabase Database { get; }

    /// <summary>The backups.</summary>
    public Backups Backups { get; }

    /// <summary>What whoever started the program should hear: the folder is no good place, or the daily backup could not be made.</summary>
    public ImmutableArray<Finding> Warnings { get; }

    /// <summary>Opens a data folder and makes what is not there; then makes the backup of the day.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="time">The clock.</param>
    /// <returns>The folder; or null and the program that has it open.</returns>
    /// <exception cref="FactStoreException">It cannot be used; nothing was lost.</exception>
    public static (DataFolder? Folder, FolderUser? User) Open(string path, TimeProvider time)
    {
        string full = System.IO.Path.GetFullPath(path), file = System.IO.Path.Combine(full, DatabaseName);
        (FolderLock? held, FolderUser? user) = Take(full);
        if (held is null) return (null, user);
        try
        {
            var warnings = ImmutableArray.CreateBuilder<Finding>();
            if (Network(full) is { } network) warnings.Add(network);
            bool isNew = !File.Exists(file);
            var database = ShopDatabase.Open(file, time);
            var backups = new Backups(file, time);
            try
            {
                // Nothing is to be kept of what has just been made.
                if (!isNew) backups.Daily();
            }
            catch (FactStoreException failed)
            {
                warnings.Add(failed.Fault with { Severity = Severity.Warn });
            }
            return (new(full, held, database, backups, warnings.ToImmutable()), null);
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    /// <summary>Puts a backup in the place of what is there, where no other program has the folder open.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="backup">The backup.</param>
    /// <param name="time">The clock.</param>
    /// <exception cref="FactStoreException">Another program has it open, or restoring failed; see <see cref="Restoring"/>.</exception>
    public static Restored Restore(string path, string backup, TimeProvider time)
    {
        string full = System.IO.Path.GetFullPath(path);
        (FolderLock? held, FolderUser? user) = Take(full);
        if (held is null) throw user!.Refusal(full);
        using (held) return Restoring.Run(System.IO.Path.Combine(full, DatabaseName), backup, time);
    }

    /// <summary>
    /// Does something with the store of a data folder, also while another program has it open: writers take turns in the store itself. What the lock keeps apart is what changes the store as a
    /// whole (bringing it to a newer version, restoring), and that is not done here while another has it.
    /// </summary>
    /// <param name="path">The folder.</param>
    /// <param name="time">The clock.</param>
    /// <param name="use">What is done.</param>
    /// <exception cref="FactStoreException">It cannot be used, or the program that has it open keeps it in the form of another version.</exception>
    public static T Share<T>(string path, TimeProvider time, Func<ShopDatabase, T> use)
    {
        string full = System.IO.Path.GetFullPath(path), file = System.IO.Path.Combine(full, DatabaseName);
        (FolderLock? held, FolderUser? user) = Take(full);
        using (held)
        {
            using ShopDatabase database = held is not null ? ShopDatabase.Open(file, time) : ShopDatabase.OpenBeside(file) ?? throw user!.Refusal(full);
            return use(database);
        }
    }

    /// <summary>Says where this program answers, for a second one that is started.</summary>
    /// <param name="address">Such as <c>http://localhost:5280</c>.</param>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public void Announce(string address) => _lock.Announce(address);

    /// <summary>Lets go of the folder. What was acknowledged is on the disk already.</summary>
    public void Dispose()
    {
        Database.Dispose();
        _lock.Dispose();
    }

    private static (FolderLock? Lock, FolderUser? User) Take(string full)
    {
        try
        {
            if (!Directory.Exists(full))
            {
                // Others on this machine have no business in it.
                if (OperatingSystem.IsWindows()) Directory.CreateDirectory(full);
                else Directory.CreateDirectory(full, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            }
            return FolderLock.Take(full);
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException)
        {
            throw FactStoreException.Of("store.not-reached", $"The data folder '{full}' cannot be written to: {failed.Message}",
                $"Make it so that you may write there and it has room, or name another folder with --data or in {DataPlace.Variable}.", failed);
        }
    }

    private static Finding? Network(string full)
    {
        try
        {
            var drive = new DriveInfo(full);
            if (drive.DriveType != DriveType.Network && !s_network.Contains(drive.DriveFormat.ToLowerInvariant())) return null;
            return new("store.network", Severity.Warn, "", $"The data folder '{full}' is on a network drive ({drive.DriveFormat}), where programs cannot lock each other out for certain and a write may be torn.",
                "Keep it on a disk of this machine, and let backups go to the network.");
        }
        catch (Exception unknown) when (unknown is IOException or UnauthorizedAccessException or ArgumentException)
        {
            // The system does not say; opening will tell.
            return null;
        }
    }
}
