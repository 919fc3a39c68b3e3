// Over 200 lines: the one walk down a cut tree; each step of it needs the blank that the step before left.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>
/// Turns the cut tree of one laid sheet into cuts of real blanks: raw sides are trued when something is measured from them, far sides only where a part ends there; slices
/// come off one after the other; what waits for a reading stays whole with the left-over; a sheet that is too heavy is parted first.
/// </summary>
/// <param name="material">The material.</param>
/// <param name="index">Its index among all.</param>
/// <param name="ways">Chooses saws.</param>
/// <param name="groups">Takes the cuts.</param>
/// <param name="refusals">Takes what cannot be cut.</param>
internal sealed class SheetBreaking(RunSheets material, int index, CutWays ways, List<CutGroup> groups, List<NoWay> refusals)
{
    private readonly Dictionary<string, SheetPart> _parts = material.Instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
    private readonly Dictionary<string, FigureGroup> _figures = material.Instance.Groups.SelectMany(g => g.PartIds.Distinct().Select(id => (id, g))).ToDictionary(p => p.id, p => p.g, StringComparer.Ordinal);
    private bool _isSettled;

    private Length Kerf => material.Instance.Kerf;

    // One slice that is to be cut off, with what waits in it.
    private sealed record Slot(Length Size, CutNode Node)
    {
        public bool Waits { get; init; }

        /// <summary>It comes off after all slots before it.</summary>
        public bool IsChained { get; init; }

        /// <summary>A figure runs through it to its neighbours.</summary>
        public bool IsFigure { get; init; }
    }

    /// <summary>What lies beyond the slices.</summary>
    private sealed record Tail(Length Size, CutNode? Node, Length Dust)
    {
        public static Tail None { get; } = new(Length.Zero, null, Length.Zero);

        /// <summary>An earlier rough cut took its share of it.</summary>
        public bool WasRough { get; init; }
    }

    private delegate CutNode Rebuilt(CutTurns turns);

    private delegate IEnumerable<Slice> RebuiltSlices(CutTurns turns);

    /// <summary>Plans the cuts of one sheet; gives its stock blank, and what writes its tree again in the order of sawing.</summary>
    /// <param name="number">Which sheet of the layout, from 0.</param>
    public (Wood Stock, Func<CutTurns, LaidSheet> Ordered) Break(int number)
    {
        LaidSheet sheet = material.Layout.Sheets[number];
        _isSettled = material.Settled.Contains(number);
        SheetStock stock = SheetFace.StockOf(material.Instance, sheet);
        var blank = new Wood(index, number, stock.Along, stock.Across, stock.Trim) { Use = BlankUse.Stock };
        if (Waits(sheet.Root, null))
        {
            blank.Waiting.AddRange(EarlierSheets.PartIds(sheet.Root));
            return (blank, _ => sheet);
        }
        // The reference edge first: it lies at every fence.
        Wood? at = sheet.Root is Division { Axis: GrainAxis.Along } ? True(blank, GrainAxis.Across, [sheet.Root]) : blank;
        if (at is null)
        {
            PutAside(blank, [new(stock.TruedAlong, sheet.Root)]);
            return (blank, _ => sheet);
        }
        int before = refusals.Count;
        Rebuilt rebuilt = Process(at, sheet.Root);
        // A sheet that cannot be sawn as it lies stays as it was: the plan stops at it.
        return refusals.Count > before ? (blank, _ => sheet) : (blank, turns => sheet with { Root = rebuilt(turns) });
    }

