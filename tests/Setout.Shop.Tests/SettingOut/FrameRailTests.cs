// Over 200 lines: a whole printed frame by hand, and what differs from it.
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Rails that divide a bay, what drawers run on between them, and bearers beside: whole frames of a printed book, by hand, and what cannot be.</summary>
public class FrameRailTests
{
    // Mission Furniture Part Three (Windsor, 1912; Project Gutenberg 23666).
    private const string Dresser = """
        setout: 1
        name: A princess dresser of 1912
        unit: in
        materials:
          posts: {stick: white oak, section: 1 3/4 x 1 3/4}
          rails: {stick: white oak, section: 3/4 x 1 1/2}
          panel: {panel: oak board, thickness: 3/8, grain: free}
          box: {panel: poplar board, thickness: 1/2}
          front: {panel: oak board, thickness: 3/4}
        drawers:
          run: {sides: box, bottom: panel, front: front, slides: runners, runner: rails, fronts: inset, corners: rabbet}
        assembly:
          - frame: F
            of: posts
            rails: rails
            width: 39 1/2
            height: 27
            depth: 19 1/2
            toe: 7 1/2
            above: 1
            corners: tenon
            tenon: 3/4
            panels: {of: panel, groove: 3/8, play: 0}
            across:
              - opening: A
                bearers: rails
                down:
                  - {opening: A1, drawers: {like: run, down: [{drawer: D1}]}}
                  - {rail: R1}
                  - {opening: A2, drawers: {like: run, down: [{drawer: D2}]}}

        """;

    private static SetPiece Changed(string from, string to)
    {
        Assert.Contains(from, Dresser, StringComparison.Ordinal);
        return SetOut(Dresser.Replace(from, to, StringComparison.Ordinal));
    }

