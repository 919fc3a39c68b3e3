using System.Text.Json;
using CsCheck;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using Setout.Cutting.Sheets.Patterns;
using Setout.Testing;

namespace Setout.Cutting.Tests.Sheets.Patterns;

/// <summary>The most that one sheet can be worth: against published instances, and against every layout of tiny ones.</summary>
public class PatternTests
{
    // gcut: Beasley, "Algorithms for unconstrained two-dimensional guillotine cutting", Journal of the Operational Research Society 36, 1985; optima computed by an exact
    // dynamic programme with the benchmark set, which agree with those published (see bench/data/README.md). Any number of each part.
    public static TheoryData<string, string> Gcut => new(
        from id in (string[])["gcut1", "gcut3", "gcut5", "gcut7", "gcut9", "gcut11", "gcut13"] from variant in (string[])["OG", "RG"] select (id, variant));

    [Theory]
    [MemberData(nameof(Gcut))]
    public void Best_Gcut_IsThePublishedOptimum(string id, string variant)
    {
        (PatternTable table, PatternPart[] _, long[] prices, int[] _) = Outside($"D-{id}", variant);
        Assert.True(table.IsAffordable);
        table.Fill(prices, () => false);
        Assert.Equal(Published($"D-{id}", variant), table.Best);
        var counts = new int[prices.Length];
        table.Pattern(prices).Count(counts);
        Assert.Equal(table.Best, counts.Zip(prices, (n, p) => n * p).Sum());
    }

    // cgcut: Christofides and Whitlock, "An algorithm for two-dimensional cutting problems", Operations Research 25, 1977: only so many of each part.
    [Theory]
    [InlineData("cgcut1", "OG")]
    [InlineData("cgcut1", "RG")]
    [InlineData("cgcut3", "OG")]
    public void Find_Cgcut_IsThePublishedOptimum(string id, string variant)
    {
        (PatternTable table, PatternPart[] parts, long[] prices, int[] counts) = Outside($"D-{id}", variant);
        table.Fill(prices, () => false);
        (List<PatternNode> patterns, bool finished, long most) = new PatternSearch(table, parts, counts).Find(prices, 0, 500_000_000, int.MaxValue, () => false);
        Assert.True(finished);
        Assert.Equal(Published($"D-{id}", variant), most);
        Assert.All(patterns, p => AssertWithin(p, counts, table));
    }

    // The parts' sizes and prices, the sheet, each part once or twice.
    private static readonly Gen<(int Along, int Across, PatternPart[] Parts, long[] Prices, int[] Counts)> s_tiny =
        Gen.Select(Gen.Int[6, 12], Gen.Int[6, 11], Gen.Select(Gen.Int[1, 7], Gen.Int[1, 6], Gen.Int[1, 9], Gen.Bool).Array[1, 5]).Select((along, across, parts) =>
        {
            PatternPart[] ways = [.. parts.SelectMany((p, i) => p.Item4 && p.Item1 != p.Item2
                ? new PatternPart[] { new(i, p.Item1, p.Item2, false), new(i, p.Item2, p.Item1, true) } : [new(i, p.Item1, p.Item2, false)])];
            return (along, across, ways, parts.Select(p => (long)p.Item3).ToArray(), parts.Select(_ => 1).ToArray());
        });

    [Fact]
    public void Find_TinySheets_IsTheMostOfEveryLayout() => s_tiny.Holds(sheet =>
    {
        (int along, int across, PatternPart[] ways, long[] prices, int[] counts) = sheet;
        SheetPart[] parts = [.. Enumerable.Range(0, prices.Length).Select(t => ways.First(w => w.Type == t)).Select((w, t) => new SheetPart(
            $"p{t}", Length.FromMillimetres(w.Along), Length.FromMillimetres(w.Across), 1, ways.Any(x => x.Type == t && x.Turned) ? GrainRule.Free : GrainRule.Keep))];
        var every = new EveryLayout(parts, [], 0);
        long most = 0;
        for (int set = 1; set < 1 << parts.Length; set++)
            if (every.Holds(set, along, across)) most = Math.Max(most, Enumerable.Range(0, parts.Length).Where(t => (set >> t & 1) == 1).Sum(t => prices[t]));
        var table = new PatternTable(along, across, ways, counts);
        table.Fill(prices, () => false);
        (List<PatternNode> patterns, bool finished, long found) = new PatternSearch(table, ways, counts).Find(prices, 0, long.MaxValue, int.MaxValue, () => false);
        Assert.True(finished);
        Assert.Equal(most, found);
        Assert.True(table.Best >= most);
        Assert.All(patterns, p => AssertWithin(p, counts, table));
        List<PatternNode> strips = new StripPatterns(along, across, ways, counts).Find(prices, 0, () => false);
        Assert.All(strips, p => AssertWithin(p, counts, table));
    }, iter: 300);

