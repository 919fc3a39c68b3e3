// Over 200 lines: each way in which two may want one board, and the law that none gets it twice.
using System.Collections.Immutable;
using System.Text;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Plans;

/// <summary>A board or a sheet of the rack that two materials may use is handed out once.</summary>
public sealed class RackAccountTests
{
    private const string Two = "rail: {stick: ash, section: 45 x 20}\nslat: {stick: ash, section: 30 x 20}";
    private const string Parts = "- {part: a, of: rail, count: 2, length: 900}\n- {part: b, of: slat, count: 2, length: 900}";
    private const string Wide = "{stick: ash, section: 120 x 20, length: 1000, have: 1, name: wide one, rip: yes}\n";
    private const string Bought = "{stick: ash, section: 45 x 20, length: 1000, price: 9}\n{stick: ash, section: 30 x 20, length: 1000, price: 6}\n";

    // How many of each line of the rack all layouts take together.
    private static Dictionary<int, int> Taken(Plan plan) => plan.Boards.SelectMany(p => p.Outcome.Layout.Boards.Select(b => p.Stock.Single(l => l.Id == b.StockId)))
        .Concat(plan.Sheets.SelectMany(p => p.Outcome.Layout.Sheets.Select(s => p.Stock.Single(l => l.Id == s.StockId))))
        .Where(l => l.RackPlace is not null).CountBy(l => l.RackPlace!.Value).ToDictionary();

    private static void AssertHandedOutOnce(Plan plan)
    {
        foreach ((int place, int count) in Taken(plan))
            if (plan.Source.Shop.Stock[place].Size.InHand is { } there) Assert.True(count <= there, $"{count} of line {place} are taken, there are {there}.");
    }

    [Fact]
    public void Make_TwoMaterialsAndOneBoardToRip_OneHasItAndTheOtherBuys()
    {
        Plan plan = RippedBoardTests.Make(Two, Parts, Bought + Wide);
        AssertHandedOutOnce(plan);
        // The widest are served first.
        Assert.Equal([true, false], plan.Boards.Select(b => b.IsRipped));
        Assert.Equal(12, plan.Cost.Amount);
        Assert.Contains(plan.Boards[1].Stock, l => l.Words == "wide one (20 x 120 mm, 1000 mm), taken for rail" && l.Size.InHand == 0);
        Assert.Equal(1, Assert.Single(plan.Buying, l => l.Kind == BuyingKind.FromTheRack).Count);
    }

    [Fact]
    public void Make_TwoBoardsOfOneLine_OneForEachAndOneLineOfTheList()
    {
        Plan plan = RippedBoardTests.Make(Two, Parts, Bought + Wide.Replace("have: 1", "have: 2", StringComparison.Ordinal));
        AssertHandedOutOnce(plan);
        Assert.All(plan.Boards, b => Assert.True(b.IsRipped));
        BuyingLine line = Assert.Single(plan.Buying);
        Assert.Equal(("Ash, wide one (20 x 120 mm, 1000 mm), to rip", 2), (line.Item, line.Count));
    }

    // The narrow stick stands first in the piece, and could have the board for nothing; the wide one has nothing else.
    [Fact]
    public void Make_BoardThatAnotherMaterialNeedsWhole_IsNotRipped()
    {
        Plan plan = RippedBoardTests.Make("slat: {stick: ash, section: 30 x 20}\nboard: {stick: ash, section: 120 x 20}",
            "- {part: b, of: slat, length: 900}\n- {part: a, of: board, length: 900}", "{stick: ash, section: 30 x 20, length: 1000, price: 6}\n" + Wide);
        Assert.False(plan.IsStopped);
        AssertHandedOutOnce(plan);
        Assert.Equal([("slat", false), ("board", false)], plan.Boards.Select(b => (b.Material.Name, b.IsRipped)));
    }

