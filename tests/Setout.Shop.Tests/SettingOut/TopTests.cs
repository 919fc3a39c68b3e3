// Over 200 lines: layers, edging and laminate of one top, with the sum beside each.
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Tops that are made up: layers, edging, laminate. Sums by hand stand beside the figures.</summary>
public class TopTests
{
    private const string Head = """
        setout: 1
        name: Tops
        unit: in
        grid: 1/32
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
          slab: {panel: mdf, thickness: 3/4}
          thin: {stick: oak, section: 3/8 x 3/4}
          wide: {stick: oak, section: 1/2 x 1 1/2}
        assembly:
          - {case: A, of: ply, width: 60, height: 30, depth: 30}

        """;

    private static SetPiece Out(string top, params string[] readings) => SetOut($"{Head}  - {{top: T, of: slab, {top}}}\n", readings);

    private static Finding[] Told(SetPiece set) => [.. set.Findings.Where(f => f.Severity != Severity.Note)];

    private static string[] Violations(SetPiece set) => [.. SetPieceChecker.Violations(set)];

    [Fact]
    public void CardTable_PinwheelEdging_ComesToThePrintedSizes()
    {
        // D23-card-table: board 29 1/4 square, edging 3/8, each strip covers one corner: finished 30 square, strips 29 5/8. Mission Furniture, Part Three
        // (Windsor, 1912; Project Gutenberg 23666), A Folding Card Table, list and drawing.
        SetPiece set = SetOut(Head.Replace("width: 60, ", "width: 30, ", StringComparison.Ordinal) + "  - {top: T, of: slab, edging: {of: thin, corners: pinwheel, sides: [front, back, left, right]}}\n");

        AssertValues(set, ("T.length.to-cut", "29 1/4"), ("T.width.to-cut", "29 1/4"), ("T.outside.length", "30"), ("T.outside.width", "30"));
        foreach (string side in new[] { "front", "back", "left", "right" }) AssertValues(set, ($"T.edging-{side}.length.to-cut", "29 5/8"));
        Assert.Empty(Told(set));
        Assert.Empty(Violations(set));
    }

    [Fact]
    public void LibraryTable_TopFromFrameAndOverhang_ComesToThePrintedSize()
    {
        // D26-library-table-top: 37 x 25 1/2 between legs of 2, so 41 x 29 1/2 outside; overhangs 1/2 and 1/4: top 42 x 30. The same book, A Library Table.
        SetPiece set = SetOut("""
            setout: 1
            name: Library table
            unit: in
            materials:
              legs: {stick: oak, section: 2 x 2}
              board: {panel: oak board, thickness: 7/8}
            assembly:
              - {frame: F, of: legs, width: 41, height: 28, depth: 29 1/2, toe: 6, across: [{opening: A}]}
              - {top: T, of: board, overhang: {front: 1/4, back: 1/4, left: 1/2, right: 1/2}}
            """);

        AssertValues(set, ("A.rail.length.to-cut", "37"), ("F.tie.length.to-cut", "25 1/2"), ("T.length.to-cut", "42"), ("T.width.to-cut", "30"));
        Assert.Empty(Told(set));
    }

    [Theory]
    // Core 60 - 2 x 3/8 = 59 1/4 by 30 - 3/8 = 29 5/8: front, left and right have a strip, the back goes to the wall.
    [InlineData("mitred", "60", "30")] // over the points: 59 1/4 + 2 x 3/8; at the wall the strip ends square: 29 5/8 + 3/8
    [InlineData("butted", "60", "29 5/8")]
    [InlineData("ends run past", "59 1/4", "30")]
    [InlineData("pinwheel", "59 5/8", "29 5/8")] // front past the right corner; right past the back, where there is none; left past the front
    public void Edging_OfThreeSides_GoesByTheCoreAndTheCorners(string corners, string front, string right)
    {
        SetPiece set = Out($"edging: {{of: thin, corners: {corners}}}");

        AssertValues(set, ("T.length.to-cut", "59 1/4"), ("T.width.to-cut", "29 5/8"), ("T.outside.length", "60"), ("T.outside.width", "30"),
            ("T.edging-front.length.to-cut", front), ("T.edging-right.length.to-cut", right));
        Assert.DoesNotContain(set.Parts, p => p.Key == "T.edging-back");
        Assert.Empty(Told(set));
        Assert.Empty(Violations(set));
    }

    [Fact]
    public void Edging_Mitred_SaysWhatItMeasuresInside()
    {
        SetPiece set = Out("edging: {of: thin}");

        // 60 over the points, less 3/8 at each mitre; right: 30 less one.
        AssertValues(set, ("T.edging-front.inside", "59 1/4"), ("T.edging-right.inside", "29 5/8"));
    }

