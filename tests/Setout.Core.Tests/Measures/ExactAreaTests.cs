using System.Numerics;
using CsCheck;
using Setout.Core.Measures;
using Setout.Testing;

namespace Setout.Core.Tests.Measures;

public sealed class ExactAreaTests
{
    private static readonly Gen<Rational> s_number = Gen.Select(Gen.Long[-1_000_000, 1_000_000], Gen.Long[1, 4096], (n, d) => Rational.Of(n, d));

    /// <summary>Against big integers, without a tolerance.</summary>
    [Fact]
    public void Of_AnyTwoLengths_IsTheirProductExactly() => Gen.Select(s_number, s_number).Holds((a, b) =>
    {
        var area = ExactArea.Of(ExactLength.FromMillimetres(a), ExactLength.FromMillimetres(b));
        BigInteger above = area.SquareMillimetres.Numerator * a.Denominator * b.Denominator, below = a.Numerator * b.Numerator * area.SquareMillimetres.Denominator;
        Assert.Equal(below, above);
        Assert.Equal(area, ExactArea.Of(ExactLength.FromMillimetres(b), ExactLength.FromMillimetres(a)));
    });

    [Fact]
    public void Sum_OfAnyThreeAreas_DoesNotDependOnTheirOrder() => Gen.Select(s_number, s_number, s_number).Holds((a, b, c) =>
    {
        (ExactArea x, ExactArea y, ExactArea z) = (ExactArea.FromSquareMillimetres(a), ExactArea.FromSquareMillimetres(b), ExactArea.FromSquareMillimetres(c));
        Assert.Equal(x + y + z, z + (y + x));
        Assert.Equal((x + y) * 3, (x * 3) + (y * 3));
        Assert.Equal(a.CompareTo(b), x.CompareTo(y));
    });

    /// <summary>A sheet of 96 x 48 in is 32 square feet: 8 ft times 4 ft. A square foot is 0.09290304 m2 (NIST Handbook 44, appendix C, from memory; and 0.3048 squared).</summary>
    [Fact]
    public void SquareFeet_OfASheet_AreThirtyTwo()
    {
        var sheet = ExactArea.Of(ExactLength.FromInches(96), ExactLength.FromInches(48));
        Assert.Equal(Rational.Of(32), sheet.SquareFeet);
        Assert.Equal(Rational.Of(32) * Rational.Of(9_290_304, 100_000_000), sheet.SquareMetres);
        Assert.Equal(sheet, ExactArea.FromSquareFeet(32));
        Assert.Equal(sheet, ExactArea.FromSquareMetres(sheet.SquareMetres));
        Assert.Equal(Rational.Of(32), sheet / ExactArea.FromSquareFeet(1));
        Assert.Equal((0, 1), (ExactArea.Zero.Sign, sheet.Sign));
    }
}
