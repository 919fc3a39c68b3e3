using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>Why a backup was made.</summary>
public enum BackupReason
{
    /// <summary>The first of a day.</summary>
    Daily,

    /// <summary>Somebody asked for it.</summary>
    Asked,

    /// <summary>Before the tables were brought to a newer version.</summary>
    Upgrade,

    /// <summary>Before a backup was put in the place of what was there.</summary>
    Restore,
}

/// <summary>A backup in its folder.</summary>
/// <param name="Path">The file.</param>
/// <param name="At">When it was made, by the clock of this machine.</param>
/// <param name="Reason">Why.</param>
/// <param name="Bytes">How large it is.</param>
public sealed record BackupFile(string Path, DateTime At, BackupReason Reason, long Bytes);

/// <summary>The backups of a database: dated files in a folder <c>backups</c> beside it.</summary>
/// <param name="database">The database.</param>
/// <param name="time">The clock.</param>
public sealed partial class Backups(string database, TimeProvider time)
{
    /// <summary>How many daily ones are kept, and how many of each kind made before something was changed. Those that somebody asked for are all kept.</summary>
    public const int DailyKept = 7, OthersKept = 5;

    private static readonly (BackupReason Reason, string Word)[] s_words =
        [(BackupReason.Daily, "daily"), (BackupReason.Asked, "asked"), (BackupReason.Upgrade, "before-upgrade"), (BackupReason.Restore, "before-restore")];

    private readonly string _stem = System.IO.Path.GetFileNameWithoutExtension(database);

    /// <summary>The folder; made with the first backup.</summary>
    public string Folder { get; } = System.IO.Path.Combine(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(database))!, "backups");

    /// <summary>All that are there, the newest first.</summary>
    public ImmutableArray<BackupFile> All() => !Directory.Exists(Folder) ? [] :
    [
        .. Directory.EnumerateFiles(Folder, _stem + "-*.db").Select(Read).OfType<BackupFile>()
            .OrderByDescending(b => b.At).ThenByDescending(b => b.Path.Length).ThenByDescending(b => b.Path, StringComparer.Ordinal),
    ];

    /// <summary>Makes a backup; afterwards those of its kind that are too many are taken away, the oldest first.</summary>
    /// <exception cref="FactStoreException">It could not be made.</exception>
    public (BackupFile File, StoreCounts Counts) Make(BackupReason reason) => Make(reason, ShopDatabase.Patience);

    internal (BackupFile File, StoreCounts Counts) Make(BackupReason reason, TimeSpan patience)
    {
        DateTime now = time.GetLocalNow().DateTime;
        string stem = System.IO.Path.Combine(Folder, $"{_stem}-{now.ToString("yyyy-MM-dd-HHmmss", CultureInfo.InvariantCulture)}-{s_words.First(w => w.Reason == reason).Word}");
        string path = stem + ".db";
        for (int i = 2; File.Exists(path); i++) path = $"{stem}-{i}.db";
        StoreCounts counts = BackupWriting.Write(database, path, patience);
        BackupFile made = Read(path)!;
        if (reason != BackupReason.Asked)
            foreach (BackupFile old in All().Where(b => b.Reason == reason && b.Path != path).Skip((reason == BackupReason.Daily ? DailyKept : OthersKept) - 1)) Remove(old.Path);
        return (made, counts);
    }

    /// <summary>Makes the backup of this day if there is none yet.</summary>
    /// <returns>The backup; null when there was one.</returns>
    /// <exception cref="FactStoreException">It could not be made.</exception>
    public BackupFile? Daily() => All().Any(b => b.Reason == BackupReason.Daily && b.At.Date == time.GetLocalNow().Date) ? null : Make(BackupReason.Daily).File;

    private static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception held) when (held is IOException or UnauthorizedAccessException)
        {
            // One too many does no harm.
        }
    }

    private BackupFile? Read(string path)
    {
        Match name = Name().Match(System.IO.Path.GetFileNameWithoutExtension(path)[_stem.Length..]);
        return name.Success && DateTime.TryParseExact(name.Groups[1].Value, "yyyy-MM-dd-HHmmss", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime at)
            ? new(path, at, s_words.First(w => w.Word == name.Groups[2].Value).Reason, new FileInfo(path).Length)
            : null;
    }

    [GeneratedRegex("^-([0-9]{4}-[0-9]{2}-[0-9]{2}-[0-9]{6})-(daily|asked|before-upgrade|before-restore)(-[0-9]+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Name();
}
