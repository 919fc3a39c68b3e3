using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;

namespace Setout.Core.Materials;

/// <summary>How many hinges carry a door.</summary>
/// <param name="Kind"><c>cup</c> or <c>butt</c>.</param>
/// <param name="MostHeight">The tallest door they carry.</param>
/// <param name="MostKilograms">The heaviest.</param>
/// <param name="Count">How many.</param>
/// <param name="Source">Where the row is from.</param>
public sealed record HingeFact(string Kind, ExactLength MostHeight, double MostKilograms, int Count, string Source);

/// <summary>Counts of hinges by the height and the weight of a door.</summary>
public static class HingeTable
{
    private static readonly Lazy<ImmutableArray<HingeFact>> s_rows = new(() =>
    [
        .. CsvFacts.Read("hinges.csv").Select(r => new HingeFact(r["kind"], CsvFacts.Length(r["most_height"]),
            double.Parse(r["most_kg"], CultureInfo.InvariantCulture), int.Parse(r["count"], CultureInfo.InvariantCulture), r["source"])),
    ]);

    /// <summary>All rows, each kind from the fewest up.</summary>
    public static ImmutableArray<HingeFact> All => s_rows.Value;

    /// <summary>The fewest that carry a door; null where even the most do not.</summary>
    /// <param name="kind"><c>cup</c> or <c>butt</c>.</param>
    /// <param name="height">Of the door.</param>
    /// <param name="kilograms">Its weight, the spread of its wood counted in; 0 where it is not known.</param>
    public static HingeFact? For(string kind, ExactLength height, double kilograms) =>
        All.Where(r => r.Kind == kind && height <= r.MostHeight && kilograms <= r.MostKilograms).MinBy(r => r.Count);
}
