using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Workbench.SetOut;

namespace Setout.Tests.Browser;

/// <summary>What stands beside the figure of a sum.</summary>
public class ExactTextTests
{
    [Theory]
    // 20 39/64 is what is shown of 2617/127: by hand 2617 / 127 = 20.60629...
    [InlineData(2617, 127, "\u2248 20.6063")]
    [InlineData(24, 1, "")]
    [InlineData(33, 16, "2.0625")]
    [InlineData(2703125, 1000000, "2.703125")]
    [InlineData(-1, 3, "\u2248 -0.3333")]
    public void Beside_IsADecimalThatEndsOrSaysThatItIsNear(long numerator, long denominator, string words) =>
        Assert.Equal(words, ExactText.Beside(ExactLength.FromInches(Rational.Of(numerator, denominator)), LengthUnit.Inch));
}
