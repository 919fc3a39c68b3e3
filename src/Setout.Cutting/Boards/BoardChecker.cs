using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Boards;

/// <summary>
/// Judges a board layout without knowing how it was made: it follows the saw along each board in ticks and recomputes every
/// figure. It shares only the values with the solvers. One method a rule; all violations are returned.
/// </summary>
public static class BoardChecker
{
    /// <summary>Everything that is wrong with a layout; empty when it is sound.</summary>
    public static ImmutableArray<Violation> Check(BoardInstance instance, BoardLayout layout)
    {
        ImmutableArray<Violation> unknown = [.. KnownNames(instance, layout)];
        if (!unknown.IsEmpty) return unknown;
        ImmutableArray<Violation>.Builder found = ImmutableArray.CreateBuilder<Violation>();
        for (int i = 0; i < layout.Boards.Length; i++)
        {
            LaidBoard board = layout.Boards[i];
            long rest = RestBeyondParts(instance, board);
            found.AddRange(PartsFitBetweenTrims(board, rest, i + 1));
            found.AddRange(LeftOverIsWhatRemains(instance, board, rest, i + 1));
            found.AddRange(LeftOverIsLabelled(instance, board, i + 1));
            found.AddRange(BoardIsUsed(board, i + 1));
        }
        found.AddRange(DemandIsMet(instance, layout));
        found.AddRange(StockLimitsHold(instance, layout));
        return found.ToImmutable();
    }

    /// <summary>What is wrong with the figures claimed for a sound layout: its cost and count of boards, recomputed here.</summary>
    public static ImmutableArray<Violation> CheckFigures(BoardInstance instance, BoardLayout layout, Money claimedCost, int claimedBoards)
    {
        ImmutableArray<Violation>.Builder found = ImmutableArray.CreateBuilder<Violation>();
        decimal cost = 0;
        foreach (LaidBoard board in layout.Boards)
            foreach (BoardStock stock in instance.Stock)
                if (stock.Id == board.StockId) cost += stock.Cost.Amount;
        if (cost != claimedCost.Amount) found.Add(new(nameof(CheckFigures), 0, $"the stock costs {new Money(cost)}, but {claimedCost} is claimed"));
        if (layout.Boards.Length != claimedBoards) found.Add(new(nameof(CheckFigures), 0, $"{layout.Boards.Length} boards are used, but {claimedBoards} are claimed"));
        return found.ToImmutable();
    }

    // What remains of the trued board beyond the last part, that part's own kerf not yet taken; below zero when they do not fit.
    private static long RestBeyondParts(BoardInstance instance, LaidBoard board)
    {
        BoardStock stock = instance.Stock.First(s => s.Id == board.StockId);
        long at = stock.Trim.Start.Ticks;
        bool first = true;
        foreach (string id in board.PartIds)
        {
            if (!first) at += instance.Kerf.Ticks;
            at += instance.Parts.First(p => p.Id == id).Length.Ticks;
            first = false;
        }
        return stock.Length.Ticks - stock.Trim.End.Ticks - at;
    }

    private static IEnumerable<Violation> KnownNames(BoardInstance instance, BoardLayout layout)
    {
        HashSet<string> stock = [.. instance.Stock.Select(s => s.Id)], parts = [.. instance.Parts.Select(p => p.Id)];
        for (int i = 0; i < layout.Boards.Length; i++)
        {
            if (!stock.Contains(layout.Boards[i].StockId)) yield return new(nameof(KnownNames), i + 1, $"there is no stock {layout.Boards[i].StockId}");
            foreach (string id in layout.Boards[i].PartIds.Where(id => !parts.Contains(id))) yield return new(nameof(KnownNames), i + 1, $"there is no part {id}");
        }
        foreach (PartCount left in layout.LeftOut.Where(l => !parts.Contains(l.PartId)))
            yield return new(nameof(KnownNames), 0, $"there is no part {left.PartId} to leave out");
    }

    private static IEnumerable<Violation> PartsFitBetweenTrims(LaidBoard board, long rest, int place)
    {
        if (rest < 0) yield return new(nameof(PartsFitBetweenTrims), place, $"parts and kerfs are {Length.FromTicks(-rest)} longer than the trued {board.StockId}");
    }

    private static IEnumerable<Violation> LeftOverIsWhatRemains(BoardInstance instance, LaidBoard board, long rest, int place)
    {
        long left = Math.Max(0, rest - instance.Kerf.Ticks);
        if (board.LeftOver.Ticks != left) yield return new(nameof(LeftOverIsWhatRemains), place, $"{board.LeftOver} is said to be left, it is {Length.FromTicks(left)}");
    }

    private static IEnumerable<Violation> LeftOverIsLabelled(BoardInstance instance, LaidBoard board, int place)
    {
        LeftOverUse use = board.LeftOver.Ticks <= 0 ? LeftOverUse.None
            : board.LeftOver.Ticks >= instance.KeepFrom.Ticks ? LeftOverUse.Keep
            : LeftOverUse.Waste;
        if (board.Use != use) yield return new(nameof(LeftOverIsLabelled), place, $"a left-over of {board.LeftOver} is called {board.Use}, it is {use}: kept from {instance.KeepFrom}");
    }

    private static IEnumerable<Violation> BoardIsUsed(LaidBoard board, int place)
    {
        if (board.PartIds.IsDefaultOrEmpty) yield return new(nameof(BoardIsUsed), place, $"no part is cut from this {board.StockId}");
    }

    private static IEnumerable<Violation> DemandIsMet(BoardInstance instance, BoardLayout layout)
    {
        Dictionary<string, long> laid = layout.Boards.SelectMany(b => b.PartIds).CountBy(id => id).ToDictionary(p => p.Key, p => (long)p.Value, StringComparer.Ordinal);
        Dictionary<string, long> left = layout.LeftOut.GroupBy(l => l.PartId, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(l => (long)l.Count), StringComparer.Ordinal);
        foreach (PartCount odd in layout.LeftOut.Where(l => l.Count < 1))
            yield return new(nameof(DemandIsMet), 0, $"{odd.Count} of part {odd.PartId} are left out; a left-out part counts 1 or more");
        foreach (BoardPart part in instance.Parts)
        {
            long have = laid.GetValueOrDefault(part.Id), missing = left.GetValueOrDefault(part.Id);
            if (have + missing != part.Count)
                yield return new(nameof(DemandIsMet), 0, $"part {part.Id} is laid {have} times and left out {missing} times, {part.Count} are wanted");
        }
    }

    private static IEnumerable<Violation> StockLimitsHold(BoardInstance instance, BoardLayout layout) =>
        from stock in instance.Stock
        let used = layout.Boards.Count(b => b.StockId == stock.Id)
        where stock.Limit is { } limit && used > limit
        select new Violation(nameof(StockLimitsHold), 0, $"{used} of {stock.Id} are used, there are {stock.Limit}");
}