    [Fact]
    public void PrincessDresserOf1912_Whole_IsAsPrinted()
    {
        SetPiece set = SetOut(Dresser);

        // The book gives its panels of oak no play. Its bottoms of oak, 17 1/2 or so from front to back, move 17 1/2 x 0.00369 x 6 = 0.39 in, more than two grooves of
        // 1/4 keep; its fronts of 6 7/8 move 0.152, half of it at either edge, past a gap of 1/16. That is all there is to say.
        Assert.Equal(["drawer.panel-leaves-groove", "frame.panel-captured", "wood.no-room"], set.Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Code).Order());
        Assert.All(set.Findings, f => Assert.NotEqual(Severity.Stop, f.Severity));
        AssertValues(set,
            // D07-dresser-width: 39 1/2 by 19 1/2 outside, posts 1 3/4, opening 36; front rails 37 1/2, end rails 17 1/2 (tenons of 3/4 agree with both).
            ("A.width", "36"), ("A.rail.length.to-cut", "37 1/2"), ("F.tie.length.between", "16"), ("F.tie.length.to-cut", "17 1/2"),
            // D11-dresser-height: posts 27, floor to bottom rail 7 1/2, three rails of 1 1/2, 1 above the top one, two equal openings: 7 each.
            ("A1.height", "7"), ("A2.height", "7"), ("R1.length.to-cut", "37 1/2"),
            // D10-dresser-panel: opening 15 1/2 by 16, grooves of 3/8: 16 1/4 by 16 3/4.
            ("F.end-panel.length.to-cut", "16 1/4"), ("F.end-panel.width.to-cut", "16 3/4"));
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Fact]
    public void PrincessDresserOf1912_WhatDrawersRunOn_ByHand()
    {
        SetPiece set = SetOut(Dresser);

        AssertValues(set,
            // The rail lies 7 1/2 + 1 1/2 + 7 = 16 up. Between front and rear rail: 19 1/2 - 2 x 3/4 = 18. Between the posts: 19 1/2 - 2 x 1 3/4 = 16.
            ("R1.up", "16"), ("A1.runner.length.to-cut", "18"), ("A2.runner.length.to-cut", "18"), ("A1.kicker.length.to-cut", "18"), ("D1.bearer.length.to-cut", "16"),
            // Front 7 - 2 x 1/16 = 6 7/8; box 6 7/8 - 1/8 = 6 3/4: nothing of a runner is taken off, it lies level with the rails.
            ("D1.front.height.to-cut", "6 7/8"), ("D1.side.width.to-cut", "6 3/4"), ("D1.box.width", "35 15/16"));
        // The runners of the upper drawer are the kickers of the lower one.
        Assert.DoesNotContain(set.Parts, p => p.Key == "A2.kicker");
        Placement runner = set.Parts.First(p => p.Key == "A1.runner").Placements[0], box = set.Parts.First(p => p.Key == "D1.side").Placements[0];
        Assert.Equal(runner.Z + runner.SizeZ, box.Z);
        Assert.True(runner.X <= box.X && box.X + box.SizeX <= runner.X + runner.SizeX);
    }

    [Fact]
    public void Railed_EveryStickBetweenOthers_TouchesBoth() => Assert.All(new[] { Dresser, Slides("bearers: rails") }, text =>
    {
        SetPiece set = SetOut(text);
        Assert.Empty(RandomPieceTests.Wrong(set));
        foreach (Part part in set.Parts.Where(p => p.Role is PartRole.Runner or PartRole.Kicker or PartRole.Bearer))
        {
            Assert.All(part.Placements, b => Assert.Equal(2, set.Parts.Where(p => p.Role is PartRole.Post or PartRole.Rail).SelectMany(p => p.Placements)
                .Count(o => (o.Y + o.SizeY == b.Y || b.Y + b.SizeY == o.Y) && Meets(o.X, o.SizeX, b.X, b.SizeX) && Meets(o.Z, o.SizeZ, b.Z, b.SizeZ))));
        }
    });

    private static bool Meets(ExactLength a, ExactLength aSize, ExactLength b, ExactLength bSize) => ExactLength.Min(a + aSize, b + bSize) > ExactLength.Max(a, b);

    [Fact]
    public void Rail_PostCutLong_LeavesTheRestToTheLastOpening() =>
        // 1/16 more of post is shared: 7 1/32 each.
        AssertValues(SetOut(Dresser, "F.post.length.as-cut: 27 1/16 in"), ("A1.height", "7 1/32"), ("A2.height", "7 1/32"));

    [Fact]
    public void Rail_BayRailCutLong_FollowsIt() =>
        AssertValues(SetOut(Dresser, "A.rail.length.as-cut: 37 17/32 in"), ("R1.length.to-cut", "37 17/32"), ("A1.width", "36 1/32"));

    [Fact]
    public void Rail_LaidFlat_TakesItsThickness()
    {
        // 15 1/2 - 3/4 = 14 3/4, halved: 7 3/8. Runners between flat rails: 19 1/2 - 2 x 1 1/2 = 16 1/2, flat as they are.
        SetPiece set = Changed("{rail: R1}", "{rail: R1, laid: flat}");
        AssertValues(set, ("A1.height", "7 3/8"), ("A2.height", "7 3/8"), ("A1.runner.length.to-cut", "16 1/2"));
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Fact]
    public void Rail_InMillimetres_ComesOutAlike()
    {
        string metric = System.Text.RegularExpressions.Regex.Replace(Dresser, @"(?<=(?:width|height|depth|toe|above|tenon|groove|thickness): )\d[\d /]*\d|(?<=above: )\d|(?<=section: )([\d /]+) x ([\d /]+)(?=\})",
            m => m.Groups[1].Success ? $"{m.Groups[1].Value} in x {m.Groups[2].Value} in" : m.Value + " in").Replace("unit: in\n", "unit: mm\ngrid: 1/32 in\n", StringComparison.Ordinal);
        AssertValues(SetOut(metric), ("A1.height", "7"), ("R1.length.to-cut", "37 1/2"), ("A1.runner.length.to-cut", "18"), ("D1.bearer.length.to-cut", "16"));
    }

    // Slides between the bare posts of a screwed frame.
    private static string Slides(string bay) => """
        setout: 1
        name: A bench with two bays
        unit: in
        materials:
          posts: {stick: pine, section: 1 1/2 x 3 1/2}
          rails: {stick: pine, section: 3/4 x 3}
          thick: {stick: pine, section: 1 3/8 x 3}
          thicker: {stick: pine, section: 1 13/32 x 3}
          ply: {panel: hardwood plywood, thickness: 1/2}
        drawers:
          slide: {sides: ply, bottom: ply, front: ply}
          run: {sides: ply, bottom: ply, front: ply, slides: runners, runner: rails}
        assembly:
          - frame: F
            of: posts
            rails: rails
            width: 60
            height: 30
            depth: 20
            toe: 4
            across:
              - {opening: A, BAY, drawers: {like: slide, down: [{drawer: D1}, {drawer: D2}]}}
              - {posts: M}
              - {opening: B, BAY, drawers: {like: slide, down: [{drawer: D3}]}}

        """.Replace("BAY", bay, StringComparison.Ordinal);

    [Fact]
    public void Bearers_BetweenPosts_StandBehindTheMiddleOfTheSlide()
    {
        SetPiece set = SetOut(Slides("bearers: rails"));

        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        // 20 - 2 x 1 1/2 = 17 between the posts; two beside each drawer.
        AssertValues(set, ("D1.bearer.length.to-cut", "17"));
        Assert.All(new[] { "D1", "D2", "D3" }, d =>
        {
            Part bearer = set.Parts.First(p => p.Key == $"{d}.bearer");
            Assert.Equal(2, bearer.Count);
            // Bay: 4 + 3 up. The middle of the bearer is that of the slide.
            Assert.Equal(ExactLength.FromInches(7) + set.Value($"{d}.slide.up"), bearer.Placements[0].Z + (bearer.Placements[0].SizeZ / 2));
        });
        AssertValues(set, ("A.width", "24 3/4"), ("D1.box.width", "23 23/32"));
    }

    [Theory]
    // Posts 3 1/2, ties of 3/4 in the middle of the inner ones: 1 3/8 on either side.
    [InlineData("bearers: thick", "")]
    [InlineData("bearers: thicker", "part.in-the-way")]
    [InlineData("slide panels: ply, bearers: rails", "frame.bay-idle")]
    [InlineData("slide panels: ply, setback: 1/4", "frame.bay-idle")]
    [InlineData("width: rest", "sharing.two-rests")]
    public void Bearers_AtTheirLimitAndAStepPast_Say(string bay, string code)
    {
        // Ties reach into the bay where the top rails lie flat.
        SetPiece set = SetOut(Slides(bay).Replace("toe: 4\n", "toe: 4\n    top rails: flat\n", StringComparison.Ordinal).Replace("{drawer: D1}, {drawer: D2}", "{drawer: D1, front: 3 1/2}, {drawer: D2, front: rest}", StringComparison.Ordinal));
        Assert.Equal(code, string.Join(' ', set.Findings.Where(f => f.Severity == Severity.Stop).Select(f => f.Code).Distinct()));
    }

    [Theory]
    [InlineData("runner: rails", "runner: posts", "runner.higher-than-rail", "A1")]
    [InlineData("[{drawer: D1}]", "[{drawer: D1}, {drawer: D3}]", "frame.nothing-to-screw-to", "A1")]
    [InlineData("{rail: R1}", "{rail: R1, setback: 1, covered: yes}", "", "")]
    [InlineData("{rail: R1}", "{rail: R1, setback: 3/4, covered: yes}", "", "")]
    [InlineData("{rail: R1}", "{rail: R1, setback: 23/32, covered: yes}", "rail.in-the-way", "R1")]
    [InlineData("{rail: R1}", "{rail: R1, setback: 1 1/32}", "rail.misses-the-posts", "R1")]
    [InlineData("panels: {of: panel, groove: 3/8, play: 0}", "panels: {of: panel, groove: 3/8, play: 0, back: yes}", "", "")]
    [InlineData("{rail: R1}", "{rail: R1, of: box}", "material.not-a-stick", "R1")]
    public void Rails_ThatCannotBe_AreOneFindingWithItsPlace(string from, string to, string code, string key)
    {
        Finding[] found = [.. Changed(from, to).Findings.Where(f => f.Severity == Severity.Stop)];
        Assert.Equal((code, key), (string.Join(' ', found.Select(f => f.Code)), string.Join(' ', found.Select(f => f.Key))));
        Assert.All(found, f => Assert.True(f.Place.IsKnown && f.Remedy.Length > 0));
    }

    [Theory]
    [InlineData("9", "")]
    [InlineData("9 1/32", "rail.no-depth")]
    public void Rails_BetweenPanels_NeedDepthForTwo(string setback, string code)
    {
        // 19 1/2 deep, two rails of 3/4.
        string text = Dresser[..Dresser.IndexOf("across:", StringComparison.Ordinal)] + "across: [{opening: A, across: [{opening: B}, {partition: P, of: front}, {opening: C, down: [{opening: E}, {rail: R1, setback: " + setback + "}, {opening: G}]}]}]\n";
        Assert.Equal(code, string.Join(' ', SetOut(text).Findings.Where(f => f.Severity == Severity.Stop).Select(f => f.Code)));
    }

    [Fact]
    public void Rail_CoveredByAFrontOnTheFace_HasNothingToSay()
    {
        SetPiece set = SetOut(Dresser.Replace("fronts: inset, ", "", StringComparison.Ordinal).Replace("{rail: R1}", "{rail: R1, setback: 1, covered: yes}", StringComparison.Ordinal));
        Assert.Equal("rail.covered-idle", Assert.Single(set.Findings, f => f.Severity == Severity.Stop).Code);
    }

    [Fact]
    public void Rail_Covered_IsBehindTheFront()
    {
        SetPiece set = Changed("{rail: R1}", "{rail: R1, setback: 1, covered: yes}");
        // 7 - 1/16 + 1 1/2 = 8 7/16; the box behind it still stands on the rail: 7 - 1/16 - 1/8 high.
        AssertValues(set, ("D1.front.height.to-cut", "8 7/16"), ("D1.side.width.to-cut", "6 13/16"), ("A1.runner.length.to-cut", "16"));
        Assert.Empty(RandomPieceTests.Wrong(set));
    }

    [Fact]
    public void Rail_InACase_IsAFindingWithItsPlace()
    {
        SetPiece set = SetOut("""
            setout: 1
            name: A case
            unit: in
            materials: {ply: {panel: hardwood plywood, thickness: 3/4}}
            assembly:
              - {case: C, of: ply, width: 30, height: 30, depth: 15, down: [{opening: A}, {rail: R}, {opening: B}]}

            """);
        Finding finding = Assert.Single(set.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(("rail.not-in-a-frame", "R"), (finding.Code, finding.Key));
        Assert.Equal(6, finding.Place.Line);
    }

    [Fact]
    public void Drawer_WithoutBearersBetweenPosts_IsSaidToBeUnguided()
    {
        Finding[] notes = [.. Changed("        bearers: rails\n", "").Findings.Where(f => f.Code == "drawer.not-guided")];
        Assert.Equal(["A1", "A2"], notes.Select(n => n.Key));
        Assert.DoesNotContain(SetOut(Dresser).Findings, f => f.Code == "drawer.not-guided");
    }

    [Theory]
    [InlineData("pocket", "butt", "36")]
    [InlineData("dowels", "dowels", "36")]
    public void Rail_BetweenPosts_IsJoinedAsTheFrame(string corners, string joint, string length)
    {
        SetPiece set = SetOut(Dresser.Replace("corners: tenon\n    tenon: 3/4", $"corners: {corners}", StringComparison.Ordinal));
        AssertValues(set, ("R1.length.to-cut", length));
        Assert.Equal([joint], set.Joints.Where(j => j.Part == "R1").Select(j => j.Kind.Word()));
        Assert.Contains(set.Steps, s => s.Parts.Contains("R1") && s.Parts.Contains("A.rail"));
    }

    [Fact]
    public void OakTableOf1912_Whole_IsAsPrinted()
    {
        // D03-oak-table: 24 in square, 2 in posts, rails squared to 22 in; the top is squared 24 x 24 (and notched round the posts, which is not set out).
        SetPiece set = SetOut("""
            setout: 1
            name: An oak table of 1912
            unit: in
            materials:
              posts: {stick: white oak, section: 2 x 2}
              rails: {stick: white oak, section: 7/8 x 4}
              top: {panel: oak board, thickness: 7/8}
            assembly:
              - {frame: F, of: posts, rails: rails, width: 24, height: 29, depth: 24, toe: 8, corners: tenon, tenon: 1, across: [{opening: A}]}
              - {top: T, of: top}

            """);
        AssertValues(set, ("A.width", "20"), ("A.rail.length.to-cut", "22"), ("F.tie.length.to-cut", "22"), ("F.tie.length.between", "20"), ("T.length.to-cut", "24"), ("T.width.to-cut", "24"));
        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
    }
}
