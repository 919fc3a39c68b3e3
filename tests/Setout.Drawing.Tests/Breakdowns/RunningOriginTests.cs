using Setout.Core.Measures;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Breakdowns;

/// <summary>Where small running figures run from, and to which cut.</summary>
public sealed class RunningOriginTests
{
    private static readonly BreakdownPaper s_page = new(260, 180);

    /// <summary>One strip of 96 by 24; a length from 30 to 80 is divided once more, away from the reference edge from the strip's own edge at 4.</summary>
    private static SheetInput Divided() => new("t", "d", In("96"), In("28"))
    {
        PrimaryCuts = [new("a", In("4"), SheetAxis.Along, Fig("4"))],
        Parts = [new("p", "p", "P", new(In("30"), In("4"), In("50"), In("9"))), new("q", "q", "Q", new(In("0"), In("4"), In("29 7/8"), In("24")))],
        Waste = [new(In("30"), In("13 1/8"), In("50"), In("14 7/8"))],
        InnerCuts =
        [
            new(In("29 7/8"), SheetAxis.Across, In("4"), In("28"), Fig("29 7/8")),
            new(In("80"), SheetAxis.Across, In("4"), In("28"), Fig("80")),
            new(In("13"), SheetAxis.Along, In("30"), In("80"), Fig("9")) { Origin = In("4") },
        ],
    };

    private static Box Outline(Scene scene) => BoxOf(Shapes(scene.Items).First(s => s.Wash == Wash.Panel));

    private static IEnumerable<ShapeItem> Shapes(IEnumerable<SceneItem> items) => items.SelectMany(i => i switch { ShapeItem s => [s], GroupItem g => Shapes(g.Items), _ => Array.Empty<ShapeItem>() });

    private static Box BoxOf(ShapeItem shape) => new(shape.Corners.Min(c => c.X), shape.Corners.Min(c => c.Y), shape.Corners.Max(c => c.X), shape.Corners.Max(c => c.Y));

    private static (Point Middle, LineItem Way)[] Origins(Scene scene) =>
        [.. Groups(scene.Items).Where(g => g.Title == "figures run from here").Select(g => (BoxOf(g.Items.OfType<ShapeItem>().Single()).Middle, g.Items.OfType<LineItem>().Single()))];

    /// <summary>The arrow of a figure: tail and tip of its longest line.</summary>
    private static LineItem Arrow(Scene scene, string figure) =>
        Groups(scene.Items).Single(g => g.Items is [TextItem t, ..] && t.Text.PlainText == figure && g.Items.OfType<LineItem>().Any()).Items.OfType<LineItem>().First();

    [Fact]
    public void Draw_FiguresOfAStripAndOfALength_EachEdgeTheyRunFromHasOneRing()
    {
        Scene scene = SheetDrawing.Draw(Divided(), s_page);
        Box sheet = Outline(scene);
        double scale = sheet.Width / 96;
        (Point Middle, LineItem Way)[] origins = Origins(scene);

        Assert.Equal(2, origins.Length);
        // Both figures of the strip run from the sheet's left edge, to the right.
        Assert.Equal(sheet.Left, origins[0].Middle.X, 6);
        Assert.InRange(origins[0].Middle.Y, sheet.Top + (4 * scale), sheet.Bottom);
        Assert.True(origins[0].Way.To.X > origins[0].Way.From.X && origins[0].Way.To.Y == origins[0].Way.From.Y);
        // The length is divided from the edge at 4, away from the reference edge.
        Assert.Equal(sheet.Top + (4 * scale), origins[1].Middle.Y, 6);
        Assert.InRange(origins[1].Middle.X, sheet.Left + (30 * scale), sheet.Left + (80 * scale));
        Assert.True(origins[1].Way.To.Y > origins[1].Way.From.Y && origins[1].Way.To.X == origins[1].Way.From.X);
    }

    [Theory]
    [InlineData("29 7/8", true, 29.875)]
    [InlineData("80", true, 80)]
    [InlineData("9", false, 13)]
    public void Draw_AFigure_ItsArrowPointsAtItsCut(string figure, bool isAcross, double at)
    {
        Scene scene = SheetDrawing.Draw(Divided(), s_page);
        Box sheet = Outline(scene);
        LineItem arrow = Arrow(scene, figure);
        double line = (isAcross ? sheet.Left : sheet.Top) + (at * sheet.Width / 96);

        Assert.Equal(isAcross, arrow.From.Y == arrow.To.Y);
        // The tip stops at the printed line, which is 0.7 mm wide.
        Assert.InRange(line - (isAcross ? arrow.To.X : arrow.To.Y), 0.3, 0.6);
        Assert.True(isAcross ? arrow.To.X > arrow.From.X : arrow.To.Y > arrow.From.Y);
    }

    [Fact]
    public void Draw_SmallParts_NoTextLiesOnARingOrAnArrow()
    {
        foreach (SheetInput input in new[] { Samples.Birch(), Samples.SmallParts(), Divided() })
        {
            Scene scene = SheetDrawing.Draw(input, s_page);
            Box[] rings = [.. Groups(scene.Items).Where(g => g.Title == "figures run from here").Select(g => BoxOf(g.Items.OfType<ShapeItem>().Single()))];
            LineItem[] arrows = [.. Groups(scene.Items).Where(g => g.Items is [TextItem { Ink: Ink.Soft }, LineItem, ..]).Select(g => g.Items.OfType<LineItem>().First())];
            Box[] texts = [.. Texts(scene.Items).Select(LabelBook.Tight)];
            Assert.NotEmpty(arrows);
            Assert.Equal(input.InnerCuts.Select(c => (c.Axis, c.Origin, c.From, c.To)).Distinct().Count(), rings.Length);
            Assert.DoesNotContain(texts, t => rings.Any(t.Overlaps));
            Assert.DoesNotContain(texts, t => arrows.Any(a => t.Overlaps(new(Math.Min(a.From.X, a.To.X), Math.Min(a.From.Y, a.To.Y), a.To.X + 1e-9, a.To.Y + 1e-9))));
        }
    }
}
