// Over 200 lines: the board side of the engine is small enough to be read in one place.
using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Testing;

namespace Setout.Cutting.Tests.Boards;

public class BoardTests
{
    private static readonly Length s_tick = Length.FromTicks(1);

    private static Length Mm(long millimetres) => Length.FromMillimetres(millimetres);

    private static BoardStock Stock(string id, long length, decimal cost = 1, int? limit = null, EndTrim? trim = null) =>
        new(id, Mm(length), trim ?? EndTrim.None, new Money(cost), limit);

    private static BoardInstance Instance(IEnumerable<BoardPart> parts, IEnumerable<BoardStock> stock, long kerf = 3, long keepFrom = 300) =>
        new([.. parts], [.. stock], Mm(kerf), Mm(keepFrom));

    private static BoardOutcome Solve(BoardInstance instance, long budget = 300_000) => BoardSolvers.Default.Solve(instance, new SolverOptions(budget, 1));

    private static string[] Rules(BoardInstance instance, BoardLayout layout) => [.. BoardChecker.Check(instance, layout).Select(v => v.Rule)];

    // A board of 2400, trims 20 and 10: trued 2370. Two legs of 700 and a rail of 600 with three kerfs of 3 leave 361.
    private static BoardInstance Good(Length? leg = null, Length? kerf = null, Length? keep = null, EndTrim? trim = null, int legs = 2, int? limit = null) =>
        new([new("leg", leg ?? Mm(700), legs), new("rail", Mm(600), 1)],
            [new BoardStock("oak", Mm(2400), trim ?? new EndTrim(Mm(20), Mm(10)), new Money(12), limit)], kerf ?? Mm(3), keep ?? Mm(361));

    private static BoardLayout GoodLayout(Length? left = null, LeftOverUse use = LeftOverUse.Keep) =>
        new([new LaidBoard("oak", ["leg", "leg", "rail"], left ?? Mm(361), use)], []);

    [Fact]
    public void Check_GoodLayout_FindsNothing() => Assert.Empty(Rules(Good(), GoodLayout()));

    [Fact]
    public void LeftOver_OneTickOff_Fails()
    {
        Assert.Contains("LeftOverIsWhatRemains", Rules(Good(), GoodLayout(Mm(361) + s_tick)));
        Assert.Contains("LeftOverIsWhatRemains", Rules(Good(leg: Mm(700) + s_tick), GoodLayout()));
        Assert.Contains("LeftOverIsWhatRemains", Rules(Good(kerf: Mm(3) + s_tick), GoodLayout()));
        Assert.Contains("LeftOverIsWhatRemains", Rules(Good(trim: new EndTrim(Mm(20) + s_tick, Mm(10))), GoodLayout()));
        Assert.Contains("LeftOverIsWhatRemains", Rules(Good(trim: new EndTrim(Mm(20), Mm(10) + s_tick)), GoodLayout()));
    }

    [Fact]
    public void LeftOver_AtKeepFrom_IsKeptAndOneTickBelowIsWaste()
    {
        Assert.Empty(Rules(Good(keep: Mm(361)), GoodLayout()));
        Assert.Equal(["LeftOverIsLabelled"], Rules(Good(keep: Mm(361) + s_tick), GoodLayout()));
        Assert.Empty(Rules(Good(keep: Mm(361) + s_tick), GoodLayout(use: LeftOverUse.Waste)));
    }

    [Fact]
    public void PartsFit_ToTheTrim_PassesAndOneTickPastFails()
    {
        static BoardInstance With(Length part) => new([new("p", part, 2)], [Stock("b", 1003)], Mm(3), Mm(300));
        var full = new BoardLayout([new LaidBoard("b", ["p", "p"], Length.Zero, LeftOverUse.None)], []);
        Assert.Empty(Rules(With(Mm(500)), full));
        Assert.Equal(["PartsFitBetweenTrims"], Rules(With(Mm(500) + s_tick), full));
    }

    [Fact]
    public void LeftOver_OneKerfRemains_IsDustAndOneTickMoreIsWaste()
    {
        static BoardInstance With(Length board) => new([new("p", Mm(500), 1)], [new BoardStock("b", board, EndTrim.None, new Money(1), null)], Mm(3), Mm(300));
        static BoardLayout Left(Length left, LeftOverUse use) => new([new LaidBoard("b", ["p"], left, use)], []);
        Assert.Empty(Rules(With(Mm(503)), Left(Length.Zero, LeftOverUse.None)));
        Assert.NotEmpty(Rules(With(Mm(503) + s_tick), Left(Length.Zero, LeftOverUse.None)));
        Assert.Empty(Rules(With(Mm(503) + s_tick), Left(s_tick, LeftOverUse.Waste)));
    }

