namespace Setout.Quality.Everyday;

/// <summary>Lays out everyday jobs within the time a person waits, and tells how much of it is proven.</summary>
internal static class EverydayRun
{
    private sealed record JobResult(EverydayJob Job, Answer[] Answers, double FirstSeconds, decimal FirstCost)
    {
        public decimal Cost => Answers.Sum(a => a.Cost);

        public decimal Bound => Answers.Sum(a => a.Bound ?? 0);

        public int Sheets => Answers.Sum(a => a.StockUsed);

        public double Gap => (double)(Cost / Bound) - 1;

        public double Seconds => Answers.Sum(a => a.Seconds);

        public bool Proven => Array.TrueForAll(Answers, a => a.Proven);
    }

    public static int Run(Options options)
    {
        int count = checked((int)(options.Whole("everyday") ?? throw new UsageException("--everyday needs a number of jobs.")));
        double seconds = options.Number("seconds", 2);
        BenchSolver solver = BenchSolvers.OwnNamed(options.Text("solver") ?? "library");
        var file = new ResultFile(options.Text("out"), resume: false);
        var results = new List<JobResult>();
        int violations = 0;
        for (int number = 1; number <= count; number++)
        {
            EverydayJob job = EverydayJobs.Make(options.Seed, number);
            (Answer[] first, double firstSeconds) = Solve(job, solver, options, 0, 0, null);
            (Answer[] answers, _) = Solve(job, solver, options, null, seconds, file);
            results.Add(new(job, answers, firstSeconds, first.Sum(a => a.Cost)));
            foreach (string wrong in first.Concat(answers).SelectMany(a => a.Violations))
            {
                violations++;
                Console.Error.WriteLine($"job {number}: {wrong}");
            }
        }
        Print(results, seconds, violations);
        if (options.Has("long-seconds")) violations += Compare(results, solver, options, seconds);
        return violations > 0 ? 1 : 0;
    }

    // A first look at each material takes a sixteenth of the seconds; what is left goes evenly to those that are not proven. The time of both counts.
    private static (Answer[] Answers, double Seconds) Solve(EverydayJob job, BenchSolver solver, Options options, long? budget, double seconds, ResultFile? file)
    {
        var answers = new Answer[job.Materials.Length];
        Answer One(int material, double time)
        {
            using var until = new SolveTime(budget, time, options.Seed);
            return solver.Sheets(job.Materials[material].Instance.With(options), until);
        }
        for (int i = 0; i < answers.Length; i++) answers[i] = One(i, seconds / 16);
        for (int i = 0; i < answers.Length && budget is null; i++)
        {
            if (answers[i].Proven) continue;
            int waiting = answers.Skip(i).Count(a => !a.Proven);
            Answer longer = One(i, Math.Max(0, seconds - answers.Sum(a => a.Seconds)) / waiting);
            Answer better = longer.Cost <= answers[i].Cost ? longer : answers[i];
            answers[i] = better with { Bound = Greater(longer.Bound, answers[i].Bound), Seconds = longer.Seconds + answers[i].Seconds };
        }
        for (int i = 0; i < answers.Length; i++)
            file?.Add(new($"E-{job.Number:000}-{job.Materials[i].Name}", "EV", answers[i].StockUsed, answers[i].Cost, answers[i].Bound, answers[i].Proven, answers[i].Seconds, answers[i].Violations.Length, answers[i].LeftOut));
        return (answers, answers.Sum(a => a.Seconds));
    }

    private static decimal? Greater(decimal? a, decimal? b) => a is { } x && b is { } y ? Math.Max(x, y) : a ?? b;

    private static void Print(List<JobResult> results, double seconds, int violations)
    {
        Answer[] all = [.. results.SelectMany(r => r.Answers)];
        Console.WriteLine($"{results.Count} invented jobs, {results.Min(r => r.Job.Parts)} to {results.Max(r => r.Job.Parts)} parts ({results.Average(r => r.Job.Parts):0} on average), {results.Sum(r => r.Sheets)} sheets, {seconds} s a job");
        Console.WriteLine($"proven: {(double)results.Count(r => r.Proven) / results.Count:0.0%} of jobs, {(double)all.Count(a => a.Proven) / all.Length:0.0%} of materials");
        Console.WriteLine($"cost above the bound: mean {results.Average(r => r.Gap):0.00%} a job, worst {results.Max(r => r.Gap):0.0%}; in all {results.Sum(r => r.Cost):0.00} to {results.Sum(r => r.Bound):0.00}");
        foreach (IGrouping<string, (string Name, Answer Answer)> material in results.SelectMany(r => r.Job.Materials.Select((m, i) => (m.Name, Answer: r.Answers[i]))).GroupBy(m => m.Name))
            Console.WriteLine($"  {material.Key,-8} {material.Sum(m => m.Answer.StockUsed),6} sheets, {material.Sum(m => m.Answer.Cost),10:0.00} to a bound of {material.Sum(m => m.Answer.Bound),10:0.00}, {(double)material.Count(m => m.Answer.Proven) / material.Count():0.0%} proven");
        // The first job of all pays for the compiler; it is told by itself.
        double[] first = [.. results.Skip(1).Select(r => r.FirstSeconds).Order()];
        string warm = first.Length > 0 ? $"p50 {first[first.Length / 2] * 1000:0} ms, max {first[^1] * 1000:0} ms" : "none";
        Console.WriteLine($"first answer of all four materials: {warm}; the very first {results[0].FirstSeconds * 1000:0} ms; they cost {(double)(results.Sum(r => r.FirstCost) / results.Sum(r => r.Cost)) - 1:0.0%} more than the last");
        Console.WriteLine($"time taken: mean {results.Average(r => r.Seconds):0.00} s a job, longest {results.Max(r => r.Seconds):0.00} s");
        Console.WriteLine($"violations: {violations}");
    }

    private static int Compare(List<JobResult> results, BenchSolver solver, Options options, double seconds)
    {
        double longSeconds = options.Number("long-seconds", 60);
        int jobs = (int)Math.Min(results.Count, options.Whole("long-jobs") ?? 20), more = 0, violations = 0, proven = 0;
        var above = new List<int>();
        decimal cost = 0, longCost = 0;
        foreach (JobResult result in results.Take(jobs))
        {
            (Answer[] answers, _) = Solve(result.Job, solver, options, null, longSeconds, null);
            violations += answers.Sum(a => a.Violations.Length);
            int difference = result.Sheets - answers.Sum(a => a.StockUsed);
            above.Add(difference);
            if (difference > 0) more++;
            if (Array.TrueForAll(answers, a => a.Proven)) proven++;
            cost += result.Cost;
            longCost += answers.Sum(a => a.Cost);
        }
        Console.WriteLine($"against {longSeconds} s on {jobs} jobs: {seconds} s takes {above.Sum()} sheets more in all, {above.Max()} more at worst, more in {more} jobs; it costs {(double)(cost / longCost) - 1:0.00%} more; the long runs prove {proven} jobs; violations {violations}");
        return violations;
    }
}
