using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>Plans the runs: cuts from the layouts, an order with the fewest settings, then the saw followed through it.</summary>
/// <param name="budget">Settings tried in the search for fewer.</param>
public sealed class RunPlanner(int budget = RunOrder.UsualBudget) : IRunPlanner
{
    /// <inheritdoc/>
    public OrderedRuns Plan(ImmutableArray<RunMaterial> materials, SawLimits limits, CancellationToken cancel = default)
    {
        var ways = new CutWays(limits);
        var groups = new List<CutGroup>();
        var refusals = new List<NoWay>();
        var stock = new List<Wood>();
        var sheets = new List<(int Material, Func<CutTurns, LaidSheet> Ordered)>();
        var boards = new List<(int Material, Func<CutTurns, LaidBoard> Ordered)>();
        for (int m = 0; m < materials.Length; m++)
        {
            if (materials[m] is RunSheets panel)
            {
                var breaking = new SheetBreaking(panel, m, ways, groups, refusals);
                for (int i = 0; i < panel.Layout.Sheets.Length; i++)
                {
                    (Wood blank, Func<CutTurns, LaidSheet> ordered) = breaking.Break(i);
                    stock.Add(blank);
                    sheets.Add((m, ordered));
                }
            }
            else if (materials[m] is RunBoards stick)
            {
                var breaking = new BoardBreaking(stick, m, ways, groups, refusals);
                for (int i = 0; i < stick.Layout.Boards.Length; i++)
                {
                    (Wood blank, Func<CutTurns, LaidBoard> ordered) = breaking.Break(i);
                    stock.Add(blank);
                    boards.Add((m, ordered));
                }
            }
        }
        (List<List<PlannedCut>> inTurn, int least) = InTurn(groups, budget, cancel);
        var writer = new RunWriter(materials, stock);
        var runs = ImmutableArray.CreateBuilder<Run>(inTurn.Count);
        foreach (List<PlannedCut> cuts in inTurn)
        {
            int number = runs.Count + 1;
            Setting setting = cuts[0].Setting;
            runs.Add(new(number, setting.Way, setting.Kind, setting.Figure, [.. cuts.Select(c => writer.Make(c, number))]));
        }
        var turns = new CutTurns(inTurn.SelectMany(c => c).Select((c, i) => (c, i)).ToDictionary(p => p.c, p => p.i));
        ImmutableArray<RunBlank> blanks = writer.Blanks;
        var plan = new RunPlan(blanks, Trials.Of(runs.ToImmutable(), blanks, materials, ways), [.. refusals.Select(r => new RunRefusal(r.Kind, writer.IdOf(r.Blank), r.Axis, r.Figure, r.PartIds))], least);
        return new(plan,
            Given<RunSheets, LaidSheet, SheetLayout>(materials, sheets, turns, (m, laid) => m.Layout with { Sheets = laid }),
            Given<RunBoards, LaidBoard, BoardLayout>(materials, boards, turns, (m, laid) => m.Layout with { Boards = laid }));
    }

    private static ImmutableDictionary<int, TLayout> Given<TMaterial, TLaid, TLayout>(
        ImmutableArray<RunMaterial> materials, List<(int Material, Func<CutTurns, TLaid> Ordered)> laid, CutTurns turns, Func<TMaterial, ImmutableArray<TLaid>, TLayout> with)
        where TMaterial : RunMaterial
    {
        ILookup<int, TLaid> of = laid.ToLookup(l => l.Material, l => l.Ordered(turns));
        return Enumerable.Range(0, materials.Length).Where(m => materials[m] is TMaterial).ToImmutableDictionary(m => m, m => with((TMaterial)materials[m], [.. of[m]]));
    }

