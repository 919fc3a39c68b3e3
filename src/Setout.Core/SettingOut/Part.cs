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

    // Of tops and their wells.

    /// <summary>Strip of wood round a top.</summary>
    EdgeStrip,

    /// <summary>What a machine stands on in a well.</summary>
    WellPlatform,

    /// <summary>What carries the platform of a well.</summary>
    WellBearer,

    /// <summary>Side of a well.</summary>
    WellSide,

    /// <summary>Strip of wood on the edge of a sheet.</summary>
    Lip,

    /// <summary>Panel in the grooves of a frame.</summary>
    FramePanel,

    /// <summary>Given by its sizes alone.</summary>
    Loose,

    // Doors and shelves.
    /// <summary>Door of one sheet.</summary>
    Door,

    /// <summary>Upright of the frame of a door.</summary>
    DoorStile,

    /// <summary>Level member of the frame of a door.</summary>
    DoorRail,

    /// <summary>Panel in the frame of a door.</summary>
    DoorPanel,

    /// <summary>Strip under the front edge of a shelf.</summary>
    ShelfStrip,

    // Cases.
    /// <summary>Board of a toe kick or of a base.</summary>
    Kick,

    /// <summary>Rail that a case hangs by.</summary>
    HangingRail,

    /// <summary>Stile, rail or mullion of a face frame.</summary>
    FaceFrame,

    /// <summary>What a slide is screwed to behind a face frame.</summary>
    Packing,

    /// <summary>Strip between a case and what is beside it.</summary>
    Filler,

    // Of drawers.

    /// <summary>Wooden runner under a drawer.</summary>
    Runner,

    /// <summary>Stick above a drawer that keeps it from tipping.</summary>
    Kicker,

    // Of frames.

    /// <summary>Stick between front and rear post that a slide is screwed to, or that guides a drawer.</summary>
    Bearer,

    /// <summary>Upright slat before an opening.</summary>
    Slat,
}

/// <summary>The three figures of a size.</summary>
/// <param name="Exact">The sum.</param>
/// <param name="ToCut">The sum landed on the shop's grid.</param>
/// <param name="AsCut">What came off the saw; until read, what was to be cut.</param>
public sealed record PartSize(QuantityKey Exact, QuantityKey ToCut, QuantityKey AsCut)
{
    /// <summary>The size with its bands or lips on: what the rest of the piece goes by. That as cut where the edges are not covered.</summary>
    public QuantityKey Made { get; init; } = AsCut;
}

/// <summary>Which edges of a part are seen, and so get the treatment of its sheet.</summary>
/// <param name="Long">How many of the two that run along its length.</param>
/// <param name="Ends">How many of the two across it.</param>
public readonly record struct SeenEdges(int Long, int Ends);

/// <summary>
/// Where a part sits in the finished piece: a box in the piece's own frame. X runs from the left, Y from the front to the back,
/// Z up from the floor (from the underside for a hung case).
/// </summary>
public sealed record Placement(ExactLength X, ExactLength Y, ExactLength Z, ExactLength SizeX, ExactLength SizeY, ExactLength SizeZ)
{
    /// <summary>How far two boxes share room each way; zero or less where they do not.</summary>
    public (ExactLength X, ExactLength Y, ExactLength Z) Shared(Placement other) => (Along(X, SizeX, other.X, other.SizeX), Along(Y, SizeY, other.Y, other.SizeY), Along(Z, SizeZ, other.Z, other.SizeZ));

    /// <summary>How deep two boxes go into each other the shortest way; zero or less where they do not.</summary>
    public ExactLength Within(Placement other)
    {
        (ExactLength x, ExactLength y, ExactLength z) = Shared(other);
        return ExactLength.Min(x, ExactLength.Min(y, z));
    }

    private static ExactLength Along(ExactLength a, ExactLength sizeA, ExactLength b, ExactLength sizeB) => ExactLength.Min(a + sizeA, b + sizeB) - ExactLength.Max(a, b);
}

/// <summary>Where a structure stands in the piece: its left, front, lower corner.</summary>
/// <param name="X">From the left of the first structure.</param>
/// <param name="Y">From its front.</param>
/// <param name="Z">From the floor.</param>
internal readonly record struct Corner(ExactLength X, ExactLength Y, ExactLength Z)
{
    /// <summary>The width and depth of a structure that is looked at from behind: its rules then measure from its right, rear corner. Null from the front.</summary>
    public (ExactLength Wide, ExactLength Deep)? Turned { get; init; }

    /// <summary>A box measured from the corner, in the frame of the piece.</summary>
    public Placement Place(Placement box)
    {
        if (this == default) return box;
        if (Turned is { } all) box = box with { X = all.Wide - box.X - box.SizeX, Y = all.Deep - box.Y - box.SizeY };
        return box with { X = box.X + X, Y = box.Y + Y, Z = box.Z + Z };
    }
}

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
    int Count, Grain Grain, ImmutableArray<Placement> Placements, Place Place, ImmutableArray<QuantityKey> HeldUntil = default)
{
    /// <summary>Which of its edges are seen; none by default.</summary>
    public SeenEdges Seen { get; init; }
}
