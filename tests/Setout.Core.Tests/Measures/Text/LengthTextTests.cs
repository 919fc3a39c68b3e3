// Over 200 lines: five lists of rows of one grammar; a row belongs to one of them alone.
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using static Setout.Core.Tests.Measures.Text.LengthRow;

namespace Setout.Core.Tests.Measures.Text;

/// <summary>
/// Five lists: formats that are refused, texts that fail, rows that are only read, rows that are only written, and rows that go both
/// ways. Each list also proves that its rows belong there: a row that is only read must not be what its format writes, and so on.
/// </summary>
public sealed partial class LengthTextTests
{
    public static TheoryData<string, Func<LengthFormat>> RefusedFormats => new()
    {
        { "inches to thirds", () => LengthFormat.Inches(3) },
        { "inches to nothing", () => LengthFormat.Inches(0) },
        { "inches below nothing", () => LengthFormat.Inches(-16) },
        { "lowest number, a power of two in magnitude", () => LengthFormat.Inches(int.MinValue) },
        { "finer than 1/256", () => LengthFormat.Inches(512) },
        { "inches to 1/100", () => LengthFormat.Inches(100) },
        { "minus one decimal", () => LengthFormat.Millimetres(-1) },
        { "seven decimals", () => LengthFormat.Millimetres(7) },
    };

