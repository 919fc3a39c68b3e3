using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Boards.Search;

/// <summary>Turns the boards of a search into a layout and an outcome.</summary>
internal static class BoardWriter
{
    /// <summary>Each board exchanged for the cheapest stock left that holds its parts.</summary>
    public static List<Filling> Cheapest(BoardModel model, List<Filling> boards)
    {
        int[] left = [.. model.Stock.Select((s, i) => s.Limit - boards.Count(b => b.Stock == i))];
        var found = new List<Filling>(boards.Count);
        foreach (Filling board in boards)
        {
            Filling best = board;
            for (int s = 0; s < model.Stock.Length; s++)
                if (left[s] > 0 && model.Stock[s].Cost < model.Stock[best.Stock].Cost && Moved(model, board, s) is { } moved) best = moved;
            left[board.Stock]++;
            left[best.Stock]--;
            found.Add(best);
        }
        return found;
    }

    // Each full bin into a bin of its own: the fullest into the longest.
    private static Filling? Moved(BoardModel model, Filling board, int stock)
    {
        long[] bins = model.Stock[stock].Bins;
        if (board.Used > model.Stock[stock].Length) return null;
        BinFill[] full = [.. board.AllBins.Where(b => b.Used > 0).OrderByDescending(b => b.Used)];
        if (full.Length > bins.Length) return null;
        int[] order = [.. Enumerable.Range(0, bins.Length).OrderByDescending(i => bins[i])];
        BinFill[] into = [.. bins.Select(_ => BinFill.Nothing)];
        for (int i = 0; i < full.Length; i++)
        {
            if (full[i].Used > bins[order[i]]) return null;
            into[order[i]] = full[i];
        }
        return Filling.Of(stock, into);
    }

    /// <summary>The layout of these boards; what is not on them is left out.</summary>
    public static BoardLayout Write(BoardModel model, List<Filling> boards)
    {
        Queue<string>[] ids = [.. model.Types.Select(t => new Queue<string>(t.Parts.SelectMany(p => Enumerable.Repeat(p.Id, p.Count))))];
        ImmutableArray<LaidBoard>.Builder laid = ImmutableArray.CreateBuilder<LaidBoard>(boards.Count);
        foreach (Filling board in boards.OrderByDescending(b => (double)b.Used / model.Stock[b.Stock].Length))
        {
            BoardKind kind = model.Stock[board.Stock];
            int lane = kind.Bins.Length / kind.Stock.Lanes;
            laid.Add(new(kind.Stock.Id, [.. Tightest([.. board.AllBins], kind.Bins).Select((bin, i) => Stretch(model, bin, kind.Bins[i], (i / lane) + 1, (i % lane) + 1, ids))]));
        }
        Dictionary<string, int> done = laid.SelectMany(b => b.PartIds).CountBy(id => id).ToDictionary(StringComparer.Ordinal);
        return new(laid.ToImmutable(), [.. model.Instance.Parts
            .Select(p => new PartCount(p.Id, p.Count - done.GetValueOrDefault(p.Id)))
            .Where(p => p.Count > 0)]);
    }

    // What is cut together lies where it leaves least, so that long stretches stay whole, and in the first of lanes that are alike, so that no
    // lane is sawn off for nothing. The fullest first: whatever holds it holds what comes after it.
    private static BinFill[] Tightest(BinFill[] bins, long[] lengths)
    {
        BinFill[] into = [.. bins.Select(_ => BinFill.Nothing)];
        bool[] isTaken = new bool[bins.Length];
        int[] shortestFirst = [.. Enumerable.Range(0, bins.Length).OrderBy(i => lengths[i]).ThenBy(i => i)];
        foreach (BinFill bin in bins.Where(b => b.Used > 0).OrderByDescending(b => b.Used))
        {
            int at = shortestFirst.First(i => !isTaken[i] && lengths[i] >= bin.Used);
            (into[at], isTaken[at]) = (bin, true);
        }
        return into;
    }

    private static LaidStretch Stretch(BoardModel model, BinFill bin, long whole, int lane, int place, Queue<string>[] ids)
    {
        ImmutableArray<string> parts = [.. bin.Parts.SelectMany(p => Enumerable.Range(0, p.Count).Select(_ => ids[p.Type].Dequeue()))];
        // The model's bin is one kerf longer than the stretch, and so is each part.
        var left = Length.FromTicks(Math.Max(0, whole - bin.Used - model.Instance.Kerf.Ticks));
        LeftOverUse use = left.Sign == 0 ? LeftOverUse.None : left >= model.Instance.KeepFrom ? LeftOverUse.Keep : LeftOverUse.Waste;
        return new(lane, place, parts, left, use);
    }

    /// <summary>What may be said about a layout.</summary>
    public static BoardOutcome Conclude(BoardInstance instance, BoardLayout layout, BoardScore score, LayoutBound? bound, SearchMeter meter, string foundBy)
    {
        (OutcomeStatus status, LayoutBound told, ImmutableArray<CuttingReason> reasons) = Conclusion.Of(
            instance.Validate(), "all stock together is proven too little for the parts", layout.LeftOut, score.Cost, score.Boards, bound, meter.Cancelled);
        return new(layout, status, score, told, reasons, new(meter.Work, meter.Rounds, meter.Improvements, foundBy));
    }
}
