using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Programs;
using Setout.Cutting.Sheets.Bounds;
using Setout.Cutting.Sheets.Model;
using Setout.Cutting.Sheets.Patterns;

namespace Setout.Cutting.Sheets.Search;

/// <summary>
/// Quick layouts by several orders and both first directions; then, in turns with a growing share of the work, <see cref="ScaleBound"/> for what
/// no layout can fall below, <see cref="GoalSearch"/> for less money and fewer sheets, <see cref="PatternBound"/> for both; until bound and layout meet, the budget is spent or
/// the caller has enough. Last <see cref="Tidy"/>. The best by <see cref="SheetObjective"/> is given. See docs/decisions on bounds and layouts in turn.
/// Each method and its source: see its own file. The quick layouts, and the turns and shares, are our own, no source; the shares were measured on the orders of docs/benchmarks.md.
/// What it cannot find: a proof where all its bounds are below every layout; a better layout that neither lies within reach of the goal search nor is made of patterns that
/// the others list or price. Without the library there are no scales and no patterns.
/// </summary>
/// <param name="programs">The library of linear and integer programs; null to do without scales and patterns.</param>
internal sealed class GoalSheetSolver(IPrograms? programs) : ISheetSolver
{
    /// <inheritdoc/>
    public SheetOutcome Solve(SheetInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(options.WorkBudget);
        using var meter = new SearchMeter(options, progress, cancel);
        LayoutBound? bound = SheetBounds.Of(instance);
        var model = new SheetModel(instance);
        bool Proven(WorkLayout layout) => bound is not null && layout.Cost == bound.Cost.Amount && layout.Sheets.Count == bound.Count;

        (WorkLayout best, string foundBy) = Construct(model, meter, Proven);
        if (!meter.Over && model.Types.Length > 0 && !(best.PoolCount == 0 && Proven(best)))
            (best, foundBy, bound) = Search(model, best, foundBy, bound, meter);
        SheetLayout layout = new TreeWriter(model).Write(best.Sheets);
        SheetScore score = SheetObjective.Score(instance, layout);
        if (!meter.Cancelled && !(meter.Enough && model.Instance.PartsInAll > MostTidied))
        {
            SheetLayout tidy = new TreeWriter(model).Write(new Tidy(model, meter).Apply(best).Sheets);
            SheetScore tidyScore = SheetObjective.Score(instance, tidy);
            if (tidyScore < score) (layout, score, foundBy) = (tidy, tidyScore, foundBy + ", tidied");
        }
        return Conclude(instance, layout, score, bound, meter, foundBy);
    }

    private const long FirstShare = 1_000_000;

    // Beyond this many parts to lay them anew takes longer than someone who has enough would wait.
    private const int MostTidied = 2_000;

