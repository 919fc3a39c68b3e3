namespace Setout.Cutting.Sheets.Search;

/// <summary>What a node of a search tree is.</summary>
internal enum NodeKind
{
    /// <summary>Nothing lies here yet.</summary>
    Free,

    /// <summary>A part.</summary>
    Part,

    /// <summary>Slices that follow each other along the grain.</summary>
    Along,

    /// <summary>Slices that follow each other across the grain.</summary>
    Across,

    /// <summary>A place in the table that holds no node.</summary>
    Unused,
}

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

/// <summary>A free rectangle of a sheet, large enough for the smallest part.</summary>
/// <param name="Along">Size along the grain.</param>
/// <param name="Across">Size across the grain.</param>
/// <param name="Promise">What it is worth keeping free, see <see cref="WorkSheet.Promise"/>.</param>
/// <param name="Node">Its place in the sheet's table.</param>
/// <param name="Stages">Cuts on the way from the sheet to it.</param>
/// <param name="Parent">What it is a slice of; free for the whole sheet.</param>
internal readonly record struct FreeRectangle(long Along, long Across, double Promise, int Node, int Stages, NodeKind Parent);
