namespace Setout.Core.Measures;

/// <summary>
/// An approximate number with a bound: the true value lies within <see cref="Error"/> of <see cref="Value"/>.
/// Roots, angles, masses and chances are built on it. It never becomes a length without a named rounding.
/// </summary>
/// <param name="Value">The best value.</param>
/// <param name="Error">Zero or more, in the same unit.</param>
public readonly record struct Estimate(double Value, double Error)
{
    // Outward: more than the few roundings of the sums below can take away, so that a bound never shrinks.
    private const double Outward = 1 + (8.0 / (1L << 52));

    /// <summary>The best value; a number.</summary>
    public double Value { get; init; } = !double.IsNaN(Value)
        ? Value
        : throw new ArgumentOutOfRangeException(nameof(Value), Value, "An estimate needs a number.");

    /// <summary>The bound; zero or more, in the unit of the value.</summary>
    public double Error { get; init; } = Error >= 0
        ? Error
        : throw new ArgumentOutOfRangeException(nameof(Error), Error, "A bound is zero or more.");

    /// <summary>An estimate of a number held as well as a double can.</summary>
    public static Estimate Of(double value) => new(value, Ulp(value));

    /// <summary>The sum; errors add.</summary>
    public static Estimate operator +(Estimate a, Estimate b) => new(a.Value + b.Value, Bound(a.Error + b.Error + Ulp(a.Value + b.Value)));

    /// <summary>The difference; errors add.</summary>
    public static Estimate operator -(Estimate a, Estimate b) => new(a.Value - b.Value, Bound(a.Error + b.Error + Ulp(a.Value - b.Value)));

    /// <summary>The product.</summary>
    public static Estimate operator *(Estimate a, Estimate b)
    {
        double value = a.Value * b.Value;
        return new(value, Bound((Math.Abs(a.Value) * b.Error) + (Math.Abs(b.Value) * a.Error) + (a.Error * b.Error) + Ulp(value)));
    }

    /// <summary>True when <paramref name="value"/> lies within the bound.</summary>
    public bool Covers(double value) => Math.Abs(value - Value) <= Error;

    private static double Bound(double error) => Math.BitIncrement(error * Outward);

    /// <summary>The distance to the next double; without bound once the value has left the range of doubles.</summary>
    private static double Ulp(double value) =>
        double.IsFinite(value) ? Math.BitIncrement(Math.Abs(value)) - Math.Abs(value) : double.PositiveInfinity;
}

/// <summary>An angle in degrees, approximate.</summary>
/// <param name="Degrees">Degrees with their bound.</param>
public readonly record struct Angle(Estimate Degrees);

/// <summary>A mass in kilograms, approximate: densities of wood are never better than a few parts in a hundred.</summary>
/// <param name="Kilograms">Kilograms with their bound.</param>
public readonly record struct Mass(Estimate Kilograms)
{
    /// <summary>Pounds per kilogram (1 lb = 0.453 592 37 kg exactly, international pound).</summary>
    public const double PoundsPerKilogram = 1 / 0.45359237;

    /// <summary>Pounds as an approximate number.</summary>
    public double Pounds => Kilograms.Value * PoundsPerKilogram;

    /// <summary>The sum.</summary>
    public static Mass operator +(Mass a, Mass b) => new(a.Kilograms + b.Kilograms);
}

/// <summary>A diagonal or another root, in millimetres, with its bound.</summary>
/// <param name="Millimetres">Millimetres with their bound.</param>
public readonly record struct ApproximateLength(Estimate Millimetres)
{
    // Six roundings of half a unit in the last place (1.1e-16) come together here; this is some ten times as much.
    private const double RelativeError = 1e-14;

    /// <summary>The diagonal of a rectangle (Pythagoras); the bound covers the rounding of the double arithmetic.</summary>
    public static ApproximateLength Diagonal(ExactLength width, ExactLength height)
    {
        double a = width.ApproximateMillimetres, b = height.ApproximateMillimetres;
        double value = double.Hypot(a, b);
        return new(new Estimate(value, value * RelativeError));
    }

    /// <summary>
    /// Lands on a grid by a named rounding: the only way from here to a <see cref="Length"/>. A value that cannot be told from
    /// a step (its bound is less than a hundredth of a step and reaches it) is on that step, so that the diagonal of 3 and 4
    /// is never rounded away from 5 by the last bit of the arithmetic.
    /// </summary>
    /// <exception cref="OverflowException">The result is beyond the range of <see cref="Length"/>.</exception>
    public Length RoundTo(Grid grid, Rounding rounding)
    {
        var value = ExactLength.FromMillimetres(Rational.OfDouble(Millimetres.Value));
        var bound = ExactLength.FromMillimetres(Rational.OfDouble(Millimetres.Error));
        Rounded nearest = value.RoundTo(grid, Rounding.Nearest);
        bool onStep = nearest.Residue.Abs() <= bound && bound * 100 < grid.Step;
        return onStep ? nearest.Value : value.RoundTo(grid, rounding).Value;
    }
}
