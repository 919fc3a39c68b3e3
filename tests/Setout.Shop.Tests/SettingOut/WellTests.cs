// Over 200 lines: one sum of heights, what moves it and what it cannot be.
using Setout.Core.Fit;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Wells: the sum of heights, what a reading of the machine moves, what waits for it, and what cannot be.</summary>
public class WellTests
{
    private const string Usual = "well: W, machine: drum sander, from left: 20, from front: 5, footprint: 14 x 10, table height: 5 1/4, bearers: maple";

    private static string Text(string well, string top = "") => $$"""
        setout: 1
        name: Sanding bench
        unit: in
        grid: 1/32
        materials:
          studs: {stick: pine, section: 1 1/2 x 3 1/2}
          maple: {stick: maple, section: 3/4 x 1 1/2}
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
        assembly:
          - {frame: F, of: studs, width: 78, height: 33, depth: 24, toe: 4, top rails: flat, across: [{opening: B}]}
          - {top: T, of: ply, overhang: {front: 1}{{top}}, wells: [{{{well}}}]}
        """;

    private static SetPiece Out(string well, params string[] readings) => SetOut(Text(well), readings);

    private static (string, Severity)[] Told(SetPiece set) => [.. set.Findings.Where(f => f.Severity != Severity.Note).Select(f => (f.Code, f.Severity))];

    [Fact]
    public void Well_Usual_IsTheSumByHand()
    {
        // Floor to the face of the top 33 + 3/4 = 33 3/4. Less the machine, 5 1/4, and 1/16 set low: the platform at 28 7/16; less its 3/4 the bearers
        // end at 27 11/16. Opening: 14 + 2 x 1/2 by 10 + 2 x 1/2; platform 1/16 less across. Side: 33 3/4 - 3/4 - 27 11/16 + 1 1/2 = 6 13/16.
        SetPiece set = Out(Usual);

        AssertValues(set, ("W.surface", "33 3/4"), ("W.platform.height", "28 7/16"), ("W.bearers.up.to-cut", "27 11/16"), ("W.drop", "5 5/16"), ("W.flush", "1/16"), ("W.width", "15"), ("W.depth", "11"),
            ("W.platform.length.to-cut", "14 15/16"), ("W.platform.width.to-cut", "11"), ("W.bearer.length.to-cut", "11"), ("W.side.width.to-cut", "6 13/16"), ("W.side.length.to-cut", "11"));
        // Top 78 x 25: 78 - 20 - 15 on the right, 25 - 5 - 11 behind.
        AssertValues(set, ("W.from-right", "43"), ("W.from-back", "9"), ("W.room.across", "1"));
        Assert.Empty(Told(set));
        Assert.Empty(SetPieceChecker.Violations(set));
        Placement platform = Assert.Single(set.Parts.Single(p => p.Key == "W.platform").Placements);
        Assert.Equal((Described.Of("20 1/32"), Described.Of("4"), Described.Of("27 11/16")), (platform.X, platform.Y, platform.Z));
    }

    [Fact]
    public void Well_TableRead_MovesThePlatformDownAndItsSidesOnly()
    {
        SetPiece before = Out(Usual), after = Out(Usual, "W.table-height: 5 3/8 in");

        // 1/8 more machine: platform and bearers 1/8 lower, sides and drop 1/8 more; it still lies 1/16 low.
        ExactLength eighth = Described.Of("1/8");
        Dictionary<string, ExactLength> moved = Moved(before, after);
        string[] down = ["W.platform.height", "W.bearers.up", "W.bearers.up.to-cut", "W.bearers.up.as-cut"], up = ["W.table-height", "W.drop", "W.side.width", "W.side.width.to-cut", "W.side.width.as-cut"];
        Assert.Equal([.. down.Concat(up).Order(StringComparer.Ordinal)], moved.Keys.Order(StringComparer.Ordinal));
        Assert.All(down, k => Assert.Equal(-eighth, moved[k]));
        Assert.All(up, k => Assert.Equal(eighth, moved[k]));
    }

