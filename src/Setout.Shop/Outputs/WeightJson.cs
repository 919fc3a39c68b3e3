using System.Text.Json;
using Setout.Core.Craft;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Shop.Plans;

namespace Setout.Shop.Outputs;

/// <summary>Writes what things weigh: kilograms with how far they may be off, as the densities on record are ranges.</summary>
internal static class WeightJson
{
    /// <summary>The weight of one member of a part; nothing where no density is on record.</summary>
    public static void Part(Utf8JsonWriter json, SetPiece set, Part part)
    {
        if (Weights.OfOne(set, part) is { } one) Mass(json, "weight", one);
    }

    /// <summary>The heaviest thing handled in a step.</summary>
    public static void Lift(Utf8JsonWriter json, SetPiece set, AssemblyStep step)
    {
        if (Lifting.Of(set, step) is not { } lift) return;
        json.WriteStartObject("lift");
        Lift(json, lift);
        json.WriteEndObject();
    }

    /// <summary>Materials with density, movement and weight; the whole piece; the largest to lift.</summary>
    public static void Whole(Utf8JsonWriter json, SetPiece set)
    {
        json.WriteStartObject("weights");
        SetOutJson.List(json, "materials", set.Parts.GroupBy(p => p.Material), parts =>
        {
            Material material = set.Piece.Materials[parts.Key];
            json.WriteString("material", material.Name);
            if (Weights.DensityOf(material) is { } density)
            {
                json.WriteStartObject("density");
                json.WriteNumber("kg_m3", Rounded(density.Value));
                json.WriteNumber("give_or_take_kg_m3", Rounded(density.Error));
                json.WriteString("source", Weights.SourceOf(material));
                json.WriteEndObject();
                Mass(json, "weight", Weights.Of(set, parts).Known);
            }
            if (Weights.WoodOf(material) is { } wood) Movement(json, wood);
        });
        Weight whole = Weights.OfAll(set);
        Mass(json, "piece", whole.Known);
        json.WriteStartArray("without");
        foreach (string name in whole.Without) json.WriteStringValue(name);
        json.WriteEndArray();
        json.WriteString("left_out", WeightWords.LeftOut);
        if (Lifting.Largest(set) is { } largest)
        {
            json.WriteStartObject("largest_lift");
            Lift(json, largest);
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }

    private static void Lift(Utf8JsonWriter json, Lift lift)
    {
        json.WriteString("what", lift.What);
        Mass(json, "weight", lift.Weight.Known);
        json.WriteString("hands", lift.IsForMore ? "more" : lift.IsForTwo ? "two" : "one");
    }

    private static void Movement(Utf8JsonWriter json, WoodFact wood)
    {
        json.WriteStartObject("movement");
        json.WriteString("wood", wood.Name);
        json.WriteNumber("radial", Coefficient(wood.Radial));
        json.WriteNumber("tangential", Coefficient(wood.Tangential));
        json.WriteString("source", wood.MovementSource);
        json.WriteEndObject();
    }

    private static void Mass(Utf8JsonWriter json, string name, Mass mass)
    {
        json.WriteStartObject(name);
        json.WriteNumber("kg", Rounded(mass.Kilograms.Value));
        json.WriteNumber("give_or_take_kg", Rounded(mass.Kilograms.Error));
        json.WriteEndObject();
    }

    // Whole grams: a density is never as sure as that, and equal plans are equal bytes.
    private static decimal Rounded(double value) => Math.Round((decimal)value, 3);

    private static decimal Coefficient(Rational value) => (decimal)(long)(value * 100_000).Round(Rounding.Nearest) / 100_000;
}
