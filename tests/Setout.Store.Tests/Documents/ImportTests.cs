using System.Collections.Immutable;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Shop.Texts;
using Setout.Store.Tests.Contract;

namespace Setout.Store.Tests.Documents;

/// <summary>Texts out into a folder and in from one.</summary>
public sealed class ImportTests : IDisposable
{
    private const string Piece = "# by hand\r\nsetout: 1\r\nname: chest   # odd\r\n", Other = "setout: 1\nname: box\n", Shop = "setout-shop: 1\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("setout-store-").FullName;
    private readonly ShopDatabase _store;

    public ImportTests() => _store = ShopDatabase.Open(Path.Combine(_folder, "setout.db"));

    public void Dispose()
    {
        _store.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private string Out => Path.Combine(_folder, "out");

    private static string LogOf(params LogEntry[] entries) => LogText.Head + string.Concat(entries.Select(FactText.Of));

    private static ImportPlan Plan(ShopDatabase store, params (string File, string Text)[] files) => ImportPlan.Of(store, [.. files.Select(f => new IncomingText(f.File, f.Text))]);

    private ChangeTaken Import(ImportPlan plan, string id) => Assert.IsType<ChangeTaken>(_store.Make(plan.ToChange(id, Changes.At, "a folder")));

    [Fact]
    public void Export_ThenImportElsewhere_BringsAllTextsAndTwiceChangesNothing()
    {
        _store.Do(new NewDocument(DocumentKind.Piece, "chest", Piece, "new"));
        _store.Do(new NewDocument(DocumentKind.Piece, "Größe 板", Other, "new"));
        _store.Do(new NewDocument(DocumentKind.Shop, "shop", Shop, "new"));
        _store.FactsOf("chest").Append(FactSamples.EachKind);
        var texts = ShopTexts.Of(_store);
        Assert.Equal($"2 piece files, 1 shop files, 1 logs with {FactSamples.EachKind.Length} entries", texts.ToString());
        TextFolder.Write(texts, Out);
        Assert.Equal(["Größe 板.yaml", "chest.log.yaml", "chest.yaml", "shop.yaml"], Directory.EnumerateFiles(Out).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));

        using var other = ShopDatabase.Open(Path.Combine(_folder, "other.db"));
        var plan = ImportPlan.Of(other, TextFolder.Read(Out));
        Assert.Equal("4 added, 0 changed, 0 left, 0 refused", plan.ToString());
        Change change = plan.ToChange("import", Changes.At, Out);
        Assert.Equal(FactSamples.EachKind.Length, Assert.IsType<ChangeTaken>(other.Make(change)).Facts);
        Assert.Equal(Piece, other.Find("chest")!.Text);
        Assert.Equal(FactSamples.EachKind.Select(FactSamples.Words), FactSamples.Words(other.FactsOf("chest").Read()));
        Assert.Equal(texts.Files, ShopTexts.Of(other).Files);

        string before = other.Words();
        var again = ImportPlan.Of(other, TextFolder.Read(Out));
        Assert.Equal("0 added, 0 changed, 4 left, 0 refused", again.ToString());
        Assert.True(again.IsEmpty);
        other.Make(again.ToChange("import again", Changes.At, Out));
        other.Make(change);
        Assert.Equal(before, other.Words());
    }

