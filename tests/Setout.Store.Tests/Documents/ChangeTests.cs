using System.Collections.Immutable;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Shop.Texts;
using Setout.Store.Tests.Contract;

namespace Setout.Store.Tests.Documents;

/// <summary>Changes as a whole: made once, made of several documents and logs at once.</summary>
public sealed class ChangeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("setout-store-").FullName;
    private readonly ShopDatabase _store;

    public ChangeTests() => _store = ShopDatabase.Open(Path.Combine(_folder, "setout.db"));

    public void Dispose()
    {
        _store.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void Change_SentAgain_AnswersAsTheFirstTimeAndChangesNothing()
    {
        var answers = new List<(Change Change, string Words)>();
        Document Make(string id, DocumentChange change)
        {
            var whole = Change.Of(id, Changes.At, change);
            Document made = Assert.Single(Assert.IsType<ChangeTaken>(_store.Make(whole)).Documents);
            answers.Add((whole, Changes.Words(made)));
            return made;
        }
        Document a = Make("c1", new NewDocument(DocumentKind.Piece, "chest", "a", "new"));
        Make("c2", new EditText(a.Id, 1, "b", "b"));
        Make("c3", new UndoStep(a.Id, 2));
        Make("c4", new EditText(a.Id, 3, "nothing", "a"));
        Make("c5", new RedoStep(a.Id, 3));
        Make("c6", new SavePoint(a.Id, 4, "fine"));
        Make("c7", new Rename(a.Id, 5, "box"));
        Make("c8", new PutAway(a.Id, 6));
        Make("c9", new TakeBack(a.Id, 7));
        Make("c10", new GoBack(a.Id, 8, a.Line.Head.Number));
        string before = _store.Words();
        foreach ((Change change, string words) in answers)
        {
            // At another time: whoever sends again does so later.
            ChangeTaken again = Assert.IsType<ChangeTaken>(_store.Make(change with { At = "2026-05-05T09:40:00Z" }));
            Assert.Equal(words, Changes.Words(Assert.Single(again.Documents)));
        }
        Assert.Equal(before, _store.Words());
        Assert.Equal(9, _store.Find(a.Id)!.Revision);
    }

    [Fact]
    public void Change_OtherOneOfTheSameId_IsRefused()
    {
        Document a = _store.New();
        _store.Do(new EditText(a.Id, 1, "b", "b"), "same");
        foreach (DocumentChange other in (DocumentChange[])[new EditText(a.Id, 1, "b", "c"), new EditText(a.Id, 2, "b", "b"), new UndoStep(a.Id, 2), new NewDocument(DocumentKind.Piece, "new", "b", "b")])
            Changes.Refused("change.id-taken", _store.Try(other, "same"));
        Assert.Equal("b", _store.Find(a.Id)!.Text);
        Assert.Single(_store.Documents());
    }

    [Fact]
    public void Change_RefusedOnce_CanBeTakenLater()
    {
        Document a = _store.New();
        Changes.Refused("document.nothing-to-redo", _store.Try(new RedoStep(a.Id, 1), "again"));
        Assert.Null(_store.Made("again"));
        _store.Do(new EditText(a.Id, 1, "b", "b"), "again");
    }

    [Theory]
    [InlineData("", Changes.At, "x", "change.id")]
    [InlineData("c", "today", "x", "change.time")]
    [InlineData("c", Changes.At, "a\u001b", "change.words")]
    public void Change_ThatNoStoreCouldTake_IsRefused(string id, string at, string words, string code) =>
        Changes.Refused(code, _store.Make(new(id, at, words) { Documents = [new NewDocument(DocumentKind.Piece, "a", "", "x")] }));

    [Fact]
    public void Change_OfSeveralDocumentsAndLogs_IsMadeWhole()
    {
        Document chest = _store.New("chest"), box = _store.New("box");
        var change = new Change("run 3", Changes.At, "run 3 cut")
        {
            Documents = [new SavePoint(chest.Id, 1, "before run 3"), new EditText(chest.Id, 1, "b", "b"), new NewDocument(DocumentKind.Shop, "shop", "s", "new shop"), new PutAway(box.Id, 1)],
            Facts = [LogAddition.To(chest.Id, FactSamples.ReadAt("x", 1), FactSamples.ReadAt("y", 2)), LogAddition.To("box", FactSamples.ReadAt("x", 3)), LogAddition.To("not yet there", FactSamples.ReadAt("z", 4))],
        };
        ChangeTaken taken = Assert.IsType<ChangeTaken>(_store.Make(change));
        Assert.Equal([("chest", 2), ("chest", 3), ("shop", 1), ("box", 2)], taken.Documents.Select(d => (d.Name, d.Revision)));
        Assert.Equal(4, taken.Facts);
        Assert.Equal(["box", "chest", "not yet there"], _store.Pieces());
        Assert.Equal(["x", "y"], _store.FactsOf("chest").Read().Entries.Select(e => e.Id));
        string before = _store.Words();
        ChangeTaken again = Assert.IsType<ChangeTaken>(_store.Make(change));
        Assert.Equal((taken.Facts, string.Join('|', taken.Documents.Select(Changes.Words))), (again.Facts, string.Join('|', again.Documents.Select(Changes.Words))));
        Assert.Equal(before, _store.Words());
        ChangeRecord made = _store.Made("run 3")!;
        Assert.Equal(("run 3 cut", Changes.At, 4), (made.Words, made.At, made.Facts));
        Assert.Equal([("chest", 1, 3), ("box", 1, 2), ("shop", 0, 1)], made.Documents.Select(d => (d.After.Name, d.Before?.Revision ?? 0, d.After.Revision)));
    }

    [Fact]
    public void Facts_OfSeveralPiecesWithoutADocument_AreAppendedTogetherAndOnce()
    {
        var change = new Change("run 4", Changes.At, "run 4 cut") { Facts = [LogAddition.To("chest", FactSamples.ReadAt("x", 1)), LogAddition.To("box", FactSamples.ReadAt("x", 2))] };
        Assert.Equal(2, Assert.IsType<ChangeTaken>(_store.Make(change)).Facts);
        Assert.Equal(2, Assert.IsType<ChangeTaken>(_store.Make(change)).Facts);
        Assert.Equal(0, Assert.IsType<ChangeTaken>(_store.Make(change with { Id = "run 4 again" })).Facts);
        Assert.Equal(["box", "chest"], _store.Pieces());
        Assert.Single(_store.FactsOf("box").Read().Entries);
    }

    public static TheoryData<string> Spoilers => [.. s_spoilers.Keys];

    private static readonly Dictionary<string, Func<Document, Change, Change>> s_spoilers = new()
    {
        ["a document changed since"] = (chest, c) => c with { Documents = [.. c.Documents, new EditText(chest.Id, 0, "late", "late")] },
        ["a name taken"] = (_, c) => c with { Documents = [.. c.Documents, new NewDocument(DocumentKind.Piece, "chest", "", "new")] },
        ["an id taken"] = (_, c) => c with { Facts = [.. c.Facts, LogAddition.To("chest", FactSamples.ReadAt("there", 9, 5))] },
        ["an entry that would not read back"] = (_, c) => c with { Facts = [.. c.Facts, LogAddition.To("chest", new VoidEntry("", "", ""))] },
        ["a piece that is none"] = (_, c) => c with { Facts = [.. c.Facts, LogAddition.To("shop", FactSamples.ReadAt("x", 9))] },
        ["a document that is not there"] = (_, c) => c with { Facts = [.. c.Facts, LogAddition.To(new DocumentId("d0"), FactSamples.ReadAt("x", 9))] },
    };

    [Theory, MemberData(nameof(Spoilers))]
    public void Change_OfWhichOnePartIsRefused_IsNotMadeAtAll(string what)
    {
        Document chest = _store.New("chest");
        _store.Do(new NewDocument(DocumentKind.Shop, "shop", "s", "new shop"));
        _store.FactsOf("chest").Append(FactSamples.ReadAt("there", 1));
        string before = _store.Words();
        var change = new Change("whole", Changes.At, "whole")
        {
            Documents = [new EditText(chest.Id, 1, "b", "b"), new NewDocument(DocumentKind.Piece, "box", "", "new"), new Rename(chest.Id, 1, "trunk"), new SavePoint(chest.Id, 1, "p")],
            Facts = [LogAddition.To("box", FactSamples.ReadAt("x", 1)), LogAddition.To("loose", FactSamples.ReadAt("x", 1)), LogAddition.To(chest.Id, FactSamples.ReadAt("x", 1))],
        };
        // The rename would let the name 'chest' go.
        Func<Document, Change, Change> spoil = s_spoilers[what];
        ChangeRefused refused = Assert.IsType<ChangeRefused>(_store.Make(spoil(chest, change with { Documents = [change.Documents[0], change.Documents[1], change.Documents[3]] })));
        Assert.NotEmpty(refused.Fault.Words);
        Assert.Equal(before, _store.Words());
        Assert.Null(_store.Made("whole"));
        Assert.IsType<ChangeTaken>(_store.Make(change));
    }

    [Fact]
    public void Facts_ThatCameFirst_BelongToTheDocumentOfTheirNameAndFollowIt()
    {
        _store.FactsOf("chest").Append(FactSamples.ReadAt("x", 1));
        Document chest = _store.New("chest");
        Assert.Equal(["x"], _store.FactsOf(chest.Id).Read().Entries.Select(e => e.Id));
        _store.Do(new Rename(chest.Id, 1, "trunk"));
        Assert.Equal(["trunk"], _store.Pieces());
        Assert.Equal(["x"], _store.FactsOf("trunk").Read().Entries.Select(e => e.Id));
        Assert.Equal(1, _store.FactsOf(chest.Id).Append(FactSamples.ReadAt("y", 2)));
        // Nobody is called so now: a page that has not heard of the new name loses nothing and mixes nothing.
        Assert.Empty(_store.FactsOf("chest").Read().Entries);
        Assert.Equal("document.unknown", Assert.Throws<FactStoreException>(() => _store.FactsOf("chest").Append(FactSamples.ReadAt("z", 3))).Fault.Code);
        Document other = _store.New("chest");
        Assert.Empty(_store.FactsOf(other.Id).Read().Entries);
        Assert.Equal(1, _store.FactsOf("chest").Append(FactSamples.ReadAt("x", 5)));
        Assert.Equal(["chest", "trunk"], _store.Pieces());
        Assert.Equal(["x", "y"], _store.FactsOf("trunk").Read().Entries.Select(e => e.Id));
        // And back: each keeps its own.
        _store.Do(new Rename(other.Id, 1, "third"));
        _store.Do(new Rename(chest.Id, 2, "chest"));
        Assert.Equal(["x", "y"], _store.FactsOf("chest").Read().Entries.Select(e => e.Id));
        Assert.Equal(["x"], _store.FactsOf("third").Read().Entries.Select(e => e.Id));
    }

    [Fact]
    public void Rename_ToANameThatFactsCameFor_IsRefused()
    {
        _store.FactsOf("box").Append(FactSamples.ReadAt("x", 1));
        Document chest = _store.New("chest");
        _store.Refused("document.name-taken", new Rename(chest.Id, 1, "box"));
        Assert.Equal(["box"], _store.Pieces());
    }

    [Fact]
    public void Facts_OfADocumentPutAwayAndOfAShopFile_AreKeptAndRefused()
    {
        Document chest = _store.New("chest"), shop = _store.Do(new NewDocument(DocumentKind.Shop, "shop", "", "new"));
        _store.Do(new PutAway(chest.Id, 1));
        Assert.Equal(1, _store.FactsOf("chest").Append(FactSamples.ReadAt("x", 1)));
        Assert.Equal("document.no-log", Assert.Throws<FactStoreException>(() => _store.FactsOf(shop.Id).Append(FactSamples.ReadAt("x", 1))).Fault.Code);
        Assert.Empty(_store.FactsOf("shop").Read().Entries);
        ImmutableArray<string> pieces = _store.Pieces();
        Assert.Equal(["chest"], pieces);
    }
}
