using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What leaves the bench whole against the way in, at the limit and a tick past it.</summary>
public class WayInTests
{
    private static Finding[] Found(string way, string assembly, string unit = "in")
    {
        SetPiece set = Sample.SetOut($$"""
            setout: 1
            name: Through the door
            unit: {{unit}}
            {{(way.Length > 0 ? $"way in: {{{way}}}" : "")}}
            materials:
              ply: {panel: birch plywood, thickness: 3/4 in}
              posts: {stick: pine, section: 1 1/2 in x 3 1/2 in}
            doors:
              slab: {of: ply}
            assembly:
            {{assembly}}
            """);
        Assert.False(set.IsStopped);
        return [.. set.Findings.Where(f => f.Code == "way-in.too-small")];
    }

    private const string Case = "  - {case: C, of: ply, width: 40, height: 70, depth: 24}";

    [Theory]
    // Outside 24 x 40 x 70: the two smaller are 24 and 40. Which way round the opening is does not matter.
    [InlineData("width: 24, height: 40", 0)]
    [InlineData("width: 40, height: 24", 0)]
    [InlineData("width: 24, height: 78", 0)]
    [InlineData("width: 23.99999, height: 78", 1)]
    [InlineData("width: 30, height: 39.99999", 1)]
    [InlineData("", 0)]
    public void Case_AtTheLimitAndPastIt(string way, int count) => Assert.Equal(count, Found(way, Case).Length);

    [Fact]
    public void Case_TooLarge_IsToldWithWhatToDo()
    {
        Finding found = Assert.Single(Found("width: 30, height: 36", Case));
        Assert.Equal((Severity.Warn, "C", 4), (found.Severity, found.Key, found.Place.Line));
        Assert.Equal("Case is 24 in x 40 in x 70 in and does not go through the way in, 30 in wide and 36 in high.", found.Words);
        Assert.Contains("one 'on' or 'beside' the other, each with two of its sizes within 30 in and 36 in", found.Remedy, StringComparison.Ordinal);
        Assert.Contains("a diagonal is not counted", found.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Case_WithDoorsAndABase_IsHeldWithoutThem() =>
        // Doors of 3/4 in before it and a base of 4 in under it would make 24 3/4 x 40 x 74.
        Assert.Empty(Found("width: 24, height: 40", "  - {case: C, of: ply, width: 40, height: 70, depth: 24, base: {of: ply}, doors: {like: slab, keys: [D1, D2]}}"));

    [Fact]
    public void Case_WithAFaceFrameThatStandsOut_IsHeldWithIt() =>
        Assert.Contains("24 in x 40 1/2 in", Assert.Single(Found("width: 24, height: 40", "  - {case: C, of: ply, width: 40, height: 70, depth: 24, face frame: {of: posts, overhang: 1/4}}")).Words, StringComparison.Ordinal);

    [Fact]
    public void Top_AcrossMoreThanTheOpeningIsHigh_IsTold()
    {
        // 3/4 x 42 x 82 through 30 x 41.
        Finding[] found = Found("width: 30, height: 41", "  - {case: C, of: ply, width: 80, height: 30, depth: 24}\n  - {top: T, of: ply, overhang: {left: 1, right: 1, front: 9, back: 9}}");
        Assert.Equal(["T"], found.Where(f => f.Severity == Severity.Warn).Select(f => f.Key));
        Assert.Contains("Make it in two, each 41 in or less across", found[0].Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Top_OnACaseThatJustGoesThrough_IsLaidOnInTheRoom()
    {
        // Alone 24 x 30 x 60; with its top 26 x 30 3/4 x 62.
        Finding note = Assert.Single(Found("width: 25, height: 78", "  - {case: C, of: ply, width: 60, height: 30, depth: 24}\n  - {top: T, of: ply, overhang: {front: 2, left: 1, right: 1}}"));
        Assert.Equal((Severity.Note, "T"), (note.Severity, note.Key));
        Assert.StartsWith("Lay the top on in the room.", note.Remedy, StringComparison.Ordinal);
        Assert.Contains("26 in x 30 3/4 in x 62 in", note.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Frame_OfTwoBays_IsHeldOverItsPosts() =>
        Assert.Contains("24 in x 34 in x 78 in", Assert.Single(Found("width: 23, height: 78", "  - {frame: F, of: posts, width: 78, height: 34, depth: 24, toe: 4, across: [{opening: A}, {posts: M}, {opening: B}]}")).Words, StringComparison.Ordinal);

    [Fact]
    public void InMillimetres_ComesOutAlike() => Assert.Equal(
        Found("width: 30, height: 36", Case).Select(f => (f.Code, f.Key, f.Severity)),
        Found("width: 762, height: 914.4", Case.Replace("40", "1016", StringComparison.Ordinal).Replace("70", "1778", StringComparison.Ordinal).Replace("24", "609.6", StringComparison.Ordinal), "mm").Select(f => (f.Code, f.Key, f.Severity)));

    [Theory]
    // 3/4 in birch reads 3/4: 36 in x (3/4 + 1/32) / (3/4) = 37 1/2 in is the most that is usual. The deck spans the width less two sides.
    [InlineData("39", 0)]
    [InlineData("39 1/32", 1)]
    public void Deck_ThatSpansMoreThanIsUsual_IsFound(string width, int count)
    {
        SetPiece set = Sample.SetOut($"setout: 1\nname: Span\nunit: in\nmaterials:\n  ply: {{panel: birch plywood, thickness: 3/4}}\nassembly:\n  - {{case: C, of: ply, width: {width}, height: 40, depth: 14, down: [{{opening: A}}, {{deck: K}}, {{opening: B}}]}}\n");
        Finding[] found = [.. set.Findings.Where(f => f.Code == "shelf.long-span")];
        Assert.Equal(count, found.Length);
        Assert.All(found, f => Assert.StartsWith("Deck K of ply spans", f.Words, StringComparison.Ordinal));
    }
}
