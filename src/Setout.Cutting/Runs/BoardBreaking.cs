// Over 200 lines: the one walk along a board; each step of it needs the length that the step before left.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>
/// Turns one laid board into cuts: lanes are ripped off first, those that wait for a reading stay on the board; then each lane is squared at its near end, parts come off one
/// after the other, and flaws are cut away where something sound beyond them is used.
/// </summary>
/// <param name="material">The material.</param>
/// <param name="index">Its index among all.</param>
/// <param name="ways">Chooses saws.</param>
/// <param name="groups">Takes the cuts.</param>
/// <param name="refusals">Takes what cannot be cut.</param>
internal sealed class BoardBreaking(RunBoards material, int index, CutWays ways, List<CutGroup> groups, List<NoWay> refusals)
{
    private readonly Dictionary<string, Length> _lengths = material.Instance.Parts.ToDictionary(p => p.Id, p => p.Length, StringComparer.Ordinal);

    private Length Kerf => material.Instance.Kerf;

    private delegate ImmutableArray<LaidStretch> RebuiltLane(CutTurns turns);

    /// <summary>Plans the cuts of one board; gives its stock blank, and what writes it again in the order of sawing.</summary>
    /// <param name="number">Which board of the layout, from 0.</param>
    public (Wood Stock, Func<CutTurns, LaidBoard> Ordered) Break(int number)
    {
        LaidBoard board = material.Layout.Boards[number];
        BoardStock stock = material.Instance.Stock.First(s => s.Id == board.StockId);
        var blank = new Wood(index, number, stock.Length, stock.Rip?.Width ?? material.Width, new(stock.Trim.Start, stock.Trim.End, Length.Zero, Length.Zero))
        {
            Use = BlankUse.Stock,
            Flaws = [.. stock.Defects.OrderBy(d => d.From)],
        };
        ImmutableArray<LaidStretch>[] lanes = [.. board.Stretches.GroupBy(s => s.Lane).OrderBy(g => g.Key).Select(g => g.OrderBy(s => s.Place).ToImmutableArray())];
        ImmutableArray<LaidStretch>[] ready = [.. lanes.Where(l => l.Any(s => s.PartIds.Any(IsReady)))];
        if (ready.Length == 0)
        {
            blank.Waiting.AddRange(board.PartIds);
            return (blank, _ => board);
        }
        if (stock.Rip is null)
        {
            RebuiltLane only = Lane(blank, stock, lanes[0]);
            return (blank, turns => board with { Stretches = only(turns) });
        }
        // Lanes that wait stay on the board, before those that hold nothing.
        ImmutableArray<LaidStretch>[] later = [.. lanes.Except(ready).OrderBy(l => l.Any(s => !s.PartIds.IsEmpty) ? 0 : 1)];
        RebuiltLane[] rebuilt = Rip(blank, stock, ready, later);
        return (blank, turns => board with
        {
            Stretches = [.. rebuilt.Select(r => r(turns)).Concat(later).SelectMany((stretches, i) => stretches.Select(s => s with { Lane = i + 1 }))],
        });
    }

    private bool IsReady(string part) => !material.Held.Contains(part);