    [Fact]
    public void Import_OfTextsThatDiffer_IsOneStepThatIsTakenBackAtOnce()
    {
        Document chest = _store.New("chest", Piece);
        Document away = _store.Do(new PutAway(_store.New("old", Other).Id, 1));
        _store.FactsOf("chest").Append(FactSamples.ReadAt("a", 10));
        string before = string.Join('|', _store.Documents().Select(d => $"{d.Name} {d.IsPutAway} {_store.Find(d.Id)!.Text}"));
        ImportPlan plan = Plan(_store, ("chest.yaml", Piece + "# more\n"), ("old.yaml", Other), ("new.yaml", Other), ("chest.log.yaml", LogOf(FactSamples.ReadAt("a", 10), FactSamples.ReadAt("b", 5))));
        Assert.Equal("2 added, 2 changed, 0 left, 0 refused", plan.ToString());
        Assert.Equal(
            [
                ("chest.log.yaml", "1 of 2 entries come to the log of 'chest'; 1 of them are older than what stands there, and come after it all the same"),
                ("chest.yaml", "'chest' gets another text"), ("new.yaml", "'new' is new"), ("old.yaml", "'old' is the same and is taken back"),
            ], plan.Lines.Select(l => (l.File, l.Words)));
        Import(plan, "import");
        Assert.Equal(["a", "b"], _store.FactsOf("chest").Read().Entries.Select(e => e.Id));
        Assert.Equal("import of chest.yaml", _store.Find(chest.Id)!.Undo);
        Assert.Equal(["before import"], _store.History(chest.Id)[0].SavePoints);
        Assert.False(_store.Find(away.Id)!.Line.IsPutAway);

        Change back = ChangeUndo.Of(_store.Made("import")!, "back", Changes.At)!;
        Assert.IsType<ChangeTaken>(_store.Make(back));
        Assert.Equal(before, string.Join('|', _store.Documents().Where(d => d.Name != "new").Select(d => $"{d.Name} {d.IsPutAway} {_store.Find(d.Id)!.Text}")));
        Assert.True(_store.Find("new")!.Line.IsPutAway);
        // Facts stay: voiding is for them.
        Assert.Equal(2, _store.FactsOf("chest").Read().Entries.Length);
        // And once more: what was put away comes back.
        Assert.Equal("0 added, 3 changed, 1 left, 0 refused", Plan(_store, ("chest.yaml", Piece + "# more\n"), ("old.yaml", Other), ("new.yaml", Other), ("chest.log.yaml", LogOf(FactSamples.ReadAt("a", 10)))).ToString());
    }

    [Fact]
    public void Import_PlannedBeforeSomebodyWentOn_IsRefusedWhole()
    {
        Document chest = _store.New("chest", Piece);
        ImportPlan plan = Plan(_store, ("chest.yaml", Other), ("new.yaml", Other));
        _store.Edit(chest, "theirs");
        Assert.True(Changes.Refused(ChangeRefused.Further, _store.Make(plan.ToChange("import", Changes.At, "a folder"))).IsConflict);
        Assert.Null(_store.Find("new"));
        // Neither is an import taken back over what came since.
        Import(Plan(_store, ("chest.yaml", Other)), "import 2");
        _store.Edit(_store.Find(chest.Id)!, "later");
        Changes.Refused(ChangeRefused.Further, _store.Make(ChangeUndo.Of(_store.Made("import 2")!, "back", Changes.At)!));
        Assert.Equal("later", _store.Find(chest.Id)!.Text);
    }

    [Theory]
    [InlineData("notes.yaml", "hello: 1\n", "import.not-ours")]
    [InlineData("notes.yaml", "", "import.not-ours")]
    [InlineData("shop.yaml", Other, "document.name")]
    [InlineData("nul.yaml", Other, "document.name")]
    [InlineData("CHEST.yaml", Other, "import.name-taken")]
    [InlineData("chest.yaml", Shop, "import.name-taken")]
    [InlineData("shop.log.yaml", "setout-log: 1\nentries: []\n", "import.name-taken")]
    [InlineData("chest.log.yaml", "setout-log: 1\nentries:\n  - {id: a, at: 2026-05-04T09:40:00Z, void: b}\n", FactStoreException.IdTaken)]
    [InlineData("chest.log.yaml", "setout-log: 1\nentries:\n  - {id: c, at: 2026-05-04T09:4", "")]
    [InlineData("chest.log.yaml", "setout-log: 2\n", "text.version")]
    public void Import_OfAFileThatCannotBeTaken_SaysWhyAndTakesTheOthers(string file, string text, string code)
    {
        _store.New("chest", Piece);
        _store.Do(new NewDocument(DocumentKind.Shop, "shop", Shop, "new"));
        _store.FactsOf("chest").Append(FactSamples.ReadAt("a", 10));
        ImportPlan plan = Plan(_store, (file, text), ("good.yaml", Other));
        ImportLine refused = Assert.Single(plan.Lines, l => l.Act == ImportAct.Refused);
        Assert.Equal(file, refused.File);
        Assert.NotEmpty(refused.Words);
        if (code.Length > 0) Assert.Equal(code, refused.Fault!.Code);
        Import(plan, "import");
        Assert.NotNull(_store.Find("good"));
        Assert.Equal(Piece, _store.Find("chest")!.Text);
        Assert.Single(_store.FactsOf("chest").Read().Entries);
    }

