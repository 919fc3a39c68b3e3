using Setout.Core.Craft;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Drawing.Documents;
using Setout.Shop.BenchSheets;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Tests.Rack;
using static Setout.Shop.Tests.Runs.HandPlan;

namespace Setout.Shop.Tests.Runs;

/// <summary>What else a run says: what remains by difference, what to look at, how wood is named, what lies about unused.</summary>
public class RunRemarkTests
{
    [Theory]
    // A later rip brings what remains to its size; a later crosscut does not.
    [InlineData(GrainAxis.Across, "12 1/2 wide")]
    [InlineData(GrainAxis.Along, "12 1/2 wide: measure it")]
    public void Of_WhatRemainsByDifference_SaysToMeasureIt(GrainAxis then, string remains)
    {
        var hand = new HandPlan();
        int sheet = hand.Blank(768, 201, BlankUse.Stock), off = hand.Blank(768, 100, BlankUse.Keep), rest = hand.Blank(768, 100, BlankUse.Work);
        int piece = then == GrainAxis.Along ? hand.Blank(300, 100, BlankUse.Part, "Cs") : hand.Blank(768, 50, BlankUse.Part, "Cs"), waste = then == GrainAxis.Along ? hand.Blank(467, 100, BlankUse.Waste) : hand.Blank(768, 49, BlankUse.Waste);
        hand.Run(SawWay.Fence, RunKind.Size, 100, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 100, off, rest, 0));
        hand.Run(SawWay.Guide, RunKind.Size, then == GrainAxis.Along ? 300 : 50, null, Cut(rest, then, then == GrainAxis.Along ? BlankSide.NearEnd : BlankSide.NearEdge, then == GrainAxis.Along ? 300 : 50, piece, waste, 0));
        Assert.Equal(remains, RunWords.Of(hand.Plan()).Runs[0].Cuts.Single().Remains);
    }

    [Fact]
    public void Of_ACutThatLeavesNothing_SaysDust()
    {
        var hand = new HandPlan();
        int sheet = hand.Blank(768, 100, BlankUse.Stock), off = hand.Blank(768, 99, BlankUse.Part, "Cs");
        hand.Run(SawWay.Fence, RunKind.Size, 99, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 99, off, null, 0));
        Assert.Equal("dust", RunWords.Of(hand.Plan()).Runs[0].Cuts.Single().Remains);
    }

    [Fact]
    public void Of_TheLastPartOfABlank_SaysToMeasureIt()
    {
        var hand = new HandPlan();
        int sheet = hand.Blank(768, 199, BlankUse.Stock), off = hand.Blank(768, 99, BlankUse.Part, "Cs"), last = hand.Blank(768, 99, BlankUse.Part, "Cs");
        hand.Run(SawWay.Fence, RunKind.Size, 99, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 99, off, last, 0));
        Assert.Equal("Cs, at its size: measure it", RunWords.Of(hand.Plan()).Runs[0].Cuts.Single().Remains);
    }

    [Fact]
    public void Of_ABoardRippedThroughItsFlaw_SaysToLookAtIt()
    {
        WordedRun[] rips = [.. RunWords.Of(Sample.Plan("herb-rack")).Runs.Where(r => r.Run.Kind == RunKind.Lane)];
        Assert.Contains("Board 7 is ripped through a flaw: look at it first; a loose knot comes out at the blade, so knock it out before.", rips[0].Notes);
        // The slats' board has none.
        Assert.DoesNotContain(rips[1].Notes, n => n.Contains("flaw", StringComparison.Ordinal));
    }

    /// <summary>A strip that needs a carrier, or a short piece, is not told to take a push stick in the next line.</summary>
    [Fact]
    public void GistOf_TheFence_LeavesWhatPushesToTheNote() => Assert.DoesNotContain("push stick", Cautions.GistOf("fence"), StringComparison.OrdinalIgnoreCase);

    [Fact]
    public void Of_AGrooveInTheMiddleOfAStrip_SaysWhereTheFenceStands()
    {
        string before = Assert.Single(RunWords.Of(Sample.Plan("sewing-corner")).Runs.SelectMany(r => r.Before));
        // 3/4 thick, 1/4 wide: 1/4 on either side.
        Assert.Contains("groove along one edge for the panel, in the middle of the thickness, whole length; depth 3/8, width 1/4. Choose the better edge for it on each strip, and chalk it. Good face at the fence, fence 1/4 from the groove.", before, StringComparison.Ordinal);
    }

    /// <summary>Names of the plan itself: nobody looks for a board 1 that is not there.</summary>
    [Theory]
    [InlineData("herb-rack", "Off board 6 comes 6a. What remains keeps the name, and so does the last piece when all else is waste: the last lane of board 6 is still 6.")]
    [InlineData("amateur-workbench", "on what comes off. What remains keeps the name, and so does the last piece when all else is waste. Mark")]
    public void Of_ASample_NamesAreThoseOfThePlan(string sample, string words) => Assert.Contains(words, RunWords.Of(Sample.Plan(sample)).Names, StringComparison.Ordinal);

    /// <summary>All that runs left stands on the pages of the next plan: as its stock, or as what it does not use.</summary>
    [Theory]
    [InlineData("jar-cabinet")]
    [InlineData("amateur-workbench")]
    public void Of_APlanMadeAgain_NamesWhatItDoesNotUse(string sample)
    {
        var shop = new SawnShop(Sample.Source(sample));
        Plan plan = shop.Plan();
        Assert.Empty(RunWords.Of(plan).Unused);
        var sawn = SawnPlan.Of(plan);
        foreach (Run run in sawn.Runs.Runs) Assert.Null(shop.Mark(plan, sawn, run.Number));
        Plan after = shop.Plan();
        string[] used =
        [
            .. after.Sheets.SelectMany(s => s.Outcome.Layout.Sheets.Select(l => s.Stock.First(k => k.Id == l.StockId))).Concat(after.Boards.SelectMany(b => b.Outcome.Layout.Boards.Select(l => b.Stock.First(k => k.Id == l.StockId))))
                .Where(l => l.IsBlank).Select(l => l.Size.Name),
        ];
        PutAside[] unused = [.. RunWords.Of(after).Unused];
        Assert.NotEmpty(unused);
        Assert.Equal(shop.Blanks.Order(StringComparer.Ordinal), used.Concat(unused.Select(u => u.Name)).Order(StringComparer.Ordinal));
        var pages = PageComposer.Compose(BenchSheetWriter.Compose(after, "", Paper.Letter)).Pages.SelectMany(p => p.Pieces.OfType<TextPiece>()).Select(t => t.Text.PlainText).ToList();
        Assert.Contains("In hand, not used by this plan", pages);
        Assert.All(unused, u => Assert.Contains(u.Name, pages));
    }

    /// <summary>A sheet that stays whole is called as it was bought, whatever the unit of the piece.</summary>
    [Fact]
    public void Of_AMetricSheetThatWaits_HasItsSizeAsWritten() =>
        Assert.Contains(RunWords.Of(Sample.Plan("sewing-corner")).Waiting, w => w.Words.StartsWith("1525 x 1525 mm, for ", StringComparison.Ordinal));

    [Theory]
    [InlineData("7", "board 7")]
    [InlineData("7a", "board 7a")]
    [InlineData("K7", "K7")]
    public void SpokenStock_ABoardWithANameOfItsOwn_IsNeverABareNumber(string name, string spoken)
    {
        Plan plan = RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, length: 900}", $"{{stick: ash, section: 45 x 20, length: 1000, have: 1, name: \"{name}\"}}");
        Assert.Equal(spoken, BlankNames.Of(plan).SpokenStock(0, 0));
    }

    [Fact]
    public void Compose_APlanThatBuysNothing_SaysSo()
    {
        Plan plan = RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, length: 900}", "{stick: ash, section: 45 x 20, length: 1000, have: 1, name: end}");
        string all = string.Join(' ', PageComposer.Compose(BenchSheetWriter.Compose(plan, "", Paper.A4)).Pages.SelectMany(p => p.Pieces.OfType<TextPiece>()).Select(t => t.Text.PlainText));
        Assert.Contains("Nothing to buy.", all, StringComparison.Ordinal);
        Assert.DoesNotContain("No prices are known", all, StringComparison.Ordinal);
    }
}