    private Rebuilt Process(Wood blank, CutNode node)
    {
        switch (node)
        {
            case PartNode part:
                (Length along, Length across) = _parts[part.PartId].Lying(part.Turn);
                if (blank.Across != across) Divide(blank, GrainAxis.Across, [new(across, part)], Tail.None);
                else if (blank.Along != along) Divide(blank, GrainAxis.Along, [new(along, part)], Tail.None);
                else (blank.Use, blank.PartId, blank.Turn) = (BlankUse.Part, part.PartId, part.Turn);
                return _ => node;
            case Division division:
                (List<Slot> slots, Tail tail) = Read(division, blank);
                RebuiltSlices slices = Divide(blank, division.Axis, InOrder(slots, division.Axis), tail);
                return turns => division with { Slices = [.. slices(turns)], Dust = tail.Dust };
            default:
                blank.Use = node is KeepNode ? BlankUse.Keep : BlankUse.Waste;
                return _ => node;
        }
    }

    // Waste between slices is what an earlier rough cut took: it is given back before the cuts are planned anew.
    private (List<Slot>, Tail) Read(Division division, Wood blank)
    {
        Length spared = Length.Zero;
        var slots = new List<Slot>();
        Tail tail = new(Length.Zero, null, division.Dust);
        for (int i = 0; i < division.Slices.Length; i++)
        {
            Slice slice = division.Slices[i];
            if (i == division.Slices.Length - 1 && slice.Content is KeepNode or WasteNode) tail = new(slice.Size, slice.Content, division.Dust);
            else if (slice.Content is WasteNode) spared += slice.Size + Kerf;
            else slots.Add(new(slice.Size, slice.Content) { Waits = Waits(slice.Content, division.Axis) });
        }
        if (spared.Sign > 0)
        {
            Length size = tail.Node is null ? tail.Dust + spared - Kerf : tail.Size + spared;
            tail = size.Sign > 0 ? new(size, Called(size, blank.Extent(CutWays.Other(division.Axis))), Length.Zero) { WasRough = true } : Tail.None;
        }
        return (slots, tail);
    }

    private CutNode Called(Length size, Length other) => material.Instance.Keep.Keeps(size, other) ? KeepNode.Instance : WasteNode.Instance;

    // Large before small, then blocks through which a figure runs, each in its order. Where a member waits, so do those after it, and they must lie next to those
    // before it: so one such block ends what is cut, and of any other all members wait. A sheet that is followed already stays.
    private List<Slot> InOrder(List<Slot> slots, GrainAxis axis)
    {
        List<List<Slot>> blocks = [.. Blocks(slots, axis).Select(b => Chained(b).ConvertAll(s => s with { IsFigure = true })).OrderBy(b => b.Count(s => s.Waits))];
        var inBlocks = new HashSet<CutNode>(blocks.SelectMany(b => b).Select(s => s.Node), ReferenceEqualityComparer.Instance);
        if (_isSettled) return Chained(slots).ConvertAll(s => s with { IsFigure = inBlocks.Contains(s.Node) });
        int whole = blocks.Count(b => !b[^1].Waits);
        IEnumerable<Slot> others = slots.Where(s => !inBlocks.Contains(s.Node)).OrderByDescending(s => s.Size);
        return
        [
            .. others.Where(s => !s.Waits), .. blocks.Take(whole + 1).SelectMany(b => b), .. others.Where(s => s.Waits),
            .. blocks.Skip(whole + 1).SelectMany(b => b.Select(s => s with { Waits = true })),
        ];
    }

    private static List<Slot> Chained(IEnumerable<Slot> slots)
    {
        bool waits = false;
        return [.. slots.Select(s => s with { IsChained = true, Waits = waits |= s.Waits })];
    }

    // Slices that follow each other and hold the members of a figure group, one each.
    private IEnumerable<List<Slot>> Blocks(List<Slot> slots, GrainAxis axis)
    {
        for (int i = 0; i < slots.Count && _figures.Count > 0; i++)
        {
            if (Only(slots[i]) is not { } first || !_figures.TryGetValue(first, out FigureGroup? group) || group.Axis != axis) continue;
            List<Slot> block = [.. slots.Skip(i).Take(group.PartIds.Length)];
            if (!block.Select(Only).SequenceEqual(group.PartIds)) continue;
            i += block.Count - 1;
            yield return block;
        }
    }

