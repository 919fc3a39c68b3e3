using Setout.Core.Craft;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using static Setout.Shop.Tests.Runs.HandPlan;

namespace Setout.Shop.Tests.Runs;

public class RunWordsTests
{
    private const string Square = "Measure along the true side that the cut is to be square to, and carry the line over with a large square: a raw side is seldom square.";

    private const string Shoe = "saws: {guided: {shoe: 5 1/8}}";

    // A sheet of 96 x 48 in: its edge trued, two strips of 5 7/8 ripped off, each squared and crosscut. Sizes in eighths of an inch.
    private static (HandPlan Hand, Plan Plan) Strips(string shop = Shoe, bool isHeavy = true)
    {
        var hand = new HandPlan(shop);
        int sheet = hand.Blank(768, 384, BlankUse.Stock), trued = hand.Blank(768, 382, BlankUse.Work), sliver = hand.Blank(768, 1, BlankUse.Waste);
        hand.Run(SawWay.Guide, RunKind.True, 0, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 2, sliver, trued, null) with { TakesTwo = isHeavy });
        int one = hand.Blank(768, 47, BlankUse.Work), left = hand.Blank(768, 334, BlankUse.Work), two = hand.Blank(768, 47, BlankUse.Work), rest = hand.Blank(768, 286, BlankUse.Keep);
        hand.Run(SawWay.Fence, RunKind.Size, 47, null,
            Cut(trued, GrainAxis.Across, BlankSide.NearEdge, 47, one, left, 1), Cut(left, GrainAxis.Across, BlankSide.NearEdge, 47, two, rest, 2));
        int oneTrue = hand.Blank(766, 47, BlankUse.Work), twoTrue = hand.Blank(766, 47, BlankUse.Work), endOne = hand.Blank(1, 47, BlankUse.Waste), endTwo = hand.Blank(1, 47, BlankUse.Waste);
        hand.Run(SawWay.Sled, RunKind.True, 0, null,
            Cut(one, GrainAxis.Along, BlankSide.NearEnd, 2, endOne, oneTrue, null, BlankSide.NearEdge, 1), Cut(two, GrainAxis.Along, BlankSide.NearEnd, 2, endTwo, twoTrue, null, BlankSide.NearEdge, 2));
        int a = hand.Blank(100, 47, BlankUse.Part, "Cs"), b = hand.Blank(100, 47, BlankUse.Part, "Cs"), c = hand.Blank(100, 47, BlankUse.Part, "Cs"), d = hand.Blank(100, 47, BlankUse.Part, "Cs");
        int aRest = hand.Blank(665, 47, BlankUse.Work), bRest = hand.Blank(564, 47, BlankUse.Waste, "Cs", 5), cRest = hand.Blank(665, 47, BlankUse.Work), dRest = hand.Blank(564, 47, BlankUse.Waste, "Cs", 5);
        hand.Run(SawWay.Sled, RunKind.Size, 100, sliver,
            Cut(oneTrue, GrainAxis.Along, BlankSide.NearEnd, 100, a, aRest, 3, BlankSide.NearEdge, 1), Cut(aRest, GrainAxis.Along, BlankSide.NearEnd, 100, b, bRest, 4, BlankSide.NearEdge, 1),
            Cut(twoTrue, GrainAxis.Along, BlankSide.NearEnd, 100, c, cRest, 3, BlankSide.NearEdge, 1), Cut(cRest, GrainAxis.Along, BlankSide.NearEnd, 100, d, dRest, 4, BlankSide.NearEdge, 1));
        return (hand, hand.Plan(least: 2));
    }

    [Fact]
    public void Of_StripsOffASheet_EachRunInWords()
    {
        WordedRuns runs = RunWords.Of(Strips().Plan);
        Assert.Equal("3 settings; this layout needs at least 2; 4 runs, for some need no setting", runs.Summary);
        Assert.Equal(["Run 1 of 4: true edges, 1/4 off", "Run 2 of 4: fence at 5 7/8", "Run 3 of 4: true ends, 1/4 off", "Run 4 of 4: sled, stop at 12 1/2"], runs.Runs.Select(r => r.Heading));
        Assert.Equal(["Hand-held saw along a straight edge; good face down", "Table saw, along the fence; good face up", "Table saw, on the sled; good face up", "Table saw, on the sled; good face up"], runs.Runs.Select(r => r.Saw));
        Assert.Equal(("sheet D", 1, "waste", "47 3/4 wide", "off the raw edge at 0, square to the end as bought at 0"), Line(runs.Runs[0].Cuts.Single()));
        Assert.Equal(("sheet D", 2, "D.1 and D.2", "96 x 35 3/4: keep", "at the fence: the edge trued in run 1, then the edge just sawn"), Line(runs.Runs[1].Cuts.Single()));
        Assert.Equal(("D.1", 1, "waste", "95 3/4 long", "off the raw end at 0; against the sled's fence: the edge trued in run 1"), Line(runs.Runs[2].Cuts[0]));
        Assert.Equal(("D.2", 1, "waste", "95 3/4 long", "off the raw end at 0; against the sled's fence: the edge sawn in run 2"), Line(runs.Runs[2].Cuts[1]));
        // The same is said of both strips: they share a line.
        WordedCuts crosscuts = Assert.Single(runs.Runs[3].Cuts);
        Assert.Equal(("D.1 and D.2", 2, "2 x Cs", "70 1/2 x 5 7/8: waste, enough for 5 spares", "at the stop: the end trued in run 3, then the end just sawn; against the sled's fence: the edge trued in run 1"), Line(crosscuts));
        Assert.Equal(("twice each", 4), (crosscuts.Often, crosscuts.Cuts.Length));
        Assert.Equal([("sheet D", "96 x 35 3/4")], runs.Kept.Select(k => (k.Name, k.Words)));
        Assert.Empty(runs.Waiting);
    }

    private static (string, int, string, string, string) Line(WordedCuts line) => (line.From, line.Times, line.Off, line.Remains, line.Edge);

    [Fact]
    public void Of_Settings_TryOnWasteThenMeasureTheFirst()
    {
        WordedRuns runs = RunWords.Of(Strips().Plan);
        Assert.Equal(["Cut one and measure it before the rest."], runs.Runs[1].Setting);
        Assert.Empty(runs.Runs[2].Setting);
        Assert.Equal(["Try the setting on waste first: birch 96 x 1/8, left of sheet D in run 1. Measure it.", "Cut one and measure it before the rest."], runs.Runs[3].Setting);
    }

    [Theory]
    [InlineData(true, "Two people for sheet D: it may weigh more than 51 lb.")]
    [InlineData(false, "")]
    public void Of_AHeavyBlank_AsksForTwo(bool isHeavy, string note) => Assert.Equal(note, string.Join(' ', RunWords.Of(Strips(isHeavy: isHeavy).Plan).Runs[0].Notes));

    [Theory]
    [InlineData("saws: {guided: {shoe: 5 1/8}}", RunKind.True, 2, "Clamp the straight edge on the good wood beyond the cut, its shoe side 5 3/8 from the raw edge and facing the cut; the blade takes the last of the 1/4, on the waste side.")]
    [InlineData("saws: {guided: {shoe: 5 1/8}}", RunKind.Size, 94, "Clamp the straight edge on D.1, its shoe side 6 5/8 from the reference edge and facing the cut; the blade runs just past 11 3/4, outside D.1.")]
    [InlineData("saws: {guided: {shoe: 5 1/8}}", RunKind.Break, 94, "Clamp the straight edge on D.1, its shoe side 6 5/8 from the reference edge and facing the cut; the blade runs just past 11 3/4, outside D.1.")]
    [InlineData("saws: {guided: {shoe: 5 1/8}}", RunKind.Size, 40, "D.1 is narrower than the shoe: clamp the straight edge beyond the cut, its shoe side 10 1/4 from the reference edge and facing the cut; the blade runs just past 5, outside D.1.")]
    [InlineData("saws: {guided: {shoe: 0}}", RunKind.Size, 40, "Clamp the straight edge on D.1, its shoe side 5 from the reference edge and facing the cut; the blade runs just past 5, outside D.1.")]
    [InlineData("lift: 51 lb", RunKind.Size, 94, "Clamp the straight edge on D.1, its shoe side 11 3/4 less the offset of your saw's shoe from the reference edge and facing the cut; the blade runs just past 11 3/4, outside D.1. Where the piece is narrower than the shoe: straight edge beyond the cut, its shoe side 11 7/8 and that offset from the reference edge; where no wood is there, on a piece of the same thickness laid beside it and fixed down. Measure the offset from the shoe's edge to the blade, and write it as saws: guided: shoe.")]
    [InlineData("lift: 51 lb", RunKind.True, 2, "Clamp the straight edge on the good wood beyond the cut, its shoe side 1/4 and the offset of your saw's shoe from the raw edge and facing the cut; the blade takes the last of the 1/4, on the waste side. Measure the offset from the shoe's edge to the blade, and write it as saws: guided: shoe.")]
    public void Of_TheHandHeldSaw_SaysWhereTheStraightEdgeIsClamped(string shop, RunKind kind, long figure, string words)
    {
        var hand = new HandPlan(shop);
        int sheet = hand.Blank(768, 384, BlankUse.Stock), off = hand.Blank(768, figure, BlankUse.Work), rest = hand.Blank(768, 383 - figure, BlankUse.Keep);
        hand.Run(SawWay.Guide, kind, kind == RunKind.True ? 0 : figure, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, figure, off, rest, kind == RunKind.True ? null : 0));
        string said = string.Join(' ', RunWords.Of(hand.Plan()).Runs.Single().Setting);
        // A true end is there from the start: an edge that is trued is square to it.
        Assert.Equal(kind == RunKind.True ? $"{words} {Square}" : words, said);
    }

    [Fact]
    public void Of_WoodThatWaits_IsNamedWithItsReading()
    {
        var hand = new HandPlan(Shoe);
        int sheet = hand.Blank(768, 384, BlankUse.Stock), off = hand.Blank(768, 47, BlankUse.Part, "Cs"), rest = hand.Blank(768, 336, BlankUse.Waiting, waiting: ["G1f", "G1f", "G2f"]);
        hand.Run(SawWay.Fence, RunKind.Size, 47, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 47, off, rest, 0));
        WordedRuns runs = RunWords.Of(hand.Plan());
        const string reading = "opening B2, clear width, once it stands (B2.width)";
        Assert.Equal($"96 x 42: put aside whole for G1f and G2f: waits for a reading of {reading}", runs.Runs[0].Cuts.Single().Remains);
        Assert.Equal(("sheet D", $"96 x 42, for G1f and G2f: waits for a reading of {reading}"), (runs.Waiting.Single().Name, runs.Waiting.Single().Whole));
        Assert.Equal("1 setting, the fewest for this layout", runs.Summary);
        Assert.Equal("at the fence: the edge as bought at 0", runs.Runs[0].Edge);
    }

    [Theory]
    [InlineData(SawWay.Fence, RunKind.Size, false, "fence")]
    [InlineData(SawWay.Fence, RunKind.Size, true, "fence")]
    [InlineData(SawWay.Fence, RunKind.Lane, false, "fence rip")]
    [InlineData(SawWay.Sled, RunKind.Size, false, "sled")]
    [InlineData(SawWay.Guide, RunKind.Break, false, "guide")]
    [InlineData(SawWay.Stop, RunKind.Size, false, "board saw")]
    public void Of_EachWay_HasItsCautions(SawWay way, RunKind kind, bool isNarrow, string keys)
    {
        var hand = new HandPlan(Shoe);
        int sheet = hand.Blank(768, 384, BlankUse.Stock), off = hand.Blank(768, 4, BlankUse.Work), rest = hand.Blank(768, 379, BlankUse.Keep);
        hand.Run(way, kind, 4, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 4, off, rest, 0) with { NeedsCarrier = isNarrow });
        WordedRun run = RunWords.Of(hand.Plan()).Runs.Single();
        Assert.Equal(keys.Replace("board saw", "board-saw", StringComparison.Ordinal).Split(' ').Select(k => Cautions.Of(k.Replace('-', ' '))), run.Mind);
        Assert.Equal(isNarrow, run.Notes.Any(n => n.Contains("carrier", StringComparison.Ordinal)));
    }

    [Fact]
    public void Of_LanesThatArePlaned_SayHowMuch()
    {
        var hand = new HandPlan(Shoe);
        int board = hand.Blank(768, 48, BlankUse.Stock), lane = hand.Blank(768, 14, BlankUse.Work), rest = hand.Blank(768, 31, BlankUse.Keep);
        hand.Run(SawWay.Fence, RunKind.Lane, 15, null, Cut(board, GrainAxis.Across, BlankSide.NearEdge, 15, lane, rest, 0) with { Planed = In(1, 8), PlanedRest = In(1, 16) });
        Assert.Equal(
            ["After each rip plane 1/8 off the sawn edge of the lane, and 1/16 off the sawn edge of what remains unless that is waste: the planed edge lies at the fence for the next rip."], RunWords.Of(hand.Plan()).Runs.Single().Setting);
    }

    /// <summary>The example of docs/runs.md is what the sample says.</summary>
    [Fact]
    public void Of_TheJarCabinet_IsWhatThePageShows()
    {
        string page = File.ReadAllText(Setout.Testing.Repository.PathOf("docs/runs.md"));
        string[] shown = [.. page[page.IndexOf("```text", StringComparison.Ordinal)..].Split('\n').Skip(1).TakeWhile(l => l != "```")];
        WordedRun run = RunWords.Of(Sample.Plan("jar-cabinet")).Runs.Single(r => r.Heading == shown[0]);
        WordedCuts line = Assert.Single(run.Cuts);
        Assert.Equal([$"{line.Material}  {run.Saw}. {char.ToUpperInvariant(run.Edge[0])}{run.Edge[1..]}.", .. run.Setting, $"  {line.From}   {line.Often}   off: {line.Off}   remains: {line.Remains.Replace(": ", ", ", StringComparison.Ordinal)}", .. run.Notes], shown.Skip(1));
    }

    /// <summary>Whatever the planner gives: each cut stands in one line, and each part that comes off is named as often as it does.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_NothingIsLeftUnsaid(string sample)
    {
        Plan plan = Sample.Plan(sample);
        WordedRuns runs = RunWords.Of(plan);
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (WordedRun run in runs.Runs)
        {
            Assert.Equal(run.Run.Cuts.OrderBy(c => c.Blank), run.Cuts.SelectMany(c => c.Cuts).OrderBy(c => c.Blank));
            foreach (WordedCuts line in run.Cuts)
            {
                int blanks = line.Cuts.Length / line.Times;
                foreach (string word in line.Off.Split(": ")[^1].Split("; ").Append(line.Remains.EndsWith(", at its size: measure it", StringComparison.Ordinal) ? line.Remains.Split(',')[0] : ""))
                {
                    string[] times = word.Split(" x ");
                    bool isCounted = times.Length == 2 && int.TryParse(times[0], out _);
                    string mark = (isCounted ? times[1] : word).Replace("part ", "", StringComparison.Ordinal).Split(" (")[0];
                    counts[mark] = counts.GetValueOrDefault(mark) + (blanks * (isCounted ? int.Parse(times[0]) : 1));
                }
            }
        }
        ILookup<string, int> off = plan.Runs.Runs.SelectMany(r => r.Cuts).SelectMany(c => new[] { c.Off, c.Rest }).OfType<int>().Where(id => plan.Runs.Blanks[id].Use == BlankUse.Part)
            .ToLookup(id => plan.Set.Parts.First(p => p.Key == plan.Runs.Blanks[id].PartId).Mark);
        Assert.NotEmpty(off);
        Assert.All(off, g => Assert.Equal(g.Count(), counts.GetValueOrDefault(g.Key)));
        Assert.Equal(Enumerable.Range(1, runs.Runs.Length), runs.Runs.Select(r => r.Run.Number));
        Assert.All(runs.Runs, r => Assert.NotEmpty(r.Mind));
    }
}
