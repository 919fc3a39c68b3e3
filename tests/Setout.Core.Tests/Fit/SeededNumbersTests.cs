using Setout.Core.Fit;

namespace Setout.Core.Tests.Fit;

/// <summary>The random numbers themselves.</summary>
public sealed class SeededNumbersTests
{
    private static double[] Row(string id, bool peaked = false, int count = 16384, int start = 0, int seed = 1)
    {
        var row = new double[count];
        if (peaked) SeededNumbers.Peaked(SeededNumbers.Stream(seed, id), start, row);
        else SeededNumbers.Even(SeededNumbers.Stream(seed, id), start, row);
        return row;
    }

    /// <summary>The first outputs of SplitMix64 for the seed 1234567, from memory of the reference program's published check values.</summary>
    [Fact]
    public void Even_FromAKnownState_IsSplitMix64()
    {
        ulong[] published = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821];
        var row = new double[5];
        SeededNumbers.Even(1234567, 0, row);
        Assert.Equal(published.Select(x => (x >> 11) / (double)(1UL << 53)), row);
    }

    /// <summary>A sample's number does not depend on where the asking began.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Numbers_AskedForInPieces_AreTheSame(bool peaked) =>
        Assert.Equal(Row("a", peaked, 1000), Row("a", peaked, 300).Concat(Row("a", peaked, 700, start: 300)));

    /// <summary>Chi-square over 16 equal bins, 15 degrees of freedom: above 37.7 once in a thousand (tables of chi-square). Fixed seeds, so it passes or fails for good.</summary>
    [Fact]
    public void Even_Bins_AreFilledAlike()
    {
        foreach (string id in new[] { "a", "b", "sheet 1", "sheet 2", "" })
        {
            double[] row = Row(id);
            double square = row.GroupBy(x => (int)(x * 16)).Sum(bin => Math.Pow(bin.Count() - 1024, 2) / 1024);
            Assert.True(square < 37.7, $"{id}: {square}");
            Assert.All(row, x => Assert.InRange(x, 0, 1));
        }
    }

    /// <summary>Variance of a uniform on 0 to 1 is 1/12, of a triangle 1/24 (textbook).</summary>
    [Theory]
    [InlineData(false, 12)]
    [InlineData(true, 24)]
    public void Numbers_MeanAndVariance_AreThoseOfTheShape(bool peaked, double parts)
    {
        double[] row = Row("a", peaked);
        double mean = row.Average(), variance = row.Average(x => (x - mean) * (x - mean));
        Assert.Equal(0.5, mean, 0.01);
        Assert.Equal(1 / parts, variance, 0.003);
    }

    /// <summary>Streams of other names, other seeds and the inner pair of a peaked one know nothing of each other: correlation below 4 / root of the count.</summary>
    [Fact]
    public void Streams_OfOtherNamesOrSeeds_AreNotCorrelated()
    {
        double[][] rows = [Row("sheet 1"), Row("sheet 2"), Row("sheet 1", seed: 2), Row("sheet 1", seed: -1), Row("1 sheet"), [.. Row("sheet 1").Skip(1), 0.5]];
        for (int i = 0; i < rows.Length; i++)
            for (int j = 0; j < i; j++)
                Assert.True(Math.Abs(rows[i].Zip(rows[j], (a, b) => (a - 0.5) * (b - 0.5)).Average() * 12) < 4 / Math.Sqrt(16384), $"{i} {j}");
    }
}
