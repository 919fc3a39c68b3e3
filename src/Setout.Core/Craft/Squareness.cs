using Setout.Core.Measures;

namespace Setout.Core.Craft;

/// <summary>
/// Squareness of any four-sided frame from its sides and diagonals. Six readings of a flat frame have one more than it takes to fix it, so
/// they are fitted by least squares and the misfit is told. Racking is what remains when opposite corners do not add up to two right angles: with
/// its sides as they are, a frame has no racking left exactly when it can be inscribed in a circle, and Ptolemy's theorem gives both diagonals then.
/// </summary>
public static class Squareness
{
    private const double Degrees = 180 / Math.PI;

    /// <summary>The bound of the double arithmetic here, relative; found generous against exact cases.</summary>
    private const double Relative = 1e-9;

    /// <summary>
    /// The difference of diagonals that passes for square: 1/64 in for each foot of the longest side, never less than 1/32 in.
    /// Source: PS 1 gives 1/64 in per nominal foot of the longest edge for plywood, used here by analogy; the floor of 1/32 in is common practice, no source.
    /// </summary>
    public static ExactLength ToleranceFor(FourSides frame)
    {
        ExactLength longest = new[] { frame.AB, frame.BC, frame.CD, frame.DA }.Max();
        return ExactLength.Max(ExactLength.FromInches(Rational.Of(1, 32)), longest * Rational.Of(1, 64 * 12));
    }

    /// <summary>Judges a frame.</summary>
    /// <param name="frame">The readings.</param>
    /// <param name="reading">What the instrument can read: smaller disagreements say nothing.</param>
    /// <exception cref="ArgumentException">A size is zero or less, or the sides cannot meet.</exception>
    public static SquarenessResult Of(FourSides frame, ExactLength reading)
    {
        Check(frame);
        double[] read = [.. new[] { frame.AB, frame.BC, frame.CD, frame.DA, frame.AC, frame.BD }.Select(s => s.ApproximateMillimetres)];
        double lift = frame.Lift?.ApproximateMillimetres ?? 0, slip = reading.ApproximateMillimetres;
        FrameFit fit = FrameFit.Of(read, lift);
        (FrameVerdict verdict, double wind) = Judge(read, fit, frame.Lift is not null, lift, slip);

        double[] corners = fit.Corners();
        double racking = (corners[0] + corners[2] - corners[1] - corners[3]) / 4, worst = corners.Max(c => Math.Abs(c - 90));
        double a = fit.Length(0, 1), b = fit.Length(1, 2), c = fit.Length(2, 3), d = fit.Length(3, 0);
        double ac = Math.Sqrt(((a * c) + (b * d)) * ((a * d) + (b * c)) / ((a * b) + (c * d)));
        double bd = Math.Sqrt(((a * c) + (b * d)) * ((a * b) + (c * d)) / ((a * d) + (b * c)));

        ExactLength tolerance = ToleranceFor(frame);
        double passes = tolerance.ApproximateMillimetres, apart = read[4] - read[5];
        // Half the difference sits in each diagonal.
        double over = read[4] - ac, under = read[5] - bd;
        Diagonal shorten = Math.Abs(over - under) <= passes ? Diagonal.None : over > under ? Diagonal.AC : Diagonal.BD;
        double by = shorten switch
        {
            Diagonal.AC => over,
            Diagonal.BD => under,
            _ => 0,
        };
        // The angle that a difference of just the tolerance would make in a rectangle of this size.
        double angle = Math.Asin(Math.Min(1, passes * (read[4] + read[5]) / (4 * read[0] * read[3]))) * Degrees;
        bool misleads = Math.Abs(apart) <= passes && worst > angle;
        return new(At(worst), At(racking), Long(read[3] * Math.Sin(Math.Abs(racking) / Degrees)), shorten, Long(Math.Max(0, by)), Long(ac), Long(bd),
            misleads, Long(fit.Misfit), Long(wind), verdict, tolerance);
    }

    private static (FrameVerdict Verdict, double Wind) Judge(double[] read, FrameFit fit, bool hasLift, double lift, double slip)
    {
        if (fit.Misfit <= slip) return (hasLift && Math.Abs(lift) > slip ? FrameVerdict.Wind : FrameVerdict.Agree, Math.Abs(lift));
        if (hasLift) return (FrameVerdict.Slip, Math.Abs(lift));
        // Six distances between four points leave a height over the plane of three of them, if they are possible at all (Cayley and Menger).
        double height = Tetrahedron.Height(read);
        // A frame that lies on the floor in wind by more than a twentieth of its short side would be seen, not measured.
        double most = read[..4].Min() / 20;
        return height > 0 && height <= most ? (FrameVerdict.Wind, height) : (FrameVerdict.Slip, 0);
    }

    private static void Check(FourSides frame)
    {
        (string Name, ExactLength Value)[] sizes = [("AB", frame.AB), ("BC", frame.BC), ("CD", frame.CD), ("DA", frame.DA), ("AC", frame.AC), ("BD", frame.BD)];
        foreach ((string name, ExactLength value) in sizes)
            if (value.Sign <= 0) throw new ArgumentException($"{name} is {value}; it must be more than zero.");
        (string Name, ExactLength X, ExactLength Y, ExactLength Z)[] triangles =
        [
            ("A, B and C", frame.AB, frame.BC, frame.AC), ("A, C and D", frame.CD, frame.DA, frame.AC),
            ("A, B and D", frame.AB, frame.DA, frame.BD), ("B, C and D", frame.BC, frame.CD, frame.BD),
        ];
        foreach ((string name, ExactLength x, ExactLength y, ExactLength z) in triangles)
            if (x + y <= z || y + z <= x || z + x <= y) throw new ArgumentException($"The sizes between {name} cannot meet: one is as long as the other two together. Measure them again.");
    }

    private static Angle At(double degrees) => new(new Estimate(degrees, 1e-7));

    private static ApproximateLength Long(double millimetres) => new(new Estimate(millimetres, Math.Abs(millimetres) * Relative + 1e-9));
}
