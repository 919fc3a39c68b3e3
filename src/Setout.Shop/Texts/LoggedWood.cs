using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Texts;

/// <summary>A rectangle of wood as a log tells of it.</summary>
/// <param name="Along">Along the grain of a sheet, or along a board; above zero.</param>
/// <param name="Across">Across the grain; null for a board.</param>
public sealed record LoggedSize(Length Along, Length? Across)
{
    /// <summary>Of a board that has another section than its material and is ripped for it; null, the default, for all else.</summary>
    public StickSection? Section { get; init; }

    /// <summary>What goes off each side before it counts as true; nothing by default.</summary>
    public EdgeTrim Trim { get; init; } = EdgeTrim.None;

    /// <summary>Of a board: what no part may touch; empty by default.</summary>
    public ImmutableArray<Flaw> Flaws { get; init; } = [];
}

/// <summary>Where wood came from that a run began to cut.</summary>
public enum WoodSource
{
    /// <summary>It was bought for this piece and stood on no line of the rack.</summary>
    Bought,

    /// <summary>A line of the shop's rack that says how many there are.</summary>
    Rack,

    /// <summary>The same among the sizes of the piece file.</summary>
    Piece,

    /// <summary>A blank that an earlier entry left.</summary>
    Blank,
}

/// <summary>Wood that is no longer there as it was: a run began to cut it, or it is gone otherwise.</summary>
/// <param name="Of">The piece's own name for the wood.</param>
/// <param name="Source">Where it came from.</param>
/// <param name="Name">The name of the blank, or the shop's name for what stood in the rack; may be empty for what was bought or has no name.</param>
/// <param name="Size">What it was; null for a blank, which has been told.</param>
public sealed record TakenWood(string Of, WoodSource Source, string Name, LoggedSize? Size);

/// <summary>Wood that a run left.</summary>
/// <param name="Of">The piece's own name for the wood.</param>
/// <param name="Name">Its own, for ever.</param>
/// <param name="Size">What it is.</param>
/// <param name="Use">Keep, work or waiting.</param>
public sealed record LeftWood(string Of, string Name, LoggedSize Size, BlankUse Use);