    public static TheoryData<LengthRow> ReadOnly =>
    [
        // The usual forms of the design, in inches.
        Inch(Part(93, 4), "23 1/4"),
        Inch(Part(93, 4), "23-1/4\""),
        Inch(Part(93, 4), "23-1/4 in"),
        Inch(Part(93, 4), "23 - 1/4 + 2/4"),
        Inch(Part(93, 4), "1' 11 1/4\""),
        Inch(Part(93, 4), "1'-11 1/4\""),
        Inch(Part(93, 4), "1'-11-1/4\""),
        Inch(Part(93, 4), "1' 11-1/4\""),
        Inch(Part(93, 4), "1'11 1/4\""),
        Inch(Part(93, 4), "1' 11 1/4"),
        Inch(Part(93, 4), "1 ft 11 1/4 in"),
        Inch(Part(93, 4), "1ft. 11 1/4in."),
        Inch(Part(93, 4), "1 foot 11 1/4 inches"),
        Inch(Part(93, 4), "23.25in"),
        Inch(Part(93, 4), "23.25 in."),
        Inch(Part(93, 4), "23.25"),
        Inch(Part(93, 4), "23,25"),
        Inch(Part(93, 4), "23.25 INCH"),
        Inch(Part(93, 4), "+23 1/4 in"),
        Inch(Part(125, 4), "96/3 - 3/4"),
        Inch(Part(23, 1), "23"),
        Inch(Part(24, 1), "2'"),
        Inch(Part(24, 1), "2 feet"),
        Inch(Part(99, 4), "2'-3/4\""),
        Inch(Part(21, 1), "1.5' 3\""),
        Inch(Part(3, 8), "3/8\""),
        Inch(Part(3, 8), ".375"),
        Inch(Part(3, 8), ",375"),
        Inch(Part(3, 8), "0,375"),
        Inch(Part(3, 8), "0.375 in"),
        Inch(Part(6, 8), "6/8"),

        // Signs of print: vulgar fractions, fraction slash, small digits, curly quotes, primes, other dashes and blanks.
        Inch(Part(93, 4), "23¼"),
        Inch(Part(93, 4), "23 ¼\""),
        Inch(Part(93, 4), "23-¼\""),
        Inch(Part(93, 4), "23 1⁄4"),
        Inch(Part(93, 4), "23 1∕4"),
        Inch(Part(369, 16), "23¹⁄₁₆"),
        Inch(Part(369, 16), "23 ¹⁄₁₆ in"),
        Inch(Part(369, 16), "23 ¹/₁₆"),
        Inch(Part(1, 7), "⅐"),
        Inch(Part(1, 9), "⅑"),
        Inch(Part(1, 10), "⅒"),
        Inch(Part(2, 3), "⅔"),
        Inch(Part(7, 8), "⅞"),
        Inch(Part(93, 4), "23 1/4”"),
        Inch(Part(93, 4), "1’ 11 1/4”"),
        Inch(Part(93, 4), "1‘ 11 1/4“"),
        Inch(Part(93, 4), "1′ 11 1/4″"),
        Inch(Part(93, 4), "1′ 11 1/4′′"),
        Inch(Part(93, 4), "1' 11 1/4''"),
        Inch(Part(93, 4), "1’ 11 1/4’’"),
        Inch(Part(93, 4), "23 1/4\u00A0in"),
        Inch(Part(93, 4), "23\u202F1/4\u2009in"),
        Inch(Part(93, 4), "\t 23   1 / 4 in  "),
        Inch(Part(93, 4), "23\u20111/4\""),
        Inch(Part(-93, 4), "\u221223 1/4"),
        Inch(Part(91, 4), "23 \u2013 1/4"),

        // Sums, brackets, signs, order of work.
        Inch(Part(-93, 4), "-23 1/4"),
        Inch(Part(-93, 4), "- 23-1/4\""),
        Inch(Part(-93, 4), "-1' 11 1/4\""),
        Inch(Part(91, 4), "23 - 1/4"),
        Inch(Part(91, 4), "23 - ¼"),
        Inch(Part(87, 4), "23-5/4\""),
        Inch(Part(371, 4), "96 - 3-1/4\""),
        Inch(Part(371, 4), "96-3-1/4\""),
        Inch(Part(371, 4), "96-3-¼\""),
        Inch(Part(111, 4), "23-1/4\" + 4-1/2\""),
        Inch(Part(371, 4), "96 - (3-1/4\")"),
        Inch(Part(21, 1), "2' - (3\")"),
        Inch(Part(21, 1), "(2') - 3\""),
        Inch(ExactLength.FromMillimetres(Rational.Of(6066, 10)).Inches, "2' - 3mm"),
        Inch(ExactLength.FromMillimetres(Rational.Of(6066, 10)).Inches, "2'-3mm"),
        Inch(Part(12, 1), "3' - 2'"),
        Inch(Part(34, 1), "36\" - 2"),
        Inch(Part(14, 1), "2 + 3 * 4"),
        Inch(Part(20, 1), "(2 + 3) * 4"),
        Inch(Part(20, 1), "((2 + 3)) · 4"),
        Inch(Part(6, 1), "-2 * -3"),
        Inch(Part(16, 1), "96/3/2"),
        Inch(Part(16, 1), "96 ÷ 3 ÷ 2"),
        Inch(Part(2, 5), "1/2.5"),
        Inch(128, "96 ÷ ¾"),
        Inch(128, "96 ÷ ³⁄₄"),
        Inch(128, "96 ÷ (3/4)"),
        Inch(8, "(96)/3/4"),
        Inch(Part(400, 13), "100 ÷ 3 1/4"),
        Inch(Part(93, 8), "23 1/4 / 2"),
        Inch(Part(25, 4), "(30 - 5 * 1) / 4"),
        Inch(Part(7, 8), "2 * 7/16\""),
        Inch(Part(0, 1), "0"),
        Inch(Part(0, 1), "-0"),
        Inch(Part(0, 1), "5 - 5"),
        Inch(Part(23, 1), "23 0/4"),

        // Thirds and sevenths stay exact.
        Inch(Part(1, 3), "1/3"),
        Inch(Part(1, 1), "1/3 + 1/3 + 1/3"),
        Inch(Part(1, 7), "1/7"),
        Inch(Part(100, 21), "(96 + 4) / 3 / 7"),
        Inch(Part(71, 3), "23 2/3 in"),

        // Metric, and each unit in the other's piece.
        Metric(590, "590mm"),
        Metric(590, "59 cm"),
        Metric(590, ".59 m"),
        Metric(590, "0,59m"),
        Metric(590, "590"),
        Metric(590, "590 MM"),
        Metric(Part(1181, 2), "590,5"),
        Metric(Part(2501, 2), "1250,5"),
        Metric(1250, "1250.000"),
        Metric(Part(2501, 2), "1250,500"),
        Metric(Part(5, 4), "1.250"),
        Metric(Part(101, 100), "1,01"),
        Metric(Part(125, 100), "1,2500"),
        Metric(Part(59055, 100), "23.25 in", LengthFormat.Millimetres(2)),
        Inch(ExactLength.FromMillimetres(590).Inches, "590 mm"),
        Metric(254, "10\""),
        Metric(Part(686, 10) + 10, "2' 7\" - 708.8 mm"),
        Metric(Part(1, 3), "1/3"),

        // The edges: 15 digits, 200 signs, 16 brackets, 10 km.
        Inch(Part(123_456_789_012_345, 1_000_000_000_000_000), ".123456789012345"),
        Inch(1, "000000000000001"),
        Inch(100, string.Join('+', Enumerable.Repeat("1", 100)) + " "),
        Inch(7, new string('(', 16) + "7" + new string(')', 16)),
        Metric(10_000_000, "10000000"),
        Metric(10_000_000, "10000 m"),
        Metric(-10_000_000, "-10000 m"),
        Metric(Part(1, 1), "999999999999999 / 999999999999999"),
    ];

