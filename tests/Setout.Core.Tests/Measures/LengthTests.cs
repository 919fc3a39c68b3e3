// Over 200 lines: the laws of one number type, side by side.
using System.Numerics;
using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Testing;

namespace Setout.Core.Tests.Measures;

public sealed class LengthTests
{
    private static readonly Gen<Length> s_any = Gen.OneOf(
        Gen.Long[-2_000_000, 2_000_000], Gen.Long[-2_000_000_000_000, 2_000_000_000_000], Gen.Long,
        Gen.OneOf(0L, 1, -1, long.MaxValue, long.MinValue)).Select(Length.FromTicks);

    private static readonly Gen<Length> s_shop = Gen.Long[-5_000_000_000, 5_000_000_000].Select(Length.FromTicks);

    private static readonly Gen<ExactLength> s_exact =
        Gen.Select(Gen.Long[-5_000_000_000, 5_000_000_000], Gen.Long[1, 5000], (n, d) => ExactLength.FromTicks(Rational.Of(n, d)));

    private static readonly Gen<Grid> s_grid = Gen.OneOf(
        Gen.OneOf(Grid.Sixteenth, Grid.ThirtySecond, Grid.SixtyFourth, Grid.HalfMillimetre, Grid.Millimetre),
        Gen.Long[1, 10_000_000].Select(t => Grid.FromStep(Length.FromTicks(t))));

    private static readonly Gen<Rounding> s_rounding = Gen.OneOf(Rounding.Nearest, Rounding.Down, Rounding.Up);

    // Source (from memory): NIST Handbook 44, Appendix C, and the international yard and pound agreement of 1959:
    // 1 yd = 0.9144 m exactly, so 1 ft = 304.8 mm and 1 in = 25.4 mm exactly.
    [Theory]
    [InlineData("1 in", "25.4 mm")]
    [InlineData("1 ft", "304.8 mm")]
    [InlineData("3 ft", "914.4 mm")]
    [InlineData("1 ft", "12 in")]
    [InlineData("1 m", "1000 mm")]
    [InlineData("1 cm", "10 mm")]
    [InlineData("5280 ft", "1609344 mm")]
    [InlineData("1/64 in", "0.396875 mm")]
    public void Units_OfTheInternationalAgreement_AreExact(string one, string same) =>
        Assert.Equal(LengthText.Parse(one, LengthUnit.Inch).Value, LengthText.Parse(same, LengthUnit.Inch).Value);

    [Fact]
    public void TicksPerInch_AreTwentyFivePointFourMillimetres()
    {
        Assert.Equal(25.4m, (decimal)Length.TicksPerInch / Length.TicksPerMillimetre);
        Assert.Equal(Length.FromInches(5), Length.FromMillimetres(127));
        Assert.Equal(25.4, Length.FromInches(1).ApproximateMillimetres);
    }

    // What the tick was chosen for: 1/256 in, 0.0005 in and 0.001 mm fall on it; thirds do not.
    [Fact]
    public void Tick_FinestSteps_AreWhole()
    {
        Assert.Equal(15_875, Length.FromInches(1, 256).Ticks);
        Assert.Equal(2_032, Length.FromInches(5, 10_000).Ticks);
        Assert.Equal(160, ExactLength.FromMillimetres(Rational.Of(0.001m)).ToLength().Ticks);
        Assert.Throws<ArgumentException>(() => Length.FromInches(1, 3));
        Assert.False(ExactLength.FromInches(Rational.Of(1, 3)).IsWholeTicks);
    }

    [Fact]
    public void Default_IsZero()
    {
        Assert.Equal(Length.Zero, default);
        Assert.Equal(ExactLength.Zero, default);
        Assert.Equal(ExactLength.Zero, Length.Zero.ToExact());
        Assert.Equal("0 mm", default(Length).ToString());
    }

    [Fact]
    public void Arithmetic_AnyTwo_IsThatOfIntegersOrOverflows() => Gen.Select(s_any, s_any, Gen.Long).Holds((a, b, n) =>
    {
        AssertSame((BigInteger)a.Ticks + b.Ticks, () => (a + b).Ticks);
        AssertSame((BigInteger)a.Ticks - b.Ticks, () => (a - b).Ticks);
        AssertSame((BigInteger)a.Ticks * n, () => (a * n).Ticks);
        AssertSame((BigInteger)a.Ticks * n, () => (n * a).Ticks);
        AssertSame(-(BigInteger)a.Ticks, () => (-a).Ticks);
        AssertSame(BigInteger.Abs(a.Ticks), () => a.Abs().Ticks);
        Assert.Equal((BigInteger)a.Ticks * b.Ticks, (BigInteger)(a * b).SquareTicks);
    });

