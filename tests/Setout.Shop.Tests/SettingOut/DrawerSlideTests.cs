using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.DrawerPiece;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What drawers run on: slides beside the box, under it, of another class by their leaflet, and wooden runners. Opening 16 x 10 x 21.</summary>
public class DrawerSlideTests
{
    [Fact]
    public void Under_Box_AsWorkedByHand()
    {
        // Inside 406.4 - 42 = 364.4 mm (page of a drawer-box supplier: 21 mm a side); outside + 2 x 12.7 = 389.8. Ends 364.4 mm = 918.2/64, to 918/64 = 14 11/32.
        SetPiece set = Sound("slides: under", "{drawer: D}");
        AssertValues(set, ("D.box.width", "389.8 mm"), ("D.end.length", "364.4 mm"), ("D.end.length.to-cut", "14 11/32"));
        // 533.4 - 2 - 12.7 = 518.7 mm usable: the 20 in slide (508 mm).
        AssertValues(set, ("D.slide.usable", "518.7 mm"), ("D.side.length.to-cut", "20"));
        // An inch lower than what lies behind the front (two supplier pages, the greater), the bottom 1/2 in up.
        AssertValues(set, ("D.groove.up", "1/2"));
        Assert.Equal(set.Value("D.slot") - Described.Of("1"), set.Value("D.side.width"));
        Assert.Contains(set.Hardware, h => h.Name == "Under-mounted slides, 20 in");
        Assert.Contains("notch both lower corners", set.Cut("D.end", "notch").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Under_SlidInBottom_NeedsNoNotch() => Assert.DoesNotContain(Sound("slides: under, bottom fit: slid in").Machinings, m => m.Words.Contains("notch", StringComparison.Ordinal));

    [Theory]
    [InlineData("16 mm", null)] // supplier pages: 5/8 in (16 mm) at most
    [InlineData("16.00000625 mm", "drawer.side-too-thick")]
    public void Under_SideTooThick_IsFound(string side, string? code) => Assert.Equal(code is null ? null : (code, Severity.Warn), Only(Out("slides: under", side: side)));

    [Theory]
    [InlineData("bottom fit: applied", Severity.Stop)]
    [InlineData("bottom fit: let in", Severity.Stop)]
    [InlineData("groove up: 12.7 mm", null)]
    [InlineData("groove up: 12.69999375 mm", Severity.Warn)]
    public void Under_BottomWithoutItsRecess_IsFound(string kind, Severity? expected) =>
        Assert.Equal(expected is { } severity ? ("drawer.no-recess", severity) : null, Only(Out($"slides: under, {kind}")));

    [Fact]
    public void Runners_BoxAndParts_AsWorkedByHand()
    {
        // 1/16 in side play in all, 1/8 in above (common practice, no source). Box 16 - 1/16 = 15 15/16, ends less 1: 14 15/16; length 21 - 1/8.
        SetPiece set = Sound("slides: runners, runner: strips", "{drawer: D}");
        AssertValues(set, ("D.box.width", "15 15/16"), ("D.end.length.to-cut", "14 15/16"), ("D.play", "1/16"), ("D.side.length.to-cut", "20 7/8"), ("D.runner.length.to-cut", "21"), ("D.runner.up", "3/4"));
        Assert.Equal(set.Value("D.slot") - Described.Of("7/8"), set.Value("D.side.width"));
        // The box stands on its runners, which lie flat at both sides of the opening.
        Placement left = set.Place("D.runner"), right = set.Place("D.runner", 1), side = set.Place("D.side");
        Assert.Equal((Described.Of("3/4"), Described.Of("15 3/4"), Described.Of("1"), Described.Of("3/4")), (left.X, right.X, left.SizeX, left.SizeZ));
        Assert.Equal(left.Z + left.SizeZ, side.Z);
        // Through 1 in and into a side of 3/4, stopping 1/8 short: 1 5/8 at most, so 1 1/2.
        Assert.Contains(set.Hardware, h => h.Name.EndsWith("1 1/2 in", StringComparison.Ordinal) && h.Source.StartsWith("through the runners", StringComparison.Ordinal));
        Assert.DoesNotContain(set.Hardware, h => h.Name.Contains("slides", StringComparison.Ordinal));
        // A case is closed above: no kickers.
        Assert.DoesNotContain(set.Parts, p => p.Role == PartRole.Kicker);
        Assert.Contains(set.Steps, s => s.Words.Contains("closes the opening above", StringComparison.Ordinal) && s.Words.Contains("Wax", StringComparison.Ordinal));
    }

    [Fact]
    public void Runners_UnderOpenRails_GetKickersForTheUppermostDrawerOnly()
    {
        string text = Changed(Bench, "    front: carcase\n", "    front: carcase\n    slides: runners\n    runner: strips\n").Replace("  carcase: {panel", "  strips: {stick: beech, section: 3/4 x 1}\n  carcase: {panel", StringComparison.Ordinal);
        SetPiece set = SetOut(text);
        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        Assert.Empty(SetPieceChecker.Violations(set));
        Assert.Equal(["L1.kicker", "R1.kicker"], set.Parts.Where(p => p.Role == PartRole.Kicker).Select(p => p.Key).Order(StringComparer.Ordinal));
        // Behind the front 3 1/2; less 1/8 above, a runner and a kicker of 3/4: 1 7/8.
        AssertValues(set, ("L1.side.width.to-cut", "1 7/8"));
        SetOpening bay = set.Openings.Single(o => o.Key == "L");
        Placement kicker = set.Place("L1.kicker");
        Assert.Equal(bay.Space.Z + bay.Space.SizeZ, kicker.Z + kicker.SizeZ);
    }

    [Fact]
    public void Runners_WithoutTheirSticks_AreAMistakeOfTheText() =>
        Assert.Contains("runner", Assert.Single(Shop.Texts.PieceText.Read(Written("slides: runners")).Findings, f => f.Severity == Severity.Stop).Words, StringComparison.Ordinal);

    [Fact]
    public void Sheet_OfAnotherClass_WinsOverTheRules()
    {
        // Slides of 3/8 in a side: box 16 - 3/4 - 1/32 = 15 7/32. Usable 21 - 1/4 - 1/2 = 20 1/4: of 15, 17, 20 1/4 the last just fits. Height behind less 3/4.
        SetPiece set = Out("slide: {clearance: 3/8, series: [15, 17, 20 1/4], setback: 1/4, rear: 1/2, room: 3/4}", "{drawer: D}");
        Assert.Null(Only(set));
        AssertValues(set, ("D.box.width", "15 7/32"), ("D.slide.usable", "20 1/4"), ("D.slide.length", "20 1/4"));
        Assert.Equal(set.Value("D.slot") - Described.Of("3/4"), set.Value("D.side.width"));
        Assert.Equal(Described.Of("17"), Out("slide: {series: [15, 17, 20 1/4], setback: 1/4, rear: 0.50000025}", "{drawer: D}").Value("D.slide.length"));
    }

    [Fact]
    public void Sheet_LengthTooLong_IsFoundByATick()
    {
        Assert.Null(Only(Out("slide: {length: 20 1/2, setback: 1/4, rear: 1/4}")));
        Assert.Equal(("slide.too-long", Severity.Stop), Only(Out("slide: {length: 520.70000625 mm, setback: 1/4, rear: 1/4}")));
    }

    [Fact]
    public void Under_OwnClearance_CountsToTheInsideOfTheBox()
    {
        // 20 mm a side: inside 406.4 - 40 = 366.4.
        SetPiece set = Out("slides: under, slide: {clearance: 20 mm}");
        Assert.Equal(Described.Of("366.4 mm"), set.Value("D.end.length"));
    }

    [Theory]
    [InlineData("finger: 1/4", "finger")]
    [InlineData("corner depth: 1/4", "corner depth")]
    [InlineData("bottom fit: applied, groove depth: 1/4", "groove depth")]
    [InlineData("bottom fit: let in, groove up: 1/4", "groove up")]
    [InlineData("fronts: inset, overlay: 1/4", "overlay")]
    [InlineData("slides: under, window: narrow", "window")]
    [InlineData("runner: strips", "runner")]
    [InlineData("slides: runners, runner: strips, slide: 20", "slide")]
    public void Words_ThatHaveNothingToSay_AreMistakes(string kind, string key)
    {
        Finding finding = Assert.Single(Shop.Texts.PieceText.Read(Written(kind)).Findings);
        Assert.Equal(("drawer.idle", Severity.Stop), (finding.Code, finding.Severity));
        Assert.Contains($"'{key}'", finding.Words + finding.Remedy, StringComparison.Ordinal);
    }
}