    private static string? Only(Slot slot) => EarlierSheets.PartIds(slot.Node).Take(2).ToArray() is [var part] ? part : null;

    private RebuiltSlices Divide(Wood blank, GrainAxis axis, List<Slot> slots, Tail tail)
    {
        Slot[] ready = [.. slots.Where(s => !s.Waits)], waiting = [.. slots.Where(s => s.Waits)];
        if (ready.Length == 0)
        {
            PutAside(blank, waiting);
            return _ => AsTheyWere(waiting, tail);
        }
        if (True(blank, axis, slots.Select(s => s.Node)) is not { } trued)
        {
            PutAside(blank, slots);
            return _ => AsTheyWere(slots, tail);
        }
        if (Parted(trued, axis, ready, waiting, tail) is { } parted) return parted;
        return CutOff(trued, axis, ready, waiting, tail);
    }

    // Slices come off one by one; what is left once they are off is waste, kept, or waits.
    private RebuiltSlices CutOff(Wood blank, GrainAxis axis, Slot[] ready, Slot[] waiting, Tail tail)
    {
        var group = new CutGroup(blank, axis);
        List<(Slot Slot, CutWay Way)> cut = Ways(blank, axis, ready, out List<Slot> refused);
        int uncut = waiting.Length == 0 && refused.Count == 0 && tail.Node is null ? Uncut(blank.Extent(axis), cut) : -1;
        var off = new List<(Slot Slot, PlannedCut? Cut, Rebuilt Content)>();
        Length left = blank.Extent(axis);
        for (int i = 0; i < cut.Count; i++)
        {
            if (i == uncut) continue;
            (Slot slot, CutWay way) = cut[i];
            Wood piece = blank.Sliced(axis, slot.Size, Length.Zero, Length.Zero);
            var planned = new PlannedCut(new(way.Way, RunKind.Size, slot.Size), group, slot.Size, way.Kerf, piece)
            {
                Against = way.Against,
                NeedsCarrier = way.NeedsCarrier,
                Needs = slot.IsChained ? [.. blank.Needs, .. group.Cuts] : blank.Needs,
            };
            group.Cuts.Add(planned);
            piece.Needs = [planned];
            left -= slot.Size + way.Kerf;
            off.Add((slot, planned, Process(piece, slot.Node)));
        }
        if (uncut >= 0)
        {
            // What the others leave is this one.
            Wood rest = group.Cuts.Count == 0 ? blank : blank.Sliced(axis, left, Length.Zero, blank.Far(axis));
            if (group.Cuts.Count > 0) (group.Rest, rest.Needs) = (rest, [.. group.Cuts]);
            off.Add((cut[uncut].Slot, null, Process(rest, cut[uncut].Slot.Node)));
        }
        else if (group.Cuts.Count > 0 && left.Sign > 0) group.Rest = Rest(group, left, [.. refused, .. waiting], tail);
        if (group.Cuts.Count > 0) groups.Add(group);
        else if (refused.Count > 0) PutAside(blank, [.. refused, .. waiting]);
        // What cannot be cut stays in what is left.
        foreach (NoWay refusal in refusals.Where(r => ReferenceEquals(r.Blank, blank) && r.Axis == axis)) refusal.Blank = group.Rest ?? blank;
        return turns =>
        [
            .. off.OrderBy(o => turns.Of(o.Cut)).Select(o => new Slice(o.Slot.Size, o.Content(turns))),
            .. AsTheyWere([.. refused, .. waiting], tail),
        ];
    }

