using Setout.Core.Measures;
using Setout.Cutting.Boards;

namespace Setout.Cutting.Tests.Boards;

/// <summary>Each rule of the checker at its limit and one tick (or one) past it, on a board with trims, a defect and two lanes.</summary>
public class BoardRuleTests
{
    private static readonly Length s_tick = Length.FromTicks(1);

    private static Length Mm(long millimetres) => Length.FromMillimetres(millimetres);

    // 2400 with trims of 20 and 10 and a defect from 920 to 1000: clear from 20 to 920 and from 1000 to 2390. Two lanes of 70 with a kerf of 3
    // need 143. Kerf 3: two of 447 need 897 of the first 900; 900 and 487 with one kerf fill the second 1390; 500 of 900 leaves 397.
    private sealed record Setting
    {
        public Length Leg { get; init; } = Mm(447);
        public Length Rail { get; init; } = Mm(900);
        public Length Stub { get; init; } = Mm(487);
        public Length Bar { get; init; } = Mm(500);
        public Length Kerf { get; init; } = Mm(3);
        public Length Keep { get; init; } = Mm(397);
        public Length TrimStart { get; init; } = Mm(20);
        public Length TrimEnd { get; init; } = Mm(10);
        public Length DefectFrom { get; init; } = Mm(920);
        public Length DefectTo { get; init; } = Mm(1000);
        public Length Width { get; init; } = Mm(143);
        public Length RipKerf { get; init; } = Mm(3);
        public int Legs { get; init; } = 2;
        public int Limit { get; init; } = 1;
        public bool IsRipped { get; init; } = true;
        public Length LegsLeave { get; init; } = Length.Zero;
        public Length BarLeaves { get; init; } = Mm(397);
        public LeftOverUse LegsUse { get; init; } = LeftOverUse.None;
        public LeftOverUse BarUse { get; init; } = LeftOverUse.Keep;
        public int SecondLane { get; init; } = 2;
        public int LeftOutLegs { get; init; }
        public string Stock { get; init; } = "oak";
        public bool TellsLast { get; init; } = true;

        public string[] Broken()
        {
            BoardStock stock = new("oak", Mm(2400), new(TrimStart, TrimEnd), new Money(12), Limit)
            {
                Defects = [new(DefectFrom, DefectTo)],
                Rip = IsRipped ? new(Width, Mm(70), RipKerf) : null,
            };
            var instance = new BoardInstance([new("leg", Leg, Legs), new("rail", Rail, 1), new("stub", Stub, 1), new("bar", Bar, 1)], [stock], Kerf, Keep);
            var laid = new LaidBoard(Stock,
            [
                new(1, 1, ["leg", "leg"], LegsLeave, LegsUse), new(1, 2, ["rail", "stub"], Length.Zero, LeftOverUse.None),
                new(SecondLane, 1, ["bar"], BarLeaves, BarUse), .. TellsLast ? [new LaidStretch(SecondLane, 2, [], Mm(1390), LeftOverUse.Keep)] : Array.Empty<LaidStretch>(),
            ]);
            return [.. BoardChecker.Check(instance, new([laid], LeftOutLegs == 0 ? [] : [new("leg", LeftOutLegs)])).Select(v => v.Rule).Distinct()];
        }
    }

    private static readonly Setting s_good = new();

    private static readonly Dictionary<string, (Setting AtLimit, Setting Past)> s_rules = new()
    {
        ["KnownNames"] = (s_good, s_good with { Stock = "ash" }),
        ["LanesFitTheWidth"] = (s_good, s_good with { Width = Mm(143) - s_tick }),
        ["LanesFitTheWidth by kerf"] = (s_good, s_good with { RipKerf = Mm(3) + s_tick }),
        ["LanesFitTheWidth unripped"] = (s_good, s_good with { IsRipped = false }),
        ["EveryStretchIsToldOnce"] = (s_good, s_good with { TellsLast = false }),
        ["EveryStretchIsToldOnce twice"] = (s_good, s_good with { SecondLane = 1 }),
        ["EveryStretchIsToldOnce lane"] = (s_good with { Width = Mm(216) - s_tick }, s_good with { Width = Mm(216) }),
        ["PartsFitBetweenTrims"] = (s_good, s_good with { TrimEnd = Mm(10) + s_tick }),
        ["PartsFitBetweenTrims by part"] = (s_good, s_good with { Stub = Mm(487) + s_tick }),
        ["PartsFitBetweenTrims by kerf"] = (s_good, s_good with { Kerf = Mm(3) + s_tick }),
        ["PartsLieClearOfDefects"] = (s_good with { Leg = Mm(447) + Length.FromTicks(3 * Length.TicksPerMillimetre / 2) }, s_good with { Leg = Mm(447) + Length.FromTicks((3 * Length.TicksPerMillimetre / 2) + 1) }),
        ["PartsLieClearOfDefects from"] = (s_good with { DefectFrom = Mm(917), BarLeaves = Mm(394), Keep = Mm(394) }, s_good with { DefectFrom = Mm(917) - s_tick }),
        ["PartsLieClearOfDefects by trim"] = (s_good with { TrimStart = Mm(23), BarLeaves = Mm(394), Keep = Mm(394) }, s_good with { TrimStart = Mm(23) + s_tick }),
        ["LeftOverIsWhatRemains"] = (s_good, s_good with { BarLeaves = Mm(397) + s_tick }),
        ["LeftOverIsWhatRemains dust"] = (s_good, s_good with { Leg = Mm(447) - s_tick }),
        ["LeftOverIsWhatRemains empty"] = (s_good, s_good with { DefectTo = Mm(1000) - s_tick }),
        ["LeftOverIsLabelled"] = (s_good, s_good with { Keep = Mm(397) + s_tick }),
        ["DemandIsMet"] = (s_good, s_good with { Legs = 3 }),
        ["DemandIsMet left out"] = (s_good with { Legs = 3, LeftOutLegs = 1 }, s_good with { LeftOutLegs = 1 }),
        ["StockLimitsHold"] = (s_good, s_good with { Limit = 0 }),
    };

