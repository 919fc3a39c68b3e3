using System.Diagnostics;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Store.Tests.Documents;

namespace Setout.Store.Tests;

/// <summary>A backup that is put in the place of what is there while programs go on writing, or that is broken off.</summary>
public sealed class RestoreInUseTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("setout-store-").FullName;
    private readonly TestClock _clock = new(new DateTimeOffset(2026, 5, 4, 9, 40, 0, TimeSpan.Zero));

    private string Database => Path.Combine(_folder, "setout.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Restore_WhileOthersWrite_LosesNothingThatWasAcknowledged()
    {
        using var store = ShopDatabase.Open(Database, _clock);
        Document chest = store.New("chest", "setout: 1\nname: chest\n");
        string backup = new Backups(Database, _clock).Make(BackupReason.Asked).File.Path;
        var acknowledged = new List<string>();
        using var stop = new CancellationTokenSource();
        var begun = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var writing = Task.Run(() =>
        {
            for (int i = 0; !stop.IsCancellationRequested; i++)
            {
                string text = $"setout: 1\nname: chest\n# {i}\n";
                Document now = store.Find(chest.Id)!;
                if (store.Make(Change.Of($"w{i}", "2026-05-04T09:40:00Z", new EditText(now.Id, now.Revision, $"edit {i}", text))) is ChangeTaken) acknowledged.Add(text);
                if (i == 20) begun.SetResult();
            }
        });
        await begun.Task;
        Restored restored = await Task.Run(() => store.Restore(backup, _clock));
        await stop.CancelAsync();
        await writing;
        Assert.NotNull(restored.Kept);
        using var kept = ShopDatabase.Open(restored.Kept, _clock);
        HashSet<string> there = [.. TextsOf(store, chest.Id), .. TextsOf(kept, chest.Id)];
        Assert.True(acknowledged.Count > 20);
        Assert.All(acknowledged, text => Assert.Contains(text, there));
        Assert.Null(store.With(Health.Fault));
    }

    [Fact]
    public void Restore_OfFewerChanges_GivesAStandThatNobodyHasSeen()
    {
        using var store = ShopDatabase.Open(Database, _clock);
        string backup = new Backups(Database, _clock).Make(BackupReason.Asked).File.Path;
        store.New("chest");
        StoreStand before = store.Stand();
        store.Restore(backup, _clock);
        Assert.Empty(store.Documents());
        Assert.True(store.Stand().Change > before.Change);
    }

    /// <summary>Killed at one moment after another: what stands is all of the one or all of the other, and restoring again ends well.</summary>
    [Fact]
    public async Task Restore_OfAProgramThatIsKilled_LeavesAllOfTheOneOrAllOfTheOther()
    {
        string backup = Path.Combine(_folder, "there.db");
        string[] outcomes = ["old", "new"];
        var seen = new HashSet<string>();
        for (int moment = 0; moment < 12; moment++)
        {
            string folder = Path.Combine(_folder, $"{moment}"), database = Path.Combine(folder, "setout.db");
            Directory.CreateDirectory(folder);
            using (var store = ShopDatabase.Open(database, _clock))
            {
                Document chest = store.New("chest", string.Concat(Enumerable.Range(0, 4000).Select(i => $"# line {i}\n")));
                for (int i = 0; i < 5; i++) chest = store.Edit(chest, string.Concat(Enumerable.Range(0, 4000).Select(l => $"# line {l * (i + 7)}\n")));
                if (moment == 0) File.Copy(new Backups(database, _clock).Make(BackupReason.Asked).File.Path, backup);
                store.Edit(chest, "later");
            }
            using Process program = OtherProgram.Start("restore", database, backup, 0);
            Assert.Equal("ready", await program.StandardOutput.ReadLineAsync());
            await program.StandardInput.WriteLineAsync();
            await program.StandardInput.FlushAsync();
            // Until a file that a step of it makes is there, or it is done: so each moment is another step of the work.
            int spins = moment * moment * 40;
            for (int i = 0; i < spins && !program.HasExited; i++) _ = Directory.GetFiles(folder).Length;
            program.Kill();
            await program.WaitForExitAsync();
            using (var store = ShopDatabase.Open(database, _clock))
            {
                Assert.Null(store.With(Health.Fault));
                Document chest = store.Find("chest")!;
                seen.Add(chest.Text == "later" ? "old" : "new");
                // All of it: the states of the one, or of the other.
                Assert.Equal(chest.Text == "later" ? 7 : 6, store.History(chest.Id).Length);
                Assert.All(store.History(chest.Id), h => Assert.NotNull(store.TextOf(chest.Id, h.State.Number)));
            }
            Restoring.Run(database, backup, _clock);
            using var again = ShopDatabase.Open(database, _clock);
            Assert.Equal(6, again.History(again.Find("chest")!.Id).Length);
            Assert.False(File.Exists(database + ".coming"));
        }
        Assert.True(seen.IsSubsetOf(outcomes), string.Join(", ", seen));
    }

    [Fact]
    public void Share_BesideAProgramThatHasTheFolder_AppendsAndIsSeenThere()
    {
        using DataFolder folder = DataFolder.Open(_folder, _clock).Folder!;
        Document chest = folder.Database.New("chest");
        StoreStand before = folder.Database.Stand();
        Assert.Equal(1, DataFolder.Share(_folder, _clock, store => store.FactsOf(chest.Id).Append(Contract.FactSamples.ReadAt("x", 1))));
        Assert.Single(folder.Database.FactsOf(chest.Id).Read().Entries);
        Assert.NotEqual(before, folder.Database.Stand());
    }

    [Fact]
    public void Share_WhereTheStoreIsOfAnotherVersion_IsRefusedWhileSomebodyHasIt()
    {
        using DataFolder folder = DataFolder.Open(_folder, _clock).Folder!;
        folder.Announce("http://localhost:5280");
        folder.Database.With(connection =>
        {
            connection.Run($"PRAGMA user_version = {ShopDatabase.Version + 1}");
            return 0;
        });
        FactStoreException refused = Assert.Throws<FactStoreException>(() => DataFolder.Share(_folder, _clock, store => 0));
        Assert.Equal("store.in-use", refused.Fault.Code);
        Assert.Contains("http://localhost:5280", refused.Fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void LookInto_ABackup_TellsWhatWouldChangeAndLeavesNothing()
    {
        using var store = ShopDatabase.Open(Database, _clock);
        Document chest = store.New("chest", "setout: 1\n");
        store.New("old idea");
        store.New("alike");
        string backup = new Backups(Database, _clock).Make(BackupReason.Asked).File.Path;
        store.Edit(chest, "setout: 1\n# later\n");
        store.FactsOf(chest.Id).Append(Contract.FactSamples.ReadAt("x", 1));
        store.New("newer");
        string scratch = Path.Combine(_folder, "look");
        string[] lines = Restoring.LookInto(scratch, backup, _clock, (there, counts) => StoreDifference.Of(store, there).Select(l => $"{l.Name}: {l.Act}: {l.Words}").ToArray());
        Assert.Equal(["alike: Stays: is the same", "chest: Changes: gets the text after: new piece; 1 entry of its log is not in it", "newer: Goes: is not in it", "old idea: Stays: is the same"], lines);
        Assert.DoesNotContain(Directory.EnumerateFiles(_folder), f => Path.GetFileName(f).StartsWith("look", StringComparison.Ordinal));
        Assert.Throws<FactStoreException>(() => Restoring.LookInto(scratch, Path.Combine(_folder, "none.db"), _clock, (there, counts) => 0));
        File.WriteAllText(Path.Combine(_folder, "text.db"), "no database at all, but long enough to be taken for one by its length alone ................................................");
        Assert.Throws<FactStoreException>(() => Restoring.LookInto(scratch, Path.Combine(_folder, "text.db"), _clock, (there, counts) => 0));
        Assert.DoesNotContain(Directory.EnumerateFiles(_folder), f => Path.GetFileName(f).StartsWith("look", StringComparison.Ordinal));
    }

    [Fact]
    public void Archive_OfAllTexts_ReadsBackAsWhatWasExported()
    {
        using var store = ShopDatabase.Open(Database, _clock);
        store.New("chest", "setout: 1\nname: Größe\n");
        store.Do(new PutAway(store.New("old idea", "setout: 1\n").Id, 1));
        store.FactsOf("chest").Append(Contract.FactSamples.EachKind);
        byte[] archive = TextArchive.Write(ShopTexts.Of(store), _clock.Now);
        using var stream = new MemoryStream(archive);
        IncomingText[] texts = [.. TextArchive.Read(stream)];
        // As with a folder, what was put away is passed over.
        Assert.Equal(["chest.log.yaml", "chest.yaml"], texts.Select(t => t.File));
        Assert.True(ImportPlan.Of(store, [.. texts]).IsEmpty);
        Assert.Throws<FactStoreException>(() => TextArchive.Read(new MemoryStream(archive[..^30])));
    }

    private static IEnumerable<string> TextsOf(ShopDatabase store, DocumentId id) => store.History(id).Select(h => store.TextOf(id, h.State.Number)!);
}
