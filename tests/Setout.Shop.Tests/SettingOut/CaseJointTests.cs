using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Corners and dividers of a case by a word, with the cuts on the parts that are cut.</summary>
public class CaseJointTests
{
    private static string Text(string rest, string unit = "in", string thick = "3/4", string size = "width: 30, height: 24, depth: 12") => $$"""
        setout: 1
        name: Case with joints
        unit: {{unit}}
        materials:
          ply: {panel: hardwood plywood, thickness: {{thick}}, grain: free}
        assembly:
          - {case: C, of: ply, {{size}}, {{rest}}}

        """;

    private const string Divided = "across: [{opening: A, width: 12}, {partition: P}, {opening: B, down: [{opening: B1}, {deck: K}, {opening: B2, height: 8}]}]";

    private static SetPiece Out(string rest) => SetOut(Text(rest));

    private static (string Name, ExactLength Size)[] Cut(SetPiece set, string part, string words) =>
        [.. Assert.Single(set.Machinings, m => m.Part == part && m.Words.Contains(words, StringComparison.Ordinal)).Figures.Select(f => (f.Name, set.Worked[f.Key]))];

    [Theory]
    [InlineData("")]
    [InlineData("corners: butt, dividers: butt")]
    public void Corners_LeftOutOrButt_AreTheSame(string words) =>
        Assert.Equal(SetOut(Text("hung: no")).Worked.Order.Select(k => k.Text), SetOut(Text(words.Length > 0 ? words : "hung: no")).Worked.Order.Select(k => k.Text));

