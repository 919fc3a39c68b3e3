// Over 200 lines: one search with its bound and its greedy way, which share the tables of one graph.
using System.Collections.Immutable;

namespace Setout.Cutting.Runs;

/// <summary>A cut as the order of runs sees it.</summary>
/// <param name="Label">Its setting, from 0; cuts of one label may be made in one run.</param>
/// <param name="Needs">Cuts that come before it, each by its place in the list; all of them stand before it there.</param>
public readonly record struct OrderedCut(int Label, ImmutableArray<int> Needs);

/// <summary>An order of settings in which all cuts can be made.</summary>
/// <param name="Labels">The labels in turn; at each, every cut of that label that is ready is made, and those that become ready by it.</param>
/// <param name="Least">No order has fewer settings than this.</param>
public sealed record SettingOrder(ImmutableArray<int> Labels, int Least);

/// <summary>
/// Finds the order of settings with the fewest changes. At a setting all that can be cut at it is cut, which never harms. Cuts of one label that need the
/// same cuts are one. A setting at which all that is left of it can be cut is taken at once: it is needed once more in any order, and now releases most. Where
/// there is none the settings are tried in turn, best first: runs so far, and for each label how often a chain of cuts comes back to it. When the budget
/// ends the search, the rest is ordered by what releases most, and the least is what the search had excluded by then.
/// </summary>
public sealed class RunOrder
{
    /// <summary>The settings that are tried before the search ends with what it has.</summary>
    public const int UsualBudget = 20_000;

    // Looks at a cut for a label, of all bounds of one search together: about a second on a small machine. Only orders of very many parts come near it.
    private const long MostLooks = 200_000_000;

    private readonly int[] _label;
    private readonly int[][] _needs;
    private readonly int[][] _ofLabel;
    private readonly int _labels;

    // What a run at a label costs: all that need no setting together cost less than one that does.
    private readonly int[] _cost;
    private readonly int _ofSetting;
    private readonly Func<int?, int, int> _rank;

    private RunOrder(IReadOnlyList<OrderedCut> cuts, int labels, Func<int?, int, int> rank, Func<int, bool>? isFree)
    {
        (_labels, _rank) = (labels, rank);
        // Cuts that can be made at the same moments are one.
        var classes = new Dictionary<(int, string), int>();
        var label = new List<int>();
        var needs = new List<int[]>();
        var classOf = new int[cuts.Count];
        for (int i = 0; i < cuts.Count; i++)
        {
            int[] from = [.. cuts[i].Needs.Select(n => classOf[n]).Distinct().Order()];
            var key = (cuts[i].Label, string.Join(',', from));
            if (!classes.TryGetValue(key, out int known))
            {
                classes[key] = known = label.Count;
                label.Add(cuts[i].Label);
                needs.Add(from);
            }
            classOf[i] = known;
        }
        (_label, _needs) = ([.. label], [.. needs]);
        int[] free = [.. Enumerable.Range(0, labels).Where(l => isFree?.Invoke(l) ?? false)];
        _ofSetting = free.Length == 0 ? 1 : _label.Length + 1;
        _cost = [.. Enumerable.Range(0, labels).Select(l => free.Contains(l) ? 1 : _ofSetting)];
        _ofLabel = [.. Enumerable.Range(0, labels).Select(l => Enumerable.Range(0, _label.Length).Where(c => _label[c] == l).ToArray())];
    }

    /// <summary>The order with the fewest settings that the budget finds.</summary>
    /// <param name="cuts">Each after all that it needs.</param>
    /// <param name="labels">How many labels there are.</param>
    /// <param name="rank">Of the settings that are as good, the one with the lowest rank is taken, given the one before (null at first).</param>
    /// <param name="budget">Settings tried.</param>
    /// <param name="isFree">Labels at which nothing is set: they count as no setting, and the fewer runs of them the better among orders with as few settings. None where it is left out.</param>
    /// <param name="cancel">Ends the search early.</param>
    public static SettingOrder Fewest(
        IReadOnlyList<OrderedCut> cuts, int labels, Func<int?, int, int> rank, int budget = UsualBudget, Func<int, bool>? isFree = null, CancellationToken cancel = default) =>
        new RunOrder(cuts, labels, rank, isFree).Search(budget, cancel);

    private long _looks;

    private bool IsLarge => (long)_labels * _label.Length > 200_000;

    private sealed record State(bool[] Done, int Left, State? Before, int Label, int Cost);

