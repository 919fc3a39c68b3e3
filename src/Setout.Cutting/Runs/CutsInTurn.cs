namespace Setout.Cutting.Runs;

/// <summary>Puts cuts in the order of work, run by run.</summary>
internal sealed class CutsInTurn
{
    private readonly List<PlannedCut> _cuts;
    private readonly Setting[] _settings;
    private readonly Dictionary<Setting, int> _label;

    public CutsInTurn(AllCuts all)
    {
        // Groups are listed as their blanks come about, so a cut stands after all that it needs.
        _cuts = Sorted(all.Groups);
        _settings = [.. _cuts.Select(c => c.Setting).Distinct().OrderBy(Rank)];
        _label = _settings.Select((s, i) => (s, i)).ToDictionary(p => p.s, p => p.i);
    }

    /// <summary>How many settings there are, each counted once.</summary>
    public int Settings => _settings.Count(s => s.IsSet);

    /// <summary>What is better when it is less: settings first, then runs.</summary>
    public static (int Settings, int Runs) Count(List<List<PlannedCut>> runs) => (runs.Count(r => r[0].Setting.IsSet), runs.Count);

    /// <summary>The runs of the fewest settings that the budget finds.</summary>
    public (List<List<PlannedCut>> Runs, int Least) Runs(int budget, CancellationToken cancel)
    {
        Dictionary<PlannedCut, int> place = _cuts.Select((c, i) => (c, i)).ToDictionary(p => p.c, p => p.i);
        OrderedCut[] ordered = [.. _cuts.Select(c => new OrderedCut(_label[c.Setting], [.. c.Needs.Select(n => place[n])]))];
        // The saw that stands set up goes on; then those that deal with the largest wood, large figures first.
        int Prefer(int? last, int next) => next + (last is { } l && _settings[l].Way == _settings[next].Way ? 0 : _settings.Length);
        SettingOrder order = RunOrder.Fewest(ordered, _settings.Length, Prefer, budget, l => !_settings[l].IsSet, cancel);
        var done = new HashSet<PlannedCut>(ReferenceEqualityComparer.Instance);
        ILookup<int, PlannedCut> ofLabel = _cuts.ToLookup(c => _label[c.Setting]);
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

    private static List<PlannedCut> Sorted(IEnumerable<CutGroup> groups)
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
        setting.Kind switch { RunKind.True => 0, RunKind.Rough => 1, RunKind.Clear => 3, _ => 2 },
        -setting.Figure.Ticks);
}
