// Over 200 lines: each thing that can be done to one document.
using Setout.Shop.Documents;

namespace Setout.Store.Tests.Documents;

/// <summary>States, head and revision of one document.</summary>
public sealed class DocumentTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("setout-store-").FullName;
    private readonly ShopDatabase _store;

    public DocumentTests() => _store = ShopDatabase.Open(Path.Combine(_folder, "setout.db"));

    public void Dispose()
    {
        _store.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Theory]
    [InlineData("")]
    [InlineData("setout: 1\r\nname: x\n# comment \U0001FAB5\n\n")]
    [InlineData("\uFEFFnot yaml: [")]
    public void NewDocument_AnyText_ReadsBackSignForSign(string text)
    {
        Document made = _store.Do(new NewDocument(DocumentKind.Piece, "Größe 板", text, "new piece"));
        using var again = ShopDatabase.Open(Path.Combine(_folder, "setout.db"));
        foreach (Document? read in (Document?[])[made, _store.Find(made.Id), _store.Find("Größe 板"), again.Find(made.Id)])
        {
            Assert.Equal(text, read!.Text);
            Assert.Equal((1, "new piece", Changes.At, false), (read.Revision, read.Line.Head.Step, read.Line.ChangedAt, read.Line.IsPutAway));
            Assert.Null(read.Undo);
            Assert.Null(read.Redo);
        }
        Assert.Equal([made.Line], _store.Documents());
    }

    [Fact]
    public void Edits_UndoneAndRedone_WalkTheTree()
    {
        Document a = _store.New(), b = _store.Edit(a, "b"), c = _store.Edit(b, "c");
        Assert.Equal((3, "c", "to c", null), (c.Revision, c.Text, c.Undo, c.Redo));
        Document back = _store.Do(new UndoStep(c.Id, c.Revision));
        Assert.Equal((4, "b", "to b", "to c"), (back.Revision, back.Text, back.Undo, back.Redo));
        back = _store.Do(new UndoStep(c.Id, back.Revision));
        Assert.Equal((5, "a", null, "to b"), (back.Revision, back.Text, back.Undo, back.Redo));
        Document on = _store.Do(new RedoStep(c.Id, back.Revision));
        on = _store.Do(new RedoStep(c.Id, on.Revision));
        Assert.Equal((7, "c", "to c", null), (on.Revision, on.Text, on.Undo, on.Redo));
        Assert.Equal(c.Line.Head, on.Line.Head);
        Assert.Equal(["new piece", "to b", "to c"], _store.History(c.Id).Select(h => h.State.Step));
    }

    [Fact]
    public void Redo_WhereItForks_GoesToTheChildLastMadeOrLastUndoneFrom()
    {
        Document a = _store.New();
        Document x = _store.Edit(a, "x");
        Document at = _store.Do(new UndoStep(a.Id, x.Revision));
        Document y = _store.Edit(at, "y");
        at = _store.Do(new UndoStep(a.Id, y.Revision));
        Assert.Equal("to y", at.Redo);
        // Back to x by another way: it is then the one last undone from.
        at = _store.Do(new GoBack(a.Id, at.Revision, x.Line.Head.Number));
        Assert.Equal(("x", "back to 'to x'"), (at.Text, at.Undo));
        at = _store.Do(new UndoStep(a.Id, at.Revision));
        Assert.Equal(("a", "back to 'to x'"), (at.Text, at.Redo));
        Assert.Equal(4, _store.History(a.Id).Length);
    }

    [Fact]
    public void Change_OnAnOlderRevision_IsRefusedWithWhatStandsNow()
    {
        Document a = _store.New(), b = _store.Edit(a, "b");
        foreach (DocumentChange change in (DocumentChange[])[new EditText(a.Id, 1, "mine", "mine"), new UndoStep(a.Id, 1), new RedoStep(a.Id, 1), new GoBack(a.Id, 1, a.Line.Head.Number), new EditText(a.Id, 0, "", "x"), new EditText(a.Id, 3, "", "x")])
        {
            ChangeRefused refused = _store.Refused(ChangeRefused.Further, change);
            Assert.True(refused.IsConflict);
            Assert.Equal(Changes.Words(b), Changes.Words(refused.Theirs!));
            Assert.NotEmpty(refused.Fault.Remedy);
        }
        Assert.Equal(Changes.Words(b), Changes.Words(_store.Find(a.Id)!));
        Assert.Equal(2, _store.History(a.Id).Length);
    }

    [Fact]
    public void Edit_AfterARenameThatItsMakerHasNotSeen_IsTaken()
    {
        Document a = _store.New();
        _store.Do(new Rename(a.Id, 1, "box"));
        _store.Do(new SavePoint(a.Id, 2, "fine"));
        Document b = _store.Edit(a, "b");
        Assert.Equal((4, "box", "b"), (b.Revision, b.Name, b.Text));
        // But who renames has to have seen the name.
        Assert.Equal("box", _store.Refused(ChangeRefused.Further, new Rename(a.Id, 1, "trunk")).Theirs!.Name);
        _store.Refused(ChangeRefused.Further, new PutAway(a.Id, 1));
        Assert.Equal("trunk", _store.Do(new Rename(a.Id, 3, "trunk")).Name);
    }

    [Fact]
    public void Edit_SameText_ChangesNothing()
    {
        Document a = _store.New();
        Assert.Equal(Changes.Words(a), Changes.Words(_store.Edit(a, "a")));
        Assert.Equal(1, _store.Find(a.Id)!.Revision);
        Assert.Single(_store.History(a.Id));
    }

    [Fact]
    public void UndoAndRedo_WhereThereIsNone_AreRefused()
    {
        Document a = _store.New();
        _store.Refused("document.nothing-to-undo", new UndoStep(a.Id, 1));
        _store.Refused("document.nothing-to-redo", new RedoStep(a.Id, 1));
        _store.Refused("document.no-state", new GoBack(a.Id, 1, 77));
        _store.Refused("document.no-state", new GoBack(a.Id, 1, _store.New("other").Line.Head.Number));
        _store.Refused("document.unknown", new UndoStep(new("d0"), 1));
        Assert.Equal(Changes.Words(a), Changes.Words(_store.Find(a.Id)!));
    }

    [Fact]
    public void SavePoint_NamesWhatWasSeenAndLeadsBack()
    {
        Document a = _store.New(), b = _store.Edit(a, "b");
        // Somebody else went on; what is named is what stood in revision 1.
        Assert.Equal((3, "b"), (_store.Do(new SavePoint(a.Id, 1, "as begun")).Revision, _store.Find(a.Id)!.Text));
        _store.Do(new SavePoint(a.Id, 3, "with doors"));
        Assert.Equal(4, _store.Do(new SavePoint(a.Id, 4, "with doors")).Revision);
        _store.Refused("document.save-point", new SavePoint(a.Id, 4, " "));
        Assert.Equal([["as begun"], ["with doors"]], _store.History(a.Id).Select(h => h.SavePoints.ToArray()));
        Document back = _store.Do(new GoBack(a.Id, 4, a.Line.Head.Number));
        Assert.Equal(("a", "back to 'as begun'", b.Line.Head.Number), (back.Text, back.Undo, back.Line.Head.Parent));
        Assert.Equal("b", _store.Do(new UndoStep(a.Id, 5)).Text);
    }

    [Fact]
    public void PutAway_KeepsAllAndIsTakenBack()
    {
        Document a = _store.New(), b = _store.Edit(a, "b");
        Document away = _store.Do(new PutAway(a.Id, 2));
        Assert.Equal((true, 3, "b"), (away.Line.IsPutAway, away.Revision, away.Text));
        Assert.Equal(3, _store.Do(new PutAway(a.Id, 3)).Revision);
        foreach (DocumentChange change in (DocumentChange[])[new EditText(a.Id, 3, "x", "x"), new UndoStep(a.Id, 3), new Rename(a.Id, 3, "box")]) _store.Refused("document.put-away", change);
        Assert.True(Assert.Single(_store.Documents()).IsPutAway);
        // Its name stays its own.
        Assert.Contains("put away", _store.Refused("document.name-taken", new NewDocument(DocumentKind.Piece, "Chest", "", "new")).Fault.Words, StringComparison.Ordinal);
        Document back = _store.Do(new TakeBack(a.Id, 3));
        Assert.Equal((false, 4, "b", "to b"), (back.Line.IsPutAway, back.Revision, back.Text, back.Undo));
        Assert.Equal(b.Line.Head, back.Line.Head);
    }

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData(".hidden")]
    [InlineData("a/b")]
    [InlineData("a\\b")]
    [InlineData("a:b")]
    [InlineData("tab\t")]
    [InlineData("trailing ")]
    [InlineData("chest.log")]
    [InlineData("Shop")]
    [InlineData("nul")]
    [InlineData("LPT1.x")]
    [InlineData("right to left \u202E")]
    public void Names_ThatNoFileCouldHave_AreRefused(string name)
    {
        Document a = _store.New();
        _store.Refused("document.name", new NewDocument(DocumentKind.Piece, name, "", "new"));
        _store.Refused("document.name", new Rename(a.Id, 1, name));
        Assert.Equal(["chest"], _store.Documents().Select(d => d.Name));
        Assert.Null(DocumentName.Fault(DocumentKind.Shop, DocumentName.AsFile(name)));
    }

    [Fact]
    public void Names_ThatDifferInCaseOnly_AreOne()
    {
        Document a = _store.New("Größe");
        Assert.Equal("Größe", _store.Refused("document.name-taken", new NewDocument(DocumentKind.Piece, "GRÖßE", "", "new")).Theirs!.Name);
        // Its own name may be written otherwise.
        Assert.Equal("GRÖßE", _store.Do(new Rename(a.Id, 1, "GRÖßE")).Name);
        Assert.Equal("shop", _store.Do(new NewDocument(DocumentKind.Shop, "shop", "", "new")).Name);
    }

    // Told here and not in attributes, which would keep them as UTF-8.
    [Fact]
    public void Texts_ThatNoFileCanHold_AreRefused()
    {
        Document a = _store.New();
        foreach (string text in (string[])["half \uD83E of it", "\uDC00", "ends \uD83E", "nought \0"])
        {
            _store.Refused("text.half-letter", new EditText(a.Id, 1, "x", text));
            _store.Refused("text.half-letter", new NewDocument(DocumentKind.Piece, "b", text, "x"));
            _store.Refused("change.words", new EditText(a.Id, 1, text, "x"));
            _store.Refused("document.name", new Rename(a.Id, 1, text));
            Changes.Refused("change.id", _store.Try(new UndoStep(a.Id, 1), text));
        }
        Assert.Equal("a", _store.Find(a.Id)!.Text);
    }

    [Fact]
    public void Texts_LargerThanCanBeRead_AreRefused() => _store.Refused("text.too-large", new NewDocument(DocumentKind.Piece, "b", new('x', (8 * 1024 * 1024) + 1), "x"));

    [Fact]
    public void Find_RevisionOfBefore_IsAsItStood()
    {
        Document a = _store.New(), b = _store.Edit(a, "b"), c = _store.Do(new UndoStep(a.Id, 2));
        _store.Do(new Rename(a.Id, 3, "box"));
        _store.Edit(_store.Find(a.Id)!, "d");
        foreach (Document then in (Document[])[a, b, c]) Assert.Equal(Changes.Words(then), Changes.Words(_store.Find(a.Id, then.Revision)!));
        Assert.Null(_store.Find(a.Id, 6));
        Assert.Null(_store.Find(a.Id, 0));
        Assert.Null(_store.Find(new DocumentId("d0"), 1));
    }

    [Fact]
    public void Stand_ChangesWithEachChangeAndEachFact()
    {
        StoreStand before = _store.Stand();
        Document a = _store.New();
        StoreStand made = _store.Stand();
        Assert.NotEqual(before, made);
        _store.Find(a.Id);
        _store.Refused("document.nothing-to-undo", new UndoStep(a.Id, 1));
        Assert.Equal(made, _store.Stand());
        _store.FactsOf(a.Id).Append(Contract.FactSamples.ReadAt("x", 1));
        Assert.NotEqual(made, _store.Stand());
    }
}
