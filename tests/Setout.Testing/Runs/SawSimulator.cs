using System.Collections.Immutable;
using Setout.Cutting.Runs;

namespace Setout.Testing.Runs;

/// <summary>
/// Works through a plan of runs at a saw in thought, without knowing how it was made: it lays the stock on the bench, makes every cut of every run in order on the blank named, at the
/// figure named, paying the kerf, and looks at what lies there at the end. It shares nothing with the planner but the values; its arithmetic is that of
/// <see cref="RunCut"/>, done again in ticks, and it keeps account of which run made which side of each blank true.
/// </summary>
public static class SawSimulator
{
    /// <summary>What is set at the saw: fence, stop or straight edge at a figure, whatever the cuts are for; or cuts at marks of their own, or rough ones, each by themselves.</summary>
    public static (SawWay Way, string SetUp, long Figure) Setting(Run run) =>
        (run.Way, run.Kind is RunKind.Size or RunKind.Break or RunKind.Lane ? "figure" : $"{run.Kind}", run.Figure.Ticks);

    /// <summary>Whether anything is set for a run. On sled and crosscut saw wood that goes to a mark lies where its mark is at the blade, and no stop stands there.</summary>
    public static bool IsSet(Run run) => !(run.Kind is RunKind.True or RunKind.Clear && run.Way is SawWay.Sled or SawWay.Stop);

    /// <summary>Everything that is wrong with a plan; empty when it is sound.</summary>
    /// <param name="materials">The materials with the layouts as the planner gave them back.</param>
    /// <param name="limits">The saws.</param>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<SawViolation> Check(ImmutableArray<RunMaterial> materials, SawLimits limits, RunPlan plan)
    {
        var bench = new Bench(materials, limits, plan);
        FormRules.Check(bench);
        bench.LayStock();
        foreach (Run run in plan.Runs)
        {
            TrialRules.Check(bench, run);
            foreach (RunCut cut in run.Cuts) bench.Make(run, cut);
        }
        EndRules.Check(bench);
        for (int material = 0; material < materials.Length; material++)
        {
            if (materials[material] is RunSheets sheets)
                for (int i = 0; i < sheets.Layout.Sheets.Length; i++) new SheetEnd(bench, sheets, material, i).Check();
            if (materials[material] is RunBoards boards)
                for (int i = 0; i < boards.Layout.Boards.Length; i++) new BoardEnd(bench, boards, material, i).Check();
        }
        return bench.Found;
    }

    /// <summary>The same for what a planner gives back, with the layouts it gives back in place of those it was given.</summary>
    public static ImmutableArray<SawViolation> Check(ImmutableArray<RunMaterial> materials, SawLimits limits, OrderedRuns ordered) =>
        Check([.. materials.Select((m, i) => AsGivenBack(m, i, ordered))], limits, ordered.Plan);

    /// <summary>A material with its layout as it was given back.</summary>
    public static RunMaterial AsGivenBack(RunMaterial material, int index, OrderedRuns ordered) => material switch
    {
        RunSheets sheets => sheets with { Layout = ordered.Sheets[index] },
        RunBoards boards => boards with { Layout = ordered.Boards[index] },
        _ => material,
    };
}
