using Setout.Core.Measures;

namespace Setout.Cutting.Runs;

/// <summary>How a cut is made.</summary>
public enum SawWay
{
    /// <summary>Table saw, the reference edge along its fence; what comes off lies between fence and blade.</summary>
    Fence,

    /// <summary>Table saw, on a sled, the reference end at a stop, a true edge against the sled's own fence.</summary>
    Sled,

    /// <summary>Hand-held saw along a straight edge that is clamped on.</summary>
    Guide,

    /// <summary>Crosscut saw for boards, the reference end at a stop, a true edge against its fence.</summary>
    Stop,
}

/// <summary>The fence of a table saw.</summary>
/// <param name="Kerf">Width of wood its blade turns into dust; zero or more. The sled runs on the same saw.</param>
/// <param name="Widest">The farthest the fence stands from the blade; above zero.</param>
/// <param name="Room">The longest edge that can be fed along the fence, by the room before and behind the blade; above zero.</param>
/// <param name="Narrowest">The narrowest strip between fence and blade that a push stick brings past; above zero.</param>
/// <param name="NarrowestCarried">The narrowest with a carrier; above zero, at most <paramref name="Narrowest"/>.</param>
public sealed record FenceSaw(Length Kerf, Length Widest, Length Room, Length Narrowest, Length NarrowestCarried);

/// <summary>The sled of the table saw.</summary>
/// <param name="Deepest">The longest cut it makes: the widest work that lies on it; above zero.</param>
/// <param name="Longest">The farthest its stop stands from the blade; above zero.</param>
public sealed record Sled(Length Deepest, Length Longest);

/// <summary>A hand-held saw that is led along a straight edge.</summary>
/// <param name="Kerf">Width of wood its blade turns into dust; zero or more.</param>
/// <param name="Shoe">From the edge of its shoe that runs along the straight edge to the near side of the blade; zero or more, null when it was never measured.</param>
/// <param name="Longest">The longest cut the straight edge leads; above zero.</param>
/// <param name="Rough">How far beside the line a rough cut may run; zero or more.</param>
public sealed record GuidedSaw(Length Kerf, Length? Shoe, Length Longest, Length Rough);

/// <summary>A crosscut saw for boards.</summary>
/// <param name="Kerf">Width of wood its blade turns into dust; zero or more.</param>
/// <param name="Widest">The widest board it cuts through; above zero.</param>
public sealed record StopSaw(Length Kerf, Length Widest);

/// <summary>
/// The saws of a shop and what they can take. A saw that is null is not there. How heavy a blank one person lifts is said of each material as
/// <see cref="RunMaterial.MostArea"/>.
/// </summary>
/// <param name="Fence">The table saw.</param>
/// <param name="Sled">Its sled; nothing without the table saw.</param>
/// <param name="Guided">The hand-held saw with its straight edge.</param>
/// <param name="Boards">The crosscut saw for boards.</param>
/// <param name="RipKerf">Between two lanes of a board that is ripped at the fence, what is planed off both sawn edges included; at least zero.</param>
public sealed record SawLimits(FenceSaw? Fence, Sled? Sled, GuidedSaw? Guided, StopSaw? Boards, Length RipKerf)
{
    /// <summary>
    /// The saws assumed when nobody says otherwise: all of them with a full kerf of 1/8 in; rips up to 30 in wide, edges up to 100 in, strips down to 1 1/2 in, 1/4 in with a
    /// carrier; a sled of 24 by 48 in; a straight edge of 100 in; boards up to 8 in wide. Common practice, no source.
    /// </summary>
    public static SawLimits Usual { get; } = new(
        new(Length.FromInches(1, 8), Length.FromInches(30), Length.FromInches(100), Length.FromInches(3, 2), Length.FromInches(1, 4)),
        new(Length.FromInches(24), Length.FromInches(48)),
        new(Length.FromInches(1, 8), null, Length.FromInches(100), Length.FromInches(1, 16)),
        new(Length.FromInches(1, 8), Length.FromInches(8)),
        Length.FromInches(1, 8));
}
