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

/// <summary>A stretch of a board, measured along it from the start of the board as it is, before its ends are trimmed.</summary>
/// <param name="From">Where it begins; zero or more.</param>
/// <param name="To">Where it ends; beyond <paramref name="From"/>.</param>
public readonly record struct BoardStretch(Length From, Length To)
{
    /// <summary>How long it is.</summary>
    public Length Extent => To - From;
}

/// <summary>A board that is wide enough to be ripped along its length into lanes, each as wide as the parts are.</summary>
/// <param name="Width">Of the board between its true edges; above zero.</param>
/// <param name="LaneWidth">Of the parts; above zero and at most the width.</param>
/// <param name="Kerf">Width of wood the blade turns into dust between two lanes; zero or more.</param>
public sealed record BoardRip(Length Width, Length LaneWidth, Length Kerf)
{
    /// <summary>How many lanes the width gives: one kerf between neighbours, none after the last if nothing more is cut.</summary>
    public int Lanes => (int)Math.Min(int.MaxValue, (Width.Ticks + Kerf.Ticks) / (LaneWidth.Ticks + Kerf.Ticks));
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

    /// <summary>
    /// Stretches that no part may touch, in any order; they may overlap. Each goes through the whole width and is what is cut away, the
    /// blade's path included, as with a trim. Empty by default.
    /// </summary>
    public ImmutableArray<BoardStretch> Defects { get; init; } = [];

    /// <summary>How the board is ripped into lanes; null, the default, for a board that is as wide as its parts.</summary>
    public BoardRip? Rip { get; init; }

    /// <summary>How many lanes it gives; one unless it is ripped.</summary>
    public int Lanes => Rip?.Lanes ?? 1;

    /// <summary>What lies clear between trims and defects, from the start on; one stretch where there is no defect, none where nothing is clear.</summary>
    public ImmutableArray<BoardStretch> ClearStretches()
    {
        ImmutableArray<BoardStretch>.Builder clear = ImmutableArray.CreateBuilder<BoardStretch>();
        Length at = Trim.Start, end = Length - Trim.End;
        foreach (BoardStretch defect in Defects.OrderBy(d => d.From))
        {
            if (defect.From > at && at < end) clear.Add(new(at, Length.Min(defect.From, end)));
            at = Length.Max(at, defect.To);
        }
        if (at < end) clear.Add(new(at, end));
        return clear.ToImmutable();
    }

    /// <inheritdoc/>
    public bool Equals(BoardStock? other) => other is not null && Id == other.Id && Length == other.Length && Trim == other.Trim
        && Cost == other.Cost && Limit == other.Limit && Rip == other.Rip && SameArrays.Equal(Defects, other.Defects);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Id, Length, Trim, Cost, Limit, Rip, SameArrays.Hash(Defects));
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
/// One clear stretch of one lane: its parts follow each other from its start, one kerf between neighbours and one more before a
/// left-over. Where one kerf or less remains beyond the last part, the blade turns it into dust and the left-over is zero. A stretch
/// without parts is left as it is.
/// </summary>
/// <param name="Lane">Which lane, from 1 at the reference edge.</param>
/// <param name="Place">Which clear stretch, from 1 at the start.</param>
/// <param name="PartIds">Its parts in order, a part as often as it is cut; may be empty.</param>
/// <param name="LeftOver">What is left beyond the last part and its kerf; zero or more.</param>
/// <param name="Use">Whether that is worth keeping.</param>
public sealed record LaidStretch(int Lane, int Place, ImmutableArray<string> PartIds, Length LeftOver, LeftOverUse Use)
{
    /// <inheritdoc/>
    public bool Equals(LaidStretch? other) => other is not null && Lane == other.Lane && Place == other.Place
        && LeftOver == other.LeftOver && Use == other.Use && SameArrays.Equal(PartIds, other.PartIds);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Lane, Place, LeftOver, Use, SameArrays.Hash(PartIds));
}

/// <summary>
/// One board of a layout: every lane and clear stretch of it, with its parts and what is left. A plain board is one stretch.
/// </summary>
/// <param name="StockId">Which stock it is.</param>
/// <param name="Stretches">Lane by lane from the start; each lane and stretch of the board once.</param>
public sealed record LaidBoard(string StockId, ImmutableArray<LaidStretch> Stretches)
{
    /// <summary>A plain board: one lane, one stretch.</summary>
    /// <param name="stockId">Which stock it is.</param>
    /// <param name="partIds">Its parts in order, one or more.</param>
    /// <param name="leftOver">What is left beyond the last part and its kerf; zero or more.</param>
    /// <param name="use">Whether that is worth keeping.</param>
    public LaidBoard(string stockId, ImmutableArray<string> partIds, Length leftOver, LeftOverUse use)
        : this(stockId, [new LaidStretch(1, 1, partIds, leftOver, use)])
    {
    }

    /// <summary>All its parts, lane by lane from the start.</summary>
    public ImmutableArray<string> PartIds => Stretches.Length == 1 ? Stretches[0].PartIds : [.. Stretches.SelectMany(s => s.PartIds)];

    /// <summary>The longest left-over of any lane and stretch.</summary>
    public Length LeftOver => Stretches.IsDefaultOrEmpty ? Length.Zero : Stretches.Max(s => s.LeftOver);

    /// <summary>Whether that is worth keeping.</summary>
    public LeftOverUse Use => Stretches.IsDefaultOrEmpty ? LeftOverUse.None : Stretches.MaxBy(s => s.LeftOver)!.Use;

    /// <inheritdoc/>
    public bool Equals(LaidBoard? other) => other is not null && StockId == other.StockId && SameArrays.Equal(Stretches, other.Stretches);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(StockId, SameArrays.Hash(Stretches));
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
