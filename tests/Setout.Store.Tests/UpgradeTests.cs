using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Store.Tests.Contract;
using Setout.Store.Tests.Documents;
using Setout.Testing;

namespace Setout.Store.Tests;

/// <summary>From the versions before: a stored file of each, made by the steps that were released then.</summary>
public sealed class UpgradeTests : IDisposable
{
    private static readonly string[] s_pieces = ["Chest", "Größe 板", "chest", "jar cabinet"];

    private readonly string _folder = Directory.CreateTempSubdirectory("setout-store-").FullName;

    private string Database => Path.Combine(_folder, "setout.db");

    public UpgradeTests() => File.Copy(Repository.PathOf("tests/Setout.Store.Tests/data/version-1.db"), Database);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Open_StoredFileOfVersion1_BringsAllFactsAlong()
    {
        using (var store = ShopDatabase.Open(Database))
        {
            Assert.Equal(s_pieces, store.Pieces());
            foreach (string piece in s_pieces) Assert.Equal(FactSamples.EachKind.Select(FactSamples.Words), FactSamples.Words(store.FactsOf(piece).Read()));
            Assert.Empty(store.Documents());
            // They take part from here on.
            Document chest = store.New("chest");
            Assert.Equal(FactSamples.EachKind.Length, store.FactsOf(chest.Id).Read().Entries.Length);
            Assert.Equal(ShopDatabase.Version, store.With(c => c.Number("PRAGMA user_version")));
        }
        using var again = ShopDatabase.Open(Database);
        Assert.Equal(s_pieces, again.Pieces());
        Assert.Single(new Backups(Database, TimeProvider.System).All());
    }

    [Fact]
    public void Open_StoredFileOfVersion1_IsBackedUpBefore()
    {
        byte[] before = File.ReadAllBytes(Database);
        ShopDatabase.Open(Database).Dispose();
        BackupFile backup = Assert.Single(new Backups(Database, TimeProvider.System).All());
        Assert.Equal(BackupReason.Upgrade, backup.Reason);
        using (SqliteConnection old = Plain.Open(backup.Path, SqliteOpenMode.ReadOnly, TimeSpan.FromSeconds(1)))
        {
            Assert.Equal(1, old.Number("PRAGMA user_version"));
            Assert.Equal(4 * FactSamples.EachKind.Length, StoreCounts.Of(old).Facts);
            Assert.Equal(4, old.Number("SELECT count(*) FROM texts WHERE file LIKE '%.log.yaml'"));
        }
        // And back: what it was is brought up once more.
        Restored restored = Restoring.Run(Database, backup.Path, TimeProvider.System);
        Assert.Equal(4 * FactSamples.EachKind.Length, restored.Counts.Facts);
        Assert.NotEqual(before, File.ReadAllBytes(Database));
    }

    [Theory]
    [InlineData("INSERT INTO nowhere VALUES (1)")]
    [InlineData("DROP TRIGGER facts_not_taken_out; DELETE FROM facts WHERE place = 3")]
    [InlineData("PRAGMA defer_foreign_keys = ON; DROP TRIGGER pieces_not_taken_out; DELETE FROM pieces WHERE number = 2")]
    public void Open_UpgradeThatFailsOrLosesSomething_LeavesVersion1AndSaysHowToGoOn(string step)
    {
        byte[] before = File.ReadAllBytes(Database);
        ImmutableArray<string> steps = [.. Schema.Steps, step];
        FactStoreException failed = Assert.Throws<FactStoreException>(() => ShopDatabase.Open(Database, steps, ShopDatabase.Patience));
        Assert.Equal("store.no-upgrade", failed.Fault.Code);
        BackupFile backup = Assert.Single(new Backups(Database, TimeProvider.System).All());
        Assert.Contains(backup.Path, failed.Fault.Remedy, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(Database));
        using var store = ShopDatabase.Open(Database);
        Assert.Equal(s_pieces, store.Pieces());
    }

