namespace Setout.Cutting.Sheets.Patterns;

/// <summary>
/// Some of the lengths of rectangles along one side of a sheet: sizes of parts, their multiples, sums of two, and what each of these leaves of the side, until there are as
/// many as wanted. Any choice of lengths gives patterns that can be sawn; a choice that leaves lengths out can miss the best, so nothing may be concluded from what is missed.
/// </summary>
internal sealed class ThinLengths
{
    private readonly int[] _within; // for each length: index of the longest that is no longer

    /// <summary>Lengths of a side.</summary>
    /// <param name="side">Its length, above zero.</param>
    /// <param name="sizes">Sizes of the parts in this direction, above zero, none longer than the side.</param>
    /// <param name="counts">How many of each.</param>
    /// <param name="most">How many lengths are wanted.</param>
    /// <param name="turn">Which of them are taken where there is no room for all: another choice for another number.</param>
    public ThinLengths(int side, int[] sizes, int[] counts, int most, int turn)
    {
        var known = new bool[side + 1];
        known[0] = known[side] = true;
        int left = most - 2;
        void Take(IEnumerable<int> sums)
        {
            int[] fresh = [.. sums.Where(s => s <= side).SelectMany(s => (int[])[s, side - s]).Where(s => !known[s]).Distinct().Order()];
            // More than there is room for: some from everywhere.
            int taken = Math.Min(left, fresh.Length);
            for (int i = 0; i < taken; i++) known[fresh[(int)(((long)i * fresh.Length / taken) + (turn % Math.Max(1, fresh.Length / taken)))]] = true;
            left -= taken;
        }

        Take(sizes);
        Take(sizes.Zip(counts).SelectMany(s => Enumerable.Range(2, Math.Max(0, Math.Min(s.Second, side / s.First) - 1)).Select(n => n * s.First)));
        int[] distinct = [.. sizes.Distinct().OrderDescending()];
        if (left > 0) Take(distinct.SelectMany((a, i) => distinct.Skip(i + 1).Select(b => a + b)));
        At = [.. Enumerable.Range(0, side + 1).Where(x => known[x])];
        _within = new int[side + 1];
        for (int x = 0, at = 0; x <= side; x++)
        {
            if (at + 1 < At.Length && At[at + 1] <= x) at++;
            _within[x] = at;
        }
    }

    /// <summary>The lengths, rising from 0 to the side.</summary>
    public int[] At { get; }

    /// <summary>Index of the longest length that is no longer than the given one.</summary>
    public int Within(int length) => _within[length];

    /// <summary>Index of the shortest length that is no shorter than the given one.</summary>
    public int Holding(int length) => At[_within[length]] == length ? _within[length] : _within[length] + 1;
}
