namespace Setout.Core.Measures;

/// <summary>An area in square ticks of (1/160 000 mm)², held in 128 bits; arithmetic that leaves them throws <see cref="OverflowException"/>. The default value is zero.</summary>
public readonly record struct Area : IComparable<Area>
{
    private static readonly Int128 s_perSquareMillimetre = (Int128)Length.TicksPerMillimetre * Length.TicksPerMillimetre;

    private readonly Int128 _squareTicks;

    private Area(Int128 squareTicks) => _squareTicks = squareTicks;

    /// <summary>Zero.</summary>
    public static Area Zero => default;

    /// <summary>The count of square ticks.</summary>
    public Int128 SquareTicks => _squareTicks;

    /// <summary>Makes an area from a count of square ticks.</summary>
    public static Area FromSquareTicks(Int128 squareTicks) => new(squareTicks);

    /// <summary>The sum.</summary>
    public static Area operator +(Area a, Area b) => new(a._squareTicks + b._squareTicks);

    /// <summary>The difference.</summary>
    public static Area operator -(Area a, Area b) => new(a._squareTicks - b._squareTicks);

    /// <summary>So many times the area.</summary>
    public static Area operator *(Area a, long times) => new(a._squareTicks * times);

    /// <summary>How many of <paramref name="other"/> it takes to cover this area; 0 for an empty area.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="other"/> is zero or less.</exception>
    public long CeilingOver(Area other)
    {
        if (other._squareTicks <= 0) throw new ArgumentOutOfRangeException(nameof(other), other, "More than zero.");
        (Int128 whole, Int128 rest) = Int128.DivRem(_squareTicks, other._squareTicks);
        return (long)(rest > 0 ? whole + 1 : whole);
    }

    /// <summary>This area over another as an approximate number; not finite when <paramref name="other"/> is zero.</summary>
    public double RatioTo(Area other) => (double)_squareTicks / (double)other._squareTicks;

    /// <summary>Square millimetres as an approximate number.</summary>
    public double ApproximateSquareMillimetres => (double)_squareTicks / (double)s_perSquareMillimetre;

    /// <summary>Square feet as an approximate number (1 ft = 304.8 mm exactly).</summary>
    public double ApproximateSquareFeet => ApproximateSquareMillimetres / (304.8 * 304.8);

    /// <inheritdoc/>
    public int CompareTo(Area other) => _squareTicks.CompareTo(other._squareTicks);

    /// <summary>Order.</summary>
    public static bool operator <(Area a, Area b) => a._squareTicks < b._squareTicks;

    /// <summary>Order.</summary>
    public static bool operator >(Area a, Area b) => a._squareTicks > b._squareTicks;

    /// <summary>Order.</summary>
    public static bool operator <=(Area a, Area b) => a._squareTicks <= b._squareTicks;

    /// <summary>Order.</summary>
    public static bool operator >=(Area a, Area b) => a._squareTicks >= b._squareTicks;

    /// <summary>Square millimetres, rounded to two decimals.</summary>
    public override string ToString() => $"{ApproximateSquareMillimetres:0.##} mm2";
}
