using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>What a layout of before is today: on which stock its sheets lie, and what its left-overs are called.</summary>
public class EarlierSheetsTests
{
    private static LaidSheet Pair(string stock, CutNode? rest = null) =>
        new(stock, Crosscuts(Length.Zero, Slice(100, Lies("a")), Slice(100, Lies("a")), Slice(50, rest ?? WasteNode.Instance)));

    private static SheetInstance Today(int parts, params SheetStock[] stock) => Instance([Part("a", 100, 100, parts)], stock, 0);

    private static string Stocks(SheetInstance instance, params LaidSheet[] before) =>
        string.Join(' ', EarlierSheets.Today(instance, Layout(before)).Sheets.Select(s => s.StockId));

    private static SheetStock Have(string id, int count) => SheetStock.InHand(id, Mm(250), Mm(100), EdgeTrim.None, count);

    [Fact]
    public void Today_IdThatIsGone_IsTheStockOfItsTruedSize()
    {
        Assert.Equal("new new", Stocks(Today(4, Stock("short", 200, 100), Stock("new", 250, 100)), Pair("old"), Pair("old")));
        Assert.Equal("new", Stocks(Today(4, Stock("new", 260, 110, trim: EdgeTrim.AllRound(Mm(5)))), Pair("old")));
        // Across the grain, a tick off, or with a trim that takes too much, it is another size.
        Assert.Equal("old", Stocks(Today(4, Stock("new", 100, 250)), Pair("old")));
        Assert.Equal("old", Stocks(Today(4, Stock("new", 250, 100) with { Along = Mm(250) + Tick }), Pair("old")));
        Assert.Equal("old", Stocks(Today(4, Stock("new", 250, 100, trim: EdgeTrim.AllRound(Mm(5)))), Pair("old")));
    }

    [Fact]
    public void Today_LimitedStock_IsGivenToNoMoreThanThereIs()
    {
        Assert.Equal("have have buy", Stocks(Today(6, Stock("buy", 250, 100, 9), Have("have", 2)), Pair("buy"), Pair("buy"), Pair("buy")));
        Assert.Equal("have have old", Stocks(Today(6, Have("have", 2)), Pair("old"), Pair("old"), Pair("old")));
        Assert.Equal("old", Stocks(Today(2, Have("have", 0)), Pair("old")));
        // One that lies on it already comes before one that would move to it.
        Assert.Equal("buy have", Stocks(Today(4, Stock("buy", 250, 100, 9), Have("have", 1)), Pair("old"), Pair("have")));
    }

    [Fact]
    public void Today_SeveralStocksSuit_InHandThenCheaperThenItsOwn()
    {
        Assert.Equal("b", Stocks(Today(2, Stock("a", 250, 100, 9), Stock("b", 250, 100, 9), Stock("c", 250, 100, 9)), Pair("b")));
        Assert.Equal("c", Stocks(Today(2, Stock("a", 250, 100, 9), Stock("b", 250, 100, 9), Stock("c", 250, 100, 8)), Pair("b")));
        Assert.Equal("d", Stocks(Today(2, Have("c", 1), Have("d", 1)), Pair("d")));
    }

    [Fact]
    public void Today_SheetThatIsNotWantedAnyMore_TakesNoStock()
    {
        SheetInstance two = Today(2, Stock("buy", 250, 100, 9), Have("have", 1));
        LaidSheet gone = new("buy", Crosscuts(Length.Zero, Slice(100, Lies("gone")), Slice(150, WasteNode.Instance)));
        Assert.Equal("buy have buy", Stocks(two, gone, Pair("buy"), Pair("buy")));
    }

    [Fact]
    public void Today_LeftOvers_AreCalledByTheRuleOfToday()
    {
        SheetInstance all = new(Today(2, Stock("s", 250, 100)).Parts, [Stock("s", 250, 100)], Length.Zero, new(Mm(50), Mm(100)));
        Assert.Equal(Pair("s", KeepNode.Instance), Assert.Single(EarlierSheets.Today(all, Layout(Pair("s"))).Sheets));
        SheetInstance none = new(all.Parts, all.Stock, Length.Zero, new(Mm(51), Mm(100)));
        Assert.Equal(Pair("s"), Assert.Single(EarlierSheets.Today(none, Layout(Pair("s", KeepNode.Instance))).Sheets));
    }

    [Fact]
    public void Today_OfALayoutOfToday_IsTheSame()
    {
        SheetInstance order = Instance([Part("a", 600, 400, 9), Part("b", 333, 127, 20, GrainRule.Free)], [Stock("x", 2440, 1220, 60), Stock("y", 1220, 1220, 40), SheetStock.InHand("h", Mm(900), Mm(700), EdgeTrim.None)]);
        SheetLayout layout = Solve(order, 30_000).Layout;
        Assert.Equal(layout, EarlierSheets.Today(order, layout));
    }
}
