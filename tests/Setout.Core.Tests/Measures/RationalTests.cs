// Over 200 lines: the laws of one number type, side by side, against the same in plain fractions.
using System.Numerics;
using CsCheck;
using Setout.Core.Measures;
using Setout.Testing;

namespace Setout.Core.Tests.Measures;

/// <summary>The exact fraction against plain fractions of big integers, small enough to be seen to be right.</summary>
public sealed class RationalTests
{
    /// <summary>The reference: never reduced, no special cases.</summary>
    private readonly record struct Plain(BigInteger Above, BigInteger Below)
    {
        public static Plain Of(Rational r) => new(r.Numerator, r.Denominator);

        public static Plain operator +(Plain a, Plain b) => new((a.Above * b.Below) + (b.Above * a.Below), a.Below * b.Below);

        public static Plain operator -(Plain a, Plain b) => new((a.Above * b.Below) - (b.Above * a.Below), a.Below * b.Below);

        public static Plain operator *(Plain a, Plain b) => new(a.Above * b.Above, a.Below * b.Below);

        public static Plain operator /(Plain a, Plain b) => new(a.Above * b.Below, a.Below * b.Above);

        public bool Is(Rational r) => Above * r.Denominator == r.Numerator * Below;

        public int OrderTo(Plain b) => (Above * b.Below).CompareTo(b.Above * Below);
    }

    // Small ones, ones at the edges of 62 and 64 bits, and ones that have outgrown 128 bits.
    private static readonly Gen<long> s_edge = Gen.OneOf(
        Gen.Long[-1000, 1000], Gen.Long, Gen.OneOf(0L, 1, -1, long.MaxValue, long.MinValue, 1L << 62, -(1L << 62), (1L << 62) - 1, 1L << 61));

    private static readonly Gen<Rational> s_narrow = Gen.Select(s_edge, s_edge.Where(d => d != 0), Rational.Of);

    private static readonly Gen<Rational> s_any = Gen.OneOf(
        s_narrow,
        Gen.Select(Gen.Long[-1_000_000, 1_000_000], Gen.Long[1, 1_000_000], Rational.Of),
        Gen.Select(s_narrow, s_narrow, s_narrow, (a, b, c) => a * b * c),
        Gen.Select(s_narrow, s_narrow.Where(d => d.Sign != 0), s_narrow, (a, b, c) => (a / b) + c));

    [Fact]
    public void Default_IsZero()
    {
        Assert.Equal(Rational.Zero, default);
        Assert.Equal(BigInteger.One, default(Rational).Denominator);
        Assert.Equal("0", default(Rational).ToString());
        Assert.True(default(Rational).IsWhole);
    }

    [Theory]
    [InlineData(2, 4, "1/2")]
    [InlineData(-2, 4, "-1/2")]
    [InlineData(2, -4, "-1/2")]
    [InlineData(-2, -4, "1/2")]
    [InlineData(0, -7, "0")]
    [InlineData(14, 7, "2")]
    [InlineData(long.MinValue, -1, "9223372036854775808")]
    [InlineData(long.MinValue, long.MinValue, "1")]
    public void Of_AnySigns_IsInLowestTermsAboveAPositiveDenominator(long above, long below, string text) =>
        Assert.Equal(text, Rational.Of(above, below).ToString());

    [Fact]
    public void Of_ZeroDenominator_Throws()
    {
        Assert.Throws<DivideByZeroException>(() => Rational.Of(1, 0));
        Assert.Throws<DivideByZeroException>(() => Rational.Of(BigInteger.One, BigInteger.Zero));
        Assert.Throws<DivideByZeroException>(() => Rational.One / Rational.Zero);
        Assert.Throws<DivideByZeroException>(() => Rational.Of(long.MaxValue) / Rational.Zero);
    }