    [Fact]
    public void Import_OfALogBeforeItsPiece_WaitsForIt()
    {
        Import(Plan(_store, ("chest.log.yaml", LogOf(FactSamples.ReadAt("a", 10)))), "log");
        Assert.Equal(["chest"], _store.Pieces());
        Import(Plan(_store, ("chest.yaml", Piece)), "piece");
        Assert.Single(_store.FactsOf(_store.Find("chest")!.Id).Read().Entries);
    }

    [Fact]
    public void Read_FolderWithAllSortsOfThings_TakesTextsAndSaysWhatIsNone()
    {
        string folder = Path.Combine(_folder, "in");
        Directory.CreateDirectory(Path.Combine(folder, "deeper.yaml"));
        File.WriteAllText(Path.Combine(folder, "a.yaml"), Other);
        File.WriteAllText(Path.Combine(folder, "marked.yaml"), "\uFEFF" + Other);
        File.WriteAllBytes(Path.Combine(folder, "latin.yaml"), [.. "setout: 1\nname: Gr"u8, 0xF6, .. "\n"u8]);
        File.WriteAllText(Path.Combine(folder, "empty.yaml"), "");
        File.WriteAllText(Path.Combine(folder, ".hidden.yaml"), Other);
        File.WriteAllText(Path.Combine(folder, "picture.svg"), Other);
        if (OperatingSystem.IsLinux())
        {
            using System.Diagnostics.Process pipe = System.Diagnostics.Process.Start("mkfifo", [Path.Combine(folder, "pipe.yaml")]);
            pipe.WaitForExit();
            File.CreateSymbolicLink(Path.Combine(folder, "link.yaml"), Path.Combine(folder, "pipe.yaml"));
            File.CreateSymbolicLink(Path.Combine(folder, "nowhere.yaml"), Path.Combine(folder, "nothing"));
        }
        ImmutableArray<IncomingText> read = TextFolder.Read(folder);
        Assert.Equal(["a.yaml", "marked.yaml"], read.Where(t => t.Text == Other).Select(t => t.File));
        Assert.Equal(OperatingSystem.IsLinux() ? 5 : 2, read.Count(t => t.Fault is not null));
        Assert.Equal(Other, Assert.Single(TextFolder.Read(Path.Combine(folder, "a.yaml"))).Text);
        Assert.Equal("import.not-there", Assert.Throws<FactStoreException>(() => TextFolder.Read(Path.Combine(folder, "b.yaml"))).Fault.Code);
    }

    [Fact]
    public void Write_WhereSomethingIs_IsRefused()
    {
        _store.New("chest", Piece);
        var texts = ShopTexts.Of(_store);
        Directory.CreateDirectory(Out);
        TextFolder.Write(texts, Out);
        File.WriteAllText(Path.Combine(_folder, "file"), "x");
        foreach (string taken in (string[])[Out, Path.Combine(_folder, "file")])
            Assert.Equal("export.not-empty", Assert.Throws<FactStoreException>(() => TextFolder.Write(texts, taken)).Fault.Code);
        Assert.Equal("export.not-written", Assert.Throws<FactStoreException>(() => TextFolder.Write(texts, Path.Combine(_folder, "file", "in"))).Fault.Code);
        Assert.Equal(["file", "out", "setout.db"], Directory.EnumerateFileSystemEntries(_folder).Select(f => Path.GetFileName(f)).Where(f => !f.StartsWith("setout.db-", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Export_OfLogsWhoseNamesNoFileCanHave_KeepsThemApart()
    {
        foreach (string name in (string[])["a/b", "a:b", "Chest", "chest", "..", "con"]) _store.FactsOf(name).Append(FactSamples.ReadAt("x", 1));
        _store.New("chest", Piece);
        TextFolder.Write(ShopTexts.Of(_store), Out);
        string[] files = [.. Directory.EnumerateFiles(Out, "*", SearchOption.AllDirectories).Select(f => Path.GetFileName(f))];
        Assert.Equal(7, files.Length);
        Assert.Equal(7, files.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.Contains("chest.log.yaml", files);
    }
}
