using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Frames whose rails run past the posts, frames without bottom rails, and stretchers: by hand, and what cannot be.</summary>
public class FrameRunTests
{
    private const string Frame = """
        setout: 1
        name: A frame
        unit: in
        materials:
          posts: {stick: pine, section: 1 1/2 x 3 1/2}
          rails: {stick: pine, section: 3/4 x 3}
          slim: {stick: pine, section: 3/4 x 2}
          wide: {stick: pine, section: 1 5/8 x 4}
          ply: {panel: hardwood plywood, thickness: 3/4}
        assembly:
          - {frame: F, of: posts, rails: rails, width: 60, height: 30, depth: 20, toe: 4, WORDS, across: [{opening: A, width: 20, shelves: {of: ply, down: [S1]}}, {posts: M}, {opening: B}]}

        """;

    private static SetPiece Of(string words, params string[] readings) => SetOut(Frame.Replace("WORDS", words, StringComparison.Ordinal), readings);

    private static string Stops(SetPiece set) => string.Join(' ', set.Findings.Where(f => f.Severity == Severity.Stop).Select(f => f.Code));

    private static Placement Box(SetPiece set, string part, int index = 0) => set.Parts.First(p => p.Key == part).Placements[index];

    private static ExactLength In(long whole, long above = 0, long below = 1) => ExactLength.FromInches(Rational.Of((whole * below) + above, below));

    [Fact]
    public void LappedRails_ByHand_RunThroughFlushWithThePosts()
    {
        SetPiece set = Of("rails run: lapped");

        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        // Rails 60, one part for both bays; 60 - 3 x 3 1/2 - 20 = 29 1/2 left for B. Half of 3/4 in the rail, half in the post. Ties 20 - 2 x 1 1/2 = 17.
        AssertValues(set, ("F.rail.length.to-cut", "60"), ("A.width", "20"), ("B.width", "29 1/2"), ("F.lap", "3/8"), ("F.lap.post", "3/8"), ("F.tie.length.to-cut", "17"), ("A.depth", "20"));
        Assert.Equal(4, set.Parts.First(p => p.Key == "F.rail").Count);
        Assert.Equal((In(0), In(60)), (Box(set, "F.rail").X, Box(set, "F.rail").SizeX));
        Assert.Equal(In(0), Box(set, "F.rail").Y);
        Assert.Contains(set.Joints, j => j is { Kind: JointKind.HalfLap, Part: "F.rail", Against: "F.post" });
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Fact]
    public void RailsOverThePosts_ByHand_TakeTheirThicknessOffTheTies()
    {
        SetPiece set = Of("rails run: outside");

        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        // 20 - 2 x 1 1/2 - 2 x 3/4 = 15 1/2. The posts stand 3/4 in. 12 places where a rail passes a post, two screws each.
        AssertValues(set, ("F.tie.length.to-cut", "15 1/2"), ("F.rail.length.to-cut", "60"), ("B.width", "29 1/2"));
        Assert.Equal((In(0), In(0, 3, 4), In(2, 1, 4)), (Box(set, "F.rail").Y, Box(set, "F.post").Y, Box(set, "F.tie").Y));
        Assert.Equal(24, set.Hardware.First(h => h.Name.StartsWith("Wood screw no. 10", StringComparison.Ordinal)).Count);
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Fact]
    public void PostsOverTheRails_ByHand_StandOutside()
    {
        SetPiece set = Of("rails run: inside");

        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        // The same sum; the ties go between the rails.
        AssertValues(set, ("F.tie.length.to-cut", "15 1/2"));
        Assert.Equal((In(1, 1, 2), In(0), In(2, 1, 4)), (Box(set, "F.rail").Y, Box(set, "F.post").Y, Box(set, "F.tie").Y));
        Assert.Contains(set.Joints, j => j is { Part: "F.tie", Against: "F.rail" });
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Theory]
    [InlineData("lapped")]
    [InlineData("outside")]
    [InlineData("inside")]
    public void ThroughRail_CutLong_WidensTheBayThatTakesTheRest(string run)
    {
        SetPiece set = Of($"rails run: {run}", "F.rail.length.as-cut: 60 1/16 in");
        AssertValues(set, ("A.width", "20"), ("B.width", "29 9/16"), ("F.outside", "60 1/16"));
        Assert.All(set.Chains, c => Assert.Equal(0, c.Misfit(set.Worked)!.Value.Sign));
    }

