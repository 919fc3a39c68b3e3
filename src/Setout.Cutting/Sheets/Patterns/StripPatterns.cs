namespace Setout.Cutting.Sheets.Patterns;

/// <summary>
/// Good patterns of strips where the positions of cuts are too many for a table: the sheet is cut into strips, each strip into columns, each column is as many
/// parts of one type as its strip is wide. One knapsack for the columns of each width of strip, one for the strips. After each strip the counts are lowered and the rest
/// is worked out anew, so that no part is taken more often than there is of it.
/// Source (title from memory): Gilmore and Gomory, "Multistage cutting stock problems of two and more dimensions", Operations Research 13, 1965.
/// What it cannot find: columns of different parts, and anything of more stages; so it says nothing about what is the most.
/// </summary>
internal sealed class StripPatterns
{
    private const long MostCells = 1_500_000;

    private readonly int _along, _across;
    private readonly PatternPart[] _parts;
    private readonly int[] _counts;

    /// <summary>Patterns for one size of sheet.</summary>
    public StripPatterns(int along, int across, IEnumerable<PatternPart> parts, int[] counts)
    {
        (_along, _across, _counts) = (along, across, counts);
        _parts = [.. parts.Where(p => p.Along <= along && p.Across <= across)];
    }

    /// <summary>Cells worked through since this was last asked.</summary>
    public long TakeCells()
    {
        long cells = _cells;
        _cells = 0;
        return cells;
    }

    private long _cells;

    /// <summary>
    /// Patterns worth more than a threshold for these prices by type, rips first and crosscuts first. Where there are many widths of strip, a share of them is tried,
    /// then the next share, until something is found. With <paramref name="counts"/> no more of a part is taken than those.
    /// </summary>
    public List<PatternNode> Find(long[] prices, long threshold, Func<bool> stop, int[]? counts = null)
    {
        var found = new List<PatternNode>();
        foreach (bool turned in (bool[])[false, true])
        {
            int[] widths = [.. _parts.Where(p => prices[p.Type] > 0).Select(p => turned ? p.Along : p.Across).Distinct().Order()];
            int shares = (int)Math.Clamp((turned ? _across : _along) * (long)_parts.Length * widths.Length / MostCells, 1, Math.Max(1, widths.Length / 4));
            for (int tried = 0; tried < shares && !stop(); tried++)
            {
                int share = (_next++ & int.MaxValue) % shares;
                PatternNode pattern = Of(prices, [.. widths.Where((_, w) => w % shares == share)], turned, counts ?? _counts);
                if (Worth(pattern, prices) <= threshold) continue;
                found.Add(pattern);
                break;
            }
        }
        return found;
    }

    private int _next;

    private long Worth(PatternNode pattern, long[] prices)
    {
        var counts = new int[_counts.Length];
        pattern.Count(counts);
        long worth = 0;
        for (int t = 0; t < counts.Length; t++) worth += counts[t] * prices[t];
        return worth;
    }

    // Strips lie along the grain and follow each other across, or the other way round.
    private PatternNode Of(long[] prices, int[] widths, bool turned, int[] counts)
    {
        int length = turned ? _across : _along, room = turned ? _along : _across;
        int[] left = [.. counts];
        PatternNode pattern = PatternNode.Nothing;
        while (room > 0)
        {
            // What a strip of each width is worth, then the best strips for the room that is left; the widest of them is taken.
            int[] fitting = [.. widths.Where(w => w <= room)];
            if (fitting.Length == 0) break;
            var strips = new PatternNode[fitting.Length];
            var worths = new long[fitting.Length];
            for (int w = 0; w < fitting.Length; w++)
            {
                strips[w] = Strip(prices, left, length, fitting[w], turned);
                worths[w] = Worth(strips[w], prices);
            }
            (int chosen, int times) = FirstOf(fitting, worths, room);
            if (chosen < 0) break;
            PatternNode strip = strips[chosen];
            for (int n = 0; n < times && strip != PatternNode.Nothing; n++)
            {
                int[] then = [.. left];
                PatternNode next = strip.Within(then);
                if (next != strip && n > 0) break; // no longer as good: worked out anew for what is left
                left = then;
                pattern = PatternNode.Join(turned, pattern, next);
                room -= turned ? next.Along : next.Across;
            }
        }
        return pattern;
    }

    // The widest strip of the best row of strips, any number of each.
    private (int Strip, int Times) FirstOf(int[] widths, long[] worths, int room)
    {
        var best = new long[room + 1];
        var last = new int[room + 1];
        Array.Fill(last, -1);
        for (int x = 1; x <= room; x++)
        {
            best[x] = best[x - 1];
            for (int w = 0; w < widths.Length && widths[w] <= x; w++)
            {
                if (best[x - widths[w]] + worths[w] <= best[x]) continue;
                best[x] = best[x - widths[w]] + worths[w];
                last[x] = w;
            }
        }
        _cells += (long)room * widths.Length;
        int chosen = -1, times = 0;
        for (int x = room; x > 0;)
        {
            if (last[x] < 0)
            {
                x--;
                continue;
            }
            if (last[x] == chosen) times++;
            else if (last[x] > chosen) (chosen, times) = (last[x], 1);
            x -= widths[last[x]];
        }
        return (chosen, times);
    }

    private PatternNode Strip(long[] prices, int[] left, int length, int width, bool turned)
    {
        var best = new long[length + 1];
        var items = new List<(int Part, int Stack, int Times, bool[] Taken)>();
        for (int p = 0; p < _parts.Length; p++)
        {
            int type = _parts[p].Type;
            (int size, int depth) = turned ? (_parts[p].Across, _parts[p].Along) : (_parts[p].Along, _parts[p].Across);
            if (prices[type] <= 0 || depth > width || left[type] <= 0) continue;
            int stack = Math.Min(width / depth, left[type]);
            int columns = Math.Min(left[type] / stack, length / size);
            for (int t = 1; columns > 0; t *= 2)
            {
                int times = Math.Min(t, columns);
                columns -= times;
                long worth = prices[type] * stack * times;
                int along = size * times;
                var taken = new bool[length + 1];
                for (int x = length; x >= along; x--)
                {
                    if (best[x - along] + worth <= best[x]) continue;
                    best[x] = best[x - along] + worth;
                    taken[x] = true;
                }
                _cells += length;
                items.Add((p, stack, times, taken));
            }
        }
        PatternNode strip = PatternNode.Nothing;
        for (int k = items.Count - 1, x = length; k >= 0; k--)
        {
            if (!items[k].Taken[x]) continue;
            PatternNode part = PatternNode.Of(_parts[items[k].Part]);
            PatternNode column = part;
            for (int n = 1; n < items[k].Stack; n++) column = PatternNode.Join(turned, column, part);
            for (int n = 0; n < items[k].Times; n++) strip = PatternNode.Join(!turned, strip, column);
            x -= (turned ? _parts[items[k].Part].Across : _parts[items[k].Part].Along) * items[k].Times;
        }
        // Two ways of lying of one type may together take more than there are.
        return strip.Within([.. left]);
    }
}
