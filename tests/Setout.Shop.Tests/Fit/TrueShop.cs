using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Tests.Fit;

/// <summary>
/// One shop as it really is, drawn by chance: what the wood really measures, where the stops really stand, what an instrument really says. It knows
/// how closely the shop works and the published limits of sheets, and nothing of how chances are worked out. All in millimetres.
/// </summary>
internal sealed class TrueShop(SetPiece plan, Accuracy accuracy, Random random, IReadOnlyDictionary<QuantityKey, string> careful)
{
    private readonly Dictionary<(string Material, double Figure, bool Careful), double> _settings = [];
    private readonly Dictionary<string, double> _lots = [], _sheets = [], _scales = [], _sections = [];
    private double? _slide;

    /// <summary>The figure that is set on the saw, from a plan.</summary>
    public static double Figure(SetPiece plan, string size) => plan.Worked[new QuantityKey(size).ToCut].ApproximateMillimetres;

    /// <summary>What comes off the saw. All of a material at one figure share the stop; the first cut is measured where the list says so.</summary>
    public double Cut(SetPiece plan, string material, string size)
    {
        QuantityKey key = new(size);
        double figure = Figure(plan, size);
        string? with = careful.GetValueOrDefault(key.AsCut);
        var setting = (material, figure, with is not null);
        if (!_settings.TryGetValue(setting, out double off))
        {
            double half = Mm(accuracy.Setting);
            _settings[setting] = off = Even(with is null ? half : Math.Min(half, Mm(accuracy.Instruments[with])));
        }
        return figure + off + Peaked(Mm(accuracy.Repeat));
    }

    /// <summary>The mean thickness of the lot: anywhere between the published limits of its label.</summary>
    public double Lot(string material) => Known(_lots, material, () =>
    {
        var panel = (Panel)plan.Piece.Materials[material];
        PanelFact fact = PanelTable.Find(panel.Kind, panel.Label)!;
        double least = fact.Least!.Value.ApproximateMillimetres, most = fact.Most!.Value.ApproximateMillimetres;
        return least + (random.NextDouble() * (most - least));
    });

    /// <summary>The thickness of one member: its lot, the sheet that all members of its part come from, and a spot of its own.</summary>
    public double Member(string part, string material) => Lot(material) + Known(_sheets, part, () => Even(Mm(accuracy.Sheet))) + Even(Mm(accuracy.Spot));

    /// <summary>A size of a stick's section; all sticks of a lumber alike.</summary>
    public double Section(string size) => Known(_sections, size, () => plan.Worked[new(size)].ApproximateMillimetres + Even(Mm(accuracy.Section)));

    /// <summary>The thickness of one slide; all slides of a kind alike.</summary>
    public double Slide(string kind) => _slide ??= plan.Worked[QuantityKey.Of(kind, "slide.thickness")].ApproximateMillimetres + Even(Mm(accuracy.Bought));

    /// <summary>How far a part stands off its place.</summary>
    public double Placing() => Even(Mm(accuracy.Placing));

    /// <summary>What an instrument says of a true length: half of its accuracy is its own, in everything read with it; half is of the one reading.</summary>
    public double Read(string instrument, double real)
    {
        double half = Mm(accuracy.Instruments[instrument]) / 2;
        return real + Known(_scales, instrument, () => Even(half)) + Even(half);
    }

    /// <summary>What an instrument says of a lot of sheets: as <see cref="Read"/>, at one spot.</summary>
    public double ReadLot(string instrument, string material) => Read(instrument, Lot(material) + Even(Mm(accuracy.Spot)));

    /// <summary>A reading as the log keeps it.</summary>
    public static Pin Pin(double millimetres, string with) =>
        new([Length.FromTicks((long)Math.Round(millimetres * Length.TicksPerMillimetre)).ToExact()], new(OriginKind.Reading, "read"), "e") { With = [with] };

    private static double Known(Dictionary<string, double> known, string key, Func<double> draw) =>
        known.TryGetValue(key, out double value) ? value : known[key] = draw();

    private double Even(double half) => ((random.NextDouble() * 2) - 1) * half;

    // Likeliest in the middle, in straight lines to nothing: the sum of two even ones.
    private double Peaked(double half) => (random.NextDouble() + random.NextDouble() - 1) * half;

    private static double Mm(Length length) => length.ToExact().ApproximateMillimetres;
}
