namespace Setout.Cutting.Sheets.Patterns;

/// <summary>
/// The positions along one side of a sheet at which a cut can be needed: sums of part sizes, thinned to those that are a far
/// position seen from the other end. A length in between is as good as the next position below it.
/// Sources (titles from memory): Herz, "Recursive computational procedure for two-dimensional stock cutting", IBM Journal of Research and Development 16, 1972
/// (sums); Terno, Lindemann and Scheithauer, "Zuschnittprobleme und ihre praktische Loesung", 1987 (thinning).
/// </summary>
internal sealed class Raster
{
    private readonly int[] _below; // for each length: index of the last position not beyond it

    /// <summary>The positions of a side.</summary>
    /// <param name="side">Its length, zero or more.</param>
    /// <param name="sizes">Sizes of the parts in this direction, above zero.</param>
    /// <param name="counts">How many of each.</param>
    public Raster(int side, ReadOnlySpan<int> sizes, ReadOnlySpan<int> counts)
    {
        var reached = new bool[side + 1];
        reached[0] = true;
        for (int i = 0; i < sizes.Length; i++)
        {
            int size = sizes[i], most = Math.Min(counts[i], side / size);
            if ((long)most * size > side - size)
            {
                // As many as fit: one pass upward.
                for (int x = size; x <= side; x++) reached[x] |= reached[x - size];
                continue;
            }
            for (int n = 0; n < most; n++)
                for (int x = side; x >= size; x--) reached[x] |= reached[x - size];
        }
        var kept = new bool[side + 1];
        int last = 0;
        var lastReached = new int[side + 1];
        for (int x = 0; x <= side; x++)
        {
            if (reached[x]) last = x;
            lastReached[x] = last;
        }
        for (int x = 0; x <= side; x++)
            if (reached[x]) kept[lastReached[side - x]] = true;
        kept[0] = true;
        At = [.. Enumerable.Range(0, side + 1).Where(x => kept[x])];
        _below = new int[side + 1];
        for (int x = 0, at = 0; x <= side; x++)
        {
            if (at + 1 < At.Length && At[at + 1] <= x) at++;
            _below[x] = at;
        }
    }

    /// <summary>The positions, rising from 0.</summary>
    public int[] At { get; }

    /// <summary>Index of the last position not beyond a length.</summary>
    public int Below(int length) => _below[length];
}