    [Fact]
    public void DemandAndLimit_AsWanted_PassesAndOneOffFails()
    {
        Assert.Equal(["DemandIsMet"], Rules(Good(legs: 1), GoodLayout()));
        Assert.Equal(["DemandIsMet"], Rules(Good(legs: 3), GoodLayout()));
        Assert.Empty(Rules(Good(legs: 3), GoodLayout() with { LeftOut = [new("leg", 1)] }));
        Assert.Empty(Rules(Good(limit: 1), GoodLayout()));
        Assert.Equal(["StockLimitsHold"], Rules(Good(limit: 0), GoodLayout()));
    }

    [Fact]
    public void KnownNamesAndUse_UnknownOrEmptyBoard_Fails()
    {
        Assert.Equal(["KnownNames"], Rules(Good(), new BoardLayout([new LaidBoard("ash", ["leg"], Length.Zero, LeftOverUse.None)], [])));
        Assert.Equal(["KnownNames"], Rules(Good(), new BoardLayout([new LaidBoard("oak", ["lid"], Length.Zero, LeftOverUse.None)], [])));
        Assert.Contains("BoardIsUsed", Rules(Good(), GoodLayout() with { Boards = [.. GoodLayout().Boards, new LaidBoard("oak", [], Mm(2367), LeftOverUse.Keep)] }));
    }

    [Fact]
    public void CheckFigures_OneCentOff_Fails()
    {
        Assert.Empty(BoardChecker.CheckFigures(Good(), GoodLayout(), new Money(12), 1));
        Assert.Single(BoardChecker.CheckFigures(Good(), GoodLayout(), new Money(11.99m), 1));
    }

    [Fact]
    public void New_OutOfRange_SaysWhy()
    {
        Assert.Contains("0 mm long", Assert.Throws<ArgumentException>(() => Instance([new("a", Length.Zero, 1)], [Stock("b", 10)])).Message);
        Assert.Contains("asked for 0 times", Assert.Throws<ArgumentException>(() => Instance([new("a", Mm(1), 0)], [Stock("b", 10)])).Message);
        Assert.Contains("Two parts", Assert.Throws<ArgumentException>(() => Instance([new("a", Mm(1), 1), new("a", Mm(1), 1)], [Stock("b", 10)])).Message);
        Assert.Contains("at least one stock", Assert.Throws<ArgumentException>(() => Instance([new("a", Mm(1), 1)], [])).Message);
        Assert.Contains("Nothing is left", Assert.Throws<ArgumentException>(() => Instance([new("a", Mm(1), 1)], [Stock("b", 10, trim: new EndTrim(Mm(5), Mm(5)))])).Message);
        Assert.Contains("The kerf is -1 mm", Assert.Throws<ArgumentException>(() => Instance([new("a", Mm(1), 1)], [Stock("b", 10)], -1)).Message);
    }

    [Theory]
    [InlineData("Falkenauer_t60_00", 20)]
    [InlineData("Falkenauer_u120_00", 48)]
    [InlineData("N1C1W1_A", 25)]
    [InlineData("Waescher_TEST0022", 15)]
    public void Solve_OutsideInstances_ReachesTheProvenOptimum(string id, int optimum)
    {
        // Optima: bounds table of BPPLIB, see data/README.md.
        BoardOutcome outcome = Solve(OutsideData.Boards(id), 3_000_000);
        Assert.Equal(optimum, outcome.Score.Boards);
        Assert.InRange(outcome.Bound.Count, 1, optimum);
    }

    [Fact]
    public void Solve_TooLongOrTooLittle_IsInfeasibleWithReasons()
    {
        BoardOutcome tooLong = Solve(Instance([new("a", Mm(2500), 1), new("b", Mm(500), 2)], [Stock("oak", 2400)]));
        Assert.Equal((OutcomeStatus.Infeasible, "a", 1), (tooLong.Status, Assert.Single(tooLong.Reasons).Subject, tooLong.Score.Boards));
        BoardOutcome tooLittle = Solve(Instance([new("b", Mm(1300), 3)], [Stock("oak", 2400, 1, 2)]));
        Assert.Equal((OutcomeStatus.Infeasible, ReasonKind.StockTooLittle), (tooLittle.Status, Assert.Single(tooLittle.Reasons).Kind));
        Assert.Equal([new PartCount("b", 1)], tooLittle.Layout.LeftOut);
    }

    [Fact]
    public void Solve_BoardInHand_IsUsedWhereThatSavesMoney()
    {
        BoardOutcome outcome = Solve(Instance([new("a", Mm(600), 5)], [Stock("oak", 2409, 20), Stock("end", 600, 0, 1)]));
        Assert.Equal((new Money(20), 2, OutcomeStatus.Proven), (outcome.Score.Cost, outcome.Score.Boards, outcome.Status));
    }

