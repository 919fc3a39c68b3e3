using Setout.Core.SettingOut;
using Setout.Core.Workings;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Slots for track in a top: passes, what is left below, what they cross.</summary>
public class SlotTests
{
    private const string Head = """
        setout: 1
        name: Slots
        unit: in
        grid: 1/32
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
          strip: {stick: oak, section: 3/8 x 3/4}
        assembly:
          - {case: A, of: ply, width: 60, height: 30, depth: 30}

        """;

    private static SetPiece Out(string slots, string more = "") => SetOut($"{Head}  - {{top: T, of: ply{more}, slots: [{slots}]}}\n");

    // The strip is there for those pieces that have an edging.
    private static (string, Severity)[] Told(SetPiece set) => [.. set.Findings.Where(f => f is not { Code: "material.unused", Key: "strip" }).Select(f => (f.Code, f.Severity))];

    [Fact]
    public void Slot_WithABitAsWide_GoesDownInEqualPasses()
    {
        // Bit 3/4: half of it is 3/8, so 1/4 a pass; 3/8 takes two of 3/16. Top 3/4: 3/8 left. From the front 4, so 30 - 4 - 3/4 = 25 1/4 behind it.
        SetPiece set = Out("{slot: K, along: front, from: 4, width: 3/4, depth: 3/8}");

        AssertValues(set, ("K.bit", "3/4"), ("K.pass", "1/4"), ("K.pass-1.to-cut", "3/16"), ("K.left", "3/8"), ("K.far", "25 1/4"), ("K.length", "60"));
        Assert.Equal(["bit set to", "bit set to"], set.Machinings.Where(m => m.Words.Contains("pass ", StringComparison.Ordinal)).Select(m => m.Figures[0].Name));
        Assert.Empty(Told(set));
        Assert.Contains(set.Steps, s => s is { Caution: "router" } && s.Words.Contains("in 2 passes", StringComparison.Ordinal));
    }

    [Fact]
    public void Slot_WithANarrowerBit_MakesCutsSideBySideThatFillIt()
    {
        // 1 1/4 wide with a bit of 1/2: three cuts, 3/8 apart (1 1/4 - 1/2 over two), from 4: 4, 4 3/8, 4 3/4; the last ends at 5 1/4.
        SetPiece set = Out("{slot: K, along: left, from: 4, width: 1 1/4, depth: 5/16, bit: 1/2, pass: 1/8, short: 2}");

        AssertValues(set, ("K.fence-1", "4"), ("K.fence-2", "4 3/8"), ("K.fence-3", "4 3/4"), ("K.length", "26"));
        // Three passes of 5/48, set down to 3/32 and 6/32; the last takes what is left.
        AssertValues(set, ("K.pass-1.to-cut", "3/32"), ("K.pass-2.to-cut", "3/16"), ("K.depth", "5/16"));
        Assert.Empty(Told(set));
    }

    [Theory]
    [InlineData("3/8", 0)] // half of the top is left
    [InlineData("25/64", 1)]
    [InlineData("3/4", 2)]
    public void Slot_TooDeep_WarnsAndThenStops(string depth, int severity)
    {
        (string, Severity)[] expected = severity == 0 ? [] : [("slot.too-deep", severity == 1 ? Severity.Warn : Severity.Stop)];
        Assert.Equal(expected, Told(Out($"{{slot: K, along: front, from: 4, width: 3/4, depth: {depth}}}")));
    }

    [Theory]
    [InlineData("from: 29 1/4", 0)] // its farther wall on the edge
    [InlineData("from: 29 17/64", 1)]
    public void Slot_OutsideTheTop_Stops(string from, int findings) =>
        Assert.Equal(Enumerable.Repeat(("slot.outside", Severity.Stop), findings), Told(Out($"{{slot: K, along: front, {from}, width: 3/4, depth: 3/8}}")));

    [Theory]
    [InlineData("3/4", 0)]
    [InlineData("49/64", 1)]
    public void Slot_WithTooWideABit_Stops(string bit, int findings) =>
        Assert.Equal(Enumerable.Repeat(("slot.bit-too-wide", Severity.Stop), findings), Told(Out($"{{slot: K, along: front, from: 4, width: 3/4, depth: 3/8, bit: {bit}}}")));

    [Fact]
    public void Slot_OfThousandsOfPasses_StopsWithoutThem() =>
        Assert.Equal([("slot.too-many-passes", Severity.Stop)], Told(Out("{slot: K, along: front, from: 4, width: 3/4, depth: 3/8, pass: 0.001}")));

    [Theory]
    [InlineData("", "slot.crosses-edging", Severity.Note)]
    [InlineData(", raised: 1/4", "slot.crosses-edging", Severity.Warn)]
    public void Slot_ThroughAnEdging_SaysSo(string raised, string code, Severity severity)
    {
        string more = $", overhang: {{left: 1, right: 1, front: 1}}, edging: {{of: strip{raised}}}";

        Assert.Contains((code, severity), Told(Out("{slot: K, along: front, from: 4, width: 3/4, depth: 3/8}", more)));
        Assert.DoesNotContain((code, severity), Told(Out("{slot: K, along: front, from: 4, width: 3/4, depth: 3/8, short: 3/8}", more)));
    }

    [Theory]
    [InlineData("3/8", 0)]
    [InlineData("23/64", 1)]
    public void Slot_InTheStripAlongIt_Warns(string from, int findings) =>
        Assert.Equal(Enumerable.Repeat(("slot.in-edging", Severity.Warn), findings), Told(Out($"{{slot: K, along: front, from: {from}, width: 3/4, depth: 3/8, short: 1}}", ", edging: {of: strip}")));

    [Theory]
    [InlineData("{slot: L, along: back, from: 24 1/2, width: 3/4, depth: 1/4}", Severity.Stop)] // 30 - 25 1/4 = 4 3/4 is free of it by nothing
    [InlineData("{slot: L, along: right, from: 10, width: 3/4, depth: 1/4}", Severity.Note)]
    public void Slots_ThatMeet_StopAlongsideAndAreToldWhereTheyCross(string other, Severity severity) =>
        Assert.Equal([("slot.meets-slot", severity)], Told(Out("{slot: K, along: front, from: 4 1/2, width: 3/4, depth: 3/8}, " + other)));

    [Fact]
    public void Screws_FromBelow_StopUnderTheDeepestSlot()
    {
        // Case top 3/4 and half of the top of 3/4: 1 1/8, less 1/8: 1 in. Without a slot 1 1/2, less 1/8: 1 1/4.
        static string Screw(SetPiece set) => set.Hardware.Single(h => h.Name.StartsWith("Wood screw no. 10", StringComparison.Ordinal) && h.Key == "T").Name;
        Assert.EndsWith(", 1 in", Screw(Out("{slot: K, along: front, from: 4, width: 3/4, depth: 3/8}")), StringComparison.Ordinal);
        Assert.EndsWith(", 1 1/4 in", Screw(SetOut(Head + "  - {top: T, of: ply}\n")), StringComparison.Ordinal);
    }
}
