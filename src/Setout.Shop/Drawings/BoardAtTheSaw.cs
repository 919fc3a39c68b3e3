using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Run = Setout.Cutting.Runs.Run;

namespace Setout.Shop.Drawings;

/// <summary>What the runs say of boards: which of them trues an end, rips, and what is kept at which size.</summary>
internal sealed class BoardAtTheSaw(Plan plan, int material)
{
    private readonly SawnBoards _saws = SawnBoards.Of(plan);
    private readonly LengthFormat _bare = LengthFormat.For(plan.Set.Piece.Shown).Bare, _format = LengthFormat.For(plan.Set.Piece.Shown);

    public BlankNames Names => _saws.Names;

    /// <summary>Such as <c> (run 8)</c>, of all runs that true an end at 0; empty where none does.</summary>
    public string Squared => Told(Of((r, _) => r.Kind == RunKind.True));

    /// <summary>The same of runs that rip.</summary>
    public string Ripped => Told(Of((_, c) => c.Axis == GrainAxis.Across));

    /// <summary>What goes off the end at 0 of a lane, with the run; that it stays raw where the runs cut in this lane and none trues it; empty where there is nothing to say.</summary>
    /// <param name="board">Which board of the layout, from 0.</param>
    /// <param name="lane">From 1.</param>
    /// <param name="trim">What the layout has go off.</param>
    /// <param name="isAlike">True where all boards lose the same, which is said once for all.</param>
    public string End(int board, int lane, Length trim, bool isAlike)
    {
        if (trim.Sign == 0) return isAlike ? "" : ", true as it is";
        (Run Run, RunCut Cut, BoardPlace Place)[] cuts = [.. _saws.Cuts(material, board).Where(c => c.Place.Lane == lane && c.Cut.Axis == GrainAxis.Along)];
        int[] trued = [.. cuts.Where(c => c.Run.Kind == RunKind.True && c.Cut.From == BlankSide.NearEnd).Select(c => c.Run.Number).Distinct()];
        if (cuts.Length > 0 && trued.Length == 0) return ", its end at 0 stays raw";
        return isAlike ? "" : $", {_format.Text(trim)} off first{Told(trued)}";
    }

    /// <summary>What is kept in a stretch of a lane: its name, its size as the runs leave it, what of it is raw or has a flaw; as the layout has it where no run leaves it yet.</summary>
    public BoardNote Kept(int board, int lane, BoardSpan span)
    {
        RunBlank? kept = plan.Runs.Blanks.Where(b => b.Material == material && b.Stock == board && b.Use == BlankUse.Keep && _saws.PlaceOf(b.Id)?.Lane == lane)
            .OrderByDescending(b => Overlap(b, span)).FirstOrDefault();
        if (kept is null || Overlap(kept, span).Sign <= 0) return new(span, Phrase.Of("keep ").Add(_bare.Format(span.To - span.From)));
        string raw = RawSides.Words(kept), flaws = kept.Flaws.Length switch { 0 => "", 1 => ", its flaw in it", _ => ", its flaws in it" };
        Phrase brief = Phrase.Of($"keep {Names.Spoken(kept.Id)}, ").Add(_bare.Format(kept.Along));
        return new(span, brief.Add($"{(raw.Length > 0 ? $", {raw}" : "")}{flaws}")) { Brief = brief };
    }

    private Length Overlap(RunBlank blank, BoardSpan span) => _saws.PlaceOf(blank.Id) is { } at ? Length.Min(at.From + blank.Along, span.To) - Length.Max(at.From, span.From) : Length.Zero;

    private int[] Of(Func<Run, RunCut, bool> isSo) =>
        [.. plan.Runs.Runs.Where(r => r.Cuts.Any(c => plan.Runs.Blanks[c.Blank].Material == material && isSo(r, c))).Select(r => r.Number)];

    private static string Told(int[] runs) => runs.Length switch { 0 => "", 1 => $" (run {runs[0]})", _ => $" (runs {CutLines.List(runs.Select(r => $"{r}"))})" };
}
