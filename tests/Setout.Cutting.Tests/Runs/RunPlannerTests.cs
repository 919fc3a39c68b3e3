// Over 200 lines: each rule of the planner by itself, on a layout small enough to be read.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Testing.Runs;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Runs;

/// <summary>What the planner does with small layouts, each rule by itself. Whole numbers are millimetres; every plan goes through the simulator too.</summary>
public class RunPlannerTests
{
    private static readonly SawLimits s_limits = new(
        new(Mm(3), Mm(700), Mm(2600), Mm(40), Mm(10)), new(Mm(600), Mm(1200)), new(Mm(3), Mm(130), Mm(2600), Mm(2)), new(Mm(3), Mm(200)), Mm(3));

    private static readonly EdgeTrim s_raw = EdgeTrim.AllRound(Mm(10));

    private static OrderedRuns Planned(SawLimits limits, params ImmutableArray<RunMaterial> materials)
    {
        OrderedRuns ordered = new CheckedRunPlanner(new RunPlanner()).Plan(materials, limits);
        Assert.Empty(SawSimulator.Check(materials, limits, ordered));
        return ordered;
    }

    private static RunSheets Sheets(SheetInstance instance, SheetLayout layout, params string[] held) => new("ply", [.. held], instance, layout);

    private static string Told(RunPlan plan) => string.Join("; ", plan.Runs.Select(r => $"{r.Way} {r.Kind} {r.Figure.ToMillimetres():0.###} x{r.Cuts.Length}"));

    // Trued 980 x 580: two strips of 200, 6 parts of 300, what is left 174.
    private static readonly SheetInstance s_six = Instance([Part("side", 300, 200, 6)], [Stock("sheet", 1000, 600, trim: s_raw)], 3, KeepRule.Nothing);

    private static Division Strip => Crosscuts(Mm(0), Slice(300, Lies("side")), Slice(300, Lies("side")), Slice(300, Lies("side")), Slice(71, WasteNode.Instance));

    [Fact]
    public void Plan_TwoEqualStrips_EachSettingOnce()
    {
        OrderedRuns ordered = Planned(s_limits, Sheets(s_six, Layout(new LaidSheet("sheet", Rips(Mm(0), Slice(200, Strip), Slice(200, Strip), Slice(174, WasteNode.Instance))))));
        // The reference edge, both strips at one fence, both ends squared, six lengths at one stop.
        Assert.Equal("Guide True 0 x1; Fence Size 200 x2; Sled True 0 x2; Sled Size 300 x6", Told(ordered.Plan));
        // The ends are squared without a stop: nothing is set for that.
        Assert.Equal((3, true), (ordered.Plan.Settings, ordered.Plan.IsFewest));
        RunCut second = ordered.Plan.Runs[1].Cuts[1];
        Assert.Equal((BlankSide.NearEdge, 2), (second.From, second.FromRun));
    }

    [Fact]
    public void Plan_PartThatWaits_StaysWholeWithWhatIsLeft()
    {
        SheetInstance instance = Instance([Part("side", 300, 200, 3), Part("front", 400, 150)], [Stock("sheet", 1000, 600, trim: s_raw)], 3, KeepRule.Nothing);
        Division fronts = Crosscuts(Mm(0), Slice(400, Lies("front")), Slice(577, WasteNode.Instance));
        OrderedRuns ordered = Planned(s_limits, Sheets(instance, Layout(new LaidSheet("sheet", Rips(Mm(0), Slice(150, fronts), Slice(200, Strip), Slice(224, WasteNode.Instance)))), "front"));
        Assert.DoesNotContain(ordered.Plan.Runs, r => r.Figure == Mm(150) || r.Figure == Mm(400));
        RunBlank waits = Assert.Single(ordered.Plan.Blanks, b => b.Use == BlankUse.Waiting);
        // 600 - 10 - 200 - 3; its far edge is still raw.
        Assert.Equal((Mm(1000), Mm(387), Mm(10)), (waits.Along, waits.Across, waits.Trim.AcrossEnd));
        Assert.Equal(["front"], waits.Waiting);
        // The strip that is cut comes first in the layout that is given back.
        Assert.Equal(Mm(200), Assert.IsType<Division>(ordered.Sheets[0].Sheets[0].Root).Slices[0].Size);
    }

