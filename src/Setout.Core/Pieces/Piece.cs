using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>The furniture being built, as described. Immutable; nothing in it is worked out.</summary>
/// <param name="Name">For people.</param>
/// <param name="About">A sentence or two, or empty.</param>
/// <param name="Unit">The unit of bare numbers and of figures shown.</param>
/// <param name="Grid">The grid, if the piece names one; else the shop's.</param>
/// <param name="Materials">By name.</param>
/// <param name="DrawerKinds">By name.</param>
/// <param name="Members">Frame or case, tops, loose parts, in the order written.</param>
/// <param name="Keys">Every permanent key with its place.</param>
public sealed record Piece(
    string Name, string About, LengthUnit Unit, Grid? Grid,
    ImmutableDictionary<string, Material> Materials, ImmutableDictionary<string, DrawerKind> DrawerKinds,
    ImmutableArray<Member> Members, ImmutableDictionary<string, Place> Keys);

/// <summary>A main member of the piece.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Name">For people; empty to use the usual word.</param>
/// <param name="Of">Its material.</param>
/// <param name="Place">Where it stands.</param>
public abstract record Member(string Key, string Name, Named Of, Place Place);

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
    : Member(Key, Name, Of, Place);

/// <summary>A box of panels: top and bottom between the sides, butted and screwed, an applied back.</summary>
/// <param name="Width">Outside.</param>
/// <param name="Height">Outside.</param>
/// <param name="Depth">Outside, with the back.</param>
/// <param name="Back">The sheet of the back; null for none.</param>
/// <param name="Content">What is in it.</param>
/// <param name="IsHung">True when it hangs on a wall.</param>
public sealed record Case(
    string Key, string Name, Named Of, Given Width, Given Height, Given Depth, Named? Back, OpeningContent? Content, bool IsHung, Place Place)
    : Member(Key, Name, Of, Place);

/// <summary>A plain top of one sheet on the structure.</summary>
/// <param name="Front">Overhang at the front.</param>
/// <param name="Back">Overhang at the back.</param>
/// <param name="Left">Overhang at the left.</param>
/// <param name="Right">Overhang at the right.</param>
public sealed record Top(string Key, string Name, Named Of, Given Front, Given Back, Given Left, Given Right, Place Place) : Member(Key, Name, Of, Place);

/// <summary>A part that belongs to no structure, with its finished sizes, as a printed bill gives it.</summary>
/// <param name="Count">How many, one or more.</param>
/// <param name="Length">Along the grain.</param>
/// <param name="Width">Across the grain; null for sticks, whose section gives it.</param>
public sealed record LoosePart(string Key, string Name, Named Of, int Count, Given Length, Given? Width, Place Place) : Member(Key, Name, Of, Place);
