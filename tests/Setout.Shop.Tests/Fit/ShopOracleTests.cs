using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Tests.SettingOut;

namespace Setout.Shop.Tests.Fit;

/// <summary>
/// Shops by the thousand, each built to the end by <see cref="BuiltPiece"/>: as often as a gap comes right there, so likely it must be in the report.
/// </summary>
public class ShopOracleTests
{
    private sealed record Seen(int Shops, Dictionary<string, double> Gaps, Dictionary<string, double> Groups, double Whole);

    [Theory]
    [InlineData(SettingOut.Sample.Bench)]
    [InlineData(SettingOut.Sample.Chest)]
    public void Dump(string sample)
    {
        (SetPiece plan, Accuracy accuracy, FitReport report) = Of(sample);
        Seen now = Build(sample, plan, accuracy, report, 50000, false);
        foreach (GapFit g in report.Gaps) Console.WriteLine($"now {g.Gap.Key} fit {g.Chance.Share.Value:0.0000} seen {now.Gaps[g.Gap.Key.Text]:0.0000} diff {now.Gaps[g.Gap.Key.Text] - g.Chance.Share.Value:0.0000}");
        foreach (GroupFit g in report.Groups) Console.WriteLine($"now group {g.Key} fit {g.Chance.Share.Value:0.0000} seen {now.Groups[g.Key]:0.0000}");
        Console.WriteLine($"now whole fit {report.Whole.Chance.Share.Value:0.0000} seen {now.Whole:0.0000}");
        var watch = System.Diagnostics.Stopwatch.StartNew();
        Seen then = Build(sample, plan, accuracy, report, 10000, true);
        Console.WriteLine($"{watch.Elapsed}");
        foreach (GapFit g in report.Gaps) Console.WriteLine($"then {g.Gap.Key} fit {g.ChanceMeasured.Share.Value:0.0000} seen {then.Gaps[g.Gap.Key.Text]:0.0000} diff {then.Gaps[g.Gap.Key.Text] - g.ChanceMeasured.Share.Value:0.0000}");
        foreach (GroupFit g in report.Groups) Console.WriteLine($"then group {g.Key} fit {g.ChanceMeasured.Share.Value:0.0000} seen {then.Groups[g.Key]:0.0000}");
        Console.WriteLine($"then whole fit {report.Whole.ChanceMeasured.Share.Value:0.0000} seen {then.Whole:0.0000}");
    }

    private static (SetPiece Plan, Accuracy Accuracy, FitReport Report) Of(string sample)
    {
        SetPiece plan = SettingOut.Sample.Of(sample);
        return (plan, Accuracy.Usual, FitCheck.Of(plan, Accuracy.Usual));
    }

    private static Seen Build(string sample, SetPiece plan, Accuracy accuracy, FitReport report, int shops, bool isMeasured)
    {
        var random = new Random(20260504);
        Dictionary<QuantityKey, string> careful = isMeasured ? Careful(plan, report) : [];
        var right = report.Gaps.ToDictionary(g => g.Gap.Key.Text, _ => 0);
        var groups = report.Groups.ToDictionary(g => g.Key, _ => 0);
        var windows = report.Gaps.Select(g => (Key: g.Gap.Key.Text, g.Gap.Group, Least: g.Gap.Least.ApproximateMillimetres - 1e-9, Most: g.Gap.Most.ApproximateMillimetres + 1e-9)).ToList();
        int whole = 0;
        for (int i = 0; i < shops; i++)
        {
            var shop = new TrueShop(plan, accuracy, random, careful);
            BuiltPiece built = sample == SettingOut.Sample.Bench ? new BuiltBench(shop) : new BuiltChest(shop);
            if (isMeasured) BuildMeasured(plan, report, shop, built);
            else
            {
                foreach (Action<SetPiece> stage in built.Stages) stage(plan);
            }
            Assert.Equal(right.Count, built.Gaps.Count);
            var wrong = new HashSet<string>();
            bool all = true;
            foreach ((string key, string group, double least, double most) in windows)
            {
                if (built.Gaps[key] >= least && built.Gaps[key] <= most) right[key]++;
                else
                {
                    wrong.Add(group);
                    all = false;
                }
            }
            foreach (string group in groups.Keys.Where(g => !wrong.Contains(g)).ToList()) groups[group]++;
            if (all) whole++;
        }
        return new(shops, right.ToDictionary(r => r.Key, r => (double)r.Value / shops), groups.ToDictionary(g => g.Key, g => (double)g.Value / shops), (double)whole / shops);
    }

    private static void BuildMeasured(SetPiece plan, FitReport report, TrueShop shop, BuiltPiece built)
    {
        var pins = new Dictionary<QuantityKey, Pin>();
        List<MeasureFirst> readings = [.. report.Measure.Where(m => m.Kind != MeasureKind.FirstCut)];
        foreach (MeasureFirst reading in readings)
        {
            Quantity quantity = plan.Worked.Values[reading.Key].Quantity;
            double? read = quantity.Scatter switch
            {
                Scatter.Sheet => shop.ReadLot(reading.Instrument, reading.Key.Owner),
                Scatter.Section => shop.Read(reading.Instrument, shop.Section(reading.Key.Text)),
                Scatter.Bought => shop.Read(reading.Instrument, shop.Slide(reading.Key.Owner)),
                _ => null,
            };
            if (read is { } value) pins[reading.Key] = TrueShop.Pin(value, reading.Instrument);
        }
        SetPiece known = PieceSetOut.Of(plan.Piece, plan.Grid, pins);
        foreach (Action<SetPiece> stage in built.Stages)
        {
            stage(known);
            // What stands now and is on the list is read, and the rest set out anew.
            List<MeasureFirst> open = [.. readings.Where(r => !pins.ContainsKey(r.Key) && built.Openings.ContainsKey(r.Key.Text))];
            if (open.Count == 0) continue;
            foreach (MeasureFirst reading in open) pins[reading.Key] = TrueShop.Pin(shop.Read(reading.Instrument, built.Openings[reading.Key.Text]), reading.Instrument);
            known = PieceSetOut.Of(plan.Piece, plan.Grid, pins);
        }
        Assert.All(readings, r => Assert.Contains(r.Key, pins.Keys));
    }

    /// <summary>The figures that are cut with care: all of one material that are set to the figure of a first cut on the list.</summary>
    private static Dictionary<QuantityKey, string> Careful(SetPiece plan, FitReport report)
    {
        var sizes = plan.Parts.SelectMany(p => new[] { (p.Material, p.Length), (p.Material, p.Width) }).Where(s => s.Item2.ToCut != s.Item2.Exact)
            .Concat(plan.Worked.Order.Where(k => k.Text.EndsWith(".groove.depth", StringComparison.Ordinal)).Select(k => ("grooves", new PartSize(k, k.ToCut, k.AsCut))))
            .DistinctBy(s => s.Item2.AsCut).ToList();
        var careful = new Dictionary<QuantityKey, string>();
        foreach (MeasureFirst first in report.Measure.Where(m => m.Kind == MeasureKind.FirstCut))
        {
            (string material, PartSize size) = sizes.Single(s => s.Item2.AsCut == first.Key);
            foreach ((string of, PartSize other) in sizes)
                if (of == material && plan.Worked[other.ToCut] == plan.Worked[size.ToCut]) careful[other.AsCut] = first.Instrument;
        }
        return careful;
    }
}
