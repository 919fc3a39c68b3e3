// Over 200 lines: the rules by which pages end, each by itself on a document small enough to be read.
using System.Collections.Immutable;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Documents;

public sealed class PageComposerTests
{
    private const double Point = 25.4 / 72;

    private static TableBlock Table(int rows, Func<int, string> words) => new(
        [new("mark", ColumnWidth.Fit), new("what", ColumnWidth.Share(1)), new("length", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure)],
        [.. Enumerable.Range(0, rows).Select(i => CellRow.Of(Cell.Of($"r{i}"), Cell.Of(words(i)), Cell.Of(PrintRoom.Figure(i, 1, 2))))]);

    private static ImmutableArray<TextPiece> BodyTexts(PageLayout page) => [.. page.Texts.Where(t => t.Y < page.Height - 24)];

    [Fact]
    public void Compose_LongTable_RepeatsHeadOnEachPage()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(Table(90, i => $"part {i}")));

        Assert.True(layout.Pages.Length >= 3);
        foreach (PageLayout page in layout.Pages.Skip(1))
            Assert.Equal(["mark", "what", "length"], BodyTexts(page).Take(3).Select(t => t.Text.PlainText));
        Assert.Equal(Enumerable.Range(0, 90).Select(i => $"part {i}"), layout.Pages.SelectMany(p => BodyTexts(p)).Select(t => t.Text.PlainText).Where(t => t.StartsWith("part", StringComparison.Ordinal)));
    }

    [Fact]
    public void Compose_RepeatedHead_IsDecorationForReadingAloud()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(Table(90, i => $"part {i}")));

        Assert.All(layout.Pages.Skip(1).SelectMany(p => BodyTexts(p).Take(3)), t => Assert.Equal(LayoutElement.Decoration, t.Element));
        Assert.All(layout.Pages[0].Texts.Where(t => t.Text.PlainText == "mark"), t => Assert.Equal(ElementKind.HeadCell, layout.Elements[t.Element].Kind));
    }

    [Fact]
    public void Compose_PageEndsInAGroup_GroupIsNamedAgain()
    {
        TableBlock table = Table(60, i => "x");
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(table with { Rows = table.Rows.Insert(0, new GroupRow(Phrase.Of("Drawers"))) }));

        Assert.Equal("Drawers, continued", BodyTexts(layout.Pages[1])[3].Text.PlainText);
    }

    [Fact]
    public void Compose_RowsOfSeveralLines_AreNotSplit()
    {
        string words = string.Join(' ', Enumerable.Repeat("a long remark about this part", 12));
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(Table(40, i => $"{words} end{i}.")));

        Assert.True(layout.Pages.Length > 2);
        for (int i = 0; i < 40; i++)
        {
            PageLayout begins = Assert.Single(layout.Pages, p => p.Texts.Any(t => t.Text.PlainText == $"r{i}"));
            Assert.Contains($"end{i}.", string.Join(' ', begins.Texts.Select(t => t.Text.PlainText)));
        }
    }

    [Fact]
    public void Compose_RowLongerThanAPage_IsSplitAndSaid()
    {
        string words = string.Join(' ', Enumerable.Range(0, 1500).Select(i => $"word{i}"));
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(Table(1, _ => words)));

        Assert.Contains(layout.Remarks, r => r.Code == "page.split");
        string all = string.Join(' ', layout.Pages.SelectMany(p => BodyTexts(p)).Select(t => t.Text.PlainText));
        Assert.All(Enumerable.Range(0, 1500), i => Assert.Contains($"word{i}", all));
    }

    [Fact]
    public void Compose_HeadingNearTheFoot_StaysWithWhatFollows()
    {
        for (int lines = 1; lines < 70; lines++)
        {
            Block[] filler = [.. Enumerable.Range(0, lines).Select(i => (Block)new ParagraphBlock($"line {i}", TextSize.Small))];
            DocumentLayout layout = PageComposer.Compose(PrintRoom.Document([.. filler, new HeadingBlock("Above"), Table(3, _ => "x")]));

            PageLayout page = Assert.Single(layout.Pages, p => p.Texts.Any(t => t.Text.PlainText == "Above"));
            string[] texts = [.. BodyTexts(page).Select(t => t.Text.PlainText)];
            Assert.Contains("mark", texts);
            Assert.Contains("r0", texts);
        }
    }

    [Fact]
    public void Compose_LongCell_WrapsInsideItsColumn()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(Table(1, _ => "a remark that is far longer than the column and that has " + new string('m', 150) + " in it")));
        ImmutableArray<TextPiece> texts = BodyTexts(layout.Pages[0]);
        double next = texts.Single(t => t.Text.PlainText == "length").X;

        TextPiece[] lines = [.. texts.SkipWhile(t => t.Text.PlainText != "r0").Skip(1).TakeWhile(t => t.Text.PlainText != "1/2")];
        Assert.True(lines.Length >= 3);
        Assert.All(lines, l => Assert.True(l.X + l.Width <= next));
        Assert.Equal(lines.Select(l => l.Y).Distinct().Count(), lines.Length);
    }

    [Fact]
    public void Compose_FigureWithUnit_IsNeverBroken()
    {
        var figure = PrintRoom.Inches(23, 1, 4) with { Unit = "in" };
        Phrase phrase = Phrase.Empty;
        for (int i = 0; i < 60; i++) phrase = phrase.Add("cut to ").Add(figure).Add(", then ");
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(new ParagraphBlock(phrase)));

        Assert.Equal(60, BodyTexts(layout.Pages[0]).Sum(t => t.Text.Runs.Count(r => r.Figure is not null)));
        Assert.DoesNotContain(BodyTexts(layout.Pages[0]), t => t.Text.PlainText.StartsWith(',') || t.Text.PlainText.StartsWith("in", StringComparison.Ordinal));
    }

    [Fact]
    public void Compose_FigureWiderThanItsColumn_IsSetSmallerAndSaid()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(new TableBlock(
            [new("a", ColumnWidth.Millimetres(8), ColumnAlign.Right, TextSize.Figure), new("b", ColumnWidth.Share(1))],
            [CellRow.Of(Cell.Of(PrintRoom.Figure(123, 31, 32)), Cell.Of("x"))])));

        TextPiece figure = BodyTexts(layout.Pages[0]).Single(t => t.Text.PlainText == "123 31/32");
        Assert.True(figure.Width <= 8 + 1e-6);
        Assert.True(figure.Size < 14 * Point);
        Assert.Contains(layout.Remarks, r => r.Code == "page.too-wide");
    }

    [Fact]
    public void Compose_Always_FooterNamesPieceSectionPageTimeRulesAndHash()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(Table(90, i => "x")));

        foreach (PageLayout page in layout.Pages)
        {
            string foot = string.Join('|', page.Texts.Where(t => t.Y >= page.Height - 24).Select(t => t.Text.PlainText));
            Assert.Equal($"Plan chest \u00B7 Parts|page {page.Number} of {layout.Pages.Length}|made 14 March 2031, 9:40 \u00B7 rule set 1.0 \u00B7 3f9c1a7", foot);
        }
    }

    [Fact]
    public void Compose_VeryLongPieceName_FooterIsCutWithAnEllipsis()
    {
        BenchDocument document = PrintRoom.Document(new ParagraphBlock("x"));
        DocumentLayout layout = PageComposer.Compose(document with { Stamp = document.Stamp with { Piece = new string('w', 300) } });

        TextPiece foot = layout.Pages[0].Texts.First(t => t.Y >= layout.Pages[0].Height - 24);
        Assert.EndsWith("…", foot.Text.PlainText, StringComparison.Ordinal);
        Assert.True(foot.X + foot.Width < layout.Pages[0].Width - 15);
    }

    [Fact]
    public void Compose_Sections_HaveBookmarksAndPagesOfTheirOwn()
    {
        BenchDocument document = PrintRoom.Document(new ParagraphBlock("x"));
        document = document with
        {
            Sections = [document.Sections[0], new("Runs", [new ParagraphBlock("y")]), new("Notes", [new ParagraphBlock("z")], SectionStart.FollowsOn)],
        };
        DocumentLayout layout = PageComposer.Compose(document);

        Assert.Equal([new("Parts", 1), new("Runs", 2), new("Notes", 2)], layout.Bookmarks);
    }

    [Fact]
    public void Compose_CharacterTheFontLacks_IsMarkedAndReported()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(new ParagraphBlock("glue \u2603 here"), new ParagraphBlock("tab\there"),
            new SceneBlock(new Scene(50, 20, "t", "", [new TextItem(new(1, 10), Phrase.Of("a\U0001F600b"), 4, Anchor.Start, Ink.Part)]))));

        Assert.Contains(BodyTexts(layout.Pages[0]), t => t.Text.PlainText == "glue ? here");
        Assert.Contains(BodyTexts(layout.Pages[0]), t => t.Text.PlainText == "tab here");
        Assert.Equal(["U+2603", "U+1F600"], layout.Remarks.Where(r => r.Code == "page.missing-glyph").Select(r => r.Words.Split(' ', ';')[4]));
        TextItem drawn = (TextItem)layout.Pages[0].Pieces.OfType<ScenePiece>().Single().Scene.Items[0];
        Assert.Equal("a?b", drawn.Text.PlainText);
    }

    [Fact]
    public void Compose_Working_FiguresAreFlushRightWithSignsInOneColumn()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(new WorkingBlock(Phrase.Of("Box width"), PrintRoom.Figure(34, 29, 32),
            [
                new(Phrase.Of("opening"), Phrase.Of("reading"), TermSign.None, PrintRoom.Figure(35, 15, 16)),
                new(Phrase.Of("slides"), Phrase.Of("sheet"), TermSign.Minus, Phrase.Of("2 \u00D7 ").Add(PrintRoom.Inches(0, 1, 2))),
                new(Phrase.Of("play"), Phrase.Of("rule"), TermSign.Minus, PrintRoom.Figure(0, 1, 32)),
            ], Phrase.Of("sum"), PrintRoom.Figure(34, 29, 32))));
        ImmutableArray<TextPiece> texts = BodyTexts(layout.Pages[0]);

        double[] rights = [.. texts.Where(t => t.Text.PlainText is "34 29/32" or "35 15/16" or "2 \u00D7 1/2" or "1/32").Select(t => Math.Round(t.X + t.Width, 6))];
        Assert.Equal(5, rights.Length);
        Assert.Single(rights.Distinct());
        TextPiece[] signs = [.. texts.Where(t => t.Text.PlainText == "\u2212")];
        Assert.Equal(2, signs.Length);
        Assert.Equal(signs[0].X, signs[1].X, 9);
        double sum = texts.Single(t => t.Text.PlainText == "sum").Y, last = texts.Single(t => t.Text.PlainText == "play").Y;
        Assert.Contains(layout.Pages[0].Pieces.OfType<RulePiece>(), r => r.Shade == Shade.Ink && r.Y1 > last && r.Y1 < sum);
    }

    [Fact]
    public void Compose_Sizes_AreLegibleAtTheBench()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(new ParagraphBlock("running text"), Table(1, _ => "x"),
            new StepsBlock([new(Phrase.Of("a step"))]), new CautionBlock([Phrase.Of("mind")])));
        TextPiece Find(string words) => BodyTexts(layout.Pages[0]).Single(t => t.Text.PlainText == words);

        Assert.All(new[] { "running text", "a step", "mind", "Caution", "x" }, w => Assert.True(Find(w).Size >= 10 * Point));
        Assert.True(Find("1/2").Size >= 14 * Point);
        Assert.True(Find("1/2").Text.Runs[0].IsBold);
    }

    [Fact]
    public void Compose_Caution_IsABoxWithTheWord()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(new CautionBlock([Phrase.Of("Keep the guard on.")])));

        BoxPiece box = Assert.Single(layout.Pages[0].Pieces.OfType<BoxPiece>());
        foreach (string words in new[] { "Caution", "Keep the guard on." })
        {
            TextPiece text = BodyTexts(layout.Pages[0]).Single(t => t.Text.PlainText == words);
            Assert.InRange(text.Y, box.Y, box.Y + box.Height);
            Assert.InRange(text.X, box.X, box.X + box.Width);
        }
    }

    [Fact]
    public void Compose_Steps_AreNumberedWithABoxEach()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(new StepsBlock([new(Phrase.Of("one")), new(Phrase.Of("two")), new(Phrase.Of("three"))], 4)));

        Assert.Equal(["4", "one", "5", "two", "6", "three"], BodyTexts(layout.Pages[0]).Skip(2).Select(t => t.Text.PlainText));
        Assert.Equal(3, layout.Pages[0].Pieces.OfType<BoxPiece>().Count());
    }

    [Fact]
    public void Compose_RowWithTooFewCells_IsRefused() => Assert.Throws<ArgumentException>(() => PageComposer.Compose(PrintRoom.Document(
        new TableBlock([new("a", ColumnWidth.Fit), new("b", ColumnWidth.Fit)], [CellRow.Of(Cell.Of("x"))]))));

    [Fact]
    public void Compose_PageBreak_BeginsAPageOnce()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(new ParagraphBlock("a"), new PageBreakBlock(), new PageBreakBlock(), new ParagraphBlock("b")));

        Assert.Equal(2, layout.Pages.Length);
        Assert.Equal("b", BodyTexts(layout.Pages[1]).Single().Text.PlainText);
    }
}
