using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>
/// What a layout is judged by, in this order; smaller is better except for <paramref name="Worth"/>:
/// parts left out, money for stock, sheets, sheets changed, settings, handling, worth of what is left. See <see cref="SheetObjective"/>.
/// </summary>
/// <param name="LeftOut">Area of the parts not laid.</param>
/// <param name="Cost">Money for the stock used.</param>
/// <param name="Sheets">Sheets and blanks used.</param>
/// <param name="Changed">Sheets that are not in the layout the shop already follows; 0 where it follows none.</param>
/// <param name="Settings">Settings of fence and stop, as counted by the objective.</param>
/// <param name="Handling">Cuts: each is one more time that a blank is brought to the blade.</param>
/// <param name="Worth">Worth of the kept left-overs; larger is better.</param>
public sealed record SheetScore(Area LeftOut, Money Cost, int Sheets, int Changed, int Settings, int Handling, Int128 Worth) : IComparable<SheetScore>
{
    /// <summary>Below zero when this layout is the better one.</summary>
    public int CompareTo(SheetScore? other)
    {
        if (other is null) return -1;
        int order = LeftOut.CompareTo(other.LeftOut);
        if (order == 0) order = Cost.CompareTo(other.Cost);
        if (order == 0) order = Sheets.CompareTo(other.Sheets);
        if (order == 0) order = Changed.CompareTo(other.Changed);
        if (order == 0) order = Settings.CompareTo(other.Settings);
        if (order == 0) order = Handling.CompareTo(other.Handling);
        if (order == 0) order = other.Worth.CompareTo(Worth);
        return order;
    }

    /// <summary>Order.</summary>
    public static bool operator <(SheetScore a, SheetScore b) => a.CompareTo(b) < 0;

    /// <summary>Order.</summary>
    public static bool operator >(SheetScore a, SheetScore b) => a.CompareTo(b) > 0;

    /// <summary>Order.</summary>
    public static bool operator <=(SheetScore a, SheetScore b) => a.CompareTo(b) <= 0;

    /// <summary>Order.</summary>
    public static bool operator >=(SheetScore a, SheetScore b) => a.CompareTo(b) >= 0;
}

/// <summary>
/// The one place that says what a good sheet layout is. Everything is recomputed from the layout's trees.
/// <list type="number">
/// <item>Area of parts left out: none, unless they fit no stock or stock ran out.</item>
/// <item>Money for stock. Blanks in hand cost nothing, so they are used where that saves a sheet.</item>
/// <item>Sheets and blanks used.</item>
/// <item>Sheets that differ from every one of the layout the shop already follows, each of those counted once. So what is already drawn,
/// lettered or half cut stays wherever that costs neither money nor a sheet.</item>
/// <item>Settings: how many different figures fence and stop are set to. Slices that hold parts and share direction, size and
/// stage (depth in the cut tree, so that they can be cut one after the other) share one setting. A sheet whose
/// first division is a crosscut counts one more, because a whole sheet is easier to rip than to crosscut.</item>
/// <item>Handling: how many cuts there are, truing left out, since every sheet of a kind has as much of it. Each cut is a blank brought to the blade once more.</item>
/// <item>Worth of what is left: the sum, over left-overs worth keeping, of the square of their area in whole square
/// millimetres. The square makes one big rectangle worth more than two halves.</item>
/// </list>
/// </summary>
public static class SheetObjective
{
    /// <summary>Judges a layout. The layout must be sound; see the checker.</summary>
    public static SheetScore Score(SheetInstance instance, SheetLayout layout)
    {
        Dictionary<string, SheetStock> stock = instance.Stock.ToDictionary(s => s.Id, StringComparer.Ordinal);
        Dictionary<string, SheetPart> parts = instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        Area leftOut = layout.LeftOut.Aggregate(Area.Zero, (sum, p) => sum + (parts[p.PartId].Along * parts[p.PartId].Across * p.Count));
        return ScoreSheets(layout.Sheets.Select(s => (stock[s.StockId], s.Root))) with { LeftOut = leftOut, Changed = Changed(instance.Before, layout) };
    }

    /// <summary>How many sheets of a layout are not in the one before, each sheet of that counted once; 0 where there was none.</summary>
    public static int Changed(SheetLayout? before, SheetLayout layout)
    {
        if (before is null) return 0;
        Dictionary<LaidSheet, int> there = before.Sheets.CountBy(s => s).ToDictionary();
        int changed = 0;
        foreach (LaidSheet sheet in layout.Sheets)
        {
            int left = there.GetValueOrDefault(sheet);
            if (left == 0) changed++;
            else there[sheet] = left - 1;
        }
        return changed;
    }

    /// <summary>Judges sheets by themselves, whatever is not on them.</summary>
    internal static SheetScore ScoreSheets(IEnumerable<(SheetStock Stock, CutNode Root)> sheets)
    {
        var settings = new HashSet<(int Stage, GrainAxis Axis, Length Size)>();
        Money cost = Money.Zero;
        Int128 worth = 0;
        int count = 0, crosscutFirst = 0, cuts = 0;
        foreach ((SheetStock stock, CutNode root) in sheets)
        {
            count++;
            cost += stock.Cost;
            if (root is Division { Axis: GrainAxis.Along }) crosscutFirst++;
            Walk(root, stock.TruedAlong, stock.TruedAcross, 0, settings, ref cuts, ref worth);
        }
        return new(Area.Zero, cost, count, 0, settings.Count + crosscutFirst, cuts, worth);
    }

    /// <summary>The worth of one kept left-over.</summary>
    public static Int128 WorthOf(Length along, Length across)
    {
        Int128 squareMillimetres = (along * across).SquareTicks / ((Int128)Length.TicksPerMillimetre * Length.TicksPerMillimetre);
        return squareMillimetres * squareMillimetres;
    }

    private static void Walk(CutNode node, Length along, Length across, int stage, HashSet<(int, GrainAxis, Length)> settings, ref int cuts, ref Int128 worth)
    {
        if (node is KeepNode) worth += WorthOf(along, across);
        if (node is not Division division) return;
        cuts += division.Cuts;
        foreach (Slice slice in division.Slices)
        {
            if (slice.Content is PartNode or Division) settings.Add((stage, division.Axis, slice.Size));
            Walk(slice.Content, division.Axis == GrainAxis.Along ? slice.Size : along, division.Axis == GrainAxis.Along ? across : slice.Size, stage + 1, settings, ref cuts, ref worth);
        }
    }
}
