using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>A face frame: its members, the openings at the face, what slides are screwed to behind it.</summary>
public class FaceFrameTests
{
    private const string Divided = "across: [{opening: A, width: 18, drawers: {like: box, down: [{drawer: D1}, {drawer: D2}]}}, {partition: P}, {opening: B, down: [{opening: B1}, {deck: K}, {opening: B2, height: 8}]}]";

    private static SetPiece Out(string frame, string content = Divided, params string[] readings) => SetOut($$"""
        setout: 1
        name: Case with a face frame
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
          thin: {panel: hardwood plywood, thickness: 1/2, grain: free}
          bottoms: {panel: hardwood plywood, thickness: 1/4, grain: free}
          oak: {stick: oak, section: 3/4 x 1 1/2}
          wide: {stick: oak, section: 3/4 x 2}
          narrow: {stick: oak, section: 3/4 x 3/4}
          scant: {stick: oak, section: 11/16 x 23/32}
          thick: {stick: pine, section: 1 1/2 x 2}
          slim: {stick: oak, section: 5/8 x 1 1/2}
        drawers:
          box: {sides: thin, bottom: bottoms, front: ply}
        assembly:
          - {case: C, of: ply, width: 40, height: 30, depth: 20, face frame: { {{frame}} }, {{content}}}

        """, readings);

    private static Placement Box(SetPiece set, string part, int index = 0) => set.Parts.Single(p => p.Key == part).Placements[index];