    private RebuiltLane[] Rip(Wood board, BoardStock stock, ImmutableArray<LaidStretch>[] ready, ImmutableArray<LaidStretch>[] later)
    {
        BoardRip rip = stock.Rip!;
        var group = new CutGroup(board, GrainAxis.Across);
        var rebuilt = new RebuiltLane[ready.Length];
        bool isKept = later.Any(l => l.Any(s => !s.PartIds.IsEmpty || s.Use == LeftOverUse.Keep));
        Length left = board.Across;
        for (int i = 0; i < ready.Length; i++)
        {
            if (i == ready.Length - 1 && later.Length == 0 && left == rip.LaneWidth)
            {
                Wood last = group.Cuts.Count == 0 ? board : board.Sliced(GrainAxis.Across, left, Length.Zero, Length.Zero).With(board.Flaws);
                if (group.Cuts.Count > 0) (group.Rest, last.Needs) = (last, [.. group.Cuts]);
                left = Length.Zero;
                rebuilt[i] = Lane(last, stock, ready[i]);
                continue;
            }
            if (ways.Lane(board, left, rip.LaneWidth, rip.Kerf, material, out RefusalKind why) is not { } way)
            {
                refusals.Add(new(why, board, GrainAxis.Across, rip.LaneWidth, [.. ready.SelectMany(l => l.SelectMany(s => s.PartIds))]));
                board.Waiting.AddRange(ready.Concat(later).SelectMany(l => l.SelectMany(s => s.PartIds)));
                return [.. ready.Select(l => (RebuiltLane)(_ => l))];
            }
            Wood lane = board.Sliced(GrainAxis.Across, rip.LaneWidth, Length.Zero, Length.Zero).With(board.Flaws);
            // One after the other: the edge that is planed lies at the fence next.
            var cut = new PlannedCut(way.Way.Way, RunKind.Lane, group, way.Figure, way.Kerf, lane)
            {
                Planed = way.Planed,
                PlanedRest = way.PlanedRest,
                NeedsCarrier = way.Way.NeedsCarrier,
                Needs = group.Cuts.Count > 0 ? [group.Cuts[^1]] : [],
            };
            group.Cuts.Add(cut);
            lane.Needs = [cut];
            left -= rip.LaneWidth + rip.Kerf;
            rebuilt[i] = Lane(lane, stock, ready[i]);
        }
        if (group.Cuts.Count == 0) return rebuilt;
        groups.Add(group);
        if (group.Rest is null && left.Sign > 0)
        {
            Wood rest = board.Sliced(GrainAxis.Across, left, Length.Zero, Length.Zero).With(board.Flaws);
            (group.Rest, rest.Needs) = (rest, [.. group.Cuts]);
            rest.Waiting.AddRange(later.SelectMany(l => l.SelectMany(s => s.PartIds)));
            rest.Use = rest.Waiting.Count > 0 ? BlankUse.Waiting : isKept ? BlankUse.Keep : BlankUse.Waste;
        }
        return rebuilt;
    }

    private RebuiltLane Lane(Wood lane, BoardStock stock, ImmutableArray<LaidStretch> stretches)
    {
        ImmutableArray<BoardStretch> clear = stock.ClearStretches();
        Wood at = lane;
        Length from = Length.Zero;
        var cuts = new Dictionary<LaidStretch, (List<(string Part, PlannedCut? Cut)> Off, string[] Last)>(ReferenceEqualityComparer.Instance);
        var passed = new Passed();
        LaidStretch[] used = [.. stretches.Where(s => s.PartIds.Any(IsReady))];
        foreach (LaidStretch stretch in stretches)
        {
            if (!used.Contains(stretch))
            {
                passed.Add(stretch.PartIds, stretch.Use);
                continue;
            }
            BoardStretch sound = clear[stretch.Place - 1];
            if (sound.From > from)
            {
                bool isEnd = from.Sign == 0 && stretch.Place == 1;
                if (Away(at, sound.From - from, isEnd ? RunKind.True : RunKind.Clear, passed, stretches) is not { } sawn)
                {
                    passed.Add([.. stretches.Where(s => s.Place >= stretch.Place).SelectMany(s => s.PartIds)], LeftOverUse.None);
                    break;
                }
                (at, from) = (sawn, sound.From);
            }
            passed = new();
            int before = refusals.Count;
            (var off, string[] last) = Parts(ref at, ref from, stretch, ReferenceEquals(stretch, used[^1]));
            cuts[stretch] = (off, last);
            passed.Refused.AddRange(refusals.Skip(before));
            passed.Add(last, stretch.Use);
        }
        Call(at, passed);
        return turns => Rebuilt(stretches, cuts, turns);
    }

    // What lies in wood that is left behind.
    private sealed class Passed
    {
        public List<string> Waiting { get; } = [];

        public List<NoWay> Refused { get; } = [];

        public bool IsKept { get; private set; }

        public void Add(IEnumerable<string> waiting, LeftOverUse use)
        {
            Waiting.AddRange(waiting);
            IsKept |= use == LeftOverUse.Keep;
        }
    }

    private static ImmutableArray<LaidStretch> Rebuilt(ImmutableArray<LaidStretch> stretches, Dictionary<LaidStretch, (List<(string Part, PlannedCut? Cut)> Off, string[] Last)> cuts, CutTurns turns) =>
    [
        .. stretches.Select(s => cuts.TryGetValue(s, out var of) ? s with { PartIds = [.. of.Off.OrderBy(o => turns.Of(o.Cut)).Select(o => o.Part), .. of.Last] } : s),
    ];

