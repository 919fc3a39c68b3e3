using Setout.Core.Measures;
using Setout.Cutting;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Drawings;

/// <summary>What is said about a layout claims no more than is proven, of its count and of its money.</summary>
public sealed class VerdictTests
{
    [Theory]
    [InlineData(3, 324, true, "3 sheets; no layout can use fewer")]
    [InlineData(3, 310.5, true, "3 sheets for 324.00; no layout can use fewer or cost less than 310.50")]
    [InlineData(2, 324, true, "3 sheets; no layout can cost less")]
    [InlineData(2, 310.5, true, "3 sheets for 324.00; at least 2 sheets and 310.50 in any layout")]
    [InlineData(3, 310.5, false, "3 sheets; no layout can use fewer")]
    [InlineData(2, 324, false, "3 sheets; no layout can use less wood")]
    [InlineData(2, 310.5, false, "3 sheets; at least 2 in any layout")]
    public void Of_SheetsAndBoards_ClaimsWhatIsProven(int count, double cost, bool isPriced, string words)
    {
        SheetPlan sheets = Sample.Plan("luthiers-bench").Sheets[0];
        BoardPlan boards = Sample.Plan("luthiers-bench").Boards[0];
        var bound = new LayoutBound(new((decimal)cost), count, "told");
        var money = new Money(324);
        Assert.Equal(words, Verdicts.Of(sheets with { IsPriced = isPriced, Outcome = sheets.Outcome with { Bound = bound, Score = sheets.Outcome.Score with { Sheets = 3, Cost = money } } }));
        Assert.Equal(words.Replace("sheets", "boards", StringComparison.Ordinal),
            Verdicts.Of(boards with { IsPriced = isPriced, Outcome = boards.Outcome with { Bound = bound, Score = boards.Outcome.Score with { Boards = 3, Cost = money } } }));
    }
}
