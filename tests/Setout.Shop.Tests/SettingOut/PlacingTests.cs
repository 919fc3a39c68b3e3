using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>The order in which what stands in a room comes together there: stood level, joined, topped, and then kept from tipping. Common practice, no source.</summary>
public class PlacingTests
{
    private const string Bank = "drawers: {like: box, down: [{drawer: KEY1}, {drawer: KEY2}]}";

    private static SetPiece Out(string members) => SetOut($$"""
        setout: 1
        name: Row in a room
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
          half: {panel: hardwood plywood, thickness: 1/2, grain: free}
          lipped: {panel: hardwood plywood, thickness: 3/4, grain: free, edges: lipped, lip: strip}
          strip: {stick: pine, section: 1/4 x 7/8}
          wide: {stick: pine, section: 3/4 x 2 1/2}
        drawers:
          box: {sides: half, bottom: half, front: ply}
        assembly:
        {{string.Concat(members.Split('\n').Select(m => $"  - {{{m}}}\n"))}}
        """);

    private static string Case(string key, string rest) => $"case: {key}, of: ply, width: 20, height: 30, depth: 20{(rest.Length > 0 ? ", " : "")}{rest.Replace("KEY", key, StringComparison.Ordinal)}";

    private static int At(SetPiece set, string words)
    {
        int at = Array.FindIndex([.. set.Steps], s => s.Words.Contains(words, StringComparison.Ordinal));
        Assert.True(at >= 0, $"No step says '{words}': {string.Join(" / ", set.Steps.Select(s => s.Words))}");
        return at;
    }

    private static void InOrder(SetPiece set, params string[] words)
    {
        int[] places = [.. words.Select(w => At(set, w))];
        Assert.True(places.SequenceEqual(places.Order()), string.Join(" / ", set.Steps.Select(s => s.Words)));
        Assert.Empty(AssemblyChecker.Violations(set));
    }

    [Fact]
    public void Row_IsStoodLevel_Joined_Topped_AndThenAnchored() =>
        InOrder(Out($"{Case("A", $"toe: {{}}, {Bank}")}\n{Case("B", "toe: {}, beside: A")}\ntop: T, of: ply"), "Stand case A", "Set case B beside A", "Clamp case B to case A", "lay the top on", "Anchor the piece", "Read the clear width");

    [Fact]
    public void OneCase_StandsLevelBeforeItIsAnchored() => InOrder(Out(Case("A", $"toe: {{}}, {Bank}")), "Stand the case in its place", "Anchor the piece");

    [Fact]
    public void CaseOnABase_ComesWhenTheBaseStandsLevelBesideItsNeighbour() => Assert.StartsWith("Level the base of case B by itself in its place",
        Assert.Single(Out($"{Case("A", "base: {of: ply}")}\n{Case("B", "beside: A, base: {of: ply}")}").Steps, s => s.Words.EndsWith("It stands beside A, fronts in line.", StringComparison.Ordinal)).Words, StringComparison.Ordinal);

    [Fact]
    public void WhatHangs_DoesNotKeepABankFromTipping()
    {
        SetPiece set = Out($"{Case("A", Bank)}\n{Case("H", "beside: A, hung: yes, back: half")}");
        Assert.Equal("tip", set.Steps[At(set, "Anchor case A to the wall, or weight its foot")].Caution);
        // What hangs is fixed already, and a bank that hangs cannot tip.
        Assert.DoesNotContain(Out(Case("H", $"hung: yes, back: half, {Bank}")).Steps, s => s.Words.Contains("Anchor", StringComparison.Ordinal));
    }

    [Fact]
    public void CasesThatHangSideBySide_AreJoinedOnceTheyHang() =>
        InOrder(Out($"{Case("A", "hung: yes, back: half")}\n{Case("B", "beside: A, hung: yes, back: half")}"), "Hang case A empty", "Clamp case B to case A");