    public static TheoryData<string> Rules => [.. s_rules.Keys];

    [Theory]
    [MemberData(nameof(Rules))]
    public void Check_AtTheLimit_PassesAndOnePastFails(string rule)
    {
        (Setting atLimit, Setting past) = s_rules[rule];
        Assert.Empty(atLimit.Broken());
        Assert.Contains(rule.Split(' ')[0], past.Broken());
    }

    [Fact]
    public void Rules_OfTheChecker_AreAllInTheTable()
    {
        // BoardIsUsed and CheckFigures have tests of their own: they have no limit in ticks.
        IEnumerable<string> rules = typeof(BoardChecker).GetMethods(System.Reflection.BindingFlags.NonPublic | System.Reflection.BindingFlags.Static)
            .Where(m => m.ReturnType == typeof(IEnumerable<Violation>)).Select(m => m.Name).Where(n => n != "BoardIsUsed");
        Assert.Equal(rules.Order(), s_rules.Keys.Select(k => k.Split(' ')[0]).Distinct().Order());
    }

    [Fact]
    public void BoardIsUsed_OnePartOrNone_PassesOrFails()
    {
        var instance = new BoardInstance([new("a", Mm(100), 1)], [new BoardStock("b", Mm(500), EndTrim.None, new Money(1), null) { Rip = new(Mm(100), Mm(50), Length.Zero) }], Mm(3), Mm(50));
        string[] Check(params string[] first) => [.. BoardChecker.Check(instance, new([new("b",
            [new(1, 1, [.. first], first.Length == 0 ? Mm(500) : Mm(397), LeftOverUse.Keep), new(2, 1, [], Mm(500), LeftOverUse.Keep)])], first.Length == 0 ? [new("a", 1)] : [])).Select(v => v.Rule)];
        Assert.Empty(Check("a"));
        Assert.Equal(["BoardIsUsed"], Check());
    }

    [Fact]
    public void ClearStretches_OverlappingDefects_AreWhatIsBetween()
    {
        BoardStock stock = new("b", Mm(1000), new(Mm(10), Mm(20)), Money.Zero, 1)
        {
            Defects = [new(Mm(300), Mm(400)), new(Mm(0), Mm(15)), new(Mm(350), Mm(380)), new(Mm(400), Mm(500)), new(Mm(970), Mm(1000))],
        };
        Assert.Equal([new(Mm(15), Mm(300)), new(Mm(500), Mm(970))], stock.ClearStretches());
    }

    [Fact]
    public void New_DefectOrRipOutOfRange_SaysWhy()
    {
        static string Message(BoardStock stock) => Assert.Throws<ArgumentException>(() => new BoardInstance([], [stock], Mm(3), Mm(300))).Message;
        var plain = new BoardStock("b", Mm(1000), EndTrim.None, Money.Zero, 1);
        Assert.Contains("must lie within its length", Message(plain with { Defects = [new(Mm(900), Mm(1000) + s_tick)] }));
        Assert.Contains("must lie within its length", Message(plain with { Defects = [new(Mm(900), Mm(900))] }));
        Assert.Contains("Nothing is left", Message(plain with { Defects = [new(Mm(0), Mm(600)), new(Mm(600), Mm(1000))] }));
        Assert.Contains("no wider than the board", Message(plain with { Rip = new(Mm(70) - s_tick, Mm(70), Length.Zero) }));
        Assert.Contains("at most 1000", Message(plain with { Rip = new(Mm(1001), Mm(1), Length.Zero) }));
    }
}
