using System.Collections.Immutable;
using System.Text;
using Setout.Core.Fit;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Documents;
using Setout.Drawing.Elevations;
using Setout.Drawing.Fits;
using Setout.Drawing.Scenes;
using Setout.Shop.BenchSheets;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;

namespace Setout.Shop.Outputs;

/// <summary>One file of a plan.</summary>
/// <param name="Path">Relative, with forward slashes.</param>
/// <param name="Content">Its bytes.</param>
public sealed record PlanFile(string Path, byte[] Content);

/// <summary>All files of a plan, in memory: they are written whole or not at all by whoever has a disk.</summary>
public static class PlanFiles
{
    /// <summary>Makes every file.</summary>
    /// <param name="plan">A plan that is not stopped.</param>
    /// <param name="made">When it was made, for the foot of printed pages; empty to leave it out.</param>
    /// <param name="paper">The paper of the bench sheets.</param>
    /// <param name="only">The stage whose bench sheets are wanted, which then stand in a file called by it; null for all.</param>
    /// <param name="cancel">Gives up between two files.</param>
    public static ImmutableArray<PlanFile> Of(Plan plan, string made, Paper paper, SheetStage? only = null, CancellationToken cancel = default)
    {
        // The fit needs nothing of the drawings and they nothing of it: they are made side by side, so that nobody waits for both.
        Task<FitReport> fitting = Task.Run(() => FitCheck.Of(plan.Set, plan.Source.Shop.Accuracy, cancel: cancel), cancel);
        var files = ImmutableArray.CreateBuilder<PlanFile>();
        files.Add(new("plan.json", PlanJson.Write(plan)));
        files.Add(new("parts.csv", PlanCsv.Parts(plan.Set)));
        files.Add(new("buying.csv", PlanCsv.Buying(plan)));
        ImmutableArray<PlanFile> drawings = Drawings(plan, cancel);
        FitReport fit = fitting.GetAwaiter().GetResult();
        using var pdf = new MemoryStream();
        PdfWriter.Save(BenchSheetWriter.Compose(plan, made, paper, fit, only, cancel), pdf);
        // One who looks for the whole must not take the sheets of one stage for it.
        files.Add(new(only?.FileName ?? "bench-sheets.pdf", pdf.ToArray()));
        files.AddRange(drawings);
        ImmutableArray<Scene> gaps = GapPictures.Of(plan.Set, AlikeGaps.Of(fit), new GapPaper(220, 400));
        for (int i = 0; i < gaps.Length; i++) files.Add(Svg($"drawings/fit{(gaps.Length > 1 ? $"-{i + 1}" : "")}.svg", gaps[i]));
        return files.ToImmutable();
    }

    private static ImmutableArray<PlanFile> Drawings(Plan plan, CancellationToken cancel)
    {
        var files = ImmutableArray.CreateBuilder<PlanFile>();
        foreach (SheetPlan sheets in plan.Sheets)
        {
            cancel.ThrowIfCancellationRequested();
            foreach (MarkedSheet sheet in MarkingOut.Of(plan, sheets, new BreakdownPaper(260, 180)))
                files.Add(Svg($"breakdown/{sheet.FileName}.svg", sheet.Scene));
        }
        foreach (BoardPlan boards in plan.Boards)
        {
            ImmutableArray<Scene> scenes = BoardBars.Of(plan, boards, new BreakdownPaper(260, 180));
            for (int i = 0; i < scenes.Length; i++)
                files.Add(Svg($"breakdown/{boards.Material.Name}{(scenes.Length > 1 ? $"-{i + 1}" : "")}.svg", scenes[i]));
        }
        if (PieceView.Has(plan.Set)) files.AddRange(PieceView.All.Select(v => Svg($"drawings/{PieceView.Word(v)}.svg", PieceView.Draw(plan.Set, v, new PaperBox(260, 180)).Scene)));
        files.AddRange(BoredParts.Of(plan.Set, new PaperBox(260, 120)).Select((f, i) => Svg($"drawings/holes-{i + 1}.svg", f.Scene)));
        return files.ToImmutable();
    }

    private static PlanFile Svg(string path, Scene scene) => new(path, Encoding.UTF8.GetBytes(SvgWriter.Write(scene, SvgOptions.Standalone)));
}
