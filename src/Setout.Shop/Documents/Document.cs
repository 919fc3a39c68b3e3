namespace Setout.Shop.Documents;

/// <summary>What a document is a text of.</summary>
public enum DocumentKind
{
    /// <summary>A piece file.</summary>
    Piece,

    /// <summary>A shop file.</summary>
    Shop,
}

/// <summary>Tells one document from all others, for ever: it stays when the document is renamed, and in a backup.</summary>
/// <param name="Text">Letters and digits.</param>
public readonly record struct DocumentId(string Text)
{
    /// <inheritdoc/>
    public override string ToString() => Text;
}

/// <summary>A state of a document: a text, and the step that made it of the state before.</summary>
/// <param name="Number">Its own in this store.</param>
/// <param name="Parent">The state it was made of; null for the first.</param>
/// <param name="Step">The name of the step, such as "width of opening L: 21 to 22".</param>
/// <param name="At">When it was made, as an ISO 8601 time with its offset.</param>
public sealed record DocumentState(long Number, long? Parent, string Step, string At);

/// <summary>A document as it stands in a list.</summary>
/// <param name="Id">Its own, for ever.</param>
/// <param name="Kind">What it is a text of.</param>
/// <param name="Name">Its name, which no other document has.</param>
/// <param name="Revision">From 1; grows by one with each change of the document, whatever was changed.</param>
/// <param name="IsPutAway">True when it was put away: it is kept whole and can be taken back.</param>
/// <param name="Head">The state that it points at.</param>
/// <param name="ChangedAt">When it was last changed, as an ISO 8601 time.</param>
public sealed record DocumentLine(DocumentId Id, DocumentKind Kind, string Name, int Revision, bool IsPutAway, DocumentState Head, string ChangedAt);

/// <summary>A document with the text that it points at.</summary>
/// <param name="Line">All but the text.</param>
/// <param name="Text">The text, exactly as it was given.</param>
/// <param name="Undo">The step that an undo takes back; null when there is none.</param>
/// <param name="Redo">The step that a redo makes again; null when there is none.</param>
public sealed record Document(DocumentLine Line, string Text, string? Undo, string? Redo)
{
    /// <summary>Its own, for ever.</summary>
    public DocumentId Id => Line.Id;

    /// <summary>What it is a text of.</summary>
    public DocumentKind Kind => Line.Kind;

    /// <summary>Its name.</summary>
    public string Name => Line.Name;

    /// <summary>Which change of it this is, from 1.</summary>
    public int Revision => Line.Revision;
}

/// <summary>A state with the names that people gave it.</summary>
/// <param name="State">The state.</param>
/// <param name="SavePoints">Names of save points on it, in order of naming.</param>
/// <param name="IsHead">True for the one that the document points at.</param>
public sealed record HistoryLine(DocumentState State, System.Collections.Immutable.ImmutableArray<string> SavePoints, bool IsHead);
