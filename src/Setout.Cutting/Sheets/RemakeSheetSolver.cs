using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>
/// Holds on to the layout the shop already follows wherever that costs nothing. The order is laid out anew first. Then the sheets of the
/// layout before that are still sound are kept, and only what is missing from them is laid out on the stock that is left. If that costs
/// more than the new layout, some of the kept sheets are given up, least full first, until it does not. The better of the two
/// by <see cref="SheetObjective"/>, which counts changed sheets, is given; its bound is that of the new layout.
/// What it cannot find: a kept sheet is kept whole, or taken apart whole.
/// </summary>
/// <param name="inner">Lays out what is new; it is never told of a layout before.</param>
public sealed class RemakeSheetSolver(ISheetSolver inner) : ISheetSolver
{
    /// <inheritdoc/>
    /// <remarks>
    /// Three quarters of the budget go to the new layout, the rest to what is laid out beside kept sheets. Where there is no budget but a time, the new layout has it
    /// until <see cref="SolverOptions.MostlyEnough"/>, and the tries to keep sheets share a third of the steps that were taken by then, or the everyday budget.
    /// </remarks>
    public SheetOutcome Solve(SheetInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default)
    {
        if (instance.Before is not { } before) return inner.Solve(instance, options, progress, cancel);
        ArgumentOutOfRangeException.ThrowIfNegative(options.WorkBudget);
        ImmutableArray<LaidSheet> sound = StillSound(instance, before);
        bool isTimed = options.WorkBudget == long.MaxValue;
        using var first = CancellationTokenSource.CreateLinkedTokenSource(options.Enough, sound.IsEmpty ? CancellationToken.None : options.MostlyEnough);
        long forKeeping = sound.IsEmpty || isTimed ? 0 : options.WorkBudget / 4;
        SheetOutcome anew = inner.Solve(instance with { Before = null }, options with { WorkBudget = options.WorkBudget - forKeeping, Enough = first.Token }, progress, cancel);
        anew = anew with { Score = SheetObjective.Score(instance, anew.Layout) };
        if (sound.IsEmpty) return anew;
        // Of a time nobody knows how much is left: by steps each try has its share of it, and the first does not take it all.
        if (isTimed) forKeeping = Math.Max(SolverOptions.DefaultWorkBudget, anew.Statistics.Work / 3);

        SolverStatistics done = anew.Statistics;
        SheetOutcome best = anew;
        // The fullest sheets are kept longest. The most that can be kept is found by halves, all of them first.
        ImmutableArray<int> byFullness = [.. Enumerable.Range(0, sound.Length).OrderByDescending(i => Fullness(instance, sound[i]))];
        int few = 0, many = sound.Length + 1;
        for (int keep = sound.Length; few + 1 < many; keep = (few + many) / 2)
        {
            HashSet<int> kept = [.. byFullness[..keep]];
            ImmutableArray<LaidSheet> held = [.. sound.Where((_, i) => kept.Contains(i))];
            IProgress<SolverProgress>? told = progress is null ? null : new Beside(progress, held.Aggregate(Money.Zero, (sum, s) => sum + instance.Stock.First(k => k.Id == s.StockId).Cost), held.Length, best.Score, done.Work, options.WorkBudget);
            SheetOutcome? beside = LayBeside(instance, held, options with { WorkBudget = forKeeping / (2 + BitLength(sound.Length)) }, told, cancel);
            if (beside is not null) done = Added(done, beside.Statistics);
            ImmutableArray<LaidSheet> sheets = beside is null ? held : [.. held, .. beside.Layout.Sheets];
            SheetOutcome way = Conclude(instance, new(sheets, beside?.Layout.LeftOut ?? []), anew, keep, before.Sheets.Length, cancel);
            // At an equal score too: the sheets then stand in the order the shop knows.
            if (way.Score < best.Score || (ReferenceEquals(best, anew) && way.Score <= best.Score)) best = way;
            if (cancel.IsCancellationRequested) break;
            if (CostsNothing(way.Score, anew.Score)) few = keep;
            else many = keep;
        }
        return best with { Statistics = done with { FoundBy = best.Statistics.FoundBy } };
    }

    // A sheet stays if the checker finds nothing wrong with it by itself and all that is on it is still wanted, there is still such a stock, and so on
    // with the sheets before it in the layout.
    private static ImmutableArray<LaidSheet> StillSound(SheetInstance instance, SheetLayout before)
    {
        Dictionary<string, int> wanted = instance.Parts.ToDictionary(p => p.Id, p => p.Count, StringComparer.Ordinal);
        Dictionary<string, int> there = instance.Stock.ToDictionary(s => s.Id, s => s.Limit ?? int.MaxValue, StringComparer.Ordinal);
        ImmutableArray<LaidSheet>.Builder sound = ImmutableArray.CreateBuilder<LaidSheet>();
        foreach (LaidSheet sheet in before.Sheets)
        {
            KeyValuePair<string, int>[] on = [.. EarlierSheets.PartIds(sheet.Root).CountBy(id => id)];
            if (there.GetValueOrDefault(sheet.StockId) < 1 || on.Any(p => wanted.GetValueOrDefault(p.Key) < p.Value)) continue;
            if (!SheetChecker.CheckAlone(instance, sheet).IsEmpty) continue;
            foreach ((string id, int count) in on) wanted[id] -= count;
            there[sheet.StockId]--;
            sound.Add(sheet);
        }
        return sound.ToImmutable();
    }

