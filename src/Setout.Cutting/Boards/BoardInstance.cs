using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Boards;

/// <summary>
/// What is to be laid out: parts of one section of board, the stock lengths they may come from, the saw's kerf and the length
/// from which a left-over is worth keeping. Checked when it is made; a part that fits no stock is an answer with reasons, see <see cref="Validate"/>.
/// </summary>
public sealed record BoardInstance
{
    /// <summary>The longest board and the widest kerf an instance may name.</summary>
    public static Length Longest { get; } = Length.FromMillimetres(1_000_000);

    /// <summary>The most parts, all counts added, that an instance may ask for.</summary>
    public const int MostParts = 1_000_000;

    /// <summary>Makes and checks an instance.</summary>
    /// <param name="parts">May be empty; ids unique.</param>
    /// <param name="stock">One or more; ids unique.</param>
    /// <param name="kerf">Length of wood the blade turns into dust at each cut; zero or more.</param>
    /// <param name="keepFrom">From what length a left-over is worth keeping; zero or more.</param>
    /// <exception cref="ArgumentException">An id is empty or used twice, a length, count, cost, trim, limit or the kerf is out of range, or there is no stock.</exception>
    public BoardInstance(ImmutableArray<BoardPart> parts, ImmutableArray<BoardStock> stock, Length kerf, Length keepFrom)
    {
        if (parts.IsDefault) throw new ArgumentException("The list of parts is not set.", nameof(parts));
        if (stock.IsDefaultOrEmpty) throw new ArgumentException("There must be at least one stock.", nameof(stock));
        if (kerf.Sign < 0 || kerf > Longest)
            throw new ArgumentException($"The kerf is {kerf}; it must lie between 0 and {Longest}.", nameof(kerf));
        if (keepFrom.Sign < 0) throw new ArgumentException($"Left-overs are kept from {keepFrom}; it must be 0 or more.", nameof(keepFrom));
        CheckParts(parts);
        CheckStock(stock);
        Parts = parts;
        Stock = stock;
        Kerf = kerf;
        KeepFrom = keepFrom;
        _longest = stock.Where(s => s.Limit != 0).SelectMany(s => s.ClearStretches()).Select(c => c.Extent).DefaultIfEmpty(Length.Zero).Max();
    }

    /// <summary>The parts, in the caller's order.</summary>
    public ImmutableArray<BoardPart> Parts { get; }

    /// <summary>The stock, in the caller's order.</summary>
    public ImmutableArray<BoardStock> Stock { get; }

    /// <summary>Length of wood the blade turns into dust at each cut.</summary>
    public Length Kerf { get; }

    /// <summary>From what length a left-over is worth keeping.</summary>
    public Length KeepFrom { get; }

    /// <summary>All counts added.</summary>
    public int PartsInAll => Parts.Sum(p => p.Count);

    /// <summary>The most lanes times clear stretches that one board may have.</summary>
    public const int MostStretches = 1_000;

    private readonly Length _longest;

    /// <summary>True when the part fits some stock of which there is at least one.</summary>
    public bool CanBeLaid(BoardPart part) => part.Length <= _longest;

    /// <summary>A reason for each part that fits no stock, in the order of the parts; empty when every part fits some stock.</summary>
    public ImmutableArray<CuttingReason> Validate() => [.. Parts.Where(p => !CanBeLaid(p)).Select(Refuse)];

