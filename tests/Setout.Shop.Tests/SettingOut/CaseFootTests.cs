using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What cases stand on, and what closes the space beside them.</summary>
public class CaseFootTests
{
    private static SetPiece Out(string rest, string more = "", params string[] readings) => SetOut($$"""
        setout: 1
        name: Case with a foot
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
          strips: {stick: beech, section: 3/4 x 2}
        assembly:
          - {case: C, of: ply, width: 30, height: 34, depth: 20, {{rest}}}
        {{more}}
        """, readings);

    private static Placement Box(SetPiece set, string part, int index = 0) => set.Parts.Single(p => p.Key == part).Placements[index];

    private static string[] Codes(SetPiece set) => [.. set.Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Code)];

    [Fact]
    public void Toe_RaisesTheBottomWithinTheHeight()
    {
        SetPiece set = Out("toe: {}");
        // 4 high and 3 back (common practice). Inside 34 - 4 - 2 x 3/4 = 28 1/2; the board 28 1/2 by 4, between the sides.
        AssertValues(set, ("C.opening.height", "28 1/2"), ("C.kick.length.to-cut", "28 1/2"), ("C.kick.width.to-cut", "4"), ("C.side.length.to-cut", "34"));
        Assert.Equal((Described.Of("3"), ExactLength.Zero), (Box(set, "C.kick").Y, Box(set, "C.kick").Z));
        Assert.Equal(Described.Of("4"), Box(set, "C.deck").Z);
        Assert.Contains(set.Machinings, m => m.Part == "C.side" && m.Words.StartsWith("Notch", StringComparison.Ordinal));
        Assert.Contains(set.Steps, s => s.Stage == Stage.Top && s.Words.Contains("level", StringComparison.Ordinal));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Toe_WithRabbets_TakesTheBottomInADado()
    {
        SetPiece set = Out("toe: {height: 3 1/2}, corners: rabbet");
        (string Name, QuantityKey Key)[] dado = [.. set.Machinings.Single(m => m.Words == "Dado across the inside for the bottom").Figures];
        Assert.Equal(Described.Of("3 1/2"), set.Worked[dado.Single(f => f.Name == "above the lower end").Key]);
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Base_LiftsTheCase()
    {
        SetPiece set = Out("base: {of: ply, height: 4 1/2, setback: 2}", "  - {top: T, of: ply}");
        // Front and back 30 over all, lapping ends of 20 - 2 - 2 x 3/4 = 16 1/2. The top lies on 4 1/2 + 34 and comes to 39 1/4.
        AssertValues(set, ("C.base.length.to-cut", "30"), ("C.base.cross.to-cut", "16 1/2"), ("C.base.height.to-cut", "4 1/2"), ("C.up", "4 1/2"), ("T.height", "39 1/4"));
        Assert.Equal((ExactLength.Zero, Described.Of("2")), (Box(set, "C.base").Z, Box(set, "C.base").Y));
        Assert.Equal(Described.Of("38 1/2"), Box(set, "T").Z);
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Base_ReadLower_LowersAllThatStandsOnIt() =>
        AssertValues(Out("base: {of: ply, height: 4}", "  - {case: H, of: ply, width: 30, height: 20, depth: 12, on: C}", "C.base.height.as-cut: 3 31/32 in"), ("C.up", "3 31/32"), ("H.up", "37 31/32"));

    [Theory]
    [InlineData("width: 36 3/4", 2)] // 36 between the first and the last: no more is needed
    [InlineData("width: 36 25/32", 3)]
    public void Base_Wider_GetsACrossPiece(string width, int ends)
    {
        SetPiece set = SetOut($$"""
            setout: 1
            name: Wide
            unit: in
            materials:
              ply: {panel: hardwood plywood, thickness: 3/4}
            assembly:
              - {case: C, of: ply, {{width}}, height: 30, depth: 20, base: {of: ply} }
            """);
        Assert.Equal(ends, set.Parts.Single(p => p.Key == "C.base-end").Count);
    }

    [Fact]
    public void Feet_LiftTheCaseAndNotItsNeighbour()
    {
        SetPiece set = Out("feet: {kind: levellers, height: 3}", "  - {case: D, of: ply, width: 20, height: 37, depth: 20, beside: C}\n  - {case: E, of: ply, width: 20, height: 30, depth: 20, beside: D, feet: {kind: castors, height: 4}}\n  - {case: F, of: ply, width: 50, height: 20, depth: 12, on: [C, D]}");
        Assert.Empty(Codes(set));
        Assert.Equal((Described.Of("3"), ExactLength.Zero, Described.Of("4"), Described.Of("37")), (Box(set, "C.side").Z, Box(set, "D.side").Z, Box(set, "E.side").Z, Box(set, "F.side").Z));
        Assert.Equal(4, set.Hardware.Single(h => h.Name.StartsWith("Levelling foot", StringComparison.Ordinal)).Count);
    }

    [Fact]
    public void Filler_BetweenTwoCasesAndAtTheWall_MovesWhatStandsBeside()
    {
        SetPiece set = Out("filler: {of: ply, width: 1 1/2}", "  - {case: D, of: ply, width: 20, height: 34, depth: 20, beside: C, filler: {of: strips, width: 2}}\n  - {top: T, of: ply}");
        // At the wall 1 1/2 + 1/2 to scribe = 2 wide; C begins at 1 1/2, D at 1 1/2 + 30 + 2 = 33 1/2; the top is 30 + 2 + 20 = 52 long.
        AssertValues(set, ("C.filler-left.width.to-cut", "2"), ("C.filler-left.length.to-cut", "34"), ("D.left", "33 1/2"), ("T.length.to-cut", "52"));
        Assert.Equal(Described.Of("1 1/2"), Box(set, "C.side").X);
        Assert.Equal(Described.Of("31 1/2"), Box(set, "D.filler-left").X);
        Assert.Empty(Codes(set));
    }

    [Fact]
    public void Filler_IsScrewedFromEachCaseBesideIt_OrGluedToAStile()
    {
        // 34 high: one about every 8 and one more, 6; from two cases 12. 3/4 and a bite of 3/4: 1 1/2.
        HardwareItem Screws(SetPiece set) => Assert.Single(set.Hardware, h => h.Source.StartsWith("filler", StringComparison.Ordinal));
        Assert.Equal(("Wood screw no. 8 (4 mm), 1 1/2 in", 6), (Screws(Out("filler: {of: strips, width: 1 1/2}")).Name, Screws(Out("filler: {of: strips, width: 1 1/2}")).Count));
        Assert.Equal(12, Screws(Out("hung: no", "  - {case: D, of: ply, width: 20, height: 34, depth: 20, beside: C, filler: {of: strips, width: 2}}")).Count);
        SetPiece framed = Out("face frame: {of: strips, overhang: 1/4}, filler: {of: ply, width: 2}");
        Assert.Equal("C.stile", framed.Joints.Single(j => j.Part == "C.filler-left").Against);
    }

    [Theory]
    [InlineData("toe: {setback: 19 1/4}", new string[0])]
    [InlineData("toe: {setback: 19 9/32}", new[] { "case.toe-too-deep" })]
    [InlineData("base: {of: ply, setback: 18 15/32}", new string[0])]
    [InlineData("base: {of: ply, setback: 18 1/2}", new[] { "case.toe-too-deep" })]
    [InlineData("base: {of: ply}, feet: {height: 4}", new[] { "case.two-feet" })]
    [InlineData("filler: {of: strips, width: 1 1/2}", new string[0])]
    [InlineData("filler: {of: strips, width: 1 17/32}", new[] { "filler.too-narrow" })]
    [InlineData("filler: [{of: ply, width: 1}, {of: ply, width: 2}]", new[] { "filler.two" })]
    [InlineData("filler: {of: ply, width: 3/8}", new string[0])] // 3/4 + 3/8 - 1/8: a screw of 1
    [InlineData("filler: {of: ply, width: 11/32}", new[] { "filler.no-screw" })]
    public void Foot_AtItsLimitAndPastIt_IsOneFinding(string words, string[] codes)
    {
        SetPiece set = Out(words);
        Assert.Equal(codes, Codes(set));
        Assert.All(set.Findings, f => Assert.True(f.Place.IsKnown));
    }
}
