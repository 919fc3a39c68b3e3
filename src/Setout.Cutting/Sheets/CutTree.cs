using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>
/// What becomes of one rectangle of wood: a part, a left-over (kept or waste), or a division into slices. A node does not
/// state its own size: the root has the size of its trued stock, and each slice of a division takes its size from the
/// division along the axis and from its parent in the other direction. See docs/decisions on the cut tree.
/// </summary>
public abstract record CutNode;

/// <summary>The rectangle is exactly one part.</summary>
/// <param name="PartId">The part.</param>
/// <param name="Turn">How it lies.</param>
public sealed record PartNode(string PartId, Turn Turn) : CutNode;

/// <summary>A left-over worth keeping by the instance's keep rule.</summary>
public sealed record KeepNode : CutNode
{
    /// <summary>The one value.</summary>
    public static KeepNode Instance { get; } = new();
}

/// <summary>A left-over not worth keeping.</summary>
public sealed record WasteNode : CutNode
{
    /// <summary>The one value.</summary>
    public static WasteNode Instance { get; } = new();
}

/// <summary>One slice of a division.</summary>
/// <param name="Size">Its size in the direction of the division's axis; above zero.</param>
/// <param name="Content">What becomes of it.</param>
public sealed record Slice(Length Size, CutNode Content);

/// <summary>
/// The rectangle is cut from edge to edge into slices that follow each other along <paramref name="Axis"/> from the
/// reference edge, one kerf between neighbours. Axis Across means rips (the blade runs along the grain), axis Along means crosscuts.
/// Slices, kerfs between them and <paramref name="Dust"/> add up exactly to the rectangle's extent.
/// </summary>
/// <param name="Axis">The direction in which the slices follow each other.</param>
/// <param name="Slices">One or more; a division makes at least one cut, so a single slice needs dust.</param>
/// <param name="Dust">
/// What lies beyond the last slice when that is too thin to be a slice: above zero and at most one kerf, and one last cut
/// turns it into dust. Zero when the last slice ends at the rectangle's far edge, or is the left-over itself.
/// </param>
public sealed record Division(GrainAxis Axis, ImmutableArray<Slice> Slices, Length Dust) : CutNode
{
    /// <summary>How many cuts this division takes: one between neighbours, and one more where the last sliver goes to dust.</summary>
    public int Cuts => Slices.Length - 1 + (Dust.Sign > 0 ? 1 : 0);

    /// <inheritdoc/>
    public bool Equals(Division? other) =>
        other is not null && Axis == other.Axis && Dust == other.Dust && SameArrays.Equal(Slices, other.Slices);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Axis, Dust, SameArrays.Hash(Slices));
}

/// <summary>One sheet or blank of a layout.</summary>
/// <param name="StockId">Which stock it is.</param>
/// <param name="Root">What becomes of its trued rectangle.</param>
public sealed record LaidSheet(string StockId, CutNode Root);

/// <summary>Parts laid on sheets.</summary>
/// <param name="Sheets">In the order in which they are best cut: fullest first, the one with the best left-over last. Sheets kept from a
/// layout before come first, in its order.</param>
/// <param name="LeftOut">Parts that are not laid, in the instance's order; empty for a whole layout.</param>
public sealed record SheetLayout(ImmutableArray<LaidSheet> Sheets, ImmutableArray<PartCount> LeftOut)
{
    /// <inheritdoc/>
    public bool Equals(SheetLayout? other) =>
        other is not null && SameArrays.Equal(Sheets, other.Sheets) && SameArrays.Equal(LeftOut, other.LeftOut);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(SameArrays.Hash(Sheets), SameArrays.Hash(LeftOut));
}