    /// <inheritdoc/>
    public bool Equals(BoardInstance? other) => other is not null && Kerf == other.Kerf && KeepFrom == other.KeepFrom
        && SameArrays.Equal(Parts, other.Parts) && SameArrays.Equal(Stock, other.Stock);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kerf, KeepFrom, SameArrays.Hash(Parts), SameArrays.Hash(Stock));

    private CuttingReason Refuse(BoardPart part)
    {
        BoardStock[] there = [.. Stock.Where(s => s.Limit != 0)];
        return there.Length == 0
            ? new(ReasonKind.StockTooLittle, part.Id, $"part {part.Id} ({part.Length}) has no stock to come from: every limit is 0")
            : new(ReasonKind.PartTooLarge, part.Id, $"part {part.Id} ({part.Length}) is longer than any stock, which is {_longest} at most {(there.All(s => s.Defects.IsEmpty) ? "once trued" : "between trims and defects")}");
    }

    private static void CheckParts(ImmutableArray<BoardPart> parts)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        long count = 0;
        foreach (BoardPart part in parts)
        {
            if (string.IsNullOrEmpty(part.Id)) throw new ArgumentException("A part has an empty id.", nameof(parts));
            if (!ids.Add(part.Id)) throw new ArgumentException($"Two parts have the id {part.Id}.", nameof(parts));
            if (part.Length.Sign <= 0 || part.Length > Longest)
                throw new ArgumentException($"Part {part.Id} is {part.Length} long; it must be above 0 and at most {Longest}.", nameof(parts));
            if (part.Count < 1) throw new ArgumentException($"Part {part.Id} is asked for {part.Count} times; it must be 1 or more.", nameof(parts));
            count += part.Count;
        }
        if (count > MostParts) throw new ArgumentException($"{count} parts are asked for; at most {MostParts} are laid out at once.", nameof(parts));
    }

    private static void CheckStock(ImmutableArray<BoardStock> stock)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (BoardStock board in stock)
        {
            if (string.IsNullOrEmpty(board.Id)) throw new ArgumentException("A stock has an empty id.", nameof(stock));
            if (!ids.Add(board.Id)) throw new ArgumentException($"Two stocks have the id {board.Id}.", nameof(stock));
            if (board.Length.Sign <= 0 || board.Length > Longest)
                throw new ArgumentException($"Stock {board.Id} is {board.Length} long; it must be above 0 and at most {Longest}.", nameof(stock));
            if (board.Trim.Start.Sign < 0 || board.Trim.End.Sign < 0 || board.Trim.Start > Longest || board.Trim.End > Longest)
                throw new ArgumentException($"Stock {board.Id} has a trim of {board.Trim.Start} and {board.Trim.End}; each must lie between 0 and {Longest}.", nameof(stock));
            if (board.Trued.Sign <= 0) throw new ArgumentException($"Nothing is left of stock {board.Id} once its ends are cut away ({board.Trued}).", nameof(stock));
            if (board.Cost < Money.Zero) throw new ArgumentException($"Stock {board.Id} costs {board.Cost}; it must be 0 or more.", nameof(stock));
            if (board.Limit < 0) throw new ArgumentException($"Stock {board.Id} has a limit of {board.Limit}; it must be 0 or more.", nameof(stock));
            CheckRip(board);
            CheckDefects(board);
        }
    }

    private static void CheckRip(BoardStock board)
    {
        if (board.Rip is not { } rip) return;
        if (rip.LaneWidth.Sign <= 0 || rip.Width < rip.LaneWidth || rip.Width > Longest)
            throw new ArgumentException($"Stock {board.Id} is {rip.Width} wide and its lanes {rip.LaneWidth}; lanes must be above 0 and no wider than the board, which is {Longest} at most.", nameof(board));
        if (rip.Kerf.Sign < 0 || rip.Kerf > Longest)
            throw new ArgumentException($"Stock {board.Id} is ripped with a kerf of {rip.Kerf}; it must lie between 0 and {Longest}.", nameof(board));
    }

    private static void CheckDefects(BoardStock board)
    {
        if (board.Defects.IsDefault) throw new ArgumentException($"The defects of stock {board.Id} are not set.", nameof(board));
        foreach (BoardStretch defect in board.Defects)
            if (defect.From.Sign < 0 || defect.To <= defect.From || defect.To > board.Length)
                throw new ArgumentException($"Stock {board.Id} has a defect from {defect.From} to {defect.To}; it must lie within its length of {board.Length}.", nameof(board));
        long stretches = (long)board.Lanes * board.ClearStretches().Length;
        if (stretches == 0) throw new ArgumentException($"Nothing is left of stock {board.Id} between its defects.", nameof(board));
        if (stretches > MostStretches) throw new ArgumentException($"Stock {board.Id} has {stretches} stretches in all lanes; at most {MostStretches} are laid out.", nameof(board));
    }
}
