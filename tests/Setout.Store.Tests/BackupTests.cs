// Over 200 lines: backing up and restoring are tested by each other, on the same two folders.
using System.Globalization;
using Microsoft.Data.Sqlite;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Shop.Texts;
using Setout.Store.Tests.Contract;
using Setout.Store.Tests.Documents;

namespace Setout.Store.Tests;

/// <summary>Backups and restoring.</summary>
public sealed class BackupTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("setout-store-").FullName;
    private readonly TestClock _clock = new(new DateTimeOffset(2026, 5, 4, 9, 40, 0, TimeSpan.Zero));
    private readonly ShopDatabase _store;
    private readonly Backups _backups;

    public BackupTests()
    {
        _store = ShopDatabase.Open(Database, _clock);
        _backups = new(Database, _clock);
    }

    private string Database => Path.Combine(_folder, "setout.db");

    public void Dispose()
    {
        _store.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private Document Fill()
    {
        Document chest = _store.Edit(_store.New("chest", "setout: 1\nname: chest\n"), "setout: 1\nname: Größe \U0001FAB5\n");
        _store.Do(new NewDocument(DocumentKind.Shop, "shop", "setout-shop: 1\n", "new shop"));
        _store.Do(new PutAway(_store.New("old idea", "setout: 1\n").Id, 1));
        _store.FactsOf("chest").Append(FactSamples.EachKind);
        _store.FactsOf("log: alone").Append(FactSamples.ReadAt("x", 1));
        return chest;
    }

    [Fact]
    public void Make_WhileInUse_IsOneFileThatHoldsAll()
    {
        Fill();
        (BackupFile made, StoreCounts counts) = _backups.Make(BackupReason.Asked);
        Assert.Equal(Path.Combine(_folder, "backups", "setout-2026-05-04-094000-asked.db"), made.Path);
        Assert.Equal([made.Path], Directory.EnumerateFiles(_backups.Folder));
        Assert.Equal(new StoreCounts(3, 4, 5, 2, FactSamples.EachKind.Length + 1), counts);
        string elsewhere = Path.Combine(_folder, "elsewhere.db");
        File.Copy(made.Path, elsewhere);
        using var copy = ShopDatabase.Open(elsewhere, _clock);
        Assert.Equal(_store.Words(), copy.Words());
    }

    /// <summary>Read as any program that reads SQLite would.</summary>
    [Fact]
    public void Make_HoldsTheTextsInReadableForm()
    {
        Fill();
        string path = _backups.Make(BackupReason.Asked).File.Path;
        using SqliteConnection any = Plain.Open(path, SqliteOpenMode.ReadOnly, TimeSpan.FromSeconds(1));
        using SqliteCommand select = any.Command("SELECT file, text FROM texts ORDER BY file");
        var texts = select.Rows(row => (File: row.GetString(0), Text: row.GetString(1))).ToDictionary(t => t.File, t => t.Text);
        Assert.Equal(["chest.log.yaml", "chest.yaml", "log_ alone.log.yaml", "put-away/old idea.yaml", "shop.yaml"], texts.Keys.Order(StringComparer.Ordinal));
        Assert.Equal("setout: 1\nname: Größe \U0001FAB5\n", texts["chest.yaml"]);
        Assert.Equal(FactSamples.EachKind.Select(FactSamples.Words), FactSamples.Words(LogText.Read(texts["chest.log.yaml"]).Value!));
    }

    [Fact]
    public void Daily_OverManyDays_MakesOneADayAndKeepsTheLast()
    {
        Fill();
        BackupFile asked = _backups.Make(BackupReason.Asked).File;
        for (int day = 0; day < 12; day++)
        {
            Assert.NotNull(_backups.Daily());
            _clock.Now += TimeSpan.FromHours(3);
            Assert.Null(_backups.Daily());
            _clock.Now += TimeSpan.FromHours(21);
        }
        BackupFile[] daily = [.. _backups.All().Where(b => b.Reason == BackupReason.Daily)];
        Assert.Equal(Enumerable.Range(0, Backups.DailyKept).Select(i => new DateTime(2026, 5, 15, 9, 40, 0, DateTimeKind.Unspecified).AddDays(-i)), daily.Select(b => b.At));
        Assert.Contains(asked, _backups.All());
        Assert.All(_backups.All(), b => Assert.True(b.Bytes > 0));
    }

    [Fact]
    public void Make_SeveralInOneSecond_HaveNamesOfTheirOwn()
    {
        for (int i = 0; i < 3; i++) _backups.Make(BackupReason.Asked);
        Assert.Equal(3, _backups.All().Length);
        File.WriteAllText(Path.Combine(_backups.Folder, "setout-mine.db"), "not one of ours");
        Assert.Equal(3, _backups.All().Length);
    }

    [Fact]
    public void Make_OfADamagedDatabase_IsNoBackup()
    {
        Fill();
        _store.Dispose();
        byte[] bytes = File.ReadAllBytes(Database);
        bytes.AsSpan(4 * 4096, 4096).Fill(0xA5);
        File.WriteAllBytes(Database, bytes);
        Assert.Equal("store.damaged", Assert.Throws<FactStoreException>(() => _backups.Make(BackupReason.Asked)).Fault.Code);
        Assert.Empty(Directory.EnumerateFiles(_backups.Folder));
        Assert.Equal(bytes, File.ReadAllBytes(Database));
    }

    [Fact]
    public void Run_OverWhatIsThere_IsOneStepAndKeepsWhatWas()
    {
        Document chest = Fill();
        string path = _backups.Make(BackupReason.Asked).File.Path, then = _store.Words();
        Document later = _store.Edit(chest, "later");
        _store.New("newer");
        _store.FactsOf("chest").Append(FactSamples.ReadAt("later", 5));
        string before = _store.Words();
        Restored restored = Restoring.Run(Database, path, _clock);
        // The store that was open all the while sees it, and goes on.
        Assert.Equal(["chest", "old idea", "shop"], _store.Documents().Select(d => d.Name));
        Document now = _store.Find(chest.Id)!;
        Assert.Equal((chest.Text, chest.Line.Head), (now.Text, now.Line.Head));
        Assert.Equal(FactSamples.EachKind.Length, _store.FactsOf("chest").Read().Entries.Length);
        // What a page has seen of what is gone is not taken for what has come.
        Assert.Equal(later.Revision + 1, now.Revision);
        Assert.True(_store.Refused(ChangeRefused.Further, new EditText(chest.Id, later.Revision, "x", "x")).IsConflict);
        Assert.Equal("y", _store.Edit(now, "y").Text);
        Assert.Equal(0, _store.With(c => c.Number("SELECT count(*) FROM sqlite_schema WHERE name = 'texts'")));
        Assert.Equal("wal", _store.With(c => (string)c.Command("PRAGMA journal_mode").ExecuteScalar()!));
        // And back again.
        Restoring.Run(Database, restored.Kept!, _clock);
        Assert.Equal(["chest", "newer", "old idea", "shop"], _store.Documents().Select(d => d.Name));
        Assert.Equal("later", _store.Find(chest.Id)!.Text);
        Assert.NotEqual(then, before);
        Assert.False(File.Exists(Database + ".coming"));
    }

    [Fact]
    public void Run_NothingChangedSince_LeavesRevisions()
    {
        Fill();
        string path = _backups.Make(BackupReason.Asked).File.Path, before = _store.Words();
        Restoring.Run(Database, path, _clock);
        Assert.Equal(before, _store.Words());
    }

    [Fact]
    public void Run_OnAnEmptyMachine_BringsAll()
    {
        Fill();
        string path = _backups.Make(BackupReason.Asked).File.Path, other = Path.Combine(_folder, "other machine");
        Restored restored = DataFolder.Restore(other, path, _clock);
        Assert.Null(restored.Kept);
        using DataFolder folder = DataFolder.Open(other, _clock).Folder!;
        Assert.Equal(_store.Words(), folder.Database.Words());
    }

    [Theory]
    [InlineData(0, "store.no-database")]
    [InlineData(1, "store.damaged")]
    public void Run_OverADamagedDatabase_SetsItAsideAsItIs(int page, string code)
    {
        Fill();
        string path = _backups.Make(BackupReason.Asked).File.Path, words = _store.Words();
        _store.Dispose();
        byte[] bytes = File.ReadAllBytes(Database);
        if (page == 0) bytes.AsSpan(0, 4096).Fill(0xA5);
        else for (int p = 1; p < bytes.Length / 4096; p++) bytes.AsSpan(p * 4096, 4096).Fill(0xA5);
        File.WriteAllBytes(Database, bytes);
        Assert.Equal(code, Assert.Throws<FactStoreException>(() => ShopDatabase.Open(Database, _clock).Documents()).Fault.Code);
        Restored restored = Restoring.Run(Database, path, _clock);
        Assert.Equal(bytes, File.ReadAllBytes(restored.Kept!));
        using var again = ShopDatabase.Open(Database, _clock);
        Assert.Equal(words, again.Words());
    }

    [Theory]
    [InlineData("gone", "reading the backup")]
    [InlineData("text", "reading the backup")]
    [InlineData("foreign", "reading the backup")]
    [InlineData("newer", "reading the backup")]
    [InlineData("cut", "reading the backup")]
    [InlineData("itself", "reading the backup")]
    public void Run_OfWhatIsNoBackup_SaysWhereItFailedAndChangesNothing(string what, string step)
    {
        Fill();
        string good = _backups.Make(BackupReason.Asked).File.Path, path = what == "itself" ? Database : Path.Combine(_folder, "bad.db");
        if (what == "text") File.WriteAllText(path, "hello");
        if (what is "cut") File.WriteAllBytes(path, File.ReadAllBytes(good)[..(6 * 4096)]);
        if (what is "foreign" or "newer")
        {
            if (what == "newer") File.Copy(good, path);
            using SqliteConnection connection = Plain.Open(path, SqliteOpenMode.ReadWriteCreate, TimeSpan.FromSeconds(1));
            connection.Run(what == "newer" ? "PRAGMA user_version = 77" : "CREATE TABLE recipes (name TEXT)");
        }
        string before = _store.Words();
        FactStoreException failed = Assert.Throws<FactStoreException>(() => Restoring.Run(Database, path, _clock));
        Assert.Contains(step, failed.Fault.Words, StringComparison.Ordinal);
        Assert.Contains("stands", failed.Fault.Remedy, StringComparison.Ordinal);
        Assert.Equal(before, _store.Words());
        Assert.Single(_backups.All());
    }
}

/// <summary>A clock that stands until it is set.</summary>
internal sealed class TestClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => Now;

    public override string ToString() => Now.ToString(CultureInfo.InvariantCulture);
}