    public static TheoryData<LengthRow> WriteOnly =>
    [
        // Rounded: what is shown is not the value, and the figure says so.
        Inch(Part(1, 3), "21/64 in"),
        Inch(Part(1, 3), "5/16 in", LengthFormat.Inches(16)),
        Inch(Part(1, 3), "0 in", LengthFormat.Inches(1)),
        Inch(Part(-1, 3), "0 in", LengthFormat.Inches(1)),
        Inch(Part(-1, 3), "-21/64 in"),
        Inch(Part(31, 32), "1 in", LengthFormat.Inches(16)),
        Inch(Part(-31, 32), "-1 in", LengthFormat.Inches(16)),
        Inch(Part(767, 32), "24 in", LengthFormat.Inches(16)),
        Inch(Part(1, 32), "1/16 in", LengthFormat.Inches(16)),
        Metric(Part(1, 3), "0.3 mm"),
        Metric(Part(2, 3), "0.67 mm", LengthFormat.Millimetres(2)),
        Metric(Part(99_996, 100_000), "1 mm", LengthFormat.Millimetres(3)),
        Metric(Part(-1, 20), "-0.1 mm"),
        Metric(Part(1, 2_000_000), "0.000001 mm", LengthFormat.Millimetres(6)),
        new LengthRow(ExactLength.FromMillimetres(590), "23 15/64 in", LengthUnit.Millimetre, LengthFormat.Inch),
        new LengthRow(ExactLength.FromInches(Part(93, 4)), "590.6 mm", LengthUnit.Inch, LengthFormat.Millimetre),

        // Exact, but the bare number is read in the other unit, or it is too long a text to be read.
        new LengthRow(ExactLength.FromInches(2), "2", LengthUnit.Millimetre, LengthFormat.Inch.Bare),
        new LengthRow(ExactLength.FromMillimetres(2), "2", LengthUnit.Inch, LengthFormat.Millimetre.Bare),
        Metric(10_000_001, "10000001 mm"),
        Inch(Rational.Of(long.MaxValue), "9223372036854775807 in"),
        Inch(Rational.Of(long.MaxValue) * Rational.Of(long.MaxValue), "85070591730234615847396907784232501249 in"),
    ];

    public static TheoryData<LengthRow> BothWays =>
    [
        Inch(Part(93, 4), "23 1/4 in"),
        Inch(Part(93, 4), "23 1/4", LengthFormat.Inch.Bare),
        Inch(Part(93, 4), "23 1/4 in", LengthFormat.Inches(4)),
        Inch(Part(-93, 4), "-23 1/4 in"),
        Inch(Part(1, 64), "1/64 in"),
        Inch(Part(-1, 64), "-1/64 in"),
        Inch(Part(1, 256), "1/256 in", LengthFormat.Inches(256)),
        Inch(Part(6, 8), "3/4 in"),
        Inch(Part(455, 32), "14 7/32 in"),
        Inch(Part(1663, 64), "25 63/64", LengthFormat.Inch.Bare),
        Inch(0, "0 in"),
        Inch(0, "0", LengthFormat.Inch.Bare),
        Inch(96, "96 in"),
        Inch(96, "96 in", LengthFormat.Inches(1)),
        Inch(-96, "-96", LengthFormat.Inches(1).Bare),
        Inch(393_700, "393700 in"),
        Metric(590, "590 mm"),
        Metric(590, "590", LengthFormat.Millimetre.Bare),
        Metric(Part(3612, 10), "361.2 mm"),
        Metric(Part(36_115_625, 100_000), "361.15625 mm", LengthFormat.Millimetres(6)),
        Metric(Part(-1, 10), "-0.1 mm"),
        Metric(Part(1, 1000), "0.001 mm", LengthFormat.Millimetres(3)),
        Metric(Part(1, 1_000_000), "0.000001 mm", LengthFormat.Millimetres(6)),
        Metric(Part(99, 10), "9.9", LengthFormat.Millimetres(6).Bare),
        Metric(10_000_000, "10000000 mm"),
        Metric(0, "0 mm", LengthFormat.Millimetres(0)),
        // The unit in the text wins over the unit of bare numbers.
        new LengthRow(ExactLength.FromInches(Part(93, 4)), "23 1/4 in", LengthUnit.Millimetre, LengthFormat.Inch),
        new LengthRow(ExactLength.FromMillimetres(590), "590 mm", LengthUnit.Inch, LengthFormat.Millimetre),
    ];

    [Theory]
    [MemberData(nameof(RefusedFormats))]
    public void Format_OutsideItsRange_IsRefused(string what, Func<LengthFormat> make)
    {
        Assert.NotEmpty(what);
        Assert.Throws<ArgumentOutOfRangeException>(make);
    }

