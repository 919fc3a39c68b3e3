using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Edits;
using Setout.Shop.Edits.Saying;
using Setout.Shop.Facts;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Workbench.Pieces;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.Changing;

/// <summary>What came of a change.</summary>
/// <param name="Fault">Why it was not made; null when it was, or changed nothing.</param>
/// <param name="IsConflict">True where somebody else went on meanwhile.</param>
internal sealed record ChangeOutcome(Finding? Fault, bool IsConflict)
{
    /// <summary>The key of what was made or changed, to be chosen next; empty, the default, to stay where one is.</summary>
    public string Chosen { get; init; } = "";
}

/// <summary>Makes the changes that forms ask for. A change that cannot be made says why, and nothing is changed.</summary>
/// <param name="store">Where the texts are kept.</param>
/// <param name="pieces">The pieces as they stand.</param>
/// <param name="desk">The pieces set out.</param>
/// <param name="maker">Makes changes.</param>
internal sealed class PieceChanges(IDocumentStore store, KeptPieces pieces, PlanDesk desk, ChangeMaker maker)
{
    /// <summary>Makes an edit that the page offers for what is chosen.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="form">What every form sends along.</param>
    /// <param name="key">What was chosen; empty for the whole piece.</param>
    /// <param name="choice">Which of its edits.</param>
    /// <param name="values">What was typed, by the names of the fields.</param>
    public ChangeOutcome Edit(string piece, ChangeForm form, string key, string choice, IReadOnlyDictionary<string, string> values)
    {
        if (pieces.Read(piece) is not { } file) return Gone(piece);
        if (store.Made(form.Id) is not null) return ChangeMaker.Done;
        if (file.Source is not { } source) return ChangeMaker.Refuse("edit.mistakes", "The text has mistakes; it is not edited on the drawing until they are mended.", "Mend it in the text.");
        Edited edited = Propose(source, desk.SetOut(piece, source), file.Document.Text, key, choice, values);
        if (edited.Text is not { } text) return new(edited.Findings[0], false);
        return Make(file, form, new EditText(file.Document.Id, form.Revision, edited.Name, text)) with { Chosen = edited.Chosen };
    }

    /// <summary>What an edit would make of a text, with nothing kept.</summary>
    /// <param name="source">The text and what stands beside it, read.</param>
    /// <param name="set">The piece set out from them.</param>
    /// <param name="text">The text.</param>
    /// <param name="key">What was chosen; empty for the whole piece.</param>
    /// <param name="choice">Which of its edits.</param>
    /// <param name="values">What was typed, by the names of the fields.</param>
    internal static Edited Propose(PieceSource source, SetPiece set, string text, string key, string choice, IReadOnlyDictionary<string, string> values)
    {
        // Somebody may have gone on: what is offered is looked for in what he saw, and the store says so if it is no more.
        if ((Choices.For(set, key, source.Shop).FirstOrDefault(c => c.Id == choice) ?? Sayings.Of(text, key)?.For(set.Piece.Unit, set.Piece.Shown).All.FirstOrDefault(s => s.Choice.Id == choice)?.Choice) is not { } offered)
            return new(null, "", [new("edit.not-offered", Severity.Stop, "", "That is not there to be edited any more.", "Look at the drawing as it stands now.")]);
        TextRead<Edit> made = offered.Make(values);
        return made.Value is { } edit ? edit.ApplyTo(text, new EditBench(source.Log, source.Shop, []) { Set = set }).In(offered, values) : new(null, "", made.Findings);
    }

    /// <summary>The whole text anew. Any text goes in: what is half written is kept too.</summary>
    public ChangeOutcome Text(string piece, ChangeForm form, string text) => pieces.Read(piece) is { } file
        ? Make(file, form, new EditText(file.Document.Id, form.Revision, "text edited by hand", text.ReplaceLineEndings("\n"))) : Gone(piece);

    /// <summary>Takes the last step back. Where that upsets what is cut, built or read, it is asked about first.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="form">What every form sends along.</param>
    /// <param name="isSure">True where that was answered.</param>
    public ChangeOutcome Undo(string piece, ChangeForm form, bool isSure = false) => pieces.Read(piece) is not { } file ? Gone(piece)
        : (isSure ? null : Asked(file, form, file.Document.Line.Head.Parent, $"Undoing “{file.Document.Undo}”", "Undo")) ?? Make(file, form, new UndoStep(file.Document.Id, form.Revision));

    /// <summary>Makes a step again that was taken back, and asks in the same way.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="form">What every form sends along.</param>
    /// <param name="isSure">True where that was answered.</param>
    public ChangeOutcome Redo(string piece, ChangeForm form, bool isSure = false) => pieces.Read(piece) is not { } file ? Gone(piece)
        : (isSure ? null : Asked(file, form, Again(file), $"Making “{file.Document.Redo}” again", "Redo")) ?? Make(file, form, new RedoStep(file.Document.Id, form.Revision));

    /// <summary>A new piece from a text; its name, or why there is none.</summary>
    public (string? Name, Finding? Fault) Begin(string id, string name, string text, string step)
    {
        try
        {
            // Sent again, it leads to the piece that it made.
            if (store.Made(id) is { Documents: [var made, ..] }) return (made.After.Name, null);
            string free = name;
            for (int i = 2; store.Find(free) is not null; i++) free = $"{name}-{i}";
            (Document? document, ChangeOutcome outcome) = maker.Taken(free, Change.Of(id, maker.At, new NewDocument(DocumentKind.Piece, free, text, step)));
            return (document?.Name, outcome.Fault);
        }
        catch (FactStoreException failed)
        {
            return (null, failed.Fault);
        }
    }

    /// <summary>The code of a step that would upset facts, and of the press that makes it all the same.</summary>
    internal const string Sure = "sure";

    // The state that a redo goes to: of those made of the present one, the last.
    private long? Again(PieceFile file) => file.Document.Redo is null ? null
        : store.History(file.Document.Id).Where(h => h.State.Parent == file.Document.Line.Head.Number).Select(h => (long?)h.State.Number).Max();

    // Null where there is nothing to ask. A form of an older revision, or one sent twice, is the store's to answer.
    private ChangeOutcome? Asked(PieceFile file, ChangeForm form, long? state, string step, string word)
    {
        if (form.Revision != file.Document.Revision || maker.IsMade(form) || file.Source is not { } source || state is not { } number || store.TextOf(file.Document.Id, number) is not { } text) return null;
        if (pieces.With(file.Name, text)?.Source?.SetOut() is not { } then) return null;
        ImmutableArray<string> upset = StepUpsets.Of(desk.SetOut(file.Name, source), then, source.Log);
        if (upset.IsEmpty) return null;
        string more = upset.Length > StepUpsets.MostTold ? $" And {upset.Length - StepUpsets.MostTold} more." : "";
        return ChangeMaker.Refuse(Sure, $"{step} would upset what is cut, built or read: {string.Join(" ", upset.Take(StepUpsets.MostTold))}{more} Nothing was changed.", $"If it is meant, press “{word} it all the same”. What was read and marked stays as it is.");
    }

    private static ChangeOutcome Gone(string piece) => new(new("piece.gone", Severity.Stop, "", $"There is no piece '{piece}' any more.", "It may have been put away or renamed in another window."), false);

    private ChangeOutcome Make(PieceFile file, ChangeForm form, DocumentChange change) => maker.Make(file.Name, form, change);
}
