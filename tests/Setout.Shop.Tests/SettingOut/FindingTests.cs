// Over 200 lines: a table of everything that can be wrong with a piece, one short test each.
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Each thing that can be wrong with a piece is one clear finding with its place and a remedy, and nothing after it.</summary>
public class FindingTests
{
    private const string L1 = "{drawer: L1, front: 4}";

    /// <summary>Sets out a sample with one passage changed and gives its only finding, sheets not yet read aside.</summary>
    private static Finding Only(string sample, string from, string to) => OnlyOf(Changed(sample, from, to));

    private static Finding OnlyOf(string text)
    {
        Finding[] findings = [.. SetOut(text).Findings.Where(f => f.Code != "material.not-read")];
        return Assert.Single(findings);
    }

    /// <summary>The finding stands where the passage begins in the changed text, and says something with a remedy.</summary>
    private static void AssertFinding(Finding finding, string code, string text, string passage, Severity severity = Severity.Stop)
    {
        Assert.Equal((code, severity), (finding.Code, finding.Severity));
        int at = text.IndexOf(passage, StringComparison.Ordinal);
        Assert.True(at >= 0, passage);
        int line = text[..at].Count(c => c == '\n') + 1, column = at - text.LastIndexOf('\n', at) + (text[at] == '\n' ? 1 : 0);
        Assert.Equal((line, column), (finding.Place.Line, finding.Place.Column));
        Assert.EndsWith(".", finding.Words, StringComparison.Ordinal);
        Assert.NotEmpty(finding.Remedy);
    }

    private static Finding AssertOnly(string code, string sample, string from, string to, string passage, Severity severity = Severity.Stop)
    {
        Finding finding = Only(sample, from, to);
        AssertFinding(finding, code, Changed(sample, from, to), passage, severity);
        return finding;
    }

