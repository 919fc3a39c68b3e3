using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Testing;

namespace Setout.Core.Tests.Measures.Text;

public sealed class NamedLengthTests
{
    private static readonly Gen<string> s_soup = Gen.OneOf("1", "2", "3", "16", "25", "0.5", " ", "/", "+", "-", "*", "÷", "(", ")", "'", "\"", "½", "in", "mm", "rest", "2 parts")
        .Array[1, 8].Select(string.Concat);

    [Theory]
    [InlineData("450", LengthUnit.Millimetre, "450 mm")]
    [InlineData("23 1/4", LengthUnit.Inch, "23 1/4 in")]
    [InlineData("23-1/4\"", LengthUnit.Millimetre, "23-1/4\"")]
    [InlineData("17½", LengthUnit.Inch, "17½ in")]
    [InlineData("-3/8", LengthUnit.Inch, "-3/8 in")]
    [InlineData("1/3", LengthUnit.Millimetre, "1/3 mm")]
    [InlineData("1200/3 - 18", LengthUnit.Millimetre, "382 mm")]
    [InlineData("36\" - 2", LengthUnit.Inch, "34 in")]
    [InlineData("36\" - 50.8", LengthUnit.Millimetre, "34 in")]
    [InlineData("590mm", LengthUnit.Inch, "590mm")]
    [InlineData("1' 11 1/4\"", LengthUnit.Millimetre, "1' 11 1/4\"")]
    [InlineData("0", LengthUnit.Millimetre, "0")]
    [InlineData("rest", LengthUnit.Millimetre, "rest")]
    [InlineData("2 parts", LengthUnit.Millimetre, "2 parts")]
    [InlineData("4:5:6", LengthUnit.Millimetre, "4:5:6")]
    [InlineData("", LengthUnit.Millimetre, "")]
    public void Of_AText_NamesItsUnit(string typed, LengthUnit bare, string named) => Assert.Equal(named, NamedLength.Of(typed, bare));

    [Theory]
    [InlineData("80 1/2", LengthUnit.Millimetre, true)]
    [InlineData("17½", LengthUnit.Millimetre, true)]
    [InlineData("3/8", LengthUnit.Millimetre, true)]
    [InlineData("96/3 - 3/4", LengthUnit.Millimetre, true)]
    [InlineData("1200/2", LengthUnit.Millimetre, false)]
    [InlineData("1/3", LengthUnit.Millimetre, false)]
    [InlineData("450.5", LengthUnit.Millimetre, false)]
    [InlineData("80 1/2 in", LengthUnit.Millimetre, false)]
    [InlineData("450", LengthUnit.Inch, true)]
    [InlineData("450 mm", LengthUnit.Inch, false)]
    [InlineData("96", LengthUnit.Inch, false)]
    [InlineData("rest", LengthUnit.Millimetre, false)]
    public void MayBeOther_OfAFigureThatLooksLikeTheOtherUnit_IsAsked(string typed, LengthUnit bare, bool isAsked) => Assert.Equal(isAsked, NamedLength.MayBeOther(typed, bare));

    /// <summary>The hazard of two units: what was typed by one must be cut as that by the other.</summary>
    [Fact]
    public void Of_AnyText_SaysTheSameToEverybody() => Gen.Select(s_soup, Gen.Enum<LengthUnit>()).Holds((text, bare) =>
    {
        string named = NamedLength.Of(text, bare);
        ParseResult<ExactLength> meant = LengthText.Parse(text, bare);
        foreach (LengthUnit unit in Enum.GetValues<LengthUnit>())
        {
            ParseResult<ExactLength> read = LengthText.Parse(named, unit);
            Assert.Equal(meant.IsRead, read.IsRead);
            if (meant.IsRead) Assert.Equal(meant.Value, read.Value);
            Assert.Equal(named, NamedLength.Of(named, unit));
        }
    }, iter: 20_000);
}
