// A table with a row or more for every rule of the checker.
using System.Reflection;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>Every rule of the checker passes exactly at its limit and fails one tick (or one piece) past it. A rule without a row here fails a test.</summary>
public class CheckerLimitTests
{
    private sealed record Limit(string Rule, SheetInstance AtInstance, SheetLayout AtLayout, SheetInstance PastInstance, SheetLayout PastLayout)
    {
        public Limit(string rule, SheetInstance instance, SheetLayout at, SheetLayout past) : this(rule, instance, at, instance, past) { }

        public Limit(string rule, SheetLayout layout, SheetInstance at, SheetInstance past) : this(rule, at, layout, past, layout) { }
    }

    private static readonly Length s_none = Length.Zero;

    // A sheet of 1000 x 600, kerf 3: two doors of 400 x 250 in a strip; 1000 - 806 = 194 left in it, 600 - 253 = 347 beyond it.
    private static SheetInstance Doors(int count = 2, KeepRule? keep = null, Length? along = null, int? limit = null) =>
        new([new("door", along ?? Mm(400), Mm(250), count, GrainRule.Keep)], [Stock("ply", 1000, 600, 40, limit)], Mm(3), keep ?? new KeepRule(Mm(194), Mm(250)));

    private static SheetLayout TwoDoors(Length? end = null, CutNode? rest = null, params ReadOnlySpan<Slice> more) => Layout(new LaidSheet("ply", Rips(s_none,
        [Slice(250, Crosscuts(s_none, Slice(400, Lies("door")), Slice(400, Lies("door")), Slice(end ?? Mm(194), KeepNode.Instance))),
         Slice(347, rest ?? KeepNode.Instance), .. more])));

    // One part that leaves 5 free at both far edges of 1000 x 600: 995 + 3 + 2 and 595 + 3 + 2. It takes two divisions.
    private static SheetInstance Lone(Length slack, int? stages = null) =>
        Instance([Part("top", 995, 595)], [Stock("ply", 1000, 600)]) with { Slack = slack, MostStages = stages };

    private static readonly SheetLayout s_lone = Layout(new LaidSheet("ply", Rips(s_none,
        Slice(595, Crosscuts(s_none, Slice(995, Lies("top")), Slice(2, WasteNode.Instance))), Slice(2, WasteNode.Instance))));

    // Left and right run through along the sheet; right is narrower and trimmed from the block of 803 x 300.
    private static SheetInstance Pair(long kerf = 3, int pegs = 0, Length? peg = null, GrainAxis axis = GrainAxis.Along) =>
        new([Part("left", 400, 300), Part("right", 400, 200), .. pegs > 0 ? [new SheetPart("peg", Mm(100), peg ?? Mm(50), pegs, GrainRule.Keep)] : Array.Empty<SheetPart>()],
            [Stock("ply", 1000, 600)], Mm(kerf), KeepRule.Nothing)
        { Groups = [new("pair", axis, ["left", "right"])] };

    private static SheetLayout PairLaid(Length? before = null, string first = "left", CutNode? right = null, CutNode? rest = null)
    {
        Length gap = before ?? Length.Zero;
        CutNode left = first == "left" ? Lies("left") : Rips(s_none, Slice(200, Lies("right")), Slice(97, WasteNode.Instance));
        CutNode other = first == "left" ? Rips(s_none, Slice(200, Lies("right")), Slice(97, WasteNode.Instance)) : Lies("left");
        // A slice wider than its part by less than a kerf ends in dust, so that only the figure is wrong.
        return Layout(new LaidSheet("ply", Rips(s_none,
            Slice(300, Crosscuts(s_none,
                Slice(Mm(400) + gap, gap.Sign > 0 ? Crosscuts(gap, Slice(400, left)) : left),
                Slice(400, right ?? other),
                Slice(Mm(194) - gap, WasteNode.Instance))),
            Slice(297, rest ?? WasteNode.Instance))));
    }

    // Without kerf a member can lie one tick out of line.
    private static SheetLayout OutOfLine(Length off) => Layout(new LaidSheet("ply", Rips(s_none,
        Slice(300, Crosscuts(s_none,
            Slice(400, Lies("left")),
            Slice(400, off.Sign == 0
                ? Rips(s_none, Slice(200, Lies("right")), Slice(100, WasteNode.Instance))
                : Rips(s_none, Slice(off, WasteNode.Instance), Slice(200, Lies("right")), Slice(Mm(100) - off, WasteNode.Instance))),
            Slice(200, WasteNode.Instance))),
        Slice(300, WasteNode.Instance))));

    // A peg beside the block, or cut from what the narrower member leaves of it.
    private static SheetLayout Pegged(bool inside)
    {
        CutNode peg = Crosscuts(s_none, Slice(100, Lies("peg")), Slice(297, WasteNode.Instance));
        CutNode outside = Rips(s_none, Slice(97, Crosscuts(s_none, Slice(100, Lies("peg")), Slice(897, WasteNode.Instance))), Slice(197, WasteNode.Instance));
        return inside
            ? PairLaid(right: Rips(s_none, Slice(200, Lies("right")), Slice(97, peg)))
            : PairLaid(rest: outside);
    }

