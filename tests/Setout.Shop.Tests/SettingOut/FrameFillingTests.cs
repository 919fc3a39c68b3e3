using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What stands in the bays of a frame: openings back to back, slats, shelves past the posts, drawers whose front is the front of the box.</summary>
public class FrameFillingTests
{
    private const string Frame = """
        setout: 1
        name: A table
        unit: in
        materials:
          posts: {stick: pine, section: 2 x 2}
          rails: {stick: pine, section: 3/4 x 2}
          slats: {stick: pine, section: 1/4 x 1}
          ply: {panel: hardwood plywood, thickness: 3/4}
          thin: {panel: hardwood plywood, thickness: 1/2}
        drawers:
          own: {sides: thin, bottom: thin, front: ply, false front: no, fronts: inset, slides: runners, runner: rails, corners: rabbet, bottom fit: slid in}
        assembly:
          - {frame: F, of: posts, rails: rails, width: 40, height: 30, depth: 24, toe: 4, across: [{opening: A, BAY}]}

        """;

    private static SetPiece Of(string bay, string kind = "", params string[] readings) =>
        SetOut(Frame.Replace("BAY", bay, StringComparison.Ordinal).Replace("corners: rabbet, bottom fit: slid in", kind.Length > 0 ? kind : "corners: rabbet, bottom fit: slid in", StringComparison.Ordinal), readings);

    private static string Codes(SetPiece set, Severity least = Severity.Warn) => string.Join(' ', set.Findings.Where(f => f.Severity >= least).Select(f => f.Code).Distinct());

    private static Placement Box(SetPiece set, string part, int index = 0) => set.Parts.Single(p => p.Key == part).Placements[index];

    [Fact]
    public void BackToBack_EachHasHalfOfTheDepthAndIsMirrored()
    {
        SetPiece set = Of("bearers: rails, down: [{opening: B, height: 5, drawers: {like: own, down: [{drawer: D1}]}, from behind: {opening: C, drawers: {like: own, down: [{drawer: D2}]}}}, {rail: R}, {opening: O}]");

        Assert.Equal("", Codes(set));
        // 24 / 2 - 3/4 - 1/8 + 3/8 = 11 1/2, for both.
        AssertValues(set, ("B.half-depth", "12"), ("C.depth", "12"), ("D1.side.length.to-cut", "11 1/2"), ("D2.side.length.to-cut", "11 1/2"));
        Assert.All(new[] { "front", "side", "back", "bottom" }, part =>
        {
            Placement front = Box(set, $"D1.{part}"), behind = Box(set, $"D2.{part}");
            Assert.Equal(ExactLength.FromInches(24), front.Y + behind.Y + behind.SizeY);
            Assert.Equal(ExactLength.FromInches(40), front.X + behind.X + behind.SizeX);
            Assert.Equal(front.Z, behind.Z);
        });
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Fact]
    public void BackToBack_FrameReadDeeper_GivesBothHalf() =>
        // 1/8 more depth read in the bay: 1/16 more for each, and its sides are so much longer.
        AssertValues(Of("bearers: rails, down: [{opening: B, height: 5, drawers: {like: own, down: [{drawer: D1}]}, from behind: {opening: C, drawers: {like: own, down: [{drawer: D2}]}}}, {rail: R}, {opening: O}]", "", "A.depth: 24 1/8 in"),
            ("D1.side.length.to-cut", "11 9/16"), ("D2.side.length.to-cut", "11 9/16"));

    [Theory]
    [InlineData("across: [{opening: B, from behind: {opening: C}}, {partition: P, of: ply}, {opening: E}]", "")]
    [InlineData("slide panels: ply, across: [{opening: B, from behind: {opening: C}}, {partition: P}, {opening: E}]", "")]
    public void BackToBack_WithinADivision_IsFine(string bay, string code) => Assert.Equal(code, Codes(Of(bay)));

