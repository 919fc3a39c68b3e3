using Setout.Core.Measures;

namespace Setout.Core.Craft;

/// <summary>Readings of a four-sided frame, corners named round: A, B, C, D. All lengths more than zero; the lift may be zero.</summary>
/// <param name="AB">First side.</param>
/// <param name="BC">Second side.</param>
/// <param name="CD">Third side, opposite AB.</param>
/// <param name="DA">Fourth side, opposite BC.</param>
/// <param name="AC">Diagonal.</param>
/// <param name="BD">Diagonal.</param>
/// <param name="Lift">How far corner D stands off the plane of the other three; null when not measured.</param>
public sealed record FourSides(ExactLength AB, ExactLength BC, ExactLength CD, ExactLength DA, ExactLength AC, ExactLength BD, ExactLength? Lift = null);

/// <summary>One of the two diagonals.</summary>
public enum Diagonal
{
    /// <summary>Neither.</summary>
    None,

    /// <summary>From A to C.</summary>
    AC,

    /// <summary>From B to D.</summary>
    BD,
}

/// <summary>What the six readings of a frame say about each other, apart from square or not.</summary>
public enum FrameVerdict
{
    /// <summary>They agree within what the instrument can read.</summary>
    Agree,

    /// <summary>They do not fit a flat frame but do fit one in wind.</summary>
    Wind,

    /// <summary>No frame, flat or in wind, has these sizes: one of the readings is a slip.</summary>
    Slip,
}

/// <summary>How square a frame is, and what to do about it. Roots and angles are approximate and carry the bound of the arithmetic, not of the readings.</summary>
/// <param name="OutOfSquare">How far the worst corner is from a right angle.</param>
/// <param name="Racking">The part of it that pulling on a diagonal mends; more than zero when the corner at A is wide.</param>
/// <param name="Lean">How far a side as long as DA leans over its length by that racking.</param>
/// <param name="Shorten">Which diagonal to pull in; none when the frame is square within the tolerance.</param>
/// <param name="By">By how much, from what it reads now; zero for none.</param>
/// <param name="TargetAC">What AC reads when there is no racking left.</param>
/// <param name="TargetBD">What BD reads then.</param>
/// <param name="EqualDiagonalsMislead">True when the diagonals are alike although a corner is out, because opposite sides differ.</param>
/// <param name="Misfit">The largest disagreement of a reading with the frame that fits all of them best.</param>
/// <param name="Wind">How far the fourth corner stands off the plane: as measured, or as the readings ask for; zero for flat.</param>
/// <param name="Verdict">What the readings say about each other.</param>
/// <param name="Tolerance">The difference of diagonals that passes for square at this size.</param>
public sealed record SquarenessResult(
    Angle OutOfSquare, Angle Racking, ApproximateLength Lean, Diagonal Shorten, ApproximateLength By, ApproximateLength TargetAC, ApproximateLength TargetBD,
    bool EqualDiagonalsMislead, ApproximateLength Misfit, ApproximateLength Wind, FrameVerdict Verdict, ExactLength Tolerance)
{
    /// <summary>What the diagonal to shorten should read.</summary>
    public ApproximateLength? Target => Shorten switch
    {
        Diagonal.AC => TargetAC,
        Diagonal.BD => TargetBD,
        _ => null,
    };
}
