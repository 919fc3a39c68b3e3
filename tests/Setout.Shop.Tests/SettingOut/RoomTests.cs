using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What would take the place of something else, or leave nothing, and what random pieces once let through.</summary>
public class RoomTests
{
    private const string Head = """
        setout: 1
        name: Corner of a print shop
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4}
          banded: {panel: hardwood plywood, thickness: 3/4, edges: banded, band: 1/8}
          half: {panel: hardwood plywood, thickness: 1/2}
          flat: {stick: oak, section: 3/4 x 2}
          leg: {stick: oak, section: 2 x 2}
        drawers:
          run: {sides: half, bottom: half, front: ply, slides: runners, runner: flat}
          box: {sides: half, bottom: half, front: ply, bottom fit: applied}
        doors:
          slab: {of: ply}
          framed: {frame: {of: flat}, panel: half}
          edged: {of: banded}
        assembly:

        """;

    private static SetPiece Out(string rest) => SetOut(Head + rest);

    private static string Codes(SetPiece set) => string.Join(' ', set.Findings.Where(f => f.Severity == Severity.Stop).Select(f => $"{f.Code} {f.Key}"));

    [Theory]
    // Stiles of 2 in: a door of a pair in 7 in is 3 3/8 wide: its two stiles leave nothing.
    [InlineData("width: 7, height: 20, depth: 12, doors: {like: framed, keys: [L, R]}", "door.no-panel L")]
    [InlineData("width: 30, height: 4, depth: 12, doors: {like: framed, keys: [L]}", "door.no-panel L")]
    [InlineData("width: 20, height: 14, depth: 12, shelves: {strip: {of: flat}, down: [S1, S2, S3, S4]}", "shelf.strip-no-room C")]
    [InlineData("width: 20, height: 10, depth: 12, shelves: {fit: adjustable, pitch: 1/2, down: [S1, S2, S3, S4, S5, S6, S7, S8, S9, S10, S11, S12]}", "shelf.no-room C")]
    // 5 3/8 - 1 1/2 = 3 7/8; two runners of 2 in.
    [InlineData("width: 5 3/8, height: 20, depth: 20, drawers: {like: run, down: [{drawer: D}]}", "runner.no-room D")]
    [InlineData("width: 7, height: 20, depth: 20, face frame: {of: flat}, across: [{opening: A, width: 1}, {partition: P}, {opening: B}]", "frame.no-opening A")]
    public void Case_WithoutRoom_Says(string words, string code) => Assert.StartsWith(code, Codes(Out($"  - {{case: C, of: ply, {words}}}\n")), StringComparison.Ordinal);

    [Fact]
    public void PairOfDoors_Edged_SharesTheWidthAndThenLosesItsBands()
    {
        SetPiece set = Out("  - {case: C, of: ply, width: 36, height: 30, depth: 16, doors: {like: edged, keys: [K1, K2]}}\n");
        // By hand: 36 - 2 x 1.5 mm = 35.8819; less the gap of 1/8, halved 17.8784; less two bands of 1/8 17.6284: 17 5/8 to cut, 17 7/8 with its bands.
        AssertValues(set, ("K1.width.to-cut", "17 5/8"), ("K1.width.finished", "17 7/8"), ("K2.width.to-cut", "17 5/8"));
        Assert.Empty(Codes(set));
    }

    [Fact]
    public void SlideOfABoxOnAnAppliedBottom_StandsHigherByTheBottom()
    {
        SetPiece set = Out("  - {case: C, of: ply, width: 20, height: 12, depth: 18, drawers: {like: box, down: [{drawer: D}]}}\n");
        Placement side = set.Parts.Single(p => p.Key == "D.side").Placements[0];
        // The middle of the slide is the middle of the side.
        Assert.Equal(side.Z + (side.SizeZ / 2) - set.Value("ply.thickness"), set.Value("D.slide.up"));
    }

    [Fact]
    public void TopOverARailAndACase_HasScrewsForEach()
    {
        SetPiece set = Out("  - {frame: F, of: leg, width: 30, height: 30, depth: 16, toe: 4, across: [{opening: A}]}\n  - {case: C, of: ply, width: 24, height: 30, depth: 16, beside: F}\n  - {top: T, of: ply}\n");
        // Through a rail of 2 in and into 3/4 less 1/8: 2 1/2. Through a case top of 3/4 and into 3/4 less 1/8: 1 1/4.
        Assert.Equal(["Wood screw no. 10 (5 mm), 1 1/4 in", "Wood screw no. 10 (5 mm), 2 1/2 in"], set.Hardware.Where(h => h.Key == "T").Select(h => h.Name).Order());
        Assert.Contains(set.Hardware, h => h.Name.EndsWith(" 1 1/4 in", StringComparison.Ordinal) && h.Source.Contains("the top of the case of C", StringComparison.Ordinal));
    }

    [Fact]
    public void TopOnPostsAboveTheirRails_IsFixedAtThePosts()
    {
        SetPiece set = Out("  - {frame: F, of: leg, width: 30, height: 30, depth: 16, toe: 4, above: 6, across: [{opening: A}]}\n  - {top: T, of: ply}\n");
        Assert.Contains(set.Hardware, h => h is { Key: "T", Count: 4, Name: "Top fixing plate with its screws" } && h.Source == "one at each of the posts");
    }

