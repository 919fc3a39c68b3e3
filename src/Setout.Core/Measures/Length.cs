namespace Setout.Core.Measures;

/// <summary>
/// A length as a whole count of ticks of 1/160 000 mm. Exact for 1/256 in, 0.0005 in and 0.001 mm; range about ±57 million
/// km, and arithmetic that leaves it throws <see cref="OverflowException"/>. The default value is zero. A result that may fall between ticks
/// (a third of an inch of something) is an <see cref="ExactLength"/>; it becomes a Length only by a named rounding.
/// </summary>
public readonly record struct Length : IComparable<Length>
{
    /// <summary>Ticks in a millimetre.</summary>
    public const long TicksPerMillimetre = 160_000;

    /// <summary>Ticks in an inch of 25.4 mm exactly.</summary>
    public const long TicksPerInch = 4_064_000;

    private readonly long _ticks;

    private Length(long ticks) => _ticks = ticks;

    /// <summary>Zero.</summary>
    public static Length Zero => default;

    /// <summary>The count of ticks of 1/160 000 mm.</summary>
    public long Ticks => _ticks;

    /// <summary>-1, 0 or 1.</summary>
    public int Sign => Math.Sign(_ticks);

    /// <summary>Makes a length from a count of ticks.</summary>
    public static Length FromTicks(long ticks) => new(ticks);

    /// <summary>Makes a length of whole millimetres.</summary>
    public static Length FromMillimetres(long millimetres) => new(millimetres * TicksPerMillimetre);

    /// <summary>Makes a length of numerator/denominator inches; the result must fall on a tick.</summary>
    /// <exception cref="ArgumentException">The fraction does not fall on a whole tick.</exception>
    /// <exception cref="DivideByZeroException"><paramref name="denominator"/> is zero.</exception>
    /// <exception cref="OverflowException">The result is out of range.</exception>
    public static Length FromInches(long numerator, long denominator = 1) =>
        ExactLength.FromInches(Rational.Of(numerator, denominator)).ToLength();

    /// <summary>The sum.</summary>
    public static Length operator +(Length a, Length b) => new(a._ticks + b._ticks);

    /// <summary>The difference.</summary>
    public static Length operator -(Length a, Length b) => new(a._ticks - b._ticks);

    /// <summary>The opposite.</summary>
    public static Length operator -(Length a) => new(-a._ticks);

    /// <summary>So many times the length.</summary>
    public static Length operator *(Length a, long times) => new(a._ticks * times);

    /// <summary>So many times the length.</summary>
    public static Length operator *(long times, Length a) => a * times;

    /// <summary>A rational share, exact: it becomes a length again by a rounding.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero.</exception>
    public static ExactLength operator /(Length a, Rational divisor) => a.ToExact() / divisor;

    /// <summary>The exact ratio of two lengths.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero.</exception>
    public static Rational operator /(Length a, Length b) => Rational.Of(a._ticks, b._ticks);

    /// <summary>The area of a rectangle of these sides.</summary>
    public static Area operator *(Length a, Length b) => Area.FromSquareTicks((Int128)a._ticks * b._ticks);

    /// <summary>How many whole times <paramref name="divisor"/> goes into this length, and what is left (with the sign of this length).</summary>
    /// <exception cref="DivideByZeroException"><paramref name="divisor"/> is zero.</exception>
    public (long Count, Length Left) DivideBy(Length divisor)
    {
        (long count, long rest) = Math.DivRem(_ticks, divisor._ticks);
        return (count, new(rest));
    }

    /// <summary>
    /// Splits this length into <paramref name="count"/> lengths on <paramref name="grid"/> that add up to it exactly:
    /// before the rest, all differ by at most one step, the earlier ones being the longer; the last also takes up what is off the grid.
    /// The parts of a negative length are those of the positive one, negated.
    /// </summary>
    /// <param name="count">One or more.</param>
    /// <param name="grid">The step that all but the last part keep.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is less than one.</exception>
    /// <exception cref="DivideByZeroException">The grid is the default value, which has no step.</exception>
    public IReadOnlyList<Length> SplitInto(int count, Grid grid)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        (long steps, Length off) = DivideBy(grid.Step);
        (long each, long more) = Math.DivRem(steps, count);
        var parts = new Length[count];
        for (int i = 0; i < count; i++)
            parts[i] = grid.Step * (each + (i < Math.Abs(more) ? Math.Sign(more) : 0));
        parts[count - 1] += off;
        return parts;
    }

    /// <summary>The distance from zero.</summary>
    /// <exception cref="OverflowException">This is the lowest length there is, which has no opposite.</exception>
    public Length Abs() => new(Math.Abs(_ticks));

    /// <summary>The shorter of two.</summary>
    public static Length Min(Length a, Length b) => a <= b ? a : b;

    /// <summary>The longer of two.</summary>
    public static Length Max(Length a, Length b) => a >= b ? a : b;

    /// <summary>This length as an exact rational length; nothing is lost.</summary>
    public ExactLength ToExact() => ExactLength.FromTicks(_ticks);

    /// <summary>The exact count of millimetres; always finite, with at most eight decimals.</summary>
    public decimal ToMillimetres() => (decimal)_ticks / TicksPerMillimetre;

    /// <summary>Millimetres as an approximate number, for drawing only.</summary>
    public double ApproximateMillimetres => _ticks / (double)TicksPerMillimetre;

    /// <inheritdoc/>
    public int CompareTo(Length other) => _ticks.CompareTo(other._ticks);

    /// <summary>Order.</summary>
    public static bool operator <(Length a, Length b) => a._ticks < b._ticks;

    /// <summary>Order.</summary>
    public static bool operator >(Length a, Length b) => a._ticks > b._ticks;

    /// <summary>Order.</summary>
    public static bool operator <=(Length a, Length b) => a._ticks <= b._ticks;

    /// <summary>Order.</summary>
    public static bool operator >=(Length a, Length b) => a._ticks >= b._ticks;

    /// <summary>The invariant form: exact millimetres with their unit. <see cref="Text.LengthText"/> reads it back up to its longest length.</summary>
    public override string ToString() => $"{ToMillimetres():0.########} mm";
}
