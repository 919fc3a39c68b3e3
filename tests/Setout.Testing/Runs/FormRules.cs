using Setout.Cutting.Runs;

namespace Setout.Testing.Runs;

/// <summary>Rules that need no blank on the bench.</summary>
internal static class FormRules
{
    public static void Check(Bench bench)
    {
        RunPlan plan = bench.Plan;
        for (int i = 0; i < plan.Blanks.Length; i++)
        {
            if (plan.Blanks[i].Id != i) bench.Wrong(SawRule.BlanksAreNumbered, $"blank {i} of the list has the id {plan.Blanks[i].Id}");
            if (i > 0 && plan.Blanks[i].Use == BlankUse.Stock && plan.Blanks[i - 1].Use != BlankUse.Stock && plan.Blanks[i - 1].Use != BlankUse.Part)
                bench.Wrong(SawRule.BlanksAreNumbered, $"stock {i} stands after what is cut from stock");
        }
        for (int i = 0; i < plan.Runs.Length; i++)
        {
            Run run = plan.Runs[i];
            if (run.Number != i + 1) bench.Wrong(SawRule.RunsAreNumbered, $"run {i + 1} has the number {run.Number}");
            if (run.Cuts.IsEmpty) bench.Wrong(SawRule.EveryRunCuts, $"run {i + 1} makes no cut", i + 1);
            OneSetting(bench, run);
            if (i > 0 && SawSimulator.Setting(run) == SawSimulator.Setting(plan.Runs[i - 1]))
                bench.Wrong(SawRule.NeighboursDiffer, $"runs {i} and {i + 1} are one: {run.Way}, {run.Kind} at {run.Figure}", i + 1);
        }
        int settings = plan.Runs.Count(SawSimulator.IsSet);
        if (plan.LeastSettings < 0 || plan.LeastSettings > settings || plan.Settings != settings)
            bench.Wrong(SawRule.LeastIsNotAbove, $"{plan.LeastSettings} settings are said to be the least of {plan.Settings}, there are {settings}");
    }

    private static void OneSetting(Bench bench, Run run)
    {
        bool marked = run.Figure.Sign == 0 && run.Kind is RunKind.True or RunKind.Clear or RunKind.Rough && run.Way is not SawWay.Fence;
        foreach (RunCut cut in run.Cuts)
            if (!marked && cut.Figure != run.Figure)
                bench.Wrong(SawRule.OneSettingARun, $"the run is set to {run.Figure}, blank {cut.Blank} is cut at {cut.Figure}", run.Number);
    }
}
