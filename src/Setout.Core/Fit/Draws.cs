using System.Collections.Immutable;
using System.Numerics;
using Setout.Core.Measures;

namespace Setout.Core.Fit;

/// <summary>
/// The drawing and counting of <see cref="Simulation"/>: blocks of samples, one flat row of doubles for each cause and for each part of a size. All in millimetres,
/// counted from the lower limit of each window, which is taken off exactly before anything becomes a double.
/// </summary>
internal sealed class Draws
{
    // Rows of a few hundred causes stay in the inner caches; a whole number of words of 64 hits.
    private const int Block = 256;

    private readonly double[] _numbers;
    private readonly ulong[] _streams;
    private readonly bool[] _peaked;

    private Draws(IReadOnlyList<Cause> causes, int seed)
    {
        _numbers = new double[causes.Count * Block];
        _streams = [.. causes.Select(cause => SeededNumbers.Stream(seed, cause.Id))];
        _peaked = [.. causes.Select(cause => cause.Shape == Shape.Peaked)];
    }

    /// <summary>Which of the samples meet each of the windows.</summary>
    public static ImmutableArray<WindowHits> Count(ImmutableArray<Window> windows, int seed, int samples, CancellationToken token)
    {
        int words = (samples + 63) / 64;
        ImmutableArray<WindowHits> hits = [.. windows.Select(window =>
            Distribution.Settled(window.Of.WorstLow, window.Of.WorstHigh, window.Least, window.Most, mayStand: window.Of.AsSpread is null) is { } settled
                ? new WindowHits(settled, []) : new WindowHits(null, new ulong[words]))];
        int[] open = [.. Enumerable.Range(0, windows.Length).Where(i => hits[i].Settled is null)];
        if (open.Length == 0) return hits;

        var rows = new Dictionary<string, int>(StringComparer.Ordinal);
        var causes = new List<Cause>();
        foreach (Cause cause in open.SelectMany(i => windows[i].Of.Causes()))
            if (rows.TryAdd(cause.Id, causes.Count)) causes.Add(cause);
        var draws = new Draws(causes, seed);
        Sized[] sized = [.. open.Select(i => Sized.Of(windows[i], rows))];
        double[] scratch = new double[Block * sized.Max(size => size.Root.Depth)];
        for (int start = 0; start < samples; start += Block)
        {
            token.ThrowIfCancellationRequested();
            int count = Math.Min(Block, samples - start);
            draws.Draw(start);
            for (int i = 0; i < open.Length; i++)
            {
                sized[i].Root.Fill(draws._numbers, scratch);
                Mark(scratch.AsSpan(0, count), sized[i], hits[open[i]].Bits.AsSpan(start / 64));
            }
        }
        return hits;
    }

    private void Draw(int start)
    {
        for (int c = 0; c < _streams.Length; c++)
        {
            Span<double> row = _numbers.AsSpan(c * Block, Block);
            if (_peaked[c]) SeededNumbers.Peaked(_streams[c], start, row);
            else SeededNumbers.Even(_streams[c], start, row);
        }
    }

    private static void Mark(ReadOnlySpan<double> sizes, Sized window, Span<ulong> bits)
    {
        for (int i = 0; i < sizes.Length; i++)
            if (sizes[i] >= window.Least && sizes[i] <= window.Most) bits[i / 64] |= 1UL << (i % 64);
    }

    /// <summary>A window made ready: its size less its lower limit, and the two limits, let out by the rounding of doubles since they are included.</summary>
    private sealed record Sized(Node Root, double Least, double Most)
    {
        public static Sized Of(Window window, Dictionary<string, int> rows)
        {
            SpreadTree fromLeast = window.Of + Spread.Of(-window.Least);
            double width = (window.Most - window.Least).ApproximateMillimetres;
            double slack = 1e-13 * Math.Max(width, Math.Max(Math.Abs(fromLeast.WorstLow.ApproximateMillimetres), Math.Abs(fromLeast.WorstHigh.ApproximateMillimetres)));
            return new(Node.Of(fromLeast, rows), -slack, width + slack);
        }
    }

    /// <summary>A part of a size made ready. It fills the first row of the scratch it is given, and may use <see cref="Depth"/> rows.</summary>
    private abstract record Node(int Depth)
    {
        public static Node Of(SpreadTree tree, Dictionary<string, int> rows) => tree switch
        {
            PlainSpread plain => Plain.Of(plain.Spread, rows),
            ExtremeOf extreme => Join.Of(extreme.IsLeast ? Joint.Least : Joint.Greatest, extreme.Parts, rows),
            SumOf sum => Join.Of(Joint.Sum, sum.Parts, rows),
            _ => throw new ArgumentException($"A size of kind {tree.GetType().Name} is not known here."),
        };

        public abstract void Fill(double[] numbers, Span<double> scratch);
    }

    private sealed record Plain(double Base, int[] Rows, double[] Ranges) : Node(1)
    {
        public static Plain Of(Spread spread, Dictionary<string, int> rows) => new(
            // A drawn number runs from 0 at the lower limit of a cause to 1 at the upper one.
            spread.Effects.Aggregate(spread.Value, (sum, effect) => sum + (effect.Cause.Low * effect.Times)).ApproximateMillimetres,
            [.. spread.Effects.Select(effect => rows[effect.Cause.Id] * Block)],
            [.. spread.Effects.Select(effect => (effect.Cause.Range * effect.Times).ApproximateMillimetres)]);

        public override void Fill(double[] numbers, Span<double> scratch)
        {
            Span<double> row = scratch[..Block];
            row.Fill(Base);
            for (int e = 0; e < Rows.Length; e++)
            {
                var range = new Vector<double>(Ranges[e]);
                ReadOnlySpan<double> drawn = numbers.AsSpan(Rows[e], Block);
                for (int i = 0; i < Block; i += Vector<double>.Count)
                    (new Vector<double>(row[i..]) + (range * new Vector<double>(drawn[i..]))).CopyTo(row[i..]);
            }
        }
    }

    private enum Joint { Least, Greatest, Sum }

    private sealed record Join(Joint How, Node[] Parts) : Node(1 + Parts.Max(part => part.Depth))
    {
        public static Join Of(Joint how, ImmutableArray<SpreadTree> parts, Dictionary<string, int> rows) => new(how, [.. parts.Select(part => Node.Of(part, rows))]);

        public override void Fill(double[] numbers, Span<double> scratch)
        {
            Parts[0].Fill(numbers, scratch);
            Span<double> row = scratch[..Block], next = scratch[Block..];
            foreach (Node part in Parts.AsSpan(1))
            {
                part.Fill(numbers, next);
                for (int i = 0; i < Block; i++)
                    row[i] = How switch
                    {
                        Joint.Least => Math.Min(row[i], next[i]),
                        Joint.Greatest => Math.Max(row[i], next[i]),
                        _ => row[i] + next[i],
                    };
            }
        }
    }
}
