using Setout.Cutting.Bounds;

namespace Setout.Cutting.Tests.Bounds;

public class SizeFunctionTests
{
    // The property on which every bound here rests: f(a) + f(b) <= f(a + b), f never falls, f(0) = 0.
    [Theory]
    [InlineData(24)]
    [InlineData(25)]
    [InlineData(60)]
    [InlineData(97)]
    public void Family_EveryPairOfSizes_IsSuperadditive(int whole)
    {
        foreach (SizeFunction f in SizeFunction.Family(whole, Enumerable.Range(1, whole).Select(i => (long)i), 1000))
        {
            Assert.Equal(0, f.Of(0));
            for (int a = 0; a <= whole; a++)
                for (int b = 0; a + b <= whole; b++)
                    Assert.True(f.Of(a) + f.Of(b) <= f.Of(a + b), $"{f.Name}: f({a}) + f({b}) > f({a + b}), whole {whole}");
        }
    }

    [Fact]
    public void LeastMoney_SmallKnapsack_EqualsAllWaysTried()
    {
        var random = new Random(5);
        for (int round = 0; round < 200; round++)
        {
            Cover[] stock = [.. Enumerable.Range(0, 3).Select(_ => new Cover(random.Next(1, 9), random.Next(0, 6), random.Next(0, 4)))];
            int need = random.Next(1, 25);
            decimal? least = null;
            int? fewest = null;
            for (int a = 0; a <= stock[0].Limit; a++)
                for (int b = 0; b <= stock[1].Limit; b++)
                    for (int c = 0; c <= stock[2].Limit; c++)
                    {
                        if ((stock[0].Capacity * a) + (stock[1].Capacity * b) + (stock[2].Capacity * c) < need) continue;
                        decimal money = (stock[0].Cost * a) + (stock[1].Cost * b) + (stock[2].Cost * c);
                        if (least is null || money < least) least = money;
                        if (fewest is null || a + b + c < fewest) fewest = a + b + c;
                    }
            Assert.Equal(least, CoveringBound.LeastMoney(need, stock)?.Amount);
            Assert.Equal(fewest, CoveringBound.FewestParts(need, stock));
        }
    }
}
