using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Drawing.Turning;
using Setout.Shop.Drawings;
using Setout.Workbench.Changing;
using Setout.Workbench.Noting;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;
using Setout.Workbench.Viewing;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.SetOut;

/// <summary>The front of a piece that cannot be drawn as it stands, as it was before.</summary>
/// <param name="Words">When that was.</param>
/// <param name="Wide">For a desk.</param>
/// <param name="Narrow">For a phone.</param>
public sealed record FrontBefore(string Words, string Wide, string Narrow)
{
    private static readonly PaperBox s_wide = new(200, 116);

    internal static FrontBefore? Of(OpenPiece piece) => piece.Bench?.Drawn is { } drawn && PieceView.Has(drawn.Set)
        ? new($"As it was after “{drawn.Step}”, {When.Of(drawn.At, TimeProvider.System)}:", SvgWriter.Write(PieceView.Draw(drawn.Set, Views.Front, s_wide).Scene, SvgOptions.Inline), SvgWriter.Write(PieceView.DrawFew(drawn.Set, Views.Front, DrawingView.Phone, "").Scene, SvgOptions.Inline)) : null;
}

/// <summary>The first stage: the drawing, the working of what was chosen, the parts.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="About">What the piece is.</param>
/// <param name="Drawing">The view that is asked for; null when there is nothing to draw.</param>
/// <param name="Chosen">The chosen size.</param>
/// <param name="Notes">Findings that want a look, and the first of the others.</param>
/// <param name="MoreNotes">The rest.</param>
/// <param name="IsLayingOut">Whether layouts are still being worked out, so that there may be more findings.</param>
/// <param name="Cautions">Cautions of the piece; the last defers to local codes.</param>
/// <param name="Parts">By material.</param>
public sealed record SetOutView(
    PieceHead Head, string About, DrawingView? Drawing, ChosenSize Chosen, ImmutableArray<Note> Notes, ImmutableArray<Note> MoreNotes,
    bool IsLayingOut, ImmutableArray<string> Cautions, ImmutableArray<PartGroup> Parts)
{
    private const int PlainNotesShown = 2;

    /// <summary>What the last change moved, what is upset, and what can be read and marked here.</summary>
    public BenchNotes Bench { get; init; } = BenchNotes.None;

    /// <summary>Why nothing is drawn; null where something is.</summary>
    public Note? Stop { get; init; }

    /// <summary>What was drawn before; null where something is drawn now, or nothing ever was.</summary>
    public FrontBefore? Before { get; init; }

    /// <summary>What can be done with what is chosen.</summary>
    public required ChoiceForms Choices { get; init; }

    /// <summary>What was done, and what can be taken back.</summary>
    public required HistoryView History { get; init; }

    /// <summary>What sizes typed on the drawing and dividers moved on it send along.</summary>
    public required FormHead Hand { get; init; }

    /// <summary>Where it is told what the last step cost.</summary>
    public required string CostHref { get; init; }

    /// <summary>The working of what is chosen, on this page.</summary>
    public string WorkingHref => $"{Hand.Back}#working";

    /// <summary>The unit of the piece: <c>in</c> or <c>mm</c>.</summary>
    public string Unit { get; init; } = "in";

    /// <summary>The unit that figures are shown in: <c>in</c> or <c>mm</c>.</summary>
    public string Shown { get; init; } = "in";

    /// <summary>The number of the state that is shown.</summary>
    public long State { get; init; }

    /// <summary>What the last step or the trial cost; null while that is not worked out.</summary>
    public string? Cost { get; init; }

    /// <summary>How many notes are folded away, in words.</summary>
    public string MoreNotesWords => MoreNotes.Length == 1 ? "1 more note" : $"{MoreNotes.Length} more notes";

    internal static SetOutView Of(OpenPiece piece, string? size, string? view, Standpoint standpoint, bool isTextOnly = false)
    {
        SetPiece set = piece.Set;
        ImmutableArray<Finding> findings = piece.Plan?.Findings ?? [.. set.Findings.OrderByDescending(f => f.Severity)];
        string back = Links.View(piece.Name, view == TurningControls.Word ? TurningControls.Seen(standpoint) : view ?? "", size ?? "");
        ImmutableArray<Note> notes = Note.Of(findings, piece, back);
        int shown = Math.Min(notes.Length, notes.Count(n => n.IsRed) + PlainNotesShown);
        ChosenSize chosen = ChosenSize.Of(piece, size);
        return new(PieceHead.Of(piece, ""), set.Piece.About, RedPencil.On(DrawingView.Of(set, piece.Name, size, view, standpoint, piece.Source.Shop, isTextOnly), piece), chosen,
            notes[..shown], notes[shown..], piece.Plan is null && !set.IsStopped, [.. CautionsOf(set)], set.IsStopped ? [] : PartGroup.Of(set, piece.Name))
        {
            Bench = BenchNotes.Of(piece, size, back),
            Stop = set.IsStopped ? notes.FirstOrDefault(n => n.IsRed) : null,
            Before = set.IsStopped ? FrontBefore.Of(piece) : null,
            Choices = ChoiceForms.Of(piece, size, chosen.Owner, back),
            History = HistoryView.Of(piece, back),
            Hand = FormHead.Of(piece, "edit", back),
            State = piece.File.Document.Line.Head.Number,
            Unit = Viewer.WordOf(set.Piece.Unit),
            Shown = Viewer.WordOf(set.Piece.Shown),
            CostHref = Links.Stage(piece.Name, "cost"),
        };
    }

    private static IEnumerable<string> CautionsOf(SetPiece set)
    {
        if (set.Openings.Any(o => o.Content == "drawers")) yield return Core.Craft.Cautions.Of("tip").Words;
        if (set.Piece.Members.OfType<Case>().Any(c => c.IsHung)) yield return Core.Craft.Cautions.Of("hang").Words;
        yield return Core.Craft.Cautions.Deference;
    }
}
