using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Boards.Search;

/// <summary>The board solver that needs no library: <see cref="CompletionSearch"/>, then each board exchanged for the cheapest stock that holds its parts.</summary>
internal sealed class CompletionBoardSolver : IBoardSolver
{
    /// <inheritdoc/>
    public BoardOutcome Solve(BoardInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(options.WorkBudget);
        using var meter = new SearchMeter(options, progress, cancel);
        LayoutBound? bound = BoardBounds.Of(instance);
        var model = new BoardModel(instance);
        var search = new CompletionSearch(model, new SeededRandom(options.Seed), meter,
            work => bound is not null && work.Cost == bound.Cost.Amount && work.Boards.Count == bound.Count);
        search.Run();
        List<Filling> boards = BoardWriter.Cheapest(model, search.Best);
        BoardLayout layout = BoardWriter.Write(model, boards);
        BoardScore score = BoardObjective.Score(instance, layout);
        if (bound is not null && search.Exhausted && score.Cost > bound.Cost && score.Cost.Amount == search.BestCost)
            bound = bound with { Cost = score.Cost, Count = model.Stock.Length == 1 ? score.Boards : bound.Count, Method = "search of all layouts" };
        return BoardWriter.Conclude(instance, layout, score, bound, meter, search.Exhausted ? "completion, all layouts" : "completion");
    }
}
