using Setout.Drawing.Documents;
using Setout.Shop.BenchSheets;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Runs;

/// <summary>Pages of the breakdown: a page with a heading and a caution alone is looked at by nobody.</summary>
public class SheetPagesTests
{
    public static TheoryData<string, Paper> SamplesOnPapers => [.. Sample.Names.SelectMany(n => new[] { (n, Paper.A4), (n, Paper.Letter) })];

    private static PageLayout[] Pages(Plan plan, Paper paper) =>
        [.. PageComposer.Compose(BenchSheetWriter.Compose(plan, "", paper)).Pages.Where(p => p.Section.StartsWith("Breakdown of", StringComparison.Ordinal))];

    private static void AllHaveADrawing(PageLayout[] pages)
    {
        Assert.NotEmpty(pages);
        Assert.All(pages, p => Assert.Contains(p.Pieces, x => x is ScenePiece));
    }

    [Theory]
    [MemberData(nameof(SamplesOnPapers))]
    public void Compose_ASample_EveryPageOfTheBreakdownHasADrawing(string sample, Paper paper) => AllHaveADrawing(Pages(Sample.Plan(sample), paper));

    /// <summary>So many small parts that the first sheet would have most room on a page lying down: it has the heading with it, and the caution over it, in one line where it lies down.</summary>
    [Theory]
    [InlineData(Paper.A4, 3, false)] // one sheet: it stands, for lying down it has no more room under the caution
    [InlineData(Paper.Letter, 3, false)]
    [InlineData(Paper.A4, 6, true)] // two: all figures find room on a page lying down
    [InlineData(Paper.Letter, 6, true)]
    public void Compose_FirstSheetOfManyParts_LeavesNoPageWithoutADrawing(Paper paper, int count, bool lies)
    {
        string parts = string.Join('\n', Enumerable.Range(1, 24).Select(n => $"- {{part: p{n}, of: ply, count: {count}, length: {180 + (7 * n)}, width: {60 + (3 * n)}}}"));
        Plan plan = RippedBoardTests.Make("ply: {panel: hardwood plywood, label: 18 mm, thickness: 18, grain: keep}", parts,
            "{panel: hardwood plywood, label: 18 mm, size: 2440 x 1220, price: 60}", "kerf: {sheets: 3}\n");
        PageLayout[] pages = Pages(plan, paper);
        AllHaveADrawing(pages);
        Assert.Equal(lies, pages[0].Width > pages[0].Height);
        if (lies) Assert.All(pages.SelectMany(p => p.Pieces.OfType<ScenePiece>()), d => Assert.Equal(1, d.Scale));
        Assert.Single(pages.SelectMany(p => p.Texts), t => t.Text.PlainText.StartsWith("Caution", StringComparison.Ordinal));
        Assert.Contains(pages[0].Texts, t => t.Text.PlainText.StartsWith("Breakdown of ply", StringComparison.Ordinal));
    }
}
