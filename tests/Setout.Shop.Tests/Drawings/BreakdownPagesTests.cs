using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Cutting.Sheets;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;
using Setout.Shop.BenchSheets;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Drawings;

/// <summary>The marking-out drawings on the pages of the bench sheets.</summary>
public sealed class BreakdownPagesTests
{
    private static IEnumerable<GroupItem> Groups(IEnumerable<SceneItem> items) => items.OfType<GroupItem>().SelectMany(g => Groups(g.Items).Prepend(g));

    private static IEnumerable<TextItem> Texts(IEnumerable<SceneItem> items) => items.SelectMany(i => i switch { TextItem t => [t], GroupItem g => Texts(g.Items), _ => Array.Empty<TextItem>() });

    private static bool LeavesOut(Scene scene) => Texts(scene.Items).Any(t => t.Text.PlainText.StartsWith("not drawn", StringComparison.Ordinal));

    private static DocumentLayout Pages(Plan plan, Paper paper) => PageComposer.Compose(BenchSheetWriter.Compose(plan, "", paper));

    public static TheoryData<string, Paper> SamplesOnPapers => [.. Sample.Names.SelectMany(n => new[] { (n, Paper.A4), (n, Paper.Letter) })];

    [Theory]
    [MemberData(nameof(SamplesOnPapers))]
    public void Compose_ASample_DrawsEveryFigureAtItsOwnSizeUnderItsTitle(string sample, Paper paper) => AssertDrawn(Sample.Plan(sample), paper);

