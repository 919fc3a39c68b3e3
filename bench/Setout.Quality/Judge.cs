using System.Collections.Immutable;
using System.Diagnostics;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Quality;

/// <summary>
/// Judges an outcome by the checker, and once more by a count of its own that shares nothing with the checker: parts laid against parts
/// wanted, cost of the stock, area of the parts against the sheet, and what the outcome says about itself.
/// </summary>
internal static class Judge
{
    public static Answer Sheets(SheetInstance instance, Func<SheetOutcome> solve) => Of(solve, (outcome, wrong) =>
    {
        wrong.AddRange(SheetChecker.Check(instance, outcome.Layout).Select(v => v.ToString()));
        wrong.AddRange(SheetChecker.CheckFigures(instance, outcome.Layout, outcome.Score.Cost, outcome.Score.Sheets).Select(v => v.ToString()));
        var laid = new Dictionary<string, int>(StringComparer.Ordinal);
        Dictionary<string, SheetPart> parts = instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        decimal cost = 0;
        foreach (LaidSheet sheet in outcome.Layout.Sheets)
        {
            SheetStock stock = instance.Stock.Single(s => s.Id == sheet.StockId);
            cost += stock.Cost.Amount;
            Int128 area = 0;
            foreach (string id in PartsOf(sheet.Root))
            {
                laid[id] = laid.GetValueOrDefault(id) + 1;
                SheetPart part = parts[id];
                area += (Int128)part.Along.Ticks * part.Across.Ticks;
            }
            if (area > (Int128)stock.Along.Ticks * stock.Across.Ticks) wrong.Add($"the parts on a {stock.Id} are larger than it");
        }
        int left = Left(instance.Parts.Select(p => (p.Id, p.Count)), laid, instance.Stock.All(s => s.Limit is not null), wrong);
        return new(outcome.Score.Sheets, outcome.Score.Cost.Amount, cost, outcome.Bound, outcome.Status, left);
    });

    public static Answer Boards(BoardInstance instance, Func<BoardOutcome> solve) => Of(solve, (outcome, wrong) =>
    {
        wrong.AddRange(BoardChecker.Check(instance, outcome.Layout).Select(v => v.ToString()));
        wrong.AddRange(BoardChecker.CheckFigures(instance, outcome.Layout, outcome.Score.Cost, outcome.Score.Boards).Select(v => v.ToString()));
        var laid = new Dictionary<string, int>(StringComparer.Ordinal);
        Dictionary<string, BoardPart> parts = instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        decimal cost = 0;
        foreach (LaidBoard board in outcome.Layout.Boards)
        {
            BoardStock stock = instance.Stock.Single(s => s.Id == board.StockId);
            cost += stock.Cost.Amount;
            long used = instance.Kerf.Ticks * (board.PartIds.Length - 1);
            foreach (string id in board.PartIds)
            {
                laid[id] = laid.GetValueOrDefault(id) + 1;
                used += parts[id].Length.Ticks;
            }
            if (used > stock.Trued.Ticks) wrong.Add($"the parts on a {stock.Id} are longer than it");
        }
        int left = Left(instance.Parts.Select(p => (p.Id, p.Count)), laid, instance.Stock.All(s => s.Limit is not null), wrong);
        return new(outcome.Score.Boards, outcome.Score.Cost.Amount, cost, outcome.Bound, outcome.Status, left);
    });

    // Times the solver alone; a layout that its own checker refuses is an answer too.
    private static Answer Of<TOutcome>(Func<TOutcome> solve, Func<TOutcome, ImmutableArray<string>.Builder, Recount> count)
    {
        TOutcome outcome;
        long start = Stopwatch.GetTimestamp();
        double seconds;
        try
        {
            outcome = solve();
            seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        }
        catch (BrokenLayoutException broken)
        {
            return new(0, 0, 0, false, 0, [.. broken.Violations.Select(v => v.ToString())], Stopwatch.GetElapsedTime(start).TotalSeconds);
        }
        ImmutableArray<string>.Builder wrong = ImmutableArray.CreateBuilder<string>();
        return Conclude(count(outcome, wrong), wrong, seconds);
    }

    private static int Left(IEnumerable<(string Id, int Count)> wanted, Dictionary<string, int> laid, bool limited, ImmutableArray<string>.Builder wrong)
    {
        int left = 0;
        foreach ((string id, int count) in wanted)
        {
            int have = laid.GetValueOrDefault(id);
            if (have > count) wrong.Add($"{have} of {id} are laid, {count} are wanted");
            left += Math.Max(0, count - have);
        }
        if (left > 0 && !limited) wrong.Add($"{left} parts are left out though stock has no limit");
        return left;
    }

    private static Answer Conclude(Recount of, ImmutableArray<string>.Builder wrong, double seconds)
    {
        decimal bound = of.Bound.Cost.Amount;
        if (of.Claimed != of.Cost) wrong.Add($"a cost of {of.Claimed} is claimed, the stock costs {of.Cost}");
        bool proven = of.Status == OutcomeStatus.Proven;
        if (proven && (of.Left > 0 || of.Cost != bound)) wrong.Add($"called proven at {of.Cost} with {of.Left} parts left out, the bound is {bound}");
        if (of.Left == 0 && of.Cost < bound) wrong.Add($"the cost of {of.Cost} is below the bound of {bound}");
        return new(of.Used, of.Cost, bound, proven, of.Left, wrong.ToImmutable(), seconds);
    }

    private static IEnumerable<string> PartsOf(CutNode node) => node switch
    {
        PartNode part => [part.PartId],
        Division division => division.Slices.SelectMany(s => PartsOf(s.Content)),
        _ => [],
    };

    // What an outcome claims beside what its stock and parts come to when counted here.
    private sealed record Recount(int Used, decimal Claimed, decimal Cost, LayoutBound Bound, OutcomeStatus Status, int Left);
}
