using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Testing.Runs;
using static Setout.Cutting.Runs.BlankSide;
using static Setout.Cutting.Tests.Runs.Written;

namespace Setout.Cutting.Tests.Runs;

/// <summary>Sound plans spoilt at one place each; the simulator must refuse every one under the name of the rule that is broken.</summary>
public class SpoiltPlanTests
{
    private static readonly SawCase s_two = SawPlans.Two(), s_rough = SawPlans.Rough(), s_refused = SawPlans.Refused();

    private static SawCase Part(string id, string other) => s_two.WithBlank(Made(id), b => b with { PartId = other });

    private static int Made(string id) => s_two.Plan.Blanks.First(b => b.Use == BlankUse.Part && b.PartId == id).Id;

    private static int Left(BlankUse use) => s_two.Plan.Blanks.First(b => b.Use == use && b.Id > 8).Id;

    private static FenceSaw Fence(SawLimits limits) => limits.Fence!;

    // Runs of the first plan: 1 True, 2 Break, 3 True on the sled, 4 Size on the sled, 5 Lane, 6 True, 7 Size, 8 Clear, 9 Size, 10 Clear, 11 Size at the stop.
    private static readonly (SawRule Rule, string Spoilt, Func<SawCase> Make)[] s_table =
    [
        (SawRule.BlanksAreNumbered, "an id is not its place", () => s_two.WithBlank(4, b => b with { Id = 5 })),
        (SawRule.BlanksAreNumbered, "stock after what is cut", () => s_two.WithPlan(p => p with { Blanks = p.Blanks.Add(p.Blanks[0] with { Id = p.Blanks.Length }) })),
        (SawRule.StockIsWhatIsLaid, "a sheet larger than it is", () => s_two.WithBlank(0, b => b with { Along = b.Along + Mm(1) })),
        (SawRule.StockIsWhatIsLaid, "a sheet that is truer", () => s_two.WithBlank(1, b => b with { Trim = Trim(10, 10, 0, 5) })),
        (SawRule.StockIsWhatIsLaid, "a board without its flaw", () => s_two.WithBlank(2, b => b with { Flaws = [] })),
        (SawRule.StockIsWhatIsLaid, "a sheet of another material", () => s_two.WithBlank(1, b => b with { Material = 1, Stock = 7 })),
        (SawRule.StockIsWhatIsLaid, "a sheet twice", () => s_two.WithPlan(p => p with { Blanks = p.Blanks.Add(p.Blanks[0] with { Id = p.Blanks.Length }) })),
        (SawRule.RunsAreNumbered, "a number twice", () => s_two.WithRun(6, r => r with { Number = 5 })),
        (SawRule.EveryRunCuts, "a run without a cut", () => s_two.WithRun(10, r => r with { Cuts = [] })),
        (SawRule.OneSettingARun, "another figure", () => s_two.WithCut(4, 1, c => c with { Figure = c.Figure + Length.FromTicks(1) })),
        (SawRule.OneSettingARun, "parts cut at marks", () => s_two.WithRun(7, r => r with { Figure = Length.Zero })),
        (SawRule.NeighboursDiffer, "two runs that are one", () => s_two.WithPlan(p => p with
        {
            Runs = [.. p.Runs[..3], p.Runs[3] with { Cuts = p.Runs[3].Cuts[..2] }, p.Runs[3] with { Cuts = p.Runs[3].Cuts[2..], Number = 5 }, .. p.Runs[4..].Select(r => r with { Number = r.Number + 1 })],
        })),
        (SawRule.LeastIsNotAbove, "more than there are", () => s_two.WithPlan(p => p with { LeastSettings = 12 })),
        (SawRule.BlankIsThere, "the same blank twice", () => s_two.WithCut(4, 2, c => c with { Blank = s_two.Plan.Runs[3].Cuts[0].Blank })),
        (SawRule.BlankIsThere, "before it is made", () => s_two.WithPlan(p => p with { Runs = p.Runs.SetItem(1, p.Runs[2] with { Number = 2 }).SetItem(2, p.Runs[1] with { Number = 3 }) })),
        (SawRule.BlankIsThere, "an id that is none", () => s_two.WithCut(11, 0, c => c with { Blank = 99 })),
        (SawRule.BlankIsToBeCut, "a part", () => s_two.WithCut(11, 0, c => c with { Blank = Made("leg") })),
        (SawRule.BlankIsToBeCut, "what waits", () => s_two.WithBlank(s_two.Plan.Runs[2].Cuts[1].Blank, b => b with { Use = BlankUse.Waiting, Waiting = ["side"] })),
        (SawRule.MadeOnce, "a piece made twice", () => s_two.WithCut(4, 1, c => c with { Off = s_two.Plan.Runs[3].Cuts[0].Off })),
        (SawRule.MadeOnce, "a piece nobody makes", () => s_two.WithPlan(p => p with { Blanks = p.Blanks.Add(new(p.Blanks.Length, 0, 0, Mm(1), Mm(1), BlankUse.Waste)) })),
        (SawRule.FromIsOnTheAxis, "an end for a rip", () => s_two.WithCut(2, 0, c => c with { From = NearEnd })),
        (SawRule.FigureIsInside, "beyond the blank", () => s_two.WithCuts(11, r => r with { Figure = Mm(460) }, c => c with { Figure = Mm(460) })),
        (SawRule.FigureIsInside, "nothing", () => s_two.WithCuts(10, r => r, c => c with { Figure = Length.Zero })),
        (SawRule.PiecesAreNamed, "a rest nobody names", () => s_two.WithCut(11, 0, c => c with { Rest = null })),
        (SawRule.PiecesAreNamed, "dust that is named", () => s_two.WithCut(5, 1, c => c with { Rest = 20 })),
        (SawRule.SizesAreTrue, "a tick longer", () => s_two.WithBlank(Left(BlankUse.Work), b => b with { Along = b.Along + Length.FromTicks(1) })),
        (SawRule.SizesAreTrue, "wider than what it is cut from", () => s_two.WithBlank(Left(BlankUse.Work), b => b with { Across = b.Across + Mm(1) })),
        (SawRule.SizesAreTrue, "of another sheet", () => s_two.WithBlank(Left(BlankUse.Work), b => b with { Stock = 1 - b.Stock })),
        (SawRule.TrimsAreTrue, "a raw end called true", () => s_two.WithBlank(s_two.Plan.Runs[2].Cuts[0].Blank, b => b with { Trim = EdgeTrim.None })),
        (SawRule.TrimsAreTrue, "a margin of a true edge", () => s_two.WithBlank(s_two.Plan.Runs[2].Cuts[0].Blank, b => b with { Trim = b.Trim with { AcrossStart = Length.FromTicks(1) } })),
        (SawRule.TrimsAreTrue, "a rough cut with less beside it than it may run off", () => s_rough.WithBlank(3, b => b with { Trim = b.Trim with { AlongEnd = Mm(1) } })),
        (SawRule.FlawsAreTrue, "a flaw that went with the rest", () => s_two.WithBlank(s_two.Plan.Runs[6].Cuts[0].Rest!.Value, b => b with { Flaws = [] })),
        (SawRule.FlawsAreTrue, "a flaw a tick off", () => s_two.WithBlank(s_two.Plan.Runs[6].Cuts[0].Rest!.Value, b => b with { Flaws = [new(Mm(187) + Length.FromTicks(1), Mm(227))] })),
        (SawRule.SawIsThere, "no guided saw", () => s_two.WithLimits(l => l with { Guided = null })),
        (SawRule.SawIsThere, "a sled without its saw", () => s_two.WithLimits(l => l with { Fence = null })),
        (SawRule.SawIsThere, "no crosscut saw", () => s_two.WithLimits(l => l with { Boards = null })),
        (SawRule.KerfIsOfTheSaw, "a thinner blade", () => s_two.WithCut(4, 0, c => c with { Kerf = Mm(2) })),
        (SawRule.KerfIsOfTheSaw, "less planed than planned", () => s_two.WithCut(5, 0, c => c with { Planed = Length.Zero })),
        (SawRule.KerfIsOfTheSaw, "a part planed", () => s_two.WithCut(11, 0, c => c with { Planed = Mm(1) })),
        (SawRule.WaySuitsTheCut, "broken down at the fence", () => s_two.WithRun(2, r => r with { Way = SawWay.Fence })),
        (SawRule.WaySuitsTheCut, "a board crosscut at the fence", () => s_two.WithRun(11, r => r with { Way = SawWay.Fence })),
        (SawRule.WaySuitsTheCut, "a sheet on the crosscut saw", () => s_two.WithRun(4, r => r with { Way = SawWay.Stop })),
        (SawRule.WaySuitsTheCut, "a lane off a sheet", () => s_two.WithRun(2, r => r with { Kind = RunKind.Lane })),
        (SawRule.WaySuitsTheCut, "a flaw in a sheet", () => s_two.WithRun(3, r => r with { Kind = RunKind.Clear })),
        (SawRule.ReferenceIsTrue, "measured from a raw end", () => s_two.WithRun(3, r => r with { Kind = RunKind.Size })),
        (SawRule.ReferenceIsTrue, "from the raw end at the other side", () => s_two.WithCut(4, 0, c => c with { From = FarEnd, FromRun = null })),
        (SawRule.ReferenceIsTrue, "a raw edge along the fence", () => s_two.WithRun(1, r => r with { Way = SawWay.Fence })),
        (SawRule.FromRunIsNamed, "a run that made another side", () => s_two.WithCut(4, 1, c => c with { FromRun = 3 })),
        (SawRule.FromRunIsNamed, "none for a true end", () => s_two.WithCut(4, 0, c => c with { FromRun = null })),
        (SawRule.FromRunIsNamed, "true from the start, though raw", () => s_two.WithCut(1, 0, c => c with { FromRun = 0 })),
        (SawRule.AgainstIsTrue, "nothing against the sled", () => s_two.WithCut(4, 0, c => c with { Against = null, AgainstRun = null })),
        (SawRule.AgainstIsTrue, "an end against the sled", () => s_two.WithCut(4, 0, c => c with { Against = NearEnd, AgainstRun = 3 })),
        (SawRule.AgainstIsTrue, "a raw edge against the sled", () => s_two.WithRun(2, r => r with { Way = SawWay.Sled }).WithCut(2, 0, c => c with { Against = FarEnd })),
        (SawRule.AgainstRunIsNamed, "another run", () => s_two.WithCut(4, 0, c => c with { AgainstRun = 2 })),
        (SawRule.AgainstRunIsNamed, "a second fence at the guide", () => s_two.WithCut(2, 0, c => c with { Against = NearEnd })),
        (SawRule.TrueTakesTheMargin, "part of a margin", () => s_two.WithCuts(3, r => r with { Figure = Mm(9) }, c => c with { Figure = Mm(9) })),
        (SawRule.TrueTakesTheMargin, "more than the margin", () => s_two.WithCuts(3, r => r with { Figure = Mm(11) }, c => c with { Figure = Mm(11) })),
        (SawRule.TrueTakesTheMargin, "a side that is true", () => s_two.WithRun(11, r => r with { Kind = RunKind.True })),
        (SawRule.OffcutIsWaste, "an end that is kept", () => s_two.WithBlank(s_two.Plan.Runs[2].Cuts[0].Off!.Value, b => b with { Use = BlankUse.Keep })),
        (SawRule.EdgeIsLongerThanFigure, "as wide as it is long", () => s_rough.WithRun(5, r => r with { Way = SawWay.Fence })),
        (SawRule.FenceReaches, "wider than the fence goes", () => s_rough.WithLimits(l => l with { Fence = Fence(l) with { Widest = Mm(479) } })),
        (SawRule.RoomAtTheFence, "longer than the room", () => s_rough.WithLimits(l => l with { Fence = Fence(l) with { Room = Mm(911) } })),
        (SawRule.StripIsWideEnough, "narrower than a carrier takes", () => s_two.WithLimits(l => l with { Fence = Fence(l) with { NarrowestCarried = Mm(42) } })),
        (SawRule.CarrierIsNamed, "none for a narrow strip", () => s_two.WithCut(5, 0, c => c with { NeedsCarrier = false })),
        (SawRule.CarrierIsNamed, "one for a wide strip", () => s_rough.WithCut(4, 0, c => c with { NeedsCarrier = true })),
        (SawRule.SledTakesIt, "wider than the sled", () => s_two.WithLimits(l => l with { Sled = new(Mm(249), Mm(1200)) })),
        (SawRule.SledStopReaches, "longer than its stop", () => s_two.WithLimits(l => l with { Sled = new(Mm(650), Mm(299)) })),
        (SawRule.GuideReaches, "longer than the straight edge", () => s_two.WithLimits(l => l with { Guided = l.Guided! with { Longest = Mm(999) } })),
        (SawRule.StopSawTakesIt, "wider than the saw", () => s_two.WithLimits(l => l with { Boards = new(Mm(3), Mm(39)) })),
        (SawRule.TwoPeopleAreNamed, "alone with a sheet", () => s_two.WithCut(1, 0, c => c with { TakesTwo = false })),
        (SawRule.TwoPeopleAreNamed, "two for a strip", () => s_two.WithCut(3, 0, c => c with { TakesTwo = true })),
        (SawRule.HeavyStaysOffTheTable, "a heavy half at the fence", () => s_rough.WithMaterial(0, m => m with { MostArea = Mm(912) * Mm(507) })),
        (SawRule.PartsComeOut, "one part called another", () => Part("leg", "rung")),
        (SawRule.PartsComeOut, "a part thrown away", () => s_two.WithBlank(Made("leg"), b => b with { Use = BlankUse.Waste, PartId = "" })),
        (SawRule.PartsHaveTheirSize, "one part called another", () => Part("rung", "leg")),
        (SawRule.PartsHaveTheirSize, "lying the other way", () => s_two.WithBlank(Made("side"), b => b with { Turn = Turn.Quarter })),
        (SawRule.PartsHaveTheirSize, "a layout that wants a tick more", () => s_two.WithMaterial(1, m => ((RunBoards)m) with { Width = Mm(40) + Length.FromTicks(1) })),
        (SawRule.PartsAreTrue, "a raw end", () => s_rough.WithCuts(3, r => r with { Kind = RunKind.Rough }, c => c)),
        (SawRule.PartsAreTrue, "a flaw within", () => s_two.WithMaterial(1, m => ((RunBoards)m) with
        {
            Instance = new(((RunBoards)m).Instance.Parts, [((RunBoards)m).Instance.Stock[0] with { Defects = [new(Mm(200), Mm(210)), new(Mm(500), Mm(540))] }], Mm(3), Mm(400)),
        })),
        (SawRule.HeldAreNotCut, "a leg that waits", () => s_two.WithMaterial(1, m => m with { Held = ["leg"] })),
        (SawRule.HeldWait, "a door nobody lays aside", () => s_two.WithBlank(s_two.Plan.Blanks.First(b => b.Use == BlankUse.Waiting).Id, b => b with { Use = BlankUse.Keep, Waiting = [] })),
        (SawRule.PartsComeOut, "a part that does not wait", () => s_two.WithBlank(s_two.Plan.Blanks.First(b => b.Use == BlankUse.Waiting).Id, b => b with { Waiting = ["door", "side"] })),
        (SawRule.HeldWait, "a blank too small for it", () => s_two.WithMaterial(0, m => ((RunSheets)m) with { Layout = Wider((RunSheets)m) })),
        (SawRule.HeldWait, "a leg with nothing laid aside", () => s_two.WithMaterial(1, m => m with { Held = ["leg"] })),
        (SawRule.KeptAreLaid, "kept wood thrown away", () => s_two.WithBlank(Left(BlankUse.Keep), b => b with { Use = BlankUse.Waste })),
        (SawRule.KeptAreLaid, "waste kept", () => s_two.WithBlank(s_two.Plan.Runs[3].Cuts[1].Rest!.Value, b => b with { Use = BlankUse.Keep, Spares = 0, PartId = "" })),
        (SawRule.KeptAreLaid, "a kept end of a board thrown away", () => s_two.WithBlank(s_two.Plan.Runs[9].Cuts[0].Rest!.Value, b => b with { Use = BlankUse.Waste })),
        (SawRule.KeptAreLaid, "waste of a board kept", () => s_two.WithBlank(s_two.Plan.Runs[10].Cuts[0].Rest!.Value, b => b with { Use = BlankUse.Keep })),
        (SawRule.WoodIsNotLost, "a rest nobody names", () => s_two.WithCut(11, 0, c => c with { Rest = null })),
        (SawRule.WoodIsNotLost, "waste a tick longer than it is", () => s_two.WithBlank(s_two.Plan.Runs[10].Cuts[0].Rest!.Value, b => b with { Along = b.Along + Length.FromTicks(1) })),
        (SawRule.NothingIsHalfCut, "waste left for a run that never comes", () => s_two.WithBlank(s_two.Plan.Runs[10].Cuts[0].Rest!.Value, b => b with { Use = BlankUse.Work })),
        (SawRule.PartsComeOut, "the last run left out", () => s_two.WithPlan(p => p with { Runs = p.Runs[..10] })),
        (SawRule.FigureRunsThrough, "members the other way round", () => s_rough.WithMaterial(0, m => ((RunSheets)m) with { Instance = Apart(GrainAxis.Along) })),
        (SawRule.FigureRunsThrough, "another part between", () => s_rough.WithMaterial(0, m => ((RunSheets)m) with { Instance = Apart(GrainAxis.Across, 3) })),
        (SawRule.SparesAreThere, "one more than it holds", () => s_two.WithBlank(s_two.Plan.Runs[3].Cuts[1].Rest!.Value, b => b with { Spares = 2 })),
        (SawRule.SparesAreThere, "in what is kept", () => s_two.WithBlank(s_two.Plan.Runs[3].Cuts[2].Rest!.Value, b => b with { Spares = 2, PartId = "side" })),
        (SawRule.SparesAreThere, "of a part of another size", () => s_two.WithBlank(s_two.Plan.Runs[3].Cuts[1].Rest!.Value, b => b with { PartId = "door" })),
        (SawRule.TrialIsWaste, "on a part", () => s_two.WithRun(9, r => r with { Trial = Made("leg") })),
        (SawRule.TrialIsWaste, "on what this run makes", () => s_two.WithRun(11, r => r with { Trial = r.Cuts[0].Rest })),
        (SawRule.TrialIsWaste, "on a piece that is too short", () => s_two.WithRun(7, r => r with { Trial = s_two.Plan.Runs[5].Cuts[0].Off })),
        (SawRule.RefusalIsNeeded, "though the guided saw is there", () => s_refused with { Limits = s_rough.Limits }),
        (SawRule.RefusalIsNeeded, "of what is cut all the same", () => s_two.WithPlan(p => p with { Refusals = [new(RefusalKind.TooNarrow, 0, GrainAxis.Across, Mm(5), ["side"])] })),
        (SawRule.RefusalIsNeeded, "for no part", () => s_refused.WithPlan(p => p with { Refusals = [p.Refusals[0] with { PartIds = [] }] })),
        (SawRule.RefusalIsNeeded, "for a part of another sheet", () => s_refused.WithPlan(p => p with { Refusals = [p.Refusals[0] with { PartIds = ["shelf", "door"] }] })),
        (SawRule.PartsComeOut, "refused for another part", () => s_refused.WithPlan(p => p with { Refusals = [p.Refusals[0] with { PartIds = ["door"] }] })),
    ];