    private static readonly SheetInstance s_tall = new([Part("left", 400, 300), Part("right", 400, 200)], [Stock("ply", 1000, 600)], Mm(3), KeepRule.Nothing)
    {
        Groups = [new("pair", GrainAxis.Across, ["left", "right"])],
    };

    private static SheetLayout Tall(bool swapped)
    {
        CutNode Row(string id, long size) => Crosscuts(s_none, Slice(size, Lies(id)), Slice(1000 - size - 3, WasteNode.Instance));
        Slice left = Slice(300, Row("left", 400)), right = Slice(200, Row("right", 400));
        return Layout(new LaidSheet("ply", Rips(s_none, swapped ? right : left, swapped ? left : right, Slice(94, WasteNode.Instance))));
    }

    private static IEnumerable<Limit> Limits()
    {
        SheetLayout good = TwoDoors();
        yield return new("KnownNames", Doors(), good, Layout(new LaidSheet("oak", Lies("door"))));
        yield return new("KnownNames", Doors(), good, good with { LeftOut = [new("lid", 1)] });
        yield return new("SlicesArePositive", Doors(keep: KeepRule.Nothing), Ends(Mm(344) - Tick, Tick), Ends(Mm(344), s_none));
        yield return new("SlicesAddUp", Doors(), good, TwoDoors(end: Mm(194) + Tick));
        yield return new("EveryDivisionCuts", Skim(Mm(1000) - Tick), Skimmed(Mm(1000) - Tick, Tick), Skim(Mm(1000)), Skimmed(Mm(1000), s_none));
        yield return new("DustIsNoWiderThanKerf", Doors(keep: KeepRule.Nothing), Dusty(Mm(3)), Dusty(Mm(3) + Tick));
        yield return new("InsideStockAndTrims", Doors(), good, TwoDoors(end: Mm(194) + Tick));
        yield return new("SlackIsKept", s_lone, Lone(Mm(5)), Lone(Mm(5) + Tick));
        yield return new("SlackIsKept", s_lone with { Sheets = [Narrow(Mm(5))] }, WithTop(Mm(5)), WithTop(Mm(5) + Tick));
        yield return new("SlackIsKept", s_lone with { Sheets = [Short(Mm(5))] }, WithTop(Mm(5), Mm(995), Mm(500)), WithTop(Mm(5) + Tick, Mm(995), Mm(500)));
        yield return new("StagesAreFew", s_lone, Lone(s_none, 2), Lone(s_none, 1));
        yield return new("KerfBetweenParts", Doors(keep: KeepRule.Nothing), Nested(Mm(57)), Nested(Mm(57) + Tick));
        yield return new("PartsHaveTheirSize", good, Doors(), Doors(along: Mm(400) - Tick));
        yield return new("GrainIsKept", Layout(new LaidSheet("blank", Lies("tile", Turn.Quarter))), Tile(GrainRule.Free), Tile(GrainRule.Keep));
        yield return new("FigureRunsThrough", Pair(), PairLaid(), PairLaid(before: Tick));
        yield return new("FigureRunsThrough", Pair(), PairLaid(), PairLaid(first: "right"));
        yield return new("FigureRunsThrough", PairLaid(), Pair(), Pair(axis: GrainAxis.Across));
        yield return new("FigureRunsThrough", Pair(kerf: 0), OutOfLine(s_none), OutOfLine(Tick));
        yield return new("FigureRunsThrough", Pair(pegs: 1, peg: Mm(97)), Pegged(inside: false), Pegged(inside: true));
        yield return new("FigureRunsThrough", s_tall, Tall(swapped: false), Tall(swapped: true));
        yield return new("FigureRunsThrough", Tiles(), TilesLaid(Turn.None), TilesLaid(Turn.Quarter));
        yield return new("FigureRunsThrough", Tiles(), TilesLaid(Turn.None), Layout(OneTile("a"), OneTile("b")));
        yield return new("LeftOversAreLabelled", good, Doors(), Doors(keep: new(Mm(194) + Tick, Mm(250))));
        yield return new("LeftOversAreLabelled", good, Doors(), Doors(keep: new(Mm(194), Mm(250) + Tick)));
        yield return new("SheetIsUsed", Doors(), good, good with { Sheets = [.. good.Sheets, new LaidSheet("ply", KeepNode.Instance)] });
        yield return new("DemandIsMet", good, Doors(2), Doors(3));
        yield return new("DemandIsMet", good, Doors(2), Doors(1));
        SheetLayout twice = good with { Sheets = [.. good.Sheets, .. good.Sheets] };
        yield return new("StockLimitsHold", twice, Doors(4, limit: 2), Doors(4, limit: 1));
    }

    private static SheetLayout Ends(Length rest, Length sliver) => Layout(new LaidSheet("ply", Rips(s_none,
        Slice(250, Crosscuts(s_none, Slice(400, Lies("door")), Slice(400, Lies("door")), Slice(194, WasteNode.Instance))),
        Slice(rest, WasteNode.Instance), Slice(sliver, WasteNode.Instance))));

