using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Doors of stiles, rails and a panel: against printed pieces, and worked by hand.</summary>
public class FramedDoorTests
{
    private const string Cherry = "  solid: {panel: cherry, thickness: 1/4}\n  thick: {panel: hardwood plywood, thickness: 3/8}\n  fat: {panel: hardwood plywood, thickness: 13/32}\n  deep: {stick: oak, section: 7/8 x 3}\n  slim: {stick: oak, section: 3/4 x 1 3/4}";

    private static SetPiece Out(string kind, string size = "width: 19 1/2, height: 25 1/2") => SetOut(DoorTests.Text(kind, "keys: [D1]", size, materials: Cherry));

    [Fact]
    public void BuffetDoor_OfAPrintedPlan_ComesOutAsItsList()
    {
        // D13-buffet-door: a Chafing-Dish Buffet, in Mission Furniture Part Three (Windsor, 1912; Project Gutenberg 23666): opening 13 x 12, stiles 2, rails 3,
        // mortises 1/2, groove 1/4, no clearance. Printed: stiles 12, rails 10, panel 9 1/2 x 6 1/2.
        SetPiece set = Out("frame: {of: flat, rails: wide}, panel: thin, groove: 1/4, tenon: 1/2, play: 0, lies: inset, gap: 0", "width: 14 1/2, height: 13 1/2");
        AssertValues(set, ("D1.stile.length.to-cut", "12"), ("D1.rail.length.to-cut", "10"), ("D1.panel.width.to-cut", "9 1/2"), ("D1.panel.length.to-cut", "6 1/2"), ("D1.shoulders", "9"), ("kind.tenon.mortise", "9/16"));
        // What the book does not say, and a door without any gap does: it binds.
        Assert.Equal("door.no-gap", Assert.Single(set.Findings, f => f.Severity != Severity.Note).Code);
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Theory]
    // D05-sewing-table-panel: a Sewing Table, same book: 13 1/2 between posts, groove 1/4 deep, panel 14.
    [InlineData("1/4", "13 1/2", "13 1/2", "14", "14")]
    // D10-dresser-panel: a Princess Dresser, same book: opening 15 1/2 x 16, panel 16 1/4 x 16 3/4; groove 3/8, on which both directions agree.
    [InlineData("3/8", "15 1/2", "16", "16 1/4", "16 3/4")]
    public void Panel_OfAPrintedPlan_IsTheClearSizeAndTwoGrooves(string groove, string wide, string high, string width, string length)
    {
        // An overlay of nothing over an opening as much larger than the clear size as stiles and rails (2 each) and the case (3/4 each) take.
        SetPiece set = Out($"frame: {{of: flat}}, panel: thin, groove: {groove}, play: 0, overlay: 0", $"width: {wide} + 4 + 1 1/2, height: {high} + 4 + 1 1/2");
        AssertValues(set, ("D1.panel.width.to-cut", width), ("D1.panel.length.to-cut", length));
    }

    [Fact]
    public void Door_WithStubTenons_ClosesToItsWidth()
    {
        SetPiece set = DoorTests.Sound(Out("frame: {of: flat, bottom rail: wide}, panel: thin, lies: inset, gap: 1/16"));
        // Opening 18 x 24, less 1/8: 17 7/8 x 23 7/8. Rail 17 7/8 - 2 x 2 + 2 x 3/8 = 14 5/8; clear 13 7/8 x (23 7/8 - 5) = 18 7/8.
        // Panel 13 7/8 + 3/4 - 1/16 = 14 9/16 by 18 7/8 + 3/4 - 1/16 = 19 9/16.
        AssertValues(set, ("D1.stile.length.to-cut", "23 7/8"), ("D1.rail.length.to-cut", "14 5/8"), ("D1.bottom-rail.length.to-cut", "14 5/8"), ("D1.panel.width.to-cut", "14 9/16"), ("D1.panel.length.to-cut", "19 9/16"), ("D1.built-width", "17 7/8"));
        Assert.Equal(set.Value("D1.built-width"), set.Value("D1.shoulders") + (set.Value("flat.width") * Rational.Of(2, 1)));
        Assert.All(set.Joints.Where(j => j.Kind is JointKind.Tenon or JointKind.Groove && j.Part.StartsWith("D1", StringComparison.Ordinal)), j => Assert.Equal(Described.Of("3/8"), set.Worked[j.Depth!.Value]));
        Assert.DoesNotContain(set.Machinings, m => m.Words.StartsWith("Mortises", StringComparison.Ordinal));
    }

