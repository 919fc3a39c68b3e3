using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Plans;

/// <summary>What readings, times and marks say beside their figures: how many spots a thickness is, when it was read, what was read beside what was planned, how much more is to be bought.</summary>
public class SaidAtTheBenchTests
{
    [Fact]
    public void Thickness_ReadAtSpots_SaysHowMany_AndHowFarSheetsDiffer()
    {
        var bench = new AtTheBench("luthiers-bench.yaml");
        Accuracy shop = bench.Source.Shop.Accuracy;
        Assert.Equal("", SpotWords.ReadSoFar(bench.Set, "boxes"));
        Assert.Equal("", SpotWords.Of(bench.Set, new("boxes.thickness"), shop));
        bench.Record("boxes.sheet-1.thickness", "0.472, 0.470", "calliper").Record("boxes.sheet-2.thickness", "0.465", "calliper");
        Assert.Equal("sheet 1 at 2 spots, sheet 2 at 1 spot", SpotWords.ReadSoFar(bench.Set, "boxes"));
        // 1/256 and 1/128 in stand in docs/readings.md, as common practice.
        const string differ = "a sheet differs in itself by about 1/256 in to either side, sheets of a lot by 1/128 in (common practice, no source)";
        Assert.Equal($"one spot counts for the whole sheet: {differ}", SpotWords.Of(bench.Set, new("boxes.sheet-2.thickness"), shop));
        Assert.Equal($"the mean of 2 spots counts for the whole sheet: {differ}", SpotWords.Of(bench.Set, new("boxes.sheet-1.thickness"), shop));
        Assert.Equal("", SpotWords.Of(bench.Set, new("L.width"), shop));
        Assert.Contains("(by the shop file)", SpotWords.Differ(shop with { Spot = Length.FromInches(1, 64) }, LengthUnit.Inch), StringComparison.Ordinal);
    }

    [Fact]
    public void Thickness_ReadAtMoreSpots_IsKnownCloser()
    {
        double Half(string values)
        {
            AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Record("boxes.sheet-1.thickness", values, "calliper");
            return new Spreads(bench.Set, bench.Source.Shop.Accuracy).Of(new("boxes.sheet-1.thickness"))!.StandardDeviation.Millimetres.Value;
        }
        double one = Half("0.470"), four = Half("0.470, 0.470, 0.470, 0.470");
        // Even errors: a variance of a third of the half width squared. The calliper itself 0.0005 for all; its own 0.0005 and the spot's 1/256 for each.
        double each = ((0.0005 * 0.0005) + (1 / 256.0 / 256.0)) / 3, itself = 0.0005 * 0.0005 / 3;
        Assert.Equal(25.4 * Math.Sqrt(itself + each), one, 6);
        Assert.Equal(25.4 * Math.Sqrt(itself + (each / 4)), four, 6);
    }

    [Theory]
    [InlineData("2026-03-12T09:40:07.123Z", "12 March 2026, 9:40")]
    [InlineData("2026-03-12T09:40:00+02:00", "12 March 2026, 9:40")]
    [InlineData("no time", "no time")]
    public void Time_OfAnEntry_IsSaidAsAPersonDoes(string at, string said) => Assert.Equal(said, EntryTime.Say(at));

    [Fact]
    public void Working_ThatWasRead_TellsNoTimeAsALogWritesIt()
    {
        var set = new AtTheBench("luthiers-bench.yaml").Record("L.width", "19 1/2", "tape").Mark(Progress.Cut, "L1").Set;
        string[] lines = [.. new[] { "L.width", "L1.opening", "L1.end.length.to-cut" }.SelectMany(k => WorkingLines.Of(WrittenWorking.Of(set.Worked, new QuantityKey(k))!, LengthUnit.Inch))];
        Assert.Contains(lines, l => l.Contains("tape, 4 May 2026, 9:00", StringComparison.Ordinal) && l.Contains("the reading counts", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("[L.width]", StringComparison.Ordinal) && l.Contains("tape, 4 May 2026, 9:00", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("cut, 4 May 2026, 9:01", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => l.Contains("T09:", StringComparison.Ordinal));
    }

    [Fact]
    public void Part_ReadAsCut_HasItsReadingBesideTheFigureToCut()
    {
        var set = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "studs").Record("L.rail.length.as-cut", "20 15/16").Set;
        (string word, ExactLength read) = Assert.Single(ReadAsCut.Of(set, set.Parts.First(p => p.Key == "L.rail")));
        Assert.Equal(("length", ExactLength.FromInches(Rational.Of(335, 16))), (word, read));
        // A mark is no reading, and planned parts have none.
        Assert.Empty(ReadAsCut.Of(set, set.Parts.First(p => p.Key == "K.rail")));
        Assert.Empty(ReadAsCut.Of(set, set.Parts.First(p => p.Key == "L1.end")));
    }

    private const string Tray = "setout: 1\nname: Tray\nunit: mm\nmaterials:\n  ply: {panel: birch plywood, label: 18 mm}\nparts:\n  - {part: A, of: ply, length: 600, width: 400}\n";

    private static Plan PlanOf(string piece, string shop, string log = "")
    {
        (PieceSource? source, var findings) = PieceSource.Read(piece, log.Length > 0 ? $"setout-log: 1\nentries:\n  - {log}\n" : null, shop);
        Assert.True(source is not null, string.Join("; ", findings.Select(f => f.Finding.Words)));
        return new PlanMaker(SheetSolvers.Default, BoardSolvers.Default).Make(source, LayoutEffort.Steps(new(2000, 1)));
    }

    [Fact]
    public void MaterialMarkedBought_OfWhichMoreIsAskedFor_SaysHowMuchMore()
    {
        const string bought = "{id: e0, at: \"2026-05-04T09:00:00Z\", bought: [ply]}";
        string shop = "setout-shop: 1\nname: yard\nunit: mm\nstock:\n  - {panel: birch plywood, label: 18 mm, size: 700 x 450, price: 5}\n", rack = shop + "  - {panel: birch plywood, label: 18 mm, size: 700 x 450, have: 1}\n";
        // One sheet is there, for one part; the edit asks for two more.
        string more = Tray.Replace("width: 400}", "width: 400, count: 3}", StringComparison.Ordinal);
        Assert.Equal("", Assert.Single(PlanOf(Tray, shop).Buying).More);
        Assert.DoesNotContain(PlanOf(Tray, rack, bought).Buying, l => l.More.Length > 0);
        BuyingLine line = Assert.Single(PlanOf(more, rack, bought).Buying, l => l.Kind == BuyingKind.Sheet);
        Assert.Equal((2, "2 sheets more: ply is marked bought, and the rack does not hold enough of it"), (line.Count, line.More));
        Assert.StartsWith(line.More, line.Beside, StringComparison.Ordinal);
        Assert.Contains("the rack holds none of it", Assert.Single(PlanOf(Tray, shop, bought).Buying).More, StringComparison.Ordinal);
        Assert.Contains("2 sheets more: ply is marked bought", System.Text.Encoding.UTF8.GetString(PlanCsv.Buying(PlanOf(more, rack, bought))), StringComparison.Ordinal);
    }
}