    private List<(Slot Slot, CutWay Way)> Ways(Wood blank, GrainAxis axis, Slot[] ready, out List<Slot> refused)
    {
        var cut = new List<(Slot, CutWay)>();
        refused = [];
        for (int i = 0; i < ready.Length; i++)
        {
            Slot slot = ready[i];
            if (ready.Length == 1 && blank.Extent(axis) == slot.Size) cut.Add((slot, default));
            else if (ways.Size(blank, axis, slot.Size, material, out RefusalKind why) is { } way) cut.Add((slot, way));
            else
            {
                // What must come off after it stays with it.
                Slot[] stays = slot.IsChained ? ready[i..] : [slot];
                refusals.Add(new(why, blank, axis, slot.Size, [.. stays.SelectMany(s => EarlierSheets.PartIds(s.Node))]));
                refused.AddRange(stays);
                i += stays.Length - 1;
            }
        }
        return cut;
    }

    // The slice that is just what the others leave, the last of them first; -1 for none. Blades of several widths leave just one of them room, and one that has others to wait for comes last.
    private static int Uncut(Length extent, List<(Slot Slot, CutWay Way)> cut)
    {
        Length all = cut.Aggregate(Length.Zero, (sum, c) => sum + c.Slot.Size + c.Way.Kerf);
        for (int i = cut.Count - 1; i >= 0 && (i == cut.Count - 1 || !cut[^1].Slot.IsChained); i--)
            if (extent == all - cut[i].Way.Kerf) return i;
        return -1;
    }

    private static Wood Rest(CutGroup group, Length left, Slot[] waiting, Tail tail)
    {
        Wood rest = group.Whole.Sliced(group.Axis, left, Length.Zero, group.Whole.Far(group.Axis));
        rest.Needs = [.. group.Cuts];
        if (waiting.Length > 0) PutAside(rest, waiting);
        else rest.Use = tail.Node is KeepNode ? BlankUse.Keep : BlankUse.Waste;
        return rest;
    }

    // Parts a blank that nobody lifts alone: where both halves are lightest, beyond the line if the left-over has room for it.
    private RebuiltSlices? Parted(Wood blank, GrainAxis axis, Slot[] ready, Slot[] waiting, Tail tail)
    {
        bool hasRest = waiting.Length > 0 || tail.Node is not null;
        if (!CutWays.IsHeavy(blank, material) || ready.Length < 2) return null;
        if (ways.Size(blank, axis, ready[0].Size, material, out _) is not { Way: SawWay.Guide } guide) return null;
        Length extent = blank.Extent(axis);
        Length To(int count) => ready[..count].Aggregate(Length.Zero, (sum, s) => sum + s.Size) + (Kerf * (count - 1));
        int at = Enumerable.Range(1, hasRest ? ready.Length : ready.Length - 1).OrderBy(i => Length.Max(To(i), extent - To(i) - guide.Kerf)).First();
        GuidedSaw saw = ways.Limits.Guided!;
        Length beyond = Kerf + saw.Rough, spared = saw.Rough + guide.Kerf;
        Length shrunk = tail.Size - spared, across = blank.Extent(CutWays.Other(axis)), gap = spared - Kerf;
        // A layout that is followed already gets no new rough cut.
        bool isRough = (!_isSettled || tail.WasRough) && !Array.Exists(ready, s => s.IsFigure) && gap.Sign > 0 && tail.Node is not null && shrunk.Sign > 0
            && Called(shrunk, across) == tail.Node && Called(gap, across) is WasteNode
            && ways.Size(blank.Sliced(axis, To(at) + beyond, Length.Zero, beyond), axis, ready[at - 1].Size, material, out _) is { Way: not SawWay.Guide };
        Length figure = isRough ? To(at) + beyond : To(at);
        var group = new CutGroup(blank, axis);
        Wood near = blank.Sliced(axis, figure, Length.Zero, isRough ? beyond : Length.Zero);
        Wood far = blank.Sliced(axis, extent - figure - guide.Kerf, Length.Zero, blank.Far(axis));
        var cut = new PlannedCut(new(SawWay.Guide, isRough ? RunKind.Rough : RunKind.Break, figure), group, figure, guide.Kerf, near) { Needs = blank.Needs };
        group.Cuts.Add(cut);
        group.Rest = far;
        groups.Add(group);
        (near.Needs, far.Needs) = ([cut], [cut]);
        Tail after = isRough ? tail with { Size = shrunk } : tail;
        RebuiltSlices first = Divide(near, axis, [.. ready[..at]], Tail.None);
        RebuiltSlices then;
        if (at < ready.Length) then = Divide(far, axis, [.. ready[at..], .. waiting], after);
        else
        {
            if (waiting.Length > 0) PutAside(far, waiting);
            else far.Use = tail.Node is KeepNode ? BlankUse.Keep : BlankUse.Waste;
            then = _ => AsTheyWere(waiting, after);
        }
        return turns => [.. first(turns), .. isRough ? [new Slice(gap, WasteNode.Instance)] : Array.Empty<Slice>(), .. then(turns)];
    }