    [Fact]
    public void NoBottomRails_ByHand_BayGoesDownToItsToe()
    {
        SetPiece set = Of("bottom rails: no");

        // 30 - 4 - 3 = 23; two rails a bay and three ties.
        AssertValues(set, ("A.height", "23"));
        Assert.Equal((2, 2, 3), (set.Parts.First(p => p.Key == "A.rail").Count, set.Parts.First(p => p.Key == "B.rail").Count, set.Parts.First(p => p.Key == "F.tie").Count));
        // 8 rail ends and 6 tie ends, two screws each.
        Assert.Equal([16, 12], set.Hardware.Where(h => h.Key == "F").Select(h => h.Count));
        Assert.DoesNotContain(set.Steps, s => s.Words.Contains("bottom", StringComparison.Ordinal) && s.Stage == Stage.Carcase);
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Fact]
    public void NoBottomRails_HaveNoMortises()
    {
        Machining cut = Assert.Single(Of("bottom rails: no, corners: tenon, tenon: 3/4").Machinings, m => m.Part == "F.post");
        Assert.DoesNotContain(cut.Figures, f => f.Name.Contains("bottom", StringComparison.Ordinal));
        Assert.Contains(Assert.Single(Of("corners: tenon, tenon: 3/4").Machinings, m => m.Part == "F.post").Figures, f => f.Name.Contains("bottom", StringComparison.Ordinal));
    }

    [Fact]
    public void Stretchers_AsAnH_ByHand()
    {
        SetPiece set = Of("toe: 12, corners: tenon, tenon: 3/4, stretchers: [{stretcher: SE, of: slim, up: 4}, {stretcher: SM, of: slim, at: middle, up: 4}]".Replace("toe: 12, ", "", StringComparison.Ordinal));

        // Ends: 17 between the posts + 2 x 3/4 = 18 1/2, in the middle of posts 3 1/2 wide: (3 1/2 - 3/4) / 2 = 1 3/8 in. Middle: from 1 3/8 + 3/4 = 2 1/8, 60 - 2 x 2 1/8 = 55 3/4, + 2 x 3/8: a tenon is half of what it goes into at most.
        AssertValues(set, ("SE.length.to-cut", "18 1/2"), ("SM.tenon", "3/8"), ("SM.length.between", "55 3/4"), ("SM.length.to-cut", "56 1/2"));
        Assert.Equal((In(1, 3, 8), In(9, 5, 8)), (Box(set, "SE").X, Box(set, "SM").Y));
    }

    [Fact]
    public void Stretchers_FrontAndBack_AreBetweenThePostsOfEachBay()
    {
        SetPiece set = Of("bottom rails: no, stretchers: [{stretcher: SF, of: slim, at: front, up: 5}, {stretcher: SB, of: slim, at: back, up: 5, laid: flat}, {stretcher: SE, up: 1}]");

        AssertValues(set, ("SF.A.length.to-cut", "20"), ("SF.B.length.to-cut", "29 1/2"), ("SE.length.to-cut", "17"));
        // On edge 3/4 in the middle of 1 1/2: 3/8 in. Flat sticks of 2 are wider than the post of 1 1/2.
        Assert.Equal(In(0, 3, 8), Box(set, "SF.A").Y);
        Assert.Equal("stretcher.wider-than-post", Stops(set));
    }

    [Fact]
    public void Frame_OfEveryKind_IsInOneStepAPart() => Assert.All(
        new[]
        {
            "rails run: lapped, stretchers: [{stretcher: SE, up: 0}, {stretcher: SM, at: middle, up: 1}]", "rails run: outside, corners: tenon, stretchers: [{stretcher: SE, of: slim, up: 1}]",
            "bottom rails: no, corners: dowels, stretchers: [{stretcher: SE, up: 0}, {stretcher: SF, at: back, up: 5}]", "bottom rails: no, corners: tenon, tenon: 3/4, stretchers: [{stretcher: SE, up: 0}, {stretcher: SM, at: middle, up: 0}]",
        },
        words =>
        {
            SetPiece set = Of(words);
            Assert.Equal("", Stops(set));
            Assert.Empty(RandomPieceTests.Wrong(set));
        });

