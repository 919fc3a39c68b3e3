using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut.Joinery;
using Setout.Testing;

namespace Setout.Core.Tests.SettingOut;

/// <summary>No screw comes out of what it goes into, and each bites enough. The limits are common practice, no source.</summary>
public sealed class FasteningTests
{
    private static ExactLength In(long numerator, long denominator = 1) => ExactLength.FromInches(Rational.Of(numerator, denominator));

    [Fact]
    public void IntoFace_AnyTwoThicknesses_StopsShortOfTheFarFaceAndBites() =>
        Gen.Select(Gen.Int[4, 60], Gen.Int[6, 60], Gen.Bool).Holds((through, into, metric) =>
        {
            (ExactLength a, ExactLength b) = (ExactLength.FromMillimetres(through), ExactLength.FromMillimetres(into));
            if (Fastening.IntoFace(metric ? LengthUnit.Millimetre : LengthUnit.Inch, a, b) is not { } screw) return;
            Assert.True(screw <= a + b - Fastening.ShortOfFace);
            Assert.True(screw >= a + Fastening.LeastBiteInFace);
        });

    [Fact]
    public void IntoFace_JustEnoughRoom_TakesItAndOneTickLessDoesNot()
    {
        // 1 in through 15/32: the front must be 1 - 15/32 + 1/8 = 21/32.
        Assert.Equal(In(1), Fastening.IntoFace(LengthUnit.Inch, In(15, 32), In(21, 32)));
        Assert.Equal(In(3, 4), Fastening.IntoFace(LengthUnit.Inch, In(15, 32), In(21, 32) - Length.FromTicks(1)));
    }

    [Fact]
    public void IntoFace_TooThinForAnyScrew_SaysNone() => Assert.Null(Fastening.IntoFace(LengthUnit.Millimetre, ExactLength.FromMillimetres(15), ExactLength.FromMillimetres(7)));

    [Theory]
    [InlineData(LengthUnit.Inch, "23/32", "1 1/2 in")]
    [InlineData(LengthUnit.Inch, "7/32", "1 in")]
    [InlineData(LengthUnit.Millimetre, "17.7 mm", "40 mm")]
    public void IntoEdge_ThroughAPanel_BitesThreeQuarters(LengthUnit unit, string through, string screw) =>
        Assert.Equal(LengthText.Parse(screw, unit).Value, Fastening.IntoEdge(unit, LengthText.Parse(through, LengthUnit.Inch).Value));
}
