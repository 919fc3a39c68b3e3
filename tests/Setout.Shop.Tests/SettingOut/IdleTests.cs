using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Texts;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What is written where it has nothing to say is told where it stands. The mark ¦ stands before what the finding is about.</summary>
public class IdleTests
{
    private const string Head = """
        setout: 1
        name: Idle words
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4}
          thin: {panel: hardwood plywood, thickness: 1/4}
          cherry: {panel: cherry, thickness: 1/4}
          oak: {stick: oak, section: 3/4 x 2}
          pine: {stick: pine, section: 1 1/2 x 3}

        """;

    private const string Case = "assembly:\n  - {case: C, of: ply, width: 30, height: 30, depth: 20, ", Frame = "assembly:\n  - {frame: F, of: pine, width: 40, height: 33, depth: 24, toe: 4, ";

    private const string Slab = "doors:\n  e: {of: ply, ", Framed = "doors:\n  e: {frame: {of: oak}, panel: ", Kind = "drawers:\n  d: {sides: ply, bottom: thin, front: ply";

    /// <summary>What only the whole piece shows: warned of, for the piece can be made.</summary>
    [Theory]
    [InlineData("case.dividers-idle", Case + "dividers: ¦dowels}")]
    [InlineData("case.dividers-idle", Case + "dividers: ¦pocket, shelves: {fit: adjustable, down: [S]}}")]
    [InlineData("frame.bearers-idle", Frame + "across: [{opening: A, bearers: ¦oak}]}")]
    [InlineData("well.bolt-size-idle", Frame + "across: [{opening: A}]}\n  - {top: T, of: ply, wells: [{well: W, machine: planer, from left: 10, from front: 6, footprint: 10 x 8, table height: 5, bearers: oak, bolt size: ¦1/2}]}")]
    [InlineData("doors.clear-idle", Slab + "clear: ¦1}\n" + Case + "doors: {like: e, keys: [D]}}")]
    [InlineData("panel.moisture-idle", Framed + "thin, ¦moisture: 8}\n" + Case + "doors: {like: e, keys: [D, E]}}")]
    [InlineData("panel.moisture-idle", Frame + "corners: tenon, panels: {of: thin, ¦moisture: 8}, across: [{opening: A}]}")]
    [InlineData("face-frame.packing-idle", Case + "face frame: {of: oak, packing: ¦pine}}")]
    [InlineData("face-frame.packing-idle", Case + "face frame: ¦{of: oak, packing: no}}")]
    [InlineData("face-frame.tenon-idle", Case + "face frame: {of: oak, joint: dowels, tenon: ¦1}}")]
    [InlineData("figure.idle", Kind + "}\n" + Case + "drawers: {like: d, ¦figure: through, down: [{drawer: D}]}}")]
    [InlineData("rail.covered-idle", Frame + "across: [{opening: A, down: [{opening: B}, {rail: ¦R, covered: yes}, {opening: D}]}]}")]
    [InlineData("sharing.alone", Case + "down: [{opening: A, height: ¦2 parts}]}")]
    [InlineData("moisture.idle", "moisture: ¦8\n" + Case + "back: thin}")]
    [InlineData("way-in.idle", "way in: ¦{width: 20, height: 20}\nparts: [{part: P, of: ply, length: 10, width: 5}]")]
    public void Word_ThatSaysNothingInThisPiece_IsWarnedOf(string code, string marked)
    {
        (string text, Place place) = Repository.Marked(Head + marked + "\n");
        Finding finding = Assert.Single(Sample.SetOut(text).Findings, f => f.Code == code);
        Assert.Equal((Severity.Warn, place), (finding.Severity, finding.Place));
        Assert.NotEmpty(finding.Remedy);
        // Without it nothing is said.
        Assert.DoesNotContain(Sample.SetOut(Head + "assembly:\n  - {case: C, of: ply, width: 30, height: 30, depth: 20}\n").Findings, f => f.Code == code);
    }

    /// <summary>What one map shows is a mistake.</summary>
    [Theory]
    [InlineData("stand.idle", Case + "¦flush: back}")]
    [InlineData("drawer.idle", Kind + ", slide: {length: 16, ¦series: [14, 16]}}\n" + Case + "drawers: {like: d, down: [{drawer: D}]}}")]
    [InlineData("drawer.idle", Kind + ", handles: {of: knob, ¦place: centred, from top: 2}}\n" + Case + "drawers: {like: d, down: [{drawer: D}]}}")]
    [InlineData("drawer.idle", Kind + ", false front: no, slides: runners, runner: oak, ¦play: 1/8}\n" + Case + "drawers: {like: d, down: [{drawer: D}]}}")]
    [InlineData("doors.handle-twice", Slab + "handles: {of: knob, ¦place: centred, from bottom: 2}}\n" + Case + "doors: {like: e, keys: [D]}}")]
    public void Word_ThatSaysNothingInItsMap_IsAMistake(string code, string marked)
    {
        (string text, Place place) = Repository.Marked(Head + marked + "\n");
        Finding finding = Assert.Single(PieceSource.Read(text, null, null).Findings).Finding;
        Assert.Equal((code, place), (finding.Code, finding.Place));
        Assert.NotEmpty(finding.Remedy);
    }

