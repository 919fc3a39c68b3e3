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
    public static Answer Sheets(SheetInstance instance, Func<SheetOutcome> solve)
    {
        SheetOutcome outcome;
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
        wrong.AddRange(SheetChecker.Check(instance, outcome.Layout).Select(v => v.ToString()));
        wrong.AddRange(SheetChecker.CheckFigures(instance, outcome.Layout, outcome.Score.Cost, outcome.Score.Sheets).Select(v => v.ToString()));
        Dictionary<string, SheetPart> parts = instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var laid = new Dictionary<string, int>(StringComparer.Ordinal);
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
        return Conclude(outcome.Score.Sheets, outcome.Score.Cost.Amount, cost, outcome.Bound, outcome.Status, left, wrong, seconds);
    }

    public static Answer Boards(BoardInstance instance, Func<BoardOutcome> solve)
    {
        BoardOutcome outcome;
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
        wrong.AddRange(BoardChecker.Check(instance, outcome.Layout).Select(v => v.ToString()));
        wrong.AddRange(BoardChecker.CheckFigures(instance, outcome.Layout, outcome.Score.Cost, outcome.Score.Boards).Select(v => v.ToString()));
        Dictionary<string, BoardPart> parts = instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var laid = new Dictionary<string, int>(StringComparer.Ordinal);
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
        return Conclude(outcome.Score.Boards, outcome.Score.Cost.Amount, cost, outcome.Bound, outcome.Status, left, wrong, seconds);
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

    private static Answer Conclude(int used, decimal claimed, decimal cost, LayoutBound bound, OutcomeStatus status, int left, ImmutableArray<string>.Builder wrong, double seconds)
    {
        if (claimed != cost) wrong.Add($"a cost of {claimed} is claimed, the stock costs {cost}");
        bool proven = status == OutcomeStatus.Proven;
        if (proven && (left > 0 || cost != bound.Cost.Amount)) wrong.Add($"called proven at {cost} with {left} parts left out, the bound is {bound.Cost.Amount}");
        if (left == 0 && cost < bound.Cost.Amount) wrong.Add($"the cost of {cost} is below the bound of {bound.Cost.Amount}");
        return new(used, cost, bound.Cost.Amount, proven, left, wrong.ToImmutable(), seconds);
    }

    private static IEnumerable<string> PartsOf(CutNode node) => node switch
    {
        PartNode part => [part.PartId],
        Division division => division.Slices.SelectMany(s => PartsOf(s.Content)),
        _ => [],
    };
}
