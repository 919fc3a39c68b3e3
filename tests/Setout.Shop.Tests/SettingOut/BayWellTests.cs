using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>A lowered platform between the posts of a frame: by hand, what a reading moves, and what cannot be.</summary>
public class BayWellTests
{
    private const string Usual = "well: W, machine: drum sander, bay: B, from front: 5, footprint: 16 x 12, table height: 5 1/4, bearers: maple";

    private static string Text(string well, string frame = "") => """
        setout: 1
        name: Sanding bench
        unit: in
        grid: 1/32
        materials:
          studs: {stick: pine, section: 1 1/2 x 3 1/2}
          maple: {stick: maple, section: 3/4 x 1 1/2}
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
        assembly:
          - {frame: F, of: studs, width: 78, height: 33, depth: 24, toe: 4, top rails: flatFRAME, across: [{opening: A, width: 20}, {posts: M}, {opening: B, width: 18}, {posts: N}, {opening: C}]}
          - {top: T, of: ply, overhang: {front: 1, left: 1/2}, wells: [{WELL}]}

        """.Replace("WELL", well, StringComparison.Ordinal).Replace("FRAME", frame, StringComparison.Ordinal);

    private static SetPiece Out(string well, params string[] readings) => SetOut(Text(well), readings);

    private static string Codes(SetPiece set) => string.Join(' ', set.Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Code));

    private static Placement Box(SetPiece set, string part, int index = 0) => set.Parts.Single(p => p.Key == part).Placements[index];

    [Fact]
    public void BayWell_Usual_IsTheSumByHand()
    {
        SetPiece set = Out(Usual);

        Assert.Equal("", Codes(set));
        // Left: 1/2 over, posts 2 x 3 1/2, bay A 20: 27 1/2. As wide as B, 18; platform 1/16 less; 12 + 2 x 1/2 = 13 front to back.
        AssertValues(set, ("W.from-left", "27 1/2"), ("W.width", "18"), ("W.platform.length.to-cut", "17 15/16"), ("W.platform.width.to-cut", "13"));
        // Heights as of any well: 33 + 3/4 - 5 1/4 - 1/16 - 3/4 = 27 11/16. Bearers 24, from the front of the front post to the back of the rear one.
        AssertValues(set, ("W.bearers.up.to-cut", "27 11/16"), ("W.bearer.length.to-cut", "24"), ("W.drop", "5 5/16"));
        Assert.DoesNotContain(set.Parts, p => p.Key == "W.side");
        // They stand against the posts of B, and the platform on them.
        Placement post = Box(set, "F.post", 2), left = Box(set, "W.bearer"), right = Box(set, "W.bearer", 1), platform = Box(set, "W.platform");
        Assert.Equal(post.X + post.SizeX, left.X);
        Assert.Equal(Box(set, "F.post", 4).X, right.X + right.SizeX);
        Assert.Equal(left.Z + left.SizeZ, platform.Z);
        Assert.Equal(Described.Of("4"), platform.Y);
        Assert.True(platform.X < left.X + left.SizeX && right.X < platform.X + platform.SizeX);
        Assert.Equal(8, set.Hardware.Single(h => h.Key == "W" && h.Name.StartsWith("Structural", StringComparison.Ordinal)).Count);
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Fact]
    public void BayWell_BayRead_NarrowsThePlatformOnly() =>
        // 1/16 less between the posts: the platform is so much shorter, its place the same.
        AssertValues(Out(Usual, "B.width: 17 15/16 in"), ("W.platform.length.to-cut", "17 7/8"), ("W.from-left", "27 1/2"));

    [Fact]
    public void BayWell_TableRead_MovesThePlatformDown() => AssertValues(Out(Usual, "W.table-height: 5 3/8 in"), ("W.bearers.up.to-cut", "27 9/16"), ("W.flush", "1/16"));

    [Theory]
    [InlineData(", corners: tenon, tenon: 1/2")]
    [InlineData(", corners: dowels")]
    public void BayWell_InATenonedOrDowelledFrame_StandsInTheSamePlace(string corners) =>
        AssertValues(SetOut(Text(Usual, corners)), ("W.from-left", "27 1/2"), ("W.bearer.length.to-cut", "24"));

    [Fact]
    public void BayWell_BetweenLappedRails_StandsInTheSamePlace() =>
        AssertValues(SetOut(Text(Usual, ", rails run: inside").Replace("top rails: flat", "top rails: on edge", StringComparison.Ordinal)), ("W.from-left", "27 1/2"), ("W.bearer.length.to-cut", "24"));

    [Theory]
    [InlineData("bay: B", "bay: Q", "well.no-bay")]
    [InlineData("bay: B", "bay: F", "well.no-bay")]
    [InlineData(", bearers: maple", "", "well.no-bearers")]
    [InlineData("bay: B", "bay: B, width: 12", "well.bay-idle")]
    [InlineData("bay: B", "bay: B, sides: ply", "well.bay-idle")]
    [InlineData("bay: B", "bay: B, from left: 20", "well.bay-idle")]
    [InlineData("footprint: 16 x 12", "footprint: 18 x 12", "")]
    [InlineData("footprint: 16 x 12", "footprint: 18 1/32 x 12", "well.too-small")]
    public void BayWell_ThatCannotBe_IsAFindingWithItsPlace(string from, string to, string code)
    {
        SetPiece set = Out(Usual.Replace(from, to, StringComparison.Ordinal));
        Assert.Equal(code, string.Join(' ', set.Findings.Where(f => f.Severity == Severity.Stop).Select(f => f.Code)));
        Assert.All(set.Findings.Where(f => f.Severity == Severity.Stop), f => Assert.True(f.Place.IsKnown && f.Remedy.Length > 0));
    }

    [Fact]
    public void BayWell_ThatReachesTheRails_SaysWhatItCutsInto() => Assert.Contains(Out(Usual.Replace("from front: 5", "from front: 4", StringComparison.Ordinal)).Findings, f => f.Code == "well.interrupts");
}