    [Fact]
    public void Open_WhereNoBackupCanBeMade_ChangesNothing()
    {
        byte[] before = File.ReadAllBytes(Database);
        File.WriteAllText(Path.Combine(_folder, "backups"), "in the way");
        Assert.Equal("store.no-backup", Assert.Throws<FactStoreException>(() => ShopDatabase.Open(Database)).Fault.Code);
        Assert.Equal(before, File.ReadAllBytes(Database));
    }

    [Fact]
    public async Task Open_ByManyAtOnce_UpgradesOnce()
    {
        using var start = new Barrier(4);
        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Factory.StartNew(() =>
        {
            start.SignalAndWait();
            using var store = ShopDatabase.Open(Database);
            Assert.Equal(s_pieces, store.Pieces());
        }, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default)));
        Assert.Single(new Backups(Database, TimeProvider.System).All());
    }

    [Fact]
    public void OpenToRead_NewerDatabase_ReadsAndExportsAndChangesNothing()
    {
        string words;
        using (var store = ShopDatabase.Open(Database, [.. Schema.Steps, "ALTER TABLE documents ADD COLUMN colour TEXT; CREATE TABLE colours (name TEXT) STRICT"], ShopDatabase.Patience))
        {
            store.Edit(store.New("chest"), "b");
            words = store.Words();
        }
        Assert.Equal("store.newer", Assert.Throws<FactStoreException>(() => ShopDatabase.Open(Database)).Fault.Code);
        byte[] before = File.ReadAllBytes(Database);
        using (var store = ShopDatabase.OpenToRead(Database))
        {
            Assert.Equal(words, store.Words());
            var texts = ShopTexts.Of(store);
            Assert.Equal((1, 4), (texts.Pieces, texts.Logs));
            TextFolder.Write(texts, Path.Combine(_folder, "out"));
            Assert.Equal("store.read-only", Assert.Throws<FactStoreException>(() => store.New("other")).Fault.Code);
            Assert.Equal("store.read-only", Assert.Throws<FactStoreException>(() => store.FactsOf("chest").Append(FactSamples.ReadAt("new", 1))).Fault.Code);
        }
        Assert.Equal(before, File.ReadAllBytes(Database));
    }

    /// <summary>A newer program was killed: its last changes stand in the log beside the file, and its version with them.</summary>
    [Fact]
    public void Open_NewerDatabaseWithALogLeftBeside_WritesNothing()
    {
        string left = Path.Combine(_folder, "left.db");
        using (var store = ShopDatabase.Open(Database, [.. Schema.Steps, "CREATE TABLE colours (name TEXT) STRICT"], ShopDatabase.Patience))
        {
            store.New("chest");
            foreach (string end in (string[])["", "-wal"]) File.Copy(Database + end, left + end);
        }
        byte[][] before = [File.ReadAllBytes(left), File.ReadAllBytes(left + "-wal")];
        Assert.NotEmpty(before[1]);
        Assert.Equal("store.newer", Assert.Throws<FactStoreException>(() => ShopDatabase.Open(left)).Fault.Code);
        Assert.Equal(before, [File.ReadAllBytes(left), File.ReadAllBytes(left + "-wal")]);
        using var read = ShopDatabase.OpenToRead(left);
        Assert.Equal("chest", Assert.Single(read.Documents()).Name);
    }

    [Fact]
    public void OpenToRead_OlderOrNoDatabase_IsRefused()
    {
        byte[] before = File.ReadAllBytes(Database);
        Assert.Equal("store.older", Assert.Throws<FactStoreException>(() => ShopDatabase.OpenToRead(Database)).Fault.Code);
        Assert.Equal(before, File.ReadAllBytes(Database));
        Assert.Equal("store.not-reached", Assert.Throws<FactStoreException>(() => ShopDatabase.OpenToRead(Database + "x")).Fault.Code);
        Assert.False(File.Exists(Database + "x"));
    }
}