    [Fact]
    public void Edging_Pinwheel_StripsMeetAtEveryCornerAndNowhereOverlap()
    {
        SetPiece set = Out("overhang: {front: 1, back: 1, left: 1, right: 1}, edging: {of: thin, corners: pinwheel}");

        Assert.Empty(Violations(set));
        Placement Box(string side) => Assert.Single(set.Parts.Single(p => p.Key == $"T.edging-{side}").Placements);
        // Front from the left strip to the outside right; each covers the corner that the next one stops at.
        Assert.Equal(Box("left").X + Box("left").SizeX, Box("front").X);
        Assert.Equal(Box("right").X + Box("right").SizeX, Box("front").X + Box("front").SizeX);
        Assert.Equal(Box("front").Y + Box("front").SizeY, Box("right").Y);
        Assert.Equal(Box("right").X, Box("back").X + Box("back").SizeX);
        Assert.Equal(Box("left").X, Box("back").X);
    }

    [Fact]
    public void Edging_Raised_StandsAboveTheFaceByThat()
    {
        // A strip of 1 1/2 on a top of 3/4, 1/4 above it: 1/2 hangs below, free of the case behind an overhang of 1.
        SetPiece set = Out("overhang: {front: 1, left: 1, right: 1}, edging: {of: wide, raised: 1/4}");

        AssertValues(set, ("T.edging.below", "1/2"));
        Placement front = Assert.Single(set.Parts.Single(p => p.Key == "T.edging-front").Placements);
        Assert.Equal(Described.Of("31"), front.Z + front.SizeZ); // 30 + 3/4 + 1/4
        Assert.Empty(Told(set));
    }

    [Theory]
    [InlineData("1/2", 0)] // as much as the strip is thick: it hangs free
    [InlineData("31/64", 1)]
    public void Edging_ThatHangsBelow_WantsRoomBehindIt(string over, int findings)
    {
        SetPiece set = Out($"overhang: {{front: {over}}}, edging: {{of: wide, sides: front}}");

        Assert.Equal(Enumerable.Repeat("edging.in-the-way", findings), Told(set).Select(f => f.Code));
    }

    [Theory]
    [InlineData("7/8", 0)] // 1/8 below the top: planed flush
    [InlineData("57/64", 1)]
    public void Edging_ALittleTooWide_IsPlanedFlushAndNeedsNoRoom(string wide, int findings)
    {
        SetPiece set = SetOut(Head.Replace("3/8 x 3/4", $"3/8 x {wide}", StringComparison.Ordinal) + "  - {top: T, of: slab, edging: {of: thin}}\n");

        Assert.Equal(Enumerable.Repeat("edging.in-the-way", findings), Told(set).Select(f => f.Code));
        if (findings == 0) Assert.Empty(Violations(set));
    }

    // Every choice of sides and corners: strips meet and overlap nowhere but in mitres, and the whole comes to what was asked.
    [Theory]
    [InlineData("mitred")]
    [InlineData("butted")]
    [InlineData("ends run past")]
    [InlineData("pinwheel")]
    public void Edging_OfAnySides_FillsTheOutsideExactly(string corners)
    {
        string[] names = ["front", "back", "left", "right"];
        for (int sides = 1; sides < 16; sides++)
        {
            string[] edged = [.. names.Where((_, i) => (sides & (1 << i)) != 0)];
            SetPiece set = Out($"layers: [slab, ply], overhang: {{front: 1, back: 1 1/2, left: 2, right: 1 1/4}}, edging: {{of: wide, corners: {corners}, sides: [{string.Join(", ", edged)}]}}");
            Assert.Empty(Violations(set));
            Placement[] boxes = [.. set.Parts.Where(p => p.Key.StartsWith("T.", StringComparison.Ordinal)).SelectMany(p => p.Placements)];
            // 60 + 2 + 1 1/4 by 30 + 1 + 1 1/2.
            Assert.Equal((Described.Of("-2"), Described.Of("61 1/4"), Described.Of("-1"), Described.Of("31 1/2")),
                (boxes.Min(b => b.X), boxes.Max(b => b.X + b.SizeX), boxes.Min(b => b.Y), boxes.Max(b => b.Y + b.SizeY)));
            // Seen from above the boxes fill the rectangle: areas add up, mitres counted once.
            Rational filled = set.Parts.Where(p => p.Key != "T.layer-2" && p.Key.StartsWith("T.", StringComparison.Ordinal)).SelectMany(p => p.Placements).Aggregate(Rational.Zero, (sum, b) => sum + (b.SizeX.Inches * b.SizeY.Inches));
            int mitres = corners == "mitred" ? new[] { ("front", "left"), ("front", "right"), ("back", "left"), ("back", "right") }.Count(c => edged.Contains(c.Item1) && edged.Contains(c.Item2)) : 0;
            Assert.Equal(Rational.Of(253, 4) * Rational.Of(65, 2), filled - (Rational.Of(1, 4) * mitres));
        }
    }