    [Theory]
    [InlineData("rails run: lapped, lap: 3/8", "")]
    [InlineData("rails run: lapped, lap: 3/4", "frame.lap-too-deep")]
    [InlineData("rails run: outside, lap: 3/8", "frame.lap-idle")]
    [InlineData("rails run: lapped, top rails: flat", "frame.flat-between")]
    [InlineData("rails run: lapped, panels: {of: ply}", "frame.panels-want-rails")]
    [InlineData("bottom rails: no, panels: {of: ply}", "frame.panels-want-rails")]
    [InlineData("rails run: lapped, corners: dowels", "frame.corners-run")]
    [InlineData("rails run: outside, corners: tenon", "")]
    [InlineData("rails run: inside, corners: tenon", "frame.corners-run")]
    [InlineData("stretchers: [{stretcher: SM, at: middle, up: 1}]", "stretcher.hangs")]
    [InlineData("stretchers: [{stretcher: SE, of: slim, up: 0}, {stretcher: SM, of: slim, at: middle, up: 1 31/32}]", "")]
    [InlineData("stretchers: [{stretcher: SE, of: slim, up: 0}, {stretcher: SM, of: slim, at: middle, up: 2}]", "stretcher.hangs")]
    [InlineData("stretchers: [{stretcher: SM, at: middle, short: 4, up: 1}]", "stretcher.hangs")]
    [InlineData("stretchers: [{stretcher: SF, of: wide, at: front, up: 0}]", "stretcher.wider-than-post part.in-the-way")]
    [InlineData("stretchers: [{stretcher: SE, of: slim, up: 28}]", "")]
    [InlineData("stretchers: [{stretcher: SE, up: 0, short: 1}]", "stretcher.idle")]
    [InlineData("stretchers: [{stretcher: SE, of: slim, up: 28 1/32}]", "stretcher.too-high")]
    [InlineData("stretchers: [{stretcher: SE, of: ply, up: 0}]", "material.not-a-stick")]
    public void Frame_AtItsLimitAndAStepPast_Says(string words, string codes)
    {
        SetPiece set = Of(words);
        Assert.Equal(codes.Split(' ')[0], Stops(set).Split(' ')[0]);
        Assert.All(set.Findings.Where(f => f.Severity == Severity.Stop), f => Assert.True(f.Place.IsKnown && f.Remedy.Length > 0));
    }

    [Fact]
    public void ThinPosts_LappedBeyondHalf_Stop()
    {
        // Rails of 1 1/2 halved take 3/4 of posts 1 1/2 deep: half. 1/32 less in the rail takes more.
        string text = Frame.Replace("section: 3/4 x 3}", "section: 1 1/2 x 3}", StringComparison.Ordinal);
        Assert.Equal("", Stops(SetOut(text.Replace("WORDS", "rails run: lapped", StringComparison.Ordinal))));
        Assert.Equal("frame.lap-too-deep", Stops(SetOut(text.Replace("WORDS", "rails run: lapped, lap: 23/32", StringComparison.Ordinal))));
    }

    [Fact]
    public void Frame_InMillimetres_ComesOutAlike()
    {
        const string words = "rails run: outside, stretchers: [{stretcher: SE, of: slim, up: 2 in}]";
        string metric = System.Text.RegularExpressions.Regex.Replace(Frame, @"(?<=(?:width|height|depth|toe|thickness): )\d[\d /]*(?=[,}])", "$& in")
            .Replace("unit: in\n", "unit: mm\ngrid: 1/32 in\n", StringComparison.Ordinal);
        metric = System.Text.RegularExpressions.Regex.Replace(metric, @"section: ([\d /]+) x ([\d /]+)\}", "section: $1 in x $2 in}");
        AssertValues(SetOut(metric.Replace("WORDS", words, StringComparison.Ordinal)), ("F.tie.length.to-cut", "15 1/2"), ("B.width", "29 1/2"), ("SE.length.to-cut", "15 1/2"));
    }
}
