using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets.Search;

/// <summary>
/// Turns search trees into exact cut trees in ticks. Sizes are computed anew from the parts: each division is as large as
/// its parts need, what is left over is gathered at its far edge, slices of equal size follow each other, and a rest that is no wider
/// than the kerf becomes dust. Sizes in here still carry one kerf more than the wood; a slice loses it when it is written.
/// </summary>
internal sealed class TreeWriter(SheetModel model)
{
    private readonly long _kerf = model.Instance.Kerf.Ticks;
    private readonly Queue<(string Id, bool Flip)>?[] _members = new Queue<(string, bool)>?[model.Types.Length];

    /// <summary>The layout of these sheets, fullest first, with everything that is not on them left out.</summary>
    public SheetLayout Write(IEnumerable<WorkSheet> sheets)
    {
        IEnumerable<WorkSheet> ordered = sheets.Where(s => s.PartCount > 0).OrderByDescending(s => s.UsedArea / model.Stock[s.Stock].Area);
        ImmutableArray<LaidSheet> laid = [.. ordered.Select(Write)];
        Dictionary<string, int> done = laid.SelectMany(s => Ids(s.Root)).CountBy(id => id).ToDictionary(StringComparer.Ordinal);
        ImmutableArray<PartCount> leftOut = [.. model.Instance.Parts
            .Select(p => new PartCount(p.Id, p.Count - done.GetValueOrDefault(p.Id)))
            .Where(p => p.Count > 0)];
        return new(laid, leftOut);
    }

    private static IEnumerable<string> Ids(CutNode node) => node switch
    {
        PartNode part => [part.PartId],
        Division division => division.Slices.SelectMany(p => Ids(p.Content)),
        _ => [],
    };

    /// <summary>One sheet; it takes the next waiting parts of each type.</summary>
    public LaidSheet Write(WorkSheet sheet)
    {
        SheetStock stock = model.Stock[sheet.Stock].Stock;
        long along = stock.TruedAlong.Ticks + _kerf, across = stock.TruedAcross.Ticks + _kerf;
        return new(stock.Id, WriteRoot(sheet.Root, along, across));
    }

    // A first division of columns that leaves a strip worth keeping along the whole sheet has that ripped off first.
    private CutNode WriteRoot(Node root, long along, long across)
    {
        if (root.Kind == NodeKind.Along)
        {
            long need = Need(root).Across, left = across - need - _kerf;
            if (left > 0 && model.Instance.Keep.Keeps(Length.FromTicks(along - _kerf), Length.FromTicks(left)))
                return Divide(GrainAxis.Across, along, across, [(need, Write(root, along, need))]);
        }
        return Write(root, along, across);
    }

    private CutNode Write(Node node, long along, long across)
    {
        if (node.Kind == NodeKind.Part) return WritePart(node, along, across);
        GrainAxis axis = node.Kind == NodeKind.Along ? GrainAxis.Along : GrainAxis.Across;
        var slices = new List<(long Size, CutNode Content)>();
        IEnumerable<(Node Node, long Size, long Other)> needs = node.Slices!
            .Where(p => p.Kind != NodeKind.Free)
            .Select(p => (Node: p, Need: Need(p)))
            .Select(p => (p.Node, Size: axis == GrainAxis.Along ? p.Need.Along : p.Need.Across, Other: axis == GrainAxis.Along ? p.Need.Across : p.Need.Along))
            .OrderByDescending(p => p.Size).ThenByDescending(p => p.Other);
        foreach ((Node slice, long size, long _) in needs)
        {
            CutNode content = axis == GrainAxis.Along ? Write(slice, size, across) : Write(slice, along, size);
            // A division of a division in the same direction is one division.
            if (content is Division inner && inner.Axis == axis && inner.Dust == Length.Zero)
                slices.AddRange(inner.Slices.Select(p => (p.Size.Ticks + _kerf, p.Content)));
            else slices.Add((size, content));
        }
        return Divide(axis, along, across, slices);
    }

    // Both directions may be too large where a part lies alone: the larger rest is cut off in one slice.
    private CutNode WritePart(Node node, long along, long across)
    {
        (long needAlong, long needAcross) = Need(node);
        if (needAlong == along && needAcross == across) return Part(node);
        bool ripFirst = needAlong == along || (needAcross != across && (Int128)along * (across - needAcross) >= (Int128)across * (along - needAlong));
        return ripFirst
            ? Divide(GrainAxis.Across, along, across, [(needAcross, WritePart(node, along, needAcross))])
            : Divide(GrainAxis.Along, along, across, [(needAlong, WritePart(node, needAlong, across))]);
    }

    private PartNode Part(Node node)
    {
        Queue<(string Id, bool Flip)> members = _members[node.Type]
            ??= new(model.Types[node.Type].Members.SelectMany(m => Enumerable.Repeat((m.Part.Id, m.Flip), m.Part.Count)));
        (string id, bool flip) = members.Dequeue();
        return new(id, node.Turned != flip ? Turn.Quarter : Turn.None);
    }

    private CutNode Divide(GrainAxis axis, long along, long across, List<(long Size, CutNode Content)> slices)
    {
        long left = (axis == GrainAxis.Along ? along : across) - slices.Sum(p => p.Size);
        if (left == 0 && slices.Count == 1) return slices[0].Content;
        ImmutableArray<Slice>.Builder cut = ImmutableArray.CreateBuilder<Slice>(slices.Count + 1);
        foreach ((long size, CutNode content) in slices) cut.Add(new(Length.FromTicks(size - _kerf), content));
        if (left > _kerf)
        {
            Length size = Length.FromTicks(left - _kerf), other = Length.FromTicks((axis == GrainAxis.Along ? across : along) - _kerf);
            cut.Add(new(size, model.Instance.Keep.Keeps(size, other) ? KeepNode.Instance : WasteNode.Instance));
        }
        return new Division(axis, cut.DrainToImmutable(), left > _kerf ? Length.Zero : Length.FromTicks(left));
    }

    private (long Along, long Across) Need(Node node)
    {
        if (node.Kind == NodeKind.Part)
        {
            PartType type = model.Types[node.Type];
            long a = type.Along * model.Step, b = type.Across * model.Step;
            return node.Turned ? (b, a) : (a, b);
        }
        long along = 0, across = 0;
        foreach (Node slice in node.Slices!)
        {
            if (slice.Kind == NodeKind.Free) continue;
            (long a, long b) = Need(slice);
            along = node.Kind == NodeKind.Along ? along + a : Math.Max(along, a);
            across = node.Kind == NodeKind.Across ? across + b : Math.Max(across, b);
        }
        return (along, across);
    }
}
