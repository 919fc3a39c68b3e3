using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>An opening of a top with a lowered platform, which brings the table of a machine flush with the top.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Machine">What stands in it, in words.</param>
/// <param name="FromLeft">From the finished left end of the top to the opening.</param>
/// <param name="FromFront">From the finished front edge of the top to the opening; may be zero.</param>
/// <param name="Width">Of the opening, left to right; null to work it out from the machine.</param>
/// <param name="Depth">Of the opening, front to back; null to work it out from the machine.</param>
/// <param name="Footprint">Of the machine: left to right, then front to back.</param>
/// <param name="TableHeight">From the feet of the machine to its table, until it is read.</param>
/// <param name="SetLow">How much lower than flush the platform is set, for shims; null for the usual.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Well(
    string Key, string Machine, Given FromLeft, Given FromFront, Given? Width, Given? Depth, (Given Across, Given Along) Footprint,
    Given TableHeight, Given? SetLow, Place Place)
{
    /// <summary>The bay of a frame that it stands in: it is as wide as that, and carried by its posts; null for a well of its own sides.</summary>
    public Named? Bay { get; init; }

    /// <summary>The sheet of the platform; null for that of the top.</summary>
    public Named? Platform { get; init; }

    /// <summary>The sticks that carry the platform; null for none.</summary>
    public Named? Bearers { get; init; }

    /// <summary>The sheet of the two sides of the well; null for that of the platform.</summary>
    public Named? Sides { get; init; }

    /// <summary>How far what turns or travels (a crank, a belt, a handle) reaches beyond the feet, below the top.</summary>
    public Reach Swing { get; init; } = new(null, null, null, null, default);

    /// <summary>How much top is wanted beside the opening to support the work; null where that is left to the eye.</summary>
    public Reach? Feed { get; init; }

    /// <summary>What it weighs, in pounds in a piece in inches, in kilograms in one in millimetres; 0 where not said.</summary>
    public int Load { get; init; }

    /// <summary>Diameter of its hold-down bolts; null for the usual.</summary>
    public Given? BoltSize { get; init; }

    /// <summary>Where it is bolted down, from the left and the front of its footprint.</summary>
    public ImmutableArray<Spot> Bolts { get; init; } = [];

    /// <summary>Holes through the platform for cables and chips, from the left and the front of the platform to their middle.</summary>
    public ImmutableArray<Exit> Exits { get; init; } = [];
}

/// <summary>Lengths on four sides; null for none.</summary>
public sealed record Reach(Given? Front, Given? Back, Given? Left, Given? Right, Place Place);

/// <summary>A place on a panel.</summary>
/// <param name="FromLeft">From its left edge.</param>
/// <param name="FromFront">From its front edge.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Spot(Given FromLeft, Given FromFront, Place Place);

/// <summary>A hole for something to pass.</summary>
/// <param name="For">What passes, in words.</param>
/// <param name="Size">Its diameter.</param>
/// <param name="At">Its middle.</param>
public sealed record Exit(string For, Given Size, Spot At);
