using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Cutting;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Quality.Everyday;

/// <summary>
/// The runs of invented jobs, each laid out at the budget of an everyday job: settings against the fewest that any order of the same cuts can have, and how long the planner takes. A shop with the
/// usual saws; one person lifts 2 square metres.
/// </summary>
internal static class RunsOfJobs
{
    public static int Run(Options options)
    {
        int count = checked((int)(options.Whole("runs") ?? throw new UsageException("--runs needs a number of jobs.")));
        ISheetSolver solver = BenchSolvers.Sheets(options.Text("solver") ?? "library");
        var results = new List<(RunPlan Plan, double Seconds)>();
        for (int number = 1; number <= count; number++)
        {
            EverydayJob job = EverydayJobs.Make(options.Seed, number);
            results.Add(Timed([.. job.Materials.Select(m => Laid(m.Name, m.Instance.With(options), solver, options))]));
        }
        Print(string.Create(CultureInfo.InvariantCulture, $"{count} invented jobs"), results);
        if (options.Whole("parts") is { } parts) Print($"one material, {parts} parts", [Timed([Laid("many", ManyParts.Make(checked((int)parts), options.Seed).With(options), solver, options)])]);
        return 0;
    }

    private static RunMaterial Laid(string name, SheetInstance instance, ISheetSolver solver, Options options) =>
        new RunSheets(name, [], instance, solver.Solve(instance, new(options.Whole("budget") ?? SolverOptions.DefaultWorkBudget, options.Seed)).Layout)
        {
            MostArea = Length.FromMillimetres(1000) * Length.FromMillimetres(2000),
        };

    private static (RunPlan, double) Timed(ImmutableArray<RunMaterial> materials)
    {
        long start = Stopwatch.GetTimestamp();
        RunPlan plan = new CheckedRunPlanner(new RunPlanner()).Plan(materials, Setout.Cutting.Runs.SawLimits.Usual).Plan;
        return (plan, Stopwatch.GetElapsedTime(start).TotalSeconds);
    }

    private static void Print(string what, List<(RunPlan Plan, double Seconds)> results)
    {
        int settings = results.Sum(r => r.Plan.Settings), least = results.Sum(r => r.Plan.LeastSettings);
        double[] seconds = [.. results.Select(r => r.Seconds).Order()];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{what}: {settings} settings, {results.Sum(r => r.Plan.Runs.Length)} runs for {results.Sum(r => r.Plan.Runs.Sum(n => n.Cuts.Length))} cuts, bound {least}, {((double)settings / least) - 1:0.0%} above it; {results.Count(r => r.Plan.IsFewest)} of {results.Count} proven fewest, worst {results.Max(r => (double)r.Plan.Settings / r.Plan.LeastSettings):0.00} times the bound; {results.Sum(r => r.Plan.Refusals.Length)} cuts refused; p50 {seconds[seconds.Length / 2] * 1000:0} ms, longest {seconds[^1] * 1000:0} ms"));
    }
}