    /// <summary>The blank with its near side true; itself where it is. Null, with a refusal, when no saw makes it so.</summary>
    private Wood? True(Wood blank, GrainAxis axis, IEnumerable<CutNode> within)
    {
        Length raw = blank.Near(axis);
        if (raw.Sign == 0) return blank;
        if (ways.True(blank, axis, material) is not { } way)
        {
            refusals.Add(new(RefusalKind.NothingTrues, blank, axis, raw, [.. within.SelectMany(EarlierSheets.PartIds)]));
            return null;
        }
        var group = new CutGroup(blank, axis);
        Wood? off = raw > way.Kerf ? blank.Sliced(axis, raw - way.Kerf, raw, Length.Zero) : null;
        if (off is not null) off.Use = BlankUse.Waste;
        var cut = new PlannedCut(new(way.Way, RunKind.True, Length.Zero), group, raw, way.Kerf, off) { Against = way.Against, Needs = blank.Needs };
        group.Cuts.Add(cut);
        Wood rest = blank.Sliced(axis, blank.Extent(axis) - raw, Length.Zero, blank.Far(axis));
        rest.Needs = [cut];
        if (off is not null) off.Needs = [cut];
        group.Rest = rest;
        groups.Add(group);
        return rest;
    }

    private static void PutAside(Wood blank, IEnumerable<Slot> slots)
    {
        if (blank.Use != BlankUse.Stock) blank.Use = BlankUse.Waiting;
        blank.Waiting.AddRange(slots.SelectMany(s => EarlierSheets.PartIds(s.Node)));
    }

    private static IEnumerable<Slice> AsTheyWere(IEnumerable<Slot> slots, Tail tail) =>
        [.. slots.Select(s => new Slice(s.Size, s.Node)), .. tail.Node is { } node ? [new Slice(tail.Size, node)] : Array.Empty<Slice>()];

    // A slice waits where all its parts do, and where parts that wait settle its size.
    private bool Waits(CutNode node, GrainAxis? axis)
    {
        bool[] held = [.. EarlierSheets.PartIds(node).Select(material.Held.Contains)];
        return Array.Exists(held, h => h) && (Array.TrueForAll(held, h => h) || (axis is { } way && !IsSized(node, way)));
    }

    // True where parts that do not wait fill a rectangle in that direction.
    private bool IsSized(CutNode node, GrainAxis axis) => node switch
    {
        PartNode part => !material.Held.Contains(part.PartId),
        Division division when division.Axis == axis => division.Dust.Sign == 0 && division.Slices.All(s => IsSized(s.Content, axis)),
        Division division => division.Slices.Any(s => IsSized(s.Content, axis)),
        _ => false,
    };
}

/// <summary>When each cut has its turn.</summary>
internal sealed class CutTurns(Dictionary<PlannedCut, int> turns)
{
    /// <summary>The turn of a cut; what needs none is last.</summary>
    public int Of(PlannedCut? cut) => cut is null ? int.MaxValue : turns[cut];
}