    private (List<(string, PlannedCut?)>, string[]) Parts(ref Wood at, ref Length from, LaidStretch stretch, bool isLast)
    {
        string[] ready = [.. stretch.PartIds.Where(IsReady).OrderByDescending(id => _lengths[id])], waiting = [.. stretch.PartIds.Where(id => !IsReady(id))];
        var off = new List<(string, PlannedCut?)>();
        var refused = new List<string>();
        var group = new CutGroup(at, GrainAxis.Along);
        Length left = at.Along;
        for (int i = 0; i < ready.Length; i++)
        {
            Length size = _lengths[ready[i]];
            bool isWhole = i == ready.Length - 1 && isLast && waiting.Length == 0 && refused.Count == 0 && left == size && at.Trim.AlongEnd.Sign == 0;
            if (isWhole && group.Cuts.Count > 0)
            {
                Wood last = at.Sliced(GrainAxis.Along, left, Length.Zero, Length.Zero);
                (last.Use, last.PartId, last.Needs) = (BlankUse.Part, ready[i], [.. group.Cuts]);
                group.Rest = last;
                left = Length.Zero;
            }
            else if (isWhole) (at.Use, at.PartId) = (BlankUse.Part, ready[i]);
            if (isWhole)
            {
                off.Add((ready[i], null));
                continue;
            }
            if (ways.Size(at, GrainAxis.Along, size, material, out RefusalKind why) is not { } way)
            {
                refusals.Add(new(why, at, GrainAxis.Along, size, [ready[i]]));
                refused.Add(ready[i]);
                continue;
            }
            Wood piece = at.Sliced(GrainAxis.Along, size, Length.Zero, Length.Zero);
            (piece.Use, piece.PartId) = (BlankUse.Part, ready[i]);
            var cut = new PlannedCut(way.Way, RunKind.Size, group, size, way.Kerf, piece) { Against = way.Against, Needs = at.Needs };
            group.Cuts.Add(cut);
            piece.Needs = [cut];
            left -= size + way.Kerf;
            off.Add((ready[i], cut));
        }
        if (group.Cuts.Count > 0)
        {
            groups.Add(group);
            from += at.Along - left;
            if (group.Rest is null && left.Sign > 0)
            {
                Length gone = at.Along - left;
                Wood rest = at.Sliced(GrainAxis.Along, left, Length.Zero, at.Trim.AlongEnd).With(Shifted(at.Flaws, gone, left));
                rest.Needs = [.. group.Cuts];
                group.Rest = rest;
            }
            at = group.Rest ?? at.Sliced(GrainAxis.Along, Length.Zero, Length.Zero, Length.Zero);
        }
        return (off, [.. refused, .. waiting]);
    }

    // Cuts off what lies before the next sound stretch.
    private Wood? Away(Wood at, Length gone, RunKind kind, Passed passed, ImmutableArray<LaidStretch> all)
    {
        if (ways.True(at, GrainAxis.Along, material) is not { } way)
        {
            refusals.Add(new(RefusalKind.NothingTrues, at, GrainAxis.Along, gone, [.. all.SelectMany(s => s.PartIds)]));
            return null;
        }
        var group = new CutGroup(at, GrainAxis.Along);
        Wood? off = gone > way.Kerf ? at.Sliced(GrainAxis.Along, gone - way.Kerf, at.Trim.AlongStart, Length.Zero).With(Shifted(at.Flaws, Length.Zero, gone - way.Kerf)) : null;
        var cut = new PlannedCut(way.Way, kind, group, gone, way.Kerf, off) { Against = way.Against, Needs = at.Needs };
        if (off is not null)
        {
            off.Needs = [cut];
            Call(off, passed);
        }
        group.Cuts.Add(cut);
        Wood rest = at.Sliced(GrainAxis.Along, at.Along - gone, Length.Zero, at.Trim.AlongEnd).With(Shifted(at.Flaws, gone, at.Along - gone));
        rest.Needs = [cut];
        group.Rest = rest;
        groups.Add(group);
        return rest;
    }

    private static void Call(Wood wood, Passed passed)
    {
        wood.Waiting.AddRange(passed.Waiting);
        foreach (NoWay refusal in passed.Refused) refusal.Blank = wood;
        if (wood.Use == BlankUse.Work) wood.Use = wood.Waiting.Count > 0 ? BlankUse.Waiting : passed.IsKept ? BlankUse.Keep : BlankUse.Waste;
    }

    // Flaws as they lie from another end on, cut off where the wood is.
    internal static ImmutableArray<BoardStretch> Shifted(ImmutableArray<BoardStretch> flaws, Length gone, Length along) =>
        [.. flaws.Where(f => f.To > gone && f.From < gone + along).Select(f => new BoardStretch(Length.Max(f.From - gone, Length.Zero), Length.Min(f.To - gone, along)))];
}