    [Fact]
    public void Edging_OnASideLaminatedToo_IsOneFinding() =>
        Assert.Equal("top.edge-twice", Assert.Single(Told(Out("edging: {of: thin}, laminate: {of: HGS, backer: 0.048, edges: left}"))).Code);

    [Fact]
    public void Edging_NarrowerThanTheTop_SaysByHowMuch() =>
        Assert.Contains("3/4 in too narrow", Assert.Single(Told(Out("layers: [slab, slab], edging: {of: thin}"))).Words, StringComparison.Ordinal);

    [Fact]
    public void Layers_OfTwoSheets_AreAsThickAsTheirReadingsAndTheLowerGoesByTheUpper()
    {
        // Two sheets read at 0.74: 1.48 thick, 30 + 1.48 high. The upper came off the saw at 61 31/32: the lower follows.
        SetPiece set = Out("layers: [slab, slab], overhang: {left: 1, right: 1}", "slab.thickness: 0.74 in", "T.length.as-cut: 61 31/32 in");

        AssertValues(set, ("T.thickness", "1.48"), ("T.height", "31.48"), ("T.length.to-cut", "62"), ("T.layer-2.length.to-cut", "61 31/32"));
        Assert.Empty(Told(set));
        Assert.Empty(Violations(set));
    }

    [Fact]
    public void Layers_WithSeams_ComeToTheLength()
    {
        // 62 long: seams of layer 1 at 24 and 48, of layer 2 at 36: pieces 24, 24, 14 and 36, 26.
        SetPiece set = Out("layers: [{seams: [24, 48]}, {of: ply, seams: 36}], overhang: {left: 1, right: 1}");

        AssertValues(set, ("T.layer-1.piece-1.length.to-cut", "24"), ("T.layer-1.piece-2.length.to-cut", "24"), ("T.layer-1.piece-3.length.to-cut", "14"),
            ("T.layer-2.piece-1.length.to-cut", "36"), ("T.layer-2.piece-2.length.to-cut", "26"), ("T.layer-1.seam-2", "48"));
        Assert.Equal("ply", set.Parts.Single(p => p.Key == "T.layer-2.piece-2").Material);
        Assert.Empty(Told(set));
        Assert.Empty(Violations(set));
    }

    [Theory]
    [InlineData("30", 0)] // 6 in from 24 and more: as far apart as is usual
    [InlineData("29 31/32", 1)]
    [InlineData("24", 1)]
    public void Seams_OfTwoLayers_AreFarEnoughApart(string second, int findings)
    {
        SetPiece set = Out($"layers: [{{seams: 24}}, {{seams: [{second}]}}]");

        Assert.Equal(Enumerable.Repeat(("top.seams-meet", Severity.Warn), findings), Told(set).Select(f => (f.Code, f.Severity)));
    }

    [Theory]
    [InlineData("[60]")]
    [InlineData("[30, 20]")]
    public void Seam_OutsideItsLayer_IsOneFinding(string seams) => Assert.Equal("top.seam-outside", Assert.Single(Told(Out($"layers: [{{seams: {seams}}}]"))).Code);

