using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

public class SheetInstanceTests
{
    private static readonly SheetStock s_ply = Stock("ply", 2440, 1220);

    [Fact]
    public void New_PartOutOfRange_SaysWhichAndWhy()
    {
        ArgumentException Thrown(SheetPart part) => Assert.Throws<ArgumentException>(() => Instance([part], [s_ply]));
        Assert.Contains("Part shelf along the grain is 0 mm", Thrown(Part("shelf", 0, 10)).Message);
        Assert.Contains("Part shelf across the grain is -1 mm", Thrown(Part("shelf", 10, -1)).Message);
        Assert.Contains("asked for 0 times", Thrown(Part("shelf", 10, 10, 0)).Message);
        Assert.Contains("empty id", Thrown(Part("", 10, 10)).Message);
        Assert.Contains("1000001 parts", Thrown(Part("shelf", 10, 10, SheetInstance.MostParts + 1)).Message);
        Assert.Contains("must be above 0 and at most", Thrown(Part("shelf", 1_000_001, 10)).Message);
        Assert.Contains("Two parts have the id a", Assert.Throws<ArgumentException>(() => Instance([Part("a", 1, 1), Part("a", 2, 2)], [s_ply])).Message);
    }

    [Fact]
    public void New_StockOutOfRange_SaysWhichAndWhy()
    {
        ArgumentException Thrown(params SheetStock[] stock) => Assert.Throws<ArgumentException>(() => Instance([Part("shelf", 10, 10)], stock));
        Assert.Contains("at least one stock", Thrown().Message);
        Assert.Contains("Two stocks have the id ply", Thrown(s_ply, s_ply).Message);
        Assert.Contains("costs -1.00", Thrown(Stock("ply", 10, 10, -1)).Message);
        Assert.Contains("limit of -1", Thrown(Stock("ply", 10, 10, 1, -1)).Message);
        Assert.Contains("trim of -1 mm", Thrown(Stock("ply", 10, 10, 1, null, EdgeTrim.AllRound(Mm(-1)))).Message);
        Assert.Contains("Nothing is left of stock ply", Thrown(Stock("ply", 10, 10, 1, null, EdgeTrim.AllRound(Mm(5)))).Message);
    }

    [Fact]
    public void New_KerfOrKeepBelowZero_Throws()
    {
        Assert.Contains("The kerf is -3 mm", Assert.Throws<ArgumentException>(() => Instance([Part("a", 1, 1)], [s_ply], -3)).Message);
        Assert.Throws<ArgumentException>(() => Instance([Part("a", 1, 1)], [s_ply], 3, new KeepRule(Mm(-1), Mm(1))));
    }

    [Fact]
    public void Validate_PartAtStockSize_PassesAndOneTickLongerIsNamed()
    {
        var part = new SheetPart("top", s_ply.Along, s_ply.Across, 1, GrainRule.Keep);
        Assert.Empty(Instance([part], [s_ply]).Validate());
        CuttingReason reason = Assert.Single(Instance([part with { Along = s_ply.Along + Tick }], [s_ply]).Validate());
        Assert.Equal((ReasonKind.PartTooLarge, "top"), (reason.Kind, reason.Subject));
        Assert.Contains("longer than any stock", reason.Words);
        Assert.Contains("wider than any stock", Instance([part with { Across = s_ply.Across + Tick }], [s_ply]).Validate()[0].Words);
    }

    [Fact]
    public void Validate_PartThatFitsOnlyTurned_NamesTheGrain()
    {
        CuttingReason reason = Assert.Single(Instance([Part("back", 600, 2000)], [s_ply]).Validate());
        Assert.Equal(ReasonKind.PartNeedsTurning, reason.Kind);
        Assert.Empty(Instance([Part("back", 600, 2000, 1, GrainRule.Free)], [s_ply]).Validate());
    }

    [Fact]
    public void Validate_StockOfWhichThereIsNone_DoesNotCount()
    {
        CuttingReason reason = Assert.Single(Instance([Part("a", 10, 10)], [Stock("ply", 100, 100, 0, 0)]).Validate());
        Assert.Equal(ReasonKind.StockTooLittle, reason.Kind);
    }

    [Fact]
    public void Equals_SameContent_IsEqual()
    {
        SheetInstance Make() => Instance([Part("a", 10, 10)], [s_ply]);
        Assert.Equal(Make(), Make());
        Assert.Equal(Make().GetHashCode(), Make().GetHashCode());
        Assert.NotEqual(Make(), Instance([Part("a", 10, 11)], [s_ply]));
    }
}
