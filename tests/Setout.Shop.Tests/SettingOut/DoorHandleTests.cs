using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What doors are pulled by and what holds them shut, worked by hand.</summary>
public class DoorHandleTests
{
    private static SetPiece Out(string kind, string doors = "keys: [D1, D2]") => SetOut(DoorTests.Text(kind, doors, "width: 30, height: 30", grid: "grid: 1/16 in"));

    [Theory]
    // 30 - 3 mm = 29.882 high, on 29 14/16. Two holes 3 in apart: (29 7/8 - 3) / 2 = 13 7/16. 1 1/2 from the edge of a slab (common practice, no source).
    [InlineData("of: ply, handles: {of: pull, apart: 3}", "1 1/2", "13 7/16")]
    [InlineData("of: ply, handles: {of: pull, place: in line}", "1 1/2", "2")] // as of drawers: common practice, no source
    [InlineData("of: ply, handles: {of: pull, from edge: 2, from bottom: 3}", "2", "3")]
    [InlineData("frame: {of: flat}, panel: thin, groove: 1/4, handles: {of: pull}", "1", "14 15/16")] // half of the stile of 2; half of 29 7/8
    public void Handle_IsAtTheClosingEdge(string kind, string across, string along)
    {
        SetPiece set = DoorTests.Sound(Out(kind));
        AssertValues(set, ("D1.handle.across", across), ("D1.handle.along", along));
        // A pair closes in its middle: the left door on its right edge, the right one on its left.
        string Words(string key) => set.Machinings.Single(m => (m.Part == key || m.Part == key + ".stile") && m.Words.StartsWith("Drill", StringComparison.Ordinal)).Words;
        Assert.EndsWith("near the right edge", Words("D1"), StringComparison.Ordinal);
        Assert.EndsWith("near the left edge", Words("D2"), StringComparison.Ordinal);
        Assert.Equal(2, set.Hardware.Where(h => h.Name == "pull").Sum(h => h.Count));
    }

    [Fact]
    public void Catch_IsBoughtForEachDoorAndHasItsStep()
    {
        SetPiece set = Out("of: ply, lies: inset, catch: magnetic catch", "keys: [D1], hinges: right");
        Assert.Equal(1, Assert.Single(set.Hardware, h => h.Name == "magnetic catch").Count);
        Assert.Contains("at its left edge", Assert.Single(set.Steps, s => s.Words.StartsWith("Fix the catch", StringComparison.Ordinal)).Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("of: ply, handles: {of: pull, hole: 1/4, from edge: 1/8}", null)]
    [InlineData("of: ply, handles: {of: pull, hole: 1/4, from edge: 0.12}", "handle.off-door")]
    [InlineData("of: ply, handles: {of: pull, hole: 1/4, apart: 3, from top: 26 3/4}", null)] // 26 3/4 + 3 + 1/8 = 29 7/8
    [InlineData("of: ply, handles: {of: pull, hole: 1/4, apart: 3, from top: 26.76}", "handle.off-door")]
    [InlineData("frame: {of: flat}, panel: thin, groove: 1/4, handles: {of: pull, hole: 1/4, from edge: 1 5/8}", null)] // 1 3/4 to the groove
    [InlineData("frame: {of: flat}, panel: thin, groove: 1/4, handles: {of: pull, hole: 1/4, from edge: 1.63}", "handle.in-groove")]
    [InlineData("frame: {of: flat}, panel: thin, groove: 1/4, handles: {of: pull, hole: 1/4, from edge: 1.88}", "handle.off-door")] // past the stile
    public void Handle_AtTheLimitAndPastIt_IsSaid(string kind, string? code)
    {
        Finding[] found = [.. Out(kind, "keys: [D1]").Findings.Where(f => f.Severity != Severity.Note && f.Code.StartsWith("handle", StringComparison.Ordinal))];
        Assert.Equal(code is null ? [] : [code], found.Select(f => f.Code));
        Assert.All(found, f => Assert.True(f.Place.IsKnown && f.Severity == (code == "handle.in-groove" ? Severity.Warn : Severity.Stop)));
    }
}