    [Fact]
    public void Overflow_AtEitherEnd_Throws()
    {
        Length most = Length.FromTicks(long.MaxValue), least = Length.FromTicks(long.MinValue), tick = Length.FromTicks(1);
        Assert.Throws<OverflowException>(() => most + tick);
        Assert.Throws<OverflowException>(() => least - tick);
        Assert.Throws<OverflowException>(() => -least);
        Assert.Throws<OverflowException>(() => least.Abs());
        Assert.Throws<OverflowException>(() => most * 2);
        Assert.Throws<OverflowException>(() => Length.FromMillimetres(long.MaxValue));
        Assert.Throws<OverflowException>(() => Length.FromInches(long.MaxValue));
        Assert.Throws<OverflowException>(() => ExactLength.FromInches(long.MaxValue).ToNearestTick());
        Assert.Throws<OverflowException>(() => ExactLength.FromInches(long.MaxValue).RoundTo(Grid.Sixteenth, Rounding.Down));
        Assert.Throws<OverflowException>(() => (most.ToExact() + tick).ToLength());
    }

    [Fact]
    public void Order_AnyTwo_IsThatOfTicks() => Gen.Select(s_any, s_any).Holds((a, b) =>
    {
        int order = a.Ticks.CompareTo(b.Ticks);
        Assert.Equal(order, a.CompareTo(b));
        Assert.Equal((order < 0, order > 0, order <= 0, order >= 0, order == 0), (a < b, (a > b), a <= b, a >= b, a == b));
        ExactLength x = a, y = b;
        Assert.Equal(order, x.CompareTo(y));
        Assert.Equal((order < 0, order > 0, order <= 0, order >= 0, order == 0), (x < y, (x > y), x <= y, x >= y, x == y));
        Assert.Equal(order <= 0 ? (a, b) : (b, a), (Length.Min(a, b), Length.Max(a, b)));
        Assert.Equal(order <= 0 ? (x, y) : (y, x), (ExactLength.Min(x, y), ExactLength.Max(x, y)));
    });

    [Fact]
    public void DivideBy_AnyTwo_CountAndRestMakeTheWhole() => Gen.Select(s_shop, s_shop.Where(d => d.Sign != 0)).Holds((a, d) =>
    {
        (long count, Length left) = a.DivideBy(d);
        Assert.Equal(a, (d * count) + left);
        Assert.True(left.Abs() < d.Abs());
        Assert.True(left.Sign == 0 || left.Sign == a.Sign);
    });

    [Fact]
    public void DivideBy_Zero_Throws() => Assert.Throws<DivideByZeroException>(() => Length.FromInches(1).DivideBy(Length.Zero));

    [Fact]
    public void SplitInto_AnyCountAndGrid_SumsExactlyAndStaysFair() =>
        Gen.Select(s_shop, Gen.Int[1, 40], s_grid).Holds((whole, count, grid) =>
        {
            IReadOnlyList<Length> parts = whole.SplitInto(count, grid);

            Assert.Equal(count, parts.Count);
            Assert.Equal(whole, parts.Aggregate((a, b) => a + b));
            for (int i = 0; i < count - 1; i++) Assert.True(grid.Holds(parts[i]), "on the grid but the last");

            // Without what is off the grid, all parts are on it and no two differ by more than a step.
            Length rest = whole.DivideBy(grid.Step).Left;
            Length[] even = [.. parts];
            even[^1] -= rest;
            Assert.True(grid.Holds(even[^1]));
            Assert.True(even.Max() - even.Min() <= grid.Step);
            for (int i = 1; i < count; i++) Assert.True(even[i - 1].Abs() >= even[i].Abs(), "the earlier ones are the longer");
            Assert.Equal((-whole).SplitInto(count, grid).Select(p => -p), parts);
        });

