using System.Globalization;

namespace Setout.Quality;

/// <summary>
/// A part of size a cut with kerf k from a sheet of size S needs what a part of a + k needs on a sheet of S + k without kerf. So every
/// instance is solved twice with a counted budget: as it is, and with k taken off every part and every sheet and a kerf of k. Sheets, cost
/// and bound must be equal.
/// </summary>
internal static class KerfCheck
{
    public static int Run(Options options)
    {
        int kerf = checked((int)(options.Whole("kerf-check") ?? throw new UsageException("--kerf-check needs a whole number of millimetres.")));
        long budget = options.Whole("budget") ?? 200_000;
        BenchSolver solver = BenchSolvers.OwnNamed(options.Text("solver") ?? "library");
        IReadOnlyList<BenchInstance> instances = InstanceRun.Chosen(options.Needed("instances"), options);
        bool mayTurn = options.Text("variant") == "RG";
        // Every size is ten times as large at least, so that all stay above zero once the kerf is taken off.
        int scale = Math.Max(10, kerf + 1), differ = 0, violations = 0;
        foreach (BenchInstance instance in instances)
        {
            Answer Solve(int k)
            {
                using var time = new SolveTime(budget, 0, options.Seed);
                return instance.IsBoards
                    ? solver.Boards!(instance.Boards(scale, k), time)
                    : solver.Sheets(instance.Sheets(mayTurn, scale, k).With(options), time);
            }
            Answer without = Solve(0), with = Solve(kerf);
            violations += without.Violations.Length + with.Violations.Length;
            foreach (string wrong in without.Violations.Concat(with.Violations).Take(5)) Console.Error.WriteLine($"{instance.Id}: {wrong}");
            if ((without.StockUsed, without.Cost, without.Bound, without.LeftOut) == (with.StockUsed, with.Cost, with.Bound, with.LeftOut)) continue;
            differ++;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{instance.Id}: without kerf {without.StockUsed} at {without.Cost}, bound {without.Bound}; with {kerf} {with.StockUsed} at {with.Cost}, bound {with.Bound}"));
        }
        Console.WriteLine($"{instances.Count} instances at a kerf of {kerf} mm, sizes times {scale}, budget {budget}: {differ} differ, {violations} violations");
        return differ > 0 || violations > 0 ? 1 : 0;
    }
}
