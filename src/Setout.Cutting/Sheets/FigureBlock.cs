using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>
/// A figure group as the saw first meets it: one rectangle that holds the members in order with a kerf between each two. It cannot be
/// turned, and nothing else is cut from it; so it counts as one part in searches and bounds.
/// </summary>
/// <param name="Group">The group.</param>
/// <param name="Members">Its parts in order; one that is named twice stands here twice.</param>
/// <param name="Block">The rectangle as a part: id of the group, size, how many times the group is cut.</param>
internal sealed record FigureBlock(FigureGroup Group, ImmutableArray<SheetPart> Members, SheetPart Block)
{
    /// <summary>True when a member is smaller than the block in the other direction, so that it must be trimmed.</summary>
    public bool Trims { get; } = Members.Any(m => Other(m, Group.Axis) != Other(Block, Group.Axis));

    public static FigureBlock Of(FigureGroup group, IReadOnlyDictionary<string, SheetPart> parts, Length kerf)
    {
        ImmutableArray<SheetPart> members = [.. group.PartIds.Select(id => parts[id])];
        Length inLine = members.Aggregate(kerf * (members.Length - 1), (sum, m) => sum + Size(m, group.Axis));
        Length other = members.Max(m => Other(m, group.Axis));
        int count = members[0].Count / group.PartIds.Count(id => id == group.PartIds[0]);
        (Length along, Length across) = group.Axis == GrainAxis.Along ? (inLine, other) : (other, inLine);
        return new(group, members, new(group.Id, along, across, count, GrainRule.Keep));
    }

    /// <summary>A part's size in this direction, unturned.</summary>
    public static Length Size(SheetPart part, GrainAxis axis) => axis == GrainAxis.Along ? part.Along : part.Across;

    /// <summary>A part's size square to this direction, unturned.</summary>
    public static Length Other(SheetPart part, GrainAxis axis) => axis == GrainAxis.Along ? part.Across : part.Along;
}
