using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting;

/// <summary>What may be said about a layout, of sheets or of boards: one way for both.</summary>
internal static class Conclusion
{
    /// <summary>The status, the bound to tell (zero where the stock is too little) and the reasons.</summary>
    /// <param name="refused">A reason for each part that fits no stock.</param>
    /// <param name="tooLittle">The words for stock that is proven too little.</param>
    /// <param name="leftOut">Parts that are not laid.</param>
    /// <param name="cost">Money of the layout.</param>
    /// <param name="count">Its sheets or boards.</param>
    /// <param name="bound">What is proven; null when the stock is too little.</param>
    /// <param name="cancelled">Whether the caller cancelled.</param>
    public static (OutcomeStatus Status, LayoutBound Bound, ImmutableArray<CuttingReason> Reasons) Of(
        ImmutableArray<CuttingReason> refused, string tooLittle, ImmutableArray<PartCount> leftOut, Money cost, int count, LayoutBound? bound, bool cancelled)
    {
        ImmutableArray<CuttingReason>.Builder reasons = ImmutableArray.CreateBuilder<CuttingReason>();
        reasons.AddRange(refused);
        if (bound is null) reasons.Add(new(ReasonKind.StockTooLittle, "", tooLittle));
        bool infeasible = reasons.Count > 0, whole = leftOut.IsEmpty;
        int waiting = leftOut.Where(l => !reasons.Any(r => r.Subject == l.PartId)).Sum(l => l.Count);
        if (bound is not null && waiting > 0 && !cancelled)
            reasons.Add(new(ReasonKind.StockRanOut, "", $"the stock ran out with {waiting} parts not laid; another layout might hold them"));
        if (cancelled) reasons.Add(new(ReasonKind.Cancelled, "", "the search was cancelled; this is the best layout so far"));
        bound ??= new(Money.Zero, 0, "none: the stock is too little");
        bool proven = whole && IsProven(cost, count, bound);
        OutcomeStatus status = infeasible && !whole ? OutcomeStatus.Infeasible
            : proven ? OutcomeStatus.Proven
            : cancelled || !whole ? OutcomeStatus.Stopped
            : OutcomeStatus.Feasible;
        // A proof stands even when the caller lost patience.
        if (status == OutcomeStatus.Proven) reasons.Clear();
        return (status, bound, reasons.ToImmutable());
    }

    /// <summary>What may be said of the better of two layouts of one order, when each search proved something.</summary>
    /// <param name="better">What the search that found the better layout says.</param>
    /// <param name="other">What the other says.</param>
    /// <param name="whole">Whether the better layout holds every part.</param>
    /// <param name="cost">Money of the better layout.</param>
    /// <param name="count">Its sheets or boards.</param>
    public static (OutcomeStatus Status, LayoutBound Bound, ImmutableArray<CuttingReason> Reasons) OfTwo(
        (OutcomeStatus Status, LayoutBound Bound, ImmutableArray<CuttingReason> Reasons) better,
        (OutcomeStatus Status, LayoutBound Bound, ImmutableArray<CuttingReason> Reasons) other, bool whole, Money cost, int count)
    {
        LayoutBound bound = (other.Bound.Cost > better.Bound.Cost ? other.Bound : better.Bound) with { Count = Math.Max(better.Bound.Count, other.Bound.Count) };
        if (whole && IsProven(cost, count, bound)) return (OutcomeStatus.Proven, bound, []);
        // That no layout of all parts exists stays true, whichever search found it out.
        return !whole && other.Status == OutcomeStatus.Infeasible ? (other.Status, bound, other.Reasons) : (better.Status, bound, better.Reasons);
    }

    private static bool IsProven(Money cost, int count, LayoutBound bound) => cost == bound.Cost && (cost.Amount > 0 || count == bound.Count);
}
