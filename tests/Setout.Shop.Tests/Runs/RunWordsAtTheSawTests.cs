// Over 200 lines: a table of sentences, one short test each.
using Setout.Core.Craft;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using static Setout.Shop.Tests.Runs.HandPlan;

namespace Setout.Shop.Tests.Runs;

/// <summary>What the person at the saw needs beside the figure: which end, square to what, which flaw, what holds the long end, what is not known yet.</summary>
public class RunWordsAtTheSawTests
{
    private const string Shoe = "saws: {guided: {shoe: 5 1/8}}";

    // An edge of the first sheet trued, then its end and that of another sheet, which loses more.
    private static HandPlan Trued()
    {
        var hand = new HandPlan(Shoe);
        int one = hand.Blank(768, 384, BlankUse.Stock), oneEdge = hand.Blank(768, 382, BlankUse.Work), two = hand.Blank(768, 384, BlankUse.Stock);
        hand.Run(SawWay.Guide, RunKind.True, 0, null, Cut(one, GrainAxis.Across, BlankSide.NearEdge, 2, null, oneEdge, null));
        int oneEnd = hand.Blank(766, 382, BlankUse.Work), twoEnd = hand.Blank(764, 384, BlankUse.Work);
        hand.Run(SawWay.Guide, RunKind.True, 0, null,
            Cut(oneEdge, GrainAxis.Along, BlankSide.NearEnd, 2, null, oneEnd, null) with { TakesTwo = true }, Cut(two, GrainAxis.Along, BlankSide.NearEnd, 4, null, twoEnd, null) with { TakesTwo = true });
        return hand;
    }

    [Fact]
    public void Of_EndsThatAreTrued_SaysSquareToWhichEdge()
    {
        WordedRun run = RunWords.Of(Trued().Plan()).Runs[1];
        Assert.Equal(["off the raw end at 0, square to the edge trued in run 1", "off the raw end at 0, square to the edge as bought at 0"], run.Cuts.Select(c => c.Edge));
        Assert.Contains(run.Setting, s => s.Contains("large square", StringComparison.Ordinal));
    }

    /// <summary>Each figure of a run that trues has its whole sentence: from where, on which wood, on which side the blade is.</summary>
    [Fact]
    public void Of_SidesThatLoseDifferentFigures_SaysTheWholeSentenceForEach()
    {
        WordedRun run = RunWords.Of(Trued().Plan()).Runs[1];
        Assert.Equal(
            [
                "For 1/4 off: clamp the straight edge on the good wood beyond the cut, its shoe side 5 3/8 from the raw end and facing the cut; the blade takes the last of the 1/4, on the waste side.",
                "For 1/2 off: clamp the straight edge on the good wood beyond the cut, its shoe side 5 5/8 from the raw end and facing the cut; the blade takes the last of the 1/2, on the waste side.",
            ], run.Setting.Take(2));
        Assert.Equal(["1/4 off: dust", "1/2 off: dust"], run.Cuts.Select(c => c.Off));
        Assert.Contains("each may weigh more than 51 lb.", Assert.Single(run.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_ARunThatTruesEdgesAndEnds_NamesBoth()
    {
        var hand = new HandPlan(Shoe);
        int sheet = hand.Blank(768, 384, BlankUse.Stock), edge = hand.Blank(768, 382, BlankUse.Work), end = hand.Blank(766, 382, BlankUse.Work);
        hand.Run(SawWay.Guide, RunKind.True, 0, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 2, null, edge, null), Cut(edge, GrainAxis.Along, BlankSide.NearEnd, 2, null, end, null));
        WordedRun run = RunWords.Of(hand.Plan()).Runs.Single();
        Assert.Equal("Run 1 of 1: true edges and ends", run.Heading);
        Assert.Contains("from the raw edge or end", run.Setting[0], StringComparison.Ordinal);
        Assert.Equal("off the raw end at 0, square to the edge just trued", run.Cuts[1].Edge);
    }

    [Fact]
    public void Of_ARoughCut_SaysTheFigureHoldsIt()
    {
        var hand = new HandPlan(Shoe);
        int sheet = hand.Blank(768, 384, BlankUse.Stock), off = hand.Blank(768, 94, BlankUse.Work), rest = hand.Blank(768, 289, BlankUse.Keep);
        hand.Run(SawWay.Guide, RunKind.Rough, 94, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 94, off, rest, 0));
        Assert.Contains(RunWords.Of(hand.Plan()).Runs.Single().Setting, s => s.Contains("add nothing", StringComparison.Ordinal) && s.Contains("what remains is true at this cut", StringComparison.Ordinal));
        // And what comes off has no true edge there.
        var sides = new SideRuns(hand.Plan().Runs);
        Assert.Equal((null, 1), (sides.Of(off, BlankSide.FarEdge), sides.Of(rest, BlankSide.NearEdge)));
    }

    [Fact]
    public void Of_APieceThatOnlyWasteComesOff_SaysWasteIsOffAndThePieceStays()
    {
        var hand = new HandPlan(Shoe);
        int sheet = hand.Blank(768, 384, BlankUse.Stock), stays = hand.Blank(768, 376, BlankUse.Work), waste = hand.Blank(768, 7, BlankUse.Waste);
        hand.Run(SawWay.Fence, RunKind.Size, 376, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 376, stays, waste, 0));
        WordedCuts line = RunWords.Of(hand.Plan()).Runs.Single().Cuts.Single();
        Assert.Equal(("waste 96 x 7/8", "sheet D, 47 wide"), (line.Off, line.Remains));
    }

