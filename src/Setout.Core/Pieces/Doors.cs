using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>One door over an opening, or a pair that meets in its middle, and what stands behind.</summary>
/// <param name="Like">Which kind of door.</param>
/// <param name="Keys">Their keys with their places, from the left: one or two.</param>
/// <param name="HingesRight">Of a single door: hung on the right. A pair is hung on both sides.</param>
/// <param name="Behind">What the opening holds behind them: a division or shelves; null for nothing.</param>
public sealed record DoorFilling(Named Like, ImmutableArray<Named> Keys, bool HingesRight, OpeningContent? Behind) : OpeningContent;

/// <summary>A kind of door: how it is made, how it lies and on what it hangs, said once for many doors.</summary>
/// <param name="Name">The piece's own name for it.</param>
/// <param name="Make">How it is made.</param>
/// <param name="Place">Where it stands.</param>
public sealed record DoorKind(string Name, DoorMake Make, Place Place)
{
    /// <summary>How it lies on or in the opening; over its edges by default.</summary>
    public DoorLie Lie { get; init; }

    /// <summary>How far it lies over each side of the opening; null for the rule.</summary>
    public Given? Overlay { get; init; }

    /// <summary>Between a pair and between neighbours; of an inset door all round; null for the rule.</summary>
    public Given? Gap { get; init; }

    /// <summary>On what it hangs; null for the usual one: cup hinges, or butts for an inset door.</summary>
    public HingeKind? Hinge { get; init; }

    /// <summary>How far an open door and its hinges stand into the opening, which drawers behind it keep clear of; null for the rule.</summary>
    public Given? Clear { get; init; }

    /// <summary>What it is pulled by; null for nothing said.</summary>
    public DoorHandles? Handles { get; init; }

    /// <summary>What holds it shut, in words; null for nothing said.</summary>
    public string? Catch { get; init; }

    /// <summary>Where the hinge is written.</summary>
    public Place HingePlace { get; init; }
}

/// <summary>Handles of doors, at the closing edge.</summary>
/// <param name="Of">What they are, in words.</param>
/// <param name="IsInLine">True for one line across a row: all as far from one end; false for the middle of the height.</param>
/// <param name="FromEdge">From the closing edge to the holes; null for the rule.</param>
/// <param name="FromTop">From the upper end to the first hole; null for the rule.</param>
/// <param name="FromBottom">From the lower end instead; null for the upper.</param>
/// <param name="Apart">Between the two holes of one; null for a knob with one hole.</param>
/// <param name="Hole">Width of a hole; null for the rule.</param>
/// <param name="Place">Where it is written.</param>
public sealed record DoorHandles(string Of, bool IsInLine, Given? FromEdge, Given? FromTop, Given? FromBottom, Given? Apart, Given? Hole, Place Place);

/// <summary>How a door lies.</summary>
public enum DoorLie
{
    /// <summary>Over the edges: an outside edge is covered but for the reveal, a shared one is halved.</summary>
    Overlay,

    /// <summary>Over half of every edge, also of one that nothing else lies on.</summary>
    HalfOverlay,

    /// <summary>Inside the opening, flush with its front, a gap all round.</summary>
    Inset,
}

/// <summary>What a door hangs on.</summary>
public enum HingeKind
{
    /// <summary>A hinge with a cup of 35 mm let into the back of the door.</summary>
    Cup,

    /// <summary>Two leaves on a pin, each let into a gain.</summary>
    Butt,
}

/// <summary>How a door is made.</summary>
public abstract record DoorMake;

/// <summary>Of one sheet.</summary>
/// <param name="Of">The sheet.</param>
public sealed record Slab(Named Of) : DoorMake;

/// <summary>A frame of stiles and rails, tenoned, with a panel in a groove all round.</summary>
/// <param name="Stiles">The sticks of the stiles; their width is the width of the stile.</param>
/// <param name="Rails">The sticks of the rails; null for those of the stiles.</param>
/// <param name="BottomRail">The sticks of the bottom rail; null for those of the rails.</param>
/// <param name="Panel">The sheet of the panel; one whose kind is a wood on record is solid and moves across its grain.</param>
/// <param name="Groove">Depth of the groove; null for the rule.</param>
/// <param name="Tenon">Length of the tenons; null for the depth of the groove.</param>
/// <param name="Play">Play of the panel in its grooves, both sides together; null for the rule.</param>
/// <param name="MoistureChange">By how many per cent of moisture a solid panel may change, 1 to 20; null for that of the piece.</param>
public sealed record FramedPanel(Named Stiles, Named? Rails, Named? BottomRail, Named Panel, Given? Groove, Given? Tenon, Given? Play, int? MoistureChange) : DoorMake
{
    /// <summary>Where the change of moisture is written; not known where it is not.</summary>
    public Place MoisturePlace { get; init; }
}
