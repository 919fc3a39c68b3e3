using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Turning;

/// <summary>A corner in the frame of the piece, in millimetres: X from the left, Y from the front to the back, Z up.</summary>
public readonly record struct Spot(double X, double Y, double Z)
{
    /// <summary>One of the three, by its number from 0.</summary>
    public double this[int axis] => axis switch { 0 => X, 1 => Y, _ => Z };

    /// <summary>A spot as far from this as another is from nought.</summary>
    internal Spot Plus(Spot by) => new(X + by.X, Y + by.Y, Z + by.Z);
}

/// <summary>A member as a block with six faces along the axes of the piece.</summary>
/// <param name="Key">The key of the member.</param>
/// <param name="Title">Words for it.</param>
/// <param name="Wash">Solid wood or sheet.</param>
/// <param name="Low">Its left, front, lower corner.</param>
/// <param name="High">Its right, rear, upper corner; beyond <paramref name="Low"/> each way.</param>
public sealed record Block(string Key, string Title, Wash Wash, Spot Low, Spot High)
{
    /// <summary>Where it is one of several that make up a member with holes: the middle of that, with which it moves; null for a whole member.</summary>
    public Spot? Around { get; init; }

    /// <summary>Where it is one of several: the lines that are edges of the member; of a whole member all twelve are.</summary>
    public ImmutableArray<BlockEdge> Edges { get; init; } = [];
}

/// <summary>An edge of a member.</summary>
/// <param name="Face">One of the two faces of the block that it lies on, by its number: 0 left, 1 right, 2 front, 3 rear, 4 lower, 5 upper.</param>
/// <param name="Other">The other.</param>
/// <param name="From">One end.</param>
/// <param name="To">The other end.</param>
public readonly record struct BlockEdge(int Face, int Other, Spot From, Spot To);

/// <summary>From where a piece is looked at, and how far its parts are moved apart.</summary>
/// <param name="Turn">Degrees it is turned about the upright: 0 from the front, 90 from its right side.</param>
/// <param name="Tip">Degrees the eye is above it, from -90 to 90.</param>
/// <param name="Apart">How far the middles of parts stand apart, as a share of how far they do in the piece: 0 for as it stands, 1 for twice as far.</param>
public readonly record struct Standpoint(double Turn, double Tip, double Apart)
{
    /// <summary>From the front, a little from the right and from above, as it stands.</summary>
    public static Standpoint Usual { get; } = new(32, 22, 0);

    /// <summary>The same within its ranges: a turn from 0 to under 360, a tip from -90 to 90, parts apart from 0 to 2.</summary>
    public Standpoint Clamped() => new(((Turn % 360) + 360) % 360, Math.Clamp(Tip, -90, 90), Math.Clamp(Apart, 0, MostApart));

    /// <summary>The farthest apart.</summary>
    public const double MostApart = 2;
}

/// <summary>What is drawn.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Description">For someone who cannot see it.</param>
/// <param name="Blocks">The members; one or more.</param>
public sealed record TurningInput(string Title, string Description, ImmutableArray<Block> Blocks);
