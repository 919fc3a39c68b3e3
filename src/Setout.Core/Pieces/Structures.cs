using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>What carries the rest: a frame or a case. A piece may have several, side by side and on one another.</summary>
/// <param name="Width">Outside.</param>
/// <param name="Height">Outside.</param>
/// <param name="Depth">Outside, front to back.</param>
public abstract record Structure(string Key, string Name, Named Of, Given Width, Given Height, Given Depth, Place Place) : Member(Key, Name, Of, Place)
{
    /// <summary>Where it stands; by itself, at the left on the floor, by default.</summary>
    public Stand Stand { get; init; } = Stand.Alone;
}

/// <summary>Where a structure stands.</summary>
/// <param name="Beside">The structure on its left; null for none.</param>
/// <param name="On">The structures below it, from the left; empty for the floor.</param>
/// <param name="IsFlushAtBack">True where backs line up, as on a wall; false where fronts do.</param>
/// <param name="Place">Where that is written.</param>
public sealed record Stand(Named? Beside, ImmutableArray<Named> On, bool IsFlushAtBack, Place Place)
{
    /// <summary>By itself.</summary>
    public static Stand Alone { get; } = new(null, [], false, default);
}

/// <summary>Which way a stick is laid.</summary>
public enum Laid
{
    /// <summary>The wide face upright.</summary>
    OnEdge,

    /// <summary>The wide face level.</summary>
    Flat,
}

/// <summary>A skeleton of sticks: pairs of posts front and back, rails between them, ties from front to back.</summary>
/// <param name="Width">Outside, over the end posts.</param>
/// <param name="Height">From the floor to the top of the posts.</param>
/// <param name="Depth">Outside, front to back.</param>
/// <param name="Toe">From the floor to the underside of the bottom rails.</param>
/// <param name="TopRail">How the top rails lie.</param>
/// <param name="Bays">The bays with the pairs of posts between them.</param>
public sealed record Frame(
    string Key, string Name, Named Of, Given Width, Given Height, Given Depth, Given Toe, Laid TopRail, Division Bays, Place Place)
    : Structure(Key, Name, Of, Width, Height, Depth, Place)
{
    /// <summary>The sticks of rails and ties; null for those of the posts.</summary>
    public Named? Rails { get; init; }

    /// <summary>How rails and ties meet the posts.</summary>
    public FrameCorner Corner { get; init; } = FrameCorner.Pocket;

    /// <summary>Length of a tenon, for <see cref="FrameCorner.Tenon"/>; null for half of the post.</summary>
    public Given? Tenon { get; init; }

    /// <summary>How far the posts stand over the top rails; null for flush.</summary>
    public Given? Above { get; init; }

    /// <summary>Panels in grooves of posts, rails and ties; null for none.</summary>
    public FramePanels? Panels { get; init; }

    /// <summary>False where it has top rails and ties only, as a table has.</summary>
    public bool HasBottomRails { get; init; } = true;

    /// <summary>How rails pass the posts; between them by default.</summary>
    public RailRun Run { get; init; }

    /// <summary>Of lapped rails: how deep the notch in a rail is; null for half of its thickness.</summary>
    public Given? Lap { get; init; }

    /// <summary>Sticks between the posts below the bays; empty by default.</summary>
    public ImmutableArray<Stretcher> Stretchers { get; init; } = [];
}

/// <summary>How rails pass the posts of a frame.</summary>
public enum RailRun
{
    /// <summary>Between them.</summary>
    Between,

    /// <summary>Over their outer faces and flush with them: half-lapped.</summary>
    Lapped,

    /// <summary>Over their outer faces: the posts stand inside the rails.</summary>
    Outside,

    /// <summary>Along their inner faces: the posts stand outside the rails.</summary>
    Inside,
}

/// <summary>Where a stretcher goes.</summary>
public enum StretcherAt
{
    /// <summary>From front to back between the posts of each end.</summary>
    Ends,

    /// <summary>Along the front, between the posts of each bay.</summary>
    Front,

    /// <summary>Along the back, between the posts of each bay.</summary>
    Back,

    /// <summary>Along the middle, between the stretchers of both ends, or under what stands in the bays.</summary>
    Middle,
}

/// <summary>A stick, or a pair, between the posts of a frame at a height of its own.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Of">Its sticks; null for those of the rails.</param>
/// <param name="At">Where it goes.</param>
/// <param name="Up">From the floor to its lower edge.</param>
/// <param name="Laid">Which way it lies.</param>
/// <param name="Short">Of one along the middle: how far it ends short of the outside of the frame at each end; null between the stretchers of the ends.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Stretcher(string Key, Named? Of, StretcherAt At, Given Up, Laid Laid, Given? Short, Place Place);

/// <summary>How rails and ties meet the posts of a frame.</summary>
public enum FrameCorner
{
    /// <summary>Rails butted with pocket screws, ties screwed through the post.</summary>
    Pocket,

    /// <summary>Tenons in mortises of the posts, glued.</summary>
    Tenon,

    /// <summary>Butted and dowelled, glued.</summary>
    Dowels,
}

/// <summary>Panels that stand in grooves of a frame.</summary>
/// <param name="Of">Their sheet.</param>
/// <param name="Groove">Depth of the groove; null for the usual one.</param>
/// <param name="Play">Each way, in all; null for the usual one.</param>
/// <param name="AtEnds">True for one between the posts of each end.</param>
/// <param name="AtBack">True for one in each bay of the back.</param>
/// <param name="MoistureChange">By how many per cent of moisture solid ones may change; null for that of the piece.</param>
/// <param name="Place">Where it is written.</param>
public sealed record FramePanels(Named Of, Given? Groove, Given? Play, bool AtEnds, bool AtBack, int? MoistureChange, Place Place)
{
    /// <summary>Where the change of moisture is written; not known where it is not.</summary>
    public Place MoisturePlace { get; init; }
}

/// <summary>A box of panels: top and bottom between the sides.</summary>
/// <param name="Width">Outside.</param>
/// <param name="Height">Outside.</param>
/// <param name="Depth">Outside, with the back.</param>
/// <param name="Back">The sheet of the back; null for none.</param>
/// <param name="Content">What is in it.</param>
/// <param name="IsHung">True when it hangs on a wall.</param>
public sealed record Case(
    string Key, string Name, Named Of, Given Width, Given Height, Given Depth, Named? Back, OpeningContent? Content, bool IsHung, Place Place)
    : Structure(Key, Name, Of, Width, Height, Depth, Place)
{
    /// <summary>How top and bottom meet the sides; butted by default.</summary>
    public JointChoice Corners { get; init; } = JointChoice.Butt;

    /// <summary>How partitions, decks and fixed shelves meet what carries them; butted by default.</summary>
    public JointChoice Dividers { get; init; } = JointChoice.Butt;

    /// <summary>How the back is let in; applied by default.</summary>
    public BackFit BackFit { get; init; } = BackFit.Applied;

    /// <summary>A rail at the back under the top to hang the case by; null for none.</summary>
    public Strip? HangingRail { get; init; }

    /// <summary>A toe kick inside the case; null for none.</summary>
    public Toe? Toe { get; init; }

    /// <summary>A base under the case; null for none.</summary>
    public Base? Base { get; init; }

    /// <summary>Feet under the case; null for none.</summary>
    public Feet? Feet { get; init; }

    /// <summary>A frame on its front; null for none.</summary>
    public FaceFrame? FaceFrame { get; init; }

    /// <summary>Strips beside it; empty for none.</summary>
    public ImmutableArray<Filler> Fillers { get; init; } = [];
}
