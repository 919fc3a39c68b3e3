using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Breakdowns;

/// <summary>What waits for a reading is told from what is cut today without reading a word: thin lines, slanted marks, no letters.</summary>
public sealed class WaitingCutTests
{
    private static readonly BreakdownPaper s_paper = new(170, 120);

    private static Length In(int inches) => Length.FromInches(inches);

    private static IEnumerable<SceneItem> All(IEnumerable<SceneItem> items) => items.SelectMany(i => i is GroupItem g ? All(g.Items) : [i]);

    private static IEnumerable<GroupItem> Groups(IEnumerable<SceneItem> items) => items.OfType<GroupItem>().SelectMany(g => Groups(g.Items).Prepend(g));

    private static Scene Sheet(bool waits) => SheetDrawing.Draw(new SheetInput("sheet", "", In(96), In(48))
    {
        Grain = null,
        Parts = [new("p", "part", "P", new(In(0), In(0), In(40), In(20))), new("q", "part", "Q", new(In(0), In(21), In(40), In(20))) { IsHeld = waits }],
        PrimaryCuts = [new("a", In(20), SheetAxis.Along, Phrase.Of("20")), new(waits ? "" : "b", In(41), SheetAxis.Along, Phrase.Of("41")) { IsWaiting = waits }],
        InnerCuts = [new(In(40), SheetAxis.Across, In(0), In(20), Phrase.Of("40")), new(In(40), SheetAxis.Across, In(21), In(41), Phrase.Of("40")) { IsWaiting = waits }],
    }, s_paper);

    [Fact]
    public void Draw_SheetWithWaitingCuts_ThinAndWithoutLetters()
    {
        Scene all = Sheet(false), some = Sheet(true);
        // The lines of the cuts and the sample in the key.
        Assert.Equal(5, All(all.Items).OfType<LineItem>().Count(l => l.Ink == Ink.Pencil));
        Assert.Equal(3, All(some.Items).OfType<LineItem>().Count(l => l.Ink == Ink.Pencil));
        Assert.Equal(3, All(some.Items).OfType<LineItem>().Count(l => l.Ink == Ink.Hidden));
        string[] letters = [.. All(some.Items).OfType<TextItem>().Where(t => t.Ink == Ink.Pencil).Select(t => t.Text.PlainText)];
        Assert.Equal(["a"], letters);
        Assert.Contains(All(some.Items).OfType<TextItem>(), t => t.Text.PlainText == "waits for a reading");
        Assert.DoesNotContain(All(all.Items).OfType<TextItem>(), t => t.Text.PlainText == "waits for a reading");
        // Its figure stays: the layout is where it was.
        Assert.Contains(All(some.Items).OfType<TextItem>(), t => t.Text.PlainText == "41");
    }

    [Fact]
    public void Draw_BoardWithWaitingCuts_ThinAndSlanted()
    {
        BoardCut[] cuts = [new(In(20), Phrase.Of("20")), new(In(41), Phrase.Of("41")) { IsWaiting = true }];
        var bar = new BoardBar("b", Phrase.Of("board 1"), In(96))
        {
            Parts = [new("p", "part", "P", new(In(0), In(20))), new("q", "part", "Q", new(In(21), In(41))) { IsHeld = true }],
            Cuts = [.. cuts],
        };
        Scene scene = Assert.Single(BoardDrawing.Draw(new BoardsInput("boards", "", [bar]), s_paper));
        GroupItem drawn = Groups(scene.Items).Single(g => g.Key == "b");
        Assert.Single(drawn.Items.OfType<LineItem>(), l => l.Ink == Ink.Pencil);
        Assert.Single(drawn.Items.OfType<LineItem>(), l => l.Ink == Ink.Hidden);
        Assert.True(Groups(scene.Items).Single(g => g.Key == "q").Items.OfType<TextItem>().Single().Text.Runs[0].IsItalic);
        Assert.Contains(All(scene.Items).OfType<TextItem>(), t => t.Text.PlainText == "waits for a reading");
    }

    /// <summary>A line that runs into a figure is read as part of it.</summary>
    [Fact]
    public void Draw_Board_NoLineTouchesAFigure()
    {
        var bar = new BoardBar("b", Phrase.Of("board 1"), In(96)) { Cuts = [.. new[] { 20, 41, 43, 45, 90 }.Select(i => new BoardCut(In(i), Phrase.Of($"{i}")))] };
        Scene scene = Assert.Single(BoardDrawing.Draw(new BoardsInput("boards", "", [bar]), s_paper));
        GroupItem drawn = Groups(scene.Items).Single(g => g.Key == "b");
        TextItem[] figures = [.. drawn.Items.OfType<TextItem>().Where(t => t.Ink == Ink.Dimension && t.Anchor == Anchor.Middle)];
        Assert.Equal(5, figures.Length);
        foreach (TextItem figure in figures)
        {
            // Digits are as high as seven tenths of the em, a little more at most.
            double top = figure.At.Y - (0.74 * figure.Size);
            Assert.All(drawn.Items.OfType<LineItem>().Where(l => Math.Abs(l.To.X - figure.At.X) < 2), l => Assert.True(Math.Max(l.From.Y, l.To.Y) < top - 0.3));
        }
    }

    /// <summary>Figures along the sheet run from an end, and the drawing says which: under the corner, or over it where those figures stand.</summary>
    [Theory]
    [InlineData(SheetAxis.Along)]
    [InlineData(SheetAxis.Across)]
    public void Draw_AnySheet_TheEndHasItsZero(SheetAxis axis)
    {
        Scene scene = SheetDrawing.Draw(new SheetInput("sheet", "", In(96), In(48)) { PrimaryCuts = [new("a", In(20), axis, Phrase.Of("20"))] }, s_paper);
        ShapeItem sheet = scene.Items.OfType<ShapeItem>().First(s => s.Wash == Wash.Panel);
        TextItem zero = Groups(scene.Items).Single(g => g.Title == "end 0").Items.OfType<TextItem>().Single();
        Assert.Equal("0", zero.Text.PlainText);
        Assert.Equal(sheet.Corners.Min(c => c.X), zero.At.X, 6);
        Assert.True(axis == SheetAxis.Along ? zero.At.Y > sheet.Corners.Max(c => c.Y) : zero.At.Y < sheet.Corners.Min(c => c.Y));
    }
}
