namespace Setout.Cutting.Bounds;

/// <summary>
/// A non-decreasing, superadditive function of sizes 0..Whole with whole values: sizes that fit into a length also fit,
/// once each is replaced by its value, into the value of that length. So the values give a valid bound wherever the sizes do
/// (dual feasible functions). Sources: the threshold functions are those behind bound L2 of Martello and Toth, "Lower
/// bounds and reduction procedures for the bin packing problem", Discrete Applied Mathematics 28, 1990; the rounding functions
/// are of Fekete and Schepers, "New classes of fast lower bounds for bin packing problems", Mathematical Programming 91, 2001;
/// the third family is of Carlier, Clautiaux and Moukrim, "New reduction procedures and lower bounds for the
/// two-dimensional bin packing problem with fixed orientation", Computers and Operations Research 34, 2007. That all are superadditive: Clautiaux, Alves and
/// Valerio de Carvalho, "A survey of dual-feasible and superadditive functions", Annals of Operations Research 179, 2010. (Titles from memory.)
/// </summary>
/// <param name="Name">For reports.</param>
/// <param name="Of">The value of a size.</param>
internal sealed record SizeFunction(string Name, Func<long, long> Of)
{
    /// <summary>The functions worth trying for these sizes, the identity first.</summary>
    /// <param name="whole">The largest stock size.</param>
    /// <param name="sizes">Sizes of the parts, in any order.</param>
    /// <param name="most">At most so many thresholds in each family, spread evenly over the sizes.</param>
    public static IReadOnlyList<SizeFunction> Family(long whole, IEnumerable<long> sizes, int most)
    {
        var found = new List<SizeFunction> { new("area", x => x) };
        // A threshold changes the answer only where a part, or what a part leaves, crosses it.
        long[] all = [.. sizes.SelectMany(s => new[] { s, whole - s + 1 }).Where(s => s > 0 && 2 * s <= whole).Distinct().Order()];
        for (int i = 0; i < Math.Min(most, all.Length); i++)
        {
            long at = all[(int)((long)i * all.Length / Math.Min(most, all.Length))];
            found.Add(new("threshold", x => Threshold(x, at, whole)));
            found.Add(new("steps", x => Steps(x, at, whole)));
        }
        for (int k = 1; k <= 8; k++)
        {
            int parts = k;
            found.Add(new("rounding", x => Round(x, parts, whole)));
        }
        return found;
    }

    private static long Threshold(long x, long at, long whole) => x > whole - at ? whole : x < at ? 0 : x;

    private static long Round(long x, int k, long whole) =>
        (k + 1) * x % whole == 0 ? k * x : (k + 1) * x / whole * whole;

    private static long Steps(long x, long step, long whole) => (2 * x).CompareTo(whole) switch
    {
        > 0 => 2 * ((whole / step) - ((whole - x) / step)),
        0 => whole / step,
        _ => 2 * (x / step),
    };
}
