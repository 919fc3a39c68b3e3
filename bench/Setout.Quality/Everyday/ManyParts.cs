using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Cutting;
using Setout.Cutting.Sheets;

namespace Setout.Quality.Everyday;

/// <summary>
/// One material and very many parts: what it costs against the bound, how much memory it takes and how soon a cancel is answered. Invented: a
/// tenth as many sizes as parts, 3 to 40 in by 2 to 24 in in sixteenths, half of them with their grain kept.
/// </summary>
internal static class ManyParts
{
    public static int Run(Options options)
    {
        int count = checked((int)(options.Whole("many") ?? throw new UsageException("--many needs a number of parts.")));
        double seconds = options.Number("seconds", 10);
        ISheetSolver solver = BenchSolvers.Sheets(options.Text("solver") ?? "library");
        SheetInstance instance = Make(count, options.Seed).With(options);
        Console.WriteLine($"{instance.PartsInAll} invented parts of {instance.Parts.Length} sizes");
        using var time = new SolveTime(options.Whole("budget"), seconds, options.Seed);
        SheetOutcome? outcome = null;
        Answer answer = Judge.Sheets(instance, () => outcome = solver.Solve(instance, time.Options));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{answer.StockUsed} sheets at {answer.Cost}, bound {answer.Bound}, {(answer.Bound > 0 ? (double)(answer.Cost / answer.Bound.Value) - 1 : 0):0.00%} above it, in {answer.Seconds:0.0} s, found by {outcome?.Statistics.FoundBy}"));
        using (var process = Process.GetCurrentProcess())
            Console.WriteLine($"peak working set {process.PeakWorkingSet64 / 1_000_000} MB");
        foreach (string wrong in answer.Violations.Take(5)) Console.Error.WriteLine(wrong);
        Console.WriteLine($"violations: {answer.Violations.Length}");

        double after = options.Number("cancel-after", 1);
        double slowest = 0;
        foreach (double share in (double[])[0.1, 0.3, 1, 3])
        {
            double late = CancelLatency(instance, solver, after * share, options.Seed);
            slowest = Math.Max(slowest, late);
            Console.WriteLine($"a cancel after {after * share:0.0} s is answered in {late * 1000:0} ms");
        }
        Console.WriteLine($"slowest {slowest * 1000:0} ms, the checker's time included");
        return answer.Violations.Length > 0 ? 1 : 0;
    }

    private static double CancelLatency(SheetInstance instance, ISheetSolver solver, double after, int seed)
    {
        using var cancel = new CancellationTokenSource();
        long asked = 0;
        using CancellationTokenRegistration stamp = cancel.Token.Register(() => Volatile.Write(ref asked, Stopwatch.GetTimestamp()));
        cancel.CancelAfter(TimeSpan.FromSeconds(after));
        solver.Solve(instance, new(long.MaxValue, seed), null, cancel.Token);
        return Volatile.Read(ref asked) is > 0 and long at ? Stopwatch.GetElapsedTime(at).TotalSeconds : 0;
    }

    internal static SheetInstance Make(int count, int seed)
    {
        var random = new JobRandom(seed);
        ImmutableArray<SheetPart>.Builder parts = ImmutableArray.CreateBuilder<SheetPart>();
        for (int left = count, i = 0; left > 0; i++)
        {
            int some = Math.Min(left, random.Between(1, 19));
            left -= some;
            parts.Add(new($"p{i}", Length.FromInches(random.Between(3 * 16, 40 * 16), 16), Length.FromInches(random.Between(2 * 16, 24 * 16), 16), some,
                random.Between(0, 1) == 0 ? GrainRule.Keep : GrainRule.Free));
        }
        var trim = EdgeTrim.AllRound(Length.FromInches(1, 4));
        return new(parts.ToImmutable(), [new("97x49", Length.FromInches(97), Length.FromInches(49), trim, new(52m), null)], Length.FromInches(1, 8), KeepRule.Nothing);
    }
}
