using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Facts;

namespace Setout.Shop.Documents;

/// <summary>
/// Where the documents of a shop and the facts of its pieces are kept together. A document is a tree of states and points at one of them;
/// nothing is ever taken out. Every store keeps these promises:
/// <list type="bullet">
/// <item>All or nothing: a change of several documents and several logs is made whole or not at all.</item>
/// <item>Seen before changed: a change names the revision it was made on, and is refused with what stands now where that has changed since.</item>
/// <item>Once: a change has an id of its own; made again, it changes nothing and answers as it did the first time.</item>
/// <item>Exactness: a text reads back sign for sign.</item>
/// <item>Durability: what was answered has been handed to the disk.</item>
/// <item>Several writers wait for each other; readers wait for nobody and see whole changes.</item>
/// </list>
/// Each method throws <see cref="FactStoreException"/> when the store cannot be used; nothing was changed then.
/// </summary>
public interface IDocumentStore
{
    /// <summary>All documents, those put away too, by name.</summary>
    ImmutableArray<DocumentLine> Documents();

    /// <summary>A document as it stands; null when there is none.</summary>
    Document? Find(DocumentId id);

    /// <summary>The document of a name as it stands; null when there is none. Large and small letters differ.</summary>
    Document? Find(string name);

    /// <summary>A document as it stood in a revision; null when there is no such document or revision.</summary>
    Document? Find(DocumentId id, int revision);

    /// <summary>All states of a document in the order they were made; none when there is no such document.</summary>
    ImmutableArray<HistoryLine> History(DocumentId id);

    /// <summary>The text of a state of a document; null when there is no such state.</summary>
    string? TextOf(DocumentId id, long state);

    /// <summary>Makes a change, or answers as the first time when it was made already.</summary>
    ChangeAnswer Make(Change change);

    /// <summary>What a change did; null when no change of this id was made.</summary>
    ChangeRecord? Made(string id);

    /// <summary>Equal stands mean that nothing was changed or appended between them, by whatever program.</summary>
    StoreStand Stand();

    /// <summary>The names of all pieces that have facts, in order.</summary>
    ImmutableArray<string> Pieces();

    /// <summary>The facts of a document that is a piece.</summary>
    IFactStore FactsOf(DocumentId id);

    /// <summary>The facts of a piece by its name. It need not be a document: logs may come before the piece file.</summary>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    IFactStore FactsOf(string name);
}

/// <summary>How far a store has come.</summary>
/// <param name="Change">Counts changes.</param>
/// <param name="Fact">Counts facts.</param>
public readonly record struct StoreStand(long Change, long Fact);

/// <summary>What a store says to a change.</summary>
public abstract record ChangeAnswer;

/// <summary>The change is made and on the disk.</summary>
/// <param name="Documents">The documents as this change left them, in the order of its parts.</param>
/// <param name="Facts">How many entries were new.</param>
public sealed record ChangeTaken(ImmutableArray<Document> Documents, int Facts) : ChangeAnswer;

/// <summary>The change is not made, and nothing of it is there.</summary>
/// <param name="Fault">Why, and what to do.</param>
/// <param name="Theirs">The document that stands in the way, as it stands now; null when it is not about one.</param>
public sealed record ChangeRefused(Finding Fault, Document? Theirs) : ChangeAnswer
{
    /// <summary>The code where a document has changed since the revision that the change was made on.</summary>
    public const string Further = "document.changed-since";

    /// <summary>True when a document has changed since.</summary>
    public bool IsConflict => Fault.Code == Further;
}

/// <summary>A change that was made.</summary>
/// <param name="Id">Its own.</param>
/// <param name="At">When.</param>
/// <param name="Words">What it was, for people.</param>
/// <param name="Documents">What it did to each document.</param>
/// <param name="Facts">How many entries of logs it appended.</param>
public sealed record ChangeRecord(string Id, string At, string Words, ImmutableArray<ChangedDocument> Documents, int Facts);

/// <summary>What a change did to a document.</summary>
/// <param name="Before">As it was; null when the change made it.</param>
/// <param name="After">As the change left it.</param>
public sealed record ChangedDocument(DocumentLine? Before, DocumentLine After);