    [Fact]
    public void Make_RackThatDoesNotSufficeForBoth_SaysWhoHasIt()
    {
        Plan plan = RippedBoardTests.Make(Two, Parts, Wide);
        Finding stop = Assert.Single(plan.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(("stock.too-little", "b"), (stop.Code, stop.Key));
        Assert.Contains("taken for rail", stop.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_TwoSheetsOfOneIdentity_ShareOneOffcut()
    {
        Plan plan = RippedBoardTests.Make("one: {panel: mdf, label: 3/4}\nother: {panel: mdf, label: 3/4}",
            "- {part: a, of: one, length: 300, width: 200}\n- {part: b, of: other, length: 300, width: 200}",
            "{panel: mdf, label: 3/4, size: 400 x 300, have: 1, name: offcut, trim: 0}\n{panel: mdf, label: 3/4, size: 1000 x 500, price: 20}");
        AssertHandedOutOnce(plan);
        Assert.Equal(20, plan.Cost.Amount);
        Assert.Equal([1, 1], plan.Buying.Select(l => l.Count));
    }

    // The earlier plan gave the offcut to one material; now the other is served first.
    [Fact]
    public void Make_KeepingToAPlanWhoseOffcutIsTakenNow_LaysThatSheetAnew()
    {
        const string Sheets = "one: {panel: mdf, label: 3/4}\nother: {panel: mdf, label: 3/4}", First = "- {part: a, of: one, length: 300, width: 200}\n", Second = "- {part: b, of: other, length: 300, width: 200}\n";
        const string Stock = "{panel: mdf, label: 3/4, size: 400 x 300, have: 1, name: offcut, trim: 0}\n{panel: mdf, label: 3/4, size: 1000 x 500, price: 20}";
        Plan earlier = RippedBoardTests.Make(Sheets, First + Second, Stock);
        EarlierLayouts before = EarlierPlan.Read(Encoding.UTF8.GetString(PlanJson.Write(earlier))).Value!;
        Plan plan = Sample.Make(RippedBoardTests.Make(Sheets, Second + First, Stock).Source.KeepingTo(before));
        AssertHandedOutOnce(plan);
        Assert.Equal(20, plan.Cost.Amount);
        Assert.All(plan.Sheets, s => Assert.Empty(SheetChecker.Check(s.Instance, s.Outcome.Layout)));
    }

    [Fact]
    public void Left_SearchedAgain_NoMoreOfWhatIsSharedThanItTookAtFirst()
    {
        StockLine Line(string id, int? place, int have) => new(id, new(Length.FromMillimetres(1000), null, null, have, "", null), id) { RackPlace = place };
        ImmutableArray<StockLine> lines = [Line("shared", 0, 5), Line("own", 1, 4), Line("piece", null, 3)];
        var rack = new RackAccount();
        rack.Offer(lines);
        rack.Offer([lines[0]]);
        IEnumerable<int?> Left(string material) => rack.Left(material, lines).Select(l => l.Size.InHand);
        Assert.Equal([5, 4, 3], Left("a"));
        rack.Take("a", lines, ["shared", "own", "shared"]);
        Assert.Equal([2, 4, 3], Left("a"));
        Assert.Equal([3, 4, 3], Left("b"));
        rack.Take("a", lines, ["own"]);
        Assert.Equal([3, 4, 3], Left("b"));
        rack.Take("b", lines, ["shared", "shared", "shared"]);
        Assert.Equal([2, 4, 3], Left("a"));
        Assert.Equal("shared, taken for a, b", rack.Left("c", lines)[0].Words);
    }

    // Proves nothing, so that every material is searched a second time.
    private sealed class Unproven : ISheetSolver, IBoardSolver
    {
        public SheetOutcome Solve(SheetInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default) =>
            SheetSolvers.Default.Solve(instance, new(20_000, 1), null, cancel);

        public BoardOutcome Solve(BoardInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default)
        {
            BoardOutcome found = BoardSolvers.Default.Solve(instance, new(20_000, 1), null, cancel);
            return found.Layout.LeftOut.IsEmpty ? found with { Status = OutcomeStatus.Feasible, Bound = new(Money.Zero, 0, "none") } : found;
        }
    }

    private sealed class StoppedClock : TimeProvider
    {
        public override long GetTimestamp() => 0;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) => new Never();

        private sealed class Never : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose()
            {
            }

            public ValueTask DisposeAsync() => ValueTask.CompletedTask;
        }
    }

    /// <summary>Racks and pieces at random: what all layouts take of a line is never more than there is, and each layout passes the checker with what it was left.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Make_RandomRacks_NothingIsHandedOutTwice(bool isTimed)
    {
        int shared = 0;
        for (int seed = 1; seed <= 40; seed++)
        {
            var random = new Random(seed);
            int[] widths = [30, 45, 60, 95];
            string materials = string.Concat(widths.Select((w, i) => $"  m{i}: {{stick: ash, section: {w} x 20, lengths: [{{length: 2400, price: {w}}}]}}\n"));
            string parts = string.Concat(widths.Select((w, i) => $"  - {{part: p{i}, of: m{i}, count: {random.Next(1, 5)}, length: {random.Next(200, 1200)}}}\n"));
            string stock = string.Concat(Enumerable.Range(0, random.Next(1, 6)).Select(i =>
            {
                int length = random.Next(1200, 2400), flaw = random.Next(0, 1000);
                string flaws = random.Next(3) == 0 ? $", flaws: [{{from: {flaw}, to: {flaw + random.Next(1, 200)}}}]" : "";
                return $"  - {{stick: ash, section: {random.Next(30, 200)} x 20, length: {length}, have: {random.Next(1, 3)}, rip: yes{flaws}}}\n";
            }));
            (PieceSource? source, _) = PieceSource.Read($"setout: 1\nname: Try\nunit: mm\nmaterials:\n{materials}parts:\n{parts}", null, $"setout-shop: 1\nunit: mm\ntrim: {{boards: 0}}\nstock:\n{stock}");
            var solver = new Unproven();
            LayoutEffort effort = isTimed ? LayoutEffort.Within(TimeSpan.FromSeconds(60), new StoppedClock()) : LayoutEffort.Usual;
            Plan plan = new PlanMaker(solver, solver).Make(source!, effort), again = new PlanMaker(solver, solver).Make(source!, effort);
            AssertHandedOutOnce(plan);
            Assert.Equal(4, plan.Boards.Length);
            Assert.All(plan.Boards, b => Assert.Empty(BoardChecker.Check(b.Instance, b.Outcome.Layout)));
            Assert.Equal(plan.Boards.Select(b => b.Outcome.Layout), again.Boards.Select(b => b.Outcome.Layout));
            shared += plan.Boards.Count(b => b.IsRipped) > 1 ? 1 : 0;
        }
        Assert.True(shared > 5, $"{shared} of the plans rip for more than one material.");
    }

    [Fact]
    public void Blanks_OfOneBoardForTwoMaterials_AreOnePiece()
    {
        Plan plan = RippedBoardTests.Make(Two, Parts, Bought + Wide);
        Blank[] blanks = [.. Blanks.Of(plan.Set, plan.Source.Shop).Where(b => b.Price is null)];
        Assert.Equal(["rail", "slat"], blanks.Select(b => b.Material).Distinct().Order(StringComparer.Ordinal));
        Assert.NotEmpty(Assert.Single(blanks.Select(b => b.Piece).Distinct()));
    }

    [Fact]
    public void Ids_AnotherLineOfStock_ChangesNone()
    {
        string[] lines =
        [
            "{stick: ash, section: 45 x 20, length: 1000, price: 9}", "{stick: ash, section: 45 x 20, length: 1000, have: 1}", "{stick: ash, section: 45 x 20, length: 1000, have: 1, name: b}",
            "{stick: ash, section: 45 x 20, length: 1000, have: 1, trim: 5}", "{stick: ash, section: 45 x 20, length: 1000, have: 1, flaws: [{from: 1, to: 2}]}",
            "{stick: ash, section: 45 x 20, length: 1000, have: 1, flaws: [{from: 1, to: 3}]}", "{stick: ash, section: 120 x 20, length: 1000, have: 1, rip: yes}",
            "{stick: ash, section: 120 x 45, length: 1000, have: 1, rip: yes}", "{stick: ash, section: 130 x 20, length: 1000, have: 1, rip: yes}",
        ];
        string Ids(IEnumerable<string> stock) => string.Join('|', Assert.Single(RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, length: 900}", string.Join('\n', stock)).Boards).Stock.Select(l => l.Id).Order(StringComparer.Ordinal));
        string[] all = Ids(lines).Split('|');
        Assert.Equal(lines.Length, all.Distinct().Count());
        for (int i = 0; i < lines.Length; i++)
        {
            string[] without = Ids(lines.Where((_, j) => j != i)).Split('|');
            Assert.Empty(without.Except(all));
            Assert.Equal(lines.Length - 1, without.Length);
        }
        Assert.Equal(all, Ids(lines.Reverse()).Split('|'));
        // Equal lines are told apart, and a name cannot make two ids meet.
        Assert.Equal(3, Ids([lines[1], lines[1], lines[1].Replace("}", ", name: no. 2}", StringComparison.Ordinal)]).Split('|').Distinct().Count());
    }
}
