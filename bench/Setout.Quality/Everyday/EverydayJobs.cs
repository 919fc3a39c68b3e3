using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Quality.Everyday;

/// <summary>One material of a job.</summary>
internal sealed record JobMaterial(string Name, SheetInstance Instance);

/// <summary>A job for a small shop: the parts of some cases and drawers over four materials.</summary>
internal sealed record EverydayJob(int Number, ImmutableArray<JobMaterial> Materials)
{
    public int Parts => Materials.Sum(m => m.Instance.PartsInAll);
}

/// <summary>
/// Invented jobs: no shop's orders stand behind them. Each is a row of cases with shelves, doors and drawers of common casework sizes, 80 to 150
/// parts on 3/4, 1/2 and 1/4 in plywood and MDF. Sizes are whole sixteenths of an inch. Grain is kept on what is seen (sides, shelves, fronts,
/// drawer sides) and free on what is not (stretchers, bottoms, backs of drawers, MDF). Kerf 1/8 in, 1/4 in trimmed at every edge. Prices are
/// invented too. In half of the jobs one of the plywoods is also sold in halves and quarters, which cost more by area.
/// </summary>
internal static class EverydayJobs
{
    private const int Inch = 16;
    private const int LeastParts = 80, MostParts = 150;

    private static readonly Length Kerf = Length.FromInches(1, 8);
    private static readonly EdgeTrim Trim = EdgeTrim.AllRound(Length.FromInches(1, 4));

    /// <summary>Job <paramref name="number"/> of a seed; the same for ever.</summary>
    public static EverydayJob Make(int seed, int number)
    {
        var random = new JobRandom(unchecked((seed * 1_000_003) + number));
        var parts = new JobParts();
        int target = random.Between(LeastParts, MostParts);
        // Kinds of case of the same depth and height, as they stand in a row; some are made several times over.
        int depth = random.OneOf(12, 14, 16, 18, 20, 22, 23) * Inch + random.OneOf(0, 4, 8, 12);
        int height = random.OneOf(28, 30, 32, 34, 42, 48, 60, 72) * Inch + random.OneOf(0, 8);
        AddDrawers(parts, random, depth, random.Between(2, 4));
        AddDoors(parts, random, height, random.Between(1, 2));
        while (parts.Count < target)
        {
            int width = random.Between(12, 36) * Inch + random.OneOf(0, 0, 4, 8, 10, 12, 14);
            int times = random.OneOf(1, 1, 2, 3);
            for (int i = 0; i < times && parts.Count < target; i++) AddCase(parts, width, height, depth, random.Between(1, 3));
            switch (random.Between(0, 2))
            {
                case 0: AddDrawers(parts, random, depth, random.Between(2, 5)); break;
                case 1: AddDoors(parts, random, height, random.OneOf(1, 2)); break;
                default: AddTop(parts, width, depth); break;
            }
        }
        parts.TrimTo(MostParts);
        int soldInPieces = random.Between(0, 1) == 0 ? -1 : random.Between(0, 2);
        bool square = random.Between(0, 1) == 0;
        return new(number,
        [
            Material("3/4 ply", parts, soldInPieces == 0, ("96x48", 96, 48, 84m)),
            Material("1/2 ply", parts, soldInPieces == 1, square ? ("60x60", 60, 60, 58m) : ("96x48", 96, 48, 66m)),
            Material("1/4 ply", parts, soldInPieces == 2, ("96x48", 96, 48, 38m)),
            Material("MDF", parts, false, ("97x49", 97, 49, 52m)),
        ]);
    }

    private static JobMaterial Material(string name, JobParts parts, bool inPieces, (string Id, int Along, int Across, decimal Cost) sheet)
    {
        ImmutableArray<SheetStock>.Builder stock = ImmutableArray.CreateBuilder<SheetStock>();
        stock.Add(new(sheet.Id, Length.FromInches(sheet.Along), Length.FromInches(sheet.Across), Trim, new(sheet.Cost), null));
        if (inPieces)
        {
            // A half is cut across the sheet, a quarter once more along it.
            stock.Add(new("half", Length.FromInches(sheet.Along, 2), Length.FromInches(sheet.Across), Trim, new(sheet.Cost * 0.56m), null));
            stock.Add(new("quarter", Length.FromInches(sheet.Along, 2), Length.FromInches(sheet.Across, 2), Trim, new(sheet.Cost * 0.31m), null));
        }
        return new(name, new(parts.Of(name), stock.ToImmutable(), Kerf, KeepRule.Nothing));
    }

    private static void AddCase(JobParts parts, int width, int height, int depth, int shelves)
    {
        const int board = Inch * 3 / 4;
        int inside = width - (2 * board);
        parts.Add("3/4 ply", height, depth, 2, GrainRule.Keep); // sides
        parts.Add("3/4 ply", inside, depth, 1, GrainRule.Keep); // bottom
        parts.Add("3/4 ply", inside, 4 * Inch, 3, GrainRule.Free); // stretchers and toe kick
        parts.Add("3/4 ply", inside - 2, depth - Inch, shelves, GrainRule.Keep);
        parts.Add("1/4 ply", height - (4 * Inch), width - (Inch / 2), 1, GrainRule.Keep); // back
    }

    private static void AddDrawers(JobParts parts, JobRandom random, int depth, int count)
    {
        int width = random.Between(12, 30) * Inch + random.OneOf(0, 4, 8, 12);
        int length = depth / (2 * Inch) * 2 * Inch; // drawers come in steps of two inches, as their slides do
        int[] heights = [random.OneOf(3, 4), random.OneOf(4, 5, 6), random.OneOf(6, 8, 10)];
        for (int i = 0; i < count; i++)
        {
            int height = heights[Math.Min(i, 2)] * Inch + random.OneOf(0, 0, 8);
            parts.Add("1/2 ply", length, height, 2, GrainRule.Keep); // sides
            parts.Add("1/2 ply", width - (2 * Inch), height, 1, GrainRule.Keep); // front
            parts.Add("1/2 ply", width - (2 * Inch), height - (Inch / 2), 1, GrainRule.Free); // back
            parts.Add("1/4 ply", width - (Inch * 3 / 2), length - (Inch / 2), 1, GrainRule.Free); // bottom
            parts.Add("3/4 ply", width - (Inch / 8), height + (2 * Inch), 1, GrainRule.Keep); // false front
        }
    }

    // Painted doors and end panels; paint hides which way they lay.
    private static void AddDoors(JobParts parts, JobRandom random, int height, int pairs)
    {
        int width = random.Between(10, 20) * Inch + random.OneOf(0, 7, 15);
        parts.Add("MDF", height - (5 * Inch), width, 2 * pairs, GrainRule.Free);
        parts.Add("MDF", random.Between(3, 6) * Inch, random.Between(24, 60) * Inch, pairs, GrainRule.Free);
    }

    // A top, built up below with strips of MDF.
    private static void AddTop(JobParts parts, int width, int depth)
    {
        parts.Add("3/4 ply", width + Inch, depth + Inch, 1, GrainRule.Keep);
        parts.Add("MDF", width + Inch, 3 * Inch, 2, GrainRule.Free);
        parts.Add("MDF", depth - (5 * Inch), 3 * Inch, 2, GrainRule.Free);
    }
}
