using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>One slice that is to be cut off, with what waits in it.</summary>
/// <param name="Size">Its size in the direction of the division.</param>
/// <param name="Node">What becomes of it.</param>
internal sealed record Slot(Length Size, CutNode Node)
{
    public bool Waits { get; init; }

    /// <summary>It comes off after all slots before it.</summary>
    public bool IsChained { get; init; }

    /// <summary>A figure runs through it to its neighbours.</summary>
    public bool IsFigure { get; init; }
}

/// <summary>What lies beyond the slices.</summary>
internal sealed record Tail(Length Size, CutNode? Node, Length Dust)
{
    public static Tail None { get; } = new(Length.Zero, null, Length.Zero);

    /// <summary>An earlier rough cut took its share of it.</summary>
    public bool WasRough { get; init; }
}

/// <summary>Reads a division of a cut tree: which slices come off, in which order they must, which of them wait, and which is left by the others.</summary>
/// <param name="material">The material.</param>
internal sealed class SheetSlots(RunSheets material)
{
    private readonly Dictionary<string, FigureGroup> _figures = material.Instance.Groups.SelectMany(g => g.PartIds.Distinct().Select(id => (id, g))).ToDictionary(p => p.id, p => p.g, StringComparer.Ordinal);

    private Length Kerf => material.Instance.Kerf;

    /// <summary>The slices in the order in which they may come off, and what lies beyond them.</summary>
    /// <param name="division">The division.</param>
    /// <param name="blank">What is divided.</param>
    /// <param name="isSettled">The sheet is followed already.</param>
    public (List<Slot> Slots, Tail Tail) Read(Division division, Wood blank, bool isSettled)
    {
        (List<Slot> slots, Tail tail) = Slices(division, blank);
        return (InOrder(slots, division.Axis, isSettled), tail);
    }

    // Waste between slices is what an earlier rough cut took: it is given back before the cuts are planned anew.
    private (List<Slot>, Tail) Slices(Division division, Wood blank)
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

    /// <summary>What a left-over is called by its size.</summary>
    public CutNode Called(Length size, Length other) => material.Instance.Keep.Keeps(size, other) ? KeepNode.Instance : WasteNode.Instance;

    // Large before small, then blocks through which a figure runs, each in its order. Where a member waits, so do those after it, and they must lie next to those
    // before it: so one such block ends what is cut, and of any other all members wait. A sheet that is followed already stays, but for what waits: that comes last there too, so
    // that it holds back nothing whose reading came first.
    private List<Slot> InOrder(List<Slot> slots, GrainAxis axis, bool isSettled)
    {
        List<List<Slot>> blocks = [.. Blocks(slots, axis).Select(b => Chained(b).ConvertAll(s => s with { IsFigure = true })).OrderBy(b => b.Count(s => s.Waits))];
        var inBlocks = new HashSet<CutNode>(blocks.SelectMany(b => b).Select(s => s.Node), ReferenceEqualityComparer.Instance);
        int whole = blocks.Count(b => !b[^1].Waits);
        if (isSettled)
        {
            HashSet<CutNode> stays = new(blocks.Take(whole).SelectMany(b => b).Select(s => s.Node), ReferenceEqualityComparer.Instance);
            List<Slot> inTurn = [.. slots.Where(s => inBlocks.Contains(s.Node) ? stays.Contains(s.Node) : !s.Waits), .. blocks.Skip(whole).Take(1).SelectMany(b => b)];
            return
            [
                .. Chained(inTurn).Select(s => s with { IsFigure = inBlocks.Contains(s.Node) }), .. slots.Where(s => s.Waits && !inBlocks.Contains(s.Node)),
                .. blocks.Skip(whole + 1).SelectMany(b => b.Select(s => s with { Waits = true })),
            ];
        }
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

    /// <summary>The slice that is just what the others leave, the last of them first; -1 for none.</summary>
    // Blades of several widths leave just one of them room, and one that has others to wait for comes last.
    public static int Uncut(Length extent, List<(Slot Slot, CutWay Way)> cut)
    {
        Length all = cut.Aggregate(Length.Zero, (sum, c) => sum + c.Slot.Size + c.Way.Kerf);
        for (int i = cut.Count - 1; i >= 0 && (i == cut.Count - 1 || !cut[^1].Slot.IsChained); i--)
            if (extent == all - cut[i].Way.Kerf) return i;
        return -1;
    }

    /// <summary>The last slice with nothing but waste at its far side: what the others leave is that one, however far it goes. Null for none.</summary>
    public static Slot? Open(Slot[] ready, GrainAxis axis) => Array.FindLast(ready, s => IsOpen(s.Node, axis)) is { } open && (ReferenceEquals(open, ready[^1]) || !Array.Exists(ready, s => s.IsChained)) ? open : null;

    private static bool IsOpen(CutNode node, GrainAxis axis) => node switch
    {
        WasteNode => true,
        Division division when division.Axis == axis => division.Slices[^1].Content is WasteNode,
        Division division => division.Slices.All(s => IsOpen(s.Content, axis)),
        _ => false,
    };

    /// <summary>Slices that no cut is made for, with what lies beyond them.</summary>
    public static IEnumerable<Slice> AsTheyWere(IEnumerable<Slot> slots, Tail tail) =>
        [.. slots.Select(s => new Slice(s.Size, s.Node)), .. tail.Node is { } node ? [new Slice(tail.Size, node)] : Array.Empty<Slice>()];

    /// <summary>A slice waits where all its parts do, and where parts that wait settle its size.</summary>
    public bool Waits(CutNode node, GrainAxis? axis)
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
