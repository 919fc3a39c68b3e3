using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Doors of one sheet over and in an opening, and on what they hang, worked by hand.</summary>
public class DoorTests
{
    internal static string Text(string kind, string doors, string size = "width: 36, height: 30", string rest = "", string unit = "in", string grid = "", string materials = "") => $$"""
        setout: 1
        name: Cupboard of a sail loft
        unit: {{unit}}
        {{grid}}
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4 in}
          thin: {panel: hardwood plywood, thickness: 1/4 in}
          flat: {stick: oak, section: 3/4 in x 2 in}
          wide: {stick: oak, section: 3/4 in x 3 in}
        {{materials}}
        doors:
          kind: { {{kind}} }
        assembly:
          - {case: C, of: ply, {{size}}, depth: 12 in, doors: {like: kind, {{doors}} }{{rest}} }

        """;

    private static SetPiece Out(string kind, string doors, string size = "width: 36, height: 30", string rest = "") => SetOut(Text(kind, doors, size, rest));

    private static ExactLength Mm(long n, long below = 1) => ExactLength.FromMillimetres(Rational.Of(n, below));

    /// <summary>Nothing to warn of, and the checker of finished pieces agrees.</summary>
    internal static SetPiece Sound(SetPiece set)
    {
        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        Assert.Empty(SetPieceChecker.Violations(set));
        return set;
    }

    [Fact]
    public void Pair_Overlay_FillsTheFaceWithItsGap()
    {
        SetPiece set = Sound(Out("of: ply", "keys: [D1, D2]"));
        // By hand: the outside of 36 less a reveal of 1.5 mm at each side (pages on the 32 mm method), less the gap of 1/8: 35 7/8 - 3 mm, halved
        // 17.8784, which lands on 17 7/8. High: 30 - 3 mm = 29.882, on 29 7/8. The gap left where they meet: 36 in - 3 mm - 35 3/4 in = 3.35 mm.
        AssertValues(set, ("D1.width", "35.875/2 - 1.5mm"), ("D1.width.to-cut", "17 7/8"), ("D2.width.to-cut", "17 7/8"), ("D1.height.to-cut", "29 7/8"), ("C.opening.door-beside", "3.35 mm"));
        Placement left = set.Parts.Single(p => p.Key == "D1").Placements[0], right = set.Parts.Single(p => p.Key == "D2").Placements[0];
        Assert.Equal((Mm(3, 2), Mm(3, 2), -Described.Of("3/4")), (left.X, left.Z, left.Y));
        Assert.Equal(left.X + left.SizeX + Described.Of("1/8"), right.X);
        // The grain stands upright: the length of a door is its height.
        Assert.All(set.Parts.Where(p => p.Role == PartRole.Door), p => Assert.Equal("height", p.Length.Exact.Text.Split('.')[1]));
    }

    [Fact]
    public void Single_HalfOverlay_CoversHalfOfEachEdgeLessHalfTheGap()
    {
        SetPiece set = Sound(Out("of: ply, lies: half overlay", "keys: [D1]", "width: 20, height: 20"));
        // 18 1/2 + 2 x (3/4 - 1/8)/2 = 19 1/8.
        AssertValues(set, ("D1.width", "19 1/8"), ("D1.height", "19 1/8"));
        Assert.Contains(set.Hardware, h => h.Name == "Cup hinge 35 mm, half overlay, 5/16 in over the edge, with its plate and screws" && h.Count == 2);
    }

    [Theory]
    [InlineData("keys: [D1]", "14 27/32", "14 27/32")] // 15 - 2 x 5/64
    [InlineData("keys: [D1, D2]", "7 3/8", "7 3/8")] // (15 - 3 x 5/64) / 2 = 7.3828, both to the nearest step: they are cut alike
    public void Inset_GoesByTheOpeningLessItsGaps(string keys, string first, string last)
    {
        SetPiece set = Sound(Out("of: ply, lies: inset", keys, "width: 16 1/2, height: 21 1/2"));
        AssertValues(set, ("D1.width.to-cut", first), (keys.Contains("D2", StringComparison.Ordinal) ? "D2.width.to-cut" : "D1.width.to-cut", last), ("D1.height.to-cut", "19 27/32"));
        // It waits until the opening is read, and then follows it.
        Assert.All(set.Parts.Where(p => p.Role == PartRole.Door), p => Assert.True(set.IsHeld(p)));
        SetPiece read = SetOut(Text("of: ply, lies: inset", keys, "width: 16 1/2, height: 21 1/2"), "C.opening.width: 14 15/16 in, 15 in", "C.opening.height: 20 1/16 in");
        Assert.All(read.Parts.Where(p => p.Role == PartRole.Door), p => Assert.False(read.IsHeld(p)));
        // Width: the narrowest counts, 1/16 less. Height: 1/16 more.
        Assert.Equal(set.Value("C.opening.door-cover") - Described.Of("1/16"), read.Value("C.opening.door-cover"));
        AssertValues(read, ("D1.height.to-cut", "19 29/32"));
    }