    [Fact]
    public void Of_BoardsWithFlaws_SaysWhichEndAndWhatIsSound()
    {
        WordedRuns runs = RunWords.Of(Sample.Plan("herb-rack"));
        // The board of 2100 mm has its flaw from 640 to 710 mm, the rail of 1450 mm from 905 to 940 mm (samples/shop.yaml).
        Assert.Equal(2, runs.Runs.SelectMany(r => r.Setting).Count(s => s.EndsWith(": chalk the end that its flaws are measured from, the end at 0 of the drawing.", StringComparison.Ordinal)));
        Assert.Contains(runs.Runs.SelectMany(r => r.Cuts), c => c.Edge == "mark 710 from the raw end at 0, where its flaws are measured from; blade on the flaw's side of the mark");
        // 905 - 880 - 3.2 = 21.8 and 940 - 883.2 = 56.8 of the 566.8 that remain, by a kerf of 1/8 in; 566.8 - 56.8 = 510.
        Assert.Contains(runs.Kept, k => k.Words == "566.8 x 45; flaw 21.8 to 56.8 from the end sawn in run 4, 510 of it sound in one length");
        // What lies before the flaw, with 12.7 raw: 640 - 12.7 = 627.3.
        Assert.Contains(runs.Kept, k => k.Words == "706.8 x 45, raw at the 0 end; flaw 640 to 706.8 from the end that its flaws are measured from, 627.3 of it sound in one length");
    }

