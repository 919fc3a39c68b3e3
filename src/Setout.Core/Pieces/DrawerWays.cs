using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>How the four corners of a drawer box are joined.</summary>
public enum CornerJoint
{
    /// <summary>Ends between the sides, held by pocket screws.</summary>
    Pocket,

    /// <summary>Ends between the sides, held by screws through the sides.</summary>
    Butt,

    /// <summary>Ends let into rabbets in the ends of the sides.</summary>
    Rabbet,

    /// <summary>The front let into rabbets, the back into dadoes that leave wood behind them.</summary>
    Dado,

    /// <summary>A tongue on the ends that sits in dadoes of the sides.</summary>
    LockRabbet,

    /// <summary>Straight interlocking fingers.</summary>
    BoxJoint,

    /// <summary>Tails of the sides hidden from the front by a lap; through at the back.</summary>
    HalfBlindDovetail,

    /// <summary>Tails and pins seen from both sides.</summary>
    ThroughDovetail,
}

/// <summary>How the bottom is held in a drawer box.</summary>
public enum BottomFit
{
    /// <summary>In grooves of all four parts: it is in before the box is closed.</summary>
    Grooved,

    /// <summary>In grooves of the sides and the front, slid in last under a back that is shorter.</summary>
    SlidIn,

    /// <summary>On the lower edges of all four parts.</summary>
    Applied,

    /// <summary>In a rabbet along the lower edges of all four parts.</summary>
    LetIn,

    /// <summary>Between the sides and under the back, flush with the lower edges, of a box whose front is its face.</summary>
    Between,
}

/// <summary>What a drawer runs on.</summary>
public enum SlideWay
{
    /// <summary>Metal slides beside the box.</summary>
    Side,

    /// <summary>Metal slides under the box.</summary>
    Under,

    /// <summary>Wooden runners under the sides of the box, with a kicker above.</summary>
    Runners,
}

/// <summary>How the fronts of drawers stand to the face of the carcase.</summary>
public enum FrontWay
{
    /// <summary>On the face, over all but a reveal of what bounds the opening.</summary>
    Overlay,

    /// <summary>On the face, over half of what bounds the opening.</summary>
    HalfOverlay,

    /// <summary>Inside the opening, flush with the face.</summary>
    Inset,
}

/// <summary>What the leaflet of the slides in hand says, where it is to win over the rules. Each is null for the rule.</summary>
/// <param name="Clearance">What one slide takes: from the opening to the box beside a side-mounted slide, to the inside of the box for one under it.</param>
/// <param name="Length">The one to use.</param>
/// <param name="Setback">From the face to the front end of the slide.</param>
/// <param name="Rear">Kept behind it.</param>
/// <param name="Room">How much lower the box is than what lies behind its front.</param>
public sealed record SlideSheet(Given? Clearance, Given? Length, Given? Setback, Given? Rear, Given? Room)
{
    /// <summary>The lengths it is sold in; empty for the usual series.</summary>
    public ImmutableArray<ExactLength> Series { get; init; } = [];

    /// <summary>All by the rules.</summary>
    public static SlideSheet Rules { get; } = new(null, null, null, null, null);

    /// <inheritdoc/>
    public bool Equals(SlideSheet? other) => other is not null && Clearance == other.Clearance && Length == other.Length && Setback == other.Setback && Rear == other.Rear
        && Room == other.Room && Series.AsSpan().SequenceEqual(other.Series.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Clearance, Length, Setback, Rear, Room, Series.Length);
}

/// <summary>Handles of drawer fronts.</summary>
/// <param name="Of">What they are, in words.</param>
/// <param name="IsInLine">True for one line across a row: all as far below the upper edge of their fronts; false for the middle of each front.</param>
/// <param name="FromTop">That distance; null for the rule.</param>
/// <param name="Apart">Between the two holes of one; null for a knob with one hole.</param>
/// <param name="Hole">Width of a hole; null for the rule.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Handles(string Of, bool IsInLine, Given? FromTop, Given? Apart, Given? Hole, Place Place);

/// <summary>Fronts of a bank that grow from the top down: by a ratio, or each by a step.</summary>
/// <param name="Ratio">One number for each drawer, from the top; empty where a step is given.</param>
/// <param name="Step">How much higher each is than the one above; null where a ratio is given.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Graduation(ImmutableArray<int> Ratio, Given? Step, Place Place)
{
    /// <inheritdoc/>
    public bool Equals(Graduation? other) => other is not null && Step == other.Step && Place == other.Place && Ratio.AsSpan().SequenceEqual(other.Ratio.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Ratio.Length, Step, Place);
}
