namespace Setout.Quality;

/// <summary>Prints results by family and in all.</summary>
internal static class Summary
{
    /// <summary>The exit code: 0, or 1 when anything is wrong with any layout.</summary>
    public static int Print(IReadOnlyList<BenchInstance> instances, IReadOnlyList<Result> results, BestKnown known, string variant)
    {
        Dictionary<string, Result> byId = results.DistinctBy(r => r.Id).ToDictionary(r => r.Id, StringComparer.Ordinal);
        (BenchInstance Instance, Result Result)[] rows = [.. instances.Where(i => byId.ContainsKey(i.Id)).Select(i => (i, byId[i.Id]))];
        Console.WriteLine();
        Console.WriteLine("group                  count  stock          cost         bound | with best      cost          best   below  equal  above | proven  left out  violations  seconds");
        foreach (IGrouping<string, (BenchInstance Instance, Result Result)> group in rows.GroupBy(GroupOf).OrderBy(g => g.Key, StringComparer.Ordinal))
            Line(group.Key, [.. group], known, variant);
        Line("all", rows, known, variant);
        AreaUsed.Print(rows, known, variant);
        string[] stoodIn = [.. rows.Select(r => known.Of(r.Instance.Id, variant)?.Variant).OfType<string>().Where(v => v != variant).Distinct()];
        if (stoodIn.Length > 0) Console.WriteLine($"Best values of {string.Join(", ", stoodIn)} stand in where none is known for {variant}; free cutting (F) may be out of a saw's reach.");
        return rows.Any(r => r.Result.Violations > 0) ? 1 : 0;
    }

    // Classes of file A are told apart, they differ so much.
    private static string GroupOf((BenchInstance Instance, Result Result) row) =>
        row.Instance.Id.StartsWith("A-c", StringComparison.Ordinal) ? $"{row.Instance.Family} {row.Instance.Id[2..5]}" : row.Instance.Family;

    private static void Line(string name, (BenchInstance Instance, Result Result)[] rows, BestKnown known, string variant)
    {
        (decimal Cost, decimal Best)[] pairs = [.. rows
            .Where(r => r.Result.LeftOut == 0 && known.Of(r.Instance.Id, variant)?.Best is not null)
            .Select(r => (r.Result.Cost, known.Of(r.Instance.Id, variant)!.Best!.Value))];
        decimal? bound = rows.All(r => r.Result.Bound is not null) ? rows.Sum(r => r.Result.Bound!.Value) : null;
        Console.WriteLine(
            $"{name,-22} {rows.Length,5} {rows.Sum(r => r.Result.StockUsed),6} {rows.Sum(r => r.Result.Cost),13:0.##} {bound,13:0.##} | "
            + $"{pairs.Length,9} {pairs.Sum(p => p.Cost),9:0.##} {pairs.Sum(p => p.Best),13:0.##} "
            + $"{pairs.Count(p => p.Cost < p.Best),7} {pairs.Count(p => p.Cost == p.Best),6} {pairs.Count(p => p.Cost > p.Best),6} | "
            + $"{(rows.Length == 0 ? 0 : (double)rows.Count(r => r.Result.Proven) / rows.Length),6:0.0%} {rows.Count(r => r.Result.LeftOut > 0),9} {rows.Sum(r => r.Result.Violations),11} {rows.Sum(r => r.Result.Seconds),8:0.0}");
    }
}
