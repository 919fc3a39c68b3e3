using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Search;

/// <summary>
/// Turns search trees into exact cut trees in ticks. Sizes are computed anew from the parts: each division is as large as
/// its parts need, what is left over is gathered at its far edge, slices of equal size follow each other, and a rest that is no wider
/// than the kerf becomes dust. A slack is given to the left-over at the far edge. A figure group's block is divided into its members. Sizes in here still carry one kerf more than the wood; a slice loses it when it is written.
/// </summary>
internal sealed class TreeWriter(SheetModel model)
{
    private readonly long _kerf = model.Instance.Kerf.Ticks;
    private readonly PartMember[]?[] _members = new PartMember[]?[model.Types.Length];
    private int[] _given = new int[model.Types.Length];

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
    public LaidSheet Write(WorkSheet sheet) => Write(sheet.Stock, sheet.Root);

    /// <summary>One sheet of this stock, divided so.</summary>
    public LaidSheet Write(int kind, Node root)
    {
        SheetStock stock = model.Stock[kind].Stock;
        long along = stock.TruedAlong.Ticks + _kerf, across = stock.TruedAcross.Ticks + _kerf;
        return new(stock.Id, WriteRoot(root, stock, along, across));
    }

    // A first division of columns that leaves a strip worth keeping along the whole sheet has that ripped off first; so has one
    // where that makes fewer settings than trimming column by column. Never for a stage more than the shop allows.
    private CutNode WriteRoot(Node root, SheetStock stock, long along, long across)
    {
        int[] given = [.. _given];
        CutNode plain = Write(root, along, across);
        long need = root.Kind == NodeKind.Along ? Need(root).Across : across, left = across - need - _kerf;
        if (need == across) return plain;
        bool worthKeeping = left > 0 && model.Instance.Keep.Keeps(Length.FromTicks(along - _kerf), Length.FromTicks(left));
        // The same parts again: what the first writing gave out is taken back.
        int[] givenByPlain = _given;
        _given = given;
        CutNode ripped = Divide(GrainAxis.Across, along, across, [(need, Write(root, along, need))]);
        bool better = worthKeeping || (Stages(ripped) <= Stages(plain) && SheetObjective.ScoreSheets([(stock, ripped)]) < SheetObjective.ScoreSheets([(stock, plain)]));
        if (better && Stages(ripped) <= model.MostStages) return ripped;
        _given = givenByPlain;
        return plain;
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
            slices.Add((size, axis == GrainAxis.Along ? Write(slice, size, across) : Write(slice, along, size)));
        return Divide(axis, along, across, slices);
    }

    // Both directions may be too large where a part lies alone: the larger rest is cut off in one slice.
    private CutNode WritePart(Node node, long along, long across)
    {
        (long needAlong, long needAcross) = Need(node);
        if (needAlong == along && needAcross == across) return Part(node, along, across);
        GrainAxis? figure = model.Types[node.Type].Figure;
        // A block between two cuts of its own direction: where stages are few, its members are trimmed one by one, which is a stage less.
        if (model.Instance.MostStages is not null && figure is { } axis)
        {
            if (axis == GrainAxis.Along ? needAlong == along : needAcross == across) return Part(node, along, across);
            // So it is where the block has the sheet to itself and ends at neither far edge.
            if (model.Types[node.Type].Trims)
                return Divide(axis, along, across, [axis == GrainAxis.Along ? (needAlong, Part(node, needAlong, across)) : (needAcross, Part(node, along, needAcross))]);
        }
        bool ripFirst = needAlong == along || (needAcross != across && (figure is null
            ? (Int128)along * (across - needAcross) >= (Int128)across * (along - needAlong)
            : figure == GrainAxis.Along)); // the last cuts of a block are those between its members
        return ripFirst
            ? Divide(GrainAxis.Across, along, across, [(needAcross, WritePart(node, along, needAcross))])
            : Divide(GrainAxis.Along, along, across, [(needAlong, WritePart(node, needAlong, across))]);
    }

    private CutNode Part(Node node, long along, long across)
    {
        PartMember[] members = _members[node.Type]
            ??= [.. model.Types[node.Type].Members.SelectMany(m => Enumerable.Repeat(m, m.Part.Count))];
        PartMember member = members[_given[node.Type]++];
        return member.Block is { } block ? Members(block, along, across) : new PartNode(member.Part.Id, node.Turned != member.Flip ? Turn.Quarter : Turn.None);
    }

    private CutNode Members(FigureBlock block, long along, long across)
    {
        bool inLine = block.Group.Axis == GrainAxis.Along;
        List<(long, CutNode)> slices = [];
        foreach (SheetPart part in block.Members)
        {
            long partAlong = part.Along.Ticks + _kerf, partAcross = part.Across.Ticks + _kerf;
            CutNode lies = new PartNode(part.Id, Turn.None);
            slices.Add(inLine
                ? (partAlong, Divide(GrainAxis.Across, partAlong, across, [(partAcross, lies)]))
                : (partAcross, Divide(GrainAxis.Along, along, partAcross, [(partAlong, lies)])));
        }
        return Divide(block.Group.Axis, along, across, slices);
    }

    // How many divisions lie on the way to the deepest part.
    private static int Stages(CutNode node) => node is Division division ? 1 + division.Slices.Max(s => Stages(s.Content)) : 0;

    private CutNode Divide(GrainAxis axis, long along, long across, List<(long Size, CutNode Content)> slices)
    {
        long left = (axis == GrainAxis.Along ? along : across) - slices.Sum(p => p.Size);
        if (left == 0 && slices.Count == 1) return slices[0].Content;
        ImmutableArray<Slice>.Builder cut = ImmutableArray.CreateBuilder<Slice>(slices.Count + 1);
        foreach ((long size, CutNode content) in slices)
        {
            // A division of a division in the same direction is one division.
            if (content is Division inner && inner.Axis == axis && inner.Dust == Length.Zero) cut.AddRange(inner.Slices);
            else cut.Add(new(Length.FromTicks(size - _kerf), content));
        }
        if (left > _kerf)
        {
            Length size = Length.FromTicks(left - _kerf), other = Length.FromTicks((axis == GrainAxis.Along ? across : along) - _kerf);
            cut.Add(new(size, model.Instance.Keep.Keeps(size, other) ? KeepNode.Instance : WasteNode.Instance));
        }
        return new Division(axis, cut.ToImmutable(), left > _kerf ? Length.Zero : Length.FromTicks(left));
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