    [Fact]
    public void Inset_WhatStandsBehind_IsLessDeep()
    {
        SetPiece set = Sound(Out("of: ply, lies: inset", "keys: [D1]", "width: 16 1/2, height: 21 1/2", ", shelves: {down: [S1]}"));
        AssertValues(set, ("S1.width", "11 1/4"));
        Assert.Equal(Described.Of("3/4"), set.Parts.Single(p => p.Key == "S1").Placements[0].Y);
    }

    [Fact]
    public void Pair_InMillimetres_IsAsInInches()
    {
        string[] keys = ["D1.width.to-cut", "D2.width.to-cut", "D1.height.to-cut", "D1.hinge-1.to-cut", "D1.hinge-2.to-cut"];
        SetPiece inch = SetOut(Text("of: ply, gap: 1/8 in", "keys: [D1, D2]", grid: "grid: 1/32 in"));
        SetPiece metric = SetOut(Text("of: ply, gap: 1/8 in", "keys: [D1, D2]", "width: 914.4, height: 762", unit: "mm", grid: "grid: 1/32 in"));
        Assert.All(keys, k => Assert.Equal(inch.Value(k), metric.Value(k)));
    }

    [Fact]
    public void Door_WithBands_IsCutSmallerByThem()
    {
        SetPiece set = SetOut(Text("of: band", "keys: [D1]", "width: 20, height: 20", materials: "  band: {panel: birch plywood, label: 18 mm, edges: banded, band: 1/32 in}"));
        // 20 in - 3 mm = 19.8819, less two bands of 1/32: 19.8194, on 19 13/16; with its bands on again 19 7/8.
        AssertValues(set, ("D1.width.to-cut", "19 13/16"), ("D1.width.finished", "19 7/8"), ("D1.height.to-cut", "19 13/16"), ("D1.height.finished", "19 7/8"));
    }