    // The second sheet of the first plan with a door that needs more than the strip.
    private static SheetLayout Wider(RunSheets sheets)
    {
        var root = (Division)sheets.Layout.Sheets[1].Root;
        return sheets.Layout with { Sheets = sheets.Layout.Sheets.SetItem(1, sheets.Layout.Sheets[1] with { Root = root with { Slices = root.Slices.SetItem(1, root.Slices[1] with { Size = Mm(338) }) } }) };
    }

    // The shelves as a group in the other direction, or as two groups of two of which one is nowhere.
    private static SheetInstance Apart(GrainAxis axis, int members = 2)
    {
        SheetInstance of = ((RunSheets)s_rough.Materials[0]).Instance;
        return new(of.Parts.Replace(of.Parts[0], of.Parts[0] with { Count = members }), of.Stock, of.Kerf, of.Keep) { Groups = [new("pair", axis, [.. Enumerable.Repeat("shelf", members)])] };
    }

    public static TheoryData<int, string> Spoils() => [.. s_table.Select((t, i) => (i, $"{t.Rule}: {t.Spoilt}"))];

    [Theory]
    [MemberData(nameof(Spoils))]
    public void Check_SpoiltAtOnePlace_NamesTheRule(int index, string what)
    {
        SawRule[] found = [.. s_table[index].Make().Check().Select(v => v.Rule)];
        Assert.True(found.Contains(s_table[index].Rule), $"{what}: found {string.Join(", ", found.Distinct())}");
    }

    [Fact]
    public void Table_Rules_AreAllSpoilt() => Assert.Empty(Enum.GetValues<SawRule>().Except(s_table.Select(t => t.Rule)));
}
