using System.Numerics;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets.Model;

/// <summary>
/// An instance as the search sees it. Kerf is gone: every part and every trued sheet has one kerf added to both sides. Sizes are
/// whole steps of the largest length that divides every part, stock rounded down to it: a coarse grid that loses nothing,
/// because every position a part can need is a sum of part sizes. Parts of equal size and grain are one type. A slack is wood the stock does not
/// have; a figure group is one part that cannot be turned, as large as its block.
/// </summary>
internal sealed class SheetModel
{
    public SheetModel(SheetInstance instance)
    {
        Instance = instance;
        long kerf = instance.Kerf.Ticks;
        (SheetPart Part, FigureBlock? Block)[] units = [.. instance.Units()];
        long step = units.Aggregate(0L, (step, u) => Gcd(Gcd(step, u.Part.Along.Ticks + kerf), u.Part.Across.Ticks + kerf));
        Step = Math.Max(1, step);
        var types = new Dictionary<(long, long, bool, GrainAxis?, bool), List<PartMember>>();
        foreach ((SheetPart part, FigureBlock? block) in units)
        {
            bool flip = part.Grain == GrainRule.Free && part.Along < part.Across;
            (Length along, Length across) = part.Lying(flip ? Turn.Quarter : Turn.None);
            bool mayTurn = part.Grain == GrainRule.Free && part.Along != part.Across;
            var key = ((along.Ticks + kerf) / Step, (across.Ticks + kerf) / Step, mayTurn, block?.Group.Axis, block is { Trims: true });
            if (!types.TryGetValue(key, out List<PartMember>? members)) types[key] = members = [];
            members.Add(new(part, flip, block));
        }
        Types = [.. types.Select(t => new PartType(t.Key.Item1, t.Key.Item2, t.Key.Item3, t.Value.Sum(m => m.Part.Count), [.. t.Value]) { Figure = t.Key.Item4, Trims = t.Key.Item5 })];
        Stock = [.. instance.Stock.Select(s => Stock_(s, instance.UsableAlong(s).Ticks + kerf, instance.UsableAcross(s).Ticks + kerf))];
        LeastAlong = Types.Length == 0 ? 1 : Types.Min(t => t.MayTurn ? Math.Min(t.Along, t.Across) : t.Along);
        LeastAcross = Types.Length == 0 ? 1 : Types.Min(t => t.MayTurn ? Math.Min(t.Along, t.Across) : t.Across);
    }

    public SheetInstance Instance { get; }

    /// <summary>The most divisions on the way from a sheet to a part; <see cref="int.MaxValue"/> when the shop does not mind.</summary>
    public int MostStages => Instance.MostStages ?? int.MaxValue;

    /// <summary>Ticks in one step of the grid.</summary>
    public long Step { get; }

    public PartType[] Types { get; }

    public StockType[] Stock { get; }

    /// <summary>No part can lie in less along the grain.</summary>
    public long LeastAlong { get; }

    /// <summary>No part can lie in less across the grain.</summary>
    public long LeastAcross { get; }

    public bool Fits(int type, int stock)
    {
        PartType part = Types[type];
        StockType sheet = Stock[stock];
        return (part.Along <= sheet.Along && part.Across <= sheet.Across)
            || (part.MayTurn && part.Across <= sheet.Along && part.Along <= sheet.Across);
    }

    /// <summary>
    /// Divisions on the way to a part (to the last member of a figure group) once it is written: those that a search tree has, those
    /// within a block, and the trim that the grid hides where the sheet does not end on a step.
    /// </summary>
    /// <param name="type">The type of the part.</param>
    /// <param name="stock">The stock it lies on.</param>
    /// <param name="divisions">Divisions above it in the search tree, of which no two in turn have one direction.</param>
    /// <param name="parent">The direction of the last of them; null where there is none.</param>
    public int StagesOf(int type, int stock, int divisions, GrainAxis? parent)
    {
        PartType part = Types[type];
        StockType sheet = Stock[stock];
        int along = sheet.EndsAlong ? 0 : 1, across = sheet.EndsAcross ? 0 : 1, below = part.StagesBelow(parent);
        return divisions switch
        {
            // A block's own last cut is one with the cuts between its members.
            0 => along + across + below - (part.Figure is { } axis ? axis == GrainAxis.Along ? along : across : 0),
            // The hidden trim is one with the cuts between members that follow each other that way, and with the trims of members that are trimmed anyway.
            1 => 1 + below + (part.Figure is not null && (part.Figure != parent || part.Trims) ? 0 : parent == GrainAxis.Along ? across : along),
            _ => divisions + below,
        };
    }

