using System.Collections.Immutable;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Testing;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Breakdowns;

public sealed class BoardDrawingTests
{
    private static readonly BreakdownPaper s_page = new(260, 180);

    [Fact]
    public void Draw_Poplar_IsTheCommittedDrawing() =>
        Snapshots.Match(SvgWriter.Write(Assert.Single(BoardDrawing.Draw(Samples.Poplar(), s_page)), SvgOptions.Standalone), "poplar", "svg");

    [Theory]
    [InlineData(260, 180)]
    [InlineData(180, 240)]
    [InlineData(110, 240)]
    public void Draw_AnyPaper_NoTextClashesOrSpills(double width, double height)
    {
        foreach (Scene scene in BoardDrawing.Draw(Samples.Poplar(), new(width, height)))
        {
            Assert.Empty(Clashes(scene));
            Assert.Empty(Spilled(scene));
        }
    }

    [Fact]
    public void Draw_NamesOfEveryLengthOnAPhone_StayOnThePaper()
    {
        // Narrow words after a first that grows, so that some line is as long as it may be.
        BoardsInput poplar = Samples.Poplar();
        foreach (int first in Enumerable.Range(1, 30))
        {
            Phrase name = Phrase.Of($"{new string('i', first)} {string.Join(' ', Enumerable.Repeat("i", 90))}");
            foreach (Scene scene in BoardDrawing.Draw(poplar with { Boards = [poplar.Boards[0] with { Name = name }] }, new(100, 240))) Assert.Empty(Spilled(scene));
        }
    }

    [Fact]
    public void Draw_LowPaper_GoesOnToFurtherDrawingsAndLosesNoBoard()
    {
        ImmutableArray<Scene> scenes = BoardDrawing.Draw(Samples.Poplar(), new(260, 60));

        Assert.True(scenes.Length > 1);
        Assert.Equal(["b1", "b2", "b3", "b4"], scenes.SelectMany(s => Groups(s.Items)).Where(g => g.Key is ['b', _]).Select(g => g.Key));
        Assert.All(scenes, s => Assert.True(s.Height <= 60));
    }

    [Fact]
    public void Draw_TwoBoards_AreAtOneScale()
    {
        Scene scene = BoardDrawing.Draw(Samples.Poplar(), s_page)[0];
        double Width(string key) => Groups(scene.Items).Single(g => g.Key == key).Items.OfType<ShapeItem>().Select(s => s.Corners[2].X - s.Corners[0].X).Max();

        // 48 in beside 96 in.
        Assert.Equal(Width("b1"), 2 * Width("b3"), 9);
    }

    [Fact]
    public void Draw_WordsWithNoRoom_StandUnderTheBar()
    {
        Scene scene = BoardDrawing.Draw(Samples.Poplar(), s_page)[0];

        Assert.Contains(Texts(scene.Items), t => t.Text.PlainText == "keep for wedges and stops" && t.Ink == Ink.Soft);
    }
}
