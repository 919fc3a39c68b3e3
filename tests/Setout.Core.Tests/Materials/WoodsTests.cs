using Setout.Core.Materials;
using Setout.Core.Measures;

namespace Setout.Core.Tests.Materials;

public class WoodsTests
{
    [Theory]
    [InlineData("quarter-sawn white oak", "white oak")]
    [InlineData("Red Oak, flat-sawn", "red oak")]
    [InlineData("oak", "oak")]
    [InlineData("construction lumber", "construction lumber")]
    [InlineData("boxwood", null)]
    public void Find_NameInTheYard_IsTheLongestThatStandsInIt(string said, string? name) => Assert.Equal(name, Woods.Find(said)?.Name);

    [Theory]
    // Wood Handbook 2021 Table 5-3b (second-hand): northern red oak 0.63, hard maple 0.63, eastern white pine 0.35 on the volume at 12 %; 1000 G 1.12 kg/m3.
    [InlineData("red oak", 705.6)]
    [InlineData("hard maple", 705.6)]
    [InlineData("white pine", 392)]
    // American mahogany 0.45 on green volume (Table 5-5b): 0.45 / (1 - 0.265 x 0.6 x 0.45) = 0.4847.
    [InlineData("mahogany", 542.8)]
    public void Density_OfTheTable_IsAtTwelvePercent(string wood, double density) => Assert.Equal(density, Woods.Find(wood)!.Density.Value, 1);

    [Fact]
    public void Movement_OfTheTable_IsAsPrinted()
    {
        // Wood Handbook 2010 Table 13-5: commercial red oak 0.00158 radial, 0.00369 tangential.
        WoodFact oak = Woods.Find("red oak")!;
        Assert.Equal((Rational.Of(158, 100_000), Rational.Of(369, 100_000)), (oak.Radial, oak.Tangential));
        Assert.All(Woods.All, w => Assert.True(w.Radial < w.Tangential && w.Density.Value is > 300 and < 900, w.Name));
    }
}