    [Fact]
    public void Of_LanesOfTheHerbRack_ThePlanedEdgeLiesAtTheFence()
    {
        WordedRun run = RunWords.Of(Sample.Plan("herb-rack")).Runs[0];
        Assert.Equal(RunKind.Lane, run.Run.Kind);
        Assert.All(run.Cuts, c => Assert.Equal("at the fence: the edge as bought at 0, then the edge just planed", c.Edge));
        Assert.Contains(run.Setting, s => s.StartsWith("After each rip plane 0.9 off", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_PartsMarkedByNumbers_HaveTheirNames() =>
        Assert.Contains(RunWords.Of(Sample.Plan("herb-rack")).Runs.SelectMany(r => r.Cuts), c => c.Off == "2 x part 4 (slats)");

    [Theory]
    // The usual sled: its stop goes 48 in from the blade.
    [InlineData(SawWay.Sled, 385, "Support the long end of sheet D level with the sled.")]
    [InlineData(SawWay.Sled, 384, "")]
    [InlineData(SawWay.Stop, 385, "Support the long end of sheet D level with the saw's rest.")]
    [InlineData(SawWay.Fence, 385, "Support sheet D level with the table before, behind and beside the blade.")]
    [InlineData(SawWay.Fence, 384, "")]
    [InlineData(SawWay.Guide, 385, "")]
    public void Of_LongWood_SaysWhatHoldsItUp(SawWay way, long along, string note)
    {
        var hand = new HandPlan(Shoe);
        int sheet = hand.Blank(along, 100, BlankUse.Stock), off = hand.Blank(96, 100, BlankUse.Work), rest = hand.Blank(along - 97, 100, BlankUse.Keep);
        hand.Run(way, RunKind.Size, 96, null, Cut(sheet, GrainAxis.Along, BlankSide.NearEnd, 96, off, rest, 0));
        Assert.Equal(note, string.Join(' ', RunWords.Of(hand.Plan()).Runs.Single().Notes));
    }

    [Theory]
    // Sizes in eighths of an inch: 8 7/8 cut to 6; 23 1/4 to 20; 96 to 6; 28 3/4 to 22; 30 to 15.
    [InlineData(SawWay.Stop, 71, 48, "Clamp sheet D: it is short.")]
    [InlineData(SawWay.Stop, 186, 160, "Clamp sheet D: it is short.")]
    [InlineData(SawWay.Stop, 384, 48, "Clamp sheet D: what comes off is short, and no hand holds it at the stop.")]
    [InlineData(SawWay.Stop, 230, 176, "Clamp sheet D: what remains is short.")]
    [InlineData(SawWay.Stop, 240, 120, "")]
    [InlineData(SawWay.Sled, 71, 48, "Clamp sheet D to the sled: it is short.")]
    [InlineData(SawWay.Sled, 230, 176, "Clamp sheet D to the sled: what remains is short.")]
    [InlineData(SawWay.Guide, 71, 48, "")]
    public void Of_ShortWood_SaysWhatHoldsIt(SawWay way, long along, long figure, string note)
    {
        var hand = new HandPlan(Shoe);
        int board = hand.Blank(along, 24, BlankUse.Stock), part = hand.Blank(figure, 24, BlankUse.Part, "Cs"), rest = hand.Blank(along - figure - 1, 24, BlankUse.Waste);
        hand.Run(way, RunKind.Size, figure, null, Cut(board, GrainAxis.Along, BlankSide.NearEnd, figure, part, rest, 0));
        Assert.Equal(note, string.Join(' ', RunWords.Of(hand.Plan()).Runs.Single().Notes));
    }

    [Theory]
    [InlineData(95, "Sheet D is short along the fence: two push blocks that hold down and forward; with a stick at the end alone it turns.")]
    [InlineData(96, "")]
    public void Of_ShortWoodAtTheFence_SaysWhatHoldsIt(long along, string note)
    {
        var hand = new HandPlan(Shoe);
        int sheet = hand.Blank(along, 80, BlankUse.Stock), part = hand.Blank(along, 40, BlankUse.Part, "Cs"), rest = hand.Blank(along, 39, BlankUse.Keep);
        hand.Run(SawWay.Fence, RunKind.Size, 40, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 40, part, rest, 0));
        Assert.Equal(note, string.Join(' ', RunWords.Of(hand.Plan()).Runs.Single().Notes));
    }

    /// <summary>A mark has its figure wherever it stands: in the heading where it is the same for all, and with each row.</summary>
    [Fact]
    public void Of_AFlawThatIsCutAway_SaysWhereToMark()
    {
        var hand = new HandPlan();
        int board = hand.Blank(768, 24, BlankUse.Stock), part = hand.Blank(200, 24, BlankUse.Part, "Cs"), left = hand.Blank(567, 24, BlankUse.Work), flaw = hand.Blank(80, 24, BlankUse.Waste), good = hand.Blank(486, 24, BlankUse.Work);
        hand.Run(SawWay.Stop, RunKind.Size, 200, null, Cut(board, GrainAxis.Along, BlankSide.NearEnd, 200, part, left, 0));
        hand.Run(SawWay.Stop, RunKind.Clear, 0, null, Cut(left, GrainAxis.Along, BlankSide.NearEnd, 81, flaw, good, 1));
        WordedRun run = RunWords.Of(hand.Plan()).Runs[1];
        Assert.Equal(("Run 2 of 2: cut flaws away, 10 1/8 off", "mark 10 1/8 from the end sawn in run 1; blade on the flaw's side of the mark"), (run.Heading, run.Edge));
    }

    [Fact]
    public void Of_AFlawAtUnlikePlaces_SaysWhereToMarkInEachRow()
    {
        var hand = new HandPlan();
        int one = hand.Blank(768, 24, BlankUse.Stock), two = hand.Blank(768, 24, BlankUse.Stock), goodOne = hand.Blank(687, 24, BlankUse.Keep), goodTwo = hand.Blank(686, 24, BlankUse.Keep);
        hand.Run(SawWay.Stop, RunKind.Clear, 0, null, Cut(one, GrainAxis.Along, BlankSide.NearEnd, 81, null, goodOne, 0), Cut(two, GrainAxis.Along, BlankSide.NearEnd, 82, null, goodTwo, 0));
        WordedRun run = RunWords.Of(hand.Plan()).Runs.Single();
        Assert.Equal("Run 1 of 1: cut flaws away", run.Heading);
        Assert.Equal(["mark 10 1/8 from the end as bought at 0; blade on the flaw's side of the mark", "mark 10 1/4 from the end as bought at 0; blade on the flaw's side of the mark"], run.Cuts.Select(c => c.Edge));
    }

    /// <summary>Clamped beyond the cut, the straight edge needs wood there: at 4 + 1/8 + 5 1/8 = 9 1/4.</summary>
    [Theory]
    [InlineData(43, "There is no wood under the straight edge at sheet D: lay a piece of the same thickness beside it, fixed down, to carry straight edge and shoe.")]
    [InlineData(74, "There is no wood under the straight edge at sheet D: lay a piece of the same thickness beside it, fixed down, to carry straight edge and shoe.")]
    [InlineData(75, "")]
    public void Of_AStraightEdgeBeyondTheWood_SaysWhatCarriesIt(long across, string beside)
    {
        var hand = new HandPlan(Shoe);
        int sheet = hand.Blank(270, across, BlankUse.Stock), part = hand.Blank(270, 32, BlankUse.Part, "Cs"), rest = hand.Blank(270, across - 33, BlankUse.Waste);
        hand.Run(SawWay.Guide, RunKind.Size, 32, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 32, part, rest, 0));
        Assert.Equal(
            $"Cs is narrower than the shoe: clamp the straight edge beyond the cut, its shoe side 9 1/4 from the reference edge and facing the cut; the blade runs just past 4, outside Cs. {beside}".TrimEnd(),
            string.Join(' ', RunWords.Of(hand.Plan()).Runs.Single().Setting));
    }

    /// <summary>What nobody measured is no figure below zero: both cases are said.</summary>
    [Fact]
    public void Of_AShoeThatNobodyMeasured_SaysBothCases()
    {
        var hand = new HandPlan("lift: 51 lb");
        int sheet = hand.Blank(270, 43, BlankUse.Stock), part = hand.Blank(270, 32, BlankUse.Part, "Cs"), rest = hand.Blank(270, 10, BlankUse.Waste);
        hand.Run(SawWay.Guide, RunKind.Size, 32, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 32, part, rest, 0));
        Assert.Equal(
            "Clamp the straight edge on Cs, its shoe side 4 less the offset of your saw's shoe from the reference edge and facing the cut; the blade runs just past 4, outside Cs. "
            + "Where the piece is narrower than the shoe: straight edge beyond the cut, its shoe side 4 1/8 and that offset from the reference edge; where no wood is there, on a piece of the same thickness laid beside it and fixed down.",
            RunWords.Of(hand.Plan()).Runs.Single().Setting[0]);
    }

