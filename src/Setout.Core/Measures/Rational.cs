// Over 200 lines: a number type and its operators are one idea.
using System.Numerics;

namespace Setout.Core.Measures;

/// <summary>
/// An exact fraction, always in lowest terms with a positive denominator. Held in 128 bits; when a result needs more it
/// grows into big integers by itself, so arithmetic never overflows and never rounds. The default value is zero.
/// It has no unit: a rational length is an <see cref="ExactLength"/>.
/// </summary>
public readonly struct Rational : IEquatable<Rational>, IComparable<Rational>
{
    // Products of two numbers below 2^62 stay below 2^124, so their sums cannot leave 128 bits.
    private static readonly Int128 s_small = (Int128)1 << 62;

    private readonly Int128 _numerator;
    private readonly Int128 _denominatorLessOne;
    private readonly Wide? _wide;

    private sealed record Wide(BigInteger Numerator, BigInteger Denominator);

    private Rational(Int128 numerator, Int128 denominator)
    {
        _numerator = numerator;
        _denominatorLessOne = denominator - 1;
        _wide = null;
    }

    private Rational(Wide wide)
    {
        _numerator = 0;
        _denominatorLessOne = 0;
        _wide = wide;
    }

    /// <summary>Zero.</summary>
    public static Rational Zero => default;

    /// <summary>One.</summary>
    public static Rational One => new(1, 1);

    /// <summary>The numerator in lowest terms; carries the sign.</summary>
    public BigInteger Numerator => _wide?.Numerator ?? (BigInteger)_numerator;

    /// <summary>The denominator in lowest terms, one or more.</summary>
    public BigInteger Denominator => _wide?.Denominator ?? (BigInteger)(_denominatorLessOne + 1);

    /// <summary>True when the value is a whole number.</summary>
    public bool IsWhole => _wide is null ? _denominatorLessOne == 0 : _wide.Denominator.IsOne;

    /// <summary>-1, 0 or 1.</summary>
    public int Sign => _wide?.Numerator.Sign ?? Int128.Sign(_numerator);

    /// <summary>True when the value has outgrown 128 bits.</summary>
    internal bool IsWide => _wide is not null;

    /// <summary>The fraction <paramref name="numerator"/>/<paramref name="denominator"/>, reduced.</summary>
    /// <exception cref="DivideByZeroException">The denominator is zero.</exception>
    public static Rational Of(long numerator, long denominator = 1) => Reduce((Int128)numerator, denominator);

    /// <summary>The fraction of two big integers, reduced.</summary>
    /// <exception cref="DivideByZeroException">The denominator is zero.</exception>
    public static Rational Of(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero) throw new DivideByZeroException("A fraction needs a denominator other than zero.");
        if (denominator.Sign < 0) (numerator, denominator) = (-numerator, -denominator);
        BigInteger common = BigInteger.GreatestCommonDivisor(numerator, denominator);
        if (!common.IsOne) (numerator, denominator) = (numerator / common, denominator / common);
        return Fits(numerator) && Fits(denominator)
            ? new Rational((Int128)numerator, (Int128)denominator)
            : new Rational(new Wide(numerator, denominator));
    }

    /// <summary>The exact value of a decimal number.</summary>
    public static Rational Of(decimal value)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(value, bits);
        int scale = (bits[3] >> 16) & 0xFF;
        // The whole digits lie in three 32-bit words; unchecked because the sign bit of each word is a digit here.
        BigInteger magnitude = unchecked(((((BigInteger)(uint)bits[2]) << 64) + (((BigInteger)(uint)bits[1]) << 32)) + (uint)bits[0]);
        return Of(value < 0 ? -magnitude : magnitude, BigInteger.Pow(10, scale));
    }

    /// <summary>The exact value of a double, which is always a fraction over a power of two.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    internal static Rational OfDouble(double value)
    {
        if (!double.IsFinite(value)) throw new ArgumentOutOfRangeException(nameof(value), value, "A fraction needs a finite number.");
        long bits = BitConverter.DoubleToInt64Bits(value);
        int exponent = (int)((bits >> 52) & 0x7FF);
        long digits = bits & ((1L << 52) - 1);
        if (exponent == 0) exponent = 1;
        else digits |= 1L << 52;
        BigInteger signed = bits < 0 ? -digits : digits;
        int shift = exponent - 1075;
        return shift >= 0 ? Of(signed << shift, BigInteger.One) : Of(signed, BigInteger.One << -shift);
    }

    private static bool Fits(BigInteger value) => BigInteger.Abs(value).GetBitLength() <= 126;

    private static Rational Reduce(Int128 numerator, Int128 denominator)
    {
        if (denominator == 0) throw new DivideByZeroException("A fraction needs a denominator other than zero.");
        if (denominator < 0) (numerator, denominator) = (-numerator, -denominator);
        if (denominator == 1) return new(numerator, 1);
        Int128 common = GreatestCommonDivisor(Int128.Abs(numerator), denominator);
        return common == 1 ? new(numerator, denominator) : new(numerator / common, denominator / common);
    }

    private static Int128 GreatestCommonDivisor(Int128 a, Int128 b)
    {
        while (b != 0)
        {
            if (a <= ulong.MaxValue && b <= ulong.MaxValue)
            {
                ulong x = (ulong)a, y = (ulong)b;
                while (y != 0) (x, y) = (y, x % y);
                return x;
            }
            (a, b) = (b, a % b);
        }
        return a;
    }

    private bool IsSmall => _wide is null && Int128.Abs(_numerator) < s_small && _denominatorLessOne < s_small - 1;

    /// <summary>The exact sum.</summary>
    public static Rational operator +(Rational a, Rational b)
    {
        if (!a.IsSmall || !b.IsSmall)
            return Of((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator), a.Denominator * b.Denominator);
        Int128 da = a._denominatorLessOne + 1, db = b._denominatorLessOne + 1;
        return da == db
            ? Reduce(a._numerator + b._numerator, da)
            : Reduce((a._numerator * db) + (b._numerator * da), da * db);
    }

    /// <summary>The exact difference.</summary>
    public static Rational operator -(Rational a, Rational b) => a + -b;

    /// <summary>The opposite.</summary>
    public static Rational operator -(Rational a) => a._wide is { } wide
        ? new Rational(wide with { Numerator = -wide.Numerator })
        : new Rational(-a._numerator, a._denominatorLessOne + 1);

    /// <summary>The exact product.</summary>
    public static Rational operator *(Rational a, Rational b) => a.IsSmall && b.IsSmall
        ? Reduce(a._numerator * b._numerator, (a._denominatorLessOne + 1) * (b._denominatorLessOne + 1))
        : Of(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    /// <summary>The exact quotient.</summary>
    /// <exception cref="DivideByZeroException"><paramref name="b"/> is zero.</exception>
    public static Rational operator /(Rational a, Rational b) => a.IsSmall && b.IsSmall
        ? Reduce(a._numerator * (b._denominatorLessOne + 1), (a._denominatorLessOne + 1) * b._numerator)
        : Of(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    /// <summary>A whole number as a rational.</summary>
    public static implicit operator Rational(long value) => new(value, 1);

    /// <summary>The greatest whole number not above this value.</summary>
    public BigInteger Floor()
    {
        if (_wide is null && _denominatorLessOne == 0) return _numerator;
        BigInteger quotient = BigInteger.DivRem(Numerator, Denominator, out BigInteger rest);
        return rest.Sign < 0 ? quotient - 1 : quotient;
    }

    /// <summary>A whole number near this value, by a named rounding.</summary>
    public BigInteger Round(Rounding rounding)
    {
        BigInteger floor = Floor();
        Rational rest = this - Of(floor, BigInteger.One);
        if (rest.Sign == 0) return floor;
        return rounding switch
        {
            Rounding.Down => floor,
            Rounding.Up => floor + 1,
            Rounding.Nearest => rest.CompareTo(Of(1, 2)) switch
            {
                < 0 => floor,
                > 0 => floor + 1,
                _ => Sign < 0 ? floor : floor + 1,
            },
            _ => throw new ArgumentOutOfRangeException(nameof(rounding), rounding, "Nearest, Down or Up."),
        };
    }

    /// <summary>An approximate view, for drawing and statistics only: within 1 part in 10^15 where a double can hold it.</summary>
    public double ToDouble()
    {
        if (_wide is null) return (double)_numerator / (double)(_denominatorLessOne + 1);
        // A quotient of about 64 bits is more than a double holds, so nothing that shows is lost.
        int shift = 64 + (int)(_wide.Denominator.GetBitLength() - BigInteger.Abs(_wide.Numerator).GetBitLength());
        BigInteger quotient = shift >= 0
            ? (_wide.Numerator << shift) / _wide.Denominator
            : _wide.Numerator / (_wide.Denominator << -shift);
        return Math.ScaleB((double)quotient, -shift);
    }

    /// <inheritdoc/>
    public int CompareTo(Rational other)
    {
        if (!IsSmall || !other.IsSmall)
            return (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);
        return _denominatorLessOne == other._denominatorLessOne
            ? _numerator.CompareTo(other._numerator)
            : (_numerator * (other._denominatorLessOne + 1)).CompareTo(other._numerator * (_denominatorLessOne + 1));
    }

    /// <inheritdoc/>
    public bool Equals(Rational other) =>
        _numerator == other._numerator && _denominatorLessOne == other._denominatorLessOne && Equals(_wide, other._wide);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Rational other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_numerator, _denominatorLessOne, _wide);

    /// <summary>Equality of value.</summary>
    public static bool operator ==(Rational a, Rational b) => a.Equals(b);

    /// <summary>Inequality of value.</summary>
    public static bool operator !=(Rational a, Rational b) => !a.Equals(b);

    /// <summary>Order of value.</summary>
    public static bool operator <(Rational a, Rational b) => a.CompareTo(b) < 0;

    /// <summary>Order of value.</summary>
    public static bool operator >(Rational a, Rational b) => a.CompareTo(b) > 0;

    /// <summary>Order of value.</summary>
    public static bool operator <=(Rational a, Rational b) => a.CompareTo(b) <= 0;

    /// <summary>Order of value.</summary>
    public static bool operator >=(Rational a, Rational b) => a.CompareTo(b) >= 0;

    /// <summary>The invariant form <c>n/d</c>, or <c>n</c> for a whole number.</summary>
    public override string ToString() => IsWhole ? Numerator.ToString() : $"{Numerator}/{Denominator}";
}
