using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Texts;

/// <summary>What the pages for woodworkers show is read and set out; the tables name every key and no other.</summary>
public partial class DocumentationTests
{
    private static readonly string[] s_headings = ["About", "Example", "Every key", "Limits of this version", "Mistakes to avoid"];

    [Theory]
    [InlineData("piece-file.md")]
    [InlineData("shop-file.md")]
    [InlineData("log.md")]
    public void Page_Headings_AreTheFixedOnes(string page) =>
        Assert.Equal(s_headings, Heading().Matches(Repository.Read("docs", page)).Select(m => m.Groups[1].Value));

    [Fact]
    public void PieceFile_Examples_SetOutWithoutAStop()
    {
        string[] examples = Examples("piece-file.md");
        Assert.Equal(2, examples.Length);
        foreach (string example in examples)
        {
            TextRead<Piece> read = PieceText.Read(example);
            Assert.Empty(read.Findings);
            SetPiece set = PieceSetOut.Of(read.Value!, Grid.ThirtySecond, Log.Empty.Pins());
            Assert.DoesNotContain(set.Findings, f => f.Severity is Severity.Stop or Severity.Warn);
            Assert.NotEmpty(set.Parts);
        }
    }

    [Fact]
    public void ShopFile_Example_IsReadWithoutAFinding()
    {
        TextRead<Shop.Texts.Shop> read = ShopText.Read(Assert.Single(Examples("shop-file.md")));
        Assert.Empty(read.Findings);
        Assert.Equal(5, read.Value!.Stock.Length);
        Assert.NotNull(read.Value.Stock[4].Board);
        Assert.Single(read.Value.Stock[4].Size.Flaws);
        Assert.Equal(Length.FromTicks(Length.TicksPerMillimetre * 2 / 5), read.Value.Accuracy.Setting);
        Assert.Equal(["washer M8", "strip of veneer"], read.Value.Shims.Select(s => s.Name));
    }

    [Fact]
    public void Log_Example_PinsQuantitiesOfThePieceFile()
    {
        TextRead<Log> read = LogText.Read(Assert.Single(Examples("log.md")));
        Assert.Empty(read.Findings);
        Piece piece = PieceText.Read(Examples("piece-file.md")[0]).Value!;
        SetPiece set = PieceSetOut.Of(piece, Grid.ThirtySecond, read.Value!.Pins());
        Assert.DoesNotContain(set.Findings, f => f.Severity == Severity.Stop);
        var parts = set.Parts.Select(p => p.Key).ToHashSet(StringComparer.Ordinal);
        Assert.All(read.Value.Entries.OfType<MarkEntry>().SelectMany(m => m.Keys), k => Assert.Contains(k, parts));
        // What is said to have been picked is what the plan picks.
        var chosen = read.Value.Entries.OfType<MarkEntry>().SelectMany(m => m.Chosen).ToList();
        Assert.NotEmpty(chosen);
        Assert.All(chosen, c => Assert.Equal(c.Value, set.Worked[c.Key]));
        // The narrowest of the two spots counts, and the mean of the two thicknesses; the voided reading does not.
        Assert.Equal(ExactLength.FromInches(Rational.Of(705, 32)), set.Worked[new("B.width")]);
        Assert.Equal(ExactLength.FromInches(Rational.Of(1421, 2000)), set.Worked[new("birch.thickness")]);
    }

    [Theory]
    [InlineData("piece-file.md", "piece")]
    [InlineData("shop-file.md", "shop")]
    [InlineData("log.md", "log")]
    public void Page_Tables_NameEveryKeyOfEveryMap(string page, string name)
    {
        var known = SchemaTests.KnownKeys(name);
        var told = new SortedDictionary<string, IEnumerable<string>>(StringComparer.Ordinal);
        foreach (Match table in Table().Matches(Repository.Read("docs", page)))
            told.Add(table.Groups[1].Value, Row().Matches(table.Groups[2].Value).Select(r => r.Groups[1].Value).Order(StringComparer.Ordinal).ToList());
        Assert.Equal(known.Keys, told.Keys);
        Assert.All(known, k => Assert.Equal(k.Value, told[k.Key]));
    }

    internal static string[] Examples(string page) => [.. Yaml().Matches(Repository.Read("docs", page)).Select(m => m.Groups[1].Value)];

    [GeneratedRegex("^## (.+)$", RegexOptions.Multiline)]
    private static partial Regex Heading();

    [GeneratedRegex("^```yaml\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Yaml();

    [GeneratedRegex("<!-- keys: ([a-z-]+) -->(.*?)(?=^#|\\z)", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Table();

    [GeneratedRegex("^\\| `([^`]+)` \\|", RegexOptions.Multiline)]
    private static partial Regex Row();
}
