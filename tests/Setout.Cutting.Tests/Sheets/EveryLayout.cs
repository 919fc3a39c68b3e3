using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>Every edge-to-edge layout of a few parts in whole millimetres, tried one by one; written without any of the solver's code.</summary>
internal sealed class EveryLayout(SheetPart[] parts, SheetStock[] stock, int kerf)
{
    private readonly Dictionary<(int Set, int Along, int Across), bool> _known = [];

    /// <summary>The least money, and the fewest sheets for it.</summary>
    public (int Cost, int Sheets) Least()
    {
        int all = (1 << parts.Length) - 1;
        var least = new (int Cost, int Sheets)[all + 1];
        for (int set = 1; set <= all; set++)
        {
            least[set] = (int.MaxValue, 0);
            for (int one = set; one > 0; one = (one - 1) & set)
                foreach (SheetStock sheet in stock)
                {
                    (int cost, int sheets) = least[set ^ one];
                    if (cost == int.MaxValue || !Holds(one, (int)sheet.Along.ToMillimetres(), (int)sheet.Across.ToMillimetres())) continue;
                    (int, int) way = (cost + (int)sheet.Cost.Amount, sheets + 1);
                    if (way.CompareTo(least[set]) < 0) least[set] = way;
                }
        }
        return least[all];
    }

    /// <summary>True when a sheet of this size can be sawn into these parts, given as bits.</summary>
    public bool Holds(int set, int along, int across)
    {
        if (along <= 0 || across <= 0) return false;
        if (_known.TryGetValue((set, along, across), out bool known)) return known;
        bool holds = int.IsPow2(set) ? Fits(parts[int.TrailingZeroCount(set)], along, across) : Divides(set, along, across);
        _known[(set, along, across)] = holds;
        return holds;
    }

    private bool Divides(int set, int along, int across)
    {
        for (int one = (set - 1) & set; one > 0; one = (one - 1) & set)
        {
            for (int at = 1; at < along; at++)
                if (Holds(one, at, across) && Holds(set ^ one, along - at - kerf, across)) return true;
            for (int at = 1; at < across; at++)
                if (Holds(one, along, at) && Holds(set ^ one, along, across - at - kerf)) return true;
        }
        return false;
    }

    private static bool Fits(SheetPart part, int along, int across) =>
        (part.Along <= Length.FromMillimetres(along) && part.Across <= Length.FromMillimetres(across))
        || (part.Grain == GrainRule.Free && part.Across <= Length.FromMillimetres(along) && part.Along <= Length.FromMillimetres(across));
}
