using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Edits;
using Setout.Shop.Facts;
using Setout.Shop.Noting;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.Changing;

/// <summary>What came of a change.</summary>
/// <param name="Fault">Why it was not made; null when it was, or changed nothing.</param>
/// <param name="IsConflict">True where somebody else went on meanwhile.</param>
internal sealed record ChangeOutcome(Finding? Fault, bool IsConflict)
{
    /// <summary>Why it was not made: all that is wrong with what was typed, each with its field; none when it was.</summary>
    public ImmutableArray<Finding> Faults { get; private init; } = Fault is null ? [] : [Fault];

    /// <summary>A change that was not made.</summary>
    /// <param name="faults">Why: one at least.</param>
    public static ChangeOutcome Refused(ImmutableArray<Finding> faults) => new(faults[0], false) { Faults = faults };

    /// <summary>The key of what was made or changed, to be chosen next; empty for the whole; null, the default, to stay where one is.</summary>
    public string? Chosen { get; init; }
}

/// <summary>Makes the changes that forms ask for. A change that cannot be made says why, and nothing is changed.</summary>
/// <param name="store">Where the texts are kept.</param>
/// <param name="pieces">The pieces as they stand.</param>
/// <param name="desk">The pieces set out.</param>
/// <param name="trials">Makes edits without keeping them.</param>
/// <param name="maker">Makes changes.</param>
internal sealed class PieceChanges(IDocumentStore store, KeptPieces pieces, PlanDesk desk, Trials trials, ChangeMaker maker)
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
        Trial trial = trials.Make(file, key, choice, values);
        if (trial.Edited.Text is not { } text) return ChangeOutcome.Refused(trial.Edited.Findings);
        ChangeOutcome outcome = Make(file, form, new EditText(file.Document.Id, form.Revision, trial.Edited.Name, text));
        return trial.Edited.Chosen.Length > 0 ? outcome with { Chosen = trial.Edited.Chosen } : outcome;
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

    // What was chosen may be gone by it.
    private ChangeOutcome Make(PieceFile file, ChangeForm form, DocumentChange change)
    {
        (Document? after, ChangeOutcome outcome) = maker.Taken(file.Name, Change.Of(form.Id, maker.At, change));
        string left = after is null ? form.Chosen : WhatIsLeft.Of(file.Document.Text, after.Text, form.Chosen);
        return left == form.Chosen ? outcome : outcome with { Chosen = left };
    }
}