    /// <summary>Strips that cross, short cells and thin strips beside wide ones: layouts that used to leave a figure out, or its arrow.</summary>
    [Theory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    public void Compose_TheSewingCornerWithItsGrainKept_DrawsEveryFigure(Paper paper) =>
        AssertDrawn(Sample.Make(Sample.Source(Sample.Text("sewing-corner").Replace(", grain: free", "", StringComparison.Ordinal), null)), paper);

    private static void AssertDrawn(Plan plan, Paper paper)
    {
        PageLayout[] pages = [.. Pages(plan, paper).Pages.Where(p => p.Section.StartsWith("Breakdown", StringComparison.Ordinal))];
        ScenePiece[] drawings = [.. pages.SelectMany(p => p.Pieces.OfType<ScenePiece>())];
        Assert.NotEmpty(drawings);
        Assert.All(drawings, d => Assert.Equal(1, d.Scale));
        Assert.All(drawings, d => Assert.False(LeavesOut(d.Scene), d.Scene.Title));
        // A small figure without its arrow is a group of its text alone.
        Assert.All(drawings, d => Assert.DoesNotContain(Groups(d.Scene.Items), g => g.Items is [TextItem { Ink: Ink.Soft }]));
        Assert.All(pages, p => Assert.True(p.Pieces.OfType<ScenePiece>().Any(), $"Page {p.Number} has no drawing."));
    }

    /// <summary>An independent reading of the drawing: the distance from a ring to the tip of an arrow, at the drawing's scale, is what the figure says.</summary>
    [Theory]
    [InlineData("jar-cabinet")]
    [InlineData("luthiers-bench")]
    [InlineData("plan-chest")]
    [InlineData("cedar-chest")]
    [InlineData("sewing-corner")]
    public void Of_ASample_FromItsRingToItsArrowIsWhatEachFigureSays(string sample)
    {
        // From the tip to the middle of the line.
        const double fromLine = 0.4;
        Plan plan = Sample.Plan(sample);
        int seen = 0;
        foreach (SheetPlan sheets in plan.Sheets)
        {
            ImmutableArray<MarkedSheet> drawn = MarkingOut.Of(plan, sheets, new BreakdownPaper(260, 180));
            for (int i = 0; i < drawn.Length; i++)
            {
                Scene scene = drawn[i].Scene;
                SheetStock stock = sheets.Instance.Stock.First(s => s.Id == sheets.Outcome.Layout.Sheets[i].StockId);
                ShapeItem sheet = scene.Items.OfType<ShapeItem>().First(s => s.Wash == Wash.Panel);
                double scale = (sheet.Corners[1].X - sheet.Corners[0].X) / stock.TruedAlong.ApproximateMillimetres;
                (double X, double Y)[] rings = [.. Groups(scene.Items).Where(g => g.Title == "figures run from here").Select(g => g.Items.OfType<ShapeItem>().Single().Corners).Select(c => (c.Average(p => p.X), c.Average(p => p.Y)))];
                foreach (GroupItem figure in Groups(scene.Items).Where(g => g.Items is [TextItem { Ink: Ink.Soft }, LineItem, ..]))
                {
                    LineItem arrow = (LineItem)figure.Items[1];
                    string text = ((TextItem)figure.Items[0]).Text.PlainText;
                    double said = LengthText.Parse(text, plan.Set.Piece.Unit).Value.ToLength().ApproximateMillimetres;
                    bool isLevel = arrow.From.Y == arrow.To.Y;
                    double[] read = [.. rings.Select(r => (isLevel ? arrow.To.X - r.X : arrow.To.Y - r.Y) + fromLine)];
                    Assert.True(read.Any(r => Math.Abs(r - (said * scale)) < 0.05), $"{drawn[i].Name}: {text} is drawn {string.Join(", ", read.Select(r => (r / scale).ToString("0.0", CultureInfo.InvariantCulture)))} mm from the rings.");
                    seen++;
                }
            }
        }
        Assert.True(seen > 0, "No figure has an arrow.");
    }

    [Fact]
    public void Compose_FiguresThatNeedMoreThanAStandingPage_AreDrawnOnAPageLyingDown()
    {
        // A figure of 7 pt wants 3 mm of paper. 44 mm of the sheet are 2.7 mm where its 2440 are as wide as a standing page allows, and 3.7 on one lying down.
        Plan plan = RippedBoardTests.Make("ply: {panel: hardwood plywood, label: 18 mm, thickness: 18, grain: keep, sizes: [{size: 2440 x 1220, price: 60, trim: 0}]}",
            "- {part: a, of: ply, count: 60, length: 600, width: 44}\n", "{stick: ash, section: 45 x 20, length: 1000, have: 1}", "kerf: {sheets: 3}\n");
        SheetPlan sheets = Assert.Single(plan.Sheets);
        PageRoom room = PageRoom.Of(Paper.A4);
        Assert.All(MarkingOut.Of(plan, sheets, new BreakdownPaper(room.Width, room.Height) { MostHeight = room.Height }), s => Assert.True(LeavesOut(s.Scene), "The parts are no longer small enough for this test."));

        PageLayout[] pages = [.. Pages(plan, Paper.A4).Pages.Where(p => p.Pieces.OfType<ScenePiece>().Any(s => s.Scene.Title.StartsWith("ply", StringComparison.Ordinal)))];
        Assert.NotEmpty(pages);
        Assert.All(pages, p => Assert.True(p.Width > p.Height));
        Assert.All(pages.SelectMany(p => p.Pieces.OfType<ScenePiece>()), s => Assert.False(LeavesOut(s.Scene)));
    }

    [Theory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    public void Compose_ManyRippedBoards_BeginUnderTheirTitleAndPartNoBoard(Paper paper)
    {
        // Boards of 150 give three lanes of 45; 42 parts of 900 fill 14 boards of 1000.
        Plan plan = RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, count: 42, length: 900}", "{stick: ash, section: 150 x 20, length: 1000, price: 9, rip: yes}");
        PageLayout[] pages = [.. Pages(plan, paper).Pages.Where(p => p.Section.StartsWith("Breakdown", StringComparison.Ordinal))];
        Assert.All(pages, p => Assert.NotEmpty(p.Pieces.OfType<ScenePiece>()));
        Assert.All(pages.SelectMany(p => p.Pieces.OfType<ScenePiece>()), s => Assert.Equal(1, s.Scale));
        // Of each page, the boards that its bars are lanes of.
        string[][] boards = [.. pages.Select(p => p.Pieces.OfType<ScenePiece>().SelectMany(s => Groups(s.Scene.Items)).Select(g => g.Key).Where(k => k.StartsWith("rail-", StringComparison.Ordinal)).Select(k => k[..k.LastIndexOf('-')]).ToArray())];
        Assert.True(boards.Length > 1);
        Assert.Equal(42, boards.Sum(b => b.Length));
        Assert.All(boards.SelectMany(b => b).Distinct(), b => Assert.Single(boards, page => page.Contains(b)));
    }
}
