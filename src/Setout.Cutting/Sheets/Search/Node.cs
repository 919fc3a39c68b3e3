using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Search;

/// <summary>A node of a finished search tree, for those who write it down. It has no size: that follows from its parts.</summary>
internal sealed class Node
{
    public NodeKind Kind { get; init; }

    public int Type { get; init; }

    public bool Turned { get; init; }

    public List<Node>? Slices { get; init; }
}

/// <summary>Where a part may go.</summary>
/// <param name="Sheet">Index of the sheet.</param>
/// <param name="Free">Index in the sheet's list of free rectangles.</param>
/// <param name="Turned">Whether the part lies turned.</param>
/// <param name="First">Whether the first cut in the free rectangle separates along or across the grain.</param>
/// <param name="Alone">Whether the part takes the free rectangle from edge to edge square to <paramref name="First"/>, so that nothing can lie beside it.</param>
internal readonly record struct Spot(int Sheet, int Free, bool Turned, NodeKind First, bool Alone = false);
