using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>
/// What is to be laid out: parts of one material, the stock they may come from, the saw's kerf and what is worth keeping.
/// Checked when it is made; a part that fits no stock is no error here but an answer with reasons, see <see cref="Validate"/>.
/// </summary>
public sealed record SheetInstance
{
    /// <summary>The longest side and the widest kerf an instance may name: one kilometre keeps every area within 128 bits.</summary>
    public static Length Longest { get; } = Length.FromMillimetres(1_000_000);

    /// <summary>The most parts, all counts added, that an instance may ask for.</summary>
    public const int MostParts = 1_000_000;

    /// <summary>Makes and checks an instance.</summary>
    /// <param name="parts">May be empty; ids unique.</param>
    /// <param name="stock">One or more; ids unique.</param>
    /// <param name="kerf">Width of wood the blade turns into dust at each cut; zero or more.</param>
    /// <param name="keep">From what size a left-over is worth keeping.</param>
    /// <exception cref="ArgumentException">An id is empty or used twice, a size, count, cost, trim, limit or the kerf is out of range, or there is no stock.</exception>
    public SheetInstance(ImmutableArray<SheetPart> parts, ImmutableArray<SheetStock> stock, Length kerf, KeepRule keep)
    {
        if (parts.IsDefault) throw new ArgumentException("The list of parts is not set.", nameof(parts));
        if (stock.IsDefaultOrEmpty) throw new ArgumentException("There must be at least one stock.", nameof(stock));
        ArgumentNullException.ThrowIfNull(keep);
        if (kerf.Sign < 0 || kerf > Longest)
            throw new ArgumentException($"The kerf is {kerf}; it must lie between 0 and {Longest}.", nameof(kerf));
        if (keep.ShortSide.Sign < 0 || keep.LongSide.Sign < 0)
            throw new ArgumentException($"A keep rule of {keep.ShortSide} by {keep.LongSide} has a side below zero.", nameof(keep));
        CheckParts(parts);
        CheckStock(stock);
        Parts = parts;
        Stock = stock;
        Kerf = kerf;
        Keep = keep;
    }

    /// <summary>The parts, in the caller's order.</summary>
    public ImmutableArray<SheetPart> Parts { get; }

    /// <summary>The stock, in the caller's order.</summary>
    public ImmutableArray<SheetStock> Stock { get; }

    /// <summary>Width of wood the blade turns into dust at each cut.</summary>
    public Length Kerf { get; }

    /// <summary>From what size a left-over is worth keeping.</summary>
    public KeepRule Keep { get; }

    /// <summary>All counts added.</summary>
    public int PartsInAll => Parts.Sum(p => p.Count);

    /// <summary>True when the part can lie so on the trued stock.</summary>
    public static bool Fits(SheetPart part, Turn turn, SheetStock stock)
    {
        if (turn == Turn.Quarter && part.Grain == GrainRule.Keep) return false;
        (Length along, Length across) = part.Lying(turn);
        return along <= stock.TruedAlong && across <= stock.TruedAcross;
    }

    /// <summary>True when the part fits some stock of which there is at least one.</summary>
    public bool CanBeLaid(SheetPart part) =>
        Stock.Any(s => s.Limit != 0 && (Fits(part, Turn.None, s) || Fits(part, Turn.Quarter, s)));

    /// <summary>A reason for each part that fits no stock, in the order of the parts; empty when every part fits some stock.</summary>
    public ImmutableArray<CuttingReason> Validate() => [.. Parts.Where(p => !CanBeLaid(p)).Select(Refuse)];

