using System.Collections.Immutable;
using System.Numerics;

namespace Setout.Core.Fit;

/// <summary>
/// The answer to a <see cref="JointQuestion"/>. It remembers which samples met which window, so that it can be asked again with some windows
/// changed at the cost of those alone. Immutable.
/// </summary>
public sealed class JointAnswer
{
    private readonly ImmutableArray<WindowHits> _hits;

    private JointAnswer(JointQuestion question, int seed, int samples, ImmutableArray<WindowHits> hits)
    {
        (Question, Seed, Samples, _hits) = (question, seed, samples, hits);
        Windows = [.. hits.Select(hit => Together([hit]))];
        Groups = [.. question.Groups.Select(group => Together([.. group.Select(index => hits[index])]))];
        All = Together(hits);
    }

    /// <summary>What was asked.</summary>
    public JointQuestion Question { get; }

    /// <summary>The seed of the draws.</summary>
    public int Seed { get; }

    /// <summary>How many samples were drawn.</summary>
    public int Samples { get; }

    /// <summary>The chance of each window.</summary>
    public ImmutableArray<Chance> Windows { get; }

    /// <summary>The chance of each group: all of its windows met at once. A group of none is sure.</summary>
    public ImmutableArray<Chance> Groups { get; }

    /// <summary>The chance that all windows are met at once.</summary>
    public Chance All { get; }

    /// <summary>The same question with some windows changed, on the same draws: the difference is that of the windows and not of luck.</summary>
    /// <param name="changed">The windows, by index.</param>
    /// <param name="token">Stops the drawing.</param>
    /// <exception cref="ArgumentException">As for <see cref="Simulation.Ask"/>. A cause that gets other limits must be changed in every window that it moves.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no window of such an index.</exception>
    /// <exception cref="OperationCanceledException">Stopped by the token.</exception>
    public JointAnswer With(ImmutableArray<(int Index, Window Window)> changed, CancellationToken token = default)
    {
        ImmutableArray<Window>.Builder windows = Question.Windows.ToBuilder();
        foreach ((int index, Window window) in changed)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(index);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, windows.Count);
            windows[index] = window;
        }
        JointQuestion question = Question with { Windows = windows.ToImmutable() };
        Simulation.Check(question);
        int[] indices = [.. changed.Select(change => change.Index).Distinct()];
        ImmutableArray<WindowHits> again = Draws.Count([.. indices.Select(index => question.Windows[index])], Seed, Samples, token);
        ImmutableArray<WindowHits>.Builder hits = _hits.ToBuilder();
        for (int i = 0; i < indices.Length; i++) hits[indices[i]] = again[i];
        return new(question, Seed, Samples, hits.ToImmutable());
    }

    internal static JointAnswer Of(JointQuestion question, int seed, int samples, ImmutableArray<WindowHits> hits) => new(question, seed, samples, hits);

    private Chance Together(ImmutableArray<WindowHits> hits)
    {
        if (hits.Any(hit => hit.Settled == Chance.Never)) return Chance.Never;
        ulong[][] open = [.. hits.Where(hit => hit.Settled is null).Select(hit => hit.Bits)];
        if (open.Length == 0) return Chance.Sure;
        int count = 0;
        for (int word = 0; word < open[0].Length; word++)
        {
            ulong met = ulong.MaxValue;
            foreach (ulong[] bits in open) met &= bits[word];
            count += BitOperations.PopCount(met);
        }
        return Simulation.ShareOf(count, Samples);
    }
}

/// <summary>Which samples met a window, a bit each; or the answer that its worst case gives without drawing.</summary>
internal readonly record struct WindowHits(Chance? Settled, ulong[] Bits);
