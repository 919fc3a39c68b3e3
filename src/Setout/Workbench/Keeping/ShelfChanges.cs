using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Workbench.Changing;

namespace Setout.Workbench.Keeping;

/// <summary>Changes of a document as a whole: its name, its place, which of its states it has. Nothing is ever taken out.</summary>
/// <param name="store">Where documents are kept.</param>
/// <param name="maker">Makes changes.</param>
internal sealed class ShelfChanges(IDocumentStore store, ChangeMaker maker)
{
    /// <summary>Now, as the store writes it.</summary>
    public string At => maker.At;

    /// <summary>Makes a change of the document of a name, which may be put away. Sent again, it answers as the first time.</summary>
    /// <param name="name">Of the document, as it was called on the page.</param>
    /// <param name="form">What every form sends along.</param>
    /// <param name="change">The change, made for the document.</param>
    /// <returns>The document as the change left it; or why it was not made.</returns>
    public (Document? Document, ChangeOutcome Outcome) Make(string name, ChangeForm form, Func<DocumentId, DocumentChange> change)
    {
        try
        {
            // A rename that is sent again finds the document under its new name.
            DocumentId? id = store.Find(name)?.Id ?? (store.Made(form.Id) is { Documents: [var made, ..] } ? made.After.Id : null);
            if (id is not { } document)
                return (null, new(new("piece.gone", Severity.Stop, "", $"There is no piece '{name}' any more.", "It may have been renamed in another window: look at the shelf."), false));
            return Make(Change.Of(form.Id, At, change(document)));
        }
        catch (FactStoreException failed)
        {
            return (null, new(failed.Fault, false));
        }
    }

    /// <summary>Makes a change.</summary>
    public (Document? Document, ChangeOutcome Outcome) Make(Change change) => maker.Taken("", change);
}
