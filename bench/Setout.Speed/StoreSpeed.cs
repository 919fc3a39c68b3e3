using System.Diagnostics;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Texts;
using Setout.Store;

namespace Setout.Speed;

/// <summary>Times the store on the disk of a folder: changes a second, opening, reading, backup, and how much room an edit takes.</summary>
internal static class StoreSpeed
{
    private const string At = "2026-05-04T09:40:00Z";

    public static void Run(string folder)
    {
        Directory.CreateDirectory(folder);
        string small = string.Concat(Enumerable.Range(0, 80).Select(Line)), large = LargePiece.Text();
        string path = Path.Combine(folder, "setout.db");
        Time("make a new store", () => ShopDatabase.Open(path).Dispose());
        Edits(path, "small", small, 1000);
        Edits(path, "large", large, 1000);
        using var store = ShopDatabase.Open(path);
        Document document = store.Find("small")!;
        Many("undo or redo", 1000, i => document = Taken(store, i % 2 == 0 ? new UndoStep(document.Id, document.Revision) : new RedoStep(document.Id, document.Revision)));
        var facts = store.FactsOf(document.Id);
        Many("append a fact", 1000, i => facts.Append(new ReadingEntry($"f{i}", At, new("L.width"), [ExactLength.FromInches(Rational.Of(i + 1, 3))], "tape", "")));
        Many("read a document of 80 lines", 1000, _ => store.Find("small"));
        Many("read a document of 539 parts", 1000, _ => store.Find("large"));
        Many("list of documents", 1000, _ => store.Documents());
        Time($"history of {store.History(document.Id).Length} states", () => store.History(document.Id));
        Time("1000 facts read", () => facts.Read());
        AtOnce(path, small);
        for (int i = 0; i < 8; i++) Edits(path, $"more {i}", small, 1000, isSilent: true);
        store.Dispose();
        Time("open a store of 11 documents and more than 10 000 states", () => ShopDatabase.Open(path).Dispose());
        Time("open it, list, read one document", () =>
        {
            using var opened = ShopDatabase.Open(path);
            opened.Documents();
            opened.Find("large");
        });
        var backups = new Backups(path, TimeProvider.System);
        Time("backup, opened and counted", () => backups.Make(BackupReason.Asked));
        BackupFile backup = backups.All()[0];
        Time("restore", () => Restoring.Run(path, backup.Path, TimeProvider.System));
        Console.WriteLine($"{new FileInfo(path).Length / 1024} KB, backup {backup.Bytes / 1024} KB");
    }

    private static void Edits(string path, string name, string text, int count, bool isSilent = false)
    {
        using var store = ShopDatabase.Open(path);
        Document document = Taken(store, new NewDocument(DocumentKind.Piece, name, text, "new"));
        long before = Room(path);
        Many($"edit of {text.Length / 1024.0:0.0} KB", count, i => document = Taken(store, new EditText(document.Id, document.Revision, $"edit {i}", Edited(text, i))), isSilent);
        if (!isSilent) Console.WriteLine($"  {(Room(path) - before) / count} bytes an edit");
    }

    private static void AtOnce(string path, string text)
    {
        const int writers = 4, each = 250;
        using var store = ShopDatabase.Open(path);
        Document[] documents = [.. Enumerable.Range(0, writers).Select(w => Taken(store, new NewDocument(DocumentKind.Piece, $"writer {w}", text, "new")))];
        long start = Stopwatch.GetTimestamp();
        Task.WaitAll([.. documents.Select(d => Task.Factory.StartNew(() =>
        {
            Document document = d;
            for (int i = 0; i < each; i++) document = Taken(store, new EditText(document.Id, document.Revision, $"edit {i}", Edited(text, i)));
        }, TaskCreationOptions.LongRunning))]);
        Console.WriteLine($"{writers} writers at once: {writers * each / Stopwatch.GetElapsedTime(start).TotalSeconds:0} edits a second together");
    }

    private static long Room(string path)
    {
        using (var store = ShopDatabase.Open(path)) store.Stand();
        return new FileInfo(path).Length;
    }

    private static string Line(int i) => $"  - {{key: A{i.ToString(CultureInfo.InvariantCulture)}, open: 23 1/4}}  # as found\n";

    // One figure in the text, near its middle.
    private static string Edited(string text, int i)
    {
        int at = text.IndexOf('\n', text.Length / 2);
        return $"{text[..at]} # {i.ToString(CultureInfo.InvariantCulture)}{text[at..]}";
    }

    private static Document Taken(ShopDatabase store, DocumentChange change) => ((ChangeTaken)store.Make(Change.Of(Guid.NewGuid().ToString("n"), At, change))).Documents[0];

    private static void Many(string name, int count, Action<int> work, bool isSilent = false)
    {
        var times = new double[count];
        for (int i = 0; i < count; i++)
        {
            long start = Stopwatch.GetTimestamp();
            work(i);
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }
        double all = times.Sum();
        Array.Sort(times);
        if (!isSilent) Console.WriteLine($"{name}: {count / all * 1000:0} a second; p50 {times[count / 2]:0.00} ms, p99 {times[count * 99 / 100]:0.00} ms, max {times[^1]:0.0} ms");
    }

    private static void Time(string name, Action work)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        double first = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        Console.WriteLine($"{name}: {first:0.0} ms the first time");
    }
}