    [Fact]
    public void Plan_SheetTooHeavyForOne_IsPartedByTheGuidedSawBeyondTheLine()
    {
        // 1960 x 980 mm trued; strips of 300, 300, 200 and 171 left: more than the 2 + 3 mm that a rough cut wants.
        SheetInstance instance = Instance([Part("long", 1900, 300, 2), Part("short", 1800, 200)], [Stock("sheet", 1980, 1000, trim: s_raw)], 3, KeepRule.Nothing);
        Slice Of(long across, string part, long along) => Slice(across, Crosscuts(Mm(0), Slice(along, Lies(part)), Slice(1960 - along - 3, WasteNode.Instance)));
        var sheets = Sheets(instance, Layout(new LaidSheet("sheet", Rips(Mm(0), Of(300, "long", 1900), Of(300, "long", 1900), Of(200, "short", 1800), Slice(171, WasteNode.Instance))))) with { MostArea = Mm(1980) * Mm(700) };
        OrderedRuns ordered = Planned(s_limits, sheets);
        Run rough = Assert.Single(ordered.Plan.Runs, r => r.Kind == RunKind.Rough);
        // After the first strip or the second one half is 300 + 3 + 300 and the other 990 - 603 - 5 - 3: the second. 3 + 2 beyond the line.
        Assert.Equal((SawWay.Guide, Mm(608)), (rough.Way, rough.Figure));
        Assert.True(rough.Cuts[0].TakesTwo);
        Assert.Contains(ordered.Plan.Runs, r => r is { Way: SawWay.Fence, Kind: RunKind.Size } && r.Figure == Mm(300) && r.Cuts.Length == 2);
        // The strip of waste that it took stands in the layout: 2 of error and a kerf, less the kerf the layout has anyway.
        Assert.Contains(Assert.IsType<Division>(ordered.Sheets[0].Sheets[0].Root).Slices, s => s.Size == Mm(2) && s.Content is WasteNode);
    }

    [Fact]
    public void Plan_NoRoomBeyondTheLine_IsPartedOnIt()
    {
        SheetInstance instance = Instance([Part("half", 1900, 488, 2)], [Stock("sheet", 1980, 1000, trim: s_raw)], 3, KeepRule.Nothing);
        Slice half = Slice(488, Crosscuts(Mm(0), Slice(1900, Lies("half")), Slice(57, WasteNode.Instance)));
        var sheets = Sheets(instance, Layout(new LaidSheet("sheet", Rips(Mm(1), half, half)))) with { MostArea = Mm(1980) * Mm(700) };
        Run parted = Assert.Single(Planned(s_limits, sheets).Plan.Runs, r => r.Kind == RunKind.Break);
        Assert.Equal((SawWay.Guide, Mm(488)), (parted.Way, parted.Figure));
    }

    [Fact]
    public void Plan_SheetPartedAtAFigureThatAnotherIsSizedAt_OneSetUpOfTheStraightEdge()
    {
        // The fence reaches 400: 488 is ripped by the guided saw, on the heavy sheet to part it, on the light blank to bring it to size.
        SheetInstance instance = Instance([Part("half", 1900, 488, 3)], [Stock("sheet", 1980, 1000, trim: s_raw), Stock("blank", 1980, 600, trim: s_raw)], 3, KeepRule.Nothing);
        Slice half = Slice(488, Crosscuts(Mm(0), Slice(1900, Lies("half")), Slice(57, WasteNode.Instance)));
        SheetLayout layout = Layout(new LaidSheet("sheet", Rips(Mm(1), half, half)), new LaidSheet("blank", Rips(Mm(0), half, Slice(89, WasteNode.Instance))));
        RunPlan plan = Planned(s_limits with { Fence = s_limits.Fence! with { Widest = Mm(400) } }, Sheets(instance, layout) with { MostArea = Mm(1980) * Mm(700) }).Plan;
        Run parted = Assert.Single(plan.Runs, r => r.Figure == Mm(488));
        Assert.Equal((SawWay.Guide, RunKind.Size, 3), (parted.Way, parted.Kind, parted.Cuts.Length));
        Assert.True(plan.IsFewest);
    }