    [Fact]
    public void Drawer_WiderThanItsOpening_SaysTheMostItMayBe()
    {
        // Opening 19 9/16, two slides 1 in: 18 9/16 at most.
        Finding finding = AssertOnly("drawer.too-wide", Bench, L1, "{drawer: L1, front: 4, box width: 20}", "20}");
        Assert.Contains("wider than its opening of 19 9/16 in", finding.Words, StringComparison.Ordinal);
        Assert.Contains("18 9/16 in", finding.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Drawer_TooWideWithItsSlides_SaysByHowMuch() =>
        // 19 + 1 = 20, 7/16 more than 19 9/16.
        Assert.Contains("7/16 in too wide", AssertOnly("drawer.too-wide", Bench, L1, "{drawer: L1, front: 4, box width: 19}", "19}").Words, StringComparison.Ordinal);

    [Fact]
    public void Drawer_TooNarrowForItsSlides_Warns() =>
        AssertOnly("drawer.too-narrow", Bench, L1, "{drawer: L1, front: 4, box width: 18 7/16}", "18 7/16}", Severity.Warn);

    [Fact]
    public void Drawer_OpeningNoWiderThanTheSlides_IsOneFinding() =>
        AssertOnly("drawer.no-width", Cabinet, "width: 20", "width: 34", "G1}\n", Severity.Stop, count: 2);

    private static void AssertOnly(string code, string sample, string from, string to, string passage, Severity severity, int count)
    {
        // As AssertOnly, where each drawer of the bank has the fault of its own.
        string text = Changed(sample, from, to);
        Finding[] findings = [.. SetOut(text).Findings.Where(f => f.Code != "material.not-read")];
        Assert.Equal(Enumerable.Repeat(code, count), findings.Select(f => f.Code));
        AssertFinding(findings[0], code, text, passage, severity);
    }

    [Fact]
    public void Drawer_TooTall_IsOneFinding() => AssertOnly("drawer.too-tall", Bench, L1, "{drawer: L1, front: 4, box height: 3 5/8}", "3 5/8}");

    [Fact]
    public void Drawer_WithHardlyAnyRoomAbove_WarnsAndStaysInsideItsOpening()
    {
        // 3 3/8 in a space of 3 1/2: 1/16 above and below.
        string text = Changed(Bench, L1, "{drawer: L1, front: 4, box height: 3 3/8}");
        AssertFinding(OnlyOf(text), "drawer.tight-height", text, "3 3/8}", Severity.Warn);
        SetPiece set = SetOut(text);
        Assert.Empty(SetPieceChecker.Violations(set));
        Placement side = set.Parts.Single(p => p.Key == "L1.side").Placements[0], room = set.Openings.Single(o => o.Key == "L").Space;
        Assert.Equal(Described.Of("1/16"), room.Z + room.SizeZ - side.Z - side.SizeZ);
    }

    [Fact]
    public void Drawer_FrontTooLowForABox_IsOneFinding() => AssertOnly("drawer.no-height", Bench, L1, "{drawer: L1, front: 0.75}", "0.75}");

    [Fact]
    public void Drawer_BoxLowerThanASlide_Warns() => AssertOnly("drawer.too-low", Bench, L1, "{drawer: L1, front: 2 1/2}", "L1, front: 2 1/2", Severity.Warn);

    [Fact]
    public void Drawers_KindUnknown_NamesTheKindsThereAre() =>
        Assert.Contains("small", AssertOnly("drawer.unknown-kind", Cabinet, "like: small", "like: smal", "smal\n").Remedy, StringComparison.Ordinal);

    [Fact]
    public void Drawers_BottomOfSticks_IsOneFindingForAllOfThem() =>
        Assert.Contains("bottoms", AssertOnly("material.not-a-panel", Bench, "bottom: bottoms", "bottom: studs", "studs\n    front").Remedy, StringComparison.Ordinal);

    [Fact]
    public void Drawers_SidesOfNothingKnown_IsOneFindingForAllOfThem() =>
        Assert.Contains("not among the materials", AssertOnly("material.not-a-panel", Bench, "sides: boxes", "sides: boxwood", "boxwood").Words, StringComparison.Ordinal);

    [Fact]
    public void Drawers_FrontsOfSticks_IsOneFindingForBothBanks() => AssertOnly("material.not-a-panel", Bench, "front: carcase", "front: studs", "studs\n\nassembly");

    [Fact]
    public void Frame_OfSheetGoods_IsOneFinding() =>
        Assert.Contains("studs", AssertOnly("material.not-a-stick", Bench, "of: studs", "of: carcase", "carcase\n    width: 78").Remedy, StringComparison.Ordinal);

    [Fact]
    public void Case_OfSticks_IsOneFinding()
    {
        string text = Changed(Chest, "of: birch18\n    width", "of: pine\n    width").Replace("drawers:\n  shallow", "  pine: {lumber: 2x4}\n\ndrawers:\n  shallow", StringComparison.Ordinal);
        AssertFinding(OnlyOf(text), "material.not-a-panel", text, "pine\n    width");
    }

    [Fact]
    public void Sharing_TwoRests_NamesTheSecond() => AssertOnly("sharing.two-rests", Bench, "{drawer: L3, front: 6}", "{drawer: L3, front: rest}", "rest}\n      - posts: M1");

    [Fact]
    public void Sharing_RestAmongEqualShares_NamesTheRest() => AssertOnly("sharing.two-rests", Bench, "{drawer: L3, front: 6}", "{drawer: L3}", "rest}\n      - posts: M1");

    [Fact]
    public void Sharing_SizesThatDoNotAddUp_SaysByHowMuch()
    {
        // 4 + 5 + 6 + 9 7/8 and three gaps fill the 25 1/4 that the fronts cover; 9 is 7/8 less.
        Finding finding = AssertOnly("sharing.does-not-add-up", Bench, "{drawer: L4, front: rest}", "{drawer: L4, front: 9}", "9}");
        Assert.Contains("add up to 24 3/8 in, 7/8 in less than the whole of 25 1/4 in", finding.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Sharing_SizesThatAddUp_NeedNoRest()
    {
        SetPiece set = SetOut(Changed(Bench, "{drawer: L4, front: rest}", "{drawer: L4, front: 9 7/8}"));
        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        Assert.Equal(Of(Bench).Worked.Values.Values.Select(v => (v.Quantity.Key, v.Value)).Order(), set.Worked.Values.Values.Select(v => (v.Quantity.Key, v.Value)).Order());
    }

    [Fact]
    public void Sharing_AllGivenOffTheGrid_ClosesExactly()
    {
        // 964.5 less a partition of 17.7: two openings of 473.4 fill it, though neither lies on the half millimetre.
        string text = Text(Chest);
        int at = text.IndexOf("    drawers:\n      like", StringComparison.Ordinal), end = text.IndexOf("  - top: T", StringComparison.Ordinal);
        text = text[..at] + "    across:\n      - {opening: A, width: 473.4}\n      - partition: P\n      - {opening: B, width: 473.4}\n" + text[end..];
        SetPiece set = SetOut(text);
        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        Assert.Empty(SetPieceChecker.Violations(set));
        Assert.Equal(Described.Of("946.8 mm"), set.Value("A.width") + set.Value("B.width"));
    }

    [Fact]
    public void Sharing_AllGivenAndTheWoodReadAHairOff_DoesNotStop()
    {
        string text = Changed(Bench, "{drawer: L4, front: rest}", "{drawer: L4, front: 9 7/8}");
        Assert.False(SetOut(text, "studs.width: 3 31/64 in").IsStopped);
        Assert.True(SetOut(text, "studs.width: 3 7/16 in").IsStopped);
    }

    [Fact]
    public void Sharing_TooMuchGiven_IsOneFindingAndNothingAfterIt()
    {
        // 30 + 6 + 5 and three gaps: 41 3/8 of 25 1/4, 16 1/8 too much.
        Finding finding = AssertOnly("sharing.too-much", Bench, L1, "{drawer: L1, front: 30}", "rest}\n      - posts: M1");
        Assert.Contains("16 1/8 in too much", finding.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Sharing_BaysWiderThanTheFrame_IsOneFinding() => AssertOnly("sharing.too-much", Bench, "width: 78", "width: 50", "rest\n      - posts: M2");

    [Fact]
    public void Frame_DrawersBetweenBarePosts_AreOneFinding() =>
        Assert.Contains("slide panels", AssertOnly("frame.nothing-to-screw-to", Bench, "        slide panels: carcase\n        drawers:\n          like: bench\n          down:                        #",
            "        drawers:\n          like: bench\n          down:                        #", "L\n        width: 21").Remedy, StringComparison.Ordinal);

    [Fact]
    public void Frame_DrawersDeeperInBarePosts_AreFoundAsWell()
    {
        string text = Changed(Bench, "      - opening: K\n        width: rest\n",
            "      - opening: K\n        width: rest\n        down:\n          - opening: K1\n            drawers: {like: bench, down: [{drawer: Q1}]}\n          - {deck: KD, of: carcase}\n          - opening: K2\n");
        AssertFinding(OnlyOf(text), "frame.nothing-to-screw-to", text, "K1\n");
    }

    [Fact]
    public void Slide_GivenTooLong_IsOneFindingForAllDrawers() => AssertOnly("slide.too-long", Chest, "    gap: 3\n", "    gap: 3\n    slide: 750\n", "750\n");

    [Fact]
    public void Slide_NoneFits_IsOneFindingForTheWholeBank() =>
        Assert.Contains("the shortest is 10 in", AssertOnly("slide.none-fits", Cabinet, "depth: 13", "depth: 10", "B2\n").Words, StringComparison.Ordinal);

    [Fact]
    public void Top_WithNothingUnderIt_IsOneFinding()
    {
        string text = Text(Bench);
        int from = text.IndexOf("  - frame: F", StringComparison.Ordinal), to = text.IndexOf("  - top: T", StringComparison.Ordinal);
        text = text[..from] + text[to..];
        AssertFinding(OnlyOf(text), "top.nothing-under-it", text, "T\n    name: bench top");
    }

    [Theory]
    [InlineData("bottoms: {panel: hardwood plywood, label: 1/4}", "bottoms: {panel: hardwood plywood, label: 3/16}", "bottoms: {panel")]
    [InlineData("boxes:   {panel: hardwood plywood, label: 1/2}", "boxes:   {panel: hardwood plywood, label: 7/16}", "boxes:   {panel")]
    [InlineData("carcase: {panel: hardwood plywood, label: 3/4}", "carcase: {panel: hardwood plywood, label: 7/8}", "carcase: {panel")]
    [InlineData("slab:    {panel: mdf, label: 3/4}", "slab:    {panel: mdf, label: 11/16}", "slab:    {panel")]
    public void Material_LabelNotOnRecord_NamesTheLabelsThereAre(string from, string to, string passage) =>
        Assert.Contains("3/4", AssertOnly("material.unknown", Bench, from, to, passage).Remedy, StringComparison.Ordinal);

    [Fact]
    public void Material_LabelOfWideBottomsNotOnRecord_IsTheOnlyFinding() =>
        AssertOnly("material.unknown", Chest, "birch12: {panel: birch plywood, label: 12 mm}", "birch12: {panel: birch plywood, label: 13 mm}", "birch12: {panel");

    [Fact]
    public void Drawers_ThinBottomsInAWideChest_AreOneNote() =>
        AssertOnly("drawer.thin-bottom", Chest, "birch12: {panel: birch plywood, label: 12 mm}", "birch12: {panel: birch plywood, label: 6.5 mm}", "birch12\n    front", Severity.Note);

    [Fact]
    public void Fronts_OverlayWiderThanTheSharedEdge_AreOneFinding()
    {
        // Two banks with a deck of 23/32 between them, each 1/2 over it: the fronts would overlap by 9/32.
        string text = Changed(Cabinet, "    front: birch\n", "    front: birch\n    overlay: 1/2\n")
            .Replace("            shelves: {setback: 1/4, down: [B3]}\n", "            drawers: {like: small, down: [{drawer: H1}, {drawer: H2}]}\n", StringComparison.Ordinal);
        Finding finding = OnlyOf(text);
        AssertFinding(finding, "front.overlap", text, "G1}\n");
        Assert.Contains("9/32 in", finding.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Shelves_TooManyForTheHeight_AreOneFinding()
    {
        string many = string.Join(", ", Enumerable.Range(1, 43).Select(i => $"A{i}"));
        Assert.Equal("sharing.too-much", Only(Cabinet, "down: [A1, A2, A3]", $"down: [{many}]").Code);
    }
}