    [Fact]
    public void SplitInto_ThreeShelves_GivesTheSixteenthsByHand()
    {
        // 31 5/16 in = 501 sixteenths = 3 x 167; 31 3/8 in = 502 sixteenths, so one more on the first.
        Length each = Length.FromInches(167, 16);
        Assert.Equal([each, each, each], Length.FromInches(501, 16).SplitInto(3, Grid.Sixteenth));
        Assert.Equal([Length.FromInches(168, 16), each, each], Length.FromInches(502, 16).SplitInto(3, Grid.Sixteenth));
        // 1000 mm in three on whole millimetres, then with 0.3 mm that only the last can take.
        Assert.Equal(["334 mm", "333 mm", "333 mm"], Length.FromMillimetres(1000).SplitInto(3, Grid.Millimetre).Select(p => p.ToString()));
        Length odd = Length.FromMillimetres(1000) + Length.FromTicks(48_000);
        Assert.Equal(["334 mm", "333 mm", "333.3 mm"], odd.SplitInto(3, Grid.Millimetre).Select(p => p.ToString()));
    }

    [Fact]
    public void SplitInto_NoParts_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.FromInches(1).SplitInto(0, Grid.Sixteenth));
        Assert.Throws<DivideByZeroException>(() => Length.FromInches(1).SplitInto(2, default));
    }

    [Fact]
    public void RoundTo_AnyValue_ValueAndResidueMakeTheExactLength() => Gen.Select(s_exact, s_grid, s_rounding).Holds((exact, grid, mode) =>
    {
        Rounded rounded = exact.RoundTo(grid, mode);

        Assert.Equal(exact, rounded.Value + rounded.Residue);
        Assert.True(grid.Holds(rounded.Value));
        Assert.True(rounded.Residue.Abs() < grid.Step);
        Assert.Equal(grid.Holds(exact), rounded.IsExact);
        if (mode == Rounding.Down) Assert.True(rounded.Residue.Sign >= 0);
        if (mode == Rounding.Up) Assert.True(rounded.Residue.Sign <= 0);
        if (mode == Rounding.Nearest) Assert.True(rounded.Residue.Abs() * 2 <= grid.Step);
        Assert.Equal(rounded.Value, rounded.Value.ToExact().RoundTo(grid, mode).Value);
    });

    [Fact]
    public void ToNearestTick_AnyValue_IsWithinHalfATick() => s_exact.Holds(exact =>
        Assert.True((exact - exact.ToNearestTick()).Abs().Ticks <= Rational.Of(1, 2)));

    [Fact]
    public void ToMillimetres_AnyLength_RoundTripsExactly() => s_any.Holds(length =>
    {
        decimal mm = length.ToMillimetres();
        Assert.Equal(length, ExactLength.FromMillimetres(Rational.Of(mm)).ToLength());
        Assert.Equal(length.ToExact().Millimetres, Rational.Of(mm));
        Assert.True(mm.Scale <= 8);
    });

    [Fact]
    public void ToMillimetres_OneTick_HasEightDecimals() => Assert.Equal(0.00000625m, Length.FromTicks(1).ToMillimetres());

    [Fact]
    public void ToString_AnyLengthThatIsRead_IsReadBack() => s_shop.Holds(length =>
        Assert.Equal(length.ToExact(), LengthText.Parse(length.ToString(), LengthUnit.Inch).Value));

    [Fact]
    public void ExactLength_ThreeThirds_AreTheWhole()
    {
        ExactLength whole = Length.FromInches(96);
        Assert.Equal(whole, (whole / 7 * 3) + (whole / 7 * 4));
        Assert.Equal(Rational.Of(7, 3), whole / (whole * Rational.Of(3, 7)));
        Assert.Throws<DivideByZeroException>(() => whole / 0);
        Assert.Throws<DivideByZeroException>(() => whole / ExactLength.Zero);
        Assert.Throws<ArgumentException>(() => (Length.FromInches(1, 256).ToExact() / 7).ToLength());
        Assert.Equal("25.4 mm", (whole / 96).ToLength().ToString());
        Assert.Equal("127/15 mm", ExactLength.FromInches(Rational.Of(1, 3)).ToString());
    }

    [Fact]
    public void Length_SharesAndRatios_AreExact() => Gen.Select(s_any, s_any.Where(b => b.Sign != 0), Gen.Long[1, 1000]).Holds((a, b, n) =>
    {
        Assert.Equal(a.ToExact(), a / n * n);
        Assert.Equal(a.ToExact(), b.ToExact() * (a / b));
        Assert.Throws<DivideByZeroException>(() => a / Length.Zero);
        Assert.Throws<DivideByZeroException>(() => a / 0);
    });

    private static void AssertSame(BigInteger expected, Func<long> actual)
    {
        if (expected >= long.MinValue && expected <= long.MaxValue) Assert.Equal(expected, actual());
        else Assert.Throws<OverflowException>(() => actual());
    }
}
