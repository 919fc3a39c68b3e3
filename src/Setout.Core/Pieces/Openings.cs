// Over 200 lines: what an opening holds and kinds of drawer, records that are read together.
using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>A clear space in a case or a frame, and what is in it: a division, drawers, shelves, or nothing.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Size">Its size along the division it stands in.</param>
/// <param name="Content">What is in it; null for open.</param>
/// <param name="SlidePanels">The sheet of the two panels that carry slides in a frame; null for none.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Opening(string Key, ShareOfWhole Size, OpeningContent? Content, Named? SlidePanels, Place Place) : DivisionItem(Key, Place)
{
    /// <summary>Of a bay: the sticks between front and rear post that slides are screwed to, or that guide drawers on runners; null for none.</summary>
    public Named? Bearers { get; init; }

    /// <summary>Of a bay: how far what stands in it stays behind the faces of the posts, front and back; null for none.</summary>
    public Given? Setback { get; init; }

    /// <summary>Upright slats before what is in it; null for none.</summary>
    public Slats? Slats { get; init; }

    /// <summary>The opening that is reached from behind, back to back with it: each has half of the depth; null for none.</summary>
    public Opening? Behind { get; init; }
}

/// <summary>What an opening holds.</summary>
public abstract record OpeningContent;

/// <summary>A division into openings: across from left to right, or down from the top.</summary>
/// <param name="IsAcross">True from left to right, false from the top down.</param>
/// <param name="Items">Openings with members between them.</param>
public sealed record Division(bool IsAcross, ImmutableArray<DivisionItem> Items) : OpeningContent;

/// <summary>An opening or a member in a division.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Place">Where it stands.</param>
public abstract record DivisionItem(string Key, Place Place);

/// <summary>A member between two openings: a partition or a deck in a case, a pair of posts in a frame, a pair of rails in a bay of a frame.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Of">Its material; null for that of the structure.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Divider(string Key, Named? Of, Place Place) : DivisionItem(Key, Place)
{
    /// <summary>What is said of a pair of rails, one in front and one at the back; null for any other member.</summary>
    public RailWay? Rail { get; init; }

    /// <summary>Of a partition: true where its grain runs from front to back, not upright.</summary>
    public bool IsGrainDeep { get; init; }

    /// <summary>Of a partition: true for two panels, face to face.</summary>
    public bool IsDoubled { get; init; }
}

/// <summary>Upright slats before the shelves of an opening, evenly spaced.</summary>
/// <param name="Of">Their sticks, with the wide face to the front.</param>
/// <param name="Count">How many beside one another.</param>
/// <param name="AtFront">True for those in front.</param>
/// <param name="AtBack">True for those at the back.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Slats(Named Of, int Count, bool AtFront, bool AtBack, Place Place);

/// <summary>How a pair of rails between two openings stands.</summary>
/// <param name="Laid">Which way its sticks lie.</param>
/// <param name="Setback">How far both stand behind the line of the front and before that of the back; null for flush.</param>
/// <param name="IsCovered">True where an inset front above comes down before it, to its lower edge.</param>
public sealed record RailWay(Laid Laid, Given? Setback, bool IsCovered);

/// <summary>A bank of drawers, from the top down.</summary>
/// <param name="Like">Which kind of drawer.</param>
/// <param name="Drawers">From the top down, one or more.</param>
/// <param name="FigureThrough">True when the figure of the wood runs through from front to front: they are cut one below the other from one sheet.</param>
public sealed record DrawerBank(Named Like, ImmutableArray<Drawer> Drawers, bool FigureThrough = false) : OpeningContent
{
    /// <summary>
    /// True when the figure runs on from bank to bank: fronts of one row, of banks side by side that say so, are cut one behind the other from one sheet.
    /// </summary>
    public bool FigureInRows { get; init; }

    /// <summary>Where the figure of its fronts is written; not known where nothing is said of it.</summary>
    public Place FigurePlace { get; init; }

    /// <summary>Behind doors: the sticks that hold its slides clear of an open door; null for none, or for those of a face frame.</summary>
    public Named? Packing { get; init; }

    /// <summary>How the heights of its fronts grow; null, the default, where each has its own or an equal share.</summary>
    public Graduation? Graduated { get; init; }
}

/// <summary>One drawer.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Front">The height of its front within the bank.</param>
/// <param name="BoxWidth">Outside width of the box where it is to differ from the rule.</param>
/// <param name="BoxHeight">Height of the box where it is to differ from the rule.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Drawer(string Key, ShareOfWhole Front, Given? BoxWidth, Given? BoxHeight, Place Place);

