using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Shelves in dadoes, on pins and with a strip, worked by hand; how far they may span.</summary>
public class ShelfTests
{
    private static string Text(string shelves, string size = "width: 24, height: 30", string unit = "in") => $$"""
        setout: 1
        name: Rack for seed trays
        unit: {{unit}}
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4 in}
          nominal: {panel: hardwood plywood, label: 3/4}
          thin: {panel: hardwood plywood, thickness: 1/2 in}
          board: {panel: mdf, thickness: 3/4 in}
          oak: {stick: oak, section: 3/4 in x 1 1/2 in}
        assembly:
          - {case: C, of: ply, {{size}}, depth: 12 in, shelves: { {{shelves}} } }

        """;

    private static SetPiece Out(string shelves, string size = "width: 24, height: 30", string unit = "in") => SetOut(Text(shelves, size, unit));

    /// <summary>A shelf held at one end only falls out of its dado: the partition that has the other is there before the case is closed.</summary>
    [Theory]
    [InlineData("{opening: L, shelves: {fit: dado, down: [S1]}}, {partition: P}, {opening: R}", true)]
    [InlineData("{opening: L}, {partition: P}, {opening: R, down: [{opening: U}, {deck: K}, {opening: V, shelves: {fit: dado, down: [S1]}}]}", true)]
    [InlineData("{opening: L, shelves: {down: [S1]}}, {partition: P}, {opening: R}", false)]
    public void Partition_WithDadoesForShelves_IsInBeforeTheCaseIsClosed(string across, bool isFirst)
    {
        SetPiece set = DoorTests.Sound(SetOut(Text("down: [X]", "width: 40, height: 30").Replace("shelves: { down: [X] }", $"across: [{across}]", StringComparison.Ordinal)));
        int Step(string part) => set.Steps.Select((s, i) => (s, i)).Single(s => s.s.Parts.Contains(part)).i;
        Assert.Equal(isFirst, Step("P") < Step("C.side"));
        Assert.Equal(isFirst, set.Steps[Step("P")].IsDry);
        Assert.Empty(AssemblyChecker.Violations(set));
    }

    [Fact]
    public void Dado_ShelvesAreLongerByBoth()
    {
        SetPiece set = DoorTests.Sound(Out("fit: dado, down: [S2, S1]"));
        // A third of 3/4 is 1/4 on the grid: 22 1/2 + 1/2. Spaces: (28 1/2 - 1 1/2) / 3 = 9. From the lower end of the sides 3/4 more: 9 3/4, and 9 3/4 + 3/4 + 9.
        AssertValues(set, ("C.opening.dado.depth.to-cut", "1/4"), ("S1.length.to-cut", "23"), ("S1.dado.at", "9 3/4"), ("S2.dado.at", "19 1/2"), ("S1.joint-gap", "0"));
        Assert.Equal([("depth", Described.Of("1/4")), ("width", Described.Of("3/4")), ("above the lower end", Described.Of("9 3/4"))], set.Machinings.Single(m => m.Words.EndsWith("for shelf S1", StringComparison.Ordinal)).Figures.Select(f => (f.Name, set.Worked[f.Key])));
        // They go in before the case is closed, and their dadoes are cut before that.
        int Step(string part) => set.Steps.Select((s, i) => (s, i)).Single(s => s.s.Parts.Contains(part)).i;
        Assert.True(Step("S1") < Step("C.side"));
        Assert.Equal("crosscut", Assert.Single(set.Steps, s => s.Stage == Stage.Cuts).Caution);
        Assert.All(set.Joints.Where(j => j.Kind == JointKind.Dado), j => Assert.Equal(Described.Of("1/4"), set.Worked[j.Depth!.Value]));
        Assert.Equal(Described.Of("1/2"), set.Parts.Single(p => p.Key == "S1").Placements[0].X);
        Assert.DoesNotContain(set.Hardware, h => h.Key == "S1");
    }

    [Fact]
    public void Dado_ByPanelsThatReadThinner_IsAThirdOfThem()
    {
        // 23/32 / 3 = 0.2396, down to 7/32.
        SetPiece set = DoorTests.Sound(SetOut(Text("fit: dado, down: [S1]").Replace("of: ply, width", "of: nominal, width", StringComparison.Ordinal)));
        AssertValues(set, ("C.opening.dado.depth.to-cut", "7/32"), ("S1.length.to-cut", "23"));
    }

