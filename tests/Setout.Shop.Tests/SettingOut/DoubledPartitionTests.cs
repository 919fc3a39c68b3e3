using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Two panels face to face in the place of one partition.</summary>
public class DoubledPartitionTests
{
    private const string Plain = """
        setout: 1
        name: Racquet lockers
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4}
          oak: {stick: oak, section: 3/4 x 2}
        assembly:
          - {case: C, of: ply, width: 40, height: 30, depth: 16, CASE across: [{opening: A, FILL}, {partition: P, doubled: yes}, {opening: B, FILL}]}
        """;

    private static SetPiece Of(string case_ = "", string a = "", string b = "", params string[] readings)
    {
        string text = Plain.Replace("CASE ", case_, StringComparison.Ordinal).Replace("{opening: A, FILL}", $"{{opening: A{a}}}", StringComparison.Ordinal).Replace("{opening: B, FILL}", $"{{opening: B{b}}}", StringComparison.Ordinal);
        return Sample.SetOut(text, readings);
    }

    /// <summary>By hand: inside 40 - 2 x 3/4 = 38 1/2; less both panels, 1 1/2, leaves 37, shared: 18 1/2. Panels 30 - 1 1/2 = 28 1/2 by 16. The left one begins 3/4 + 18 1/2 = 19 1/4 from the left.</summary>
    [Fact]
    public void TwoPanels_AreCountedTwice_AndAreEachAPart()
    {
        SetPiece set = Of();
        Assert.All(set.Findings, f => Assert.Equal(("material.unused", "oak"), (f.Code, f.Key)));
        Sample.AssertValues(set, ("A.width", "18 1/2 in"), ("B.width", "18 1/2 in"), ("P.both", "1 1/2 in"), ("P.left.length", "28 1/2 in"), ("P.right.length", "28 1/2 in"), ("P.left.width", "16 in"));
        Part left = set.Parts.Single(p => p.Key == "P.left"), right = set.Parts.Single(p => p.Key == "P.right");
        Assert.Equal((1, 1), (left.Count, right.Count));
        Assert.Equal(Described("19 1/4 in"), left.Placements[0].X);
        Assert.Equal(left.Placements[0].X + left.Placements[0].SizeX, right.Placements[0].X);
        // 28 1/2 high: two rows, one screw to each 16 in begun, so 2 x 2; through 3/4 into 3/4 less 1/8 there is 1 1/4 in at most.
        Assert.Contains(set.Hardware, h => h is { Key: "P", Count: 4 } && h.Name.Contains("1 1/4", StringComparison.Ordinal));
        AssemblyStep step = Assert.Single(set.Steps, s => s.Parts.Contains("P.left"));
        Assert.True(step.IsMadeFirst && step.Parts.Contains("P.right"));
    }

    /// <summary>The same openings as with one partition of their thickness together: outside = inside + thicknesses.</summary>
    [Fact]
    public void Widths_AddUpToTheOutside()
    {
        SetPiece set = Of();
        Assert.Equal(Described("40 in"), set.Value("A.width") + set.Value("B.width") + set.Value("P.both") + (set.Value("ply.thickness") * 2));
        Assert.All(set.Chains, c => Assert.Equal(0, c.Misfit(set.Worked)?.Sign ?? 0));
    }

    /// <summary>Each panel has the dadoes of its own opening, so those of two openings never meet back to back; in one partition they would.</summary>
    [Fact]
    public void Dadoes_OfBothOpenings_StandOnPanelsOfTheirOwn()
    {
        SetPiece set = Of("", ", shelves: {fit: dado, dado: 3/8, down: [S1]}", ", shelves: {fit: dado, dado: 3/8, down: [S2]}");
        Assert.Contains(set.Joints, j => j is { Part: "S1", Against: "P.left" });
        Assert.Contains(set.Joints, j => j is { Part: "S2", Against: "P.right" });
        Assert.DoesNotContain(set.Joints, j => j is { Part: "S1", Against: "P.right" } or { Part: "S2", Against: "P.left" });
        Assert.DoesNotContain(set.Findings, f => f.Code is "joint.back-to-back" or "joint.through");
    }

    /// <summary>Holes for pins are bored into the panel that faces them, no deeper than it allows: 3/4 in less 3 mm is more than 10 mm.</summary>
    [Fact]
    public void Pins_AreBoredInThePanelThatFacesThem()
    {
        SetPiece set = Of("", ", shelves: {fit: adjustable, down: [S1]}", ", shelves: {fit: adjustable, down: [S2]}");
        Assert.Contains(set.Bores, b => b.Part == "P.left");
        Assert.Contains(set.Bores, b => b.Part == "P.right");
        Assert.DoesNotContain(set.Findings, f => f.Code == "shelf.holes-meet");
    }

    /// <summary>The partition goes into dadoes of top and bottom by a third of 3/4: each panel is 28 1/2 + 2 x 1/4 long, and the right dado begins 3/4 after the left.</summary>
    [Fact]
    public void InDadoes_EachPanelHasItsOwn()
    {
        SetPiece set = Of("dividers: dado, ");
        Sample.AssertValues(set, ("P.left.length", "29 in"), ("P.right.length", "29 in"));
        QuantityKey[] places = [.. set.Machinings.Where(m => m.Words.Contains("partition P", StringComparison.Ordinal)).SelectMany(m => m.Figures).Where(f => f.Name == "from the left end").Select(f => f.Key).Distinct()];
        Assert.Equal(2, places.Length);
        Assert.Equal(Described("3/4 in"), set.Worked[places[1]] - set.Worked[places[0]]);
    }

    /// <summary>A mullion before it covers both: 2 in over 1 1/2 in stands 1/4 in into each opening.</summary>
    [Fact]
    public void Mullion_CoversBoth() => Sample.AssertValues(Of("face frame: {of: oak}, "), ("P.frame.in", "1/4 in"));

    /// <summary>A reading of the sheet counts twice: 1/32 in less each gives the openings 1/16 in for both sides of the case and 1/16 in here, shared.</summary>
    [Fact]
    public void Reading_OfTheSheet_CountsForBoth()
    {
        SetPiece set = Of("", "", "", "ply.thickness: 23/32 in");
        Sample.AssertValues(set, ("P.both", "1 7/16 in"));
        Assert.Equal(Described("40 in"), set.Value("A.width") + set.Value("B.width") + set.Value("P.both") + (set.Value("ply.thickness") * 2));
    }

    private static Core.Measures.ExactLength Described(string length) => Setout.Testing.Described.Of(length);
}
