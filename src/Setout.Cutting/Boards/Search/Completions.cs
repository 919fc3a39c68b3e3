namespace Setout.Cutting.Boards.Search;

/// <summary>
/// Lists ways to fill one bin around the longest part still waiting. Only fillings to which no waiting part can be added are
/// listed: moving parts forward into such a board never makes the rest harder, so nothing is lost (the dominance behind
/// bin completion). The list is cut off after so many steps, and says so.
/// </summary>
internal sealed class Completions(BoardModel model, SearchMeter meter)
{
    private const int MostSteps = 4_000;
    private const int MostFound = 400;

    private readonly int[] _counts = new int[model.Types.Length];

    /// <summary>Fillings of a bin.</summary>
    /// <param name="pool">The parts waiting.</param>
    /// <param name="longest">The type that must be in it; at least one is waiting and fits.</param>
    /// <param name="whole">Length of the bin.</param>
    /// <param name="leastUsed">Fillings that use less are not wanted.</param>
    /// <param name="into">Where they go.</param>
    /// <returns>False when the list was cut off.</returns>
    public bool List(int[] pool, int longest, long whole, long leastUsed, List<BinFill> into)
    {
        int steps = 0, found = 0;
        int shortest = longest;
        for (int t = model.Types.Length - 1; t > longest; t--)
            if (pool[t] > 0)
            {
                shortest = t;
                break;
            }
        _counts[longest] = 1;
        Visit(longest, whole - model.Types[longest].Length, 1);
        _counts[longest] = 0;
        meter.Add(steps + (8 * found) + 1);
        return steps < MostSteps && found < MostFound;

        // Depth first, many copies of long parts first, so the first fillings found are those of first-fit decreasing.
        void Visit(int type, long space, int alreadyTaken)
        {
            if (++steps >= MostSteps || found >= MostFound) return;
            long length = model.Types[type].Length;
            int fit = (int)Math.Min(pool[type] - alreadyTaken, space / length);
            int next = type + 1;
            while (next < model.Types.Length && pool[next] == 0) next++;
            bool last = next >= model.Types.Length || model.Types[shortest].Length > space;
            for (int take = fit; take >= 0; take--)
            {
                long rest = space - (take * length);
                _counts[type] += take;
                if (last || model.Types[shortest].Length > rest)
                {
                    if (take == fit || rest < length) Keep(type, rest);
                }
                else
                {
                    Visit(next, rest, 0);
                }
                _counts[type] -= take;
                if (last || steps >= MostSteps || found >= MostFound) break;
            }
        }

        void Keep(int upTo, long rest)
        {
            if (whole - rest < leastUsed) return;
            var parts = new List<(int, int)>();
            for (int t = longest; t <= upTo; t++)
            {
                if (_counts[t] > 0) parts.Add((t, _counts[t]));
                // A type left waiting that would still fit: the filling is dominated.
                if (pool[t] > _counts[t] && model.Types[t].Length <= rest) return;
            }
            into.Add(new([.. parts], whole - rest));
            found++;
        }
    }
}
