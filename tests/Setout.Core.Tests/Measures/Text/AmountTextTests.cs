using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Core.Tests.Measures.Text;

public sealed class AmountTextTests
{
    /// <summary>A gallon is 231 cubic inches, an inch 25.4 mm: 231 x 16.387064 ml = 3785.411784 ml (arithmetic).</summary>
    [Theory]
    [InlineData("1 gallon", "3785.411784")]
    [InlineData("4 quarts", "3785.411784")]
    [InlineData("8 pints", "3785.411784")]
    [InlineData("128 fl oz", "3785.411784")]
    [InlineData("1/2 pint", "236.5882365")]
    [InlineData("1 1/2 pints", "709.7647095")]
    [InlineData("0.75 l", "750")]
    [InlineData("375ml", "375")]
    public void ReadVolume_UsualForms_AreRead(string text, string millilitres) =>
        Assert.Equal(Rational.Of(decimal.Parse(millilitres, System.Globalization.CultureInfo.InvariantCulture)), AmountText.ReadVolume(text).Value.Millilitres);

    [Theory]
    [InlineData("1")]
    [InlineData("quart")]
    [InlineData("0 l")]
    [InlineData("1/0 l")]
    [InlineData("-1 l")]
    [InlineData("1 imperial pint")]
    [InlineData("2000000 l")]
    [InlineData("")]
    public void ReadVolume_Else_SaysWhatToWrite(string text)
    {
        TextFault fault = AmountText.ReadVolume(text).Fault!;
        Assert.Equal("amount.wanted-volume", fault.Code);
        Assert.Contains("such as 0.75 l or 1 quart", fault.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("125 sq ft per quart", "125 sq ft per quart")]
    [InlineData("125 sq ft/quart", "125 sq ft per quart")]
    [InlineData("12 m2 per l", "12 m² per l")]
    [InlineData("12.5 m²/l", "12.5 m² per l")]
    [InlineData("5 m2 per 0.375 l", "5 m² per 0.375 l")]
    [InlineData("500 sq ft per gallon", "500 sq ft per gallon")]
    public void ReadCoverage_UsualForms_AreReadAndSaidBack(string text, string said) => Assert.Equal(said, AmountText.Of(AmountText.ReadCoverage(text).Value));

    [Theory]
    [InlineData("125 per quart", "amount.wanted-coverage")]
    [InlineData("125 sq ft", "amount.wanted-coverage")]
    [InlineData("0 sq ft per quart", "amount.wanted-coverage")]
    [InlineData("10 - 12 m2 per l", "amount.range")]
    [InlineData("10 to 12 m2 per l", "amount.range")]
    public void ReadCoverage_Else_SaysWhy(string text, string code) => Assert.Equal(code, AmountText.ReadCoverage(text).Fault!.Code);

    /// <summary>What is needed is said upwards, what a can holds as it stands on it.</summary>
    [Fact]
    public void Of_Amounts_AreRoundedForTheirUse()
    {
        Coverage covers = AmountText.ReadCoverage("125 sq ft per quart").Value;
        Assert.Equal("1.01 quarts", AmountText.Needed(covers.For(ExactArea.FromSquareFeet(Rational.Of(1251, 10)))));
        Assert.Equal("1 quart", AmountText.Needed(covers.For(ExactArea.FromSquareFeet(125))));
        Assert.Equal("0.375 l", AmountText.Of(AmountText.ReadVolume("0.375 l").Value));
        Assert.Equal(("1 sq ft", "0.09 m²"), (AmountText.Of(ExactArea.FromSquareFeet(1), LengthUnit.Inch), AmountText.Of(ExactArea.FromSquareFeet(1), LengthUnit.Millimetre)));
    }
}