    [Fact]
    public void Solve_TwiceOrCancelled_IsTheSameOrStopped()
    {
        BoardInstance instance = OutsideData.Boards("Waescher_TEST0022");
        Assert.Equal(Solve(instance).Layout, Solve(instance).Layout);
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        BoardOutcome stopped = BoardSolvers.Default.Solve(instance, SolverOptions.Default, null, cancel.Token);
        Assert.Equal(OutcomeStatus.Stopped, stopped.Status);
        Assert.Contains(stopped.Reasons, r => r.Kind == ReasonKind.Cancelled);
    }

    [Fact]
    public void Solve_RandomInstances_ChecksCleanAndKeepsItsWord()
    {
        Gen<Length> size = Gen.Long[1, 300_000_000].Select(Length.FromTicks);
        Gen<BoardInstance> instances = Gen.Select(
            Gen.Select(size, Gen.Int[1, 5]).Array[0, 12], Gen.Select(Gen.Long[100_000_000, 600_000_000], Gen.Int[0, 9], Gen.Int[0, 4]).Array[1, 3], Gen.Long[0, 800_000], size,
            (parts, stock, kerf, keep) => new BoardInstance(
                [.. parts.Select((p, i) => new BoardPart($"p{i}", p.Item1, p.Item2))],
                [.. stock.Select((s, i) => new BoardStock($"s{i}", Length.FromTicks(s.Item1), new EndTrim(Length.FromTicks(s.Item3), Length.FromTicks(7)), new Money(s.Item2), s.Item3 == 0 ? null : s.Item3))],
                Length.FromTicks(kerf), keep));
        instances.Holds(instance =>
        {
            BoardOutcome outcome = Solve(instance, 20_000);
            Assert.Empty(BoardChecker.Check(instance, outcome.Layout));
            if (instance.Stock.All(s => s.Limit is null)) Assert.Equal(instance.Validate().IsEmpty, outcome.Layout.LeftOut.IsEmpty);
            var enlarged = new BoardInstance(
                [.. instance.Parts.Select(p => p with { Length = p.Length + instance.Kerf })],
                [.. instance.Stock.Select(s => s with { Length = s.Length + instance.Kerf })], Length.Zero, instance.KeepFrom);
            BoardOutcome other = Solve(enlarged, 20_000);
            Assert.Equal((outcome.Score.Cost, outcome.Score.Boards, outcome.Bound.Cost), (other.Score.Cost, other.Score.Boards, other.Bound.Cost));
        }, iter: 200);
    }

    [Fact]
    public void Solve_TinyInstances_EqualsEveryLayoutTried()
    {
        var random = new Random(7);
        for (int round = 0; round < 150; round++)
        {
            int kerf = random.Next(3);
            BoardStock[] stock = [Stock("long", random.Next(12, 25), random.Next(4, 9)), Stock("short", random.Next(8, 13), random.Next(2, 6))];
            BoardPart[] parts = [.. Enumerable.Range(0, random.Next(2, 8)).Select(i => new BoardPart($"p{i}", Mm(random.Next(1, 9)), 1))];
            (int cost, int boards) = Least(parts, stock, kerf);
            BoardOutcome outcome = Solve(Instance(parts, stock, kerf));
            Assert.Equal((new Money(cost), boards), (outcome.Score.Cost, outcome.Score.Boards));
            Assert.True(outcome.Bound.Cost <= new Money(cost) && outcome.Bound.Count <= boards, $"bound {outcome.Bound} above {cost} on {boards}");
        }
    }

    private static (int Cost, int Boards) Least(BoardPart[] parts, BoardStock[] stock, int kerf)
    {
        int all = (1 << parts.Length) - 1;
        var least = new (int Cost, int Boards)[all + 1];
        for (int set = 1; set <= all; set++)
        {
            least[set] = (int.MaxValue, 0);
            for (int one = set; one > 0; one = (one - 1) & set)
            {
                int taken = one;
                Length used = Mm(kerf) * (int.PopCount(one) - 1);
                for (int i = 0; i < parts.Length; i++) if ((taken >> i & 1) == 1) used += parts[i].Length;
                foreach (BoardStock board in stock.Where(b => used <= b.Length))
                {
                    (int, int) way = (least[set ^ one].Cost + (int)board.Cost.Amount, least[set ^ one].Boards + 1);
                    if (least[set ^ one].Cost < int.MaxValue && way.CompareTo(least[set]) < 0) least[set] = way;
                }
            }
        }
        return least[all];
    }
}