    [Fact]
    public void Laminate_OnFaceAndEdges_CountsInThicknessAndSizes()
    {
        // Core 3/4 with 0.048 on the face and 0.020 below: 0.818. Ends laminated: 60 - 2 x 0.048 = 59.904, to the grid of 1/32: 59 29/32 (59.90625),
        // so 60.00225 over all; face to cut: that and 1/4 at each edge.
        SetPiece set = Out("laminate: {of: HGS, backer: 0.020, edges: [left, right]}");

        AssertValues(set, ("T.thickness", "0.818"), ("T.height", "30.818"), ("T.length.to-cut", "59 29/32"), ("T.width.to-cut", "30"), ("T.outside.length", "60.00225"),
            ("T.laminate.length", "60.50225"), ("T.laminate.width", "30 1/2"), ("T.laminate.strip", "1 1/4"));
        // Bonded: two faces of 59.90625 x 30 and two ends of 30 x 3/4: 3639.375 sq in; twice that is 50.55 sq ft.
        Assert.Equal((51, "square foot"), set.Hardware.Where(h => h.Name == "Contact adhesive, area to coat").Select(h => (h.Count, h.Unit)).Single());
        Assert.Empty(Told(set));
        Placement core = Assert.Single(set.Parts.Single(p => p.Key == "T").Placements);
        Assert.Equal((Described.Of("0.048"), Described.Of("30.02")), (core.X, core.Z));
        string[] steps = [.. set.Steps.Where(s => s.Caution == "cement" || s.Words.Contains("underside of the top", StringComparison.Ordinal)).Select(s => s.Words)];
        Assert.StartsWith("Laminate the edges", steps[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Laminate_InMillimetres_AgreesWithInches()
    {
        SetPiece inch = Out("laminate: {of: HGS, faces: both, edges: front}"), metric = SetOut((Head + "  - {top: T, of: slab, laminate: {of: HGS, faces: both, edges: front}}\n")
            .Replace("unit: in", "unit: mm", StringComparison.Ordinal).Replace("grid: 1/32", "grid: 1/32 in", StringComparison.Ordinal).Replace("thickness: 3/4", "thickness: 3/4 in", StringComparison.Ordinal)
            .Replace("width: 60, height: 30, depth: 30", "width: 60 in, height: 30 in, depth: 30 in", StringComparison.Ordinal));

        foreach (string key in new[] { "T.length.to-cut", "T.width.to-cut", "T.thickness", "T.outside.width", "T.laminate.length", "T.laminate.width" }) Assert.Equal(inch.Value(key), metric.Value(key));
        Assert.Equal(Described.Of("0.846"), inch.Value("T.thickness"));
    }

    [Fact]
    public void Laminate_OnOneFaceOnly_IsUnbalanced()
    {
        Finding finding = Assert.Single(Told(Out("laminate: {of: HGS}")));

        Assert.Equal(("laminate.unbalanced", Severity.Warn), (finding.Code, finding.Severity));
        Assert.Contains("UFGS", finding.Remedy, StringComparison.Ordinal);
        Assert.Empty(Told(Out("laminate: {of: HGS, faces: both}")));
    }

    [Theory]
    [InlineData("0.048", 0)]
    [InlineData("0.047", 1)]
    public void Laminate_OnAThinnerBacker_IsANote(string backer, int findings) =>
        Assert.Equal(findings, Out($"laminate: {{of: HGS, backer: {backer}}}").Findings.Count(f => f is { Code: "laminate.thin-backer", Severity: Severity.Note }));

    [Fact]
    public void Laminate_OnBothFacesWithABacker_Warns() => Assert.Equal("laminate.two-undersides", Assert.Single(Told(Out("laminate: {of: HGS, faces: both, backer: 0.048}"))).Code);

    [Fact]
    public void Layers_OfABandedSheet_SayThatTheBandIsLeftOff()
    {
        string text = Head.Replace("slab: {panel: mdf, thickness: 3/4}", "slab: {panel: mdf, thickness: 3/4, edges: banded}", StringComparison.Ordinal) + "  - {top: T, of: slab, layers: [slab, slab]}\n";
        SetPiece set = SetOut(text);

        Assert.Single(set.Findings, f => f.Code == "top.layers-edges");
        AssertValues(set, ("T.length.to-cut", "60"));
    }

    [Fact]
    public void Laminate_OfNoGradeWithoutThickness_Stops() => Assert.Equal(("laminate.unknown", Severity.Stop), Told(Out("laminate: {of: red}")).Select(f => (f.Code, f.Severity)).Single());

    [Fact]
    public void Laminate_ReadThicker_RaisesTheTopAndTakesItOffTheCore()
    {
        SetPiece before = Out("laminate: {of: HGS, faces: both, edges: front}"), after = Out("laminate: {of: HGS, faces: both, edges: front}", "T.laminate: 0.08 in");

        // 0.032 more on two faces; the core goes from 29.952 (29 15/16 on the grid) to 29.92 (29 29/32).
        Assert.Equal(Described.Of("0.064"), after.Value("T.height") - before.Value("T.height"));
        AssertValues(before, ("T.width.to-cut", "29 15/16"));
        AssertValues(after, ("T.width.to-cut", "29 29/32"));
    }

    [Theory]
    [InlineData("6", 0)] // eight times 3/4
    [InlineData("6 1/64", 1)]
    public void Overhang_BeyondWhatATopCarries_Warns(string over, int findings) =>
        Assert.Equal(Enumerable.Repeat("top.overhang-unsupported", findings), Told(Out($"overhang: {{right: {over}}}")).Select(f => f.Code));

    [Fact]
    public void Overhang_OfATopTwiceAsThick_MayBeTwiceAsFar() => Assert.Empty(Told(Out("layers: [slab, slab], overhang: {right: 12}")));

    [Fact]
    public void Case_OnALayeredTop_StandsOnItsFace()
    {
        SetPiece set = SetOut(Head + "  - {top: T, of: slab, layers: [slab, slab]}\n  - {case: H, of: ply, width: 60, height: 12, depth: 12, on: T}\n");

        Assert.Equal(Described.Of("31 1/2"), set.Parts.First(p => p.Key == "H.side").Placements[0].Z);
    }
}
