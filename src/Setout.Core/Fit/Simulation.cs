using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Fit;

/// <summary>A size that must land within limits, limits included.</summary>
/// <param name="Of">The size.</param>
/// <param name="Least">The least that it may be; not above <paramref name="Most"/>.</param>
/// <param name="Most">The most that it may be.</param>
public sealed record Window(SpreadTree Of, ExactLength Least, ExactLength Most);

/// <summary>What is asked of a simulation: the chance of each window, of each group of windows together, and of all together.</summary>
/// <param name="Windows">The windows. A cause of one id must be the same in all of them.</param>
/// <param name="Groups">Subsets of the windows, by index: the gaps of a bank of drawers.</param>
public sealed record JointQuestion(ImmutableArray<Window> Windows, ImmutableArray<ImmutableArray<int>> Groups);

/// <summary>
/// The chance that many windows hold together, where their sizes share causes, and the chance of sizes with minima and maxima in them.
/// <para>Idea: draw every cause once a sample, work out every size from the same draws, and count (Monte Carlo; JCGM 101:2008, GUM Supplement 1). The number drawn for
/// a cause depends on the seed, the sample and the id of the cause alone: not on what else is asked, nor on the limits of the cause. So the same
/// question gives the same answer to the last bit, and two questions that differ in one cause differ by that cause and not by the luck of the draw (common random numbers).</para>
/// <para>Bound: the score interval of Wilson (1927) at three standard deviations, so that none of 16384 is not "surely never". Drawing in mirrored pairs would not
/// pay: a window is met from both sides, and mirrored draws mostly meet it together.</para>
/// <para>It cannot see what is rarer than about one in the number of samples, and its bound, unlike that of <see cref="Convolution"/>, is a likely one and not a proven one.</para>
/// </summary>
public static class Simulation
{
    /// <summary>How many samples are drawn unless said otherwise: a chance of one half is then good to 0.012, one of 0.99 to 0.0026.</summary>
    public const int UsualSamples = 16384;

    /// <summary>Asks a question.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="seed">The same seed gives the same answer on every machine.</param>
    /// <param name="samples">One or more.</param>
    /// <param name="token">Stops the drawing.</param>
    /// <exception cref="ArgumentException">Limits are the wrong way round, a group names a window that is not there, or one cause stands with two different spreads.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="samples"/> is less than one.</exception>
    /// <exception cref="OperationCanceledException">Stopped by the token.</exception>
    public static JointAnswer Ask(JointQuestion question, int seed, int samples = UsualSamples, CancellationToken token = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 1);
        Check(question);
        return JointAnswer.Of(question, seed, samples, Draws.Count(question.Windows, seed, samples, token));
    }

    /// <summary>The chance that one size lands within limits, limits included.</summary>
    /// <exception cref="ArgumentException">The limits are the wrong way round.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="samples"/> is less than one.</exception>
    /// <exception cref="OperationCanceledException">Stopped by the token.</exception>
    public static Chance Within(SpreadTree size, ExactLength least, ExactLength most, int seed, int samples = UsualSamples, CancellationToken token = default) =>
        Ask(new JointQuestion([new Window(size, least, most)], []), seed, samples, token).All;

    /// <summary>The chance behind <paramref name="hits"/> of <paramref name="samples"/>, with a bound of three standard deviations: Wilson, "Probable inference, the law of succession, and statistical inference", 1927.</summary>
    internal static Chance ShareOf(int hits, int samples)
    {
        const double Z = 3;
        double n = samples, share = hits / n;
        double middle = (share + (Z * Z / (2 * n))) / (1 + (Z * Z / n));
        double half = Z / (1 + (Z * Z / n)) * Math.Sqrt((share * (1 - share) / n) + (Z * Z / (4 * n * n)));
        // The interval is not centred on what was counted; the bound reaches its farther end.
        return new(new Estimate(share, Math.Abs(share - middle) + half), ChanceMethod.Simulation);
    }

    internal static void Check(JointQuestion question)
    {
        foreach (Window window in question.Windows)
            if (window.Least > window.Most) throw new ArgumentException($"The limits run from {window.Least} to {window.Most}: give the lower one first.");
        foreach (int index in question.Groups.SelectMany(group => group))
            if (index < 0 || index >= question.Windows.Length) throw new ArgumentException($"A group names window {index}; there are {question.Windows.Length}, counted from 0.");
        var known = new Dictionary<string, Cause>(StringComparer.Ordinal);
        foreach (Cause cause in question.Windows.SelectMany(window => window.Of.Causes()))
            if (!known.TryAdd(cause.Id, cause) && !known[cause.Id].ActsAs(cause))
                throw new ArgumentException($"The error '{cause.Id}' stands with two different spreads. One id is one error: give the other an id of its own, or replace it in all windows.");
    }
}
