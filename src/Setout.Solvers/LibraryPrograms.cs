using Google.OrTools.Sat;
using Setout.Cutting.Programs;

namespace Setout.Solvers;

/// <summary>
/// Linear and integer programs by the optimisation library: a simplex method for the linear ones, a constraint solver on one thread
/// for the whole numbers. One thread and counted effort, because only then two runs are equal.
/// </summary>
public sealed class LibraryPrograms : IPrograms
{
    /// <summary>The one value; it holds no state.</summary>
    public static LibraryPrograms Instance { get; } = new();

    /// <inheritdoc/>
    public ILinearProgram Linear() => new SimplexProgram();

    /// <inheritdoc/>
    /// <exception cref="OverflowException">A row or the cost can pass 2^62.</exception>
    public IntegerAnswer Choose(IntegerProgram program, IntegerOptions options, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(program);
        ArgumentOutOfRangeException.ThrowIfNegative(options.Effort);
        if (stop.IsCancellationRequested) return new(null, false, 0);
        var model = new CpModel();
        IntVar[] counts = [.. program.Columns.Select((c, i) => model.NewIntVar(0, c.Most, $"c{i}"))];
        var rows = new List<(int Column, long Count)>[program.Rows.Count];
        for (int r = 0; r < rows.Length; r++) rows[r] = [];
        for (int c = 0; c < counts.Length; c++)
            foreach ((int row, long count) in program.Columns[c].Entries) rows[row].Add((c, count));
        for (int r = 0; r < rows.Length; r++)
            model.AddLinearConstraint(Sum(counts, rows[r]), program.Rows[r].Low, program.Rows[r].High);
        LinearExpr cost = Sum(counts, [.. program.Columns.Select((c, i) => (i, c.Cost))]);
        if (program.Below is { } below) model.Add(cost <= below - 1);
        model.Minimize(cost);
        for (int c = 0; c < counts.Length; c++) model.AddHint(counts[c], program.Columns[c].Hint);
        // Ctrl-C is the host's to answer: by itself the library would take the signal over, and give it back to nobody.
        var solver = new CpSolver
        {
            StringParameters = FormattableString.Invariant(
                $"num_workers:1 random_seed:{options.Seed & 0x7fffffff} max_deterministic_time:{options.Effort:R} interleave_search:false catch_sigint_signal:false"),
        };
        using CancellationTokenRegistration ending = stop.Register(solver.StopSearch);
        CpSolverStatus status = solver.Solve(model);
        bool found = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
        return new(
            found ? [.. counts.Select(v => checked((int)solver.Value(v)))] : null,
            status is CpSolverStatus.Optimal or CpSolverStatus.Infeasible,
            solver.Response?.DeterministicTime ?? 0);
    }

    private static LinearExpr Sum(IntVar[] counts, List<(int Column, long Count)> terms) =>
        LinearExpr.WeightedSum(terms.Select(t => counts[t.Column]), terms.Select(t => t.Count));
}