    // Positions thinned or not must come to the same: the plain programme over every whole length is the other way to work it out.
    [Fact]
    public void Best_TinySheets_IsThatOfEveryWholeLength() => s_tiny.Holds(sheet =>
    {
        (int along, int across, PatternPart[] ways, long[] prices, int[] _) = sheet;
        var best = new long[along + 1, across + 1];
        for (int x = 1; x <= along; x++)
            for (int y = 1; y <= across; y++)
            {
                foreach (PatternPart way in ways)
                    if (way.Along <= x && way.Across <= y) best[x, y] = Math.Max(best[x, y], prices[way.Type]);
                for (int k = 1; k < x; k++) best[x, y] = Math.Max(best[x, y], best[k, y] + best[x - k, y]);
                for (int k = 1; k < y; k++) best[x, y] = Math.Max(best[x, y], best[x, k] + best[x, y - k]);
            }
        var table = new PatternTable(along, across, ways, [.. prices.Select(_ => int.MaxValue)]);
        table.Fill(prices, () => false);
        Assert.Equal(best[along, across], table.Best);
    }, iter: 300);

    private static void AssertWithin(PatternNode pattern, int[] counts, PatternTable table)
    {
        var own = new int[counts.Length];
        pattern.Count(own);
        Assert.All(own.Zip(counts), c => Assert.InRange(c.First, 0, c.Second));
        Assert.InRange(pattern.Along, 1, table.Along);
        Assert.InRange(pattern.Across, 1, table.Across);
    }

    private static (PatternTable Table, PatternPart[] Parts, long[] Prices, int[] Counts) Outside(string id, string variant)
    {
        using Stream stream = typeof(PatternTests).Assembly.GetManifestResourceStream("small_checks.jsonl")!;
        using var reader = new StreamReader(stream);
        string line = Lines(reader).First(l => l.Contains($"\"id\":\"{id}\"", StringComparison.Ordinal));
        using JsonDocument document = JsonDocument.Parse(line);
        JsonElement sheet = document.RootElement.GetProperty("sheets")[0];
        JsonElement[] given = [.. document.RootElement.GetProperty("parts").EnumerateArray()];
        PatternPart[] parts = [.. given.SelectMany((p, i) => variant == "RG"
            ? new PatternPart[] { new(i, p[0].GetInt32(), p[1].GetInt32(), false), new(i, p[1].GetInt32(), p[0].GetInt32(), true) }
            : [new(i, p[0].GetInt32(), p[1].GetInt32(), false)])];
        int[] counts = [.. given.Select(p => p[2].ValueKind == JsonValueKind.Null ? int.MaxValue : p[2].GetInt32())];
        return (new(sheet[0].GetInt32(), sheet[1].GetInt32(), parts, counts, long.MaxValue), parts, [.. given.Select(p => p[3].GetInt64())], counts);
    }

    private static long Published(string id, string variant)
    {
        using Stream stream = typeof(PatternTests).Assembly.GetManifestResourceStream("best_known.csv")!;
        using var reader = new StreamReader(stream);
        string row = Lines(reader).First(l => l.StartsWith($"instance,{id},{variant},value,", StringComparison.Ordinal));
        // The source of the bound is quoted when it holds commas; the best value follows it.
        string rest = row[$"instance,{id},{variant},value,".Length..];
        int after = rest.IndexOf(',', StringComparison.Ordinal) + 1;
        after = rest[after] == '"' ? rest.IndexOf('"', after + 1) + 2 : rest.IndexOf(',', after) + 1;
        return long.Parse(rest[after..].Split(',')[0], System.Globalization.CultureInfo.InvariantCulture);
    }

    private static IEnumerable<string> Lines(StreamReader reader)
    {
        while (reader.ReadLine() is { } line) yield return line;
    }
}
