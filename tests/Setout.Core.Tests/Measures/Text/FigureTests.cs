using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Core.Tests.Measures.Text;

/// <summary>Figures that lie between two marks of a rule say on which side of the one that is told. Source: arithmetic, 25.4 mm to the inch.</summary>
public class FigureTests
{
    [Theory]
    // 0.20472 in are 13.1 of 1/64, 0.69685 in are 44.6.
    [InlineData("5.2 mm", "just over 13/64 in", "5.2 mm")]
    [InlineData("17.7 mm", "just under 45/64 in", "17.7 mm")]
    [InlineData("45/64 in", "45/64 in", "just under 17.9 mm")]
    [InlineData("0.703 in", "just under 45/64 in", "just under 17.9 mm")]
    [InlineData("23 1/4 in", "23 1/4 in", "just under 590.6 mm")]
    [InlineData("25.4 mm", "1 in", "25.4 mm")]
    public void ByTheRule_IsTheMark_AndOnWhichSideOfItTheValueLies(string value, string inch, string millimetre)
    {
        ExactLength length = LengthText.Parse(value, LengthUnit.Inch).Value;
        Assert.Equal((inch, millimetre), (LengthFormat.Inch.Format(length).ByTheRule, LengthFormat.For(LengthUnit.Millimetre).Format(length).ByTheRule));
    }
}
