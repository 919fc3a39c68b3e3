using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Tests.Workings;

/// <summary>Short ways to write quantities and readings in tests; lengths are whole millimetres.</summary>
internal static class Quantities
{
    public static readonly Origin Given = new(OriginKind.Given, "given");

    public static QuantityKey Key(string text) => new(text);

    public static ExactLength Mm(Rational millimetres) => ExactLength.FromMillimetres(millimetres);

    public static Quantity Stated(string key, Rational millimetres) => new(Key(key), key, new Stated(Mm(millimetres), Given));

    public static Quantity Sum(string key, params (Rational Times, string Of)[] terms) =>
        new(Key(key), key, new Sum([.. terms.Select(t => Term.From(t.Of, t.Times, Key(t.Of)))]));

    public static Pin Read(params Rational[] millimetres) => new([.. millimetres.Select(Mm)], new(OriginKind.Reading, "read"), "e1");

    public static Dictionary<QuantityKey, Pin> Pins(params (string Key, Pin Pin)[] pins) => pins.ToDictionary(p => Key(p.Key), p => p.Pin);

    public static WorkedPiece Work(IEnumerable<Quantity> quantities, params (string Key, Pin Pin)[] pins)
    {
        var evaluation = new Evaluation(Pins(pins));
        foreach (Quantity quantity in quantities) evaluation.Define(quantity);
        return evaluation.Finish();
    }
}
