using Setout.Core.Measures;
using Setout.Cutting;
using Setout.Shop.Plans;

namespace Setout.Shop.Drawings;

/// <summary>What may be said about a layout in one line: its count, and what is proven. Money is spoken of only where every size has a price.</summary>
public static class Verdicts
{
    /// <summary>Of sheets.</summary>
    public static string Of(SheetPlan plan) =>
        Words("sheet", plan.Outcome.Score.Sheets, plan.Outcome.Score.Cost, plan.Outcome.Bound, plan.Outcome.NoFewerSheets, plan.Outcome.NoLessMoney, plan.IsPriced);

    /// <summary>Of boards.</summary>
    public static string Of(BoardPlan plan) =>
        Words("board", plan.Outcome.Score.Boards, plan.Outcome.Score.Cost, plan.Outcome.Bound, plan.Outcome.NoFewerBoards, plan.Outcome.NoLessMoney, plan.IsPriced);

    private static string Words(string kind, int count, Money cost, LayoutBound bound, bool noFewer, bool noLess, bool isPriced)
    {
        string many = count == 1 ? $"1 {kind}" : $"{count} {kind}s";
        string least = noLess ? isPriced ? "no layout can cost less" : "no layout can use less wood" : isPriced ? $"{cost} where none can cost less than {bound.Cost}" : "";
        return (noFewer, noLess) switch
        {
            (true, true) => $"{many}; no layout can use fewer",
            (true, false) => $"{many}; no layout can use fewer{(least.Length > 0 ? $"; {least}" : "")}",
            (false, true) => $"{many}; {least}",
            _ => $"{many}; at least {bound.Count} in any layout{(least.Length > 0 ? $"; {least}" : "")}",
        };
    }
}
