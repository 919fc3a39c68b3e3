namespace Setout.Core.Measures;

/// <summary>
/// An approximate number with a bound: the true value lies within <see cref="Error"/> of <see cref="Value"/>.
/// Roots, angles, masses and chances are built on it. It never becomes a length without a named rounding.
/// </summary>
/// <param name="Value">The best value.</param>
/// <param name="Error">Zero or more, in the same unit.</param>
public readonly record struct Estimate(double Value, double Error)
{
    /// <summary>An estimate of a number held as well as a double can.</summary>
    public static Estimate Of(double value) => new(value, Math.BitIncrement(Math.Abs(value)) - Math.Abs(value));

    /// <summary>The sum; errors add.</summary>
    public static Estimate operator +(Estimate a, Estimate b) => new(a.Value + b.Value, a.Error + b.Error + Ulp(a.Value + b.Value));

    /// <summary>The difference; errors add.</summary>
    public static Estimate operator -(Estimate a, Estimate b) => new(a.Value - b.Value, a.Error + b.Error + Ulp(a.Value - b.Value));

    /// <summary>The product.</summary>
    public static Estimate operator *(Estimate a, Estimate b)
    {
        double value = a.Value * b.Value;
        return new(value, (Math.Abs(a.Value) * b.Error) + (Math.Abs(b.Value) * a.Error) + (a.Error * b.Error) + Ulp(value));
    }

    /// <summary>True when <paramref name="value"/> lies within the bound.</summary>
    public bool Covers(double value) => Math.Abs(value - Value) <= Error;

    private static double Ulp(double value) => double.IsFinite(value) ? Math.BitIncrement(Math.Abs(value)) - Math.Abs(value) : 0;
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
    /// <summary>The diagonal of a rectangle (Pythagoras); the bound covers the rounding of the double arithmetic.</summary>
    public static ApproximateLength Diagonal(ExactLength width, ExactLength height)
    {
        double a = width.ApproximateMillimetres, b = height.ApproximateMillimetres;
        double value = Math.Sqrt((a * a) + (b * b));
        return new(new Estimate(value, value * 1e-14));
    }

    /// <summary>Lands on a grid by a named rounding: the only way from here to a <see cref="Length"/>.</summary>
    public Length RoundTo(Grid grid, Rounding rounding) =>
        ExactLength.FromMillimetres(Rational.Of((decimal)Millimetres.Value)).RoundTo(grid, rounding).Value;
}
