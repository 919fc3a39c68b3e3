using System.Globalization;
using System.Text.RegularExpressions;
using Setout.Drawing.Documents;
using Setout.Shop.BenchSheets;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Runs;

/// <summary>The runs on paper.</summary>
public partial class RunPagesTests
{
    [GeneratedRegex(@"^Run (\d+) of (\d+): ")]
    private static partial Regex Heading();

    public static TheoryData<string, Paper> SamplesOnPapers => [.. Sample.Names.SelectMany(n => new[] { (n, Paper.A4), (n, Paper.Letter) })];

    private static (int Page, TextPiece Text)[] Texts(Plan plan, Paper paper) =>
        [.. PageComposer.Compose(BenchSheetWriter.Compose(plan, "", paper)).Pages.Where(p => p.Section == "Runs").SelectMany(p => p.Pieces.OfType<TextPiece>().Select(t => (p.Number, t)))];

    /// <summary>Each run begins with its number and ends with what to mind, in their order, and both stand on one page.</summary>
    [Theory]
    [MemberData(nameof(SamplesOnPapers))]
    public void Compose_ASample_EachRunStaysTogether(string sample, Paper paper)
    {
        Plan plan = Sample.Plan(sample);
        (int Page, TextPiece Text)[] texts = Texts(plan, paper);
        var begins = texts.Where(t => Heading().IsMatch(t.Text.Text.PlainText)).ToList();
        var ends = texts.Where(t => t.Text.Text.PlainText.StartsWith("Mind: ", StringComparison.Ordinal)).ToList();
        Assert.Equal(Enumerable.Range(1, plan.Runs.Runs.Length), begins.Select(b => int.Parse(Heading().Match(b.Text.Text.PlainText).Groups[1].Value, CultureInfo.InvariantCulture)));
        Assert.All(begins, b => Assert.Equal($"{plan.Runs.Runs.Length}", Heading().Match(b.Text.Text.PlainText).Groups[2].Value));
        Assert.Equal(begins.Select(b => b.Page), ends.Select(e => e.Page));
        // 24 points: legible at arm's length; black on white.
        Assert.All(begins, b => Assert.True(b.Text.Size >= 8.4, $"{b.Text.Size} mm"));
        Assert.All(begins, b => Assert.Equal(Shade.Ink, b.Text.Shade));
    }

    /// <summary>What to mind is read: as large and as black as the rest.</summary>
    [Fact]
    public void Compose_WhatToMind_IsBodyTextInBlack()
    {
        TextPiece[] mind = [.. Texts(Sample.Plan("jar-cabinet"), Paper.A4).Select(t => t.Text).Where(t => t.Text.PlainText.StartsWith("Mind: ", StringComparison.Ordinal))], body = [.. Texts(Sample.Plan("jar-cabinet"), Paper.A4).Select(t => t.Text).Where(t => t.Text.PlainText.Contains("Table saw, ", StringComparison.Ordinal))];
        Assert.NotEmpty(mind);
        Assert.All(mind, m => Assert.Equal((body[0].Size, Shade.Ink), (m.Size, m.Shade)));
    }

    /// <summary>What remains and is put aside, with what it waits for, has the room that a name alone has not.</summary>
    [Fact]
    public void Compose_LongWordsBesideShortOnes_HaveTheRoom()
    {
        static int Longest(TableBlock table, int column) => table.Rows.OfType<CellRow>().Max(r => r.Cells[column].Phrases.Max(p => p.PlainText.Length));
        TableBlock[] tables = [.. Sample.Names.SelectMany(n => BenchSheetWriter.Compose(Sample.Plan(n), "", Paper.A4).Sections.Where(s => s.Title == "Runs").SelectMany(s => s.Blocks).OfType<TogetherBlock>().SelectMany(t => t.Blocks).OfType<TableBlock>())
            .Where(t => t.Columns.Length == 4 && Longest(t, 3) > 80 && Longest(t, 2) < 20)];
        Assert.NotEmpty(tables);
        Assert.All(tables, t => Assert.True(t.Columns[3].Width.Amount >= 2 * t.Columns[2].Width.Amount, $"{t.Columns[3].Width} beside {t.Columns[2].Width}"));
    }

