namespace Setout.Drawing.Scenes;

/// <summary>Moves labels along a line as little as can be so that none touches the next, and keeps their order.</summary>
public static class Spread
{
    /// <summary>
    /// The middles nearest (by least squares) to those wanted, such that neighbours keep clear. The method is isotonic regression by
    /// pooling adjacent violators (Ayer and others, 1955; reference from memory) on the middles less the room that the labels before them need.
    /// </summary>
    /// <param name="wanted">The wanted middles, ascending.</param>
    /// <param name="sizes">How long each label is along the line.</param>
    /// <param name="gap">Clear room between two labels.</param>
    /// <param name="low">Where the first label may begin; kept when all fit between the limits.</param>
    /// <param name="high">Where the last label may end; kept when all fit between the limits.</param>
    public static double[] Along(IReadOnlyList<double> wanted, IReadOnlyList<double> sizes, double gap, double low = double.NegativeInfinity, double high = double.PositiveInfinity)
    {
        int n = wanted.Count;
        var room = new double[n];
        for (int i = 1; i < n; i++) room[i] = room[i - 1] + ((sizes[i - 1] + sizes[i]) / 2) + gap;
        var pools = new List<(double Sum, int Count)>();
        for (int i = 0; i < n; i++)
        {
            (double Sum, int Count) pool = (wanted[i] - room[i], 1);
            while (pools.Count > 0 && pools[^1].Sum / pools[^1].Count > pool.Sum / pool.Count)
            {
                pool = (pool.Sum + pools[^1].Sum, pool.Count + pools[^1].Count);
                pools.RemoveAt(pools.Count - 1);
            }
            pools.Add(pool);
        }
        var middles = new double[n];
        int next = 0;
        double least = n == 0 ? 0 : low + (sizes[0] / 2), most = n == 0 ? 0 : high - (sizes[n - 1] / 2) - room[n - 1];
        foreach ((double sum, int count) in pools)
        {
            double at = sum / count;
            if (least <= most) at = Math.Clamp(at, least, most);
            for (int i = 0; i < count; i++, next++) middles[next] = at + room[next];
        }
        return middles;
    }
}
