using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Seen edges of sheets: one word of the material, and what follows from it.</summary>
public class EdgeTests
{
    private static string Text(string edges, string fronts = "") => $$$"""
        setout: 1
        name: Edges
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free{{{edges}}}}
          face: {panel: hardwood plywood, thickness: 3/4, grain: free{{{fronts}}}}
          thin: {panel: hardwood plywood, thickness: 1/4, grain: free}
          strips: {stick: oak, section: 1/4 x 7/8}
        drawers:
          box: {sides: ply, bottom: thin, front: face}
        assembly:
          - {case: C, of: ply, width: 24, height: 30, depth: 20, back: thin, down: [{opening: A, height: 14, drawers: {like: box, down: [{drawer: A1}, {drawer: A2}]}}, {deck: M}, {opening: B, shelves: {down: [S]}}]}

        """;

    [Fact]
    public void Banded_ByHand_TheCoreIsSmallerAndTheCaseAsDeep()
    {
        // Side: 20 - 1/4 for the back = 19 3/4, less one band of 1/16 = 19 11/16. All that meets it goes by 19 3/4.
        SetPiece set = SetOut(Text(", edges: banded, band: 1/16"));
        AssertValues(set, ("C.side.width", "19 11/16"), ("C.side.width.finished", "19 3/4"), ("C.deck.width", "19 11/16"), ("C.opening.depth", "19 3/4"),
            ("M.width", "19 11/16"), ("S.width", "19 11/16"), ("C.side.length", "30"));
        Assert.Equal("banded: 1 long", set.EdgesOf(set.Parts.First(p => p.Key == "C.side")));
        Assert.Equal("raw", set.EdgesOf(set.Parts.First(p => p.Key == "C.back")));
    }

    [Fact]
    public void Banded_Length_IsThatOfAllSeenEdges()
    {
        // Sides 2 x 30, top and bottom 2 x 22 1/2, deck and shelf 22 1/2 each: 150 in; 6 edges with 2 in to trim: 162 in, 13 1/2 feet, 14 to buy.
        HardwareItem band = Assert.Single(SetOut(Text(", edges: banded")).Hardware, h => h.Name.StartsWith("Edge band", StringComparison.Ordinal));
        Assert.Equal((14, "foot"), (band.Count, band.Unit));
        // 22 mm for a sheet of 3/4 in (general how-to page).
        Assert.Contains("at least 55/64 in wide, for ply", band.Name, StringComparison.Ordinal);
    }

    [Fact]
    public void Banded_CoreCutLong_MakesTheCaseDeeper() =>
        AssertValues(SetOut(Text(", edges: banded, band: 1/16"), "C.side.width.as-cut: 19 3/4 in"), ("C.opening.depth", "19 13/16"), ("C.deck.width", "19 3/4"));

    [Fact]
    public void Lipped_Fronts_ByHand()
    {
        // A front of whatever height keeps it; its core is two lips of 1/4 smaller each way. Ends are lipped first, the long lips run over them.
        SetPiece set = SetOut(Text("", ", edges: lipped, lip: strips"));
        ExactLength wide = set.Value("A1.front.width.finished"), core = set.Value("A1.front.width.as-cut"), high = set.Value("A1.front.height.to-cut"), low = set.Value("A1.front.core.height");
        Assert.Equal(ExactLength.FromInches(Rational.Of(1, 2)), wide - core);
        Assert.Equal(ExactLength.FromInches(Rational.Of(1, 2)), high - low);
        Assert.Equal(low, set.Value("A1.front.end-lip.length"));
        Assert.Equal(wide, set.Value("A1.front.lip.length"));
        Assert.Equal(2, set.Parts.First(p => p.Key == "A1.front.lip").Count);
        Assert.Single(set.Steps, s => s.Parts.Contains("A1.front.lip"));
        // Raw and lipped fronts cover the same.
        Assert.Equal(SetOut(Text("")).Value("A1.front.height.to-cut"), high);
    }

    [Fact]
    public void Chamfered_SizesStay_AndTheWorkIsTold()
    {
        SetPiece raw = SetOut(Text("")), chamfered = SetOut(Text(", edges: chamfered"));
        Assert.All(raw.Parts, p => Assert.Equal(raw.Worked[p.Width.ToCut], chamfered.Worked[chamfered.Parts.First(c => c.Key == p.Key).Width.ToCut]));
        Assert.Contains(chamfered.Machinings, m => m.Part == "C.side" && m.Words.Contains("chamfer", StringComparison.Ordinal));
        Assert.Equal(Stage.Edges, chamfered.Steps[0].Stage);
    }