    [Fact]
    public void Plan_LaneOfABoardAsWideAsAStripOfASheet_OneFence()
    {
        SheetInstance instance = Instance([Part("slat", 900, 60)], [Stock("blank", 900, 300)], 3, KeepRule.Nothing);
        RunSheets sheet = Sheets(instance, Layout(new LaidSheet("blank", Rips(Mm(0), Slice(60, Lies("slat")), Slice(237, WasteNode.Instance)))));
        var oak = new BoardInstance([new("rail", Mm(900), 2)], [new BoardStock("oak", Mm(900), new(Mm(0), Mm(0)), new Money(9), null) { Rip = new(Mm(123), Mm(60), Mm(3)) }], Mm(3), Mm(300));
        RunPlan plan = Planned(s_limits, sheet, new RunBoards("oak", [], oak, new([new("oak", [new(1, 1, ["rail"], Mm(0), LeftOverUse.None), new(2, 1, ["rail"], Mm(0), LeftOverUse.None)])], []), Mm(60))).Plan;
        Assert.Equal("Fence Size 60 x2", Told(plan));
    }

    // One blank has its parts cut by fence at 200 and stop at 400 in that order; the other has waste on both sides of such a part and is laid out the other way round.
    public static TheoryData<string, Division, string> OtherWaysRound() => new()
    {
        { "alone", Crosscuts(Mm(0), Slice(400, Rips(Mm(0), Slice(200, Lies("part")), Slice(97, WasteNode.Instance))), Slice(597, WasteNode.Instance)), "Fence Size 200 x2; Sled Size 400 x2" },
        {
            "the waste beyond all goes with it",
            Crosscuts(Mm(0), Slice(500, Lies("wide")), Slice(400, Rips(Mm(0), Slice(200, Lies("part")), Slice(97, WasteNode.Instance))), Slice(94, WasteNode.Instance)),
            "Sled Size 500 x1; Fence Size 200 x2; Sled Size 400 x2"
        },
        {
            "its waste goes to what lies beyond",
            Rips(Mm(0), Slice(60, Lies("rail")), Slice(237, Crosscuts(Mm(0), Slice(400, Rips(Mm(0), Slice(200, Lies("part")), Slice(34, WasteNode.Instance))), Slice(597, WasteNode.Instance)))),
            "Fence Size 200 x2; Fence Size 60 x1; Sled Size 400 x2"
        },
    };

    [Theory]
    [MemberData(nameof(OtherWaysRound))]
    public void Plan_WasteOnBothSidesOfAPart_IsCutTheWayRoundThatSavesASetting(string what, Division root, string runs)
    {
        Assert.NotEmpty(what);
        bool Has(string id) => EarlierSheets.PartIds(root).Contains(id);
        SheetPart[] parts = [Part("part", 400, 200, 2), Part("wide", 500, 300), Part("rail", 1000, 60)];
        SheetInstance instance = Instance(parts.Where(p => p.Id == "part" || Has(p.Id)), [Stock("blank", 1000, 300)], 3, KeepRule.Nothing);
        Division first = Rips(Mm(0), Slice(200, Crosscuts(Mm(0), Slice(400, Lies("part")), Slice(597, WasteNode.Instance))), Slice(97, WasteNode.Instance));
        RunSheets sheets = Sheets(instance, Layout(new LaidSheet("blank", first), new LaidSheet("blank", root)));
        RunPlan plan = Planned(s_limits, sheets with { Settled = [0] }).Plan;
        Assert.Equal((runs, true), (Told(plan), plan.IsFewest));
        // A layout that is followed already keeps its way round, at one setting more.
        Assert.Equal(plan.Runs.Length + 1, Planned(s_limits, sheets with { Settled = [0, 1] }).Plan.Runs.Length);
    }

    [Theory]
    [InlineData(30, true)] // below 40 a carrier
    [InlineData(40, false)]
    public void Plan_NarrowStrip_WantsACarrier(long wide, bool carried)
    {
        SheetInstance instance = Instance([Part("strip", 900, wide)], [Stock("sheet", 1000, 600, trim: s_raw)], 3, KeepRule.Nothing);
        OrderedRuns ordered = Planned(s_limits, Sheets(instance, Layout(new LaidSheet("sheet", Rips(Mm(0), Slice(wide, Crosscuts(Mm(0), Slice(900, Lies("strip")), Slice(77, WasteNode.Instance))), Slice(577 - wide, WasteNode.Instance))))));
        Assert.Equal(carried, Assert.Single(ordered.Plan.Runs, r => r.Way == SawWay.Fence).Cuts[0].NeedsCarrier);
    }