    [Fact]
    public void Well_TableReadOffTheGrid_IsSetOutDownwards()
    {
        // 33.75 - 5.27 - 0.0625 - 0.75 = 27.6675, down to 27 21/32 (27.65625): 33.75 - 28.40625 - 5.27 = 0.07375 low.
        SetPiece set = Out(Usual, "W.table-height: 5.27 in");

        AssertValues(set, ("W.bearers.up.to-cut", "27 21/32"), ("W.flush", "0.07375"));
    }

    [Fact]
    public void Well_UntilItsMachineIsRead_Waits()
    {
        string[] wells = ["W.side", "W.bearer", "W.platform"];
        SetPiece before = Out(Usual), after = Out(Usual, "W.table-height: 5 1/4 in");

        Assert.Equal(wells.Order(StringComparer.Ordinal), before.Parts.Where(before.IsHeld).Select(p => p.Key).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(after.Parts, after.IsHeld);
    }

    [Fact]
    public void Well_PlatformReadLow_IsShimmedFlushFromWhatTheShopKeeps()
    {
        // From the face down to the platform 5 7/16 where 5 5/16 was meant: 5 7/16 - 5 1/4 = 3/16 low. Three washers of 1/16 under each foot; the posts,
        // which are not marked cut here, have no part in it.
        string[] readings = ["W.table-height: 5 1/4 in", "W.drop: 5 7/16 in"];
        SetPiece set = Out(Usual, readings);
        AssertValues(set, ("W.flush", "3/16"));
        Remedy remedy = Assert.Single(Assert.Single(Remedies.For(set, [new("washer", Length.FromInches(1, 16)), new("card", Length.FromInches(1, 64))], [])).Remedies);

        Assert.StartsWith("Put 3 x washer (3/16 in) under each foot", remedy.Words, StringComparison.Ordinal);
        Assert.Equal(["setout record FILE W.packing 3/16 in"], remedy.Commands);
        SetPiece shimmed = Out(Usual, [.. readings, "W.packing: 3/16 in"]);
        AssertValues(shimmed, ("W.flush", "0"));
        Assert.Empty(Remedies.UpsetsOf(shimmed));
    }

    [Fact]
    public void Well_Heights_AgreeInMillimetres()
    {
        SetPiece inch = Out(Usual);
        string text = Text(Usual).Replace("unit: in", "unit: mm", StringComparison.Ordinal);
        foreach ((string from, string to) in new[] { ("1/32", "1/32 in"), ("1 1/2 x 3 1/2", "1 1/2 in x 3 1/2 in"), ("3/4 x 1 1/2", "3/4 in x 1 1/2 in"), ("thickness: 3/4", "thickness: 3/4 in"), ("78, height: 33, depth: 24, toe: 4", "78 in, height: 33 in, depth: 24 in, toe: 4 in"),
            ("front: 1}", "front: 1 in}"), ("left: 20", "left: 20 in"), ("from front: 5", "from front: 5 in"), ("14 x 10", "14 in x 10 in"), ("5 1/4", "5 1/4 in") })
            text = text.Replace(from, to, StringComparison.Ordinal);
        SetPiece metric = SetOut(text);

        Assert.All(inch.Worked.Order.Where(k => k.Owner == "W"), k => Assert.Equal(inch.Worked[k], metric.Worked[k]));
    }

    [Theory]
    [InlineData("width: 14", 0)]
    [InlineData("width: 13 63/64", 1)]
    [InlineData("width: 16, swing: {left: 2}", 0)]
    [InlineData("width: 16, swing: {left: 2, right: 1/64}", 1)]
    [InlineData("depth: 9 63/64", 1)]
    public void Well_TooSmallForItsMachine_SaysByHowMuch(string more, int findings)
    {
        Finding[] found = [.. Out($"{Usual}, {more}").Findings.Where(f => f.Code == "well.too-small")];

        Assert.Equal(findings, found.Length);
        Assert.All(found, f => Assert.Contains("1/64 in too small", f.Words, StringComparison.Ordinal));
        Assert.All(found, f => Assert.Equal((Severity.Stop, true), (f.Severity, f.Place.IsKnown)));
    }

    [Theory]
    [InlineData("feed: {left: 20, right: 43}", 0)]
    [InlineData("feed: {left: 20 1/64, right: 43 1/64}", 2)]
    public void Well_WithTooLittleTopBesideIt_Warns(string feed, int findings) => Assert.Equal(Enumerable.Repeat(("well.feed-short", Severity.Warn), findings), Told(Out($"{Usual}, {feed}")));

    [Theory]
    [InlineData("5", false)] // behind the front rail: it ends at 3 1/2, the well begins at 5 - 1
    [InlineData("4 1/2", false)]
    [InlineData("4 31/64", true)]
    public void Well_ThatMeetsARail_NamesIt(string front, bool meets)
    {
        SetPiece set = Out(Usual.Replace("from front: 5", $"from front: {front}", StringComparison.Ordinal));
        Assert.Equal(meets ? [("well.interrupts", Severity.Warn)] : [], Told(set));
        if (meets) Assert.Contains("bay B rail", set.Findings.Single(f => f.Code == "well.interrupts").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Well_WithoutBearers_SaysWhatItWouldCarry() => Assert.Contains("weighs 60 lb", Out(Usual.Replace(", bearers: maple", ", load: 60", StringComparison.Ordinal)).Findings.Single(f => f.Code == "well.no-bearers").Words, StringComparison.Ordinal);

    [Theory]
    [InlineData("from left: 63", 0)]
    [InlineData("from left: 63 1/64", 1)]
    public void Well_PastTheEndOfTheTop_Stops(string left, int findings) =>
        Assert.Equal(findings, Out(Usual.Replace("from left: 20", left, StringComparison.Ordinal)).Findings.Count(f => f is { Code: "well.outside", Severity: Severity.Stop }));

    [Fact]
    public void Well_Bolts_GoByTheMachineInTheMiddleOfItsRoom()
    {
        // Platform 14 15/16 across, machine 14: it stands 15/32 in; its hole 1 in from its left: 1 15/32. Along 11, machine 10: 1/2 + 2.
        SetPiece set = Out($"{Usual}, bolts: [{{from left: 1, from front: 2}}], exits: [{{for: cable, size: 1 1/2, from left: 7, from front: 9}}]");

        AssertValues(set, ("W.bolt-1.left", "1 15/32"), ("W.bolt-1.front", "2 1/2"), ("W.bolt-size", "5/16"));
        Assert.Empty(Told(set));
        Assert.Equal(["hole for hold-down bolt 1, through", "hole for cable, through, its edges rounded"], set.Machinings.Where(m => m.Part == "W.platform").Select(m => m.Words));
    }

    [Theory]
    [InlineData("0.4375", 0)] // bearer 3/4 and half of 5/16: 29/32 from the edge, and the machine stands 15/32 in
    [InlineData("27/64", 1)]
    public void Bolt_OverABearer_Warns(string left, int findings) =>
        Assert.Equal(Enumerable.Repeat(("well.hole-over-bearer", Severity.Warn), findings), Told(Out($"{Usual}, bolts: [{{from left: {left}, from front: 2}}]")));

    [Theory]
    [InlineData("3/4", 0)]
    [InlineData("47/64", 1)]
    public void Exit_OverTheEdge_Warns(string front, int findings) =>
        Assert.Equal(Enumerable.Repeat(("well.exit-outside", Severity.Warn), findings), Told(Out($"{Usual}, exits: [{{for: chips, size: 1 1/2, from left: 7, from front: {front}}}]")));

    [Theory]
    [InlineData("32 7/8", 0)] // 33 3/4 - 32 7/8 - 1/16: the platform at 13/16, a hair of floor below its 3/4
    [InlineData("32 15/16", 1)]
    public void Well_OfAMachineTallerThanTheBench_Stops(string table, int findings) =>
        Assert.Equal(findings, Out(Usual.Replace("5 1/4", table, StringComparison.Ordinal)).Findings.Count(f => f is { Code: "well.too-low", Severity: Severity.Stop }));

    [Theory]
    [InlineData("14", 0)]
    [InlineData("14 1/64", 1)]
    public void Bolt_OutsideTheFootprint_Warns(string left, int findings) =>
        Assert.Equal(findings, Out($"{Usual}, bolts: [{{from left: {left}, from front: 2}}]").Findings.Count(f => f.Code == "well.bolt-outside"));

    [Theory]
    [InlineData("load: 60", Severity.Warn)]
    [InlineData("set low: 1/16", Severity.Note)]
    public void Well_WhoseSidesTouchNothing_SaysWhatHangsFromTheTop(string more, Severity severity)
    {
        Finding finding = Out($"{Usual}, {more}").Findings.Single(f => f.Code == "well.sides-hang");
        Assert.Equal(severity, finding.Severity);
        Assert.StartsWith("Both sides of well W touch no post, rail or panel", finding.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Well_FromRailToRail_HangsOnThem()
    {
        // Flat rails of 3 1/2 front and back in a depth of 24: 17 between them, from 1 + 3 1/2 behind the edge of the top.
        SetPiece set = Out($"{Usual.Replace("from front: 5", "from front: 4 1/2", StringComparison.Ordinal)}, depth: 17, load: 60");
        Assert.Empty(Told(set));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Theory]
    [InlineData("4 1/4", 0)] // its farther wall at 5, where the opening begins
    [InlineData("4 17/64", 1)]
    public void Slot_IntoAWell_Warns(string from, int findings) =>
        Assert.Equal(findings, SetOut(Text(Usual, $", slots: [{{slot: K, along: front, from: {from}, width: 3/4, depth: 1/4}}]")).Findings.Count(f => f is { Code: "slot.meets-well", Severity: Severity.Warn }));

    [Fact]
    public void Well_InALaminatedTop_RoundsItsCorners()
    {
        SetPiece set = SetOut(Text(Usual, ", laminate: {of: HGS, faces: both}"));

        // 3/4 and two films of 0.048 make the face 33.846.
        AssertValues(set, ("W.surface", "33.846"), ("T.laminate.corner", "1/8"));
        Assert.Contains(set.Machinings, m => m.Words.StartsWith("round the inside corners of the opening of well W", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("from front: 2", "")]
    [InlineData("from front: 1 31/32", "well.thin-strip")]
    [InlineData("from front: 0", "well.thin-strip")]
    // Top 78 x 25: 78 - 15 - 61 = 2 on the right, 25 - 11 - 12 = 2 behind.
    [InlineData("from left: 61", "")]
    [InlineData("from left: 61 1/32", "well.thin-strip")]
    [InlineData("from front: 12", "")]
    [InlineData("from front: 12 1/32", "well.thin-strip")]
    public void Top_BesideTheOpening_IsWideEnoughToLeanOn(string words, string code)
    {
        string well = words.StartsWith("from left", StringComparison.Ordinal) ? Usual.Replace("from left: 20", words, StringComparison.Ordinal) : Usual.Replace("from front: 5", words, StringComparison.Ordinal);
        Assert.Equal(code, string.Join(' ', Out(well).Findings.Where(f => f.Code == "well.thin-strip").Select(f => f.Code)));
    }

    [Theory]
    // One lifts 51 lb, two twice that (the load constant of the NIOSH lifting equation).
    [InlineData("", "two people lift it in", false)]
    [InlineData(", load: 51", "sander, lift it in", false)]
    [InlineData(", load: 52", "two people lift it in", false)]
    [InlineData(", load: 102", "two people lift it in", false)]
    [InlineData(", load: 103", "it weighs 103 lb: bring it in with a hoist", true)]
    public void Machine_IsBroughtInByItsWeight(string load, string words, bool isHeavy)
    {
        SetPiece set = Out(Usual + load);
        Assert.Contains(set.Steps, s => s.Words.Contains(words, StringComparison.Ordinal));
        Assert.Equal(isHeavy, set.Findings.Any(f => f.Code == "well.heavy"));
    }
}
