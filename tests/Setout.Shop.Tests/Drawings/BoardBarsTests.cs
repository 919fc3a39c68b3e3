using System.Collections.Immutable;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.Drawings;

/// <summary>Boards with lanes and flaws on paper.</summary>
public sealed class BoardBarsTests
{
    private static readonly BreakdownPaper s_page = new(174, 220);

    // Trim 10; 45 of 150 with a kerf of 3: three lanes, of which the third is not needed. Clear from 10 to 500 and from 540 to 990.
    private static BoardPlan Plan(out Plan plan)
    {
        plan = RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, count: 2, length: 480}\n- {part: b, of: rail, count: 2, length: 450}",
            "{stick: ash, section: 150 x 20, length: 1000, trim: 10, have: 1, name: board 3, rip: yes, flaws: [{from: 530, to: 540}, {from: 500, to: 535}]}");
        return Assert.Single(plan.Boards);
    }

    private static IEnumerable<GroupItem> Groups(IEnumerable<SceneItem> items) => items.OfType<GroupItem>().SelectMany(g => Groups(g.Items).Prepend(g));

    private static IEnumerable<string> Texts(IEnumerable<SceneItem> items) => items.SelectMany(i => i switch { TextItem t => [t.Text.PlainText], GroupItem g => Texts(g.Items), _ => Array.Empty<string>() });

    [Fact]
    public void Of_RippedAndFlawedBoard_ABarForEachLaneThatHoldsAPart()
    {
        BoardPlan boards = Plan(out Plan plan);
        Scene scene = Assert.Single(BoardBars.Of(plan, boards, s_page));
        // The parts are marked 1 and 2, so no board is called so.
        Assert.Equal(["rail-3-1", "rail-3-2"], Groups(scene.Items).Select(g => g.Key).Where(k => k.StartsWith("rail-", StringComparison.Ordinal)));
        string[] texts = [.. Texts(scene.Items)];
        Assert.Contains("board 3, board 3 (20 x 150 mm, 1000 mm, 2 flaws): lane 1 of 2 (3a), rip to 45 mm", texts);
        // 150 less two lanes and two kerfs.
        Assert.Contains("board 3, board 3 (20 x 150 mm, 1000 mm, 2 flaws): lane 2 of 2 (3b), rip to 45 mm; 54 mm stays beside it", texts);
        Assert.Contains(texts, t => t.Contains("rip into lanes (run 1) before", StringComparison.Ordinal));
        // All figures run from there, so what goes off it must be told.
        Assert.Contains("10 mm off; figures run from the trued end", string.Join(' ', texts), StringComparison.Ordinal);
        Assert.Contains("Board 3 is ripped into lanes of 45 mm. Board 3 has flaws from the end as it lies: 500 to 535 mm; 530 to 540 mm.", scene.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_RippedAndFlawedBoard_FlawsAndPartsStandWhereTheyAre()
    {
        BoardPlan boards = Plan(out Plan plan);
        Scene scene = Assert.Single(BoardBars.Of(plan, boards, s_page));
        foreach (GroupItem bar in Groups(scene.Items).Where(g => g.Key.StartsWith("rail-", StringComparison.Ordinal)))
        {
            // The bar itself is 980 mm between the trims; the two flaws are drawn as the one they make, 490 to 530 from the trued end.
            ShapeItem whole = bar.Items.OfType<ShapeItem>().First();
            double left = whole.Corners[0].X, scale = (whole.Corners[1].X - left) / 980;
            GroupItem flaw = Assert.Single(Groups(bar.Items), g => g.Title == "flaw 490 to 530, 500 to 540 on the board as it lies");
            HatchItem hatch = Assert.Single(flaw.Items.OfType<HatchItem>());
            Assert.Equal((490 * scale, 40 * scale), (hatch.Corner.X - left, hatch.Width), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-6);
            foreach (GroupItem part in Groups(bar.Items).Where(g => g.Key is "a" or "b"))
            {
                double from = (part.Items.OfType<ShapeItem>().First().Corners[0].X - left) / scale, to = (part.Items.OfType<ShapeItem>().First().Corners[1].X - left) / scale;
                Assert.True(to <= 490 + 1e-6 || from >= 530 - 1e-6, $"{part.Key} lies from {from} to {to}.");
            }
            Assert.Contains("from 530", Texts(bar.Items));
        }
    }

    [Fact]
    public void Of_RippedAndFlawedBoard_IsTheCommittedDrawing()
    {
        BoardPlan boards = Plan(out Plan plan);
        Snapshots.Match(SvgWriter.Write(Assert.Single(BoardBars.Of(plan, boards, s_page)), SvgOptions.Standalone), "ripped-board", "svg");
    }

    [Fact]
    public void Of_PlainBoards_SaysNothingOfLanesOrFlaws()
    {
        Plan plan = Sample.Plan("luthiers-bench");
        ImmutableArray<Scene> scenes = BoardBars.Of(plan, plan.Boards[0], s_page);
        Assert.All(scenes, s => Assert.DoesNotContain(Texts(s.Items), t => t.Contains("lane", StringComparison.Ordinal) || t.Contains("flaw", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("herb-rack", true)]
    [InlineData("luthiers-bench", false)]
    public void BenchSheets_ARippedBoard_HasItsCautionBesideIt(string sample, bool isRipped)
    {
        var sheets = BenchSheets.BenchSheetWriter.Compose(Sample.Plan(sample), "", Drawing.Documents.Paper.A4);
        string words = Core.Craft.Cautions.Of("rip").Words;
        bool isSaid = sheets.Sections.Where(s => s.Title.StartsWith("Breakdown", StringComparison.Ordinal))
            .Any(s => s.Blocks.OfType<Drawing.Documents.CautionBlock>().Any(c => c.Lines.Any(i => i.PlainText == words)));
        Assert.Equal(isRipped, isSaid);
    }

    [Fact]
    public void BenchSheets_CautionOfRipping_SpeaksOfRippingAloneAndDefers()
    {
        var sheets = BenchSheets.BenchSheetWriter.Compose(Sample.Plan("herb-rack"), "", Drawing.Documents.Paper.A4);
        string[] said = [.. sheets.Sections.Where(s => s.Title.StartsWith("Breakdown", StringComparison.Ordinal)).SelectMany(s => s.Blocks.OfType<Drawing.Documents.CautionBlock>())
            .Select(c => string.Join(' ', c.Lines.Select(i => i.PlainText))).Where(t => t.Contains("Rip only", StringComparison.Ordinal))];
        Assert.NotEmpty(said);
        Assert.All(said, t => Assert.DoesNotContain("label on the can", t, StringComparison.Ordinal));
        Assert.All(said, t => Assert.Contains("local codes and licensed practice come first", t, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_BoardsOfTwoTrims_EachTellsItsOwn()
    {
        Plan plan = Sample.Plan("herb-rack");
        string texts = string.Join(' ', BoardBars.Of(plan, plan.Boards.Single(b => b.Material.Name == "rails"), s_page).SelectMany(s => Texts(s.Items)));
        Assert.Matches("rail with a knot [^:]*, true as it is", texts);
        Assert.Contains("12.7 mm off first", texts, StringComparison.Ordinal);
    }
}