    [Theory]
    [MemberData(nameof(ReadOnly))]
    public void Parse_RowThatIsOnlyRead_GivesTheExactValue(LengthRow row)
    {
        AssertReads(row);
        Assert.NotEqual(row.Text, row.Format.Text(row.Value));
    }

    [Theory]
    [MemberData(nameof(WriteOnly))]
    public void Text_RowThatIsOnlyWritten_IsAsListed(LengthRow row)
    {
        AssertWrites(row);
        ParseResult<ExactLength> read = LengthText.Parse(row.Text, row.Bare);
        Assert.False(read.IsRead && read.Value == row.Value, "this row goes both ways");
    }

    [Theory]
    [MemberData(nameof(BothWays))]
    public void ParseAndText_RowThatGoesBothWays_AreInverse(LengthRow row)
    {
        AssertReads(row);
        AssertWrites(row);
        Assert.True(row.Format.Format(row.Value).IsExact);
    }

    [Theory]
    [MemberData(nameof(Failing))]
    public void Parse_TextThatFails_SaysWhatAndWhere(string text, string code, int position, LengthUnit bare)
    {
        ParseResult<ExactLength> result = LengthText.Parse(text, bare);

        Assert.False(result.IsRead);
        TextFault fault = result.Fault!;
        Assert.Equal((code, position), (fault.Code, fault.Position));
        Assert.InRange(fault.Position, 0, text.Length);
        Assert.NotEmpty(fault.Words);
        Assert.NotEmpty(fault.Remedy);
        Assert.DoesNotContain(fault.Words, char.IsControl);
        Assert.Throws<InvalidOperationException>(() => result.Value);
    }

    [Theory]
    [InlineData("23-1/4", "23 1/4", "23 less 1/4")]
    [InlineData("23 -1/4", "23 1/4", "23 less 1/4")]
    [InlineData("23-¼", "23 ¼", "23 less ¼")]
    [InlineData("20+3-1/4\"", "3 1/4", "3 less 1/4")]
    [InlineData("1,250", "1.250", "1250")]
    [InlineData("2' - 3\"", "2' 3\"", "2' less 3\"")]
    [InlineData("24 x 36", "product", "two sides")]
    [InlineData("96 ÷ 3/4", "over the fraction 3/4", "over 3 and then over 4")]
    public void Parse_TwoReadings_NamesBoth(string text, string one, string other)
    {
        TextFault fault = LengthText.Parse(text, LengthUnit.Inch).Fault!;

        Assert.Equal("length.two-readings", fault.Code);
        Assert.Contains(one, fault.Words, StringComparison.Ordinal);
        Assert.Contains(other, fault.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("23-1/4", "23 1/4", "93/4")]
    [InlineData("23-1/4", "23 - 1/4", "91/4")]
    [InlineData("2' - 3\"", "2' 3\"", "27")]
    [InlineData("2' - 3\"", "2' - (3\")", "21")]
    [InlineData("1,250", "1.250", "5/4")]
    [InlineData("1,250", "1250", "1250")]
    public void Parse_RemedyOfTwoReadings_IsReadAsItSays(string text, string remedy, string inches)
    {
        Assert.Contains(remedy, LengthText.Parse(text, LengthUnit.Inch).Fault!.Remedy, StringComparison.Ordinal);
        Assert.Equal(inches, LengthText.Parse(remedy, LengthUnit.Inch).Value.Inches.ToString());
    }

    [Theory]
    [InlineData("\u0007", "U+0007")]
    [InlineData("\u202E", "U+202E")]
    [InlineData("😀", "😀")]
    public void Parse_SignThatWouldNotShow_IsNamedByItsNumber(string text, string shown) =>
        Assert.Contains($"'{shown}'", LengthText.Parse(text, LengthUnit.Inch).Fault!.Words, StringComparison.Ordinal);

    // Half of a pair cannot be stored in an attribute, so it is made here.
    [Fact]
    public void Parse_HalfOfASurrogatePair_IsNamedByItsNumber() =>
        Assert.Contains("'U+D83D'", LengthText.Parse("1 " + (char)0xD83D, LengthUnit.Inch).Fault!.Words, StringComparison.Ordinal);

    private static void AssertReads(LengthRow row)
    {
        ParseResult<ExactLength> read = LengthText.Parse(row.Text, row.Bare);
        Assert.True(read.IsRead, read.Fault?.ToString());
        Assert.Null(read.Fault);
        Assert.Equal(row.Value, read.Value);
    }

    private static void AssertWrites(LengthRow row)
    {
        Figure figure = row.Format.Format(row.Value);
        Assert.Equal(row.Text, figure.ToString());
        Assert.Equal(row.Text, row.Format.Text(row.Value));
        Assert.Equal(row.Format.ShowsUnit ? $"{figure.Number} {figure.Unit}" : figure.Number, row.Text);
    }
}
