using System.Collections.Immutable;
using Setout.Store;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Keeping;

/// <summary>The data folder as the pages on keeping see it.</summary>
/// <param name="place">The folder.</param>
/// <param name="store">The database in it.</param>
/// <param name="time">The clock.</param>
internal sealed class DataKeeping(string place, ShopDatabase store, TimeProvider time)
{
    /// <summary>A backup older than this is told in red. Basis: common practice, no source.</summary>
    public const int OldDays = 7;

    /// <summary>The folder.</summary>
    public string Place { get; } = place;

    /// <summary>The database in it.</summary>
    public ShopDatabase Store { get; } = store;

    /// <summary>Where that lies.</summary>
    public string Database { get; } = Path.Combine(place, DataFolder.DatabaseName);

    /// <summary>The backups beside it.</summary>
    public Backups Backups { get; } = new(Path.Combine(place, DataFolder.DatabaseName), time);

    /// <summary>The clock.</summary>
    public TimeProvider Time { get; } = time;

    /// <summary>When the newest backup was made, in words, and whether that is too long ago.</summary>
    public (string Words, bool IsOld) Age()
    {
        ImmutableArray<BackupFile> all = Backups.All();
        if (all.IsEmpty) return ("There is no backup yet.", true);
        int days = (Time.GetLocalNow().Date - all[0].At.Date).Days;
        return ($"Last backup: {When.Of(all[0].At, Time)}{(days > 1 ? $", {days} days ago" : "")}.", days > OldDays);
    }

    /// <summary>A size in words, such as <c>1.4 MB</c>.</summary>
    public static string Size(long bytes) => bytes < 1024 * 1024 ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Math.Max(1, (bytes + 512) / 1024)} KB") : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{bytes / 1048576.0:0.0} MB");
}
