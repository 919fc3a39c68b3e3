using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

public class SheetBoundsTests
{
    [Fact]
    public void Of_AreaExactlyFull_IsOneAndOneTickMoreIsTwo()
    {
        SheetInstance With(Length across) => new([new SheetPart("a", Mm(100), across, 4, GrainRule.Free)], [Stock("s", 200, 200)], Length.Zero, KeepRule.Nothing);
        Assert.Equal(1, SheetBounds.Of(With(Mm(100)))!.Count);
        Assert.Equal(2, SheetBounds.Of(With(Mm(100) + Tick))!.Count);
    }

    [Fact]
    public void Of_KerfCounts_OnceBetweenParts()
    {
        SheetInstance With(long across) => new([Part("a", 100, 100, 4, GrainRule.Free)], [Stock("s", 203, across)], Mm(3), KeepRule.Nothing);
        Assert.Equal(1, SheetBounds.Of(With(203))!.Count);
        Assert.Equal(2, SheetBounds.Of(With(202))!.Count);
    }

    [Fact]
    public void Of_PartsJustOverHalf_OneSheetEach()
    {
        // By area five of 51 x 51 would fit two sheets of 100 x 100; no two fit side by side.
        LayoutBound bound = SheetBounds.Of(Instance([Part("a", 51, 51, 5)], [Stock("s", 100, 100, 7)], 0))!;
        Assert.Equal((5, new Money(35)), (bound.Count, bound.Cost));
    }

    [Fact]
    public void Of_SeveralPricesAndLimits_IsTheCheapestCover()
    {
        // 40 000 of area: one blank in hand gives 10 000, then sheets of 10 000 at 5 or of 30 000 at 12.
        SheetInstance instance = Instance(
            [Part("a", 100, 100, 4)],
            [Stock("small", 100, 100, 5), Stock("large", 100, 300, 12), SheetStock.InHand("blank", Mm(100), Mm(100), EdgeTrim.None)], 0);
        LayoutBound bound = SheetBounds.Of(instance)!;
        Assert.Equal((new Money(12), 2), (bound.Cost, bound.Count));
    }

    [Fact]
    public void Of_StockTooLittle_IsNull() =>
        Assert.Null(SheetBounds.Of(Instance([Part("a", 60, 60, 2)], [Stock("s", 100, 100, 1, 1)], 0)));

    [Fact]
    public void Of_TurnablePart_CountsItsSmallerSide()
    {
        // Kept, each fills its sheet's length; turned, two lie side by side.
        SheetInstance With(GrainRule grain) => Instance([Part("a", 60, 40, 4, grain)], [Stock("s", 80, 120)], 0);
        Assert.True(SheetBounds.Of(With(GrainRule.Free))!.Count <= SheetBounds.Of(With(GrainRule.Keep))!.Count);
        Assert.Equal(2, SheetBounds.Of(With(GrainRule.Keep))!.Count);
        Assert.Equal(1, SheetBounds.Of(With(GrainRule.Free))!.Count);
    }
}