    [Fact]
    public void CupHinges_SitFromTheEndsAndOnTheCarcaseAsMuchLowerAsTheDoorHangsOver()
    {
        SetPiece set = Sound(Out("of: ply", "keys: [D1, D2]"));
        // 80 mm from the ends of 29 7/8 (758.825 mm): 80 and 678.825 mm, on the 32nd 3 5/32 and 26 23/32. On the carcase less 3/4 in - 1.5 mm.
        AssertValues(set, ("D1.hinge-1.to-cut", "3 5/32"), ("D1.hinge-2.to-cut", "26 23/32"), ("D1.plate-1", "3 5/32 - 3/4 + 1.5 mm"), ("kind.cup.centre", "22.5 mm"), ("D1.plate-setback", "37 mm"));
        Assert.Contains(set.Hardware, h => h.Key == "D1" && h.Name.StartsWith("Cup hinge 35 mm, full overlay", StringComparison.Ordinal) && h.Count == 2);
        Assert.Contains(set.Machinings, m => m.Part == "D2" && m.Words.Contains("right edge", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("900 mm", 2)] // at the limit of the chart, and a tick past it
    [InlineData("900.001 mm", 3)]
    [InlineData("1600 mm", 3)]
    [InlineData("1600.001 mm", 4)]
    public void Hinges_ByHeight_AreAsManyAsTheTableSays(string height, int count) => Assert.Equal(count, Core.Materials.HingeTable.For("cup", Described.Of(height), 0)!.Count);

    [Theory]
    [InlineData("cup", 6.0, 2)]
    [InlineData("cup", 6.1, 3)]
    [InlineData("cup", 22.0, 5)]
    [InlineData("butt", 10.0, 2)]
    public void Hinges_ByWeight_AreAsManyAsTheTableSays(string kind, double kilograms, int count) => Assert.Equal(count, Core.Materials.HingeTable.For(kind, Described.Of("24"), kilograms)!.Count);

    [Fact]
    public void Butts_AreGainedByHalfOfWhatTheyAreThickerThanTheGap()
    {
        SetPiece set = Sound(Out("of: ply, lies: inset, gap: 1/16", "keys: [D1]", "width: 16 1/2, height: 21 1/2"));
        // (1/8 - 1/16) / 2; the middle of the first 1 1/2 x 2 1/2 from the end; on the case 1/16 higher.
        AssertValues(set, ("D1.gain.depth", "1/32"), ("D1.hinge-1.to-cut", "3 3/4"), ("D1.plate-1", "3 13/16"));
    }

    [Theory]
    [InlineData("door.wide", "of: ply, overlay: 0", "keys: [D1]", "width: 25 1/2, height: 20", null)]
    [InlineData("door.wide", "of: ply, overlay: 0", "keys: [D1]", "width: 25 17/32, height: 20", Severity.Warn)]
    [InlineData("door.no-gap", "of: ply, lies: inset, gap: 1/32", "keys: [D1]", "width: 20, height: 20", null)]
    [InlineData("door.no-gap", "of: ply, lies: inset, gap: 0.031", "keys: [D1]", "width: 20, height: 20", Severity.Warn)]
    [InlineData("door.butt-on-overlay", "of: ply, hinge: butt", "keys: [D1]", "width: 20, height: 20", Severity.Warn)]
    [InlineData("door.thin-for-cup", "of: sixteen", "keys: [D1]", "width: 20, height: 20", null)] // 16 - 13 = 3 mm
    [InlineData("door.thin-for-cup", "of: under", "keys: [D1]", "width: 20, height: 20", Severity.Warn)]
    [InlineData("door.thin-for-cup", "of: half", "keys: [D1]", "width: 20, height: 20", Severity.Stop)]
    [InlineData("door.heavy", "of: lead", "keys: [D1]", "width: 24, height: 80", Severity.Warn)]
    public void Door_AtTheLimitAndPastIt_IsWarnedOf(string code, string kind, string keys, string size, Severity? severity)
    {
        SetPiece set = SetOut(Text(kind, keys, size, materials: "  sixteen: {panel: hardwood plywood, thickness: 16 mm}\n  under: {panel: hardwood plywood, thickness: 15.999 mm}\n  half: {panel: hardwood plywood, thickness: 13 mm}\n  lead: {panel: hardboard, thickness: 1 in}"));
        Finding[] found = [.. set.Findings.Where(f => f.Severity != Severity.Note)];
        if (severity is null) Assert.Empty(found);
        else
        {
            Finding finding = Assert.Single(found);
            Assert.Equal((code, severity), (finding.Code, finding.Severity));
            Assert.True(finding.Place.IsKnown);
            Assert.NotEmpty(finding.Remedy);
        }
    }

    [Fact]
    public void Doors_OverANeighboursEdge_AreOneStop()
    {
        string text = Text("of: ply, overlay: 1/2", "keys: [X]").Split("assembly:")[0]
            + "assembly:\n  - case: C\n    of: ply\n    width: 36\n    height: 30\n    depth: 12\n    across:\n      - {opening: A, doors: {like: kind, keys: [D1]}}\n      - {partition: P}\n      - {opening: B, doors: {like: kind, keys: [D2]}}\n";
        // Each 1/2 over a partition of 3/4.
        Finding finding = Assert.Single(SetOut(text).Findings, f => f.Severity != Severity.Note);
        Assert.Equal(("front.overlap", Severity.Stop), (finding.Code, finding.Severity));
        Assert.Contains("1/4 in", finding.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Doors_OfNoKind_AreOneStop()
    {
        Finding finding = Assert.Single(SetOut(Text("of: ply", "keys: [D1]").Replace("like: kind", "like: knd", StringComparison.Ordinal)).Findings, f => f.Severity != Severity.Note);
        Assert.Equal("door.unknown-kind", finding.Code);
        Assert.Contains("kind", finding.Remedy, StringComparison.Ordinal);
    }
}
