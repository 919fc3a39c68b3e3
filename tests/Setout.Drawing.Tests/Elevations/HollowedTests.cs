using System.Collections.Immutable;
using Setout.Drawing.Scenes;
using Setout.Drawing.Turning;

namespace Setout.Drawing.Tests.Elevations;

/// <summary>Blocks with holes, held against points thrown into them and against their edges counted by hand.</summary>
public class HollowedTests
{
    private static readonly Block s_slab = new("T", "top", Wash.Panel, new(0, 0, 0), new(100, 60, 20));

    [Fact]
    public void Of_NothingTakenOut_IsTheBlockItself()
    {
        Assert.Same(s_slab, Assert.Single(Hollowed.Of(s_slab, [])));
        Assert.Same(s_slab, Assert.Single(Hollowed.Of(s_slab, [(new(100, 0, 0), new(120, 60, 20))])));
    }

    /// <summary>Every point is in one block if it is wood, and in none if it was taken out.</summary>
    [Fact]
    public void Of_AnyHoles_FillsWhatIsLeftOnce()
    {
        for (int seed = 0; seed < 200; seed++)
        {
            var random = new Random(seed);
            double[] Two(double most) => [.. new[] { (random.NextDouble() * most * 1.4) - (most * 0.2), (random.NextDouble() * most * 1.4) - (most * 0.2) }.Order()];
            (Spot Low, Spot High)[] holes = [.. Enumerable.Range(0, random.Next(1, 5)).Select(_ =>
            {
                (double[] x, double[] y, double[] z) = (Two(100), Two(60), Two(20));
                return (new Spot(x[0], y[0], z[0]), new Spot(x[1], y[1], z[1]));
            })];
            ImmutableArray<Block> blocks = Hollowed.Of(s_slab, holes);
            for (int i = 0; i < 200; i++)
            {
                var at = new Spot(random.NextDouble() * 100, random.NextDouble() * 60, random.NextDouble() * 20);
                int expected = holes.Any(h => IsIn(h.Low, h.High, at)) ? 0 : 1;
                Assert.True(blocks.Count(b => IsIn(b.Low, b.High, at)) == expected, $"seed {seed} at {at}");
            }
        }
    }

    /// <summary>A hole through a slab: twelve edges of the slab and twelve of the hole, each as long as it is, and none where its blocks meet.</summary>
    [Fact]
    public void Of_AHoleThrough_HasTheEdgesOfSlabAndHoleAndNoOther()
    {
        ImmutableArray<Block> blocks = Hollowed.Of(s_slab, [(new(30, 20, -1), new(70, 40, 21))]);
        Assert.Equal(4, blocks.Length);
        Assert.All(blocks, b => Assert.Equal(new Spot(50, 30, 10), b.Around));
        double all = Edges(blocks).Sum(e => Long(e));
        Assert.Equal((4 * (100 + 60 + 20)) + (4 * (40 + 20 + 20)), all, 6);
    }

    /// <summary>A groove along the middle of the upper face: two lines where it opens, two on its floor, and its ends.</summary>
    [Fact]
    public void Of_AGroove_HasItsFourLinesAndItsEnds()
    {
        ImmutableArray<Block> blocks = Hollowed.Of(s_slab, [(new(0, 25, 14), new(100, 35, 20))]);
        Assert.Equal(3, blocks.Length);
        // At each end the line of the upper edge is broken by the width of the groove; its floor and its two sides are added.
        Assert.Equal((4 * (100 + 60 + 20)) + (4 * 100) + (2 * (6 + 6)), Edges(blocks).Sum(e => Long(e)), 6);
    }

    private static bool IsIn(Spot low, Spot high, Spot at) => Enumerable.Range(0, 3).All(a => at[a] > low[a] && at[a] < high[a]);

    // Two blocks may have a line in common: it is one line.
    private static IEnumerable<(Spot, Spot)> Edges(IEnumerable<Block> blocks) => blocks.SelectMany(b => b.Edges).Select(e => (e.From, e.To)).Distinct();

    private static double Long((Spot From, Spot To) edge) => Enumerable.Range(0, 3).Sum(a => Math.Abs(edge.To[a] - edge.From[a]));
}
