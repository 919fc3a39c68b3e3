using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>A place in a cut tree where something is cut to its size in both directions out of waste, and may as well be cut the other way round.</summary>
/// <param name="Axis">The direction of the figure that comes second when it is turned.</param>
/// <param name="Along">Its size in that direction.</param>
/// <param name="Beside">Its size in the other.</param>
/// <param name="Opens">True where the waste beyond its slice goes with it, false where its waste goes to what lies beyond its slice.</param>
internal readonly record struct WayRound(GrainAxis Axis, Length Along, Length Beside, bool Opens);

/// <summary>
/// The two ways round what has waste on both sides: first the one waste goes and then the other. Both take as many cuts and leave nothing but waste, but the first cut runs
/// farther, so the saw that makes it may be another, and what must be cut before what differs.
/// </summary>
/// <param name="material">The material.</param>
internal sealed class WaysRound(RunSheets material)
{
    private readonly HashSet<string> _fixed = [.. material.Held, .. material.Instance.Groups.SelectMany(g => g.PartIds)];

    private Length Kerf => material.Instance.Kerf;

    /// <summary>All places of the layouts, equal ones once, in an order that is always the same.</summary>
    public static ImmutableArray<WayRound> Places(ImmutableArray<RunMaterial> materials)
    {
        var found = new HashSet<WayRound>();
        foreach (RunSheets sheets in materials.OfType<RunSheets>())
            new WaysRound(sheets).Turned(place =>
            {
                found.Add(place);
                return false;
            });
        return [.. found.OrderBy(p => p.Along).ThenBy(p => p.Beside).ThenBy(p => p.Axis).ThenBy(p => p.Opens)];
    }

    /// <summary>The same with such a place turned wherever it is.</summary>
    public static ImmutableArray<RunMaterial> Turned(ImmutableArray<RunMaterial> materials, WayRound place) =>
        [.. materials.Select(m => m is RunSheets sheets && new WaysRound(sheets).Turned(place.Equals) is { } layout ? sheets with { Layout = layout } : m)];

    /// <summary>Whether layouts that were turned keep the rules; all others do.</summary>
    public static bool IsSound(ImmutableArray<RunMaterial> turned, ImmutableArray<RunMaterial> materials) => turned.Zip(materials)
        .All(p => ReferenceEquals(p.First, p.Second) || p.First is not RunSheets sheets || sheets.Layout.Sheets.All(l => SheetChecker.CheckAlone(sheets.Instance, l).IsEmpty));

    // The layout with the places turned that are chosen; null where there is none of them.
    private SheetLayout? Turned(Func<WayRound, bool> isChosen)
    {
        var sheets = material.Layout.Sheets.ToBuilder();
        bool isTurned = false;
        for (int i = 0; i < sheets.Count; i++)
        {
            // One that is followed already stays.
            if (material.Settled.Contains(i)) continue;
            SheetStock stock = SheetFace.StockOf(material.Instance, sheets[i]);
            CutNode root = Turned(sheets[i].Root, stock.TruedAlong, stock.TruedAcross, true, isChosen);
            if (ReferenceEquals(root, sheets[i].Root)) continue;
            sheets[i] = sheets[i] with { Root = root };
            isTurned = true;
        }
        return isTurned ? material.Layout with { Sheets = sheets.ToImmutable() } : null;
    }