/// <summary>Shelves that share the height evenly, from the top down.</summary>
/// <param name="Of">Their material; null for that of the structure.</param>
/// <param name="Setback">How far their front edge stands back; null for none.</param>
/// <param name="Keys">Their keys with their places, from the top down.</param>
public sealed record Shelves(Named? Of, Given? Setback, ImmutableArray<Named> Keys) : OpeningContent
{
    /// <summary>How they are carried; butted and screwed by default.</summary>
    public ShelfFit Fit { get; init; }

    /// <summary>Of shelves in dadoes: how deep these are; null for the rule.</summary>
    public Given? Dado { get; init; }

    /// <summary>Of adjustable ones: how much shorter than the opening, both ends together; null for the rule.</summary>
    public Given? Play { get; init; }

    /// <summary>Of adjustable ones: from hole to hole; null for the rule.</summary>
    public Given? Pitch { get; init; }

    /// <summary>A strip under the front edge that stiffens it; null for none.</summary>
    public ShelfStrip? Strip { get; init; }

    /// <summary>True where the grain runs from front to back, not from left to right.</summary>
    public bool IsGrainDeep { get; init; }

    /// <summary>How far they go past the inner face of the posts beside them, notched round these; null for not at all.</summary>
    public Given? PastPosts { get; init; }

    /// <summary>True where the lowest lies at the bottom of the opening; false where it is spaced as the others are.</summary>
    public bool IsLowestDown { get; init; }
}

/// <summary>How shelves are carried.</summary>
public enum ShelfFit
{
    /// <summary>Butted and screwed.</summary>
    Fixed,

    /// <summary>Let into dadoes.</summary>
    Dado,

    /// <summary>On pins in rows of holes.</summary>
    Adjustable,
}

/// <summary>A strip under the front edge of a shelf.</summary>
/// <param name="Of">Sticks, or a sheet.</param>
/// <param name="Height">How far it stands down; null for the width of the sticks.</param>
/// <param name="Place">Where it is written.</param>
public sealed record ShelfStrip(Named Of, Given? Height, Place Place);

/// <summary>A kind of drawer: materials, slide and gaps, said once for many drawers.</summary>
/// <param name="Name">The piece's own name for it.</param>
/// <param name="Sides">The sheet of the four sides of the box.</param>
/// <param name="Bottom">The sheet of the bottom.</param>
/// <param name="Front">The sheet of the false front.</param>
/// <param name="Gap">Between two fronts; null for the rule.</param>
/// <param name="Overlay">How far a front lies over each side of the opening; null for the rule.</param>
/// <param name="Play">Total side play kept beside the slides; null for the rule.</param>
/// <param name="SlideLength">The slide to use; null to pick the longest that fits.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Window">Which limits the play beside its slides is held to.</param>
public sealed record DrawerKind(
    string Name, Named Sides, Named Bottom, Named Front, Given? Gap, Given? Overlay, Given? Play, Given? SlideLength, Place Place,
    SlideWindow Window = SlideWindow.Usual)
{
    /// <summary>How the corners of the box are joined.</summary>
    public CornerJoint Corners { get; init; }

    /// <summary>How far an end goes into a side at the corner, or a tail into the front; null for the rule.</summary>
    public Given? CornerDepth { get; init; }

    /// <summary>About how wide a finger of a box joint is; null for the rule.</summary>
    public Given? Finger { get; init; }

    /// <summary>How the bottom is held.</summary>
    public BottomFit BottomFit { get; init; }

    /// <summary>Depth of the groove or rabbet that holds the bottom; null for the rule.</summary>
    public Given? GrooveDepth { get; init; }

    /// <summary>From the lower edge of the sides to the groove of the bottom; null for the rule.</summary>
    public Given? GrooveUp { get; init; }

    /// <summary>What the drawers run on.</summary>
    public SlideWay Slides { get; init; }

    /// <summary>What the leaflet of the slides says.</summary>
    public SlideSheet Sheet { get; init; } = SlideSheet.Rules;

    /// <summary>The sticks of wooden runners and kickers; null for none.</summary>
    public Named? Runner { get; init; }

    /// <summary>How the fronts stand to the face.</summary>
    public FrontWay Fronts { get; init; }

    /// <summary>What they are pulled by; null for nothing said.</summary>
    public Handles? Handles { get; init; }

    /// <summary>False where the front is the front of the box itself.</summary>
    public bool HasFalseFront { get; init; } = true;
}

/// <summary>What side play a pair of slides takes.</summary>
public enum SlideWindow
{
    /// <summary>0 to 1/16 in in total, the habit of the trade: common practice, no source.</summary>
    Usual,

    /// <summary>0.4 to 1.0 mm in total, as a maker of slides advises.</summary>
    Narrow,
}
