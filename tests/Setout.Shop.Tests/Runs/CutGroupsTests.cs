using Setout.Core.Craft;
using Setout.Drawing.Documents;
using Setout.Shop.BenchSheets;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Texts;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Runs;

/// <summary>Cuts and holes by part: what can hurt stands at the cut that it belongs to, on the page and on paper.</summary>
public class CutGroupsTests
{
    private static Plan Topped(string top)
    {
        string piece = $$"""
            setout: 1
            name: Bench
            unit: mm
            materials:
              ply: {panel: hardwood plywood, label: 18 mm, thickness: 18, grain: free}
              studs: {stick: pine, section: 38 x 89}
            assembly:
              - {frame: F, of: studs, width: 1800, height: 850, depth: 500, toe: 100, top rails: flat, across: [{opening: B}]}
              - {top: T, of: ply, overhang: {front: 25}, {{top}}}

            """;
        const string shop = """
            setout-shop: 1
            unit: mm
            kerf: {sheets: 3, boards: 3}
            stock:
              - {panel: hardwood plywood, label: 18 mm, size: 2440 x 1220, price: 60}
              - {stick: pine, section: 38 x 89, length: 3000, price: 6}

            """;
        (PieceSource? source, var findings) = PieceSource.Read(piece, null, shop);
        return Sample.Make(source ?? throw new InvalidOperationException(string.Join("; ", findings.Select(f => f.Finding.Words))));
    }

    [Fact]
    public void Of_AnOpeningForAWell_TheCautionOfItsStepStandsAtTheCut_AndOnPaper()
    {
        Plan plan = Topped("wells: [{well: W, machine: planer, from left: 500, from front: 100, footprint: 700 x 350, table height: 130, bearers: studs}]");
        string caution = Cautions.Of(Assert.Single(plan.Set.Steps, s => s.Words.StartsWith("Cut the opening of well W", StringComparison.Ordinal)).Caution).Words;
        Assert.Contains("falls out", caution, StringComparison.Ordinal);
        GroupedCut cut = Assert.Single(CutGroup.Of(plan).SelectMany(g => g.Cuts), c => c.Words.StartsWith("Opening of well W", StringComparison.Ordinal));
        Assert.Equal(caution, cut.Caution);
        string[] paper = [.. CutPages.Of(plan, Paper.A4).Single().Blocks.OfType<TableBlock>().Single().Rows.OfType<CellRow>().SelectMany(r => r.Cells).SelectMany(c => c.Phrases).Select(p => p.PlainText)];
        Assert.Contains($"Caution: {caution}", paper);
    }

    /// <summary>A dado for a sheet of 18.1 mm, 0.7126 in, is set wider than 45/64: a figure that is no mark of the rule says so on paper.</summary>
    [Fact]
    public void Of_ADadoForASheetBetweenTheMarks_SaysOnPaperThatItIsNoMark()
    {
        const string piece = """
            setout: 1
            name: Rack
            unit: in
            materials:
              ply: {panel: hardwood plywood, label: 3/4, thickness: 18.1 mm}
            assembly:
              - {case: C, of: ply, width: 30, height: 40, depth: 12, dividers: dado, down: [{opening: A, height: 18}, {deck: E}, {opening: B, height: rest}]}

            """;
        const string shop = "setout-shop: 1\nunit: in\nstock:\n  - {panel: hardwood plywood, label: 3/4, thickness: 18.1 mm, size: 96 x 48, price: 60}\n";
        (PieceSource? source, var findings) = PieceSource.Read(piece, null, shop);
        Plan plan = Sample.Make(source ?? throw new InvalidOperationException(string.Join("; ", findings.Select(f => f.Finding.Words))));
        string[] paper = [.. CutPages.Of(plan, Paper.Letter).Single().Blocks.OfType<TableBlock>().Single().Rows.OfType<CellRow>().SelectMany(r => r.Cells).SelectMany(c => c.Phrases).Select(p => p.PlainText)];
        Assert.Contains("width just under 23/32", paper);
    }

    [Fact]
    public void Of_ASlotInPasses_ItsCautionStandsOnce_AtTheFirst()
    {
        GroupedCut[] cuts = [.. CutGroup.Of(Topped("slots: [{slot: S, along: front, from: 60, width: 19, depth: 10, bit: 12}]")).SelectMany(g => g.Cuts)];
        Assert.True(cuts.Length > 2);
        Assert.Equal([Cautions.Of("router").Words], cuts.Select(c => c.Caution).Where(c => c.Length > 0));
        Assert.NotEmpty(cuts[0].Caution);
    }
}