    [Fact]
    public void Of_AThicknessThatNobodyRead_IsSaidFirstAndBesideItsRuns()
    {
        WordedRuns runs = RunWords.Of(Sample.Plan("jar-cabinet"));
        Assert.Equal("First read the thickness of birch (23/32 stands in), thin (15/32 stands in) and bottoms (7/32 stands in) with a calliper at two spots: setout record FILE birch.thickness READING.", runs.First[0]);
        string[] rests = [.. runs.Runs.Where(r => r.Setting.Any(s => s.StartsWith("This figure rests on the thickness of birch", StringComparison.Ordinal))).Select(r => r.Heading)];
        // The deck is the width less two thicknesses, the side is as long as was written.
        Assert.Contains(rests, h => h.EndsWith(": sled, stop at 36 9/16", StringComparison.Ordinal));
        Assert.DoesNotContain(rests, h => h.EndsWith(": sled, stop at 32", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_SawsThatNobodyTold_AreNamedWhereTheyAreUsed()
    {
        var hand = new HandPlan(Shoe);
        int sheet = hand.Blank(768, 384, BlankUse.Stock), off = hand.Blank(94, 384, BlankUse.Work), rest = hand.Blank(673, 384, BlankUse.Work), part = hand.Blank(94, 94, BlankUse.Work), keep = hand.Blank(94, 289, BlankUse.Keep);
        hand.Run(SawWay.Guide, RunKind.Size, 94, null, Cut(sheet, GrainAxis.Along, BlankSide.NearEnd, 94, off, rest, 0));
        hand.Run(SawWay.Sled, RunKind.Size, 94, null, Cut(off, GrainAxis.Across, BlankSide.NearEdge, 94, part, keep, 0, BlankSide.NearEnd, 0));
        Assert.Equal(
            "Taken as usual, because the shop file says nothing of it: a sled for cuts up to 24 in, its stop up to 48 in from the blade. Where yours is another, or you have none, write it under saws in the shop file before you cut.",
            RunWords.Of(hand.Plan()).First[^1]);
        // The shop of the samples tells of all its saws.
        Assert.DoesNotContain(RunWords.Of(Sample.Plan("jar-cabinet")).First, f => f.StartsWith("Taken as usual", StringComparison.Ordinal));
    }

    /// <summary>A caution is whole where it comes up first; then its gist and the run to look at.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_EachCautionIsWholeOnce(string sample)
    {
        WordedRuns runs = RunWords.Of(Sample.Plan(sample));
        foreach (Caution caution in runs.Runs.SelectMany(r => r.Mind).Distinct())
        {
            WordedRun[] with = [.. runs.Runs.Where(r => r.Mind.Contains(caution))];
            Assert.Contains(caution.Words, with[0].MindInTurn, StringComparison.Ordinal);
            Assert.All(with.Skip(1), r => Assert.Contains($"{Cautions.GistOf(caution.Key)} (run {with[0].Run.Number}).", r.MindInTurn, StringComparison.Ordinal));
            Assert.All(with.Skip(1), r => Assert.DoesNotContain(caution.Words, r.MindInTurn, StringComparison.Ordinal));
        }
    }
}
