using System.Text.RegularExpressions;

namespace Setout.Quality;

/// <summary>
/// Where the cost of a sheet is its area: the share of the area that parts take, as a mean over each group that papers give one for. Theirs
/// are means over the whole group, ours over the half of it that is in the files.
/// </summary>
internal static partial class AreaUsed
{
    public static void Print(IReadOnlyList<(BenchInstance Instance, Result Result)> rows, BestKnown known, string variant)
    {
        foreach (IGrouping<string, (BenchInstance Instance, Result Result)> group in rows.Where(r => r.Result.LeftOut == 0 && CostIsArea(r.Instance)).GroupBy(r => GroupOf(r.Instance.Id)).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            if (group.Key.Length == 0) continue;
            double use = group.Average(r => 100.0 * r.Instance.Parts.Sum(p => (double)p.Width * p.Height * p.Count) / (double)r.Result.Cost);
            string published = known.Use(group.Key, variant) is { } theirs ? $"{theirs:0.0} % published" : $"none published for {variant}";
            Console.WriteLine($"{group.Key}: parts take {use:0.0} % of the sheets on average over {group.Count()} instances, {published}");
        }
    }

    /// <summary>The published group of an id, or empty.</summary>
    public static string GroupOf(string id)
    {
        Match match = Group().Match(id);
        return match.Success ? $"B-{match.Groups["family"].Value}-{match.Groups["group"].Value}" : "";
    }

    private static bool CostIsArea(BenchInstance instance) => instance.Stock.All(s => s.Cost == (decimal)s.Width * s.Height);

    [GeneratedRegex("^B-(?<family>hopper_m|ortmann|pisinger)-(MB_)?(?<group>M\\d|C\\d+|[A-Z][a-z]+\\d+i)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Group();
}
