using Setout.Core.Fit.Mending;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Tests.Fit.Mending;

/// <summary>Wood that two materials may come from is taken by one of them.</summary>
public class RackTests
{
    private static Part Of(string material) => new(material, material, $"part of {material}", PartRole.Loose, material, default!, default!, default, 1, Grain.Keep, [], default);

    private static Blank Board(string material, string piece) => new("board 3", material, Length.FromMillimetres(1000), Length.FromMillimetres(45), null) { Piece = piece };

    [Theory]
    [InlineData("3, 0", "3, 0", true)]
    [InlineData("3, 0", "3, 1", false)]
    [InlineData("", "", false)]
    public void Take_OnePieceOfWoodUnderTwoMaterials_ServesOneOfThem(string first, string second, bool mustBuy)
    {
        var rack = new Rack([Board("rail", first), Board("slat", second)]);
        rack.Take(Of("rail"), Length.FromMillimetres(400), Length.FromMillimetres(45), 2, isStick: true);
        Assert.False(rack.Use.MustBuy);
        rack.Take(Of("slat"), Length.FromMillimetres(400), Length.FromMillimetres(45), 1, isStick: true);
        Assert.Equal(mustBuy, rack.Use.MustBuy);
    }
}