    [Fact]
    public void Adjustable_StandsOnHolesNearAnEvenShareAndHasItsPlay()
    {
        SetPiece set = DoorTests.Sound(Out("fit: adjustable, setback: 1/4, down: [S2, S1]"));
        // 28 1/2 high: 3 in are left out at both ends, holes from 3 to 25 by 1: (28 1/2 - 6) / 1 = 22.5, so 23 of them.
        // Even shares: 9 and 18 3/4: on 9 and 19. Long 22 1/2 - 1/8, deep 12 - 1/4.
        AssertValues(set, ("C.opening.holes.first", "3"), ("C.opening.holes.last", "25"), ("S1.up", "9"), ("S2.up", "19"), ("S1.length.to-cut", "22 3/8"), ("S1.width.to-cut", "11 3/4"),
            ("S1.play", "1/8"), ("C.opening.holes.front", "37 mm + 1/4"), ("C.opening.holes.depth", "10 mm"));
        Assert.Equal((8, "Shelf pin for holes of 1/4 in"), set.Hardware.Where(h => h.Unit == "piece" && h.Name.StartsWith("Shelf pin", StringComparison.Ordinal)).Select(h => (h.Count, h.Name)).Single());
        Assert.Contains(set.Machinings, m => m.Part == "C.side" && m.Words.StartsWith("Bore two rows of 23 holes", StringComparison.Ordinal));
    }

    [Fact]
    public void Adjustable_InMillimetres_IsOnThePitchOf32()
    {
        SetPiece set = DoorTests.Sound(Out("fit: adjustable, down: [S1]", "width: 600, height: 700", "mm"));
        // 700 - 38.1 = 661.9; 96 out at both ends: (661.9 - 192) / 32 = 14.7, so 15 holes to 96 + 14 x 32 = 544.
        AssertValues(set, ("C.opening.holes.first", "96 mm"), ("C.opening.holes.last", "544 mm"));
        Assert.Contains(set.Hardware, h => h.Name == "Shelf pin for holes of 5 mm" && h.Count == 4);
    }

    [Fact]
    public void Adjustable_BehindAnInsetDoor_HasItsFrontRowBehindIt()
    {
        SetPiece set = DoorTests.Sound(SetOut(DoorTests.Text("of: ply, lies: inset", "keys: [D1]", "width: 20, height: 30", ", shelves: {fit: adjustable, down: [S1]}")));
        AssertValues(set, ("C.opening.holes.front", "37 mm + 3/4"), ("S1.width", "11 1/4"));
    }

    [Fact]
    public void Strip_OfSticksOrASheet_LiesUnderTheFrontEdge()
    {
        SetPiece sticks = DoorTests.Sound(Out("fit: dado, strip: {of: oak}, down: [S1]"));
        AssertValues(sticks, ("S1.strip.length.to-cut", "22 1/2"));
        Placement strip = sticks.Parts.Single(p => p.Key == "S1.strip").Placements[0], shelf = sticks.Parts.Single(p => p.Key == "S1").Placements[0];
        Assert.Equal((shelf.Z, shelf.Y, Described.Of("3/4"), Described.Of("1 1/2")), (strip.Z + strip.SizeZ, strip.Y, strip.SizeY, strip.SizeZ));
        SetPiece sheet = DoorTests.Sound(Out("fit: adjustable, strip: {of: ply, height: 2}, down: [S1]"));
        AssertValues(sheet, ("S1.strip.length.to-cut", "22 3/8"), ("S1.strip.width.to-cut", "2"));
    }

