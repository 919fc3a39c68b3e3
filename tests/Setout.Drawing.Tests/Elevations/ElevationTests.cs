using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Dimensioning;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Testing;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Elevations;

public sealed class ElevationTests
{
    private static readonly PaperBox s_page = new(260, 150);

    /// <summary>A hung cupboard of our own in millimetres: two doors over a row of three drawers, one open shelf space.</summary>
    private static ElevationInput SeedCupboard()
    {
        static Length Mm(int mm) => Length.FromMillimetres(mm);
        static ModelRect R(int x, int y, int w, int h) => new(Mm(x), Mm(y), Mm(w), Mm(h));
        static Phrase F(int mm) => Phrase.Of(LengthFormat.Millimetre.Bare.Format(Mm(mm)));
        return new("Seed cupboard, front", "A hung cupboard 800 mm wide and 900 mm high.",
        [
            new("b", "back", PartKind.Back, R(18, 218, 764, 182)),
            new("e1", "left end", PartKind.PanelEdge, R(0, 0, 18, 900)),
            new("e2", "right end", PartKind.PanelEdge, R(782, 0, 18, 900)),
            new("k1", "bottom", PartKind.Deck, R(18, 0, 764, 18)),
            new("k2", "deck over the drawers", PartKind.Deck, R(18, 200, 764, 18)),
            new("k3", "deck under the doors", PartKind.Deck, R(18, 400, 764, 18)),
            new("k4", "top", PartKind.Top, R(18, 882, 764, 18)),
            new("d1", "left door", PartKind.Door, R(20, 420, 378, 460), 1) { Handles = [R(370, 560, 10, 96)] },
            new("d2", "right door", PartKind.Door, R(402, 420, 378, 460), 1) { Handles = [R(420, 560, 10, 96)] },
            .. Enumerable.Range(0, 3).Select(i => new ElevationPart($"f{i}", $"drawer {i + 1}", PartKind.DrawerFront, R(20 + (254 * i), 20, 252, 178), 1) { Handles = [R(106 + (254 * i), 110, 80, 10)] }),
        ])
        {
            HasFloor = false,
            Openings = [new("o", "open space", R(18, 218, 764, 182), Phrase.Of("open, for seed trays"))],
            Chains =
            [
                ElevationChain.Of(Side.Below, [Mm(0), Mm(18), Mm(782), Mm(800)], [F(18), F(764), F(18)]),
                ElevationChain.Of(Side.Below, [Mm(0), Mm(800)], [F(800)]),
                ElevationChain.Of(Side.Right, [Mm(0), Mm(18), Mm(200), Mm(218), Mm(400), Mm(418), Mm(882), Mm(900)], [F(18), F(182), F(18), F(182), F(18), F(464), F(18)], 3),
                ElevationChain.Of(Side.Left, [Mm(0), Mm(900)], [F(900)]),
            ],
        };
    }

    [Fact]
    public void Draw_PrintersBench_IsTheCommittedDrawing() =>
        Snapshots.Match(SvgWriter.Write(Elevation.Draw(PrintersBench.Input(), s_page).Scene, SvgOptions.Standalone), "printers-bench", "svg");

    [Fact]
    public void Draw_PrintersBenchOnAPhone_IsTheCommittedDrawing() =>
        Snapshots.Match(SvgWriter.Write(Elevation.Draw(PrintersBench.Input(), new(110, 90) { FigureSize = 3.4 }).Scene, SvgOptions.Inline), "printers-bench-phone", "svg");

    [Fact]
    public void Draw_SeedCupboard_IsTheCommittedDrawing() =>
        Snapshots.Match(SvgWriter.Write(Elevation.Draw(SeedCupboard(), new(150, 200)).Scene, SvgOptions.Standalone), "seed-cupboard", "svg");