    // Bounds and layouts in turn, each with a growing share of the work, until they meet.
    private (WorkLayout Best, string FoundBy, LayoutBound? Bound) Search(SheetModel model, WorkLayout start, string foundBy, LayoutBound? bound, SearchMeter meter)
    {
        var search = new GoalSearch(model, start, new SeededRandom(meter.Seed), programs);
        bool Met(LayoutBound b) => search.Best.PoolCount == 0 && search.Best.Cost == b.Cost.Amount && (b.Cost > Money.Zero || search.Best.Sheets.Count == b.Count);
        bool Proven(WorkLayout layout) => bound is not null && layout.Cost == bound.Cost.Amount && (layout.Cost > 0 || layout.Sheets.Count == bound.Count);
        void Take(WorkLayout layout, string by)
        {
            if (!Better(layout, search.Best)) return;
            search.Aim(layout);
            foundBy = by;
        }

        void MakeLayouts(List<(int Stock, PatternNode Pattern, double Share)> patterns)
        {
            foreach ((int stock, PatternNode pattern, double _) in patterns) search.Offer(new(model, stock, pattern));
            Take(PatternLayouts.Rounded(model, patterns, meter), "rounded patterns");
        }

        bool isLimited = model.MostStages != int.MaxValue;
        using PatternColumns? columns = programs is null ? null : new(model, programs);
        WorkLayout? offered = null;
        using PatternBound? patterns = programs is null ? null : new(model, programs);
        ScaleBound? scales = programs is null ? null : new(model, programs);
        bool proven = false;
        for (long share = Math.Clamp(meter.Budget / 24, 50_000, FirstShare); !proven && !meter.Over; share += share / 2)
        {
            if (scales is { IsUsable: true, IsFinished: false } && bound is not null)
            {
                using SearchMeter own = meter.Share(share);
                bound = scales.Improve(bound, Met, own);
            }
            proven = bound is not null && Met(bound);
            if (proven || meter.Over) break;
            WorkLayout before = search.Best;
            using (SearchMeter own = meter.Share(2 * share)) search.Run(Proven, own);
            if (search.Best != before) foundBy = "goal search";
            proven = bound is not null && Met(bound);
            if (proven || meter.Over) break;
            if (patterns is { IsUsable: true, IsFinished: false } && bound is not null)
            {
                // These patterns take as many stages as they like: with a limit they only say what no layout can fall below.
                using (SearchMeter own = meter.Share(2 * share))
                    bound = patterns.Improve(bound, search.Best.PoolCount > 0 || isLimited ? null : new(search.Best.Cost, search.Best.Sheets.Count), own);
                if (!isLimited)
                {
                    if (patterns.Better is { } better) Take(PatternLayouts.Of(model, better), "listed patterns");
                    MakeLayouts(patterns.Patterns);
                }
            }
            proven = bound is not null && Met(bound);
            if (!proven && !meter.Over && !isLimited && patterns is not { IsEnough: true } && columns is { IsUsable: true, IsFinished: false })
            {
                foreach (WorkSheet sheet in search.Best == offered ? [] : search.Best.Sheets) columns.Offer(sheet.Stock, PatternLayouts.PatternOf(model, sheet.Root));
                offered = search.Best;
                using (SearchMeter own = meter.Share(2 * share)) columns.Improve(own);
                foreach ((int stock, PatternNode pattern, double _) in columns.Patterns) search.Offer(new(model, stock, pattern));
                using (SearchMeter own = meter.Share(4 * share))
                {
                    List<(int Stock, PatternNode Pattern)> dived = columns.Dive(search.Best.PoolCount > 0 ? Goal.None : new(search.Best.Cost, search.Best.Sheets.Count), own);
                    foreach ((int stock, PatternNode pattern) in dived) search.Offer(new(model, stock, pattern));
                    if (dived.Count > 0 && !meter.Over) Take(PatternLayouts.Begun(model, dived, own), "patterns one by one");
                    if (!own.Over) Take(PatternLayouts.Rounded(model, columns.Patterns, own), "rounded patterns");
                }
            }
            proven = bound is not null && Met(bound);
        }
        // No layout can cost less, but one of fewer sheets might cost the same: worth a share of the work, not all of it.
        if (bound is not null && Met(bound) && search.Best.Sheets.Count > bound.Count && model.Stock.Length > 1 && !meter.Over)
        {
            using SearchMeter own = meter.Share(Math.Min(meter.Budget / 4, 4 * FirstShare));
            search.Run(layout => layout.Sheets.Count == bound.Count, own);
        }
        return (search.Best, foundBy, bound);
    }

    private static (WorkLayout Best, string FoundBy) Construct(SheetModel model, SearchMeter meter, Func<WorkLayout, bool> proven)
    {
        WorkLayout? best = null;
        SheetScore? bestScore = null;
        string foundBy = "";
        bool blanks = Array.Exists(model.Stock, s => s.Cost == 0 && s.Limit < int.MaxValue);
        foreach (int preferred in Enumerable.Range(-1, model.Stock.Length > 1 ? Math.Min(model.Stock.Length, 6) + 1 : 1))
            foreach (bool useBlanks in blanks ? (bool[])[true, false] : [true])
                foreach (FirstCut cut in (FirstCut[])[FirstCut.Rip, FirstCut.Crosscut, FirstCut.Either])
                    foreach (int[] order in PartOrders.Of(model))
                    {
                        if (best is not null && meter.Over) return (best, foundBy);
                        var layout = new WorkLayout(model);
                        layout.Fill(order, cut, Goal.None, useBlanks, preferred, null, meter, mayLeave: best is not null);
                        if (best is not null && (Better(best, layout) || meter.Cancelled)) continue;
                        SheetScore score = SheetObjective.Score(model.Instance, new TreeWriter(model).Write(layout.Sheets));
                        if (bestScore is null || score < bestScore) (best, bestScore, foundBy) = (layout, score, $"quick layout, {cut} first");
                    }
        return (best!, foundBy);
    }

    private static bool Better(WorkLayout a, WorkLayout b) =>
        (a.PoolArea, a.Cost, a.Sheets.Count).CompareTo((b.PoolArea, b.Cost, b.Sheets.Count)) < 0;

    private static SheetOutcome Conclude(SheetInstance instance, SheetLayout layout, SheetScore score, LayoutBound? bound, SearchMeter meter, string foundBy)
    {
        (OutcomeStatus status, LayoutBound told, ImmutableArray<CuttingReason> reasons) = Conclusion.Of(
            instance.Validate(), "all stock together is proven too little for the parts, by area or by how large parts can lie",
            layout.LeftOut, score.Cost, score.Sheets, bound, meter.Cancelled);
        return new(layout, status, score, told, reasons, new(meter.Work, meter.Rounds, meter.Improvements, foundBy));
    }
}
