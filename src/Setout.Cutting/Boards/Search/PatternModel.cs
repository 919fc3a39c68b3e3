using Setout.Core.Measures;
using Setout.Cutting.Bounds;

namespace Setout.Cutting.Boards.Search;

/// <summary>
/// A board model as patterns see it: lengths in whole steps of the largest length that divides every part (bins rounded down to it, which
/// loses nothing, because parts follow each other from a bin's start), and the bins of a stock that are equal gathered into slots.
/// </summary>
internal sealed class PatternModel
{
    // So little that it only decides between layouts of equal money.
    private const double Tie = 1e-6;

    public PatternModel(BoardModel boards)
    {
        Boards = boards;
        Step = Math.Max(1, boards.Types.Aggregate(0L, (step, t) => Gcd(step, t.Length)));
        Lengths = [.. boards.Types.Select(t => t.Length / Step)];
        Demand = [.. boards.Types.Select(t => t.Count)];
        CountsBoards = boards.Stock.All(s => s.Cost == 0);
        Prices = [.. boards.Stock.Select(s => CountsBoards ? 1 : s.Cost)];
        PriceStep = MoneyStep.Of(Prices.Select(p => new Money(p)));
        double most = (double)Prices.Max(), tie = Prices.Distinct().Count() > 1 ? Tie : 0;
        MostPrice = most;
        Costs = [.. Prices.Select(p => ((double)p / most) + tie)];
        long shortest = Lengths.Min();
        var slots = new List<Slot>();
        for (int s = 0; s < boards.Stock.Length; s++)
        {
            if (boards.Stock[s].Limit == 0) continue;
            long[] bins = boards.Stock[s].Bins;
            foreach (IGrouping<long, int> same in Enumerable.Range(0, bins.Length).Where(b => bins[b] / Step >= shortest).GroupBy(b => bins[b] / Step))
                slots.Add(new(s, same.Key, [.. same]));
        }
        Slots = [.. slots];
        SlotsOf = [.. Enumerable.Range(0, boards.Stock.Length).Select(s => Enumerable.Range(0, Slots.Length).Where(k => Slots[k].Stock == s).ToArray())];
    }

    public BoardModel Boards { get; }

    /// <summary>Ticks in a step.</summary>
    public long Step { get; }

    /// <summary>Of each type, in steps.</summary>
    public long[] Lengths { get; }

    /// <summary>Parts wanted of each type.</summary>
    public int[] Demand { get; }

    public Slot[] Slots { get; }

    /// <summary>The slots of each stock.</summary>
    public int[][] SlotsOf { get; }

    /// <summary>True where no stock costs money: then boards are counted instead.</summary>
    public bool CountsBoards { get; }

    /// <summary>What each stock costs, or 1 where boards are counted.</summary>
    public decimal[] Prices { get; }

    /// <summary>What every layout costs is a multiple of it.</summary>
    public decimal PriceStep { get; }

    /// <summary>The dearest stock's price, which is 1 in the linear programs.</summary>
    public double MostPrice { get; }

    /// <summary>Of each stock in the linear programs.</summary>
    public double[] Costs { get; }

    /// <summary>True when a board of this stock is one bin.</summary>
    public bool IsSingle(int stock) => Boards.Stock[stock].IsSingle;

    private static long Gcd(long a, long b)
    {
        while (b != 0) (a, b) = (b, a % b);
        return a;
    }
}

/// <summary>Equal bins of one stock.</summary>
/// <param name="Stock">The stock.</param>
/// <param name="Length">Of each, in steps.</param>
/// <param name="Bins">Which bins of a board these are.</param>
internal sealed record Slot(int Stock, long Length, int[] Bins);

/// <summary>A way to fill a bin.</summary>
/// <param name="Slot">What bin.</param>
/// <param name="Parts">Type and count, longest first.</param>
internal sealed record Pattern(int Slot, (int Type, int Count)[] Parts)
{
    /// <summary>How often it can be cut before more than these parts are made.</summary>
    public int MostWithin(int[] demand)
    {
        int most = int.MaxValue;
        foreach ((int type, int count) in Parts) most = Math.Min(most, demand[type] / count);
        return most;
    }
}

/// <summary>Every pattern met so far, each once, in the order in which they were met.</summary>
internal sealed class PatternPool
{
    private readonly HashSet<string> _known = new(StringComparer.Ordinal);

    public List<Pattern> All { get; } = [];

    /// <summary>False when it is known already.</summary>
    public bool Add(Pattern pattern)
    {
        if (pattern.Parts.Length == 0) return false;
        string key = string.Create(1 + (2 * pattern.Parts.Length), pattern, static (text, p) =>
        {
            text[0] = (char)p.Slot;
            for (int i = 0; i < p.Parts.Length; i++)
            {
                text[1 + (2 * i)] = (char)p.Parts[i].Type;
                text[2 + (2 * i)] = (char)Math.Min(p.Parts[i].Count, char.MaxValue);
            }
        });
        if (!_known.Add(key)) return false;
        All.Add(pattern);
        return true;
    }
}
