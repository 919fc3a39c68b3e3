using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Shop.Plans;
using Setout.Shop.Tests.SettingOut;
using Setout.Testing;

namespace Setout.Shop.Tests.Plans;

/// <summary>What a reading moves besides lengths and widths is told: a fence, a stop or a story stick is to be set again.</summary>
public class SettingsMovedTests
{
    private const string Rack = """
        setout: 1
        name: Rack of shelves
        unit: in
        materials:
          ply: {panel: hardwood plywood, label: 3/4, thickness: 3/4}
        assembly:
          - case: C
            of: ply
            width: 30
            height: 40
            depth: 12
            dividers: dado
            down: [{opening: A, height: 18, shelves: {fit: adjustable, down: [S1, S2]}}, {deck: E}, {opening: B, height: rest, shelves: {fit: dado, down: [S3]}}]
        """;

    [Fact]
    public void Thickness_ReadUnder_NamesTheWidthOfItsDadoes()
    {
        SetPiece before = SettingOut.Sample.SetOut(Rack), after = SettingOut.Sample.SetOut(Rack, "ply.thickness: 23/32 in");
        var ripple = Ripple.Of(before, after);
        Assert.NotEmpty(ripple.Settings);
        // The dado of the deck and that of the fixed shelf are as wide as the sheet is thick.
        SettingMoved[] wide = [.. ripple.Settings.Where(s => s.Figure == "width")];
        Assert.Equal(2, wide.Length);
        Assert.All(wide, w => Assert.Equal((Described.Of("3/4"), Described.Of("23/32")), (w.Before, w.After)));
        Assert.All(wide, w => Assert.Equal(["C.side"], w.Parts.Select(p => p.Key)));
        string[] lines = [.. RippleLines.Of(before, after, ripple)];
        Assert.Contains(lines, l => l.StartsWith("  set anew for Cs: ", StringComparison.Ordinal) && l.EndsWith("3/4 -> 23/32 in", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("of cuts into parts", StringComparison.Ordinal));
    }

    /// <summary>A dado set to the mark would be too narrow for its sheet: 18.1 mm are 0.7126 in, and 45.6 of 1/64; 17.9 mm are 45.1 of them.</summary>
    [Theory, InlineData("18.1 mm", "just under 23/32 in"), InlineData("17.9 mm", "just over 45/64 in")]
    public void Thickness_ReadBetweenTheMarksOfARule_SaysOnWhichSideOfOneTheDadoLies(string read, string told)
    {
        SetPiece before = SettingOut.Sample.SetOut(Rack), after = SettingOut.Sample.SetOut(Rack, $"ply.thickness: {read}");
        Assert.Contains(RippleLines.Of(before, after, Ripple.Of(before, after)), l => l.StartsWith("  set anew for Cs: ", StringComparison.Ordinal) && l.EndsWith($"3/4 -> {told}", StringComparison.Ordinal));
    }

    [Fact]
    public void Holes_ThatStandElsewhere_AreCountedByName()
    {
        SetPiece before = SettingOut.Sample.SetOut(Rack), after = SettingOut.Sample.SetOut(Rack.Replace("height: 18", "height: 20", StringComparison.Ordinal));
        var ripple = Ripple.Of(before, after);
        Assert.NotEmpty(ripple.Stations);
        Assert.All(ripple.Stations, s => Assert.True(s.Stations > 0 && s.Parts.Length > 0));
        Assert.Contains(RippleLines.Anew(after, ripple), l => l.StartsWith("mark anew for ", StringComparison.Ordinal));
    }

    /// <summary>A front is as wide in what moved as it is on the drawing, in its working and in a remedy, though its wood is long there.</summary>
    [Fact]
    public void Front_ThatMoved_IsCalledByItsWorking()
    {
        SetPiece before = SettingOut.Sample.Of(SettingOut.Sample.Bench), after = SettingOut.Sample.Of(SettingOut.Sample.Bench, "L.rail.length.as-cut: 20 7/8 in");
        string[] told = [.. RippleLines.Rows(after, Ripple.Of(before, after)).Select(r => r.What)];
        Assert.Contains("false fronts, width", told);
        Assert.Contains("ends of boxes, length", told);
    }

    [Fact]
    public void Nothing_Moved_NothingIsToldAnew()
    {
        SetPiece set = SettingOut.Sample.SetOut(Rack);
        var ripple = Ripple.Of(set, SettingOut.Sample.SetOut(Rack));
        Assert.Empty(ripple.Settings);
        Assert.Empty(ripple.Stations);
        Assert.Empty(RippleLines.Anew(set, ripple));
    }

    /// <summary>Holes of a part that only stands elsewhere in the piece are where they were on the part.</summary>
    [Fact]
    public void Holes_OfWhatIsOnlyMovedAlong_DidNotMove()
    {
        SetPiece before = SettingOut.Sample.SetOut(Rack), after = SettingOut.Sample.SetOut(Rack.Replace("width: 30", "width: 33", StringComparison.Ordinal));
        Assert.NotEmpty(before.Bores);
        Assert.Empty(Ripple.Of(before, after).Stations);
    }
}
