using System.Globalization;
using Setout.Core.Craft;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;

namespace Setout.Shop.Plans;

/// <summary>Weights in words: pounds in a piece in inches, kilograms in one in millimetres, always with how sure they are.</summary>
public static class WeightWords
{
    /// <summary>What no weight counts in.</summary>
    public const string LeftOut = "hardware, glue and finish left out; grooves and holes not taken off";

    /// <summary>Such as <c>about 75 lb (69 to 81)</c>; one decimal below 10.</summary>
    public static string Of(Mass mass, LengthUnit unit)
    {
        (double value, double give) = In(mass, unit);
        return $"about {Number(value)} {Unit(unit)} ({Number(Math.Max(0, value - give))} to {Number(value + give)})";
    }

    /// <summary>The same of a sum, with what is not in it.</summary>
    public static string Of(Weight weight, LengthUnit unit)
    {
        if (weight.IsWhole) return Of(weight.Known, unit);
        string without = $"no density on record for {string.Join(", ", weight.Without)}";
        return weight.Known.Kilograms.Value > 0 ? $"{Of(weight.Known, unit)} without {string.Join(", ", weight.Without)}: {without}" : $"not known: {without}";
    }

    /// <summary>The bare figure, such as <c>75 lb</c>, for a column; a question mark where it is not known.</summary>
    public static string Short(Mass? mass, LengthUnit unit) => mass is { } known ? $"{Number(In(known, unit).Value)} {Unit(unit)}" : "?";

    /// <summary>What is the heaviest to lift in a step, and what to do about it; empty where it is light, or has no weight on record.</summary>
    public static (string Words, string Advice) Lift(SetPiece set, AssemblyStep step) =>
        Lifting.Of(set, step) is { } lift && lift.Weight.Most >= WorthSaying ? ($"Largest to lift: {lift.What}, {Of(lift.Weight, set.Piece.Shown)}.", lift.Advice) : ("", "");

    /// <summary>What to mind in a step: what the weight asks for, in the place of the general caution on lifting, and the other cautions.</summary>
    public static string Mind(SetPiece set, AssemblyStep step, string advice)
    {
        // Of what has its weight on record the weight speaks.
        bool isWeighed = step.Caution == "lift" && Lifting.Of(set, step) is { Weight.IsWhole: true };
        string caution = step.Caution.Length == 0 || isWeighed ? "" : Cautions.Of(step.Caution).Words;
        return advice.Length > 0 && caution.Length > 0 ? $"{advice} {caution}" : advice + caution;
    }

    /// <summary>Under this nobody asks: 5 kg, common practice, no source.</summary>
    private const double WorthSaying = 5;

    /// <summary>The whole piece and the largest to lift, in two sentences.</summary>
    public static string Whole(SetPiece set, bool isOne = true)
    {
        string whole = $"{(isOne ? "The piece weighs" : "The pieces weigh")} {Of(Weights.OfAll(set), set.Piece.Shown)}; {LeftOut}.";
        return Lifting.Largest(set) is { } largest ? $"{whole} Largest to lift: {largest.What}, {Of(largest.Weight, set.Piece.Shown)}.{(largest.IsForTwo ? $" {largest.Advice}" : "")}" : whole;
    }

    /// <summary>The heaviest sheet or board that a plan lays out, and what it weighs; null where none has a weight on record.</summary>
    public static (string Words, Mass Mass)? HeaviestStock(Plan plan) => plan.Sheets
        .SelectMany(s => s.Outcome.Layout.Sheets.Select(l => s.Stock.First(k => k.Id == l.StockId)).Select(k => (Words: $"{s.Material.Name} {k.Words}", Mass: k.Size.Across is { } across ? Weights.OfStock(plan.Set, s.Material, k.Size.Along, across) : null)))
        .Where(s => s.Mass is not null).OrderByDescending(s => s.Mass!.Value.Kilograms.Value).Select(s => ((string, Mass)?)(s.Words, s.Mass!.Value)).FirstOrDefault();

    private static (double Value, double Give) In(Mass mass, LengthUnit unit) => unit == LengthUnit.Inch
        ? (mass.Pounds, mass.Kilograms.Error * Mass.PoundsPerKilogram)
        : (mass.Kilograms.Value, mass.Kilograms.Error);

    private static string Unit(LengthUnit unit) => unit == LengthUnit.Inch ? "lb" : "kg";

    private static string Number(double value) => value.ToString(value < 10 ? "0.0" : "0", CultureInfo.InvariantCulture);
}