    [Fact]
    public void Arithmetic_AnyTwo_AgreesWithPlainFractions() => Gen.Select(s_any, s_any).Holds((a, b) =>
    {
        Plain x = Plain.Of(a), y = Plain.Of(b);
        Assert.True((x + y).Is(a + b));
        Assert.True((x - y).Is(a - b));
        Assert.True((x * y).Is(a * b));
        if (b.Sign != 0) Assert.True((x / y).Is(a / b));
        Assert.Equal(Math.Sign(x.OrderTo(y)), Math.Sign(a.CompareTo(b)));
        AssertLowestTerms(a + b);
        AssertLowestTerms(a * b);
    });

    [Fact]
    public void FieldLaws_AnyThree_Hold() => Gen.Select(s_any, s_any, s_any).Holds((a, b, c) =>
    {
        Assert.Equal(a + b, b + a);
        Assert.Equal(a * b, b * a);
        Assert.Equal((a + b) + c, a + (b + c));
        Assert.Equal((a * b) * c, a * (b * c));
        Assert.Equal(a * (b + c), (a * b) + (a * c));
        Assert.Equal(a, a + Rational.Zero);
        Assert.Equal(a, a * Rational.One);
        Assert.Equal(Rational.Zero, a - a);
        Assert.Equal(Rational.Zero, a + -a);
        if (a.Sign != 0) Assert.Equal(Rational.One, a / a);
        if (b.Sign != 0) Assert.Equal(a, a / b * b);
    });

    [Fact]
    public void Order_AnyThree_IsTotalAndKeptBySums() => Gen.Select(s_any, s_any, s_any).Holds((a, b, c) =>
    {
        Assert.Equal(a.CompareTo(b), -b.CompareTo(a));
        Assert.Equal(a == b, a.CompareTo(b) == 0);
        Assert.Equal(a < b, a.CompareTo(b) < 0);
        Assert.Equal(a >= b, !(a < b));
        Assert.Equal(a <= b, !(a > b));
        if (a < b) Assert.True(a + c < b + c);
        if (a < b && c.Sign > 0) Assert.True(a * c < b * c);
        if (a < b && b < c) Assert.True(a < c);
    });

    [Fact]
    public void Equality_SameValueByTwoWays_HasOneForm() => Gen.Select(s_any, s_any).Holds((a, b) =>
    {
        Rational there = a + b, back = there - b;
        Assert.Equal(a, back);
        Assert.Equal(a.GetHashCode(), back.GetHashCode());
        Assert.Equal(a.IsWide, back.IsWide);
        Assert.Equal(a.ToString(), back.ToString());
    });

    // The short way (128 bits) and the long way (big integers) must leave the same form, or equal values would not be equal.
    [Theory]
    [InlineData((1L << 62) - 1, 1)]
    [InlineData(-(1L << 62) + 1, 1)]
    [InlineData((1L << 62) - 1, (1L << 62) - 3)]
    [InlineData(3, (1L << 62) - 1)]
    [InlineData(1L << 61, 3)]
    public void Equality_ProductAndSumAtTheEdgeOfTheShortWay_AreThoseOfBigIntegers(long above, long below)
    {
        var value = Rational.Of(above, below);
        Assert.Equal(Rational.Of(BigInteger.Pow(above, 2), BigInteger.Pow(below, 2)), value * value);
        Rational other = Rational.Of((1L << 62) - 5, (1L << 62) - 57);
        Assert.Equal(Rational.Of((value.Numerator * other.Denominator) + (other.Numerator * value.Denominator), value.Denominator * other.Denominator), value + other);
        Assert.Equal(value, value * value / value);
        Assert.Equal(value, value + other - other);
    }

    [Fact]
    public void Growth_Beyond128BitsAndBack_LosesNothing()
    {
        var big = Rational.Of(long.MaxValue, 3);
        Rational grown = big * big * big;
        Assert.True(grown.IsWide);
        Assert.Equal(BigInteger.Pow(long.MaxValue, 3), grown.Numerator);
        Assert.Equal(27, grown.Denominator);

        Rational back = grown / big / big;
        Assert.False(back.IsWide);
        Assert.Equal(big, back);
    }

