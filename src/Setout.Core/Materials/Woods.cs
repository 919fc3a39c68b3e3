using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;

namespace Setout.Core.Materials;

/// <summary>What is published of a solid wood: averages of clear test wood, no promise for a board.</summary>
/// <param name="Name">As it is called in the yard, such as <c>white oak</c>.</param>
/// <param name="Density">Kilograms a cubic metre at 12 % moisture, give or take a tenth: the spread of specific gravity within a species that the Wood Handbook gives, from memory.</param>
/// <param name="Radial">Change across quarter-sawn wood, a unit of width and 1 % of moisture, from 6 to 14 %.</param>
/// <param name="Tangential">The same across flat-sawn wood.</param>
/// <param name="DensitySource">Where the density is from.</param>
/// <param name="MovementSource">Where the two coefficients are from.</param>
public sealed record WoodFact(string Name, Estimate Density, Rational Radial, Rational Tangential, string DensitySource, string MovementSource);

/// <summary>Solid woods by their usual names.</summary>
public static class Woods
{
    private static readonly Lazy<ImmutableArray<WoodFact>> s_woods = new(() =>
    [
        .. CsvFacts.Read("woods.csv").Select(r =>
        {
            double gravity = double.Parse(r["specific_gravity"], CultureInfo.InvariantCulture);
            // Wood Handbook, chapter 4: specific gravity at 12 % from that on green volume, shrinkage from 30 %.
            if (r["volume"] == "green") gravity /= 1 - (0.265 * 0.6 * gravity);
            double density = 1000 * gravity * 1.12;
            return new WoodFact(r["wood"], new Estimate(density, density / 10), Coefficient(r["radial"]), Coefficient(r["tangential"]), r["gravity_source"], r["movement_source"]);
        }),
    ]);

    /// <summary>All woods on record.</summary>
    public static ImmutableArray<WoodFact> All => s_woods.Value;

    /// <summary>
    /// The wood that a name speaks of: the longest known name that stands in it as whole words, so that <c>quarter-sawn white oak</c> is white oak.
    /// Null when none does.
    /// </summary>
    public static WoodFact? Find(string name)
    {
        string padded = $" {name.ToLowerInvariant().Replace('-', ' ').Replace(',', ' ')} ";
        return All.Where(w => padded.Contains($" {w.Name.ToLowerInvariant()} ", StringComparison.Ordinal)).MaxBy(w => w.Name.Length);
    }

    private static Rational Coefficient(string text) => Rational.Of(long.Parse(text.Replace(".", "", StringComparison.Ordinal), CultureInfo.InvariantCulture), 100_000);
}