    [Fact]
    public void Stiles_ReadNarrower_LengthenTheRails()
    {
        string text = DoorTests.Text("frame: {of: flat}, panel: thin, lies: inset, gap: 1/16", "keys: [D1]", "width: 19 1/2, height: 25 1/2");
        SetPiece set = DoorTests.Sound(SetOut(text, "flat.width: 1 31/32 in"));
        AssertValues(set, ("D1.rail.length.to-cut", "14 11/16"), ("D1.built-width", "17 7/8"), ("D1.panel.width.to-cut", "14 5/8"));
    }

    [Theory]
    // Between the bottoms of the grooves 13 7/8 + 3/4 = 14 5/8. Cherry 0.00248 a unit and 1 % (Wood Handbook 2010, table 13-5): x 6 = 0.217620 in.
    [InlineData("", "0.21762 in", "14 13/32")] // 14.40738, down
    // From 8 to 12 %: 0.145080.
    [InlineData(", moisture: 4", "0.14508 in", "14 15/32")] // 14.47992, down
    public void SolidPanel_HasPlayForWhatItMoves(string moisture, string moves, string width)
    {
        SetPiece set = DoorTests.Sound(Out($"frame: {{of: flat}}, panel: solid, lies: inset, gap: 1/16{moisture}"));
        AssertValues(set, ("D1.panel.moves", moves), ("D1.panel.play-kept", moves), ("D1.panel.width.to-cut", width), ("D1.panel.length.to-cut", "20 9/16"));
    }

    [Theory]
    [InlineData("door.panel-captured", "panel: solid, play: 0.21762", null)]
    [InlineData("door.panel-captured", "panel: solid, play: 0.21761", Severity.Warn)]
    // 2 grooves of 7/32 are 0.4375; 14 5/16 between their bottoms moves 0.21297, which is its play too: 0.42594. Of 3/16: 0.375 against 2 x 0.21204.
    [InlineData("door.panel-leaves-groove", "panel: solid, groove: 7/32", null)]
    [InlineData("door.panel-leaves-groove", "panel: solid, groove: 3/16", Severity.Warn)]
    [InlineData("door.tenon-too-long", "panel: thin, tenon: 2", null)]
    [InlineData("door.tenon-too-long", "panel: thin, tenon: 2 1/32", Severity.Stop)]
    [InlineData("door.tenon-short", "panel: thin, tenon: 11/32", Severity.Warn)]
    [InlineData("door.groove-too-wide", "panel: thick", null)] // (3/4 - 3/8) / 2 = 3/16
    [InlineData("door.groove-too-wide", "panel: fat", Severity.Warn)]
    public void Frame_AtTheLimitAndPastIt_IsWarnedOf(string code, string rest, Severity? severity)
    {
        Finding[] found = [.. Out($"frame: {{of: flat}}, {rest}, lies: inset, gap: 1/16").Findings.Where(f => f.Severity != Severity.Note)];
        if (severity is null) Assert.Empty(found);
        else Assert.Equal((code, severity), Assert.Single(found.Select(f => (f.Code, (Severity?)f.Severity))));
    }

    [Fact]
    public void Frame_OfSticksOfTwoThicknesses_IsWarnedOf() =>
        Assert.Equal("door.frame-two-thicknesses", Assert.Single(Out("frame: {of: flat, rails: deep}, panel: thin, lies: inset, gap: 1/16").Findings, f => f.Severity != Severity.Note).Code);

    [Theory]
    [InlineData("width: 5 23/32, height: 24", null)] // 5 23/32 - 1 1/2 - 1/8 = 4 3/32: 3/32 between two stiles of 2
    [InlineData("width: 5 5/8, height: 24", "door.no-panel")] // 4: nothing
    public void Stiles_ThatMeet_AreAStop(string size, string? code)
    {
        Finding[] found = [.. Out("frame: {of: flat}, panel: thin, lies: inset, gap: 1/16", size).Findings.Where(f => f.Severity == Severity.Stop)];
        Assert.Equal(code is null ? [] : [code], found.Select(f => f.Code));
    }

    [Fact]
    public void Cups_InANarrowStile_AreWarnedOf()
    {
        // 1 3/4 (44.45 mm) less a groove of 3/8 (9.525) leaves 34.925; the cup ends at 40 mm.
        Assert.Equal("door.stile-narrow-for-cup", Assert.Single(Out("frame: {of: slim}, panel: thin").Findings, f => f.Severity != Severity.Note).Code);
        // 2 (50.8) less 5/16 (7.9375): 42.8625, 2.8625 beside it; less 19/64 (7.540625): 3.259.
        Assert.Equal("door.stile-narrow-for-cup", Assert.Single(Out("frame: {of: flat}, panel: thin, groove: 5/16").Findings, f => f.Severity != Severity.Note).Code);
        DoorTests.Sound(Out("frame: {of: flat}, panel: thin, groove: 9/32"));
    }
}
