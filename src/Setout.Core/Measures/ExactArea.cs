namespace Setout.Core.Measures;

/// <summary>An exact area: a rational count of square millimetres, as two exact lengths give it. The default value is zero.</summary>
public readonly record struct ExactArea : IComparable<ExactArea>
{
    // 12 x 25.4 mm. Source: international yard and pound agreement, 1959.
    private static readonly Rational s_foot = Rational.Of(3048, 10);

    private ExactArea(Rational squareMillimetres) => SquareMillimetres = squareMillimetres;

    /// <summary>Zero.</summary>
    public static ExactArea Zero => default;

    /// <summary>The exact count of square millimetres.</summary>
    public Rational SquareMillimetres { get; }

    /// <summary>The exact count of square metres.</summary>
    public Rational SquareMetres => SquareMillimetres / 1_000_000;

    /// <summary>The exact count of square feet.</summary>
    public Rational SquareFeet => SquareMillimetres / s_foot / s_foot;

    /// <summary>-1, 0 or 1.</summary>
    public int Sign => SquareMillimetres.Sign;

    /// <summary>The area of a rectangle.</summary>
    public static ExactArea Of(ExactLength a, ExactLength b) => new(a.Millimetres * b.Millimetres);

    /// <summary>So many square millimetres.</summary>
    public static ExactArea FromSquareMillimetres(Rational count) => new(count);

    /// <summary>So many square metres.</summary>
    public static ExactArea FromSquareMetres(Rational count) => new(count * 1_000_000);

    /// <summary>So many square feet.</summary>
    public static ExactArea FromSquareFeet(Rational count) => new(count * s_foot * s_foot);

    /// <summary>The exact sum.</summary>
    public static ExactArea operator +(ExactArea a, ExactArea b) => new(a.SquareMillimetres + b.SquareMillimetres);

    /// <summary>A rational multiple.</summary>
    public static ExactArea operator *(ExactArea a, Rational factor) => new(a.SquareMillimetres * factor);

    /// <summary>The exact ratio of two areas.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero.</exception>
    public static Rational operator /(ExactArea a, ExactArea b) => a.SquareMillimetres / b.SquareMillimetres;

    /// <inheritdoc/>
    public int CompareTo(ExactArea other) => SquareMillimetres.CompareTo(other.SquareMillimetres);

    /// <summary>Order.</summary>
    public static bool operator <(ExactArea a, ExactArea b) => a.CompareTo(b) < 0;

    /// <summary>Order.</summary>
    public static bool operator >(ExactArea a, ExactArea b) => a.CompareTo(b) > 0;

    /// <summary>Order.</summary>
    public static bool operator <=(ExactArea a, ExactArea b) => a.CompareTo(b) <= 0;

    /// <summary>Order.</summary>
    public static bool operator >=(ExactArea a, ExactArea b) => a.CompareTo(b) >= 0;

    /// <inheritdoc/>
    public override string ToString() => $"{SquareMillimetres} mm2";
}