    /// <summary>True when a part that is laid so in a free rectangle takes no more stages than the shop allows.</summary>
    /// <param name="type">The type of the part.</param>
    /// <param name="stock">The stock of the sheet.</param>
    /// <param name="free">Where it would lie.</param>
    /// <param name="restAlong">What it leaves of that along the grain.</param>
    /// <param name="restAcross">What it leaves of that across the grain.</param>
    /// <param name="first">How the first cut in the free rectangle separates, where both rests are there.</param>
    public bool FewEnough(int type, int stock, in FreeRectangle free, long restAlong, long restAcross, NodeKind first)
    {
        if (Instance.MostStages is not { } most) return true;
        NodeKind last = restAlong == 0 && restAcross == 0 ? free.Parent
            : restAcross == 0 ? NodeKind.Along
            : restAlong == 0 ? NodeKind.Across
            : first == NodeKind.Across ? NodeKind.Along : NodeKind.Across;
        GrainAxis? parent = last switch { NodeKind.Along => GrainAxis.Along, NodeKind.Across => GrainAxis.Across, _ => null };
        return StagesOf(type, stock, free.StagesWith(restAlong, restAcross, first), parent) <= most;
    }

    /// <summary>
    /// True when the block of a figure group takes few enough stages where nothing lies beside it: its members are cut apart like other slices of
    /// the division it lies in, and each is trimmed by itself from all that is beside it. That takes fewer than a block cut to size first.
    /// </summary>
    /// <param name="type">The type, with members that must be trimmed.</param>
    /// <param name="free">Where it would lie; only the whole sheet, or a slice of a division in the group's own direction.</param>
    public bool FewEnoughAlone(int type, in FreeRectangle free)
    {
        NodeKind own = Types[type].Figure == GrainAxis.Along ? NodeKind.Along : NodeKind.Across;
        return free.Parent == own ? free.Stages + 1 <= MostStages : free.Parent == NodeKind.Free && MostStages >= 2;
    }

    private StockType Stock_(SheetStock stock, long along, long across) => new(stock, along / Step, across / Step, stock.Cost.Amount, stock.Limit ?? int.MaxValue)
    {
        EndsAlong = Instance.Slack == Length.Zero && along % Step == 0,
        EndsAcross = Instance.Slack == Length.Zero && across % Step == 0,
    };

    private static long Gcd(long a, long b) => (long)BigInteger.GreatestCommonDivisor(a, b);
}

/// <summary>Parts of one size and grain, one kerf added to both sides, in steps of the model's grid.</summary>
/// <param name="Along">Size along the grain as it lies unturned.</param>
/// <param name="Across">Size across the grain as it lies unturned.</param>
/// <param name="MayTurn">False for square parts too, which gain nothing by it.</param>
/// <param name="Count">How many.</param>
/// <param name="Members">What is of this type.</param>
internal sealed record PartType(long Along, long Across, bool MayTurn, int Count, PartMember[] Members)
{
    /// <summary>For figure groups: the direction in which their members follow each other; null for plain parts.</summary>
    public GrainAxis? Figure { get; init; }

    /// <summary>For figure groups: true when members must be trimmed from the block.</summary>
    public bool Trims { get; init; }

    /// <summary>
    /// Divisions a figure group needs beyond the place where its block lies: none for plain parts. Where the block is a slice of
    /// a division in the group's own direction, its members become slices of that division.
    /// </summary>
    /// <param name="parent">The direction of the division the block is a slice of; null when it is the whole sheet.</param>
    public int StagesBelow(GrainAxis? parent) => Figure is null ? 0 : (Figure == parent ? 0 : 1) + (Trims ? 1 : 0);

    public double Area { get; } = (double)Along * Across;
}

/// <summary>A part of a type, or the block of a figure group.</summary>
/// <param name="Part">The part as it is laid; for a figure group its block.</param>
/// <param name="Flip">Whether it lies turned when the type does not.</param>
/// <param name="Block">The group's members; null for a plain part.</param>
internal readonly record struct PartMember(SheetPart Part, bool Flip, FigureBlock? Block);

/// <summary>A stock, trued, less the slack, one kerf added to both sides, in steps of the model's grid.</summary>
internal sealed record StockType(SheetStock Stock, long Along, long Across, decimal Cost, int Limit)
{
    public double Area { get; } = (double)Along * Across;

    /// <summary>
    /// True when the model's size along is the true one to the tick. Else a part that fills it in the model must still be trimmed on the
    /// saw, which is one more stage for parts that no division has sized in that direction: the whole sheet, or the slices of its first division.
    /// </summary>
    public bool EndsAlong { get; init; }

    /// <summary>The same across the grain.</summary>
    public bool EndsAcross { get; init; }
}
