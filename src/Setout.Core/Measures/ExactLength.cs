namespace Setout.Core.Measures;

/// <summary>
/// An exact length: a rational count of ticks, so that thirds and sevenths stay exact. This is what workings are evaluated in.
/// It becomes a <see cref="Length"/> only through <see cref="RoundTo"/>, <see cref="ToNearestTick"/> or, where nothing can be lost, <see cref="ToLength"/>.
/// The default value is zero.
/// </summary>
public readonly record struct ExactLength : IComparable<ExactLength>
{
    private readonly Rational _ticks;

    private ExactLength(Rational ticks) => _ticks = ticks;

    /// <summary>Zero.</summary>
    public static ExactLength Zero => default;

    /// <summary>-1, 0 or 1.</summary>
    public int Sign => _ticks.Sign;

    /// <summary>True when the length falls on a whole tick.</summary>
    public bool IsWholeTicks => _ticks.IsWhole;

    /// <summary>The exact count of ticks of 1/160 000 mm.</summary>
    public Rational Ticks => _ticks;

    /// <summary>The exact count of inches.</summary>
    public Rational Inches => _ticks / Length.TicksPerInch;

    /// <summary>The exact count of millimetres.</summary>
    public Rational Millimetres => _ticks / Length.TicksPerMillimetre;

    /// <summary>Makes a length from a rational count of ticks.</summary>
    public static ExactLength FromTicks(Rational ticks) => new(ticks);

    /// <summary>Makes a length from a rational count of inches.</summary>
    public static ExactLength FromInches(Rational inches) => new(inches * Length.TicksPerInch);

    /// <summary>Makes a length from a rational count of millimetres.</summary>
    public static ExactLength FromMillimetres(Rational millimetres) => new(millimetres * Length.TicksPerMillimetre);

    /// <summary>A length is also an exact length; nothing is lost.</summary>
    public static implicit operator ExactLength(Length length) => length.ToExact();

    /// <summary>The exact sum.</summary>
    public static ExactLength operator +(ExactLength a, ExactLength b) => new(a._ticks + b._ticks);

    /// <summary>The exact difference.</summary>
    public static ExactLength operator -(ExactLength a, ExactLength b) => new(a._ticks - b._ticks);

    /// <summary>The opposite.</summary>
    public static ExactLength operator -(ExactLength a) => new(-a._ticks);

    /// <summary>A rational multiple.</summary>
    public static ExactLength operator *(ExactLength a, Rational factor) => new(a._ticks * factor);

    /// <summary>A rational multiple.</summary>
    public static ExactLength operator *(Rational factor, ExactLength a) => a * factor;

    /// <summary>A rational share.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero.</exception>
    public static ExactLength operator /(ExactLength a, Rational divisor) => new(a._ticks / divisor);

    /// <summary>The exact ratio of two lengths.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero.</exception>
    public static Rational operator /(ExactLength a, ExactLength b) => a._ticks / b._ticks;

    /// <summary>Lands on a grid by a named rounding and says what was left over.</summary>
    /// <exception cref="OverflowException">The result is beyond the range of <see cref="Length"/>.</exception>
    /// <exception cref="DivideByZeroException">The grid is the default value, which has no step.</exception>
    public Rounded RoundTo(Grid grid, Rounding rounding)
    {
        long steps = (long)(_ticks / grid.Step.Ticks).Round(rounding);
        Length value = grid.Step * steps;
        return new(value, this - value);
    }

    /// <summary>The nearest tick (half away from zero): at most 0.000003125 mm off.</summary>
    /// <exception cref="OverflowException">The result is beyond the range of <see cref="Length"/>.</exception>
    public Length ToNearestTick() => Length.FromTicks((long)_ticks.Round(Rounding.Nearest));

    /// <summary>The same value as a <see cref="Length"/>, where it falls on a tick.</summary>
    /// <exception cref="ArgumentException">It falls between ticks; use a rounding.</exception>
    /// <exception cref="OverflowException">It is beyond the range of <see cref="Length"/>.</exception>
    public Length ToLength() => _ticks.IsWhole
        ? Length.FromTicks((long)_ticks.Numerator)
        : throw new ArgumentException($"{Millimetres} mm does not fall on a tick of 1/160000 mm. Round it by a named rounding.");

    /// <summary>The distance from zero.</summary>
    public ExactLength Abs() => Sign < 0 ? -this : this;

    /// <summary>The shorter of two.</summary>
    public static ExactLength Min(ExactLength a, ExactLength b) => a <= b ? a : b;

    /// <summary>The longer of two.</summary>
    public static ExactLength Max(ExactLength a, ExactLength b) => a >= b ? a : b;

    /// <summary>Millimetres as an approximate number, for drawing and statistics only.</summary>
    public double ApproximateMillimetres => _ticks.ToDouble() / Length.TicksPerMillimetre;

    /// <inheritdoc/>
    public int CompareTo(ExactLength other) => _ticks.CompareTo(other._ticks);

    /// <summary>Order.</summary>
    public static bool operator <(ExactLength a, ExactLength b) => a.CompareTo(b) < 0;

    /// <summary>Order.</summary>
    public static bool operator >(ExactLength a, ExactLength b) => a.CompareTo(b) > 0;

    /// <summary>Order.</summary>
    public static bool operator <=(ExactLength a, ExactLength b) => a.CompareTo(b) <= 0;

    /// <summary>Order.</summary>
    public static bool operator >=(ExactLength a, ExactLength b) => a.CompareTo(b) >= 0;

    /// <summary>Exact millimetres, as a fraction where they are not whole.</summary>
    public override string ToString() => $"{Millimetres} mm";
}

/// <summary>A length that landed on a grid: the value, and exact minus value (always less than a step).</summary>
/// <param name="Value">The figure on the grid.</param>
/// <param name="Residue">What the rounding took away (positive) or added (negative).</param>
public readonly record struct Rounded(Length Value, ExactLength Residue)
{
    /// <summary>True when the exact value was on the grid already.</summary>
    public bool IsExact => Residue.Sign == 0;
}