    [Fact]
    public void Corners_Rabbet_AsWorkedByHand()
    {
        SetPiece set = Out("corners: rabbet");
        // Half of 3/4 is 3/8 (at least half of the width of the rabbet: a woodworking reference page). Top and bottom 30 - 2 x 3/4 + 2 x 3/8 = 29 1/4.
        AssertValues(set, ("C.corner.depth.to-cut", "3/8"), ("C.deck.length.to-cut", "29 1/4"), ("C.opening.width", "28 1/2"), ("C.outside", "30"));
        Assert.Equal([("depth", Described.Of("3/8")), ("width", Described.Of("3/4"))], Cut(set, "C.side", "Rabbet"));
        Assert.Equal("C.corner.depth.as-cut", Assert.Single(set.Joints).Depth!.Value.Text);
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Corners_Dado_LeavesWoodBeyondTheTongue()
    {
        SetPiece set = Out("corners: dado");
        // A third of 3/4 is 1/4: 28 1/2 + 2 x 1/4 = 29. The tongue is half of 3/4 = 3/8, so its dado lies 3/4 - 3/8 = 3/8 from the end.
        AssertValues(set, ("C.corner.depth.to-cut", "1/4"), ("C.deck.length.to-cut", "29"), ("C.tongue.to-cut", "3/8"));
        Assert.Equal([("depth", Described.Of("1/4")), ("width", Described.Of("3/8")), ("from the end", Described.Of("3/8"))], Cut(set, "C.side", "Dado"));
        Assert.Equal([("length", Described.Of("1/4")), ("thickness", Described.Of("3/8")), ("cut away from the outer face", Described.Of("3/8"))], Cut(set, "C.deck", "Tongue"));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Dividers_Dado_GoIntoWhatCarriesThemAtTheirPlaces()
    {
        SetPiece set = Out($"dividers: dado, {Divided}");
        // Inside 28 1/2 x 22 1/2. P is 22 1/2 + 2 x 1/4 = 23 long, its left face 12 from the left end of top and bottom.
        AssertValues(set, ("P.length.to-cut", "23"), ("P.dado.at", "12"));
        // B: 28 1/2 - 12 - 3/4 = 15 3/4; K 15 3/4 + 1/2 = 16 1/4. Its lower face is 8 above the bottom: in the side 3/4 + 8 = 8 3/4, in P, which stands 1/4 in the bottom, 8 1/4.
        AssertValues(set, ("B.width", "15 3/4"), ("K.length.to-cut", "16 1/4"), ("K.dado-after.at", "8 3/4"), ("K.dado-before.at", "8 1/4"));
        Assert.Equal([("depth", Described.Of("1/4")), ("width", Described.Of("3/4")), ("above the lower end", Described.Of("8 1/4"))], Cut(set, "P", "for deck K"));
        Assert.Empty(SetPieceChecker.Violations(set));
        // All goes in before the case is closed.
        Assert.All(set.Steps.Where(s => s.Parts.Any(p => p is "P" or "K")), s => Assert.Equal(Stage.Carcase, s.Stage));
        Assert.Contains("C.side", set.Steps.Last(s => s.Stage == Stage.Carcase).Parts);
    }

    [Fact]
    public void Shelves_Dado_LieAtTheirPlacesInTheSides()
    {
        SetPiece set = Out("dividers: dado, shelves: {down: [S1, S2]}");
        // 22 1/2 - 2 x 3/4 = 21, a third 7. Shelves 28 1/2 + 1/2 = 29; lower faces 3/4 + 7 = 7 3/4 and 7 3/4 + 3/4 + 7 = 15 1/2 above the lower end.
        AssertValues(set, ("S2.length.to-cut", "29"), ("S2.dado.at", "7 3/4"), ("S1.dado.at", "15 1/2"));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Dividers_DadoReadDeeper_MakesTheDeckLonger()
    {
        SetPiece set = SetOut(Text($"dividers: dado, {Divided}"), "C.divider.depth.as-cut: 5/16 in");

        AssertValues(set, ("P.length.to-cut", "23 1/8"));
    }

    [Fact]
    public void Corners_Dowels_SayWhereEachHoleIs()
    {
        SetPiece set = Out("corners: dowels");
        // 12 wide, 2 from either edge: 8 between; at most 5 apart: 2 spaces of 4, so 3 dowels. In the side half a dowel of 1 1/2 would be 3/4, but 1/4 stays: 1/2.
        AssertValues(set, ("C.dowel.first", "2"), ("C.dowel.apart", "4"), ("C.dowel.in-face", "1/2"), ("C.dowel.in-end", "1 1/16"), ("C.dowel.middle", "3/8"), ("C.deck.length.to-cut", "28 1/2"));
        Assert.Equal(12, Assert.Single(set.Hardware).Count);
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Corners_Pocket_TakeThePocketScrewOfTheTable() =>
        Assert.StartsWith("Pocket screw, coarse, 1 1/4 in", Assert.Single(Out("corners: pocket").Hardware).Name, StringComparison.Ordinal);

    [Theory]
    [InlineData("corners: rabbet, corner depth: 1/2", null)] // two thirds of 3/4
    [InlineData("corners: rabbet, corner depth: 1/2 + 0.00625 mm", null)] // lands on the grid
    [InlineData("corners: rabbet, corner depth: 3/8", null)] // half of 3/4
    [InlineData("corners: rabbet, corner depth: 11/32", "joint.too-shallow")]
    [InlineData("corners: rabbet, corner depth: 17/32", "joint.too-deep")]
    [InlineData("corners: rabbet, corner depth: 3/4", "joint.through")]
    [InlineData("corners: dado, corner depth: 3/8", null)] // half of 3/4
    [InlineData("corners: dado, corner depth: 13/32", "joint.too-deep")]
    [InlineData("dividers: dado, divider depth: 3/8, shelves: {down: [S]}", null)]
    [InlineData("dividers: dado, divider depth: 13/32, shelves: {down: [S]}", "joint.too-deep")]
    [InlineData("dividers: dado, divider depth: 3/4, shelves: {down: [S]}", "joint.through")]
    [InlineData("corner depth: 3/8", "joint.depth-unused")]
    [InlineData("dividers: dado, divider depth: 9/32, across: [{opening: A, shelves: {down: [S]}}, {partition: P}, {opening: B, shelves: {down: [T]}}]", "joint.back-to-back")]
    [InlineData("dividers: dado, divider depth: 1/4, across: [{opening: A, shelves: {down: [S]}}, {partition: P}, {opening: B, shelves: {down: [T]}}]", null)]
    public void Depth_AtItsLimitAndAStepPastIt_IsOneFinding(string words, string? code)
    {
        Finding[] findings = [.. Out(words).Findings.Where(f => f.Severity != Severity.Note)];

        Assert.Equal(code is null ? [] : [code], findings.Select(f => f.Code).Distinct());
        Assert.All(findings, f => Assert.True(f.Place.IsKnown));
        Assert.All(findings, f => Assert.Equal(f.Code == "joint.through" ? Severity.Stop : Severity.Warn, f.Severity));
    }

    [Fact]
    public void Case_InInchesAndInMillimetres_IsTheSame()
    {
        SetPiece inch = Out($"corners: rabbet, dividers: dado, {Divided}");
        SetPiece metric = SetOut(Text($"corners: rabbet, dividers: dado, {Divided}".Replace("width: 12", "width: 304.8", StringComparison.Ordinal).Replace("height: 8", "height: 203.2", StringComparison.Ordinal),
            "mm", "19.05", "width: 762, height: 609.6, depth: 304.8").Replace("unit: mm", "unit: mm\ngrid: 1/32 in", StringComparison.Ordinal));

        Assert.Equal(inch.Worked.Order.Select(k => (k, inch.Worked[k])), metric.Worked.Order.Select(k => (k, metric.Worked[k])));
    }

    /// <summary>D29-cedar-chest-ends: Mission Furniture Part Two (Windsor, 1910; Project Gutenberg 23991), An Oak-Bound Cedar Chest: sides lap the ends.</summary>
    [Fact]
    public void ButtedChest_AsPublished()
    {
        // 34 x 16 outside in 7/8: ends 16 - 2 x 7/8 = 14 1/4. Its bill is rough, 1/2 longer: 14 3/4 and 34 1/2; the grammar has no rough sizes, so it is added here.
        SetPiece set = SetOut(Text("hung: no", thick: "7/8", size: "width: 16, height: 34, depth: 15"));
        AssertValues(set, ("C.deck.length.to-cut", "14 1/4"), ("C.side.length.to-cut", "34"));
        Assert.Equal((Described.Of("14 3/4"), Described.Of("34 1/2")), (set.Value("C.deck.length.to-cut") + Described.Of("1/2"), set.Value("C.side.length.to-cut") + Described.Of("1/2")));
    }

    /// <summary>D35-packing-case: Carpentry and Woodwork (Foster, 1911; Project Gutenberg 43574), ch. LI: packing case. A case has two full panels, not four: written as parts, by hand.</summary>
    [Fact]
    public void PackingCase_AsPublished_ThroughParts()
    {
        const string text = """
            setout: 1
            name: Packing case
            unit: in
            materials:
              boards: {panel: boards glued up, thickness: 1}
            parts:
              - {part: top, of: boards, count: 2, length: 56, width: 38}
              - {part: side, of: boards, count: 2, length: 56, width: 32 - 2}
              - {part: end, of: boards, count: 2, length: 38 - 2, width: 32 - 2}
            """;
        AssertValues(SetOut(text), ("top.length.to-cut", "56"), ("top.width.to-cut", "38"), ("side.length.to-cut", "56"), ("side.width.to-cut", "30"), ("end.length.to-cut", "36"), ("end.width.to-cut", "30"));
    }
}
