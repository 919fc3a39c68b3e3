namespace Setout.Shop.Documents;

/// <summary>One change of one document.</summary>
public abstract record DocumentChange;

/// <summary>A new document, of revision 1.</summary>
/// <param name="Kind">What it is a text of.</param>
/// <param name="Name">A name that no document has, put away or not: see <see cref="DocumentName"/>.</param>
/// <param name="Text">Its first text. Any text goes in, sound or not: what is half written is kept too.</param>
/// <param name="Step">The name of the step, such as "new piece".</param>
public sealed record NewDocument(DocumentKind Kind, string Name, string Text, string Step) : DocumentChange;

/// <summary>
/// A change of a document that is there. It is refused when that which it changes has changed since the revision it was made on: for the
/// text, the state pointed at; for the name or the place, either of them. So no one writes over what he has not seen, and a rename does not
/// stop an edit.
/// </summary>
/// <param name="Document">Which.</param>
/// <param name="Revision">The revision that whoever makes the change has seen.</param>
public abstract record ChangeOfDocument(DocumentId Document, int Revision) : DocumentChange;

/// <summary>An edit: a new state below the one pointed at. A text that is the same already changes nothing.</summary>
/// <param name="Step">Its name for people, such as "width of opening L: 21 to 22".</param>
/// <param name="Text">The whole text.</param>
public sealed record EditText(DocumentId Document, int Revision, string Step, string Text) : ChangeOfDocument(Document, Revision);

/// <summary>The document points at the parent of its state.</summary>
public sealed record UndoStep(DocumentId Document, int Revision) : ChangeOfDocument(Document, Revision);

/// <summary>The document points at the child of its state that was last made, or last undone from.</summary>
public sealed record RedoStep(DocumentId Document, int Revision) : ChangeOfDocument(Document, Revision);

/// <summary>The text of a state of before once more, as a new state: undoing it goes back to where one was.</summary>
/// <param name="State">The number of the state.</param>
public sealed record GoBack(DocumentId Document, int Revision, long State) : ChangeOfDocument(Document, Revision);

/// <summary>A name for the state that the document pointed at in this revision. Never refused because others went on.</summary>
/// <param name="Name">For people; need not be the only one of its kind.</param>
public sealed record SavePoint(DocumentId Document, int Revision, string Name) : ChangeOfDocument(Document, Revision);

/// <summary>Another name; facts and history come along.</summary>
/// <param name="Name">A name that no document has.</param>
public sealed record Rename(DocumentId Document, int Revision, string Name) : ChangeOfDocument(Document, Revision);

/// <summary>Out of the way, whole: nothing of it can be changed until it is taken back. It keeps its name.</summary>
public sealed record PutAway(DocumentId Document, int Revision) : ChangeOfDocument(Document, Revision);

/// <summary>Taken back after it was put away.</summary>
public sealed record TakeBack(DocumentId Document, int Revision) : ChangeOfDocument(Document, Revision);
