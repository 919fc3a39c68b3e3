using System.Collections.Immutable;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Breakdown;

/// <summary>The drawings of one material.</summary>
/// <param name="Name">The material.</param>
/// <param name="Verdict">How many, and whether fewer are possible.</param>
/// <param name="Desk">Drawings for a desk.</param>
/// <param name="Phone">The same for a phone.</param>
public sealed record BrokenMaterial(string Name, string Verdict, ImmutableArray<string> Desk, ImmutableArray<string> Phone);

/// <summary>The third stage: sheets and boards as marking-out drawings.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Notes">What stops the plan.</param>
/// <param name="Materials">Sheets, then boards.</param>
/// <param name="Cautions">What to mind; the last defers to local codes.</param>
/// <param name="Runs">The work at the saws.</param>
public sealed record BreakdownView(PieceHead Head, ImmutableArray<Note> Notes, ImmutableArray<BrokenMaterial> Materials, ImmutableArray<string> Cautions, WordedRuns Runs)
{
    private static readonly BreakdownPaper s_wide = new(220, 150), s_narrow = new(88, 220);

    internal static BreakdownView Of(OpenPiece piece, Plan plan) => new(
        PieceHead.Of(piece, "break-down"), StoppedNotes.Of(piece, plan),
        [
            .. plan.Sheets.Select(s => new BrokenMaterial(s.Material.Name, Verdicts.Of(s), Sheets(plan, s, s_wide), Sheets(plan, s, s_narrow))),
            .. plan.Boards.Select(b => new BrokenMaterial(b.Material.Name, Verdicts.Of(b), Boards(plan, b, s_wide), Boards(plan, b, s_narrow))),
        ],
        [.. CautionKeys(plan).Select(k => Core.Craft.Cautions.Of(k).Words), Core.Craft.Cautions.Deference],
        RunWords.Of(plan));

    private static ImmutableArray<string> Sheets(Plan plan, SheetPlan sheets, BreakdownPaper paper) =>
        [.. MarkingOut.Of(plan, sheets, paper).Select(s => SvgWriter.Write(s.Scene, SvgOptions.Inline))];

    private static ImmutableArray<string> Boards(Plan plan, BoardPlan boards, BreakdownPaper paper) =>
        [.. BoardBars.Of(plan, boards, paper).Select(s => SvgWriter.Write(s, SvgOptions.Inline))];

    private static IEnumerable<string> CautionKeys(Plan plan)
    {
        yield return "saw";
        yield return "crosscut";
        if (plan.Sheets.Length > 0) yield return "sheet";
        if (plan.Boards.Any(b => b.IsRipped)) yield return "rip";
        yield return "narrow";
        yield return "lift";
        yield return "dust";
        yield return "ears";
    }
}
