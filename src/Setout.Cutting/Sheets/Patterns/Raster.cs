namespace Setout.Cutting.Sheets.Patterns;

/// <summary>
/// The lengths of rectangles along one side of a sheet that need to be looked at. What lies in a rectangle is as long as a sum of part sizes, so a length is as
/// good as the longest sum within it. And of all cuts in two only those count that leave the one side as long as it can be beside some sum on the other: from the
/// whole side these lead to few lengths, from each of those to few more, and so on until none is new.
/// Sources (titles from memory): Herz, "Recursive computational procedure for two-dimensional stock cutting", IBM Journal of Research and Development 16, 1972
/// (sums); Scheithauer and Terno, "The G4-heuristic for the pallet loading problem", Journal of the Operational Research Society 47, 1996 (thinning for a whole side). A
/// set that is thinned for the whole side only would lose layouts of the rectangles within it.
/// </summary>
internal sealed class Raster
{
    private readonly int[] _index; // for each length: where to find what is at least as good

    /// <summary>The lengths of a side.</summary>
    /// <param name="side">Its length, zero or more.</param>
    /// <param name="sizes">Sizes of the parts in this direction, above zero.</param>
    /// <param name="counts">How many of each.</param>
    /// <param name="most">Gives up beyond so many lengths.</param>
    public Raster(int side, ReadOnlySpan<int> sizes, ReadOnlySpan<int> counts, int most)
    {
        int[] sums = Sums(side, sizes, counts);
        var longest = new int[side + 1]; // the longest sum within each length
        for (int x = 0, s = 0; x <= side; x++)
        {
            if (s + 1 < sums.Length && sums[s + 1] <= x) s++;
            longest[x] = sums[s];
        }
        var known = new bool[side + 1];
        var open = new Stack<int>([side]);
        known[side] = known[0] = true;
        int count = 2;
        while (open.TryPop(out int length) && count <= most)
            foreach (int sum in sums)
            {
                if (sum == 0) continue;
                if (sum > length) break;
                int beside = longest[length - sum];
                if (known[beside]) continue;
                known[beside] = true;
                open.Push(beside);
                count++;
            }
        IsComplete = count <= most;
        At = [.. Enumerable.Range(0, side + 1).Where(x => known[x])];
        _index = new int[side + 1];
        for (int x = 0; x <= side; x++)
        {
            int at = Array.BinarySearch(At, longest[x]);
            _index[x] = at >= 0 ? at : ~at;
        }
        Cuts = IsComplete ? [.. At.Select(length => CutsOf(length, sums, longest))] : [];
    }

    /// <summary>False when there are more lengths than wanted; then there are no cuts.</summary>
    public bool IsComplete { get; }

    /// <summary>The lengths, rising from 0 to the side.</summary>
    public int[] At { get; }

    /// <summary>For each length the ways to cut it in two, as indexes of the two lengths; each pair once.</summary>
    public (int A, int B)[][] Cuts { get; }

    /// <summary>Index of the shortest length that holds all that a given length can.</summary>
    public int Holding(int length) => _index[length];

    private static int[] Sums(int side, ReadOnlySpan<int> sizes, ReadOnlySpan<int> counts)
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
        return [.. Enumerable.Range(0, side + 1).Where(x => reached[x])];
    }

    private (int A, int B)[] CutsOf(int length, int[] sums, int[] longest)
    {
        var cuts = new HashSet<(int A, int B)>();
        foreach (int sum in sums)
        {
            if (sum == 0) continue;
            if (sum > length) break;
            int a = longest[length - sum], b = longest[length - a];
            if (a > 0 && b > 0 && b < length) cuts.Add((_index[Math.Min(a, b)], _index[Math.Max(a, b)]));
        }
        return [.. cuts.Order()];
    }
}
