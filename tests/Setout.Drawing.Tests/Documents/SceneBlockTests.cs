using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Documents;

public sealed class SceneBlockTests
{
    private static Scene Scene(double width, double height) => new(width, height, "Front", "", [new LineItem(new(0, 0), new(width, height), Ink.Part)]);

    [Fact]
    public void Compose_SceneThatFits_IsAtTrueSize()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(new SceneBlock(Scene(150, 90))));

        Assert.Equal(1, layout.Pages[0].Pieces.OfType<ScenePiece>().Single().Scale);
        Assert.DoesNotContain(layout.Pages[0].Texts, t => t.Text.PlainText.StartsWith("Printed", StringComparison.Ordinal));
    }

    [Fact]
    public void Compose_SceneTooWide_IsSmallerAndSaysSo()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(new SceneBlock(Scene(361.8, 90))));

        Assert.Equal(0.5, layout.Pages[0].Pieces.OfType<ScenePiece>().Single().Scale, 6);
        Assert.Contains(layout.Pages[0].Texts, t => t.Text.PlainText.StartsWith("Printed at 50 %", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(100)]
    [InlineData(5000)]
    public void Compose_SceneAfterText_IsNeverSplitAndKeepsItsHeading(double height)
    {
        for (int lines = 0; lines < 50; lines += 7)
        {
            Block[] filler = [.. Enumerable.Range(0, lines).Select(i => (Block)new ParagraphBlock($"line {i}"))];
            DocumentLayout layout = PageComposer.Compose(PrintRoom.Document([.. filler, new HeadingBlock("Above"), new SceneBlock(Scene(100, height))]));

            PageLayout page = Assert.Single(layout.Pages, p => p.Pieces.OfType<ScenePiece>().Any());
            ScenePiece piece = page.Pieces.OfType<ScenePiece>().Single();
            Assert.True(piece.Y + (piece.Scene.Height * piece.Scale) <= page.Height - 24 + 1e-6);
            Assert.Contains(page.Texts, t => t.Text.PlainText == "Above");
        }
    }

    [Fact]
    public void Compose_WholePageOfAWideScene_LiesDownWithItsHeading()
    {
        DocumentLayout layout = PageComposer.Compose(PrintRoom.Document(
            new ParagraphBlock("before"), new HeadingBlock("Sheet A"), new SceneBlock(Scene(240, 120), ScenePlace.WholePage), new ParagraphBlock("after")));

        Assert.Equal(3, layout.Pages.Length);
        PageLayout page = layout.Pages[1];
        Assert.True(page.Width > page.Height);
        Assert.Equal(1, page.Pieces.OfType<ScenePiece>().Single().Scale);
        Assert.Equal("Sheet A", page.Texts.First().Text.PlainText);
        Assert.Contains(layout.Pages[2].Texts, t => t.Text.PlainText == "after");
    }

    [Fact]
    public void Compose_WholePageLyingDown_SectionRuleReachesTheMargin()
    {
        PageLayout page = PageComposer.Compose(PrintRoom.Document(new SceneBlock(Scene(240, 60), ScenePlace.WholePage))).Pages[0];

        Assert.All(page.Pieces.OfType<RulePiece>(), r => Assert.Equal(page.Width - 15, r.X2, 6));
    }

    [Fact]
    public void Compose_TextTooSmallAfterScaling_IsReported()
    {
        Scene scene = Scene(600, 100) with { Items = [new TextItem(new(10, 10), Phrase.Of("a"), 4, Anchor.Start, Ink.Part)] };

        Assert.Contains(PageComposer.Compose(PrintRoom.Document(new SceneBlock(scene))).Remarks, r => r.Code == "page.small-drawing");
    }
}
