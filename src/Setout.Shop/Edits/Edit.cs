using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>What an edit is held against beside the text.</summary>
/// <param name="Log">Facts of the piece: what is cut is not taken out.</param>
/// <param name="Shop">The shop, which has the grid.</param>
/// <param name="Taken">Keys that were ever used beside those of the text and the log, as by earlier states of the text.</param>
public sealed record EditBench(Log Log, Texts.Shop Shop, ImmutableHashSet<string> Taken)
{
    /// <summary>The piece as it was set out from the very text that is edited, where that is at hand; null, the default, to set it out when its sizes are needed.</summary>
    public Core.SettingOut.SetPiece? Set { get; init; }

    /// <summary>No facts, a usual shop, no keys taken.</summary>
    public static EditBench Empty { get; } = new(Log.Empty, Texts.Shop.Usual, []);
}

/// <summary>What came of an edit.</summary>
/// <param name="Text">The new text; null where the edit was refused.</param>
/// <param name="Name">For people, such as <c>width of opening L: 21 to 22</c>; that of the edit where it was refused.</param>
/// <param name="Findings">Why it was refused; or what is worth knowing about what was done.</param>
public sealed record Edited(string? Text, string Name, ImmutableArray<Finding> Findings)
{
    /// <summary>The key of what was made or changed; empty for none.</summary>
    public string Chosen { get; init; } = "";

    /// <summary>For each finding what was typed that it is about; shorter than they, and empty by default, where the last are about nothing that stands alone.</summary>
    internal ImmutableArray<TypedAt> Typed { get; init; } = [];

    /// <summary>True when there is a new text.</summary>
    public bool IsDone => Text is not null;
}

/// <summary>An edit of a piece file. Immutable; what it does to a text depends on nothing but that text and the bench.</summary>
public abstract record Edit
{
    /// <summary>What it does, in words, without looking at a text.</summary>
    public abstract string Words { get; }

    /// <summary>True for one that may be done to a text that has mistakes, and may leave some of them.</summary>
    internal virtual bool TakesMistakes => false;

    internal abstract void Do(EditDraft draft);

    /// <summary>Does the edit. The text is refused rather than broken: what could be read before can be read after. Never throws for what is in the text.</summary>
    /// <param name="text">A piece file.</param>
    /// <param name="bench">What is known beside the text; none given: nothing.</param>
    public Edited ApplyTo(string text, EditBench? bench = null)
    {
        TextRead<YamlNode> tree = YamlTree.Read(text);
        if (tree.Value is null || !tree.IsSound) return new(null, Words, tree.Findings);
        TextRead<Core.Pieces.Piece> piece = PieceText.Read(text);
        if (!piece.IsSound && !TakesMistakes) return new(null, Words, [new("edit.mistakes", Severity.Stop, "", "The text has mistakes; it is not edited on the drawing until they are mended.", "Mend what stands below first.", piece.Findings[0].Place), .. piece.Findings]);
        var draft = new EditDraft(text, tree.Value, piece, bench ?? EditBench.Empty);
        try
        {
            Do(draft);
            return draft.Finish(Words);
        }
        catch (RefusedException refused)
        {
            return new(null, Words, [refused.Finding, .. refused.More]) { Typed = [new(refused.Typed, "")] };
        }
    }
}

/// <summary>An edit cannot be done.</summary>
internal sealed class RefusedException(Finding finding) : Exception(finding.Words)
{
    public Finding Finding { get; } = finding;

    public ImmutableArray<Finding> More { get; init; } = [];

    /// <summary>What was typed that cannot be taken; empty, the default, where it is not about words alone.</summary>
    public string Typed { get; init; } = "";
}