    [Fact]
    public void Round_AnyValue_KeepsTheBoundsOfItsMode() => s_any.Holds(a =>
    {
        Rational down = Whole(a.Round(Rounding.Down)), up = Whole(a.Round(Rounding.Up)), nearest = Whole(a.Round(Rounding.Nearest));
        Assert.True(down <= a && a <= up);
        Assert.True(a - down < 1 && up - a < 1);
        Assert.Equal(a.IsWhole, down == up);
        Assert.True(nearest == down || nearest == up);
        Rational off = nearest - a;
        var half = Rational.Of(1, 2);
        Assert.True(-half <= off && off <= half);
        // Half a step goes away from zero, below zero as above it.
        Assert.Equal(-nearest, Whole((-a).Round(Rounding.Nearest)));
        Assert.Equal(-down, Whole((-a).Round(Rounding.Up)));
    });

    [Theory]
    [InlineData(1, 2, 1, 0, 1)]
    [InlineData(-1, 2, -1, -1, 0)]
    [InlineData(3, 2, 2, 1, 2)]
    [InlineData(-3, 2, -2, -2, -1)]
    [InlineData(5, 2, 3, 2, 3)]
    [InlineData(-7, 3, -2, -3, -2)]
    [InlineData(-8, 3, -3, -3, -2)]
    [InlineData(7, 1, 7, 7, 7)]
    public void Round_TableOfHalves_IsAsListed(long above, long below, int nearest, int down, int up)
    {
        var value = Rational.Of(above, below);
        Assert.Equal(nearest, value.Round(Rounding.Nearest));
        Assert.Equal(down, value.Round(Rounding.Down));
        Assert.Equal(up, value.Round(Rounding.Up));
        Assert.Equal(down, value.Floor());
    }

    [Fact]
    public void Round_UnknownMode_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Rational.Of(1, 2).Round((Rounding)7));

    [Fact]
    public void OfDecimal_AnyDecimal_RoundTrips() => Gen.Decimal.Holds(d =>
    {
        var exact = Rational.Of(d);
        Assert.Equal(d, (decimal)exact.Numerator / (decimal)exact.Denominator);
        Assert.Equal(Math.Sign(d), exact.Sign);
    });

    [Theory]
    [InlineData("0.1", "1/10")]
    [InlineData("-0.1", "-1/10")]
    [InlineData("1.250", "5/4")]
    [InlineData("-0.0", "0")]
    [InlineData("79228162514264337593543950335", "79228162514264337593543950335")]
    [InlineData("-79228162514264337593543950335", "-79228162514264337593543950335")]
    [InlineData("0.0000000000000000000000000001", "1/10000000000000000000000000000")]
    public void OfDecimal_Table_IsAsListed(string number, string fraction) =>
        Assert.Equal(fraction, Rational.Of(decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture)).ToString());

    [Fact]
    public void OfDouble_AnyFiniteDouble_RoundTrips() => Gen.Double.Where(double.IsFinite).Holds(d =>
    {
        var exact = Rational.OfDouble(d);
        Assert.True(BigInteger.PopCount(exact.Denominator) == 1, "a power of two");
        if (Math.Abs(d) > 1e-300) Assert.InRange(exact.ToDouble() / d, 1 - 1e-15, 1 + 1e-15);
    });

    [Fact]
    public void ToDouble_AnyValue_IsWithinAPartIn10To15() => s_any.Holds(a =>
    {
        // The difference is taken in exact fractions, so the test does not lean on what it tests.
        Rational off = Rational.OfDouble(a.ToDouble()) - a;
        Assert.True((off.Sign < 0 ? -off : off) * 1_000_000_000_000_000 <= (a.Sign < 0 ? -a : a));
    });

    private static Rational Whole(BigInteger value) => Rational.Of(value, BigInteger.One);

    private static void AssertLowestTerms(Rational a)
    {
        Assert.True(a.Denominator.Sign > 0);
        Assert.Equal(BigInteger.One, BigInteger.GreatestCommonDivisor(a.Numerator, a.Denominator));
    }
}
