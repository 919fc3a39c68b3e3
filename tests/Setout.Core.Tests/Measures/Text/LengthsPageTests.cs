using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Testing;

namespace Setout.Core.Tests.Measures.Text;

/// <summary>The tables of <c>docs/lengths.md</c>, run row by row.</summary>
public sealed class LengthsPageTests
{
    private static readonly string[] s_lines = File.ReadAllLines(Repository.PathOf("docs/lengths.md"));

    public static TheoryData<string, string, string> Forms => [.. Rows("| form | you type | piece in | is read as |").Select(c => (c[1], c[2], c[3]))];

    public static TheoryData<string, string, string, string, string> TwoReadings =>
        [.. Rows("| you type | it could be | write then | or it could be | write then |").Select(c => (c[0], c[1], c[2], c[3], c[4]))];

    [Theory]
    [MemberData(nameof(Forms))]
    public void Form_OfThePage_IsReadAsThePageSays(string text, string piece, string value)
    {
        ParseResult<ExactLength> read = LengthText.Parse(Code(text), piece == "mm" ? LengthUnit.Millimetre : LengthUnit.Inch);
        Assert.True(read.IsRead, read.Fault?.ToString());
        Assert.Equal(Value(value), read.Value);
    }

    [Theory]
    [MemberData(nameof(TwoReadings))]
    public void TwoReadings_OfThePage_AreRefusedAndTheWaysOutAreRead(string text, string one, string writeOne, string other, string writeOther)
    {
        Assert.Equal("length.two-readings", LengthText.Parse(Code(text), LengthUnit.Inch).Fault?.Code);
        Assert.Equal(Value(one), LengthText.Parse(Code(writeOne), LengthUnit.Inch).Value);
        Assert.Equal(Value(other), LengthText.Parse(Code(writeOther), LengthUnit.Inch).Value);
    }

    [Fact]
    public void Page_Limits_AreThoseOfTheCode()
    {
        Assert.Contains($"| signs in a text | {LengthText.LongestText} | |", s_lines);
        Assert.Contains($"| brackets inside each other | {LengthText.DeepestBracket} | |", s_lines);
        Assert.Equal(Length.FromMillimetres(10 * 1000 * 1000), LengthText.Longest);
        Assert.Contains(s_lines, line => line.StartsWith("| longest length | 10 km |", StringComparison.Ordinal));
        Assert.True(LengthText.Parse(new string('1', 15) + "/" + new string('1', 15), LengthUnit.Inch).IsRead);
        Assert.Contains(s_lines, line => line.StartsWith("| digits in a number | 15 |", StringComparison.Ordinal));
    }

    private static IEnumerable<string[]> Rows(string heading)
    {
        int start = Array.IndexOf(s_lines, heading);
        Assert.True(start >= 0, $"no table '{heading}'");
        string[] rows = [.. s_lines.Skip(start + 2).TakeWhile(line => line.StartsWith('|'))];
        Assert.NotEmpty(rows);
        return rows.Select(row => row.Trim('|').Split('|').Select(cell => cell.Trim()).ToArray());
    }

    private static string Code(string cell) => cell.StartsWith('`') && cell.EndsWith('`') ? cell[1..^1] : throw new FormatException(cell);

    /// <summary>Decimals or a plain fraction and a unit: read by other means than those under test.</summary>
    private static ExactLength Value(string cell)
    {
        string[] parts = cell.Split(' ');
        string[] fraction = parts[0].Split('/');
        Rational number = fraction.Select(n => Rational.Of(decimal.Parse(n, CultureInfo.InvariantCulture))).Aggregate((a, b) => a / b);
        return parts[1] == "in" ? ExactLength.FromInches(number) : parts[1] == "mm" ? ExactLength.FromMillimetres(number) : throw new FormatException(cell);
    }
}
