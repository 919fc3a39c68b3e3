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
/// <param name="later">Takes what cannot be cut either once that is mended. Null for the walk that looks for it: a cut that is refused is taken as made.</param>
internal sealed class SheetBreaking(RunSheets material, int index, CutWays ways, List<CutGroup> groups, List<NoWay> refusals, List<NoWay>? later)
{
    private readonly Dictionary<string, SheetPart> _parts = material.Instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
    private readonly SheetSlots _slots = new(material);
    private bool _isSettled;

    private Length Kerf => material.Instance.Kerf;

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
        if (_slots.Waits(sheet.Root, null))
        {
            blank.Waiting.AddRange(EarlierSheets.PartIds(sheet.Root));
            return (blank, _ => sheet);
        }
        int before = refusals.Count;
        // The reference edge first: it lies at every fence.
        Wood? at = sheet.Root is Division { Axis: GrainAxis.Along } ? True(blank, GrainAxis.Across, [sheet.Root]) : blank;
        if (at is null)
        {
            PutAside(blank, [new(stock.TruedAlong, sheet.Root)]);
            LookBeyond(number, before);
            return (blank, _ => sheet);
        }
        Rebuilt rebuilt = Process(at, sheet.Root);
        LookBeyond(number, before);
        // A sheet that cannot be sawn as it lies stays as it was: the plan stops at it.
        return refusals.Count > before ? (blank, _ => sheet) : (blank, turns => sheet with { Root = rebuilt(turns) });
    }

    // What else is refused of a sheet that has refusals, each once.
    private void LookBeyond(int number, int before)
    {
        if (later is null || refusals.Count == before) return;
        var found = new List<NoWay>();
        new SheetBreaking(material, index, ways, [], found, null).Break(number);
        later.AddRange(found.Where(f => !refusals.Skip(before).Any(f.IsSame)));
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
                (List<Slot> slots, Tail tail) = _slots.Read(division, blank, _isSettled);
                RebuiltSlices slices = Divide(blank, division.Axis, slots, tail);
                return turns => division with { Slices = [.. slices(turns)], Dust = tail.Dust };
            default:
                blank.Use = node is KeepNode ? BlankUse.Keep : BlankUse.Waste;
                return _ => node;
        }
    }

    private RebuiltSlices Divide(Wood blank, GrainAxis axis, List<Slot> slots, Tail tail)
    {
        Slot[] ready = [.. slots.Where(s => !s.Waits)], waiting = [.. slots.Where(s => s.Waits)];
        if (ready.Length == 0)
        {
            PutAside(blank, waiting);
            return _ => SheetSlots.AsTheyWere(waiting, tail);
        }
        if (True(blank, axis, slots.Select(s => s.Node)) is not { } trued)
        {
            PutAside(blank, slots);
            return _ => SheetSlots.AsTheyWere(slots, tail);
        }
        if (Parted(trued, axis, ready, waiting, tail) is { } parted) return parted;
        return CutOff(trued, axis, ready, waiting, tail);
    }

    // Slices come off one by one; what is left once they are off is waste, kept, or waits.
    private RebuiltSlices CutOff(Wood blank, GrainAxis axis, Slot[] ready, Slot[] waiting, Tail tail)
    {
        var group = new CutGroup(blank, axis);
        bool mayFill = waiting.Length == 0 && tail.Node is null;
        Slot? open = mayFill ? SheetSlots.Open(ready, axis) : null;
        List<(Slot Slot, CutWay Way)> cut = Ways(blank, axis, ready, open, out List<Slot> refused);
        int uncut = !mayFill || refused.Count > 0 ? -1 : open is not null ? cut.FindIndex(c => ReferenceEquals(c.Slot, open)) : SheetSlots.Uncut(blank.Extent(axis), cut);
        var off = new List<(Slot Slot, PlannedCut? Cut, Rebuilt Content)>();
        Length left = blank.Extent(axis);
        for (int i = 0; i < cut.Count; i++)
        {
            if (i == uncut) continue;
            (Slot slot, CutWay way) = cut[i];
            Wood piece = blank.Sliced(axis, slot.Size, Length.Zero, Length.Zero);
            var planned = new PlannedCut(way.Way, RunKind.Size, group, slot.Size, way.Kerf, piece)
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
            .. SheetSlots.AsTheyWere([.. refused, .. waiting], tail),
        ];
    }

    private List<(Slot Slot, CutWay Way)> Ways(Wood blank, GrainAxis axis, Slot[] ready, Slot? open, out List<Slot> refused)
    {
        var cut = new List<(Slot, CutWay)>();
        refused = [];
        for (int i = 0; i < ready.Length; i++)
        {
            Slot slot = ready[i];
            if (ReferenceEquals(slot, open)) cut.Add((slot, default));
            else if (ready.Length == 1 && blank.Extent(axis) == slot.Size) cut.Add((slot, default));
            else if (ways.Size(blank, axis, slot.Size, material, out RefusalKind why) is { } way) cut.Add((slot, way));
            else
            {
                // What must come off after it stays with it.
                Slot[] stays = slot.IsChained && later is not null ? ready[i..] : [slot];
                refusals.Add(new(why, blank, axis, slot.Size, [.. stays.SelectMany(s => EarlierSheets.PartIds(s.Node))]));
                if (later is null)
                {
                    cut.Add((slot, default));
                    continue;
                }
                refused.AddRange(stays);
                i += stays.Length - 1;
            }
        }
        // Where others stay in what is left, it comes off like them.
        if (refused.Count > 0 && cut.FindIndex(c => ReferenceEquals(c.Item1, open)) is >= 0 and int at)
        {
            if (ways.Size(blank, axis, open!.Size, material, out RefusalKind why) is { } way) cut[at] = (open, way);
            else
            {
                cut.RemoveAt(at);
                refusals.Add(new(why, blank, axis, open.Size, [.. EarlierSheets.PartIds(open.Node)]));
                refused.Add(open);
            }
        }
        return cut;
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
            && _slots.Called(shrunk, across) == tail.Node && _slots.Called(gap, across) is WasteNode
            && ways.Size(blank.Sliced(axis, To(at) + beyond, Length.Zero, beyond), axis, ready[at - 1].Size, material, out _) is { Way: not SawWay.Guide };
        Length figure = isRough ? To(at) + beyond : To(at);
        var group = new CutGroup(blank, axis);
        Wood near = blank.Sliced(axis, figure, Length.Zero, isRough ? beyond : Length.Zero);
        Wood far = blank.Sliced(axis, extent - figure - guide.Kerf, Length.Zero, blank.Far(axis));
        var cut = new PlannedCut(SawWay.Guide, isRough ? RunKind.Rough : RunKind.Break, group, figure, guide.Kerf, near) { Needs = blank.Needs };
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
            then = _ => SheetSlots.AsTheyWere(waiting, after);
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
            if (later is not null) return null;
            Wood asIf = blank.Sliced(axis, blank.Extent(axis) - raw, Length.Zero, blank.Far(axis));
            asIf.Needs = blank.Needs;
            return asIf;
        }
        var group = new CutGroup(blank, axis);
        Wood? off = raw > way.Kerf ? blank.Sliced(axis, raw - way.Kerf, raw, Length.Zero) : null;
        if (off is not null) off.Use = BlankUse.Waste;
        var cut = new PlannedCut(way.Way, RunKind.True, group, raw, way.Kerf, off) { Against = way.Against, Needs = blank.Needs };
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

}

/// <summary>When each cut has its turn.</summary>
internal sealed class CutTurns(Dictionary<PlannedCut, int> turns)
{
    /// <summary>The turn of a cut; what needs none is last.</summary>
    public int Of(PlannedCut? cut) => cut is null ? int.MaxValue : turns[cut];
}