    [Theory]
    [InlineData("shelf.long-span", "of: nominal, down: [S1]", "width: 37 1/2, height: 30", null)] // 23/32 counts as 3/4: 36 in
    [InlineData("shelf.long-span", "of: nominal, down: [S1]", "width: 37 17/32, height: 30", Severity.Warn)]
    [InlineData("shelf.long-span", "of: nominal, strip: {of: oak}, down: [S1]", "width: 55 1/2, height: 30", null)] // half as much again: 54
    [InlineData("shelf.long-span", "of: nominal, strip: {of: oak}, down: [S1]", "width: 55 17/32, height: 30", Severity.Warn)]
    [InlineData("shelf.long-span", "of: board, down: [S1]", "width: 26 1/2, height: 30", null)] // 24 x (3/4 + 1/32) / (3/4) = 25
    [InlineData("shelf.long-span", "of: board, down: [S1]", "width: 26 17/32, height: 30", Severity.Warn)]
    [InlineData("shelf.strip-no-height", "strip: {of: ply}, down: [S1]", "width: 24, height: 30", Severity.Stop)]
    [InlineData("shelf.no-holes", "fit: adjustable, pitch: 8, down: [S1]", "width: 24, height: 16 1/2", Severity.Stop)] // (15 - 16) / 8: none
    [InlineData("shelf.no-holes", "fit: adjustable, pitch: 7 1/2, down: [S1]", "width: 24, height: 16 1/2", null)] // 15 - 15: one
    [InlineData("joint.too-deep", "fit: dado, dado: 3/8, down: [S1]", "width: 24, height: 30", null)] // half of the side
    [InlineData("joint.too-deep", "fit: dado, dado: 13/32, down: [S1]", "width: 24, height: 30", Severity.Warn)]
    [InlineData("joint.through", "fit: dado, dado: 23/32, down: [S1]", "width: 24, height: 30", Severity.Warn, "joint.too-deep")]
    [InlineData("joint.through", "fit: dado, dado: 3/4, down: [S1]", "width: 24, height: 30", Severity.Stop)]
    public void Shelves_AtTheLimitAndPastIt_AreWarnedOf(string code, string shelves, string size, Severity? severity, string? before = null)
    {
        Finding[] found = [.. Out(shelves, size).Findings.Where(f => f.Severity != Severity.Note)];
        if (severity is null) Assert.Empty(found);
        else
        {
            Finding finding = Assert.Single(found);
            Assert.Equal((before ?? code, severity), (finding.Code, finding.Severity));
            Assert.True(finding.Place.IsKnown);
        }
    }

    [Fact]
    public void Dado_BetweenSlidePanels_IsCutInThemAndSlidIn()
    {
        string text = Text("down: [S1]").Split("assembly:")[0] + "assembly:\n  - {frame: F, of: oak, width: 30, height: 30, depth: 20, toe: 3, across: [{opening: A, slide panels: ply, shelves: {of: ply, fit: dado, down: [S1]}}]}\n";
        SetPiece set = DoorTests.Sound(SetOut(text));
        // 30 less two posts of 1 1/2 and two panels of 3/4: 25 1/2; a third of a panel, not of a post: 1/4; 26.
        AssertValues(set, ("A.dado.depth.to-cut", "1/4"), ("S1.length.to-cut", "26"), ("S1.dado.at", "11 5/8"));
        Assert.Equal(Stage.Inside, set.Steps.Single(s => s.Parts.Contains("S1")).Stage);
    }

    [Theory]
    [InlineData("1/4", "1/4", null)] // a third of 3/4 stays
    [InlineData("1/4", "9/32", "joint.back-to-back")]
    [InlineData("3/8", "3/8", "joint.through")]
    public void Dadoes_FromBothFacesOfAPartition_AreLookedAtTogether(string left, string right, string? code)
    {
        string text = Text("down: [X]").Split("assembly:")[0]
            + $"assembly:\n  - case: C\n    of: ply\n    width: 48\n    height: 30\n    depth: 12\n    across:\n      - {{opening: A, shelves: {{fit: dado, dado: {left}, down: [S1]}}}}\n      - {{partition: P}}\n      - {{opening: B, shelves: {{fit: dado, dado: {right}, down: [S2]}}}}\n";
        Assert.Equal(code is null ? [] : [code], SetOut(text).Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Code));
    }

    [Theory]
    [InlineData("adjustable", "shelf.no-panels")]
    [InlineData("dado", "shelf.no-panels")]
    public void Shelves_BetweenBarePosts_AreOneStop(string fit, string code)
    {
        string text = Text("down: [S1]").Split("assembly:")[0] + $"assembly:\n  - {{frame: F, of: oak, width: 30, height: 30, depth: 20, toe: 3, across: [{{opening: A, shelves: {{of: ply, fit: {fit}, down: [S1]}}}}]}}\n";
        Finding finding = Assert.Single(SetOut(text).Findings, f => f.Severity != Severity.Note);
        Assert.Equal((code, Severity.Stop), (finding.Code, finding.Severity));
    }

    [Fact]
    public void Holes_FromBothSidesOfAThinPartition_AreWarnedOf()
    {
        string Piece(string partition) => Text("down: [X]").Split("assembly:")[0]
            + $"assembly:\n  - case: C\n    of: ply\n    width: 48\n    height: 30\n    depth: 12\n    across:\n      - {{opening: A, shelves: {{fit: adjustable, down: [S1]}}}}\n      - {{partition: P, of: {partition}}}\n      - {{opening: B, shelves: {{fit: adjustable, down: [S2]}}}}\n";
        // 3/4 (19.05 mm) less twice 10 mm.
        Assert.Equal("shelf.holes-meet", Assert.Single(SetOut(Piece("ply")).Findings, f => f.Severity != Severity.Note).Code);
    }
}
