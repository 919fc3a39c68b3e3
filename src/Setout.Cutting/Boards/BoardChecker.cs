using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Boards;

/// <summary>
/// Judges a board layout without knowing how it was made: it follows the saw along each lane and stretch in ticks and recomputes every
/// figure. It shares only the values with the solvers. One method a rule; all violations are returned.
/// </summary>
public static class BoardChecker
{
    /// <summary>Everything that is wrong with a layout; empty when it is sound.</summary>
    public static ImmutableArray<Violation> Check(BoardInstance instance, BoardLayout layout)
    {
        ImmutableArray<Violation> unknown = [.. KnownNames(instance, layout)];
        if (!unknown.IsEmpty) return unknown;
        Dictionary<string, BoardStock> stocks = instance.Stock.ToDictionary(s => s.Id, StringComparer.Ordinal);
        Dictionary<string, BoardPart> parts = instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        ImmutableArray<Violation>.Builder found = ImmutableArray.CreateBuilder<Violation>();
        for (int i = 0; i < layout.Boards.Length; i++)
        {
            LaidBoard board = layout.Boards[i];
            BoardStock stock = stocks[board.StockId];
            List<BoardStretch> clear = Clear(stock);
            found.AddRange(LanesFitTheWidth(board, stock, i + 1));
            found.AddRange(EveryStretchIsToldOnce(board, stock, clear.Count, i + 1));
            found.AddRange(BoardIsUsed(board, i + 1));
            foreach (LaidStretch stretch in board.Stretches.Where(s => s.Place >= 1 && s.Place <= clear.Count))
            {
                BoardStretch bin = clear[stretch.Place - 1];
                List<BoardStretch> places = Places(instance, parts, stretch, bin);
                found.AddRange(PartsFitBetweenTrims(stock, stretch, places, i + 1));
                found.AddRange(PartsLieClearOfDefects(stock, stretch, places, i + 1));
                found.AddRange(LeftOverIsWhatRemains(instance, stretch, bin, places, i + 1));
                found.AddRange(LeftOverIsLabelled(instance, stretch, i + 1));
            }
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

    // What no trim and no defect takes, found by walking from edge to edge of them: clear wherever none has begun that has not ended.
    private static List<BoardStretch> Clear(BoardStock stock)
    {
        Length end = stock.Length - stock.Trim.End;
        List<(Length From, Length To)> away = [(Length.Zero, stock.Trim.Start), .. stock.Defects.Select(d => (d.From, d.To)), (end, stock.Length)];
        List<Length> edges = [.. away.SelectMany(a => new[] { a.From, a.To }).Where(e => e >= stock.Trim.Start && e <= end).Distinct().Order()];
        var clear = new List<BoardStretch>();
        for (int i = 0; i + 1 < edges.Count; i++)
        {
            Length from = edges[i], to = edges[i + 1];
            if (!away.Any(a => a.From < to && a.To > from)) clear.Add(new(from, to));
        }
        return clear;
    }

    // Where each part lies on its board, whether or not it may lie there.
    private static List<BoardStretch> Places(BoardInstance instance, Dictionary<string, BoardPart> parts, LaidStretch stretch, BoardStretch bin)
    {
        var places = new List<BoardStretch>();
        Length at = bin.From;
        foreach (string id in stretch.PartIds)
        {
            if (places.Count > 0) at += instance.Kerf;
            places.Add(new(at, at + parts[id].Length));
            at = places[^1].To;
        }
        return places;
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

    private static IEnumerable<Violation> LanesFitTheWidth(LaidBoard board, BoardStock stock, int place)
    {
        int lanes = board.Stretches.Select(s => s.Lane).DefaultIfEmpty(0).Max();
        if (stock.Rip is not { } rip)
        {
            if (lanes > 1) yield return new(nameof(LanesFitTheWidth), place, $"{lanes} lanes are cut from {stock.Id}, which is not ripped");
            yield break;
        }
        Int128 needs = ((Int128)rip.LaneWidth.Ticks * lanes) + ((Int128)rip.Kerf.Ticks * Math.Max(0, lanes - 1));
        if (needs > rip.Width.Ticks)
            yield return new(nameof(LanesFitTheWidth), place, $"{lanes} lanes of {rip.LaneWidth} and the kerfs between them are wider than {stock.Id}, which is {rip.Width}");
    }

    private static IEnumerable<Violation> EveryStretchIsToldOnce(LaidBoard board, BoardStock stock, int stretches, int place)
    {
        int lanes = 1;
        if (stock.Rip is { } rip)
        {
            lanes = 0;
            for (Int128 at = rip.LaneWidth.Ticks; at <= rip.Width.Ticks; at += rip.LaneWidth.Ticks + rip.Kerf.Ticks) lanes++;
        }
        HashSet<(int, int)> told = [];
        foreach (LaidStretch stretch in board.Stretches)
        {
            if (stretch.Lane < 1 || stretch.Place < 1 || stretch.Place > stretches)
                yield return new(nameof(EveryStretchIsToldOnce), place, $"{stock.Id} has no stretch {stretch.Place} in lane {stretch.Lane}; it has {stretches} in each of {lanes}");
            if (!told.Add((stretch.Lane, stretch.Place)))
                yield return new(nameof(EveryStretchIsToldOnce), place, $"stretch {stretch.Place} of lane {stretch.Lane} is told twice");
        }
        if (told.Count < (long)lanes * stretches)
            yield return new(nameof(EveryStretchIsToldOnce), place, $"{told.Count} stretches of {stock.Id} are told, it has {stretches} in each of {lanes} lanes");
    }

    private static IEnumerable<Violation> PartsFitBetweenTrims(BoardStock stock, LaidStretch stretch, List<BoardStretch> places, int place)
    {
        if (places.Count == 0) yield break;
        Length end = stock.Length - stock.Trim.End;
        if (places[0].From < stock.Trim.Start)
            yield return new(nameof(PartsFitBetweenTrims), place, $"the first part of lane {stretch.Lane} lies {stock.Trim.Start - places[0].From} within the trim of {stock.Id}");
        if (places[^1].To > end)
            yield return new(nameof(PartsFitBetweenTrims), place, $"parts and kerfs are {places[^1].To - end} longer than the trued {stock.Id}");
    }

    private static IEnumerable<Violation> PartsLieClearOfDefects(BoardStock stock, LaidStretch stretch, List<BoardStretch> places, int place)
    {
        for (int i = 0; i < places.Count; i++)
            foreach (BoardStretch defect in stock.Defects)
                if (places[i].From < defect.To && places[i].To > defect.From)
                    yield return new(nameof(PartsLieClearOfDefects), place, $"part {stretch.PartIds[i]} lies from {places[i].From} to {places[i].To} in lane {stretch.Lane}, over the defect from {defect.From} to {defect.To}");
    }

    private static IEnumerable<Violation> LeftOverIsWhatRemains(BoardInstance instance, LaidStretch stretch, BoardStretch bin, List<BoardStretch> places, int place)
    {
        Length left = places.Count == 0 ? bin.Extent : Length.Max(Length.Zero, bin.To - places[^1].To - instance.Kerf);
        if (stretch.LeftOver != left) yield return new(nameof(LeftOverIsWhatRemains), place, $"{stretch.LeftOver} is said to be left, it is {left}");
    }

    private static IEnumerable<Violation> LeftOverIsLabelled(BoardInstance instance, LaidStretch stretch, int place)
    {
        LeftOverUse use = stretch.LeftOver.Ticks <= 0 ? LeftOverUse.None
            : stretch.LeftOver.Ticks >= instance.KeepFrom.Ticks ? LeftOverUse.Keep
            : LeftOverUse.Waste;
        if (stretch.Use != use) yield return new(nameof(LeftOverIsLabelled), place, $"a left-over of {stretch.LeftOver} is called {stretch.Use}, it is {use}: kept from {instance.KeepFrom}");
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
