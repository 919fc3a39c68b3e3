using Setout.Core.Measures;

namespace Setout.Core.Fit;

/// <summary>
/// The whole distribution of one spread, worked out once for many questions. Immutable.
/// </summary>
public sealed class Distribution
{
    private readonly SumOfUniforms? _sum;
    private readonly ExactLength _low, _high, _mean;

    private Distribution(ExactLength low, ExactLength high, ExactLength mean, SumOfUniforms? sum) => (_low, _high, _mean, _sum) = (low, high, mean, sum);

    /// <summary>The distribution of a spread.</summary>
    public static Distribution Of(Spread spread) => Of(spread, spread.WorstLow, spread.WorstHigh);

    internal static Distribution Of(Spread spread, ExactLength low, ExactLength high) =>
        new(low, high, (low + high) / 2, low == high ? null : SumOfUniforms.Of(spread.Effects, high - low));

    /// <summary>The least that can come.</summary>
    public ExactLength WorstLow => _low;

    /// <summary>The most that can come.</summary>
    public ExactLength WorstHigh => _high;

    /// <summary>The chance of landing from <paramref name="least"/> to <paramref name="most"/>, limits included.</summary>
    /// <exception cref="ArgumentException">The limits are the wrong way round.</exception>
    public Chance Within(ExactLength least, ExactLength most)
    {
        if (Settled(_low, _high, least, most) is { } settled) return settled;
        double below = least <= _low ? 0 : _sum!.Below(least - _low), above = most >= _high ? 1 : _sum!.Below(most - _low);
        // An end that lies beyond the worst case is known exactly and brings no error.
        int unsure = (least <= _low ? 0 : 1) + (most >= _high ? 0 : 1);
        return new(new Estimate(Math.Clamp(above - below, 0, 1), unsure * _sum!.Error), ChanceMethod.Convolution);
    }

    /// <summary>
    /// The shift that gives the best chance of landing in a window from zero to <paramref name="width"/>: what to add by shimming or trimming.
    /// It is exact, and always puts the middle of the window on the mean: every cause is symmetric and single-peaked (or level) about its middle,
    /// sums of such causes are so too (Wintner, 1938), and of all windows of one width the middle one then holds most. Where others hold as much, the middle one
    /// is given. It cannot be used for a lopsided shape, if one is ever added.
    /// </summary>
    /// <exception cref="ArgumentException">The width is less than zero.</exception>
    public ExactLength BestShift(ExactLength width) => width.Sign >= 0
        ? (width / 2) - _mean
        : throw new ArgumentException($"A window of {width} has its limits the wrong way round. Give a width of zero or more.");

    /// <summary>The answer where the worst case alone gives it; null where it does not.</summary>
    /// <param name="low">The least that can come.</param>
    /// <param name="high">The most that can come.</param>
    /// <param name="least">The lower limit.</param>
    /// <param name="most">The upper limit.</param>
    /// <param name="mayStand">True where a single value may have a chance of its own, as the top of a minimum that a fixed size closes.</param>
    internal static Chance? Settled(ExactLength low, ExactLength high, ExactLength least, ExactLength most, bool mayStand = false)
    {
        if (least > most) throw new ArgumentException($"The limits run from {least} to {most}: give the lower one first.");
        if (least <= low && high <= most) return Chance.Sure;
        // A sum that can move meets a single value with no chance at all, so touching from outside is outside.
        bool outside = most < low || high < least || (!mayStand && (most == low || high == least));
        return outside ? Chance.Never : null;
    }
}

/// <summary>The chance that a sum of causes lands within limits, by adding up distributions (convolution). The method and its bound: see SumOfUniforms, its inner part.</summary>
public static class Convolution
{
    /// <summary>
    /// The chance that <paramref name="spread"/> lies from <paramref name="least"/> to <paramref name="most"/>, limits included. Exactly 0 or 1
    /// where the worst case says so; else with a proven bound of 0.0005 or less (for up to 120 even or 60 peaked causes of one width; beyond that it grows, and is always told).
    /// </summary>
    /// <exception cref="ArgumentException">The limits are the wrong way round.</exception>
    public static Chance Within(Spread spread, ExactLength least, ExactLength most)
    {
        ExactLength low = spread.WorstLow, high = spread.WorstHigh;
        return Distribution.Settled(low, high, least, most) ?? Distribution.Of(spread, low, high).Within(least, most);
    }
}
