using System.Collections.Immutable;
using Setout.Shop.Documents;
using Setout.Store;
using Setout.Workbench.Changing;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Keeping;

/// <summary>A backup in the list.</summary>
/// <param name="File">The name of the file.</param>
/// <param name="At">When it was made, in words.</param>
/// <param name="Why">Why, in words.</param>
/// <param name="Size">How large it is.</param>
/// <param name="Download">Where it is fetched.</param>
/// <param name="Restore">Where it is looked into before it is restored.</param>
public sealed record BackupLine(string File, string At, string Why, string Size, string Download, string Restore);

/// <summary>How the work is kept.</summary>
/// <param name="Place">The data folder.</param>
/// <param name="Holds">What is in it, in words.</param>
/// <param name="Size">How large the database is.</param>
/// <param name="BackupsPlace">Where the backups lie.</param>
/// <param name="Backups">The newest first.</param>
/// <param name="Age">How old the newest is, in words.</param>
/// <param name="IsOld">Whether that is too old.</param>
/// <param name="Done">What was just done, in words; empty for nothing.</param>
/// <param name="Undo">The change that was just made and can be taken back; empty for none.</param>
public sealed record KeepingView(string Place, string Holds, string Size, string BackupsPlace, ImmutableArray<BackupLine> Backups, string Age, bool IsOld, string Done, string Undo)
{
    /// <summary>A new id for the form that takes back.</summary>
    public string UndoChange { get; } = ChangeForm.NewId();

    internal static KeepingView Of(DataKeeping keeping, string done, string undo)
    {
        (string age, bool isOld) = keeping.Age();
        ImmutableArray<DocumentLine> documents = keeping.Store.Documents();
        int pieces = documents.Count(d => d.Kind == DocumentKind.Piece), away = documents.Count(d => d.IsPutAway);
        bool hasShop = documents.Any(d => d.Kind == DocumentKind.Shop);
        long bytes = ((string[])["", "-wal"]).Select(e => new FileInfo(keeping.Database + e)).Where(f => f.Exists).Sum(f => f.Length);
        return new(keeping.Place, $"{pieces} {(pieces == 1 ? "piece" : "pieces")}{(away > 0 ? $" ({away} put away)" : "")}{(hasShop ? " and the shop file" : "")}, with all their states and logs", DataKeeping.Size(bytes),
            keeping.Backups.Folder, [.. keeping.Backups.All().Select(b => Line(b, keeping.Time))], age, isOld, done, undo);
    }

    private static BackupLine Line(BackupFile backup, TimeProvider time)
    {
        string file = Path.GetFileName(backup.Path), escaped = Uri.EscapeDataString(file);
        return new(file, When.Of(backup.At, time), Why(backup.Reason), DataKeeping.Size(backup.Bytes), $"{Links.Keeping}/backup/{escaped}", $"{Links.Keeping}/restore?backup={escaped}");
    }

    private static string Why(BackupReason reason) => reason switch
    {
        BackupReason.Daily => "the first start of the day",
        BackupReason.Asked => "asked for",
        BackupReason.Upgrade => "before a newer version",
        _ => "before a backup was restored",
    };
}
