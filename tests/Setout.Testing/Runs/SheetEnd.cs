// Over 200 lines when all are counted: parts, figure, what waits and what is kept of one sheet lean on one another.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Testing.Runs;

/// <summary>What has become of one laid sheet.</summary>
internal sealed class SheetEnd
{
    private const int MostTries = 5_000;

    private readonly Bench _bench;
    private readonly SheetInstance _instance;
    private readonly CutNode _root;
    private readonly (RunBlank Blank, Wood Wood)[] _live;
    private readonly ImmutableHashSet<string> _held;
    private readonly string _where;
    private readonly bool _thin;
    private readonly List<Range> _ranges = [];
    private readonly List<(CutNode Node, long Along, long Across)> _keeps = [];
    private int _tries;

    // Neighbouring slices of a division, as one rectangle: its parts and the places in the list of left-overs that it holds.
    private sealed record Range(string Parts, long Along, long Across, ImmutableArray<int> Keeps, int From, int To);

    public SheetEnd(Bench bench, RunSheets sheets, int material, int index)
    {
        _bench = bench;
        _instance = sheets.Instance;
        LaidSheet laid = sheets.Layout.Sheets[index];
        _root = laid.Root;
        _held = sheets.Held;
        _where = $"sheet {index} of {sheets.Name}";
        _thin = bench.HasThinCuts(material, index);
        _live = [.. bench.There.Where(t => (t.Value.Material, t.Value.Stock) == (material, index)).Select(t => (bench.Plan.Blanks[t.Key], t.Value)).OrderBy(t => t.Item1.Id)];
        SheetStock stock = _instance.Stock.First(s => s.Id == laid.StockId);
        int leaves = 0;
        (ImmutableArray<string> parts, ImmutableArray<int> keeps) = Walk(_root, stock.TruedAlong.Ticks, stock.TruedAcross.Ticks, ref leaves);
        _ranges.Add(new(Key(parts), stock.TruedAlong.Ticks, stock.TruedAcross.Ticks, keeps, 0, leaves));
    }

    // Parts in a slice whose size only parts that wait give it: without their reading nobody can say how wide it is, so they wait too.
    private IEnumerable<string> Unsized(CutNode node)
    {
        if (node is not Division division) return [];
        return division.Slices.SelectMany(s => Parts(s.Content).Any(_held.Contains) && !IsSized(s.Content, division.Axis) ? Parts(s.Content).Where(id => !_held.Contains(id)) : Unsized(s.Content));
    }

    // True where parts that do not wait fill the rectangle in that direction.
    private bool IsSized(CutNode node, GrainAxis axis) => node switch
    {
        PartNode part => !_held.Contains(part.PartId),
        Division division when division.Axis == axis => division.Dust.Sign == 0 && division.Slices.All(s => IsSized(s.Content, axis)),
        Division division => division.Slices.Any(s => IsSized(s.Content, axis)),
        _ => false,
    };

    public void Check()
    {
        HashSet<string> mates = [.. _instance.Groups.Where(g => g.PartIds.Any(_held.Contains)).SelectMany(g => g.PartIds).Where(id => !_held.Contains(id))];
        bool uncut = _live.Any(l => l.Blank.Use == BlankUse.Stock);
        PartsOut.Check(_bench, [.. _live.Select(l => l.Blank)], [.. Parts(_root)], _held, mates, [.. Unsized(_root)], _where);
        foreach (FigureGroup group in _instance.Groups) Figure(group);
        if (uncut) return;
        // Where a cut is refused, left-overs may stay with what it leaves; none may be kept that the layout does not keep.
        bool refused = _bench.Plan.Refusals.Any(r => _live.Any(l => l.Blank.Id == r.Blank));
        if (refused)
        {
            if (!Kept([.. _keeps], all: false)) WrongKeeps();
            return;
        }
        (RunBlank Blank, Wood Wood)[] waiting = [.. _live.Where(l => l.Blank.Use == BlankUse.Waiting).OrderByDescending(l => l.Wood.Area)];
        foreach ((RunBlank blank, Wood wood) in waiting)
            if (!Candidates(blank, wood).Any())
            {
                _bench.Wrong(SawRule.HeldWait, $"{string.Join(", ", blank.Waiting)} wait in blank {blank.Id}, {wood}; the layout of {_where} has no such place, or a larger one");
                return;
            }
        if (!Fits(waiting, 0, [])) WrongKeeps();

        void WrongKeeps() =>
            _bench.Wrong(SawRule.KeptAreLaid, $"blanks kept of {_where} are {Told(_live.Where(l => l.Blank.Use == BlankUse.Keep).Select(l => l.Wood.ToString()))}; the layout keeps {Told(_keeps.Select(k => $"{Wood.Mm(k.Along)} by {Wood.Mm(k.Across)}"))}, but for what waits");
    }

    private static string Told(IEnumerable<string> sizes) => string.Join(", ", sizes) is { Length: > 0 } told ? told : "none";

    private static string Key(IEnumerable<string> parts) => string.Join('\n', parts.Order(StringComparer.Ordinal));

    private static IEnumerable<string> Parts(CutNode node) => node switch
    {
        PartNode part => [part.PartId],
        Division division => division.Slices.SelectMany(s => Parts(s.Content)),
        _ => [],
    };

