using System.Numerics;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets.Search;

/// <summary>
/// An instance as the search sees it. Kerf is gone: every part and every trued sheet has one kerf added to both sides. Sizes are
/// whole steps of the largest length that divides every part, stock rounded down to it: a coarse grid that loses nothing,
/// because every position a part can need is a sum of part sizes. Parts of equal size and grain are one type.
/// </summary>
internal sealed class SheetModel
{
    public SheetModel(SheetInstance instance)
    {
        Instance = instance;
        long kerf = instance.Kerf.Ticks;
        SheetPart[] parts = [.. instance.Parts.Where(instance.CanBeLaid)];
        long step = parts.Aggregate(0L, (step, p) => Gcd(Gcd(step, p.Along.Ticks + kerf), p.Across.Ticks + kerf));
        Step = Math.Max(1, step);
        var types = new Dictionary<(long, long, bool), List<(SheetPart, bool)>>();
        foreach (SheetPart part in parts)
        {
            bool flip = part.Grain == GrainRule.Free && part.Along < part.Across;
            (Length along, Length across) = part.Lying(flip ? Turn.Quarter : Turn.None);
            var key = ((along.Ticks + kerf) / Step, (across.Ticks + kerf) / Step, part.Grain == GrainRule.Free && part.Along != part.Across);
            if (!types.TryGetValue(key, out List<(SheetPart, bool)>? members)) types[key] = members = [];
            members.Add((part, flip));
        }
        Types = [.. types.Select(t => new PartType(t.Key.Item1, t.Key.Item2, t.Key.Item3, t.Value.Sum(m => m.Item1.Count), [.. t.Value]))];
        Stock = [.. instance.Stock.Select(s => new StockType(
            s, (s.TruedAlong.Ticks + kerf) / Step, (s.TruedAcross.Ticks + kerf) / Step, s.Cost.Amount, s.Limit ?? int.MaxValue))];
        LeastSide = Types.Length == 0 ? 1 : Types.Min(t => Math.Min(t.Along, t.Across));
        LeastAlong = Types.Length == 0 ? 1 : Types.Min(t => t.MayTurn ? Math.Min(t.Along, t.Across) : t.Along);
        LeastAcross = Types.Length == 0 ? 1 : Types.Min(t => t.MayTurn ? Math.Min(t.Along, t.Across) : t.Across);
    }

    public SheetInstance Instance { get; }

    /// <summary>Ticks in one step of the grid.</summary>
    public long Step { get; }

    public PartType[] Types { get; }

    public StockType[] Stock { get; }

    /// <summary>The most cuts on the way from the sheet to a part.</summary>
    public int MostStages => int.MaxValue;

    /// <summary>No part has a shorter side.</summary>
    public long LeastSide { get; }

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

    private static long Gcd(long a, long b) => (long)BigInteger.GreatestCommonDivisor(a, b);
}

/// <summary>Parts of one size and grain, one kerf added to both sides, in steps of the model's grid.</summary>
/// <param name="Along">Size along the grain as it lies unturned.</param>
/// <param name="Across">Size across the grain as it lies unturned.</param>
/// <param name="MayTurn">False for square parts too, which gain nothing by it.</param>
/// <param name="Count">How many.</param>
/// <param name="Members">The instance's parts of this type, and whether each lies turned when the type does not.</param>
internal sealed record PartType(long Along, long Across, bool MayTurn, int Count, (SheetPart Part, bool Flip)[] Members)
{
    public double Area { get; } = (double)Along * Across;
}

/// <summary>A stock, trued, one kerf added to both sides, in steps of the model's grid.</summary>
internal sealed record StockType(SheetStock Stock, long Along, long Across, decimal Cost, int Limit)
{
    public double Area { get; } = (double)Along * Across;
}
