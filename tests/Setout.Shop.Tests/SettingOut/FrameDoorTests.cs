using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Doors and inset fronts on a face frame, and drawers behind doors, worked by hand.</summary>
public class FrameDoorTests
{
    private static string Text(string kind, string content, string frame = "face frame: {of: oak}, ", string size = "width: 38, height: 30", string unit = "in", string fronts = "inset", string grid = "") => $$"""
        setout: 1
        name: Cupboard of a bell tower
        unit: {{unit}}
        {{grid}}
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4 in, grain: free}
          inch: {panel: hardwood plywood, thickness: 1 in, grain: free}
          thin: {panel: hardwood plywood, thickness: 1/2 in, grain: free}
          bottoms: {panel: hardwood plywood, thickness: 1/4 in, grain: free}
          oak: {stick: oak, section: 3/4 in x 1 1/2 in}
          least: {stick: oak, section: 5/8 in x 1 1/2 in}
          slim: {stick: oak, section: 19/32 in x 1 1/2 in}
          pine: {stick: pine, section: 1 1/2 in x 2 in}
        drawers:
          box: {sides: thin, bottom: bottoms, front: ply, fronts: {{fronts}}}
          run: {sides: thin, bottom: bottoms, front: ply, fronts: {{fronts}}, slides: runners, runner: oak}
        doors:
          kind: { {{kind}} }
        assembly:
          - {case: C, of: ply, {{size}}, depth: 20 in, {{frame}}{{content}}}

        """;

    private static Placement Box(SetPiece set, string part, int index = 0) => set.Parts.Single(p => p.Key == part).Placements[index];

