using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Testing;

namespace Setout.Core.Tests.Fit;

/// <summary>Slips of the pen, of the unit and of the eye, each way. Expected within 1/32 in either way, read with a tape of 1/32.</summary>
public sealed class SlipTests
{
    private static Suspicion? Slip(string expected, string value, LengthUnit unit, OriginKind origin = OriginKind.Given, Scatter scatter = Scatter.Placed)
    {
        static ExactLength Of(string text, LengthUnit unit) => LengthText.Parse(text, unit).Value;
        ExactLength best = Of(expected, unit), half = ExactLength.FromInches(Rational.Of(1, 32));
        var worked = new Worked(new Quantity(new("A.width"), "opening A, clear width", new Stated(best, new(origin, "")), Scatter: scatter), best, best, null);
        return ReadingChecks.Slip(worked, Of(value, unit), Spread.Of(best, new Cause("c", CauseKind.Placing, "placing", -half, half, Shape.Even)), Length.FromInches(1, 32), unit);
    }

    [Theory]
    // 18 mm is 0.709 in, 0.010 in off.
    [InlineData("23/32", "18", SlipKind.Unit, "18 mm? 18 in was read where 23/32 in was expected")]
    [InlineData("19 9/16", "497", SlipKind.Unit, "497 mm? 497 in was read where 19 9/16 in was expected")]
    [InlineData("19 9/16", "195.6", SlipKind.Tenfold, "19.56 in? 195 19/32 in was read where 19 9/16 in was expected")]
    [InlineData("19 9/16", "1.95", SlipKind.Tenfold, "19 1/2 in? 1 61/64 in was read where 19 9/16 in was expected")]
    // 9/32 read as 9/16, and 9/16 read as 9/32; 11/64 as 11/32.
    [InlineData("19 9/32", "19 9/16", SlipKind.Fraction, "19 9/32 in? 19 9/16 in was read where 19 9/32 in was expected")]
    [InlineData("19 9/16", "19 9/32", SlipKind.Fraction, "19 9/16 in? 19 9/32 in was read where 19 9/16 in was expected")]
    [InlineData("19 11/64", "19 11/32", SlipKind.Fraction, "19 11/64 in? 19 11/32 in was read where 19 11/64 in was expected")]
    [InlineData("30 1/4", "31 1/4", SlipKind.Burnt, "30 1/4 in? 31 1/4 in was read where 30 1/4 in was expected")]
    [InlineData("30 1/4", "29 9/32", SlipKind.Burnt, "30 9/32 in? 29 9/32 in was read where 30 1/4 in was expected")]
    [InlineData("47 3/8", "74 3/8", SlipKind.Digits, "47 3/8 in? 74 3/8 in was read where 47 3/8 in was expected")]
    public void Inches_Slipped_SayWhatItLikelyWas(string expected, string value, SlipKind kind, string words)
    {
        Suspicion? slip = Slip(expected, value, LengthUnit.Inch);
        Assert.NotNull(slip);
        Assert.Equal((kind, words), (slip.Kind, slip.Words(LengthUnit.Inch)));
    }

    [Theory]
    // 0.71 in is 18.034 mm.
    [InlineData("18", "0.71", SlipKind.Unit, "0.71 in? 0.7 mm was read where 18 mm was expected")]
    [InlineData("560", "22.0625", SlipKind.Unit, "22 1/16 in? 22.1 mm was read where 560 mm was expected")]
    [InlineData("560", "56", SlipKind.Tenfold, "560 mm? 56 mm was read where 560 mm was expected")]
    [InlineData("560", "5605", SlipKind.Tenfold, "560.5 mm? 5605 mm was read where 560 mm was expected")]
    [InlineData("560", "661", SlipKind.Burnt, "561 mm? 661 mm was read where 560 mm was expected")]
    [InlineData("560", "460", SlipKind.Burnt, "560 mm? 460 mm was read where 560 mm was expected")]
    [InlineData("473", "743.5", SlipKind.Digits, "473.5 mm? 743.5 mm was read where 473 mm was expected")]
    public void Millimetres_Slipped_SayWhatItLikelyWas(string expected, string value, SlipKind kind, string words)
    {
        Suspicion? slip = Slip(expected, value, LengthUnit.Millimetre);
        Assert.NotNull(slip);
        Assert.Equal((kind, words), (slip.Kind, slip.Words(LengthUnit.Millimetre)));
    }

    [Theory]
    [InlineData("20", "20")]
    [InlineData("20", "20 1/16")] // at the limit: 1/32 and 1/32
    [InlineData("20", "20 3/32")] // off by a little: half of that fraction would do too, which proves nothing
    [InlineData("20", "25")]
    [InlineData("20", "21 1/8")] // a burnt inch and more
    [InlineData("44", "45 3/4")]
    public void Value_NoSlipExplains_IsNotSuspected(string expected, string value) => Assert.Null(Slip(expected, value, LengthUnit.Inch));

    [Fact]
    public void Slip_OfWhatIsPicked_IsNotSuspected()
    {
        Assert.NotNull(Slip("500", "400", LengthUnit.Millimetre));
        Assert.Null(Slip("500", "400", LengthUnit.Millimetre, OriginKind.Choice, Scatter.None));
        Assert.NotNull(Slip("500", "400", LengthUnit.Millimetre, OriginKind.Given, Scatter.None));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-3")]
    public void Value_OfNothingOrLess_IsNotSuspected(string value) => Assert.Null(ReadingChecks.Slip(
        new(new Quantity(new("A.width"), "", new Sum()), Described.Of("20"), Described.Of("20"), null), value == "0" ? ExactLength.Zero : -Described.Of("3"), null, Length.Zero, LengthUnit.Inch));
}
