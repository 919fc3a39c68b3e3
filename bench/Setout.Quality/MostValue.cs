using System.Diagnostics;
using Setout.Cutting.Sheets.Patterns;

namespace Setout.Quality;

/// <summary>
/// Problems of the greatest value of one sheet: the table of patterns answers those with any number of each part (gcut), the search of patterns those with only so many
/// (cgcut). Those of two stages (hifi2s) are another question and are counted only.
/// </summary>
internal static class MostValue
{
    private const long MostSteps = 2_000_000_000;

    public static bool Asks(BenchInstance instance) => instance.Problem == "max_value";

    /// <summary>Answers those of a file one by one; gives how many are not at the published best.</summary>
    public static int Run(IEnumerable<BenchInstance> instances, string variant, BestKnown known)
    {
        int apart = 0;
        foreach (BenchInstance instance in instances.Where(Asks))
        {
            if (instance.Family == "hifi2s") continue;
            long start = Stopwatch.GetTimestamp();
            (long value, bool isProven) = Of(instance, variant == "RG");
            string published = known.Of(instance.Id, variant) is { Best: { } best } found && found.Variant == variant ? $"{best:0}" : "none";
            if (published != "none" && published != $"{value}") apart++;
            Console.WriteLine($"{instance.Id},{variant}: worth {value}{(isProven ? ", proven" : "")}, published {published}, {Stopwatch.GetElapsedTime(start).TotalSeconds:0.000} s");
        }
        return apart;
    }

    private static (long Value, bool IsProven) Of(BenchInstance instance, bool mayTurn)
    {
        PatternPart[] parts = [.. instance.Parts.SelectMany((p, i) => mayTurn && p.Width != p.Height
            ? new PatternPart[] { new(i, p.Width, p.Height, false), new(i, p.Height, p.Width, true) } : [new(i, p.Width, p.Height, false)])];
        int[] counts = [.. instance.Parts.Select(p => p.Demand ?? int.MaxValue)];
        long[] prices = [.. instance.Parts.Select(p => (long)p.Value)];
        var table = new PatternTable(instance.Stock[0].Width, instance.Stock[0].Height, parts, counts, long.MaxValue);
        table.Fill(prices, () => false);
        if (instance.Parts.All(p => p.Demand is null)) return (table.Best, true);
        (List<PatternNode> patterns, bool finished, long most) = new PatternSearch(table, parts, counts).Find(prices, 0, MostSteps, int.MaxValue, () => false);
        if (finished) return (most, true);
        long best = patterns.Max(p =>
        {
            var own = new int[counts.Length];
            p.Count(own);
            return own.Zip(prices, (n, v) => n * v).Sum();
        });
        return (best, false);
    }
}