    [Fact]
    public void Draw_PrintersBench_TakesTheLargestScaleThatFits()
    {
        ElevationDrawing drawing = Elevation.Draw(PrintersBench.Input(), s_page);

        // 85 1/2 in is 2171.7 mm: 217 mm at 1:10 with room for the chains, 271 mm at 1:8 wider than the paper.
        Assert.Equal(10, drawing.Scale);
        Assert.Contains(Texts(drawing.Scene.Items), t => t.Text.PlainText == "scale 1:10");
    }

    [Theory]
    [InlineData(260, 150)]
    [InlineData(190, 130)]
    [InlineData(110, 90)]
    [InlineData(420, 297)]
    public void Draw_AnyPaper_FitsAndNoTextClashes(double width, double height)
    {
        Scene scene = Elevation.Draw(PrintersBench.Input(), new(width, height)).Scene;

        Assert.True(scene.Width <= width + 1e-9 && scene.Height <= height + 1e-9, $"{scene.Width} x {scene.Height}");
        Assert.Empty(Clashes(scene));
        Assert.Empty(Spilled(scene));
    }

    [Fact]
    public void Draw_Post_StandsOnTheFloorWhereTheModelHasIt()
    {
        ElevationDrawing drawing = Elevation.Draw(PrintersBench.Input(), s_page);
        GroupItem post = Groups(drawing.Scene.Items).Single(g => g.Key == "po1");
        ShapeItem shape = post.Items.OfType<ShapeItem>().First();

        // Post 2 begins 30 1/2 in (774.7 mm) from the left and is 32 in (812.8 mm) high.
        Assert.Equal(drawing.Origin.X + 77.47, shape.Corners[0].X, 9);
        Assert.Equal(drawing.Origin.Y - 81.28, shape.Corners[0].Y, 9);
        Assert.Equal(drawing.Origin.Y, shape.Corners[2].Y, 9);
    }

    [Fact]
    public void Draw_EveryMember_IsAGroupWithKeyAndTitle()
    {
        ElevationInput input = PrintersBench.Input();
        GroupItem[] groups = [.. Groups(Elevation.Draw(input, s_page).Scene.Items)];

        foreach (ElevationPart part in input.Parts) Assert.Contains(groups, g => g.Key == part.Key && g.Title == part.Title);
        foreach (ElevationOpening opening in input.Openings) Assert.Contains(groups, g => g.Key == opening.Key && g.Title == opening.Title);
    }

    [Fact]
    public void Draw_MarkedFigure_IsRedAndHeavy()
    {
        Scene scene = Elevation.Draw(PrintersBench.Input(), s_page).Scene;
        TextItem marked = Assert.Single(Texts(scene.Items), t => t.Ink == Ink.Pencil);

        Assert.Equal("26 15/16", marked.Text.PlainText);
        Assert.All(marked.Text.Runs, r => Assert.True(r.IsBold));
    }

    [Fact]
    public void Draw_Twice_GivesTheSameBytes()
    {
        string One() => SvgWriter.Write(Elevation.Draw(PrintersBench.Input(), s_page).Scene, SvgOptions.Inline);

        Assert.Equal(One(), One());
    }

    [Fact]
    public void Draw_LabelWithNoRoom_IsLeftToTheGroup()
    {
        var input = new ElevationInput("t", "d", [new("p", "post", PartKind.Post, new(In("0"), In("0"), In("3"), In("30")))])
        {
            Openings = [new("o", "a narrow opening", new(In("3"), In("0"), In("1"), In("1")), Phrase.Of("for very long planks"))],
        };
        Scene scene = Elevation.Draw(input, new(100, 60)).Scene;

        Assert.DoesNotContain(Texts(scene.Items), t => t.Text.PlainText.Contains("plank", StringComparison.Ordinal));
        Assert.Contains(Groups(scene.Items), g => g.Title == "a narrow opening");
    }

    [Fact]
    public void Draw_Nothing_Throws() => Assert.Throws<ArgumentException>(() => Elevation.Draw(new("t", "d", []), s_page));

    [Fact]
    public void Of_CountsThatDoNotFit_Throws() => Assert.Throws<ArgumentException>(() => ElevationChain.Of(Side.Left, [In("0"), In("1")], []));
}
