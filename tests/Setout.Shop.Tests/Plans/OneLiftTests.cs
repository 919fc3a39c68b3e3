using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Shop.Plans;

namespace Setout.Shop.Tests.Plans;

public class OneLiftTests
{
    // The same sum the other way round: a blank of that face weighs what is lifted, by the heavy end of the density's range.
    [Theory]
    [InlineData("jar-cabinet", 23)]
    [InlineData("plan-chest", 10)]
    public void MostArea_OfEachPanelWithADensity_WeighsJustWhatOneLifts(string sample, double kilograms)
    {
        SetPiece set = Sample.Source(sample).SetOut();
        int found = 0;
        foreach (Panel panel in set.Piece.Materials.Values.OfType<Panel>())
        {
            Area? most = OneLift.MostArea(set, panel, new(Estimate.Of(kilograms)));
            if (PanelTable.DensityOf(panel.Kind) is null)
            {
                Assert.Equal(Woods.Find(panel.Kind) is null, most is null);
                continue;
            }
            Assert.NotNull(most);
            Mass mass = PanelTable.MassOf(panel.Kind, most.Value, set.Worked[new($"{panel.Name}.thickness")])!.Value;
            Assert.Equal(kilograms, mass.Kilograms.Value + mass.Kilograms.Error, 6);
            found++;
        }
        Assert.True(found > 0);
    }
}