    /// <summary>What is set is a true fraction, and each line has its box to tick.</summary>
    [Fact]
    public void Compose_TheJarCabinet_FractionsAreFiguresAndLinesHaveBoxes()
    {
        Plan plan = Sample.Plan("jar-cabinet");
        var heads = Texts(plan, Paper.Letter).Select(t => t.Text.Text).Where(t => Heading().IsMatch(t.PlainText) && t.PlainText.Contains('/')).ToList();
        Assert.NotEmpty(heads);
        Assert.All(heads, h => Assert.Contains(h.Runs, r => r.Figure is not null));
        int lines = Shop.Runs.RunWords.Of(plan).Runs.Sum(r => r.Cuts.Length), aside = Shop.Runs.RunWords.Of(plan) is var all ? all.Waiting.Length + all.Kept.Length : 0;
        Assert.Equal(lines + aside, PageComposer.Compose(BenchSheetWriter.Compose(plan, "", Paper.Letter)).Pages.Where(p => p.Section == "Runs").SelectMany(p => p.Pieces.OfType<BoxPiece>()).Count(b => b.Width < 6));
    }

    /// <summary>What runs, or wood put aside, wait for has a line to write it on: the thicknesses before the first run, the openings with the wood.</summary>
    [Theory]
    [MemberData(nameof(SamplesOnPapers))]
    public void Compose_ASample_HasALineForEachReadingThatIsWaitedFor(string sample, Paper paper)
    {
        Plan plan = Sample.Plan(sample);
        Shop.Runs.WordedRuns runs = Shop.Runs.RunWords.Of(plan);
        string[] unread = [.. plan.Findings.Where(f => f.Code == "material.not-read").Select(f => $"thickness of {f.Key}")];
        Assert.Equal(unread, runs.Ask.Select(a => a.Words));
        string[] held = [.. plan.Set.Parts.Where(plan.Set.IsHeld).Select(p => p.HeldUntil[^1].Text).Distinct()];
        Assert.Equal(held.Order(StringComparer.Ordinal), runs.Await.Select(a => Regex.Match(a.Words, @"\(([^)]+)\)$").Groups[1].Value).Order(StringComparer.Ordinal));
        string all = string.Join(' ', Texts(plan, paper).Select(t => t.Text.Text.PlainText));
        if (unread.Length > 0) Assert.True(all.IndexOf("Write it down here", StringComparison.Ordinal) is >= 0 and var at && at < all.IndexOf("Run 1 of", StringComparison.Ordinal));
        Assert.Equal((unread.Length > 0 ? 1 : 0) + (held.Length > 0 ? 1 : 0), Regex.Count(all, "Write it down here"));
        Assert.All(runs.Ask.Concat(runs.Await), a => Assert.True(a.With.Length > 0 && a.StandsIn.Length > 0, a.Words));
    }

    /// <summary>What is to be read stands before the first run, and how names go on.</summary>
    [Fact]
    public void Compose_TheJarCabinet_FirstWhatIsNotReadThenTheRuns()
    {
        string all = string.Join(' ', Texts(Sample.Plan("jar-cabinet"), Paper.A4).Select(t => t.Text.Text.PlainText));
        int first = all.IndexOf("First read the thickness", StringComparison.Ordinal), run = all.IndexOf("Run 1 of", StringComparison.Ordinal);
        Assert.True(first >= 0 && first < run, $"{first} {run}");
        Assert.Contains("Off sheet D come D.1 and D.2.", all, StringComparison.Ordinal);
        // It has no boards.
        Assert.DoesNotContain("lane", all, StringComparison.Ordinal);
        Assert.Contains("Mark each edge and end that is trued or sawn: later runs ask for it.", all, StringComparison.Ordinal);
        Assert.Contains("those where the figures of the drawing begin", all, StringComparison.Ordinal);
    }

    /// <summary>The first drawing of a sheet says what may lie at the fence; the caution over it does not say it again.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Compose_ASample_SaysItOnceOnThePageOfASheet(string sample)
    {
        var pages = PageComposer.Compose(BenchSheetWriter.Compose(Sample.Plan(sample), "", Paper.Letter)).Pages.Where(p => p.Section.StartsWith("Breakdown of", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(pages);
        Assert.DoesNotContain(pages.SelectMany(p => p.Pieces.OfType<TextPiece>()), t => t.Text.PlainText.Contains("Cut against the fence only", StringComparison.Ordinal));
    }
}
