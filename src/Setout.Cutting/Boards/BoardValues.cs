using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Boards;

/// <summary>A part to be crosscut from boards, in figures to cut.</summary>
/// <param name="Id">Unique within the instance; not empty.</param>
/// <param name="Length">Above zero.</param>
/// <param name="Count">How many; one or more.</param>
public sealed record BoardPart(string Id, Length Length, int Count);

/// <summary>What is cut away at each end of a board, the blade's path included; zero where the end is already square and sound.</summary>
/// <param name="Start">At the end that the parts are laid from; zero or more.</param>
/// <param name="End">At the other end; zero or more.</param>
public sealed record EndTrim(Length Start, Length End)
{
    /// <summary>Both ends are used as they are.</summary>
    public static EndTrim None { get; } = new(Length.Zero, Length.Zero);
}

/// <summary>A length of board to buy, or one in hand (cost zero and a limit of how many there are).</summary>
/// <param name="Id">Unique within the instance; not empty.</param>
/// <param name="Length">Untrimmed; above zero.</param>
/// <param name="Trim">What is cut away at the ends.</param>
/// <param name="Cost">Money for one; zero or more.</param>
/// <param name="Limit">How many there are, zero or more; null for as many as needed.</param>
public sealed record BoardStock(string Id, Length Length, EndTrim Trim, Money Cost, int? Limit)
{
    /// <summary>What is left once the ends are cut away.</summary>
    public Length Trued => Length - Trim.Start - Trim.End;
}

/// <summary>What becomes of the end of a board.</summary>
public enum LeftOverUse
{
    /// <summary>Nothing is left, or less than the blade takes.</summary>
    None,

    /// <summary>Too short to keep.</summary>
    Waste,

    /// <summary>Worth keeping.</summary>
    Keep,
}

/// <summary>
/// One board of a layout: its parts follow each other from the start, one kerf between neighbours and one more before a
/// left-over. Where one kerf or less remains beyond the last part, the blade turns it into dust and the left-over is zero.
/// </summary>
/// <param name="StockId">Which stock it is.</param>
/// <param name="PartIds">Its parts in order, a part as often as it is cut; one or more.</param>
/// <param name="LeftOver">What is left beyond the last part and its kerf; zero or more.</param>
/// <param name="Use">Whether that is worth keeping.</param>
public sealed record LaidBoard(string StockId, ImmutableArray<string> PartIds, Length LeftOver, LeftOverUse Use)
{
    /// <inheritdoc/>
    public bool Equals(LaidBoard? other) => other is not null && StockId == other.StockId && LeftOver == other.LeftOver
        && Use == other.Use && SameArrays.Equal(PartIds, other.PartIds);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(StockId, LeftOver, Use, SameArrays.Hash(PartIds));
}

/// <summary>Parts laid on boards.</summary>
/// <param name="Boards">Fullest first, the one with the longest left-over last.</param>
/// <param name="LeftOut">Parts that are not laid, in the instance's order; empty for a whole layout.</param>
public sealed record BoardLayout(ImmutableArray<LaidBoard> Boards, ImmutableArray<PartCount> LeftOut)
{
    /// <inheritdoc/>
    public bool Equals(BoardLayout? other) =>
        other is not null && SameArrays.Equal(Boards, other.Boards) && SameArrays.Equal(LeftOut, other.LeftOut);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(SameArrays.Hash(Boards), SameArrays.Hash(LeftOut));
}
