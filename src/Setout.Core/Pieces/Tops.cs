using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>A top over structures: one sheet, or layers of them, with what is on its edges and faces and what is cut into it.</summary>
/// <param name="Of">Its sheet, also of each layer that names none.</param>
/// <param name="Front">Overhang at the front.</param>
/// <param name="Back">Overhang at the back.</param>
/// <param name="Left">Overhang at the left.</param>
/// <param name="Right">Overhang at the right.</param>
public sealed record Top(string Key, string Name, Named Of, Given Front, Given Back, Given Left, Given Right, Place Place) : Member(Key, Name, Of, Place)
{
    /// <summary>The structures it lies on, from the left; empty, the default, for all that nothing stands on.</summary>
    public ImmutableArray<Named> On { get; init; } = [];

    /// <summary>Its layers from the top down; empty, the default, for one sheet.</summary>
    public ImmutableArray<TopLayer> Layers { get; init; } = [];

    /// <summary>How it is held down; null for the usual way: screws for sheet goods, slots for solid wood.</summary>
    public TopHold? Held { get; init; }

    /// <summary>Where that is written.</summary>
    public Place HeldPlace { get; init; }

    /// <summary>Strips of wood round it; null for none.</summary>
    public Edging? Edging { get; init; }

    /// <summary>Laminate on its faces and edges; null for none.</summary>
    public Laminate? Laminate { get; init; }

    /// <summary>Slots for track; empty by default.</summary>
    public ImmutableArray<Slot> Slots { get; init; } = [];

    /// <summary>Wells that lower a machine into it; empty by default.</summary>
    public ImmutableArray<Well> Wells { get; init; } = [];

    /// <summary>How far it stands over on a side.</summary>
    public Given Overhang(TopSide side) => side switch { TopSide.Front => Front, TopSide.Back => Back, TopSide.Left => Left, _ => Right };
}

/// <summary>How a top is held down on what carries it.</summary>
public enum TopHold
{
    /// <summary>Screwed hard from below.</summary>
    Screws,

    /// <summary>Screws in slots across its grain.</summary>
    Slots,

    /// <summary>Wooden buttons, screwed to it, in a groove of what carries it.</summary>
    Buttons,

    /// <summary>Metal clips that turn as it moves.</summary>
    Clips,
}

/// <summary>A side of a top.</summary>
public enum TopSide
{
    /// <summary>Towards the user.</summary>
    Front,

    /// <summary>Away from the user.</summary>
    Back,

    /// <summary>The left end.</summary>
    Left,

    /// <summary>The right end.</summary>
    Right,
}

/// <summary>One layer of a top.</summary>
/// <param name="Of">Its sheet; null for that of the top.</param>
/// <param name="Seams">Where it is pieced together: from its left end, in order; empty for one length.</param>
/// <param name="Place">Where it stands.</param>
public sealed record TopLayer(Named? Of, ImmutableArray<Given> Seams, Place Place);

/// <summary>How strips meet at a corner.</summary>
public enum EdgingCorners
{
    /// <summary>Each cut to 45 degrees; the length is that over the points.</summary>
    Mitred,

    /// <summary>Butted: front and back run past the ends of the others.</summary>
    LongRunsPast,

    /// <summary>Butted: left and right run past the ends of the others.</summary>
    EndsRunPast,

    /// <summary>Each runs past one corner and stops at the other.</summary>
    Pinwheel,
}

/// <summary>Strips of wood round a top.</summary>
/// <param name="Of">The sticks: their thickness is what a strip adds, their width covers the edge.</param>
/// <param name="Corners">How they meet.</param>
/// <param name="Raised">How far they stand above the top; null for flush.</param>
/// <param name="Sides">Which sides have one; empty for all that are seen.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Edging(Named Of, EdgingCorners Corners, Given? Raised, ImmutableArray<TopSide> Sides, Place Place);

/// <summary>Laminate on a top.</summary>
/// <param name="Of">A grade on record, or words.</param>
/// <param name="Thickness">Of the film; null for that of the grade.</param>
/// <param name="IsOnBothFaces">True where the underside has the same.</param>
/// <param name="Backer">Thickness of a backer on the underside; null for none.</param>
/// <param name="Edges">Which edges are laminated.</param>
/// <param name="Oversize">How much it is cut larger at each edge, to be trimmed; null for the usual.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Laminate(Named Of, Given? Thickness, bool IsOnBothFaces, Given? Backer, ImmutableArray<TopSide> Edges, Given? Oversize, Place Place);

/// <summary>A slot for track, cut with a router along one side of a top.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Along">The side it runs along.</param>
/// <param name="From">From the finished edge of that side to the nearer wall.</param>
/// <param name="Width">Of the slot.</param>
/// <param name="Depth">Of the slot.</param>
/// <param name="Short">How far it stops short of both ends; null or zero where it runs through.</param>
/// <param name="Bit">Diameter of the bit; null for one as wide as the slot.</param>
/// <param name="Pass">The deepest pass; null for the usual.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Slot(string Key, TopSide Along, Given From, Given Width, Given Depth, Given? Short, Given? Bit, Given? Pass, Place Place);