    private static SheetLayout Dusty(Length dust) => Layout(new LaidSheet("ply", Rips(dust,
        Slice(250, Crosscuts(s_none, Slice(400, Lies("door")), Slice(400, Lies("door")), Slice(194, WasteNode.Instance))),
        Slice(Mm(347) - dust, WasteNode.Instance))));

    // The first slice is divided again; what is in it reaches one tick past its end, into the saw's path.
    private static SheetLayout Nested(Length inner) => Layout(new LaidSheet("ply", Rips(s_none,
        Slice(250, Crosscuts(s_none,
            Slice(460, Crosscuts(s_none, Slice(400, Lies("door")), Slice(inner, WasteNode.Instance))),
            Slice(400, Lies("door")), Slice(134, WasteNode.Instance))),
        Slice(347, WasteNode.Instance))));

    private static SheetInstance Skim(Length part) => new([new("top", part, Mm(600), 1, GrainRule.Keep)], [Stock("ply", 1000, 600)], Mm(3), KeepRule.Nothing);

    private static SheetLayout Skimmed(Length part, Length dust) => Layout(new LaidSheet("ply", Crosscuts(dust, Slice(part, Lies("top")))));

    private static SheetInstance WithTop(Length slack, Length? along = null, Length? across = null) =>
        new([new("top", along ?? Mm(900), across ?? Mm(595), 1, GrainRule.Keep)], [Stock("ply", 1000, 600)], Mm(3), KeepRule.Nothing) { Slack = slack };

    private static LaidSheet Narrow(Length free) => new("ply", Rips(s_none,
        Slice(Mm(600) - free, Crosscuts(s_none, Slice(900, Lies("top")), Slice(97, WasteNode.Instance))), Slice(free - Mm(3), WasteNode.Instance)));

    private static LaidSheet Short(Length free) => new("ply", Rips(s_none,
        Slice(500, Crosscuts(s_none, Slice(Mm(1000) - free, Lies("top")), Slice(free - Mm(3), WasteNode.Instance))), Slice(97, WasteNode.Instance)));

    private static SheetInstance Tile(GrainRule grain) => Instance([Part("tile", 300, 300, 1, grain)], [Stock("blank", 300, 300)]);

    private static SheetInstance Tiles() => Instance([Part("a", 300, 300), Part("b", 300, 300)], [Stock("ply", 603, 300)]) with { Groups = [new("g", GrainAxis.Along, ["a", "b"])] };

    private static SheetLayout TilesLaid(Turn turn) => Layout(new LaidSheet("ply", Crosscuts(s_none, Slice(300, Lies("a")), Slice(300, Lies("b", turn)))));

    private static LaidSheet OneTile(string id) => new("ply", Crosscuts(s_none, Slice(300, Lies(id)), Slice(300, KeepNode.Instance)));

    public static TheoryData<int, string> Rows() => new(Limits().Select((l, i) => (i, l.Rule)));

    [Theory]
    [MemberData(nameof(Rows))]
    public void Rule_AtItsLimit_PassesAndOnePastItFails(int row, string rule)
    {
        Limit limit = Limits().ElementAt(row);
        Assert.Empty(SheetChecker.Check(limit.AtInstance, limit.AtLayout));
        Violation broken = Assert.Single(SheetChecker.Check(limit.PastInstance, limit.PastLayout).Where(v => v.Rule == rule).Take(1));
        Assert.NotEmpty(broken.Words);
    }

    [Fact]
    public void Rules_OfTheChecker_EachHaveARow()
    {
        // A rule is a private method that yields violations; what only gathers them is none.
        IEnumerable<string> rules = typeof(SheetChecker).GetMethods(BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .Where(m => m.ReturnType == typeof(IEnumerable<Violation>) && m.Name != "OfOneSheet").Select(m => m.Name);
        Assert.Equal(rules.Order(StringComparer.Ordinal), Limits().Select(l => l.Rule).Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void FigureRunsThrough_MemberOffByOneTick_SaysWhereItShouldLie()
    {
        Violation broken = Assert.Single(SheetChecker.Check(Pair(), PairLaid(before: Tick)));
        Assert.Contains("figure group pair needs its part right at 403 mm along, 0 mm across", broken.Words);
    }

    [Fact]
    public void SlackIsKept_TooLittleFree_TellsBothFigures()
    {
        Violation broken = Assert.Single(SheetChecker.Check(Lone(Mm(5) + Tick), s_lone));
        Assert.Contains("ends 5 mm along and 5 mm across before the far trued edges, a slack of 5.00000625 mm", broken.Words);
    }

    [Fact]
    public void StagesAreFew_OneDivisionTooMany_TellsBothFigures() =>
        Assert.Contains("takes 2 divisions, at most 1 are allowed", Assert.Single(SheetChecker.Check(Lone(s_none, 1), s_lone)).Words);
}