    /// <inheritdoc/>
    public bool Equals(SheetInstance? other) => other is not null && Kerf == other.Kerf && Keep == other.Keep
        && SameArrays.Equal(Parts, other.Parts) && SameArrays.Equal(Stock, other.Stock);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kerf, Keep, SameArrays.Hash(Parts), SameArrays.Hash(Stock));

    private CuttingReason Refuse(SheetPart part)
    {
        SheetStock[] there = [.. Stock.Where(s => s.Limit != 0)];
        string size = $"part {part.Id} ({part.Along} along by {part.Across} across the grain)";
        if (there.Length == 0) return new(ReasonKind.StockTooLittle, part.Id, $"{size} has no stock to come from: every limit is 0");
        SheetPart free = part with { Grain = GrainRule.Free };
        SheetStock? turned = there.FirstOrDefault(s => Fits(free, Turn.Quarter, s));
        if (turned is not null)
            return new(ReasonKind.PartNeedsTurning, part.Id, $"{size} would fit stock {turned.Id} only if it were turned, and its grain is to be kept");
        Length longest = there.Max(s => s.TruedAlong), widest = there.Max(s => s.TruedAcross);
        string how = part.Grain == GrainRule.Keep && part.Along > longest ? $"is longer than any stock, which is {longest} at most once trued"
            : part.Grain == GrainRule.Keep && part.Across > widest ? $"is wider than any stock, which is {widest} at most once trued"
            : $"fits no stock whichever way it may lie; trued, stock is {longest} along and {widest} across at most";
        return new(ReasonKind.PartTooLarge, part.Id, $"{size} {how}");
    }

    private static void CheckParts(ImmutableArray<SheetPart> parts)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        long count = 0;
        foreach (SheetPart part in parts)
        {
            if (string.IsNullOrEmpty(part.Id)) throw new ArgumentException("A part has an empty id.", nameof(parts));
            if (!ids.Add(part.Id)) throw new ArgumentException($"Two parts have the id {part.Id}.", nameof(parts));
            CheckSide(part.Along, $"Part {part.Id} along the grain", nameof(parts));
            CheckSide(part.Across, $"Part {part.Id} across the grain", nameof(parts));
            if (part.Count < 1) throw new ArgumentException($"Part {part.Id} is asked for {part.Count} times; it must be 1 or more.", nameof(parts));
            if (!Enum.IsDefined(part.Grain)) throw new ArgumentException($"Part {part.Id} has the unknown grain rule {part.Grain}.", nameof(parts));
            count += part.Count;
        }
        if (count > MostParts) throw new ArgumentException($"{count} parts are asked for; at most {MostParts} are laid out at once.", nameof(parts));
    }

    private static void CheckStock(ImmutableArray<SheetStock> stock)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (SheetStock sheet in stock)
        {
            if (string.IsNullOrEmpty(sheet.Id)) throw new ArgumentException("A stock has an empty id.", nameof(stock));
            if (!ids.Add(sheet.Id)) throw new ArgumentException($"Two stocks have the id {sheet.Id}.", nameof(stock));
            CheckSide(sheet.Along, $"Stock {sheet.Id} along the grain", nameof(stock));
            CheckSide(sheet.Across, $"Stock {sheet.Id} across the grain", nameof(stock));
            foreach (Length trim in (Length[])[sheet.Trim.AlongStart, sheet.Trim.AlongEnd, sheet.Trim.AcrossStart, sheet.Trim.AcrossEnd])
                if (trim.Sign < 0 || trim > Longest) throw new ArgumentException($"Stock {sheet.Id} has a trim of {trim}; it must lie between 0 and {Longest}.", nameof(stock));
            if (sheet.TruedAlong.Sign <= 0 || sheet.TruedAcross.Sign <= 0)
                throw new ArgumentException($"Nothing is left of stock {sheet.Id} once its edges are trued ({sheet.TruedAlong} by {sheet.TruedAcross}).", nameof(stock));
            if (sheet.Cost < Money.Zero) throw new ArgumentException($"Stock {sheet.Id} costs {sheet.Cost}; it must be 0 or more.", nameof(stock));
            if (sheet.Limit < 0) throw new ArgumentException($"Stock {sheet.Id} has a limit of {sheet.Limit}; it must be 0 or more.", nameof(stock));
        }
    }

    private static void CheckSide(Length side, string what, string name)
    {
        if (side.Sign <= 0 || side > Longest)
            throw new ArgumentException($"{what} is {side}; it must be above 0 and at most {Longest}.", name);
    }
}
