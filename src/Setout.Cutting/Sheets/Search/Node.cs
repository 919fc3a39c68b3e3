using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Search;

/// <summary>A node of a finished search tree, sizes in steps of the model's grid with one kerf added; for those who write it down.</summary>
internal sealed class Node(long along, long across)
{
    public long SizeAlong { get; } = along;

    public long SizeAcross { get; } = across;

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
internal readonly record struct Spot(int Sheet, int Free, bool Turned, NodeKind First);
