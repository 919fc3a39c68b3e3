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
        string many = Many(kind, count), paid = $"{many} for {cost}";
        return (noFewer, noLess) switch
        {
            (true, false) when isPriced => $"{paid}; no layout can use fewer or cost less than {bound.Cost}",
            (true, _) => $"{many}; no layout can use fewer",
            (false, true) => $"{many}; no layout can {(isPriced ? "cost less" : "use less wood")}",
            _ when isPriced => $"{paid}; at least {Many(kind, bound.Count)} and {bound.Cost} in any layout",
            _ => $"{many}; at least {bound.Count} in any layout",
        };
    }

    private static string Many(string kind, int count) => count == 1 ? $"1 {kind}" : $"{count} {kind}s";
}
