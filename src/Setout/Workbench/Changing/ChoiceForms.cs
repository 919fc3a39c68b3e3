using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Changing;

/// <summary>What a form sends without being asked.</summary>
/// <param name="Action">Where to.</param>
/// <param name="Change">Its id.</param>
/// <param name="Revision">The revision that the page shows.</param>
/// <param name="Back">The page to go back to.</param>
public sealed record FormHead(string Action, string Change, int Revision, string Back)
{
    internal static FormHead Of(OpenPiece piece, string word, string back) => new(Links.Stage(piece.Name, word), ChangeForm.NewId(), piece.File.Document.Revision, back);
}

/// <summary>An edit that is offered.</summary>
/// <param name="Head">What goes along.</param>
/// <param name="Choice">The edit with its fields.</param>
public sealed record ChoiceForm(FormHead Head, Offer Choice);

/// <summary>The edits that make sense for what is chosen.</summary>
/// <param name="Key">What is chosen; empty for the whole piece.</param>
/// <param name="Words">What it is called.</param>
/// <param name="Forms">In the order in which they are offered.</param>
public sealed record ChoiceForms(string Key, string Words, ImmutableArray<ChoiceForm> Forms)
{
    /// <summary>The page of all that can be said of it; empty for what has none.</summary>
    public string Says { get; init; } = "";

    /// <summary>Whose page that is.</summary>
    public string SaysWords { get; init; } = "";

    /// <summary>Which of several stands open at first; none by default.</summary>
    public string Open { get; init; } = "";

    internal static ChoiceForms Of(OpenPiece piece, string? asked, string words, string back)
    {
        string key = new QuantityKey((asked ?? "").Split('#')[0]).Exact.Text;
        string owner = key.Split('.')[0];
        return new(key, key.Length == 0 ? "the piece" : words.Length > 0 ? words : key, [.. Choices.For(piece.Set, key, piece.Source.Shop).Select(c => new ChoiceForm(FormHead.Of(piece, "edit", back), c))])
        {
            Says = HasSayings(piece, owner) ? Setout.Workbench.Says.SaysView.Link(piece.Name, owner) : "",
            SaysWords = owner.Length > 0 ? owner : "the piece",
        };
    }

    private static bool HasSayings(OpenPiece piece, string owner) => owner.Length == 0 || Shop.Edits.Saying.Sayings.Of(piece.File.Document.Text, owner) is not null;
}

/// <summary>What was done last, what can be taken back, and that it is kept.</summary>
/// <param name="Saved">When it was kept, in words.</param>
/// <param name="Undo">The step that can be taken back; null for none.</param>
/// <param name="Redo">The step that can be made again; null for none.</param>
/// <param name="UndoForm">What goes along.</param>
/// <param name="RedoForm">What goes along.</param>
/// <param name="Text">The page of the text.</param>
public sealed record HistoryView(string Saved, string? Undo, string? Redo, FormHead UndoForm, FormHead RedoForm, string Text)
{
    /// <summary>The page of its states; empty for what has none.</summary>
    public string States { get; init; } = "";

    /// <summary>The page of what was read and marked, which is not undone here; empty where nothing was.</summary>
    public string Facts { get; init; } = "";

    /// <summary>What goes along with a name for the present state; null for what has no names for states.</summary>
    public FormHead? PointForm { get; init; }

    internal static HistoryView Of(OpenPiece piece, string back) => Of(piece.File.Document, word => FormHead.Of(piece, word, back), Links.Text(piece.Name)) with
    {
        States = Links.Stage(piece.Name, "history"),
        Facts = piece.Source.Log.Entries.IsEmpty ? "" : Links.Stage(piece.Name, "facts"),
        PointForm = FormHead.Of(piece, "save-point", back),
    };

    internal static HistoryView Of(Shop.Documents.Document document, Func<string, FormHead> form, string text) =>
        new($"revision {document.Revision}, kept {When.Of(document.Line.ChangedAt, TimeProvider.System)}", document.Undo, document.Redo, form("undo"), form("redo"), text);
}
