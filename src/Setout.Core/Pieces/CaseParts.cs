using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>How two panels of a case meet.</summary>
public enum CaseJoint
{
    /// <summary>Edge against face, screwed through.</summary>
    Butt,

    /// <summary>Edge against face, with pocket screws from the side that is not seen.</summary>
    Pocket,

    /// <summary>Edge against face, on dowels.</summary>
    Dowels,

    /// <summary>Let into a rabbet along the end of the other: corners only.</summary>
    Rabbet,

    /// <summary>Let into a dado across the other; at a corner with a tongue.</summary>
    Dado,
}

/// <summary>The joint chosen for the corners or the dividers of a case.</summary>
/// <param name="Joint">Which.</param>
/// <param name="Depth">How far one goes into the other, for rabbet and dado; null for the rule.</param>
/// <param name="Place">Where it is written.</param>
public sealed record JointChoice(CaseJoint Joint, Given? Depth, Place Place)
{
    /// <summary>Butted and screwed.</summary>
    public static JointChoice Butt { get; } = new(CaseJoint.Butt, null, default);
}

/// <summary>How a back is held.</summary>
public enum BackHold
{
    /// <summary>On the rear edges.</summary>
    Applied,

    /// <summary>Between sides, top and bottom.</summary>
    Inset,

    /// <summary>In a rabbet of the sides, over the rear edges of top and bottom.</summary>
    Rabbeted,

    /// <summary>In grooves all round.</summary>
    Grooved,
}

/// <summary>How the back of a case is let in.</summary>
/// <param name="Hold">How it is held.</param>
/// <param name="Depth">Of its rabbet or groove; null for the rule.</param>
/// <param name="Inset">How far its rear face stands before the rear edges; null for the rule.</param>
/// <param name="Play">What it is smaller than its place, in all, each way; null for the rule.</param>
/// <param name="Place">Where it is written.</param>
public sealed record BackFit(BackHold Hold, Given? Depth, Given? Inset, Given? Play, Place Place)
{
    /// <summary>On the rear edges.</summary>
    public static BackFit Applied { get; } = new(BackHold.Applied, null, null, null, default);
}

/// <summary>A strip ripped from a sheet, or cut from sticks, whose section then gives its width.</summary>
/// <param name="Of">Its material.</param>
/// <param name="Width">Its width where it is ripped; null for the rule.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Strip(Named Of, Given? Width, Place Place);

/// <summary>A toe kick inside a case: sides to the floor with a notch, the bottom raised, a board between the sides.</summary>
/// <param name="Height">From the floor to the underside of the bottom; null for the rule.</param>
/// <param name="Setback">How far the board stands behind the front edges; null for the rule.</param>
/// <param name="Of">The sheet of the board; null for that of the case.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Toe(Given? Height, Given? Setback, Named? Of, Place Place);

/// <summary>A low frame of its own that a case stands on.</summary>
/// <param name="Of">Its sheet.</param>
/// <param name="Height">How high it lifts the case; null for the rule.</param>
/// <param name="Setback">How far its front stands behind the front edges; null for the rule.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Base(Named Of, Given? Height, Given? Setback, Place Place);

/// <summary>What is screwed under a case to stand on.</summary>
public enum FootKind
{
    /// <summary>Plain feet.</summary>
    Feet,

    /// <summary>Castors.</summary>
    Castors,

    /// <summary>Feet that are turned to level it.</summary>
    Levellers,
}

/// <summary>Bought feet of a case.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Height">How high they lift the case.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Feet(FootKind Kind, Given Height, Place Place);

/// <summary>How the members of a face frame are joined.</summary>
public enum FaceFrameJoint
{
    /// <summary>Tenons of the rails in mortises of the stiles.</summary>
    Tenon,

    /// <summary>Pocket screws from behind.</summary>
    Pocket,

    /// <summary>Dowels.</summary>
    Dowels,
}

/// <summary>A frame of sticks on the front of a case.</summary>
/// <param name="Of">The sticks of all members that name none.</param>
/// <param name="Stiles">The sticks of the stiles; null for <paramref name="Of"/>.</param>
/// <param name="Rails">The sticks of the rails; null for <paramref name="Of"/>.</param>
/// <param name="Mullions">The sticks of the mullions; null for <paramref name="Of"/>.</param>
/// <param name="Joint">How they are joined.</param>
/// <param name="Tenon">Length of a tenon; null for the rule.</param>
/// <param name="Overhang">How far the stiles stand out over the sides; null for flush.</param>
/// <param name="Packing">The sticks that packing for slides is planed from; null for <paramref name="Of"/>.</param>
/// <param name="IsPacked">False where slides are to get no packing.</param>
/// <param name="Place">Where it is written.</param>
public sealed record FaceFrame(
    Named Of, Named? Stiles, Named? Rails, Named? Mullions, FaceFrameJoint Joint, Given? Tenon, Given? Overhang, Named? Packing, bool IsPacked, Place Place);

/// <summary>A strip that closes the space between a case and its neighbour on the left, or a wall.</summary>
/// <param name="Of">Its material.</param>
/// <param name="Width">The space it closes.</param>
/// <param name="Scribe">What it is wider, to be scribed; null for the rule.</param>
/// <param name="IsAtRight">True for the right of the case.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Filler(Named Of, Given Width, Given? Scribe, bool IsAtRight, Place Place);