    [Fact]
    public void Plan_StripTooNarrowForAnySaw_IsRefused()
    {
        SheetInstance instance = Instance([Part("strip", 900, 8)], [Stock("blank", 1000, 600)], 3, KeepRule.Nothing);
        var layout = Layout(new LaidSheet("blank", Rips(Mm(0), Slice(8, Crosscuts(Mm(0), Slice(900, Lies("strip")), Slice(97, WasteNode.Instance))), Slice(589, WasteNode.Instance))));
        RunRefusal refused = Assert.Single(Planned(s_limits with { Guided = null }, Sheets(instance, layout)).Plan.Refusals);
        Assert.Equal((RefusalKind.TooNarrow, Mm(8)), (refused.Kind, refused.Figure));
        Assert.Equal(["strip"], refused.PartIds);
    }

    [Fact]
    public void Plan_ShortEdgeAtTheFence_GoesToTheSledThenToTheGuideThenNowhere()
    {
        // A strip 200 wide, cut at 500: the edge on the fence would be shorter than its distance from the blade.
        SheetInstance instance = Instance([Part("shelf", 500, 200)], [Stock("blank", 1000, 200)], 3, KeepRule.Nothing);
        var layout = Layout(new LaidSheet("blank", Crosscuts(Mm(0), Slice(500, Lies("shelf")), Slice(497, WasteNode.Instance))));
        SawWay Way(SawLimits limits) => Assert.Single(Planned(limits, Sheets(instance, layout)).Plan.Runs).Way;
        Assert.Equal(SawWay.Sled, Way(s_limits));
        Assert.Equal(SawWay.Guide, Way(s_limits with { Sled = null }));
        Assert.Equal(RefusalKind.AgainstTheFence, Assert.Single(Planned(s_limits with { Sled = null, Guided = null }, Sheets(instance, layout)).Plan.Refusals).Kind);
    }

    [Fact]
    public void Plan_WidthsOfTwoMaterials_ShareASetting()
    {
        RunSheets one = Sheets(s_six, Layout(new LaidSheet("sheet", Rips(Mm(0), Slice(200, Strip), Slice(200, Strip), Slice(174, WasteNode.Instance)))));
        OrderedRuns ordered = Planned(s_limits, one, one with { Name = "mdf" });
        Assert.Equal("Guide True 0 x2; Fence Size 200 x4; Sled True 0 x4; Sled Size 300 x12", Told(ordered.Plan));
    }

    [Fact]
    public void Plan_LayoutThatIsFollowed_KeepsItsOrder()
    {
        SheetInstance instance = Instance([Part("side", 300, 200, 3), Part("rail", 300, 90, 3)], [Stock("sheet", 1000, 600, trim: s_raw)], 3, KeepRule.Nothing);
        Division rails = Crosscuts(Mm(0), Slice(300, Lies("rail")), Slice(300, Lies("rail")), Slice(300, Lies("rail")), Slice(71, WasteNode.Instance));
        SheetLayout small = Layout(new LaidSheet("sheet", Rips(Mm(0), Slice(90, rails), Slice(200, Strip), Slice(284, WasteNode.Instance))));
        Assert.NotEqual(small, Planned(s_limits, Sheets(instance, small)).Sheets[0]);
        Assert.Equal(small, Planned(s_limits, Sheets(instance, small) with { Settled = [0] }).Sheets[0]);
    }

    [Fact]
    public void Plan_BoardWithAFlaw_CutsItAwayAtItsMark()
    {
        var instance = new BoardInstance([new("rail", Mm(400), 3)],
            [new BoardStock("oak", Mm(2000), new(Mm(10), Mm(10)), new Money(9), null) { Defects = [new(Mm(900), Mm(950))] }], Mm(3), Mm(300));
        // 10 to 900: two rails and 84; 950 to 1990: one rail and 637.
        var layout = new BoardLayout([new("oak", [new(1, 1, ["rail", "rail"], Mm(84), LeftOverUse.Waste), new(1, 2, ["rail"], Mm(637), LeftOverUse.Keep)])], []);
        OrderedRuns ordered = Planned(s_limits, new RunBoards("oak", [], instance, layout, Mm(60)));
        Assert.Equal("Stop True 0 x1; Stop Size 400 x2; Stop Clear 0 x1; Stop Size 400 x1", Told(ordered.Plan));
        // 950 - 10 - 2 x 403.
        Assert.Equal(Mm(134), ordered.Plan.Runs[2].Cuts[0].Figure);
    }
}
