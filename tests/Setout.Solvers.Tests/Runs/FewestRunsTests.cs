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
            BatchTask[] tasks = FewestBatches.Merged(Tasks(plan));
            if (tasks.Length is 0 or > MostCuts || FewestBatches.Of(tasks) is not { } fewest) return;
            Interlocked.Increment(ref compared);
            if (fewest > tasks.Select(t => t.Label).Distinct().Count()) Interlocked.Increment(ref back);
            Assert.True(plan.LeastSettings <= fewest && fewest <= plan.Runs.Length, $"{plan.Runs.Length} runs, {plan.LeastSettings} said to be the least; {fewest} are");
        }, iter: 120);
        Assert.True(compared > 40 && back > 2, $"{compared} plans were compared, {back} of them come back to a setting.");
    }

    // A cut needs the one that made its blank; its label is all that is set at the saw.
    private static BatchTask[] Tasks(RunPlan plan)
    {
        var labels = new Dictionary<(SawWay, RunKind, Core.Measures.Length), int>();
        var madeBy = new Dictionary<int, int>();
        var tasks = new List<BatchTask>();
        foreach (Run run in plan.Runs)
            foreach (RunCut cut in run.Cuts)
            {
                labels.TryAdd((run.Way, run.Kind, run.Figure), labels.Count);
                foreach (int made in new[] { cut.Off, cut.Rest }.OfType<int>()) madeBy[made] = tasks.Count;
                tasks.Add(new(labels[(run.Way, run.Kind, run.Figure)], madeBy.TryGetValue(cut.Blank, out int maker) ? [maker] : []));
            }
        return [.. tasks];
    }
}
