using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>
/// What is trued away at each edge before parts are laid, the blade's path included: whatever lies within the trim is gone.
/// Zero where the edge is already true. A trim thinner than the kerf is a skim cut, the blade partly in the air.
/// </summary>
/// <param name="AlongStart">At the crosscut edge on the reference corner.</param>
/// <param name="AlongEnd">At the opposite crosscut edge.</param>
/// <param name="AcrossStart">At the long-grain edge on the reference corner.</param>
/// <param name="AcrossEnd">At the opposite long-grain edge.</param>
public sealed record EdgeTrim(Length AlongStart, Length AlongEnd, Length AcrossStart, Length AcrossEnd)
{
    /// <summary>Every edge is true already.</summary>
    public static EdgeTrim None { get; } = new(Length.Zero, Length.Zero, Length.Zero, Length.Zero);

    /// <summary>The same trim at all four edges.</summary>
    public static EdgeTrim AllRound(Length trim) => new(trim, trim, trim, trim);
}

/// <summary>
/// Any rectangle parts may come from: a sheet to buy, or a blank in hand (a half-cut sheet, an offcut). A blank in hand has
/// cost zero and a limit of how many there are.
/// </summary>
/// <param name="Id">Unique within the instance; not empty.</param>
/// <param name="Along">Size along the grain of its face, untrimmed; above zero.</param>
/// <param name="Across">Size across the grain, untrimmed; above zero.</param>
/// <param name="Trim">What is trued away at each edge.</param>
/// <param name="Cost">Money for one; zero or more, zero for what is in hand.</param>
/// <param name="Limit">How many there are, zero or more; null for as many as needed.</param>
public sealed record SheetStock(string Id, Length Along, Length Across, EdgeTrim Trim, Money Cost, int? Limit)
{
    /// <summary>What is left along the grain once the edges are trued.</summary>
    public Length TruedAlong => Along - Trim.AlongStart - Trim.AlongEnd;

    /// <summary>What is left across the grain once the edges are trued.</summary>
    public Length TruedAcross => Across - Trim.AcrossStart - Trim.AcrossEnd;

    /// <summary>A blank in hand: free, and only so many of it.</summary>
    public static SheetStock InHand(string id, Length along, Length across, EdgeTrim trim, int count = 1) =>
        new(id, along, across, trim, Money.Zero, count);
}

/// <summary>From what size a left-over is worth keeping: both sides must reach their figure.</summary>
/// <param name="ShortSide">Least length of the shorter side; zero or more.</param>
/// <param name="LongSide">Least length of the longer side; zero or more.</param>
public sealed record KeepRule(Length ShortSide, Length LongSide)
{
    /// <summary>Nothing is worth keeping.</summary>
    public static KeepRule Nothing { get; } = new(Length.FromTicks(long.MaxValue), Length.FromTicks(long.MaxValue));

    /// <summary>True when a left-over of these sides is worth keeping.</summary>
    public bool Keeps(Length along, Length across) =>
        Length.Min(along, across) >= ShortSide && Length.Max(along, across) >= LongSide;
}
