using System.Numerics;
using CsCheck;
using Setout.Core.Measures;
using Setout.Testing;

namespace Setout.Core.Tests.Measures;

public sealed class AreaGridMoneyTests
{
    private static readonly Gen<Area> s_area = Gen.Select(Gen.Long, Gen.Long, (a, b) => Length.FromTicks(a) * Length.FromTicks(b));

    [Fact]
    public void Area_Arithmetic_AgreesWithBigIntegersOrOverflows() => Gen.Select(s_area, s_area, Gen.Long).Holds((a, b, n) =>
    {
        BigInteger x = a.SquareTicks, y = b.SquareTicks;
        AssertSame(x + y, () => a + b);
        AssertSame(x - y, () => a - b);
        AssertSame(x * n, () => a * n);
        int order = x.CompareTo(y);
        Assert.Equal(Math.Sign(order), Math.Sign(a.CompareTo(b)));
        Assert.Equal((order < 0, order <= 0, order >= 0, order == 0), (a < b, a <= b, a >= b, a == b));
        Assert.Equal(order > 0, a > b);
    });

    [Fact]
    public void Area_CeilingOver_IsTheFewestThatCover() => Gen.Select(Gen.Long[-10_000, 10_000], Gen.Long[1, 50]).Holds((a, b) =>
    {
        long count = Area.FromSquareTicks(a).CeilingOver(Area.FromSquareTicks(b));
        Assert.True(count * b >= a && (count - 1) * b < a);
    });

    [Fact]
    public void Area_CeilingOver_ZeroOrLess_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Area.FromSquareTicks(1).CeilingOver(Area.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => Area.FromSquareTicks(1).CeilingOver(Area.FromSquareTicks(-1)));
        Assert.Throws<OverflowException>(() => Area.FromSquareTicks(Int128.MaxValue).CeilingOver(Area.FromSquareTicks(1)));
        Assert.Equal(1, Area.FromSquareTicks(Int128.MaxValue).CeilingOver(Area.FromSquareTicks(Int128.MaxValue)));
    }

    [Fact]
    public void Area_OfAFullSheet_IsThirtyTwoSquareFeet()
    {
        Area sheet = Length.FromInches(48) * Length.FromInches(96);
        Assert.Equal(32, sheet.ApproximateSquareFeet, 12);
        Assert.Equal(48 * 96 * 25.4 * 25.4, sheet.ApproximateSquareMillimetres, 6);
        Assert.Equal(0.5, (Length.FromInches(48) * Length.FromInches(48)).RatioTo(sheet));
        Assert.Equal("6 mm2", (Length.FromMillimetres(2) * Length.FromMillimetres(3)).ToString());
        Assert.Equal(Area.Zero, default);
    }

    [Theory]
    [InlineData(1, 16, 16, "1/16 in")]
    [InlineData(1, 64, 64, "1/64 in")]
    [InlineData(1, 1, 1, "1 in")]
    [InlineData(1, 1000, 1000, "1/1000 in")]
    [InlineData(3, 16, null, "4.7625 mm")]
    // 0.2, 0.1 and 0.05 mm go into the inch as well (127, 254 and 508 times), but nobody calls them parts of an inch.
    [InlineData(1, 127, null, "0.2 mm")]
    [InlineData(1, 254, null, "0.1 mm")]
    [InlineData(1, 508, null, "0.05 mm")]
    public void Grid_InchDenominator_IsForPartsOfTheInchOnly(long above, long below, int? denominator, string text)
    {
        var grid = Grid.FromStep(Length.FromInches(above, below));
        Assert.Equal(denominator, grid.InchDenominator);
        Assert.Equal(text, grid.ToString());
    }

    [Fact]
    public void Grid_NamedSteps_AreTheirSizes()
    {
        Assert.Equal(["1/16 in", "1/32 in", "1/64 in", "0.5 mm", "1 mm"],
            new[] { Grid.Sixteenth, Grid.ThirtySecond, Grid.SixtyFourth, Grid.HalfMillimetre, Grid.Millimetre }.Select(g => g.ToString()));
        Assert.True(Grid.Sixteenth.Holds(Length.FromInches(93, 4)));
        Assert.False(Grid.Sixteenth.Holds(Length.FromInches(1, 32)));
        Assert.False(Grid.Sixteenth.Holds(ExactLength.FromInches(Rational.Of(1, 3))));
    }

    [Fact]
    public void Grid_NoStep_IsRefusedAndTheDefaultIsNoGrid()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Grid.FromStep(Length.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => Grid.FromStep(Length.FromTicks(-1)));
        Assert.Throws<DivideByZeroException>(() => default(Grid).Holds(Length.Zero));
        Assert.Throws<DivideByZeroException>(() => ExactLength.Zero.RoundTo(default, Rounding.Nearest));
        Assert.Null(default(Grid).InchDenominator);
        Assert.Equal("0 mm", default(Grid).ToString());
    }

    [Fact]
    public void Money_Arithmetic_IsThatOfDecimals() => Gen.Select(Gen.Int[-1_000_000, 1_000_000], Gen.Int[-1_000_000, 1_000_000], Gen.Int[-100, 100]).Holds((a, b, n) =>
    {
        Money x = new(a / 100m), y = new(b / 100m);
        Assert.Equal((a + b) / 100m, (x + y).Amount);
        Assert.Equal((a - b) / 100m, (x - y).Amount);
        Assert.Equal(a * n / 100m, (x * n).Amount);
        Assert.Equal((a < b, a <= b, a >= b), (x < y, x <= y, x >= y));
        Assert.Equal(a > b, x > y);
        Assert.Equal(Math.Sign(a.CompareTo(b)), Math.Sign(x.CompareTo(y)));
    });

    [Fact]
    public void Money_Text_HasTwoDecimals()
    {
        Assert.Equal("0.00", Money.Zero.ToString());
        Assert.Equal("-12.50", new Money(-12.5m).ToString());
        Assert.Throws<OverflowException>(() => new Money(decimal.MaxValue) + new Money(decimal.MaxValue));
    }

    private static void AssertSame(BigInteger expected, Func<Area> actual)
    {
        if (expected >= (BigInteger)Int128.MinValue && expected <= (BigInteger)Int128.MaxValue) Assert.Equal(expected, (BigInteger)actual().SquareTicks);
        else Assert.Throws<OverflowException>(() => actual());
    }
}