    [Theory]
    [InlineData(", edges: raw, band: 1/16", "edge.idle")]
    [InlineData(", edges: banded, lip: strips", "edge.idle")]
    [InlineData(", edges: lipped", "edge.no-lip")]
    public void Words_ThatDoNotGoTogether_AreRefused(string edges, string code)
    {
        Finding finding = Assert.Single(SetOut(Text(edges)).Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(code, finding.Code);
        Assert.True(finding.Place.IsKnown);
    }

    [Theory]
    [InlineData("3/4", "")]
    [InlineData("23/32", "edge.lip-too-narrow")]
    public void Lip_AsWideAsTheSheet_IsTheLimit(string wide, string code) =>
        Assert.Equal(code, string.Join(' ', SetOut(Text(", edges: lipped, lip: strips").Replace("1/4 x 7/8", "1/4 x " + wide, StringComparison.Ordinal)).Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Code)));

    [Fact]
    public void Weights_ByHand_AreVolumeTimesDensity()
    {
        // A side of 30 x 19 3/4 x 3/4 in is 7.282 litres; hardwood plywood 640 kg a cubic metre in the middle: 4.66 kg, give or take 40/640.
        SetPiece set = SetOut(Text(""));
        Mass side = Weights.OfOne(set, set.Parts.First(p => p.Key == "C.side"))!.Value;
        Assert.Equal(4.660, side.Kilograms.Value, 2);
        Assert.Equal(4.660 / 16, side.Kilograms.Error, 2);
        Assert.True(Weights.OfAll(set) is { IsWhole: true, Known.Kilograms.Value: > 30 and < 60 });
    }

    /// <summary>Fronts and doors that go into an opening are cut once it is read: their lips come after that, and before they are fitted, for what is trimmed comes off the lips.</summary>
    [Theory]
    [InlineData("lipped, lip: strips", "Glue the lips")]
    [InlineData("banded", "Band the seen edges")]
    [InlineData("chamfered", "Chamfer the seen edges")]
    public void Edges_OfInsetFrontsAndDoors_AreWorkedBetweenReadingAndFitting(string edges, string words)
    {
        string text = Text($", edges: {edges}").Replace("front: face}", "front: ply, fronts: inset}\n        doors:\n          in: {of: ply, lies: inset}".Replace("        ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        text = text.Replace("{opening: B, shelves:", "{opening: B, doors: {like: in, keys: [K1]}, shelves:", StringComparison.Ordinal);
        SetPiece set = SetOut(text);
        int At(Func<AssemblyStep, bool> which) => set.Steps.IndexOf(set.Steps.First(which));
        int[] edged = [.. set.Steps.Index().Where(s => s.Item.Words.StartsWith(words, StringComparison.Ordinal)).Select(s => s.Index)];
        Assert.Equal(3, edged.Length);
        int carcase = At(s => s.Stage == Stage.Carcase), read = At(s => s.Stage == Stage.Reading), fronts = At(s => s.Parts.Contains("A1.front")), door = At(s => s.Parts.Contains("K1"));
        Assert.True(edged[0] < carcase && read < edged[1] && edged[1] < fronts && fronts < edged[2] && edged[2] < door, string.Join(", ", [.. edged, carcase, read, fronts, door]));
        (string[] first, string[] second, string[] third) = (Marks(edged[0]), Marks(edged[1]), Marks(edged[2]));
        Assert.Contains("Cs", first);
        Assert.Equal(["A1f", "A2f"], second.Order());
        Assert.Equal(["K1"], third);
        if (words.StartsWith("Glue", StringComparison.Ordinal)) Assert.All(set.Steps[edged[1]].Parts, p => Assert.Contains(".front.", p, StringComparison.Ordinal));
        // Bands are bought once for all of them.
        Assert.Equal(words.StartsWith("Band", StringComparison.Ordinal) ? 1 : 0, set.Hardware.Count(h => h.Name.StartsWith("Edge band", StringComparison.Ordinal)));

        string[] Marks(int step) => set.Steps[step].Words.Split(" of ")[1].Split(':')[0].Split(", ").Where(w => !w.Contains(' ', StringComparison.Ordinal)).ToArray();
    }
}
