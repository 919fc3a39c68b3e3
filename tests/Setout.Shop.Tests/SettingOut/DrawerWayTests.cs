using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>The way of a drawer is kept free, its box read over all, and its front ends where there is nothing to lie over.</summary>
public class DrawerWayTests
{
    private static string Bench(string well, string frame = "") => $$$"""
        setout: 1
        name: Engraving bench
        unit: in
        grid: 1/32
        materials:
          posts: {stick: pine, section: 1 1/2 x 3 1/2}
          low: {stick: pine, section: 3/4 x 1}
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
          half: {panel: hardwood plywood, thickness: 1/2, grain: free}
        drawers: {box: {sides: half, bottom: half, front: ply}}
        assembly:
          - {frame: F, of: posts, width: 42, height: 34, depth: 24, toe: 4{{{frame}}}, across: [{opening: A, slide panels: ply, drawers: {like: box, down: [{drawer: D1}, {drawer: D2}]}}]}
          - {top: T, of: ply, overhang: {front: 1, back: 1}{{{(well.Length > 0 ? $", wells: [{{{well}}}]" : "")}}}}
        """;

    [Fact]
    public void WellInAnOpenBox_StopsTheDrawer()
    {
        SetPiece set = SetOut(Bench("well: W, machine: vice, from left: 12, from front: 6, footprint: 12 x 10, table height: 10, bearers: posts, platform: ply"));
        Finding found = Assert.Single(set.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(("drawer.way-blocked", "D1"), (found.Code, found.Key));
        Assert.StartsWith("drawer D1 cannot be pulled out: well W ", found.Words, StringComparison.Ordinal);
    }

    [Theory]
    // The bearers, 1 in on edge under the platform, hang lowest: they come down to the upper edges of the box, and a step of the grid further.
    [InlineData(0, false)]
    [InlineData(1, true)]
    public void Well_JustOverTheBox_LeavesItFree_AStepLowerDoesNot(int steps, bool isBlocked)
    {
        const string Well = "well: W, machine: vice, from left: 12, from front: 6, footprint: 12 x 10, table height: TABLE, bearers: low, platform: ply";
        SetPiece none = SetOut(Bench(""));
        ExactLength top = none.Parts.Where(p => p.Key.StartsWith("D1.side", StringComparison.Ordinal)).Max(p => p.Placements[0].Z + p.Placements[0].SizeZ);
        SetPiece high = SetOut(Bench(Well.Replace("TABLE", "1", StringComparison.Ordinal)));
        ExactLength foot = high.Parts.Where(p => p.Key.StartsWith("W.", StringComparison.Ordinal)).Min(p => p.Placements.Min(b => b.Z));
        // Lower by what is free above the box, and by one step more.
        ExactLength table = Described.Of("1") + (foot - top) + (Described.Of("1/32") * steps);
        SetPiece set = SetOut(Bench(Well.Replace("TABLE", $"{(table.Millimetres * 1000).Round(Rounding.Down)}/1000 mm", StringComparison.Ordinal)));
        Assert.Equal(isBlocked, set.Findings.Any(f => f.Code == "drawer.way-blocked"));
    }

    [Theory]
    [InlineData("fronts: inset, corners: rabbet")]
    [InlineData("fronts: inset, corners: pocket, bottom fit: between")]
    [InlineData("fronts: inset, corners: half-blind dovetail, bottom fit: slid in")]
    public void BoxWithoutAFalseFront_IsReadOverAll(string words)
    {
        SetPiece set = SetOut($$$"""
            setout: 1
            name: Thread drawer
            unit: in
            materials:
              ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
              half: {panel: hardwood plywood, thickness: 1/2, grain: free}
              thin: {panel: hardwood plywood, thickness: 1/4, grain: free}
              run: {stick: maple, section: 1/2 x 1}
            drawers: {box: {sides: half, bottom: thin, front: ply, slides: runners, runner: run, false front: no, {{{words}}}}}
            assembly:
              - {case: C, of: ply, width: 18, height: 8, depth: 16, drawers: {like: box, down: [{drawer: D1}]}}
            """);
        // From the parts as they stand: the outside corners of front and box.
        Placement front = set.Parts.Single(p => p.Key == "D1.front").Placements[0];
        Placement[] sides = [.. set.Parts.Single(p => p.Key == "D1.side").Placements];
        ExactLength deep = sides[0].Y + sides[0].SizeY - front.Y, wide = sides[1].X + sides[1].SizeX - sides[0].X;
        Assert.Equal(ApproximateLength.Diagonal(wide, deep).RoundTo(set.Grid, Rounding.Nearest), set.Steps.Single(s => s.Parts.Contains("D1.side")).Diagonal);
    }

    [Fact]
    public void FrontOverNoRail_EndsWithItsOpening()
    {
        AssertValues(SetOut(Bench("", ", bottom rails: no")), ("A.overlay-bottom", "0"));
        // Over a rail it lies 1/2 in, by the rule for frames.
        Assert.True(SetOut(Bench("")).Value("A.overlay-bottom").Sign > 0);
    }
}
