using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>A clear space in a case or a frame, and what is in it: a division, drawers, shelves, or nothing.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Size">Its size along the division it stands in.</param>
/// <param name="Content">What is in it; null for open.</param>
/// <param name="SlidePanels">The sheet of the two panels that carry slides in a frame; null for none.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Opening(string Key, ShareOfWhole Size, OpeningContent? Content, Named? SlidePanels, Place Place) : DivisionItem(Key, Place);

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

/// <summary>A member between two openings: a partition or a deck in a case, a pair of posts in a frame.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Of">Its material; null for that of the structure.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Divider(string Key, Named? Of, Place Place) : DivisionItem(Key, Place);

/// <summary>A bank of drawers, from the top down.</summary>
/// <param name="Like">Which kind of drawer.</param>
/// <param name="Drawers">From the top down, one or more.</param>
/// <param name="FigureThrough">True when the figure of the wood runs through from front to front: they are cut one below the other from one sheet.</param>
public sealed record DrawerBank(Named Like, ImmutableArray<Drawer> Drawers, bool FigureThrough = false) : OpeningContent;

/// <summary>One drawer.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Front">The height of its front within the bank.</param>
/// <param name="BoxWidth">Outside width of the box where it is to differ from the rule.</param>
/// <param name="BoxHeight">Height of the box where it is to differ from the rule.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Drawer(string Key, ShareOfWhole Front, Given? BoxWidth, Given? BoxHeight, Place Place);

/// <summary>Fixed shelves that share the height evenly, from the top down.</summary>
/// <param name="Of">Their material; null for that of the structure.</param>
/// <param name="Setback">How far their front edge stands back; null for none.</param>
/// <param name="Keys">Their keys with their places, from the top down.</param>
public sealed record Shelves(Named? Of, Given? Setback, ImmutableArray<Named> Keys) : OpeningContent;

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
    SlideWindow Window = SlideWindow.Usual);

/// <summary>What side play a pair of slides takes.</summary>
public enum SlideWindow
{
    /// <summary>0 to 1/16 in in total, the habit of the trade: common practice, no source.</summary>
    Usual,

    /// <summary>0.4 to 1.0 mm in total, as a maker of slides advises.</summary>
    Narrow,
}
