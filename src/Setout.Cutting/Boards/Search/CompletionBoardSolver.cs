using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Boards.Search;

/// <summary>The first slice's board solver: <see cref="CompletionSearch"/>, then each board exchanged for the cheapest stock that holds its parts.</summary>
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
        List<Filling> boards = Cheapest(model, search.Best);
        BoardLayout layout = Write(model, boards);
        BoardScore score = BoardObjective.Score(instance, layout);
        if (bound is not null && search.Exhausted && score.Cost > bound.Cost && score.Cost.Amount == search.BestCost)
            bound = bound with { Cost = score.Cost, Count = model.Stock.Length == 1 ? score.Boards : bound.Count, Method = "search of all layouts" };
        return Conclude(instance, layout, score, bound, meter, search.Exhausted ? "completion, all layouts" : "completion");
    }

    private static List<Filling> Cheapest(BoardModel model, List<Filling> boards)
    {
        int[] left = [.. model.Stock.Select((s, i) => s.Limit - boards.Count(b => b.Stock == i))];
        var found = new List<Filling>(boards.Count);
        foreach (Filling board in boards)
        {
            int best = board.Stock;
            for (int s = 0; s < model.Stock.Length; s++)
                if (left[s] > 0 && model.Stock[s].Length >= board.Used && model.Stock[s].Cost < model.Stock[best].Cost) best = s;
            left[board.Stock]++;
            left[best]--;
            found.Add(board with { Stock = best });
        }
        return found;
    }

    private static BoardLayout Write(BoardModel model, List<Filling> boards)
    {
        long kerf = model.Instance.Kerf.Ticks;
        Queue<string>[] ids = [.. model.Types.Select(t => new Queue<string>(t.Parts.SelectMany(p => Enumerable.Repeat(p.Id, p.Count))))];
        ImmutableArray<LaidBoard>.Builder laid = ImmutableArray.CreateBuilder<LaidBoard>(boards.Count);
        foreach (Filling board in boards.OrderByDescending(b => (double)b.Used / model.Stock[b.Stock].Length))
        {
            ImmutableArray<string> parts = [.. board.Parts.SelectMany(p => Enumerable.Range(0, p.Count).Select(_ => ids[p.Type].Dequeue()))];
            var left = Length.FromTicks(Math.Max(0, model.Stock[board.Stock].Length - board.Used - kerf));
            LeftOverUse use = left.Sign == 0 ? LeftOverUse.None : left >= model.Instance.KeepFrom ? LeftOverUse.Keep : LeftOverUse.Waste;
            laid.Add(new(model.Stock[board.Stock].Stock.Id, parts, left, use));
        }
        Dictionary<string, int> done = laid.SelectMany(b => b.PartIds).CountBy(id => id).ToDictionary(StringComparer.Ordinal);
        return new(laid.ToImmutable(), [.. model.Instance.Parts
            .Select(p => new PartCount(p.Id, p.Count - done.GetValueOrDefault(p.Id)))
            .Where(p => p.Count > 0)]);
    }

    private static BoardOutcome Conclude(BoardInstance instance, BoardLayout layout, BoardScore score, LayoutBound? bound, SearchMeter meter, string foundBy)
    {
        ImmutableArray<CuttingReason>.Builder reasons = ImmutableArray.CreateBuilder<CuttingReason>();
        reasons.AddRange(instance.Validate());
        if (bound is null) reasons.Add(new(ReasonKind.StockTooLittle, "", "all stock together is proven too little for the parts"));
        bool infeasible = reasons.Count > 0;
        int waiting = layout.LeftOut.Where(l => !reasons.Any(r => r.Subject == l.PartId)).Sum(l => l.Count);
        if (bound is not null && waiting > 0 && !meter.Cancelled)
            reasons.Add(new(ReasonKind.StockRanOut, "", $"the stock ran out with {waiting} parts not laid; another layout might hold them"));
        if (meter.Cancelled) reasons.Add(new(ReasonKind.Cancelled, "", "the search was cancelled; this is the best layout so far"));
        bound ??= new(Money.Zero, 0, "none: the stock is too little");
        bool whole = layout.LeftOut.IsEmpty;
        bool proven = whole && score.Cost == bound.Cost && (score.Cost.Amount > 0 || score.Boards == bound.Count);
        OutcomeStatus status = infeasible && !whole ? OutcomeStatus.Infeasible
            : proven ? OutcomeStatus.Proven
            : meter.Cancelled || !whole ? OutcomeStatus.Stopped
            : OutcomeStatus.Feasible;
        if (status == OutcomeStatus.Proven) reasons.Clear();
        return new(layout, status, score, bound, reasons.ToImmutable(), new(meter.Work, meter.Rounds, meter.Improvements, foundBy));
    }
}