    private static string[] Codes(SetPiece set) => [.. set.Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Code)];

    [Fact]
    public void Frame_TenonedAndDivided_AsWorkedByHand()
    {
        SetPiece set = Out("of: oak, stiles: wide, joint: tenon, packing: thick");
        // Sides 20 - 3/4 = 19 1/4 wide. Tenon: 1, but not past the middle of 1 1/2 less 1/16: 11/16. Rails 40 - 2 x 2 + 2 x 11/16 = 37 3/8.
        AssertValues(set, ("C.side.width.to-cut", "19 1/4"), ("C.frame.height.to-cut", "30"), ("C.frame.tenon.to-cut", "11/16"), ("C.frame.rail.to-cut", "37 3/8"));
        // Mullion before P: inside 28 1/2 high, rails stand 1 1/2 - 3/4 = 3/4 in above and below: 27 clear; + 1 3/8 = 28 3/8. P's left face is 18 3/4 from the outside, so the mullion begins 3/8 before it.
        AssertValues(set, ("P.frame.between", "27"), ("P.frame.length.to-cut", "28 3/8"), ("P.frame.in", "3/8"));
        Assert.Equal(Described.Of("18 3/8"), Box(set, "P.mullion").X);
        // B: 38 1/2 - 18 - 3/4 = 19 3/4; less 3/8 and less 2 - 3/4 = 1 1/4: 18 1/8 between; the rail before K + 1 3/8 = 19 1/2.
        AssertValues(set, ("K.frame.between", "18 1/8"), ("K.frame.length.to-cut", "19 1/2"));
        // K's lower face is 8 above the bottom: in the stile 3/4 + 8 - 3/8 = 8 3/8 to the rail and 1/4 of shoulder, 8 5/8; in the mullion, which begins 3/4 above the bottom less 11/16: 11/16 - 3/4 + 8 - 3/8 + 1/4 = 7 13/16.
        AssertValues(set, ("K.frame.mortise-from-2", "8 5/8"), ("K.frame.mortise-from", "7 13/16"));
        Assert.Empty(Codes(set));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Drawers_BehindTheFrame_RunInWhatIsClearAtTheFace()
    {
        SetPiece set = Out("of: oak, packing: thick");
        // A: 18 less 3/4 at the stile and 3/8 at the mullion = 16 7/8; boxes 16 7/8 - 1 - 1/32 = 15 27/32. Height 28 1/2 - 2 x 3/4 = 27.
        AssertValues(set, ("A.frame-clear", "16 7/8"), ("D1.box.width", "15 27/32"), ("A.frame-height", "27"), ("A.packing-left.thickness", "3/4"), ("A.packing-right.thickness", "3/8"));
        // Depth from the face 20: slides 18. Fronts 1/2 over the frame (common practice): 16 7/8 + 1.
        AssertValues(set, ("A.frame-depth", "20"), ("D1.slide.length", "18"), ("D1.front.width.to-cut", "17 7/8"));
        // The fronts lie on the frame; packing begins behind it, flush with its edge.
        Assert.Equal(ExactLength.Zero, Box(set, "D1.front").Y + Box(set, "D1.front").SizeY);
        Assert.Equal((Described.Of("3/4"), Described.Of("3/4"), Described.Of("3/4")), (Box(set, "A.packing-left").X, Box(set, "A.packing-left").SizeX, Box(set, "A.packing-left").Y));
        int Step(string part) => set.Steps.Select((s, i) => (s, i)).Single(s => s.s.Parts.Contains(part)).i;
        Assert.True(Step("P") < Step("C.stile") && Step("K") < Step("C.stile") && Step("C.stile") < Step("A.packing-left"));
        // The second upright ends where the slide does: 18 in and 2 mm behind the face.
        Assert.Equal(Described.Of("18 in") + Described.Of("2 mm"), Box(set, "A.packing-left", 1).Y + Box(set, "A.packing-left", 1).SizeY);
        Assert.Empty(Codes(set));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Frame_SticksReadWider_NarrowTheOpeningAndThickenThePacking() =>
        AssertValues(Out("of: oak, packing: thick", Divided, "oak.width: 1 17/32 in"), ("A.frame-width", "16 53/64"), ("A.packing-left.thickness", "25/32"));

    [Fact]
    public void Frame_OverhangAndToe_StandsOutAndBeginsAboveTheToes()
    {
        SetPiece set = Out("of: oak, joint: dowels, overhang: 1/4", "toe: {}");
        // Rails 40 + 1/2 - 3 = 37 1/2; stiles 30 - 4 = 26.
        AssertValues(set, ("C.frame.rail.to-cut", "37 1/2"), ("C.frame.height.to-cut", "26"));
        Assert.Equal((Described.Of("-1/4"), Described.Of("4")), (Box(set, "C.stile").X, Box(set, "C.stile").Z));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Theory]
    [InlineData("of: narrow, packing: thick", new string[0])]
    [InlineData("of: scant, packing: thick", new[] { "frame.narrower-than-case" })]
    [InlineData("of: oak, mullions: slim, packing: thick", new[] { "frame.not-flush" })]
    [InlineData("of: oak", new string[0])]
    [InlineData("of: oak, stiles: wide", new[] { "packing.too-thin" })]
    [InlineData("of: oak, packing: no", new[] { "slide.nothing-behind" })]
    [InlineData("of: oak, joint: tenon, tenon: 11/16", new string[0])]
    [InlineData("of: oak, joint: tenon, tenon: 23/32", new[] { "frame.tenon-long" })]
    [InlineData("of: oak, joint: tenon, tenon: 1 1/2", new[] { "frame.tenon-through" })]
    public void Frame_AtItsLimitAndPastIt_IsSaid(string words, string[] codes)
    {
        SetPiece set = Out(words);
        Assert.Equal(codes, Codes(set));
        Assert.All(set.Findings, f => Assert.True(f.Place.IsKnown));
    }

    [Fact]
    public void Frame_OverhangAgainstANeighbour_CannotBe()
    {
        SetPiece set = Out("of: oak", "across: [{opening: A}]} \n  - {case: D, of: ply, width: 20, height: 30, depth: 20, beside: C, face frame: {of: oak, overhang: 1/8}");
        Assert.Equal(["frame.overhang-meets"], Codes(set));
    }
}
