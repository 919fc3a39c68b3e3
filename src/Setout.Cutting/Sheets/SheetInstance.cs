using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>
/// What is to be laid out: parts of one material, the stock they may come from, the saw's kerf and what is worth keeping.
/// Checked when it is made; a part that fits no stock is no error here but an answer with reasons, see <see cref="Validate"/>.
/// What a shop asks beyond that (slack, stages, figure, the layout it already follows) is set on the finished instance and checked as it is set.
/// </summary>
public sealed record SheetInstance
{
    // The block each member of a figure group belongs to.
    private readonly ImmutableDictionary<string, FigureBlock> _blocks = ImmutableDictionary<string, FigureBlock>.Empty;

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
        InstanceRules.CheckParts(parts);
        InstanceRules.CheckStock(stock);
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

    /// <summary>
    /// What stays free for sheets that are short and kerfs that vary: no part ends nearer than this to the far trued edge of its
    /// stock, in either direction. Zero or more, and less than every trued stock; zero by default.
    /// </summary>
    /// <exception cref="ArgumentException">The slack is out of range, or leaves nothing of some stock.</exception>
    public Length Slack
    {
        get;
        init
        {
            InstanceRules.CheckSlack(value, Stock);
            field = value;
        }
    }

    /// <summary>
    /// The most divisions on the way from the trued sheet to any part, 1 to <see cref="MostStagesEver"/>; a division that only trims counts
    /// too, the truing of the edges does not. Null, the default, for any number.
    /// </summary>
    /// <exception cref="ArgumentException">The number is out of range.</exception>
    public int? MostStages
    {
        get;
        init
        {
            if (value is < 1 or > MostStagesEver)
                throw new ArgumentException($"At most {value} stages are asked for; it must lie between 1 and {MostStagesEver}, or be left open.", nameof(value));
            field = value;
        }
    }

    /// <summary>The largest number <see cref="MostStages"/> may have.</summary>
    public const int MostStagesEver = 9;

    /// <summary>Parts whose figure runs through; a part belongs to one group at most. Empty by default.</summary>
    /// <exception cref="ArgumentException">A group breaks a rule of <see cref="FigureGroup"/>, or a member's grain is not to be kept.</exception>
    public ImmutableArray<FigureGroup> Groups
    {
        get;
        init
        {
            InstanceRules.CheckGroups(value, Parts);
            Dictionary<string, SheetPart> parts = Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
            _blocks = value.Select(g => FigureBlock.Of(g, parts, Kerf)).SelectMany(b => b.Members.Select(m => (m.Id, b)).Distinct())
                .ToImmutableDictionary(p => p.Id, p => p.b, StringComparer.Ordinal);
            field = value;
        }
    } = [];

    /// <summary>
    /// The layout the shop already follows, preferred at equal cost; null, the default, for none. It may speak of parts and stock
    /// that are gone by now.
    /// </summary>
    public SheetLayout? Before { get; init; }

    /// <summary>All counts added.</summary>
    public int PartsInAll => Parts.Sum(p => p.Count);

    /// <summary>How far parts may reach along the grain of the trued stock: its size less the slack.</summary>
    public Length UsableAlong(SheetStock stock) => stock.TruedAlong - Slack;

    /// <summary>How far parts may reach across the grain of the trued stock: its size less the slack.</summary>
    public Length UsableAcross(SheetStock stock) => stock.TruedAcross - Slack;

    /// <summary>True when the part can lie so on the trued stock, the slack left free.</summary>
    public bool Fits(SheetPart part, Turn turn, SheetStock stock)
    {
        if (turn == Turn.Quarter && part.Grain == GrainRule.Keep) return false;
        (Length along, Length across) = part.Lying(turn);
        return along <= UsableAlong(stock) && across <= UsableAcross(stock);
    }

    /// <summary>
    /// True when the part fits some stock of which there is at least one. A member of a figure group fits where the whole
    /// group does, cut as one block.
    /// </summary>
    public bool CanBeLaid(SheetPart part) => BlockOf(part) is { } block ? FitsSome(block.Block, block) : FitsSome(part, null);

    /// <summary>
    /// A reason for each part that fits no stock, in the order of the parts; empty when every part fits some stock. Each member of a figure
    /// group that does not fit as a block has that reason.
    /// </summary>
    public ImmutableArray<CuttingReason> Validate() => [.. Parts.Where(p => !CanBeLaid(p)).Select(p => Refusals.Of(this, p, BlockOf(p)))];

    /// <summary>What is laid as one: each figure group as its block, then each part that is in no group; only what fits some stock.</summary>
    internal IEnumerable<(SheetPart Part, FigureBlock? Block)> Units() =>
        Groups.Select(g => _blocks[g.PartIds[0]]).Select(b => (b.Block, (FigureBlock?)b))
            .Concat(Parts.Where(p => !_blocks.ContainsKey(p.Id)).Select(p => (p, (FigureBlock?)null)))
            .Where(u => FitsSome(u.Item1, u.Item2));

    private FigureBlock? BlockOf(SheetPart part) => _blocks.GetValueOrDefault(part.Id);

    // Two divisions are enough for a part: to width and to length. So they are for a block of members that differ: apart across the whole sheet,
    // then each is trimmed from what it has beside it.
    private bool FitsSome(SheetPart part, FigureBlock? block) => Stock.Any(s => s.Limit != 0 && Enum.GetValues<Turn>().Any(t =>
        Fits(part, t, s) && StagesAlone(part, block, t, s) <= (MostStages ?? MostStagesEver)));

    internal static int StagesAlone(SheetPart part, FigureBlock? block, Turn turn, SheetStock stock)
    {
        if (block is { Trims: true }) return 2;
        (Length along, Length across) = part.Lying(turn);
        bool cutAlong = along != stock.TruedAlong || block?.Group.Axis == GrainAxis.Along, cutAcross = across != stock.TruedAcross || block?.Group.Axis == GrainAxis.Across;
        return (cutAlong ? 1 : 0) + (cutAcross ? 1 : 0);
    }

    /// <inheritdoc/>
    public bool Equals(SheetInstance? other) => other is not null && Kerf == other.Kerf && Keep == other.Keep
        && SameArrays.Equal(Parts, other.Parts) && SameArrays.Equal(Stock, other.Stock) && Slack == other.Slack && MostStages == other.MostStages
        && SameArrays.Equal(Groups, other.Groups) && Equals(Before, other.Before);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(
        Kerf, Keep, SameArrays.Hash(Parts), SameArrays.Hash(Stock), Slack, MostStages, SameArrays.Hash(Groups), Before);
}