    /// <summary>Edges of a back are not seen; a material and a kind that nothing uses are noted.</summary>
    [Fact]
    public void What_NothingUses_IsNoted()
    {
        SetPiece set = Sample.SetOut($"{Head.Replace("thickness: 1/4}\n  cherry", "thickness: 1/4, edges: chamfered}\n  cherry", StringComparison.Ordinal)}{Kind}}}\n{Slab}lies: inset}}\n{Case}back: thin}}\n");
        Assert.Equal(["cherry", "oak", "pine"], set.Findings.Where(f => f.Code == "material.unused").Select(f => f.Key));
        Assert.Equal(["edge.unseen/thin", "drawer.unused-kind/d", "door.unused-kind/e"], set.Findings.Where(f => f.Code is "edge.unseen" or "drawer.unused-kind" or "door.unused-kind").Select(f => $"{f.Code}/{f.Key}"));
    }

    /// <summary>The grain of shelves on pins is theirs too: cut along the depth, 20 in, and 28 1/2 - 1/8 across it.</summary>
    [Fact]
    public void Shelves_OnPins_KeepTheirGrain()
    {
        Part shelf = Sample.SetOut($"{Head}{Case}shelves: {{fit: adjustable, grain: front to back, down: [S]}}}}\n").Parts.Single(p => p.Key == "S");
        Assert.Equal(("S.width", "S.length"), (shelf.Length.Exact.Text, shelf.Width.Exact.Text));
    }

    /// <summary>A base for which there is no room, and sizes that come out below nothing, stop the plan with words, and weigh nothing.</summary>
    [Fact]
    public void Sizes_BelowNothing_AreToldAndWeighNothing()
    {
        foreach (string rest in new[] { $"{Case.Replace("width: 30", "width: 1", StringComparison.Ordinal)}base: {{of: ply}}}}\n", $"{Kind}, slide: 3/8}}\n{Case}drawers: {{like: d, down: [{{drawer: D}}]}}}}\n" })
        {
            SetPiece set = Sample.SetOut(Head + rest);
            Assert.True(set.IsStopped);
            Assert.All(set.Parts, p => Assert.True(Weights.OfOne(set, p) is not { } mass || mass.Kilograms.Value >= 0));
        }
    }

    /// <summary>The sheet of a top whose layers all name their own is looked up too.</summary>
    [Fact]
    public void SheetOfATop_WithLayersOfTheirOwn_IsLookedUp() =>
        Assert.Contains(Sample.SetOut($"{Head}{Case.TrimEnd().TrimEnd(',')}}}\n  - {{top: T, of: nothing, layers: [ply, ply]}}\n").Findings, f => f.Severity == Severity.Stop && f.Key == "T");

    /// <summary>Each overhang is a figure of its own, and a term of the size: 30 + 1 1/2 + 1/2 = 32.</summary>
    [Fact]
    public void Overhang_IsAFigureWithItsOrigin()
    {
        SetPiece set = Sample.SetOut($"{Head}{Case.TrimEnd().TrimEnd(',')}}}\n  - {{top: T, of: ply, overhang: {{left: 1 1/2, right: 1/2, front: 1}}}}\n");
        Sample.AssertValues(set, ("T.overhang-left", "1 1/2"), ("T.overhang-right", "1/2"), ("T.overhang-front", "1"), ("T.overhang-back", "0 in"), ("T.length", "32"), ("T.width", "21"));
        SetPiece read = Sample.SetOut($"{Head}{Case.TrimEnd().TrimEnd(',')}}}\n  - {{top: T, of: ply, overhang: {{left: 1 1/2, right: 1/2, front: 1}}}}\n", "T.overhang-left: 1 5/8 in");
        Sample.AssertValues(read, ("T.length", "32 1/8"));
    }

    /// <summary>Packing of a sheet is ripped to what is wanted: 1 1/2 of stile less 3/4 of side is 3/4, and at the mullion (1 1/2 - 3/4) / 2 is 3/8; its own 1/4 shows from the front.</summary>
    [Fact]
    public void Packing_OfASheet_IsRippedToWhatIsWanted()
    {
        SetPiece set = Sample.SetOut($"{Head.Replace("section: 3/4 x 2", "section: 3/4 x 1 1/2", StringComparison.Ordinal)}{Kind}}}\n{Case}face frame: {{of: oak, packing: thin}}, across: [{{opening: A, drawers: {{like: d, down: [{{drawer: D}}]}}}}, {{partition: P}}, {{opening: B}}]}}\n");
        Assert.DoesNotContain(set.Findings, f => f.Code is "packing.too-thin" or "material.not-a-stick");
        Sample.AssertValues(set, ("A.packing-left.ripped.to-cut", "3/4"), ("A.packing-right.ripped.to-cut", "3/8"));
        Part left = set.Parts.Single(p => p.Key == "A.packing-left");
        Assert.Equal(("thin", Testing.Described.Of("1/4"), Testing.Described.Of("3/4")), (left.Material, left.Placements[0].SizeY, left.Placements[0].SizeX));
        Assert.Empty(Testing.SetPieceChecker.Violations(set));
    }
}
