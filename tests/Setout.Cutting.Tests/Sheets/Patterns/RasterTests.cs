using Setout.Cutting.Sheets.Patterns;

namespace Setout.Cutting.Tests.Sheets.Patterns;

public class RasterTests
{
    // By hand: the sums within 10 are 0 3 6 8 9. Beside 3 there is room for 6, beside 6 for 3, beside 8 and 9 for nothing; beside 3 in 6 for 3; in 3 for nothing.
    [Fact]
    public void At_SumsOfThreeAndEight_AreThoseThatCutsLeadTo()
    {
        var raster = new Raster(10, [3, 8], [3, 1], 100);
        Assert.Equal([0, 3, 6, 10], raster.At);
        Assert.Equal(2, raster.Holding(7));
        Assert.Equal(3, raster.Holding(9));
        Assert.Equal([(1, 2)], raster.Cuts[3]);
        Assert.Equal([(1, 1)], raster.Cuts[2]);
        Assert.Empty(raster.Cuts[1]);
    }

    // A set thinned for the whole side only would be 0 3 5 here and lose the part of 2 beside that of 3 within 5.
    [Fact]
    public void Cuts_ThreeAndTwoWithinSix_GoBesideEachOther() => Assert.Equal([(1, 1)], new Raster(6, [3, 2], [1, 1], 100).Cuts[2]);

    [Fact]
    public void IsComplete_TooManyLengths_IsFalse() => Assert.False(new Raster(100, [7, 9, 11], [9, 9, 9], 5).IsComplete);
}
