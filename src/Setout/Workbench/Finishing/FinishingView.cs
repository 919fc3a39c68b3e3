using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Edits;
using Setout.Shop.Edits.Saying;
using Setout.Shop.Plans;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Says;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Finishing;

/// <summary>A part that is finished.</summary>
/// <param name="Mark">The mark pencilled on it.</param>
/// <param name="Name">For people, with how many there are.</param>
/// <param name="Href">Its workings.</param>
/// <param name="Sum">How the area of one came to be.</param>
/// <param name="Area">Of all members.</param>
/// <param name="Remark">What was left out, the step it comes in, how many are finished; empty for nothing.</param>
public sealed record FinishRow(string Mark, string Name, string Href, Phrase Sum, string Area, string Remark);

/// <summary>Parts that are finished at one time.</summary>
/// <param name="Title">When.</param>
/// <param name="Why">Why then.</param>
/// <param name="Rows">Its parts.</param>
public sealed record FinishTimeView(string Title, string Why, ImmutableArray<FinishRow> Rows);

/// <summary>A finish.</summary>
/// <param name="Of">In words.</param>
/// <param name="Id">For the page.</param>
/// <param name="Says">The page of all that can be said of it.</param>
/// <param name="Ask">How far a can goes, to be typed where it is not said.</param>
/// <param name="TakeOut">To take it out of the piece.</param>
/// <param name="Times">Its parts.</param>
public sealed record FinishView(FinishSheet Of, string Id, string Says, ImmutableArray<SayLine> Ask, ImmutableArray<SayLine> TakeOut, ImmutableArray<FinishTimeView> Times);

/// <summary>The last stage: what is finished with what, when, and how much of it that takes.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Notes">What stops the plan, or is to be said of a finish.</param>
/// <param name="Finishes">In the order written.</param>
/// <param name="Bare">What could be finished and is not, by material.</param>
/// <param name="None">What takes none, with why.</param>
/// <param name="Begin">To say a finish.</param>
/// <param name="Cautions">What to mind.</param>
/// <param name="Deference">Whose word comes first.</param>
/// <param name="History">What was done, and what can be taken back.</param>
public sealed record FinishingView(
    PieceHead Head, ImmutableArray<Note> Notes, ImmutableArray<FinishView> Finishes, ImmutableArray<(string Words, string Area)> Bare, ImmutableArray<string> None,
    ImmutableArray<SayLine> Begin, ImmutableArray<string> Cautions, string Deference, HistoryView History)
{
    private const string Page = "finish";

    internal static FinishingView Of(OpenPiece piece)
    {
        SetPiece set = piece.Set;
        var head = PieceHead.Of(piece, Page);
        HistoryView history = HistoryView.Of(piece, Links.Stage(piece.Name, Page));
        ImmutableArray<string> cautions = [.. FinishLines.Cautions.Select(c => c.Words)];
        bool IsTold(Finding f) => set.IsStopped ? f.Severity == Severity.Stop : f.Code is "finish.unknown" or "finish.idle" or "finish.too-many-cans";
        ImmutableArray<Note> notes = Note.Of(set.Findings.Where(IsTold), set, piece.Name, piece.File.FileName);
        if (set.IsStopped) return new(head, notes, [], [], [], [], cautions, Core.Craft.Cautions.Deference, history);
        ImmutableArray<SayLine> begin = Said(piece, "", s => s.Choice.Id.StartsWith("say.finishes", StringComparison.Ordinal), _ => "A finish: what it is, how many coats, how far a can goes");
        return new(head, notes, [.. FinishLines.Of(set).Select(s => View(piece, s))], FinishLines.Bare(set), FinishLines.None(set), begin, cautions, Core.Craft.Cautions.Deference, history);
    }

    private static FinishView View(OpenPiece piece, FinishSheet sheet)
    {
        FormHead Head() => FormHead.Of(piece, "edit", Links.Stage(piece.Name, Page));
        ImmutableArray<SayLine> ask = sheet.HasCoverage ? [] : Said(piece, sheet.Name, s => s.Choice.Id is "say.covers" or "say.can", s => $"{s.Choice.Words}, {sheet.Name}");
        return new(sheet, $"finish-{sheet.Name}", SaysView.Link(piece.Name, sheet.Name), ask, [.. Choices.For(piece.Set, sheet.Name).Select(c => new SayLine(new(Head(), c), "", true))],
            [.. sheet.Groups.Select(g => new FinishTimeView(g.Title, g.Why, [.. g.Lines.Select(l => Row(piece, l))]))]);
    }

    private static FinishRow Row(OpenPiece piece, FinishLine line)
    {
        return new(line.Part.Mark, line.Part.Count == 1 ? line.Part.Name : $"{line.Part.Name} ({line.Part.Count})", Links.Size(piece.Name, line.Part.Key),
            Figures.Phrase(line.Sum), line.Area, line.Remark);
    }

    private static ImmutableArray<SayLine> Said(OpenPiece piece, string key, Func<Said, bool> wanted, Func<Said, string> words) => Sayings.Of(piece.File.Document.Text, key)?.For(piece.Set.Piece.Unit, piece.Set.Piece.Shown) is { } said
        ? [.. said.All.Where(wanted).Select(s => new SayLine(new(FormHead.Of(piece, "edit", Links.Stage(piece.Name, Page)), s.Choice with { Words = words(s) }), s.Words, s.IsSaid))]
        : [];
}