    // The cuts run by run.
    private static (List<List<PlannedCut>> Runs, int Least) InTurn(List<CutGroup> groups, int budget, CancellationToken cancel)
    {
        // Groups are listed as their blanks come about, so a cut stands after all that it needs.
        List<PlannedCut> cuts = Sorted(groups);
        Setting[] settings = [.. cuts.Select(c => c.Setting).Distinct().OrderBy(Rank)];
        Dictionary<Setting, int> label = settings.Select((s, i) => (s, i)).ToDictionary(p => p.s, p => p.i);
        Dictionary<PlannedCut, int> place = cuts.Select((c, i) => (c, i)).ToDictionary(p => p.c, p => p.i);
        OrderedCut[] ordered = [.. cuts.Select(c => new OrderedCut(label[c.Setting], [.. c.Needs.Select(n => place[n])]))];
        // The saw that stands set up goes on; then those that deal with the largest wood, large figures first.
        int Prefer(int? last, int next) => next + (last is { } l && settings[l].Way == settings[next].Way ? 0 : settings.Length);
        SettingOrder order = RunOrder.Fewest(ordered, settings.Length, Prefer, budget, cancel);
        var done = new HashSet<PlannedCut>(ReferenceEqualityComparer.Instance);
        ILookup<int, PlannedCut> ofLabel = cuts.ToLookup(c => label[c.Setting]);
        var runs = new List<List<PlannedCut>>();
        foreach (int next in order.Labels)
        {
            var run = new List<PlannedCut>();
            foreach (PlannedCut cut in ofLabel[next])
            {
                if (done.Contains(cut) || !cut.Needs.All(done.Contains)) continue;
                done.Add(cut);
                run.Add(cut);
            }
            runs.Add(run);
        }
        return (FewWalks(runs), order.Least);
    }

    // The same runs with few walks from saw to saw: one goes on at the saw where one is while there is anything ready for it, large sheets first of all.
    private static List<List<PlannedCut>> FewWalks(List<List<PlannedCut>> runs)
    {
        var runOf = new Dictionary<PlannedCut, int>(ReferenceEqualityComparer.Instance);
        for (int r = 0; r < runs.Count; r++)
            foreach (PlannedCut cut in runs[r]) runOf[cut] = r;
        // A run comes after all that its cuts need, and after earlier runs at its own setting.
        HashSet<int>[] after = [.. runs.Select((run, r) => run.SelectMany(c => c.Needs).Select(n => runOf[n]).Where(n => n != r)
            .Concat(Enumerable.Range(0, r).Where(e => runs[e][0].Setting == run[0].Setting)).ToHashSet())];
        var order = new List<int>(runs.Count);
        var left = new SortedSet<int>(Enumerable.Range(0, runs.Count));
        while (left.Count > 0)
        {
            Setting? at = order.Count > 0 ? runs[order[^1]][0].Setting : null;
            int next = left.Where(r => after[r].Count == 0)
                .MinBy(r => runs[r][0].Setting is var s && at is { } last ? (Saw(s.Way) == Saw(last.Way) ? 0 : 1, s.Way == last.Way ? 0 : 1, Rank(s), r) : (0, 0, Rank(s), r));
            left.Remove(next);
            order.Add(next);
            foreach (int r in left) after[r].Remove(next);
        }
        // Two at one setting that came to stand side by side are one.
        var walked = new List<List<PlannedCut>>();
        foreach (int r in order)
        {
            if (walked.Count > 0 && walked[^1][0].Setting == runs[r][0].Setting) walked[^1].AddRange(runs[r]);
            else walked.Add(runs[r]);
        }
        return walked;
    }

    // Fence and sled belong to one saw.
    private static int Saw(SawWay way) => way switch { SawWay.Guide => 0, SawWay.Stop => 2, _ => 1 };

    private static List<PlannedCut> Sorted(List<CutGroup> groups)
    {
        var sorted = new List<PlannedCut>();
        var seen = new HashSet<PlannedCut>(ReferenceEqualityComparer.Instance);
        void Visit(PlannedCut cut)
        {
            if (!seen.Add(cut)) return;
            foreach (PlannedCut need in cut.Needs) Visit(need);
            sorted.Add(cut);
        }
        foreach (PlannedCut cut in groups.OrderBy(g => g.Whole.Material).ThenBy(g => g.Whole.Stock).SelectMany(g => g.Cuts)) Visit(cut);
        return sorted;
    }

    private static (int, int, long) Rank(Setting setting) => (
        setting.Way switch { SawWay.Guide => 0, SawWay.Fence => 1, SawWay.Sled => 2, _ => 3 },
        setting.Kind switch { RunKind.True => 0, RunKind.Lane => 1, RunKind.Rough => 2, RunKind.Break => 3, RunKind.Clear => 5, _ => 4 },
        -setting.Figure.Ticks);
}
