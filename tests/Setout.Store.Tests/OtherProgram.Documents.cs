using System.Diagnostics;
using System.Globalization;
using Setout.Shop.Documents;
using Setout.Shop.Facts;

namespace Setout.Store.Tests;

/// <content>What it does with documents and data folders.</content>
internal static partial class OtherProgram
{
    private const string At = "2026-05-04T09:40:00Z";

    /// <summary>The text after so many edits.</summary>
    public static string TextAfter(int edits) => $"setout: 1\nname: chest\n{string.Concat(Enumerable.Range(0, 40).Select(i => $"# line {i.ToString(CultureInfo.InvariantCulture)}, edit {(edits > i ? edits - ((edits - i - 1) % 40) : 0).ToString(CultureInfo.InvariantCulture)}\n"))}";

    // edit: so many edits of one document, each answered on the output. hold: has a data folder open until its input ends. fill: edits until the disk is full, then goes
    // on when there is room. restore: puts the backup that the writer names in its place. read-only: opens a folder on a disk that cannot be written to.
    private static bool DoWithDocuments(string task, string path, string writer, int calls)
    {
        switch (task)
        {
            case "edit": Edit(path, calls); return true;
            case "hold": Hold(path); return true;
            case "fill": Fill(path); return true;
            case "read-only": ReadOnly(path); return true;
            case "restore": Restore(path, writer); return true;
            default: return false;
        }
    }

    private static Document New(ShopDatabase store) => Taken(store, "new", new NewDocument(DocumentKind.Piece, "chest", TextAfter(0), "new piece"));

    private static Document Taken(ShopDatabase store, string id, DocumentChange change) => ((ChangeTaken)store.Make(Change.Of(id, At, change))).Documents[0];

    private static void Edit(string path, int calls)
    {
        using var store = ShopDatabase.Open(path);
        Document chest = New(store);
        Console.WriteLine("ready");
        Console.In.ReadLine();
        for (int edit = 1; edit <= calls; edit++)
        {
            chest = Taken(store, $"edit {edit}", new EditText(chest.Id, chest.Revision, $"edit {edit}", TextAfter(edit)));
            Console.WriteLine(edit);
        }
        Console.In.ReadLine();
    }

    private static void Restore(string path, string backup)
    {
        Console.WriteLine("ready");
        Console.In.ReadLine();
        Restoring.Run(path, backup, TimeProvider.System);
    }

    private static void Hold(string path)
    {
        (DataFolder? folder, FolderUser? user) = DataFolder.Open(path, TimeProvider.System);
        if (folder is null)
        {
            Console.WriteLine(user!.Refusal(path).Fault.Remedy);
            return;
        }
        folder.Announce("http://localhost:5280");
        Console.WriteLine("holds");
        Console.In.ReadLine();
        folder.Dispose();
        Console.WriteLine("let go");
        Console.In.ReadLine();
    }

    private static void Fill(string path)
    {
        string ballast = Path.Combine(path, "ballast");
        File.WriteAllBytes(ballast, new byte[256 * 1024]);
        using DataFolder folder = DataFolder.Open(path, TimeProvider.System).Folder!;
        Document chest = New(folder.Database);
        FactStoreException? full = null;
        for (int edit = 1; full is null; edit++)
        {
            try
            {
                // Each text is another from end to end, so that each takes its room.
                chest = Taken(folder.Database, $"edit {edit}", new EditText(chest.Id, chest.Revision, $"edit {edit}", string.Concat(Enumerable.Range(0, 1000).Select(i => $"{edit * i:x} "))));
            }
            catch (FactStoreException refused)
            {
                full = refused;
            }
        }
        Say(full);
        Say(Refusal(() => folder.Backups.Make(BackupReason.Asked)));
        Console.WriteLine(string.Join(' ', Directory.EnumerateFiles(folder.Backups.Folder).Select(Path.GetFileName)));
        Console.WriteLine(Changed(folder.Database.Find(chest.Id)!, chest));
        File.Delete(ballast);
        chest = Taken(folder.Database, "there is room", new EditText(chest.Id, chest.Revision, "there is room", "there is room"));
        Console.WriteLine(Changed(folder.Database.Find(chest.Id)!, chest));
        Console.WriteLine(folder.Database.With(Health.Fault) ?? "whole");
    }

    private static void ReadOnly(string path)
    {
        using (DataFolder folder = DataFolder.Open(path, TimeProvider.System).Folder!) New(folder.Database);
        using (Process mount = Process.Start("mount", ["-o", "remount,ro", path])) mount.WaitForExit();
        Say(Refusal(() => DataFolder.Open(path, TimeProvider.System)));
        Say(Refusal(() => ShopDatabase.Open(Path.Combine(path, DataFolder.DatabaseName))));
        using var store = ShopDatabase.OpenToRead(Path.Combine(path, DataFolder.DatabaseName));
        Console.WriteLine(store.Find("chest")!.Text == TextAfter(0) ? "read" : "not read");
        Say(Refusal(() => New(store)));
    }

    private static string Changed(Document now, Document seen) => now.Revision == seen.Revision && now.Text == seen.Text ? "as acknowledged" : $"revision {now.Revision} after {seen.Revision}";

    private static FactStoreException? Refusal(Action action)
    {
        try
        {
            action();
            return null;
        }
        catch (FactStoreException refused)
        {
            return refused;
        }
    }

    private static void Say(FactStoreException? refused) => Console.WriteLine(refused is null ? "not refused" : $"{refused.Fault.Code} | {refused.Fault.Words.ReplaceLineEndings(" ")} | {refused.Fault.Remedy}");
}
