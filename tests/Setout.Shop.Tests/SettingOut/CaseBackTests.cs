using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Backs that are let in, and cases that hang by a rail.</summary>
public class CaseBackTests
{
    private static SetPiece Out(string rest, params string[] readings) => SetOut($$"""
        setout: 1
        name: Case with a back
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
          thin: {panel: hardwood plywood, thickness: 1/4, grain: free}
          half: {panel: hardwood plywood, thickness: 1/2, grain: free}
          almost: {panel: hardwood plywood, thickness: 13/32, grain: free}
          strips: {stick: beech, section: 3/4 x 3}
        assembly:
          - {case: C, of: ply, width: 30, height: 24, depth: 12, {{rest}}}

        """, readings);

    private static string[] Codes(SetPiece set) => [.. set.Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Code)];

    [Fact]
    public void Back_AppliedInEitherForm_IsTheSame()
    {
        SetPiece word = Out("back: thin"), said = Out("back: {of: thin, fit: applied}");
        Assert.Equal(word.Worked.Order.Select(k => (k, word.Worked[k])), said.Worked.Order.Select(k => (k, said.Worked[k])));
        Assert.Equal(word.Steps.Select(s => s.Words), said.Steps.Select(s => s.Words));
    }

    [Fact]
    public void Back_Grooved_AsWorkedByHand()
    {
        SetPiece set = Out("back: {of: thin, fit: grooved}, shelves: {down: [S]}");
        // Groove: the lesser of 1/4 (supplier page) and half of 3/4. Across 28 1/2 + 2 x 1/4 - 1/16 = 28 15/16; along 22 1/2 + 1/2 - 1/16 = 22 15/16.
        AssertValues(set, ("C.back.depth.to-cut", "1/4"), ("C.back.width.to-cut", "28 15/16"), ("C.back.length.to-cut", "22 15/16"), ("C.side.width.to-cut", "12"), ("C.deck.width.to-cut", "12"));
        // Clear depth 12 - 1/4 - 1/2 (common practice) = 11 1/4: the shelf ends in front of it.
        AssertValues(set, ("C.opening.depth", "11 1/4"), ("S.width.to-cut", "11 1/4"), ("C.back.play-across", "1/16"));
        Assert.Equal(2, set.Machinings.Length);
        Assert.Equal(Stage.Carcase, set.Steps.Single(s => s.Parts.Contains("C.back")).Stage);
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Back_Rabbeted_LiesOverTopAndBottom()
    {
        SetPiece set = Out("back: {of: thin, fit: rabbeted}, corners: rabbet");
        // Rabbet half of 3/4 = 3/8 deep, 1/4 wide. Top and bottom 12 - 1/4; the back 28 1/2 + 3/4 - 1/16 = 29 3/16 by the whole height.
        AssertValues(set, ("C.back.depth.to-cut", "3/8"), ("C.back.rabbet-width", "1/4"), ("C.deck.width.to-cut", "11 3/4"), ("C.side.width.to-cut", "12"), ("C.back.width.to-cut", "29 3/16"), ("C.back.length.to-cut", "24"), ("C.opening.depth", "11 3/4"));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Back_Inset_StandsBetweenAllFour()
    {
        SetPiece set = Out("back: {of: half, fit: inset, inset: 3/8, play: 1/32}");
        AssertValues(set, ("C.back.width.to-cut", "28 15/32"), ("C.back.length.to-cut", "22 15/32"), ("C.opening.depth", "11 1/8"));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Back_ReadThicker_TakesDepthFromWhatIsBeforeIt() =>
        AssertValues(Out("back: {of: thin, fit: grooved}, shelves: {down: [S]}", "thin.thickness: 9/32 in"), ("S.width.to-cut", "11 7/32"), ("C.back.groove-width", "9/32"));

    [Fact]
    public void HangingRail_StandsBehindTheBackUnderTheTop()
    {
        SetPiece set = Out("hung: yes, back: {of: thin, fit: grooved}, hanging rail: {of: ply}");
        // The groove moves in by the rail: clear depth 12 - 3/4 - 1/4 = 11.
        AssertValues(set, ("C.back.inset", "3/4"), ("C.opening.depth", "11"), ("C.rail.length.to-cut", "28 1/2"), ("C.rail.width.to-cut", "4"));
        Placement rail = set.Parts.Single(p => p.Key == "C.rail").Placements[0];
        Assert.Equal((Described.Of("11 1/4"), Described.Of("19 1/4")), (rail.Y, rail.Z));
        Assert.Empty(Codes(set));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Theory]
    [InlineData("back: {of: thin, fit: grooved, depth: 1/2}", new string[0])]
    [InlineData("back: {of: thin, fit: grooved, depth: 17/32}", new[] { "joint.too-deep" })]
    [InlineData("back: {of: thin, fit: rabbeted, depth: 3/4}", new[] { "joint.through" })]
    [InlineData("back: {of: thin, fit: applied, inset: 1/4}", new[] { "back.needless-size" })]
    [InlineData("back: {of: half, fit: inset, depth: 1/4}", new[] { "back.needless-size" })]
    [InlineData("back: {of: almost, fit: inset}", new[] { "case.back-edge-too-thin" })]
    [InlineData("back: {of: thin, fit: grooved, inset: 23/32}, hanging rail: {of: strips}", new[] { "case.no-room-for-rail" })]
    [InlineData("back: {of: thin, fit: grooved, inset: 3/4}, hanging rail: {of: strips}", new string[0])]
    [InlineData("back: thin, hanging rail: {of: strips}", new[] { "case.no-room-for-rail" })]
    [InlineData("hanging rail: {of: strips, width: 4}", new[] { "strip.section-decides" })]
    [InlineData("hung: yes, hanging rail: {of: strips}", new string[0])]
    [InlineData("hung: yes, back: {of: thin, fit: grooved}", new[] { "case.back-cannot-carry" })]
    [InlineData("hung: yes, back: half, toe: {}", new[] { "case.hangs-and-stands" })]
    public void Back_AtItsLimitAndPastIt_IsOneFinding(string words, string[] codes)
    {
        SetPiece set = Out(words);
        Assert.Equal(codes, Codes(set));
        Assert.All(set.Findings, f => Assert.True(f.Place.IsKnown));
    }
}
