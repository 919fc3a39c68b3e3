using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>What a part is for, which decides how its size is rounded and how it is drawn.</summary>
public enum PartRole
{
    /// <summary>Upright of a frame.</summary>
    Post,

    /// <summary>Level member of a frame, seen from the front.</summary>
    Rail,

    /// <summary>Level member of a frame from front to back.</summary>
    Tie,

    /// <summary>Panel that carries slides in a frame.</summary>
    SlidePanel,

    /// <summary>Side of a case.</summary>
    Side,

    /// <summary>Level panel of a case: top, bottom or deck.</summary>
    Deck,

    /// <summary>Upright panel inside a case.</summary>
    Partition,

    /// <summary>Shelf.</summary>
    Shelf,

    /// <summary>Applied back.</summary>
    Back,

    /// <summary>Side of a drawer box.</summary>
    BoxSide,

    /// <summary>Front or back of a drawer box.</summary>
    BoxEnd,

    /// <summary>Bottom of a drawer box.</summary>
    BoxBottom,

    /// <summary>False front.</summary>
    FalseFront,

    /// <summary>Top.</summary>
    Top,

    /// <summary>Given by its sizes alone.</summary>
    Loose,
}

/// <summary>The three figures of a size.</summary>
/// <param name="Exact">The sum.</param>
/// <param name="ToCut">The sum landed on the shop's grid.</param>
/// <param name="AsCut">What came off the saw; until read, what was to be cut.</param>
public sealed record PartSize(QuantityKey Exact, QuantityKey ToCut, QuantityKey AsCut);

/// <summary>
/// Where a part sits in the finished piece: a box in the piece's own frame. X runs from the left, Y from the front to the back,
/// Z up from the floor (from the underside for a hung case).
/// </summary>
public sealed record Placement(ExactLength X, ExactLength Y, ExactLength Z, ExactLength SizeX, ExactLength SizeY, ExactLength SizeZ);

/// <summary>
/// Members of finished size that are alike by design: same sizes by the same working, so they share three figures a size.
/// One member of several is named <c>key#1</c>, <c>key#2</c>...
/// </summary>
/// <param name="Key">Permanent: the owner's key and the role.</param>
/// <param name="Mark">The short mark pencilled on it.</param>
/// <param name="Name">For people.</param>
/// <param name="Role">What it is for.</param>
/// <param name="Material">The name of its material in the piece.</param>
/// <param name="Length">Along the grain.</param>
/// <param name="Width">Across the grain; for sticks the section, which is not cut.</param>
/// <param name="Thickness">Of its material.</param>
/// <param name="Count">One or more.</param>
/// <param name="Grain">Whether it keeps the grain.</param>
/// <param name="Placements">One for each member, where it has a place.</param>
/// <param name="Place">Where its owner stands in the piece file.</param>
/// <param name="HeldUntil">Any one of these is to be read before the part is cut, the best first; empty for none.</param>
public sealed record Part(
    string Key, string Mark, string Name, PartRole Role, string Material, PartSize Length, PartSize Width, QuantityKey Thickness,
    int Count, Grain Grain, ImmutableArray<Placement> Placements, Place Place, ImmutableArray<QuantityKey> HeldUntil = default);
