using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>Finds set-up scrap: for each run that brings parts to size, a piece of waste from an earlier run on which its setting can be tried.</summary>
internal static class Trials
{
    // What is narrower shows nothing and is no good to hold: common practice, no source.
    private static readonly Length s_narrowest = Length.FromInches(1);

    public static ImmutableArray<Run> Of(ImmutableArray<Run> runs, ImmutableArray<RunBlank> blanks, ImmutableArray<RunMaterial> materials, CutWays ways)
    {
        var waste = new List<RunBlank>();
        ImmutableArray<Run>.Builder tried = ImmutableArray.CreateBuilder<Run>(runs.Length);
        foreach (Run run in runs)
        {
            RunCut first = run.Cuts[0];
            bool isTried = run.Kind == RunKind.Size && run.Way != SawWay.Guide;
            // The smallest that does, so that the larger ones stay for larger figures. Each is cut up once.
            RunBlank? scrap = !isTried ? null : waste.Where(w => w.Material == blanks[first.Blank].Material && Does(w, run, first, materials[w.Material], ways)).OrderBy(w => w.Along * w.Across).ThenBy(w => w.Id).FirstOrDefault();
            if (scrap is not null) waste.Remove(scrap);
            tried.Add(run with { Trial = scrap?.Id });
            foreach (RunCut cut in run.Cuts)
                foreach (int id in new[] { cut.Off, cut.Rest }.OfType<int>())
                    if (blanks[id].Use == BlankUse.Waste && blanks[id].Spares == 0) waste.Add(blanks[id]);
        }
        return tried.ToImmutable();
    }

    // Longer than the figure, with a true side to lie at fence or stop, and such that the same saw may take it.
    private static bool Does(RunBlank scrap, Run run, RunCut cut, RunMaterial material, CutWays ways)
    {
        (Length extent, Length edge) = cut.Axis == GrainAxis.Along ? (scrap.Along, scrap.Across) : (scrap.Across, scrap.Along);
        if (extent < run.Figure + cut.Kerf || edge < s_narrowest || scrap.IsRaw(cut.From)) return false;
        return ways.Size(new(scrap.Material, scrap.Stock, scrap.Along, scrap.Across, scrap.Trim), cut.Axis, run.Figure, material, out _) is { } way && way.Way == run.Way && !way.TakesTwo;
    }
}
