using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Testing;

namespace Setout.Core.Tests.Measures.Text;

public sealed class LengthTextProperties
{
    private static readonly Gen<LengthFormat> s_format = Gen.Select(
        Gen.OneOf(
            Gen.OneOf(1, 2, 4, 8, 16, 32, 64, 128, 256).Select(LengthFormat.Inches),
            Gen.Int[0, 6].Select(LengthFormat.Millimetres)),
        Gen.Bool, (format, unit) => unit ? format : format.Bare);

    private static readonly Gen<ExactLength> s_length = Gen.Select(
        Gen.Long[-1_500_000_000_000, 1_500_000_000_000], Gen.Long[1, 1000], (n, d) => ExactLength.FromTicks(Rational.Of(n, d)));

    // Every sign that means something, and a few that do not.
    private static readonly Gen<string> s_soup = Gen.OneOf(
            "1", "2", "3", "12", "16", "250", "0", ".", ",", " ", "  ", "/", "⁄", "+", "-", "−", "*", "x", "×", "÷", "(", ")", "'", "''", "\"", "′", "″",
            "¼", "⅞", "¹", "₄", "in", "ft.", "mm", "cm", "m", "\u00A0", "e", "#", "😀")
        .Array[0, 14].Select(string.Concat);

    [Fact]
    public void Format_AnyLength_TextIsReadAsTheValueLessItsResidue() => Gen.Select(s_length, s_format).Holds((length, format) =>
    {
        Figure figure = format.Format(length);
        ExactLength read = LengthText.Parse(figure.ToString(), format.Unit).Value;

        Assert.Equal(length - figure.Residue, read);
        Rational step = Rational.Of(1, format.Fineness);
        Rational off = format.Unit == LengthUnit.Inch ? figure.Residue.Inches : figure.Residue.Millimetres;
        Assert.True((off.Sign < 0 ? -off : off) * 2 <= step);
        Assert.Equal(figure.Residue.Sign == 0, figure.IsExact);
    });

    [Fact]
    public void Format_AnyLength_FractionIsReducedAndLessThanOne() => Gen.Select(s_length, s_format).Holds((length, format) =>
    {
        Figure figure = format.Format(length);
        Assert.Equal(format.ShowsUnit, figure.Unit.Length > 0);
        if (!figure.HasFraction) return;
        Assert.InRange(figure.Numerator, 1, figure.Denominator - 1);
        Assert.True(figure.Numerator % 2 == 1, "over a power of two only odd numbers are in lowest terms");
        Assert.NotEqual("0", figure.Whole);
    });

    [Fact]
    public void Format_AnyLength_IsTheNegativeOfItsOpposite() => Gen.Select(s_length, s_format).Holds((length, format) =>
        Assert.Equal(format.Text(length).TrimStart('-'), format.Text(-length).TrimStart('-')));

    [Fact]
    public void Parse_AnySoupOfSigns_ReadsOrFaultsWithAPlaceInTheText() => s_soup.Holds(text =>
    {
        foreach (LengthUnit bare in Enum.GetValues<LengthUnit>())
        {
            ParseResult<ExactLength> result = LengthText.Parse(text, bare);
            Assert.NotEqual(result.IsRead, result.Fault is not null);
            if (result.Fault is { } fault) Assert.InRange(fault.Position, 0, text.Length);
            else Assert.True(result.Value.Abs() <= LengthText.Longest);
        }
    }, iter: 20_000);

    [Fact]
    public void Parse_AnyString_NeverThrows() => Gen.String.Holds(text =>
    {
        ParseResult<ExactLength> result = LengthText.Parse(text, LengthUnit.Inch);
        Assert.NotEqual(result.IsRead, result.Fault is not null);
    }, iter: 5_000);

    [Fact]
    public void Parse_SumOfTwo_IsTheSumOfTheParts() => Gen.Select(s_length, s_length).Holds((a, b) =>
    {
        string one = LengthFormat.Inch.Text(a), other = LengthFormat.Millimetre.Text(b);
        ExactLength x = LengthText.Parse(one, LengthUnit.Inch).Value, y = LengthText.Parse(other, LengthUnit.Inch).Value;
        Assert.Equal(x + y, LengthText.Parse($"{one} + ({other})", LengthUnit.Inch).Value);
        Assert.Equal(x - y, LengthText.Parse($"{one} - ({other})", LengthUnit.Inch).Value);
        Assert.Equal(x / 3, LengthText.Parse($"({one}) / 3", LengthUnit.Inch).Value);
    });

    [Fact]
    public void Parse_BareNumber_IsInTheUnitGiven() => s_length.Holds(length =>
    {
        string text = LengthFormat.Inches(256).Bare.Text(length);
        Rational inches = LengthText.Parse(text, LengthUnit.Inch).Value.Inches;
        Assert.Equal(inches, LengthText.Parse(text, LengthUnit.Millimetre).Value.Millimetres);
    });

    [Fact]
    public void ParseResult_Default_IsNotRead()
    {
        Assert.False(default(ParseResult<ExactLength>).IsRead);
        Assert.Throws<InvalidOperationException>(() => default(ParseResult<ExactLength>).Value);
    }

    [Theory]
    [InlineData(LengthUnit.Inch, 64, true)]
    [InlineData(LengthUnit.Millimetre, 10, true)]
    public void For_Unit_IsItsUsualFormat(LengthUnit unit, int fineness, bool shown)
    {
        LengthFormat format = LengthFormat.For(unit);
        Assert.Equal((unit, fineness, shown), (format.Unit, format.Fineness, format.ShowsUnit));
        Assert.False(format.Bare.ShowsUnit);
        Assert.Equal(format, format.Bare with { ShowsUnit = true });
    }

    [Fact]
    public void Figure_FractionAlone_HasNoWholeToStackBeside()
    {
        Figure figure = LengthFormat.Inch.Format(ExactLength.FromInches(Rational.Of(-3, 4)));
        Assert.Equal((true, "", 3, 4, "in"), (figure.IsNegative, figure.Whole, figure.Numerator, figure.Denominator, figure.Unit));
        Assert.Equal("-3/4", figure.Number);
        Assert.Equal("-3/4 in", figure.ToString());
    }
}
