using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Breakdowns;

/// <summary>The key tells the signs that are on its drawing, and no others.</summary>
public sealed class DrawingKeyTests
{
    private static string[] Key(Scene scene) => [.. Groups(scene.Items).Where(g => g.Title == "key").SelectMany(g => g.Items.OfType<TextItem>()).Select(t => t.Text.PlainText)];

    [Fact]
    public void Draw_ASheetWithCutsFiguresAndWaste_TellsThemUnderIt()
    {
        Scene scene = SheetDrawing.Draw(Samples.Birch(), new(260, 180));
        Assert.Equal(["cut", "small figures run from this edge", "to this cut", "waste"], Key(scene));
        // The sample is the line of a cut itself: red on the screen, heavy and broken in print.
        LineItem sample = Groups(scene.Items).First(g => g.Title == "key").Items.OfType<LineItem>().Single();
        Assert.Equal(Ink.Pencil, sample.Ink);
        Assert.True(Texts(scene.Items).Where(t => t.Text.PlainText == "cut").Single().At.Y > Groups(scene.Items).Where(g => g.Title.StartsWith("cut ", StringComparison.Ordinal)).SelectMany(g => g.Items.OfType<LineItem>()).Max(l => l.To.Y));
    }

    [Fact]
    public void Draw_ASheetThatIsOnePiece_HasNoKey() =>
        Assert.Empty(Key(SheetDrawing.Draw(new("t", "d", In("96"), In("48")) { Parts = [new("p", "p", "P", new(In("0"), In("0"), In("96"), In("48")))] }, new(260, 180))));

    [Fact]
    public void Draw_ASheetOfRipsAlone_TellsNoFigures() =>
        Assert.Equal(["cut"], Key(SheetDrawing.Draw(new("t", "d", In("96"), In("48")) { PrimaryCuts = [new("a", In("20"), SheetAxis.Along, Fig("20"))] }, new(260, 180))));

    [Fact]
    public void Draw_BoardsOnSeveralDrawings_EachHasTheKey()
    {
        var scenes = BoardDrawing.Draw(Samples.Poplar(), new(260, 60));
        Assert.True(scenes.Length > 1);
        Assert.All(scenes, s => Assert.Equal(["cut", "waste or flaw", "edge of a flaw"], Key(s)));
    }

    [Fact]
    public void Draw_OnAPhone_TheKeyStaysOnThePaper()
    {
        Scene scene = SheetDrawing.Draw(Samples.Birch(), new(88, 220));
        Assert.Equal(4, Key(scene).Length);
        Assert.Empty(Spilled(scene));
        Assert.Empty(Clashes(scene));
    }
}
