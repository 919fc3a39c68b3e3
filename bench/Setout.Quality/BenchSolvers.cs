using System.Collections.Immutable;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Quality.Peers;
using Setout.Solvers;

namespace Setout.Quality;

/// <summary>What a solver found for an instance, judged. Peers that prove nothing have no bound. The seconds are those of the solver alone.</summary>
internal sealed record Answer(int StockUsed, decimal Cost, decimal? Bound, bool Proven, int LeftOut, ImmutableArray<string> Violations, double Seconds);

/// <summary>One row of the table of solvers.</summary>
/// <param name="Name">What it is called on the command line.</param>
/// <param name="Sheets">Lays out sheets within a time.</param>
/// <param name="Boards">Lays out boards; null where it cannot.</param>
/// <param name="OneStockOnly">True when it can only deal with one kind of sheet, as many as needed.</param>
internal sealed record BenchSolver(string Name, Func<SheetInstance, SolveTime, Answer> Sheets, Func<BoardInstance, SolveTime, Answer>? Boards, bool OneStockOnly = false)
{
    /// <summary>False for what this solver cannot deal with; such instances are left out and counted.</summary>
    public bool CanLay(BenchInstance instance) => instance.IsBoards
        ? Boards is not null
        : !OneStockOnly || (instance.Stock.Length == 1 && instance.Stock[0].Limit is null);
}

/// <summary>The table of solvers by name: the one place where another is added.</summary>
internal static class BenchSolvers
{
    // Our own solvers, which can be asked for layouts and proofs.
    private static readonly (string Name, ISheetSolver Sheets, IBoardSolver Boards)[] Own =
    [
        ("library", SheetSolvers.With(LibraryPrograms.Instance), BoardSolvers.With(LibraryPrograms.Instance)),
        ("default", SheetSolvers.Default, BoardSolvers.Default),
    ];

    // Peers, which may lay parts as no saw could cut them; they are compared by count only.
    private static readonly BenchSolver[] Others =
    [
        new("plain", PlainPacker.Lay, null),
        new("constraint", ConstraintPacker.Lay, null, OneStockOnly: true),
    ];

    /// <summary>Any solver, peers too.</summary>
    public static BenchSolver Named(string name) => Own.Select(Of).Concat(Others).FirstOrDefault(s => s.Name == name)
        ?? throw new UsageException($"There is no solver '{name}'. Solvers: {string.Join(", ", Own.Select(o => o.Name).Concat(Others.Select(o => o.Name)))}.");

    /// <summary>One of our own solvers, which alone give bounds and keep to a budget.</summary>
    public static BenchSolver OwnNamed(string name) => Of(OwnPair(name));

    /// <summary>One of our own sheet solvers by itself, for what needs more than an answer.</summary>
    public static ISheetSolver Sheets(string name) => OwnPair(name).Sheets;

    private static (string Name, ISheetSolver Sheets, IBoardSolver Boards) OwnPair(string name) => Own.Any(s => s.Name == name)
        ? Own.First(s => s.Name == name)
        : throw new UsageException($"'{name}' is not one of our own solvers: {string.Join(", ", Own.Select(s => s.Name))}.");

    private static BenchSolver Of((string Name, ISheetSolver Sheets, IBoardSolver Boards) own) => new(
        own.Name,
        (instance, time) => Judge.Sheets(instance, () => own.Sheets.Solve(instance, time.Options)),
        (instance, time) => Judge.Boards(instance, () => own.Boards.Solve(instance, time.Options)));
}
