namespace Setout.Cutting.Sheets.Patterns;

/// <summary>How many of which types are cut from a rectangle: pairs of type and count in one number each, sorted by type, the low twenty bits the count.</summary>
internal static class PartCounts
{
    private const int CountBits = 20;
    private const int CountMask = (1 << CountBits) - 1;

    /// <summary>A pair as one number.</summary>
    public static int Pair(int type, int count) => (type << CountBits) | count;

    /// <summary>Parts of both, or null when that is more than there are.</summary>
    /// <param name="a">Pairs of one rectangle.</param>
    /// <param name="b">Pairs of the other.</param>
    /// <param name="most">How many there are, by type.</param>
    public static int[]? Union(int[] a, int[] b, int[] most)
    {
        Span<int> both = stackalloc int[a.Length + b.Length];
        int n = 0, i = 0, j = 0;
        while (i < a.Length || j < b.Length)
        {
            int ta = i < a.Length ? a[i] >> CountBits : int.MaxValue, tb = j < b.Length ? b[j] >> CountBits : int.MaxValue;
            int type = Math.Min(ta, tb), count = 0;
            if (ta == type) count += a[i++] & CountMask;
            if (tb == type) count += b[j++] & CountMask;
            if (count > most[type]) return null;
            both[n++] = Pair(type, count);
        }
        return both[..n].ToArray();
    }
}
