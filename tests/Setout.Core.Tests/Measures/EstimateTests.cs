using System.Numerics;
using CsCheck;
using Setout.Core.Measures;
using Setout.Testing;

namespace Setout.Core.Tests.Measures;

/// <summary>Bounds are tested in exact fractions: the true result of any values within the bounds must lie within the new bound.</summary>
public sealed class EstimateTests
{
    private static readonly Gen<double> s_value = Gen.OneOf(Gen.Double[-1000, 1000], Gen.Double[-1e-6, 1e-6], Gen.Double[-1e12, 1e12], Gen.OneOf(0.0, 1.0, 0.1, -25.4));

    private static readonly Gen<double> s_error = Gen.OneOf(Gen.Double[0, 1], Gen.Double[0, 1e-9], Gen.Double[0, 1e6], Gen.OneOf(0.0, 1e-300));

    // A value, its bound, and where in the bound the truth lies: from one end (-1) to the other (1).
    private static readonly Gen<(Estimate Estimate, Rational Truth)> s_estimate =
        Gen.Select(s_value, s_error, Gen.OneOf(Gen.Long[-1000, 1000], Gen.OneOf(-1000L, 1000L)), (value, error, at) =>
            (new Estimate(value, error), Rational.OfDouble(value) + (Rational.OfDouble(error) * Rational.Of(at, 1000))));

    [Fact]
    public void Arithmetic_AnyTruthWithinTheBounds_StaysWithinTheNewBound() => Gen.Select(s_estimate, s_estimate).Holds((a, b) =>
    {
        AssertCovers(a.Estimate + b.Estimate, a.Truth + b.Truth);
        AssertCovers(a.Estimate - b.Estimate, a.Truth - b.Truth);
        AssertCovers(a.Estimate * b.Estimate, a.Truth * b.Truth);
    }, iter: 20_000);

    [Fact]
    public void Arithmetic_GrowsTheBoundByLittle() => Gen.Select(Gen.Double[-1000, 1000], Gen.Double[-1000, 1000]).Holds((x, y) =>
    {
        Estimate sum = new Estimate(x, 0.25) + new Estimate(y, 0.5);
        Assert.InRange(sum.Error, 0.75, 0.75 + 1e-9);
    });

    [Fact]
    public void Of_AnyDecimalConstant_CoversIt() => Gen.Int[-100_000, 100_000].Holds(n =>
        AssertCovers(Estimate.Of(n / 1000.0), Rational.Of(n, 1000)));

    [Fact]
    public void Constructor_NoNumberOrNegativeBound_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Estimate(double.NaN, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Estimate(1, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Estimate(1, -1e-9));
    }

    [Fact]
    public void Covers_TheEndsAndBeyond_IsAsSaid()
    {
        var estimate = new Estimate(10, 0.5);
        Assert.True(estimate.Covers(9.5) && estimate.Covers(10.5));
        Assert.False(estimate.Covers(9.49) || estimate.Covers(10.51));
    }

    [Fact]
    public void Arithmetic_BeyondDoubles_HasABoundWithoutEnd() =>
        Assert.Equal(double.PositiveInfinity, (Estimate.Of(1e300) * Estimate.Of(1e300)).Error);

    [Fact]
    public void Diagonal_AnyMultipleOfThreeFourFive_CoversItAndLandsOnIt() =>
        Gen.Select(Gen.Long[1, 2_000_000_000], Gen.OneOf(Grid.FromStep(Length.FromTicks(1)), Grid.SixtyFourth), Gen.OneOf(Rounding.Nearest, Rounding.Down, Rounding.Up))
            .Holds((n, grid, mode) =>
            {
                Length side = grid.Step * (1 + (n % 100_000));
                var diagonal = ApproximateLength.Diagonal(side * 3, side * 4);
                AssertCovers(diagonal.Millimetres, (side * 5).ToExact().Millimetres);
                Assert.Equal(side * 5, diagonal.RoundTo(grid, mode));
            });

    [Fact]
    public void Diagonal_AnySides_CoversTheRootTakenInBigIntegers() => Gen.Select(Gen.Long[0, 5_000_000_000], Gen.Long[0, 5_000_000_000]).Holds((a, b) =>
    {
        Estimate diagonal = ApproximateLength.Diagonal(Length.FromTicks(a), Length.FromTicks(b)).Millimetres;

        // The root lies from low to low + 1, in units of a tick over 2^40.
        BigInteger low = Root((((BigInteger)a * a) + ((BigInteger)b * b)) << 80);
        Rational unit = Rational.Of(BigInteger.One, (BigInteger)Length.TicksPerMillimetre << 40);
        AssertCovers(diagonal, Rational.Of(low, BigInteger.One) * unit);
        AssertCovers(diagonal, Rational.Of(low + 1, BigInteger.One) * unit);
    });

    [Fact]
    public void Diagonal_OfAFractionThatHasOutgrown128Bits_IsStillCovered()
    {
        var odd = Rational.Of(1_000_003, 999_983);
        Rational third = odd * odd * odd * odd * odd * odd * odd * odd;
        Assert.True(third.IsWide);
        var side = ExactLength.FromMillimetres(third * 300);
        AssertCovers(ApproximateLength.Diagonal(side * 3, side * 4).Millimetres, side.Millimetres * 5);
    }

    [Fact]
    public void RoundTo_CoarseBound_IsNotPulledToAStep()
    {
        var rough = new ApproximateLength(new Estimate(10.3, 1));
        Assert.Equal(Length.FromMillimetres(11), rough.RoundTo(Grid.Millimetre, Rounding.Up));
        Assert.Equal(Length.FromMillimetres(10), rough.RoundTo(Grid.Millimetre, Rounding.Down));
        Assert.Equal(Length.FromMillimetres(10), rough.RoundTo(Grid.Millimetre, Rounding.Nearest));
    }

    // Source (from memory): the international yard and pound agreement of 1959, 1 lb = 0.453 592 37 kg exactly.
    [Fact]
    public void Mass_OnePound_IsTheAgreedKilograms()
    {
        var pound = new Mass(Estimate.Of(0.45359237));
        Assert.Equal(1, pound.Pounds, 12);
        Assert.Equal(2, (pound + pound).Pounds, 12);
    }

    [Fact]
    public void Angle_HoldsItsDegrees() => Assert.Equal(90, new Angle(new Estimate(90, 0.1)).Degrees.Value);

    private static BigInteger Root(BigInteger square)
    {
        if (square.IsZero) return square;
        BigInteger guess = BigInteger.One << (int)((square.GetBitLength() + 1) / 2);
        while (true)
        {
            BigInteger next = (guess + (square / guess)) >> 1;
            if (next >= guess) return guess;
            guess = next;
        }
    }

    private static void AssertCovers(Estimate estimate, Rational truth)
    {
        if (double.IsInfinity(estimate.Error)) return;
        Rational off = Rational.OfDouble(estimate.Value) - truth;
        Assert.True((off.Sign < 0 ? -off : off) <= Rational.OfDouble(estimate.Error), $"{estimate} does not cover {truth}");
    }
}
