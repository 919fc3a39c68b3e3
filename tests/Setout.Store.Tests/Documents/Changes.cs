using System.Globalization;
using Setout.Shop.Documents;

namespace Setout.Store.Tests.Documents;

/// <summary>Short ways to change a store in tests.</summary>
internal static class Changes
{
    private static int s_ids;

    public const string At = "2026-05-04T09:40:00Z";

    /// <summary>An id that no other change has.</summary>
    public static string NewId() => "t" + Interlocked.Increment(ref s_ids).ToString(CultureInfo.InvariantCulture);

    /// <summary>Makes a change of one document.</summary>
    public static ChangeAnswer Try(this IDocumentStore store, DocumentChange change, string? id = null) => store.Make(Change.Of(id ?? NewId(), At, change));

    /// <summary>Makes one that has to be taken.</summary>
    public static Document Do(this IDocumentStore store, DocumentChange change, string? id = null) => Assert.Single(Assert.IsType<ChangeTaken>(store.Try(change, id)).Documents);

    /// <summary>Makes one that has to be refused.</summary>
    public static ChangeRefused Refused(this IDocumentStore store, string code, DocumentChange change) => Refused(code, store.Try(change));

    /// <summary>It has to be a refusal.</summary>
    public static ChangeRefused Refused(string code, ChangeAnswer answer)
    {
        ChangeRefused refused = Assert.IsType<ChangeRefused>(answer);
        Assert.Equal(code, refused.Fault.Code);
        Assert.NotEmpty(refused.Fault.Words);
        return refused;
    }

    /// <summary>A new piece.</summary>
    public static Document New(this IDocumentStore store, string name = "chest", string text = "a") => store.Do(new NewDocument(DocumentKind.Piece, name, text, "new piece"));

    /// <summary>An edit on the document as it was seen.</summary>
    public static Document Edit(this IDocumentStore store, Document seen, string text) => store.Do(new EditText(seen.Id, seen.Revision, "to " + string.Concat(text.Where(c => !char.IsControl(c)).Take(20)), text));

    /// <summary>All that a store says, for comparing before and after.</summary>
    public static string Words(this IDocumentStore store) => string.Join('\n',
    [
        .. store.Documents().Select(d => Words(store.Find(d.Id)!) + " " + string.Join(' ', store.History(d.Id).Select(h => $"{h.State}{h.IsHead}{string.Join('/', h.SavePoints)}{store.TextOf(d.Id, h.State.Number)}"))),
        .. store.Pieces().Select(p => $"{p}: {string.Join(' ', store.FactsOf(p).Read().Entries.Select(Contract.FactSamples.Words))}"),
    ]);

    /// <summary>All that a document says.</summary>
    public static string Words(Document document) => $"{document.Line} '{document.Text}' undo {document.Undo} redo {document.Redo}";
}