    private (ImmutableArray<string> Parts, ImmutableArray<int> Keeps) Walk(CutNode node, long along, long across, ref int leaves)
    {
        if (node is not Division division)
        {
            leaves++;
            if (node is not KeepNode) return (node is PartNode part ? [part.PartId] : [], []);
            _keeps.Add((node, along, across));
            return ([], [_keeps.Count - 1]);
        }
        bool inLine = division.Axis == GrainAxis.Along;
        var slices = new List<(long Size, ImmutableArray<string> Parts, ImmutableArray<int> Keeps, int From, int To)>();
        foreach (Slice slice in division.Slices)
        {
            int from = leaves;
            (ImmutableArray<string> parts, ImmutableArray<int> keeps) = Walk(slice.Content, inLine ? slice.Size.Ticks : along, inLine ? across : slice.Size.Ticks, ref leaves);
            slices.Add((slice.Size.Ticks, parts, keeps, from, leaves));
        }
        for (int i = 0; i < slices.Count; i++)
        {
            long size = -_instance.Kerf.Ticks;
            ImmutableArray<string> parts = [];
            ImmutableArray<int> keeps = [];
            for (int j = i; j < slices.Count; j++)
            {
                size += slices[j].Size + _instance.Kerf.Ticks;
                (parts, keeps) = (parts.AddRange(slices[j].Parts), keeps.AddRange(slices[j].Keeps));
                if (parts.Length > 0) _ranges.Add(new(Key(parts), inLine ? size : along, inLine ? across : size, keeps, slices[i].From, slices[j].To));
            }
        }
        return ([.. slices.SelectMany(s => s.Parts)], [.. slices.SelectMany(s => s.Keeps)]);
    }

    // The largest first: what fits in a blank as a whole is what the layout has there.
    private IEnumerable<Range> Candidates(RunBlank blank, Wood wood) => _ranges
        .Where(r => r.Parts == Key(blank.Waiting) && r.Along <= wood.Counted(GrainAxis.Along) && r.Across <= wood.Counted(GrainAxis.Across))
        .OrderByDescending(r => (Int128)r.Along * r.Across);

    private bool Fits((RunBlank Blank, Wood Wood)[] waiting, int at, ImmutableArray<Range> taken)
    {
        if (_tries > MostTries) return false;
        if (at < waiting.Length)
            return Candidates(waiting[at].Blank, waiting[at].Wood).Any(r => taken.All(t => r.To <= t.From || t.To <= r.From) && Fits(waiting, at + 1, taken.Add(r)));
        _tries++;
        HashSet<int> covered = [.. taken.SelectMany(t => t.Keeps)];
        return Kept([.. _keeps.Where((_, i) => !covered.Contains(i))], all: true);
    }

    // Each blank that is kept stands for one left-over of the layout.
    private bool Kept((CutNode Node, long Along, long Across)[] due, bool all)
    {
        Wood[] kept = [.. _live.Where(l => l.Blank.Use == BlankUse.Keep).Select(l => l.Wood)];
        if (all ? kept.Length != due.Length : kept.Length > due.Length) return false;
        int[] of = [.. Enumerable.Repeat(-1, due.Length)];
        return Enumerable.Range(0, kept.Length).All(k => Placed(k, []));

        bool Placed(int k, HashSet<int> seen)
        {
            for (int d = 0; d < due.Length; d++)
            {
                (long along, long across) = (kept[k].Counted(GrainAxis.Along), kept[k].Counted(GrainAxis.Across));
                bool suits = _thin ? along >= due[d].Along && across >= due[d].Across : (along, across) == (due[d].Along, due[d].Across);
                if (!suits || !seen.Add(d)) continue;
                if (of[d] >= 0 && !Placed(of[d], seen)) continue;
                of[d] = k;
                return true;
            }
            return false;
        }
    }

    private void Figure(FigureGroup group)
    {
        bool along = group.Axis == GrainAxis.Along;
        long Start(Wood w) => along ? w.FromAlong : w.FromAcross;
        long End(Wood w) => Start(w) + w.Extent(group.Axis);
        long Row(Wood w) => along ? w.FromAcross : w.FromAlong;
        (RunBlank Blank, Wood Wood)[] out_ = [.. _live.Where(l => l.Blank.Use == BlankUse.Part && group.PartIds.Contains(l.Blank.PartId))];
        // What waits or is refused is the end of its group: nothing behind it comes off.
        int missing = Parts(_root).Count(group.PartIds.Contains) - out_.Length;
        List<(RunBlank Blank, Wood Wood)> open = [.. out_.OrderBy(p => Row(p.Wood)).ThenBy(p => Start(p.Wood))];
        while (open.Count > 0)
        {
            Wood? last = null;
            long row = Row(open[0].Wood);
            for (int m = 0; m < group.PartIds.Length; m++)
            {
                string id = group.PartIds[m];
                int at = last is null
                    ? open[0].Blank.PartId == id ? 0 : -1
                    : open.FindIndex(p => p.Blank.PartId == id && Row(p.Wood) == row && Start(p.Wood) >= End(last) && Start(p.Wood) <= End(last) + _instance.Kerf.Ticks + last.Spared(group.Axis));
                if (at < 0 && m > 0 && missing >= group.PartIds.Length - m)
                {
                    missing -= group.PartIds.Length - m;
                    break;
                }
                if (at < 0)
                {
                    _bench.Wrong(SawRule.FigureRunsThrough, $"part {id} of figure group {group.Id} does not lie beside its neighbour in {_where}");
                    return;
                }
                last = open[at].Wood;
                open.RemoveAt(at);
            }
        }
    }
}
