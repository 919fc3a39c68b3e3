using Setout.Core.Measures;

namespace Setout.Cutting.Boards;

/// <summary>
/// What a layout is judged by, in this order; smaller is better except for <paramref name="Worth"/>:
/// parts left out, money for stock, boards, worth of what is left. See <see cref="BoardObjective"/>.
/// </summary>
/// <param name="LeftOut">Length of the parts not laid, added up.</param>
/// <param name="Cost">Money for the stock used.</param>
/// <param name="Boards">Boards used.</param>
/// <param name="Worth">Worth of the kept left-overs; larger is better.</param>
public sealed record BoardScore(Length LeftOut, Money Cost, int Boards, Int128 Worth) : IComparable<BoardScore>
{
    /// <summary>Below zero when this layout is the better one.</summary>
    public int CompareTo(BoardScore? other)
    {
        if (other is null) return -1;
        int order = LeftOut.CompareTo(other.LeftOut);
        if (order == 0) order = Cost.CompareTo(other.Cost);
        if (order == 0) order = Boards.CompareTo(other.Boards);
        if (order == 0) order = other.Worth.CompareTo(Worth);
        return order;
    }

    /// <summary>Order.</summary>
    public static bool operator <(BoardScore a, BoardScore b) => a.CompareTo(b) < 0;

    /// <summary>Order.</summary>
    public static bool operator >(BoardScore a, BoardScore b) => a.CompareTo(b) > 0;

    /// <summary>Order.</summary>
    public static bool operator <=(BoardScore a, BoardScore b) => a.CompareTo(b) <= 0;

    /// <summary>Order.</summary>
    public static bool operator >=(BoardScore a, BoardScore b) => a.CompareTo(b) >= 0;
}

/// <summary>
/// The one place that says what a good board layout is: length of parts left out (none, unless they fit no stock or stock ran
/// out); money for stock; boards used; worth of what is left, the sum over left-overs worth keeping of the square of
/// their length in whole millimetres, so that one long left-over beats two short ones. Stop settings do not enter: every part
/// length is one setting whichever board it comes from.
/// </summary>
public static class BoardObjective
{
    /// <summary>Judges a layout. The layout must be sound; see the checker.</summary>
    public static BoardScore Score(BoardInstance instance, BoardLayout layout)
    {
        Dictionary<string, BoardStock> stock = instance.Stock.ToDictionary(s => s.Id, StringComparer.Ordinal);
        Dictionary<string, BoardPart> parts = instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        Length leftOut = layout.LeftOut.Aggregate(Length.Zero, (sum, p) => sum + (parts[p.PartId].Length * p.Count));
        Money cost = layout.Boards.Aggregate(Money.Zero, (sum, b) => sum + stock[b.StockId].Cost);
        Int128 worth = 0;
        foreach (LaidBoard board in layout.Boards)
            foreach (LaidStretch stretch in board.Stretches)
                if (stretch.Use == LeftOverUse.Keep) worth += WorthOf(stretch.LeftOver);
        return new(leftOut, cost, layout.Boards.Length, worth);
    }

    /// <summary>The worth of one kept left-over.</summary>
    public static Int128 WorthOf(Length length)
    {
        Int128 millimetres = length.Ticks / Length.TicksPerMillimetre;
        return millimetres * millimetres;
    }
}
