using System.Reflection;
using CsCheck;
using Setout.Cutting.Sheets.Patterns;
using Setout.Testing;

namespace Setout.Cutting.Tests.Sheets.Patterns;

/// <summary>Patterns of a table with lengths left out: they can be sawn, and nothing that they say can be taken for a bound.</summary>
public class ThinPatternsTests
{
    private static readonly Gen<(int Along, int Across, PatternPart[] Parts, long[] Prices, int[] Counts)> s_sheets =
        Gen.Select(Gen.Int[6, 60], Gen.Int[6, 50], Gen.Select(Gen.Int[1, 30], Gen.Int[1, 25], Gen.Int[0, 90], Gen.Bool, Gen.Int[0, 4]).Array[1, 9]).Select((along, across, parts) =>
        {
            PatternPart[] ways = [.. parts.SelectMany((p, i) => p.Item4 && p.Item1 != p.Item2
                ? new PatternPart[] { new(i, p.Item1, p.Item2, false), new(i, p.Item2, p.Item1, true) } : [new(i, p.Item1, p.Item2, false)])];
            return (along, across, ways, parts.Select(p => (long)p.Item3).ToArray(), parts.Select(p => p.Item5).ToArray());
        });

    [Theory]
    [InlineData(6)]
    [InlineData(11)]
    [InlineData(200)]
    public void Find_AnyLengths_GivesPatternsThatFitAndAreWorthMore(int lengths) => s_sheets.Holds(sheet =>
    {
        (int along, int across, PatternPart[] ways, long[] prices, int[] counts) = sheet;
        var thin = new ThinPatterns(along, across, ways, lengths);
        long least = prices.Max() / 2;
        for (int call = 0; call < 3; call++)
            foreach (PatternNode pattern in thin.Find(prices, least, () => false, counts))
            {
                var own = new int[counts.Length];
                pattern.Count(own);
                Assert.All(own.Zip(counts), c => Assert.InRange(c.First, 0, c.Second));
                Assert.True(own.Zip(prices, (n, p) => n * p).Sum() > least);
                AssertSawn(pattern);
                Assert.InRange(pattern.Along, 1, along);
                Assert.InRange(pattern.Across, 1, across);
            }
    }, iter: 200);

    // With every length there it finds no less than the best single part, and with any choice of them no more than the complete table.
    [Theory]
    [InlineData(6)]
    [InlineData(200)]
    public void Find_AnyLengths_IsNeverWorthMoreThanTheCompleteTable(int lengths)
    {
        int found = 0;
        s_sheets.Holds(sheet =>
        {
            (int along, int across, PatternPart[] ways, long[] prices, int[] counts) = sheet;
            var table = new PatternTable(along, across, ways, counts);
            table.Fill(prices, () => false);
            foreach (PatternNode pattern in new ThinPatterns(along, across, ways, lengths).Find(prices, 0, () => false, counts))
            {
                var own = new int[counts.Length];
                pattern.Count(own);
                Assert.True(own.Zip(prices, (n, p) => n * p).Sum() <= table.Best);
                Interlocked.Increment(ref found);
            }
        }, iter: 200);
        Assert.True(found > 100);
    }

    [Fact]
    public void Find_ManyLengths_FillsASheetWithoutWaste()
    {
        // 7 x 5 beside 3 x 5, above them 10 x 4: two stages, all of 10 x 9.
        PatternPart[] parts = [new(0, 7, 5, false), new(1, 3, 5, false), new(2, 10, 4, false)];
        List<PatternNode> found = new ThinPatterns(10, 9, parts).Find([35, 15, 40], 89, () => false, [1, 1, 1]);
        PatternNode whole = Assert.Single(found);
        var own = new int[3];
        whole.Count(own);
        Assert.Equal([1, 1, 1], own);
    }

    [Fact]
    public void Find_NoneLeft_IsEmpty() => Assert.Empty(new ThinPatterns(10, 9, [new(0, 7, 5, false)]).Find([35], 0, () => false, [0]));

    // A bound is told by a figure or as a LayoutBound: what works with thin lengths gives neither to anyone, and what concludes bounds does not hold any of it.
    [Theory]
    [InlineData(typeof(ThinPatterns))]
    [InlineData(typeof(PatternColumns))]
    public void Members_OfSourcesWithoutProof_TellNoFigure(Type source)
    {
        string[] telling = [.. source.GetMembers(BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.DeclaredOnly)
            .Where(m => m is MethodInfo method && !method.IsSpecialName ? !Silent(method.ReturnType) : m is PropertyInfo property && property.Name != "Steps" && !Silent(property.PropertyType))
            .Select(m => m.Name)];
        Assert.Empty(telling);

        static bool Silent(Type type) => type == typeof(void) || type == typeof(bool) || type == typeof(List<PatternNode>)
            || type == typeof(List<(int Stock, PatternNode Pattern)>) || type == typeof(List<(int Stock, PatternNode Pattern, double Share)>);
    }

    [Fact]
    public void PatternBound_HoldsNoSourceWithoutProof()
    {
        Type[] held = [.. Held(typeof(PatternBound)), .. typeof(PatternBound).GetNestedTypes(BindingFlags.NonPublic).SelectMany(Held)];
        Assert.Contains(typeof(PatternTable), held);
        Assert.DoesNotContain(typeof(ThinPatterns), held);
        Assert.DoesNotContain(typeof(ThinLengths), held);
        Assert.DoesNotContain(typeof(PatternColumns), held);

        static IEnumerable<Type> Held(Type type) => type.GetFields(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public).Select(f => f.FieldType);
    }

    // Slices fill no more than what they are cut from, down to the parts.
    private static void AssertSawn(PatternNode node)
    {
        if (node.First is null)
        {
            Assert.Equal((node.Part!.Value.Along, node.Part.Value.Across), (node.Along, node.Across));
            return;
        }
        PatternNode a = node.First, b = node.Second!;
        Assert.True(node.JoinsAlong ? a.Along + b.Along <= node.Along && Math.Max(a.Across, b.Across) <= node.Across
            : a.Across + b.Across <= node.Across && Math.Max(a.Along, b.Along) <= node.Along);
        AssertSawn(a);
        AssertSawn(b);
    }
}