    // Lays out what the kept sheets do not hold, on the stock they do not use; null when they hold everything.
    private SheetOutcome? LayBeside(SheetInstance instance, ImmutableArray<LaidSheet> kept, SolverOptions options, IProgress<SolverProgress>? progress, CancellationToken cancel)
    {
        Dictionary<string, int> on = kept.SelectMany(s => EarlierSheets.PartIds(s.Root)).CountBy(id => id).ToDictionary(StringComparer.Ordinal);
        Dictionary<string, int> used = kept.CountBy(s => s.StockId).ToDictionary(StringComparer.Ordinal);
        ImmutableArray<SheetPart> parts = [.. instance.Parts.Select(p => p with { Count = p.Count - on.GetValueOrDefault(p.Id) }).Where(p => p.Count > 0)];
        if (parts.IsEmpty) return null;
        ImmutableArray<SheetStock> stock = [.. instance.Stock.Select(s => s with { Limit = s.Limit - used.GetValueOrDefault(s.Id) })];
        HashSet<string> missing = [.. parts.Select(p => p.Id)];
        var rest = new SheetInstance(parts, stock, instance.Kerf, instance.Keep)
        {
            Slack = instance.Slack,
            MostStages = instance.MostStages,
            // A sound sheet holds whole groups, so a group is missing with all its members or with none.
            Groups = [.. instance.Groups.Where(g => missing.Contains(g.PartIds[0]))],
        };
        return inner.Solve(rest, options, progress, cancel);
    }

    private static SheetOutcome Conclude(SheetInstance instance, SheetLayout layout, SheetOutcome anew, int kept, int before, CancellationToken cancel)
    {
        SheetScore score = SheetObjective.Score(instance, layout);
        string foundBy = $"{kept} of {before} sheets kept from the layout before, beside {anew.Statistics.FoundBy}";
        SheetOutcome held = anew with { Layout = layout, Score = score, Statistics = anew.Statistics with { FoundBy = foundBy } };
        bool whole = layout.LeftOut.IsEmpty, cancelled = cancel.IsCancellationRequested || anew.Reasons.Any(r => r.Kind == ReasonKind.Cancelled);
        if (whole && score.Cost == anew.Bound.Cost && (score.Cost > Money.Zero || score.Sheets == anew.Bound.Count))
            return held with { Status = OutcomeStatus.Proven, Reasons = [] };
        // What was said of the order stays true; what was said of the new layout, and of the search, is said anew.
        var reasons = whole ? [] : anew.Reasons.Where(r => r.Kind is not (ReasonKind.StockRanOut or ReasonKind.Cancelled)).ToList();
        bool impossible = reasons.Count > 0;
        int waiting = layout.LeftOut.Where(l => !reasons.Exists(r => r.Subject == l.PartId || r is { Kind: ReasonKind.StockTooLittle, Subject: "" })).Sum(l => l.Count);
        if (waiting > 0 && !cancelled) reasons.Add(new(ReasonKind.StockRanOut, "", $"the stock ran out with {waiting} parts not laid; another layout might hold them"));
        if (cancelled) reasons.Add(new(ReasonKind.Cancelled, "", "the search was cancelled; this is the best layout so far"));
        OutcomeStatus status = impossible ? OutcomeStatus.Infeasible : whole && !cancelled ? OutcomeStatus.Feasible : OutcomeStatus.Stopped;
        return held with { Status = status, Reasons = [.. reasons] };
    }

    private static bool CostsNothing(SheetScore kept, SheetScore anew) =>
        (kept.LeftOut.SquareTicks, kept.Cost.Amount, kept.Sheets).CompareTo((anew.LeftOut.SquareTicks, anew.Cost.Amount, anew.Sheets)) <= 0;

    private static double Fullness(SheetInstance instance, LaidSheet sheet)
    {
        SheetStock stock = instance.Stock.First(s => s.Id == sheet.StockId);
        Int128 full = 0;
        foreach (string id in EarlierSheets.PartIds(sheet.Root))
        {
            SheetPart part = instance.Parts.First(p => p.Id == id);
            full += (part.Along * part.Across).SquareTicks;
        }
        return (double)full / (double)(stock.TruedAlong * stock.TruedAcross).SquareTicks;
    }

    private static int BitLength(int n) => 32 - int.LeadingZeroCount(n);

    private static SolverStatistics Added(SolverStatistics a, SolverStatistics b) =>
        new(a.Work + b.Work, a.Rounds + b.Rounds, a.Improvements + b.Improvements, a.FoundBy);

    // A report on what is laid beside kept sheets, told of the whole layout; the best known stands until it is bettered.
    private sealed class Beside(IProgress<SolverProgress> progress, Money cost, int count, SheetScore best, long done, long budget) : IProgress<SolverProgress>
    {
        public void Report(SolverProgress value)
        {
            (Money Cost, int Count) whole = (cost + value.BestCost, count + value.BestCount), known = (best.Cost, best.Sheets);
            (Money bestCost, int bestCount) = whole.CompareTo(known) < 0 ? whole : known;
            progress.Report(new(done + value.Work, budget, bestCost, bestCount));
        }
    }
}