    [Fact]
    public void PostsOfAnotherMaterial_Stop() =>
        Assert.Equal("frame.posts-differ M", Codes(Out("  - {frame: F, of: leg, width: 48, height: 30, depth: 16, toe: 4, across: [{opening: A}, {posts: M, of: flat}, {opening: B}]}\n")));

    [Fact]
    public void FillerBesideAFaceFrameThatStandsOver_IsNarrowerByThat()
    {
        SetPiece set = Out("""
              - {case: A, of: ply, width: 20, height: 20, depth: 12, filler: {of: ply, width: 2, at: right}}
              - {case: B, of: ply, width: 20, height: 20, depth: 12, beside: A, face frame: {of: flat, overhang: 1/4}}

            """);
        // The space of 2 in, less the 1/4 that the frame of B stands over its left side.
        AssertValues(set, ("A.filler-right.width", "1 3/4"));
        Assert.Empty(Codes(set));
    }

    [Fact]
    public void DoorThatReachesIntoANeighbour_Stops()
    {
        // B stands on A and behind C, which is higher than A: the door of B, which lies over its front, would stand in the back of C.
        SetPiece set = Out("""
              - {case: A, of: ply, width: 20, height: 20, depth: 24}
              - {case: C, of: ply, width: 20, height: 30, depth: 12, beside: A}
              - {case: B, of: ply, width: 24, height: 20, depth: 12, on: A, doors: {like: slab, keys: [K]}}

            """);
        Finding finding = Assert.Single(set.Findings, f => f.Severity == Severity.Stop && f.Key == "K");
        Assert.Equal("part.in-the-way", finding.Code);
        Assert.Contains("3/4 in deep", finding.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Openings_ByParts_ShareTheWidthSo()
    {
        // 24 - 2 x 3/4 - 2 x 3/4 = 21; 2 + 1 + 4 parts of 3 in.
        SetPiece set = Out("  - {case: C, of: ply, width: 24, height: 20, depth: 12, across: [{opening: A, width: 2 parts}, {partition: P}, {opening: B}, {partition: Q}, {opening: D, width: 4 parts}]}\n");
        AssertValues(set, ("A.width", "6"), ("B.width", "3"), ("D.width", "12"));
    }

    [Fact]
    public void Openings_ByPartsOffTheGrid_CloseByTheLast()
    {
        SetPiece set = Out("  - {case: C, of: ply, width: 24 1/32, height: 20, depth: 12, across: [{opening: A, width: 3 parts}, {partition: P}, {opening: B, width: 4 parts}]}\n");
        // 24 1/32 - 1 1/2 - 3/4 = 21 25/32; 3/7 of it is 9.3348, on 9 11/32; the rest 12 7/16.
        AssertValues(set, ("A.width", "9 11/32"), ("B.width", "12 7/16"));
    }

    [Theory]
    [InlineData("fronts that stand back: B further back", "  - {case: B, of: ply, width: 24, height: 30, depth: 12, beside: A, flush: back}\n", "24", "0")]
    [InlineData("fronts that stand out: B further forward", "  - {case: B, of: ply, width: 24, height: 30, depth: 36, beside: A, flush: back}\n", "36", "-12")]
    public void TopOverCasesOfUnlikeDepth_ReachesOverAllOfThem(string why, string second, string depth, string front)
    {
        SetPiece set = Out("  - {case: A, of: ply, width: 24, height: 30, depth: 24}\n" + second + "  - {top: T, of: ply}\n");
        AssertValues(set, ("T.width", depth));
        Assert.True(set.Parts.Single(p => p.Key == "T").Placements[0].Y == Setout.Testing.Described.Of(front), why);
    }

    [Theory]
    [InlineData("- {case: A, of: ply, width: 20, height: 30, depth: 12}\n  - {case: U, of: ply, width: 20, height: 30, depth: 24, on: A}", "structure.overhangs U")]
    [InlineData("- {case: A, of: ply, width: 20, height: 30, depth: 16}\n  - {case: U, of: ply, width: 20, height: 30, depth: 16, on: A}\n  - {case: V, of: ply, width: 20, height: 10, depth: 16, beside: U}", "structure.nothing-below V")]
    [InlineData("- {case: A, of: ply, width: 20, height: 30, depth: 24}\n  - {top: T, of: ply, slots: [{slot: K, along: front, from: 1/8, width: 3/4, depth: 1/4}]}", "slot.thin-wall K")]
    public void Standing_ThatNothingCarries_IsTold(string words, string code) =>
        Assert.Contains(code, Out("  " + words + "\n").Findings.Where(f => f.Severity == Severity.Warn).Select(f => $"{f.Code} {f.Key}"));

    [Fact]
    public void WellsInOnePlace_Stop() => Assert.Contains("well.overlap V", Codes(Out("  - {case: A, of: ply, width: 60, height: 30, depth: 24}\n  - {top: T, of: ply, wells: [{well: W, machine: sander, from left: 8, from front: 4, footprint: 12 x 10, table height: 6}, {well: V, machine: drill, from left: 12, from front: 4, footprint: 8 x 8, table height: 5}]}\n")), StringComparison.Ordinal);
}