    private CutNode Turned(CutNode node, Length along, Length across, bool isRoot, Func<WayRound, bool> isChosen)
    {
        if (node is not Division division) return node;
        Length beside = division.Axis == GrainAxis.Along ? across : along;
        // From the leaves up: what is turned within may be turned again with what is around it in a later look.
        Slice[] slices = [.. division.Slices.Select(s => s with
        {
            Content = division.Axis == GrainAxis.Along ? Turned(s.Content, s.Size, across, false, isChosen) : Turned(s.Content, along, s.Size, false, isChosen),
        })];
        if (slices.Zip(division.Slices).Any(p => !ReferenceEquals(p.First.Content, p.Second.Content))) return division with { Slices = [.. slices] };
        if (Cut.Of(division) is not { IsKept: false } cut || EarlierSheets.PartIds(division).Any(_fixed.Contains)) return division;
        foreach (Slice slice in cut.Slices)
        {
            if (slice.Content is not Division { } inner || inner.Axis == division.Axis || Cut.Of(inner) is not { IsKept: false, Slices: [var only] } innerCut) continue;
            if (cut.Tail.Sign > 0 && (cut.Slices.Length > 1 || isRoot) && isChosen(new(division.Axis, slice.Size, only.Size, true)) && Opened(division, cut, slice, innerCut) is { } opened) return opened;
            if (only.Content is Division { } core && core.Axis == division.Axis && Cut.Of(core) is { IsKept: false, Slices: [var last] }
                && isChosen(new(division.Axis, last.Size, only.Size, false)) && Closed(division, cut, slice, innerCut, last, beside) is { } closed) return closed;
        }
        return division;
    }

    // Slices with what lies beyond them.
    private sealed record Cut(ImmutableArray<Slice> Slices, Length Tail, Length Dust, bool IsKept)
    {
        /// <summary>Null where waste lies between slices: a rough cut took it.</summary>
        public static Cut? Of(Division division)
        {
            bool hasTail = division.Slices[^1].Content is KeepNode or WasteNode;
            ImmutableArray<Slice> slices = hasTail ? division.Slices[..^1] : division.Slices;
            return slices.Any(s => s.Content is KeepNode or WasteNode) ? null : new(slices, hasTail ? division.Slices[^1].Size : Length.Zero, division.Dust, division.Slices[^1].Content is KeepNode);
        }
    }

    // The waste beyond all slices goes with this one, which comes last: it is cut to its size in the other direction first.
    private CutNode? Opened(Division division, Cut cut, Slice slice, Cut inner)
    {
        Slice only = inner.Slices[0];
        Length open = slice.Size + Kerf + cut.Tail;
        // A slack is kept at the far edge by what is last there, whatever waits next time.
        if (material.Instance.Slack.Sign > 0) return null;
        if (!IsWaste(cut.Tail, only.Size) || (inner.Tail.Sign > 0 && !IsWaste(inner.Tail, open))) return null;
        var core = new Division(division.Axis, [slice with { Content = only.Content }, new(cut.Tail, WasteNode.Instance)], Length.Zero);
        Division outer = With(((Division)slice.Content).Axis, [only with { Content = core }], inner.Tail, inner.Dust);
        return cut.Slices.Length == 1 ? outer : division with { Slices = [.. cut.Slices.Where(s => !ReferenceEquals(s, slice)), new(open, outer)] };
    }

    // Its waste goes to what lies beyond all slices: it is cut to its size in this direction first.
    private CutNode? Closed(Division division, Cut cut, Slice slice, Cut inner, Slice last, Length beside)
    {
        Slice only = inner.Slices[0];
        Length left = slice.Size - last.Size + (cut.Tail.Sign > 0 ? Kerf + cut.Tail : cut.Dust), tail = left > Kerf ? left - Kerf : Length.Zero;
        if (tail.Sign > 0 && !IsWaste(tail, beside)) return null;
        Division outer = With(((Division)slice.Content).Axis, [only with { Content = last.Content }], inner.Tail, inner.Dust);
        return With(division.Axis, [.. cut.Slices.Select(s => ReferenceEquals(s, slice) ? new(last.Size, outer) : s)], tail, tail.Sign > 0 ? Length.Zero : left);
    }

    private static Division With(GrainAxis axis, ImmutableArray<Slice> slices, Length tail, Length dust) =>
        new(axis, tail.Sign > 0 ? slices.Add(new(tail, WasteNode.Instance)) : slices, dust);

    private bool IsWaste(Length size, Length other) => !material.Instance.Keep.Keeps(size, other);
}
