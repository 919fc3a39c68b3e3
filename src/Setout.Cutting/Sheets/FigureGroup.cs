using System.Collections.Immutable;

namespace Setout.Cutting.Sheets;

/// <summary>
/// Parts whose figure runs through from one to the next: they are cut from one sheet as one block, beside each other in this order from
/// the reference corner, one kerf apart, unturned and in line at the reference edge. Members may differ in the other direction; the
/// block has the largest and the others are trimmed from it.
/// </summary>
/// <param name="Id">Unique within the instance; not empty.</param>
/// <param name="Axis">The direction in which the members follow each other: Along for one behind the other in the direction of the grain.</param>
/// <param name="PartIds">
/// The members in order, two or more. A part may be named more than once (three equal fronts of one bank are one part), but
/// belongs to one group only. The group is cut as many times as each part's count holds its mentions; all parts must agree on that.
/// </param>
public sealed record FigureGroup(string Id, GrainAxis Axis, ImmutableArray<string> PartIds)
{
    /// <inheritdoc/>
    public bool Equals(FigureGroup? other) => other is not null && Id == other.Id && Axis == other.Axis && SameArrays.Equal(PartIds, other.PartIds);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Id, Axis, SameArrays.Hash(PartIds));
}