    private SettingOrder Search(int budget, CancellationToken cancel)
    {
        State start = Settled(new State(new bool[_label.Length], _label.Length, null, -1, 0));
        int least = start.Cost + Bound(start);
        var open = new PriorityQueue<State, (int, int, int)>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        open.Enqueue(start, (least, start.Left, 0));
        int tried = 0;
        State? best = null;
        while (open.TryDequeue(out State? at, out (int F, int, int) priority))
        {
            least = Math.Max(least, priority.F);
            if (at.Left == 0) return new(Labels(at), at.Cost / _ofSetting);
            if (tried > budget || _looks > MostLooks || cancel.IsCancellationRequested)
            {
                // The cheapest open ways, finished by what releases most; where a look at all ways takes long, one of them.
                for (int i = 0; i < (IsLarge ? 1 : 8); i++)
                {
                    State end = Finished(at);
                    if (best is null || end.Cost < best.Cost) best = end;
                    if (!open.TryDequeue(out at, out _)) break;
                }
                return new(Labels(best!), Math.Min(least, best!.Cost) / _ofSetting);
            }
            foreach (int label in Ready(at))
            {
                tried++;
                State next = Settled(Run(at, label));
                string key = Key(next.Done);
                if (seen.TryGetValue(key, out int cost) && cost <= next.Cost) continue;
                seen[key] = next.Cost;
                open.Enqueue(next, (next.Cost + Bound(next), next.Left, tried));
            }
        }
        throw new InvalidOperationException("Cuts need each other in a ring.");
    }

    // Takes every setting at which all that is left of it can be cut.
    private State Settled(State at)
    {
        while (at.Left > 0)
        {
            int? last = at.Label < 0 ? null : at.Label, chosen = null;
            foreach (int label in Ready(at))
                if (Completes(at, label) && (chosen is null || _rank(last, label) < _rank(last, chosen.Value))) chosen = label;
            if (chosen is null) break;
            at = Run(at, chosen.Value);
        }
        return at;
    }

    private State Finished(State at)
    {
        while (at.Left > 0)
        {
            State next = Ready(at).Select(l => Run(at, l)).OrderBy(s => IsLarge ? 0 : s.Cost + Bound(s)).ThenBy(s => s.Left).ThenBy(s => _rank(at.Label < 0 ? null : at.Label, s.Label)).First();
            at = Settled(next);
        }
        return at;
    }

    private IEnumerable<int> Ready(State at)
    {
        for (int label = 0; label < _labels; label++)
            if (Array.Exists(_ofLabel[label], c => !at.Done[c] && IsReady(at.Done, c))) yield return label;
    }

    private bool IsReady(bool[] done, int cut) => Array.TrueForAll(_needs[cut], n => done[n]);

    // Classes stand after those they need, so one walk makes chains of one label too.
    private State Run(State at, int label)
    {
        bool[] done = [.. at.Done];
        int made = 0;
        foreach (int cut in _ofLabel[label])
        {
            if (done[cut] || !IsReady(done, cut)) continue;
            done[cut] = true;
            made++;
        }
        return new(done, at.Left - made, at, label, at.Cost + _cost[label]);
    }

    private bool Completes(State at, int label)
    {
        HashSet<int>? made = null;
        foreach (int cut in _ofLabel[label])
        {
            if (at.Done[cut]) continue;
            if (!Array.TrueForAll(_needs[cut], n => at.Done[n] || (made?.Contains(n) ?? false))) return false;
            (made ??= []).Add(cut);
        }
        return true;
    }

    // For each label, the most times that one chain of cuts comes to it anew. Runs of different labels are different, so these add up.
    private int Bound(State at)
    {
        if (at.Left == 0) return 0;
        _looks += (long)_labels * _label.Length;
        int sum = 0;
        var times = new (int Times, bool IsOn)[_label.Length];
        for (int label = 0; label < _labels; label++)
        {
            int most = 0;
            if (Array.TrueForAll(_ofLabel[label], c => at.Done[c])) continue;
            for (int cut = 0; cut < _label.Length; cut++)
            {
                (int Times, bool IsOn) from = (0, false);
                if (at.Done[cut])
                {
                    times[cut] = from;
                    continue;
                }
                foreach (int need in _needs[cut])
                {
                    // Of equal counts the one that is not on the label asks for one more.
                    (int Times, bool IsOn) there = times[need];
                    if (there.Times > from.Times || (there.Times == from.Times && from.IsOn && !there.IsOn)) from = there;
                }
                bool isOn = _label[cut] == label;
                times[cut] = (from.Times + (isOn && !(from.IsOn && from.Times > 0) ? 1 : 0), isOn);
                most = Math.Max(most, times[cut].Times);
            }
            sum += most * _cost[label];
        }
        return sum;
    }

    private static ImmutableArray<int> Labels(State end)
    {
        var labels = new List<int>();
        for (State? at = end; at is { Label: >= 0 }; at = at.Before) labels.Add(at.Label);
        labels.Reverse();
        return [.. labels];
    }

    private static string Key(bool[] done)
    {
        var text = new char[(done.Length + 14) / 15];
        for (int i = 0; i < done.Length; i++)
            if (done[i]) text[i / 15] |= (char)(1 << (i % 15));
        return new(text);
    }
}
