using System.Collections.Immutable;
using Setout.Cutting.Runs;
using Setout.Testing;
using Setout.Testing.Runs;

namespace Setout.Solvers.Tests.Runs;

/// <summary>Whole plans of random jobs: the settings that the planner calls fewest, against the programme on the very cuts of the plan, the smaller ones.</summary>
public sealed class FewestRunsTests
{
    private const int MostCuts = 13;

    [Fact]
    public void Plan_RandomJobs_HasTheFewestRunsWhereItSaysSo()
    {
        int compared = 0, back = 0;
        RandomJobs.Jobs.Holds(job =>
        {
            RunPlan plan = new RunPlanner().Plan(job.Materials, job.Limits).Plan;
            (BatchTask[] all, HashSet<int> free) = Tasks(plan);
            BatchTask[] tasks = FewestBatches.Merged(all);
            if (tasks.Length is 0 or > MostCuts || FewestBatches.Of(tasks, free) is not { } fewest) return;
            Interlocked.Increment(ref compared);
            if (fewest > tasks.Select(t => t.Label).Where(l => !free.Contains(l)).Distinct().Count()) Interlocked.Increment(ref back);
            Assert.True(plan.LeastSettings <= fewest && fewest <= plan.Settings, $"{plan.Settings} settings, {plan.LeastSettings} said to be the least; {fewest} are");
        }, iter: 120);
        Assert.True(compared > 40 && back > 2, $"{compared} plans were compared, {back} of them come back to a setting.");
    }

    // A cut needs the one that made its blank; its label is what is set at the saw, and free where nothing is.
    private static (BatchTask[] Tasks, HashSet<int> Free) Tasks(RunPlan plan)
    {
        var labels = new Dictionary<(SawWay, string, long), int>();
        var madeBy = new Dictionary<int, int>();
        var tasks = new List<BatchTask>();
        foreach (Run run in plan.Runs)
            foreach (RunCut cut in run.Cuts)
            {
                labels.TryAdd(SawSimulator.Setting(run), labels.Count);
                foreach (int made in new[] { cut.Off, cut.Rest }.OfType<int>()) madeBy[made] = tasks.Count;
                tasks.Add(new(labels[SawSimulator.Setting(run)], madeBy.TryGetValue(cut.Blank, out int maker) ? [maker] : []));
            }
        return ([.. tasks], [.. plan.Runs.Where(r => !SawSimulator.IsSet(r)).Select(r => labels[SawSimulator.Setting(r)])]);
    }
}