    [Fact]
    public void BackToBack_BeforeABackPanel_Stops()
    {
        SetPiece set = SetOut(Frame.Replace("toe: 4, ", "toe: 4, panels: {of: slab, back: yes}, ", StringComparison.Ordinal).Replace("  thin:", "  slab: {panel: hardwood plywood, thickness: 1/4}\n  thin:", StringComparison.Ordinal)
            .Replace("BAY", "from behind: {opening: C}", StringComparison.Ordinal));
        Finding finding = Assert.Single(set.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(("opening.no-behind", true), (finding.Code, finding.Place.IsKnown));
    }

    [Fact]
    public void BackToBack_InACase_Stops()
    {
        SetPiece set = SetOut("""
            setout: 1
            name: A case
            unit: in
            materials: {ply: {panel: hardwood plywood, thickness: 3/4}}
            assembly:
              - {case: C, of: ply, width: 30, height: 30, depth: 15, down: [{opening: A, from behind: {opening: B}}, {deck: R}, {opening: E}]}

            """);
        Assert.Equal("opening.no-behind", Assert.Single(set.Findings, f => f.Severity == Severity.Stop).Code);
    }

    [Fact]
    public void Slats_ByHand_StandEvenlyBeforeTheShelves()
    {
        SetPiece set = Of("setback: 1/4, slats: {of: slats, count: 5, at: both}, shelves: {of: ply, down: [S1, S2]}");

        Assert.Equal("", Codes(set));
        // 36 - 5 = 31, six spaces: 5 1/6. Height 30 - 4 - 2 - 2 = 22. The shelves are 24 - 2 x 1/4 deep; the slats come flush with the posts.
        Assert.Equal(ExactLength.FromInches(Rational.Of(31, 6)), set.Value("A.slat-space"));
        AssertValues(set, ("A.slat.length.to-cut", "22"), ("S1.width.to-cut", "23 1/2"));
        Part slat = set.Parts.Single(p => p.Key == "A.slat");
        Assert.Equal(10, slat.Count);
        Assert.Equal(ExactLength.Zero, slat.Placements[0].Y);
        Assert.Equal(ExactLength.FromInches(24), slat.Placements[5].Y + slat.Placements[5].SizeY);
        // They close over the bay: the last ends a space from the post.
        Assert.Equal(ExactLength.FromInches(38) - set.Value("A.slat-space"), slat.Placements[4].X + slat.Placements[4].SizeX);
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Theory]
    [InlineData("slats: {of: slats, count: 2}", "slats.nothing-behind")]
    [InlineData("slats: {of: slats, count: 2}, shelves: {of: ply, setback: 1/4, down: [S1]}", "slats.nothing-behind")]
    [InlineData("slats: {of: slats, count: 35}, shelves: {of: ply, down: [S1]}", "")]
    [InlineData("slats: {of: slats, count: 36}, shelves: {of: ply, down: [S1]}", "slats.too-many")]
    [InlineData("shelves: {of: ply, past posts: 2, down: [S1]}", "")]
    [InlineData("shelves: {of: ply, past posts: 2 1/32, down: [S1]}", "shelf.past-too-far")]
    [InlineData("slide panels: ply, shelves: {past posts: 1, down: [S1]}", "shelf.past-idle")]
    [InlineData("across: [{opening: B}, {partition: P, of: ply}, {opening: C, shelves: {of: ply, past posts: 1, down: [S1]}}, {partition: Q, of: ply}, {opening: E}]", "")]
    public void Filling_AtItsLimitAndAStepPast_Says(string bay, string code)
    {
        SetPiece set = Of(bay);
        // The opening between two partitions has no post beside it.
        Assert.Equal(bay.Contains("partition: Q", StringComparison.Ordinal) ? "shelf.past-idle" : code, Codes(set, Severity.Stop));
    }

    [Fact]
    public void Shelves_PastThePosts_ByHand()
    {
        SetPiece set = Of("setback: 1/2, shelves: {of: ply, past posts: 1, grain: front to back, lowest: at the bottom, down: [S1, S2]}");

        // 36 + 2 x 1 = 38 across, 24 - 1 = 23 along the grain; notches 2 - 1/2 = 1 1/2 front to back. Spaces: (22 - 1 1/2) / 2 = 10 1/4, none below the lowest.
        AssertValues(set, ("S1.length.to-cut", "38"), ("S1.width.to-cut", "23"), ("A.notch", "1 1/2"), ("S2.clear-below", "0"), ("S1.clear-below", "10 1/4"));
        Part shelf = set.Parts.Single(p => p.Key == "S1");
        Assert.Equal((set.Value("S1.width"), set.Value("S1.length")), (set.Value(shelf.Length.Exact.Text), set.Value(shelf.Width.Exact.Text)));
        Assert.Equal((ExactLength.FromInches(1), ExactLength.FromInches(6)), (Box(set, "S2").X, Box(set, "S2").Z));
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Theory]
    // Bay 36 by 5 high, 24 deep, gaps of 1/16: front 35 7/8. Depth - 3/4 - 1/8 = 23 1/8. Side height 4 7/8 - 1/8 = 4 3/4.
    // Rabbet: + 3/8; back 35 7/8 - 1; bottom 34 7/8 + 1/2 - 1/16 and 23 1/2 - 3/8 + 1/4; back 4 3/4 - 3/8 - 1/2.
    [InlineData("corners: rabbet, bottom fit: slid in", "23 1/2", "34 7/8", "35 5/16", "23 3/8", "3 7/8")]
    // Two thirds of 3/4 is 1/2; the back is dovetailed, as long as the front.
    [InlineData("corners: half-blind dovetail, bottom fit: slid in", "23 5/8", "35 7/8", "35 5/16", "23 3/8", "3 7/8")]
    // Butted; the bottom lies between, under a back of 4 3/4 - 1/2.
    [InlineData("corners: pocket, bottom fit: between", "23 1/8", "34 7/8", "34 7/8", "23 1/8", "4 1/4")]
    public void DrawerWithItsOwnFront_ByHand(string kind, string side, string back, string across, string fore, string high)
    {
        SetPiece set = Of("bearers: rails, down: [{opening: O}, {rail: R}, {opening: B, height: 5, drawers: {like: own, down: [{drawer: D1}]}}]", kind);

        Assert.Equal("", Codes(set));
        AssertValues(set, ("D1.front.width.to-cut", "35 7/8"), ("D1.side.length.to-cut", side), ("D1.side.width.to-cut", "4 3/4"), ("D1.back.length.to-cut", back), ("D1.bottom.width.to-cut", across), ("D1.bottom.length.to-cut", fore), ("D1.back.width.to-cut", high), ("D1.box.as-built", "35 7/8"), ("D1.play", "1/8"));
        // Four parts and the bottom, in one step, none in another's place.
        Assert.Equal(5, set.Parts.Where(p => new QuantityKey(p.Key).Owner == "D1" && p.Role is not PartRole.Bearer).Sum(p => p.Count));
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Theory]
    [InlineData("corners: rabbet, bottom fit: slid in, corner depth: 1/2", "")]
    [InlineData("corners: rabbet, bottom fit: slid in, corner depth: 17/32", "corner.too-deep")]
    [InlineData("corners: box joint, bottom fit: slid in", "drawer.front-and-box")]
    [InlineData("corners: rabbet, bottom fit: grooved", "drawer.front-and-box")]
    [InlineData("corners: rabbet, bottom fit: slid in, groove depth: 1/4", "")]
    [InlineData("corners: rabbet, bottom fit: slid in, groove depth: 9/32", "groove.too-deep")]
    public void DrawerWithItsOwnFront_AtItsLimitAndAStepPast_Says(string kind, string code) =>
        Assert.Equal(code, Codes(Of("bearers: rails, down: [{opening: O}, {rail: R}, {opening: B, height: 5, drawers: {like: own, down: [{drawer: D1}]}}]", kind)));

    [Theory]
    [InlineData("false front: no, fronts: inset, slides", "fronts: inset, bottom fit: between, slides", "corners: rabbet, bottom fit: slid in", "corners: rabbet")]
    [InlineData("fronts: inset, ", "fronts: overlay, ", "", "")]
    [InlineData("slides: runners, runner: rails, ", "", "", "")]
    public void DrawerWithItsOwnFront_OtherwiseMade_Stops(string from, string to, string also, string instead)
    {
        string text = Frame.Replace("BAY", "slide panels: ply, drawers: {like: own, down: [{drawer: D1}]}", StringComparison.Ordinal).Replace(from, to, StringComparison.Ordinal);
        if (also.Length > 0) text = text.Replace(also, instead, StringComparison.Ordinal);
        Finding finding = Assert.Single(SetOut(text).Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(("drawer.front-and-box", true), (finding.Code, finding.Place.IsKnown));
    }
}