    [Theory]
    [InlineData("filler: {at: right, of: ply, width: 2}", "", "from inside case B too")]
    [InlineData("", ", filler: {at: left, of: ply, width: 2}", "from inside case A too")]
    public void FillerBetweenTwo_IsOnOneBeforeTheOtherComes(string one, string other, string from)
    {
        SetPiece set = Out($"{Case("A", one)}\n{Case("B", $"beside: A{other}")}\ntop: T, of: ply");
        InOrder(set, "Fit the filler", "Set case B beside A", "with the filler between them", "lay the top on");
        Assert.Contains(from, set.Steps[At(set, "Bring case B up to case A")].Words, StringComparison.Ordinal);
    }

    [Fact]
    public void FillerOfSticks_IsRippedToItsSpace_AtAWallWithWhatIsScribed()
    {
        // Between two: 1 3/4. At the wall 1 1/2 and 3/4 to scribe (drawer-rules, FL1) would be 2 1/4 of sticks 2 1/2 wide.
        SetPiece set = Out($"{Case("A", "filler: {at: right, of: wide, width: 1 3/4}")}\n{Case("B", "beside: A, filler: {at: right, of: wide, width: 1 1/2, scribe: 3/4}")}");
        AssertValues(set, ("A.filler-right.width.to-cut", "1 3/4"), ("B.filler-right.width.to-cut", "2 1/4"));
        Assert.Equal(new QuantityKey("A.filler-right.width"), set.Parts.Single(p => p.Key == "A.filler-right").Width.Exact);
        // One as wide as its space is not ripped.
        Assert.Equal(Described.Of("2 1/2"), Out(Case("A", "filler: {at: right, of: wide, width: 2 1/2, scribe: 0}")).Parts.Single(p => p.Key == "A.filler-right").Placements[0].SizeX);
        Assert.DoesNotContain(Out(Case("A", "filler: {at: right, of: wide, width: 2 1/2, scribe: 0}")).Worked.Order, k => k.Text == "A.filler-right.width");
    }

    [Fact]
    public void Edges_AreLippedBeforeWhatIsMeasuredFromThem()
    {
        SetPiece set = Out("case: A, of: lipped, width: 40, height: 30, depth: 20, dividers: dado, across: [{opening: L, shelves: {fit: adjustable, down: [L1]}}, {partition: P}, {opening: R}]");
        InOrder(set, "Glue the lips", "Cut all dadoes", "Drill and screw the case");
        InOrder(set, "Glue the lips", "Bore the holes", "Drill and screw the case");
    }

    [Theory]
    // Into a case 3/4: 3/4 + 3/4 - 1/8 = 1 3/8, the longest of the series under it 1 1/4; into a top of 1/2 in: 1 1/8, so 1 in.
    [InlineData("A", "ply", "1 1/4 in")]
    [InlineData("T", "half", "1 in")]
    public void CaseOnAnother_IsScrewedDown_AndNotThroughWhatCarriesIt(string on, string top, string screw)
    {
        SetPiece set = Out($"{Case("A", "")}{(on == "T" ? $"\ntop: T, of: {top}" : "")}\n{Case("B", $"on: {on}")}");
        HardwareItem screws = Assert.Single(set.Hardware, h => h.Key == "B" && h.Source.StartsWith("down through its bottom", StringComparison.Ordinal));
        Assert.Equal(($"Wood screw no. 8 (4 mm), {screw}", 4), (screws.Name, screws.Count));
        Assert.Contains("screw it down through its bottom", set.Steps[At(set, $"Set case B on {on}")].Words, StringComparison.Ordinal);
    }

    [Fact]
    public void CaseOnAnother_WithFeetOfItsOwn_OnlyStands() =>
        Assert.DoesNotContain(Out($"{Case("A", "")}\n{Case("B", "on: A, toe: {}")}").Hardware, h => h.Source.StartsWith("down through its bottom", StringComparison.Ordinal));
}
