using System.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Texts;

/// <summary>Texts made to hurt are refused early, by counts, with one clear finding.</summary>
public class HostileTextTests
{
    private const string Head = "setout: 1\nname: Box\nunit: in\n";

    [Fact]
    public void Read_NestedInBracketsAHundredThousandDeep_StopsAtTheLimit() => Refused("text.too-deep", "a: " + new string('[', 100_000), new(Depth: 12), 1, 4 + 12);

    [Fact]
    public void Read_NestedInBracesAHundredThousandDeep_StopsAtTheLimit() =>
        Refused("text.too-deep", string.Concat(Enumerable.Repeat("{a: ", 100_000)), new(Depth: 12), 1, null);

    [Fact]
    public void Read_NestedInBlocksAHundredThousandDeep_StopsAtTheLimit() => Refused("text.too-deep", string.Concat(Enumerable.Repeat("- ", 100_000)) + "a\n", new(Depth: 12), 1, 1 + (2 * 13));

    [Fact]
    public void Read_NestedByIndentation_StopsAtTheLimit() =>
        Refused("text.too-deep", string.Concat(Enumerable.Range(0, 300).Select(i => new string(' ', i) + "a:\n")), new(Depth: 12), 13, null);

    [Fact]
    public void Read_ReferencesThatExplode_StopsAtTheFirstAnchor()
    {
        var text = new StringBuilder("a0: &a0 lol\n");
        for (int i = 1; i < 40; i++) text.Append($"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 9))}]\n");
        Refused("text.anchor", text.ToString(), TextLimits.Usual, 1, 5);
    }

    [Fact]
    public void Read_MoreBytesThanTheLimit_IsRefused()
    {
        Refused("text.too-large", Head + new string('#', 50_000_000), TextLimits.Usual, 1, 1);
        Refused("text.too-large", "é" + new string('a', 8), new(Bytes: 9), 1, 1);
        Assert.NotEqual("text.too-large", YamlTree.Read("é" + new string('a', 7), new(Bytes: 9)).Findings.FirstOrDefault()?.Code);
    }

    [Fact]
    public void Read_AMillionKeys_StopsAtTheLimitOfValues()
    {
        var text = new StringBuilder(Head);
        for (int i = 0; i < 1_000_000; i++) text.Append('k').Append(i).Append(":\n");
        Refused("text.too-large", text.ToString(), TextLimits.Usual, 1, 1);
        // The outermost map is one, and so is each key and each value: the 101st is the 51st key.
        Refused("text.too-many-nodes", text.ToString(), new(Bytes: int.MaxValue, Nodes: 101), 51, null);
    }

    [Fact]
    public void Read_WrongEverywhere_TellsAsManyAsTheLimitAndSaysSo()
    {
        string text = Head + string.Concat(Enumerable.Range(0, 5000).Select(i => $"key{i}: 1\n"));
        TextRead<Piece> read = PieceText.Read(text, new(Findings: 7));
        Assert.Equal(8, read.Findings.Length);
        Assert.Equal("text.too-many-findings", read.Findings[^1].Code);
        read = PieceText.Read(Head + string.Concat(Enumerable.Repeat("name: x\n", 5000)), new(Findings: 7));
        Assert.InRange(read.Findings.Length, 7, 8);
    }

    [Fact]
    public void Read_VeryLongValuesAndKeys_AreNamedShort()
    {
        string huge = new('x', 1_000_000);
        foreach (string text in new[] { $"{Head}{huge[..900]}: 1\n", $"{Head}parts: [{{part: {huge}, of: a, length: 1}}]\n", $"{Head}parts: [{{part: P, of: a, length: {huge}}}]\n", $"setout: {huge}\n", $"? {huge}\n: 1\n" })
            Assert.All(PieceText.Read(text).Findings, f => Assert.True(f.Words.Length + f.Remedy.Length < 600, f.Words));
    }

    [Fact]
    public void Read_KeyOverSeveralLines_IsNamedOnOneLine()
    {
        Finding finding = PieceText.Read(Head + "\"na\\nme\": x\n").Findings.First(f => f.Code == "text.unknown-key");
        Assert.DoesNotContain('\n', finding.Words + finding.Remedy);
    }

    [Theory]
    [InlineData("999999999999999999999999")]
    [InlineData("999999999999999*999999999999999*999999999999999*999999999999999*999999999999999 m")]
    [InlineData("1/999999999999999/999999999999999/999999999999999/999999999999999")]
    [InlineData("-999999999999999 m")]
    [InlineData(".inf")]
    [InlineData("-.INF")]
    [InlineData(".NaN")]
    public void Read_AbsurdLengths_AreFindings(string length)
    {
        TextRead<Piece> read = PieceText.Read($"{Head}parts:\n  - {{part: P, of: ply, length: {length}, width: 3}}\n");
        Assert.Single(read.Findings);
        Assert.False(read.IsSound);
    }

    private static void Refused(string code, string text, TextLimits limits, int line, int? column)
    {
        Finding finding = Assert.Single(PieceText.Read(text, limits).Findings);
        Assert.Equal((code, line), (finding.Code, finding.Place.Line));
        if (column is { } c) Assert.Equal(c, finding.Place.Column);
        Assert.Equal(code, Assert.Single(ShopText.Read(text, limits).Findings).Code);
        Assert.Equal(code, Assert.Single(LogText.Read(text, limits).Findings).Code);
    }
}