    private static string[] Codes(SetPiece set) => [.. set.Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Code)];

    [Fact]
    public void Pair_OverTheFrame_GoesByTheOpeningBetweenItsMembers()
    {
        SetPiece set = DoorTests.Sound(SetOut(Text("of: ply", "doors: {like: kind, keys: [D1, D2]}, shelves: {down: [S]}")));
        // Inside 36 1/2 x 28 1/2; stiles and rails of 1 1/2 stand 3/4 in: 35 x 27 between them. 1/2 over each (common practice, no source): 36 x 28,
        // less the gap of 1/8 and halved 17 15/16.
        AssertValues(set, ("C.opening.frame-width", "35"), ("C.opening.frame-height", "27"), ("D1.width.to-cut", "17 15/16"), ("D2.width.to-cut", "17 15/16"), ("D1.height.to-cut", "28"), ("C.opening.door-beside", "1/8"));
        Assert.Equal((Described.Of("1"), Described.Of("-3/4"), Described.Of("1")), (Box(set, "D1").X, Box(set, "D1").Y, Box(set, "D1").Z));
        // Behind them the shelf goes by the case: 36 1/2 by 20 - 3/4 of frame.
        AssertValues(set, ("S.length.to-cut", "36 1/2"), ("S.width.to-cut", "19 1/4"));
        // 80 mm from the ends (a maker's catalogue), on 3 5/32; in the frame 1/2 less. No setback: the leaflet of the plate says how far in.
        AssertValues(set, ("D1.plate-1", "2 21/32"));
        Assert.False(set.Worked.Values.ContainsKey(new("D1.plate-setback")));
        Assert.Equal(2, set.Machinings.Count(m => m.Part == "C.stile" && m.Words.StartsWith("Screw holes for the plates of door", StringComparison.Ordinal)));
        Assert.Contains(set.Hardware, h => h.Name == "Cup hinge 35 mm, for a face frame, 1/2 in over the edge, with its plate and screws");
    }

    [Theory]
    [InlineData("ply", "19 1/4", "0")] // as thick as the frame: nothing behind it
    [InlineData("inch", "19", "1/4")]
    [InlineData("thin", "19 1/4", "0")]
    public void Inset_GoesIntoTheFrame_AndTakesOnlyWhatItIsThicker(string sheet, string shelf, string beyond)
    {
        SetPiece set = DoorTests.Sound(SetOut(Text($"of: {sheet}, lies: inset", "doors: {like: kind, keys: [D1, D2]}, shelves: {down: [S]}")));
        // 35 less 3 x 5/64 (middle of 1/16 to 3/32), halved 17 49/128, to the nearest 1/32; 27 - 2 x 5/64 = 26 27/32.
        AssertValues(set, ("D1.width.to-cut", "17 3/8"), ("D1.height.to-cut", "26 27/32"), ("S.width.to-cut", shelf), ("C.opening.door-beyond", beyond));
        Assert.Equal((Described.Of("1 1/2 + 5/64"), ExactLength.Zero), (Box(set, "D1").X, Box(set, "D1").Y));
        // Butts: gains in the edge of the stiles, 1/2 (1/8 - 5/64) deep.
        AssertValues(set, ("D1.gain.depth", "3/128"));
        Assert.Contains(set.Machinings, m => m.Part == "C.stile" && m.Words == "Gains for the butts of door D1");
        Assert.All(set.Parts.Where(p => p.Role == PartRole.Door), p => Assert.True(set.IsHeld(p)));
    }

    [Fact]
    public void Inset_FrameReadNarrower_MakesTheDoorNarrower() =>
        AssertValues(SetOut(Text("of: ply, lies: inset", "doors: {like: kind, keys: [D1]}", size: "width: 20, height: 20"), "C.opening.frame-clear: 16 15/16 in"), ("D1.width.to-cut", "16 25/32")); // 16 15/16 - 5/32

    [Fact]
    public void HalfOverlay_CoversHalfOfEachMember()
    {
        SetPiece set = DoorTests.Sound(SetOut(Text("of: ply, lies: half overlay", "across: [{opening: A, doors: {like: kind, keys: [D1]}}, {partition: P}, {opening: B, doors: {like: kind, keys: [D2], hinges: right}}]")));
        // A: (36 1/2 - 3/4) / 2 = 17 7/8, less 3/4 at the stile and 3/8 at the mullion: 16 3/4; + 2 x (1 1/2 - 1/8) / 2 = 18 1/8. On the mullion 1/8 stays between the two.
        AssertValues(set, ("A.frame-width", "16 3/4"), ("D1.width.to-cut", "18 1/8"));
        Assert.Equal(Box(set, "D1").X + Box(set, "D1").SizeX + Described.Of("1/8"), Box(set, "D2").X);
        Assert.Equal(2, set.Machinings.Where(m => m.Part == "C.stile").Count(m => m.Words.StartsWith("Screw holes", StringComparison.Ordinal)));
    }

    [Fact]
    public void PartitionBehindDoors_HasNoMullion()
    {
        SetPiece set = DoorTests.Sound(SetOut(Text("of: ply", "doors: {like: kind, keys: [D1, D2]}, across: [{opening: A, shelves: {down: [S]}}, {partition: P}, {opening: B}]")));
        Assert.DoesNotContain(set.Parts, p => p.Key == "P.mullion");
        AssertValues(set, ("P.width.to-cut", "19 1/4"), ("S.length.to-cut", "17 7/8"));
    }

    [Fact]
    public void InsetFronts_InTheFrame_AndTheirPackingEndsWhereTheSlideDoes()
    {
        SetPiece set = DoorTests.Sound(SetOut(Text("of: ply", "drawers: {like: box, down: [{drawer: D1}, {drawer: D2}]}")));
        // 35 x 27 in the frame; fronts 35 - 2 x 1/16 wide, (27 - 3 x 1/16) / 2 high (gap: common practice, no source). Boxes 35 - 1 - 1/32 wide.
        AssertValues(set, ("D1.front.width.to-cut", "34 7/8"), ("D1.front.height.to-cut", "13 13/32"), ("D1.box.width", "33 31/32"));
        // Depth from the face 20, less the front 3/4, 2 mm and 1/8: slides of 18. They end 3/4 + 2 mm + 18 behind the face.
        AssertValues(set, ("D1.slide.length", "18"));
        Assert.Equal(Described.Of("18 3/4 in") + Described.Of("2 mm"), Box(set, "C.opening.packing-left", 1).Y + Box(set, "C.opening.packing-left", 1).SizeY);
        Assert.Equal(ExactLength.Zero, Box(set, "D1.front").Y);
    }

    [Fact]
    public void Runners_BehindTheFrame_ArePackedToo()
    {
        SetPiece set = DoorTests.Sound(SetOut(Text("of: ply", "drawers: {like: run, down: [{drawer: D1}, {drawer: D2}]}")));
        // The packing of 3/4 stands between the side and the runner, which begins at the frame's edge: 1 1/2 from the outside.
        Assert.Equal((Described.Of("3/4"), Described.Of("1 1/2")), (Box(set, "C.opening.packing-left").SizeX, Box(set, "D1.runner").X));
        Assert.Equal(Box(set, "D1.runner").Y + Box(set, "D1.runner").SizeY, Box(set, "C.opening.packing-left", 1).Y + Box(set, "C.opening.packing-left", 1).SizeY);
    }

    private const string Inner = "down: [{opening: A, drawers: {like: box, packing: pine, down: [{drawer: B1}, {drawer: B2}]}}]";

    [Theory]
    [InlineData("of: ply", "", "21 3/4", "20 23/32", "0", "0")] // 22 1/2 - 3/4 (cups: common practice, no source); box - 1 - 1/32
    [InlineData("of: ply, clear: 1/2", "", "22", "20 31/32", "0", "0")]
    [InlineData("of: ply, lies: inset", "", "21 3/4", "20 23/32", "0", "3/4")] // an inset door on butts, opened square, stands in by its thickness
    [InlineData("of: ply", "face frame: {of: oak}, ", "20 1/4", "19 7/32", "3/4", "3/4")] // 22 1/2 - (3/4 + 3/4) - 3/4
    public void DrawersBehindADoor_KeepClearOfItAndAreBehindIt(string kind, string frame, string clear, string box, string right, string front)
    {
        SetPiece set = DoorTests.Sound(SetOut(Text(kind, $"doors: {{like: kind, keys: [D1]}}, {Inner}", frame, "width: 24, height: 30")));
        AssertValues(set, ("A.inner-clear", clear), ("B1.box.width", box));
        // The packing is as thick as from the side to the drawers, at the left where the hinges are; at the right only behind a frame.
        Assert.Equal(set.Value("A.packing-left.in"), Box(set, "A.packing-left").SizeX);
        Assert.Equal(Described.Of(right), set.Parts.Where(p => p.Key == "A.packing-right").Select(p => p.Placements[0].SizeX).DefaultIfEmpty(ExactLength.Zero).Single());
        Assert.Equal(Described.Of(front), Box(set, "B1.front").Y);
        Assert.True(Box(set, "D1").Y + Box(set, "D1").SizeY <= Box(set, "B1.front").Y);
    }

    [Theory]
    [InlineData("of: ply", "doors: {like: kind, keys: [D1]}, down: [{opening: A, drawers: {like: box, down: [{drawer: B1}]}}]", "", "inset", "drawer.hits-hinge", Severity.Warn)]
    [InlineData("of: ply, clear: 0", "doors: {like: kind, keys: [D1]}, down: [{opening: A, drawers: {like: box, down: [{drawer: B1}]}}]", "", "inset", null, null)]
    [InlineData("of: ply", "doors: {like: kind, keys: [D1]}, down: [{opening: A, drawers: {like: box, packing: pine, down: [{drawer: B1}]}}]", "", "overlay", "drawer.front-behind-door", Severity.Stop)]
    [InlineData("of: ply", "doors: {like: kind, keys: [D1]}", "face frame: {of: least}, ", "inset", null, null)]
    [InlineData("of: ply", "doors: {like: kind, keys: [D1]}", "face frame: {of: slim}, ", "inset", "door.frame-thin-for-plate", Severity.Warn)]
    [InlineData("of: ply, lies: inset", "doors: {like: kind, keys: [D1]}", "face frame: {of: slim}, ", "inset", null, null)]
    [InlineData("of: ply, overlay: 1 1/2", "doors: {like: kind, keys: [D1]}", "face frame: {of: oak}, ", "inset", null, null)]
    [InlineData("of: ply, overlay: 1 17/32", "doors: {like: kind, keys: [D1]}", "face frame: {of: oak}, ", "inset", "front.overhang", Severity.Warn)]
    public void Doors_AtTheLimitAndPastIt_AreSaid(string kind, string content, string frame, string fronts, string? code, Severity? severity)
    {
        SetPiece set = SetOut(Text(kind, content, frame, "width: 23, height: 30", fronts: fronts));
        Assert.Equal(code is null ? [] : [code], Codes(set));
        Assert.All(set.Findings.Where(f => f.Code == code), f => Assert.Equal((severity, true), (f.Severity, f.Place.IsKnown)));
    }

    [Fact]
    public void Packing_WhereThereIsNothingToPack_IsANote() =>
        Assert.Contains(SetOut(Text("of: ply", "drawers: {like: box, packing: pine, down: [{drawer: B1}]}", "")).Findings, f => f.Code == "packing.idle");

    [Fact]
    public void DoorsOnAFrame_InMillimetres_AreAsInInches()
    {
        const string content = "doors: {like: kind, keys: [D1, D2]}";
        SetPiece inch = SetOut(Text("of: ply, gap: 1/8 in", content, grid: "grid: 1/32 in")), metric = SetOut(Text("of: ply, gap: 1/8 in", content, size: "width: 965.2, height: 762", unit: "mm", grid: "grid: 1/32 in"));
        Assert.All(["D1.width.to-cut", "D1.height.to-cut", "D1.plate-1", "C.opening.frame-width"], k => Assert.Equal(inch.Value(k), metric.Value(k)));
    }
}
