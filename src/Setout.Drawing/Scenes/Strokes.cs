using System.Collections.Immutable;

namespace Setout.Drawing.Scenes;

/// <summary>The strokes that stand for wood and waste. The same input gives the same strokes, on every machine.</summary>
public static class Strokes
{
    /// <summary>Distance between two lines of a hatch, measured square to them, in millimetres.</summary>
    public const double HatchSpacing = 1.9;

    /// <summary>The lines of a hatch, rising to the right, cut off at the rectangle. Neighbouring hatches meet.</summary>
    public static ImmutableArray<(Point From, Point To)> Hatch(HatchItem hatch)
    {
        double step = HatchSpacing * Math.Sqrt(2);
        double left = hatch.Corner.X, top = hatch.Corner.Y, right = left + hatch.Width, bottom = top + hatch.Height;
        ImmutableArray<(Point, Point)>.Builder lines = ImmutableArray.CreateBuilder<(Point, Point)>();
        // A line is x + y = sum, or y - x = sum where it falls; counting from the paper's corner makes neighbours meet.
        double way = hatch.IsFalling ? -1 : 1, low = hatch.IsFalling ? top - right : left + top, high = hatch.IsFalling ? bottom - left : right + bottom;
        for (double sum = (Math.Floor(low / step) + 1) * step; sum < high; sum += step)
        {
            (double a, double b) = ((sum - bottom) * way, (sum - top) * way);
            double x1 = Math.Max(left, Math.Min(a, b)), x2 = Math.Min(right, Math.Max(a, b));
            if (x2 - x1 > 0.05) lines.Add((new(x1, sum - (x1 * way)), new(x2, sum - (x2 * way))));
        }
        return lines.ToImmutable();
    }

    /// <summary>A ring, as a shape of so many corners, the first to the right of its middle.</summary>
    public static ShapeItem Ring(Point middle, double radius, int corners, Ink? edge, Wash wash) =>
        new([.. Enumerable.Range(0, corners).Select(i => Math.SinCos(i * Math.Tau / corners)).Select(a => new Point(middle.X + (radius * a.Cos), middle.Y + (radius * a.Sin)))], edge, wash);

    /// <summary>Fine waving lines along the grain, kept off the texts.</summary>
    /// <param name="area">The face of the wood.</param>
    /// <param name="isUpright">Whether the grain runs up and down.</param>
    /// <param name="seed">What gives this face its own figure: its key.</param>
    /// <param name="spacing">About how far the lines are apart.</param>
    /// <param name="clear">What the lines break off at.</param>
    public static ImmutableArray<SceneItem> Grain(Box area, bool isUpright, string seed, double spacing, IReadOnlyList<Box> clear)
    {
        double along = isUpright ? area.Height : area.Width, across = isUpright ? area.Width : area.Height;
        int count = Math.Min(12, (int)(across / spacing));
        double inset = Math.Min(1.8, along * 0.08);
        if (count == 0 || along - (2 * inset) < 3) return [];
        ulong state = Seed(seed);
        ImmutableArray<SceneItem>.Builder lines = ImmutableArray.CreateBuilder<SceneItem>();
        double pitch = across / (count + 0.5);
        double wave = Math.Min(0.32, pitch * 0.12);
        for (int i = 0; i < count; i++)
        {
            double at = (pitch * (i + 0.75)) + ((Next(ref state) - 0.5) * pitch * 0.35);
            double begin = inset + (Next(ref state) * inset), end = along - inset - (Next(ref state) * inset);
            double phase = Next(ref state) * Math.Tau, longWave = 38 + (Next(ref state) * 30), shortWave = longWave * 0.41;
            int steps = Math.Clamp((int)((end - begin) / 3.2), 2, 80);
            Point? last = null;
            for (int s = 0; s <= steps; s++)
            {
                double t = begin + ((end - begin) * s / steps);
                double bend = (wave * Math.Sin((t / longWave * Math.Tau) + phase)) + (wave * 0.4 * Math.Sin((t / shortWave * Math.Tau) + (2 * phase)));
                Point point = isUpright ? new(area.Left + at + bend, area.Top + t) : new(area.Left + t, area.Top + at + bend);
                if (last is { } from && !clear.Any(box => Crosses(box, from, point))) lines.Add(new LineItem(from, point, Ink.Grain));
                last = point;
            }
        }
        return lines.ToImmutable();
    }

    private static bool Crosses(Box box, Point a, Point b) =>
        box.Overlaps(new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X) + 1e-9, Math.Max(a.Y, b.Y) + 1e-9));

    /// <summary>FNV-1a: small, fixed and the same everywhere, which the runtime's own hash of a string is not.</summary>
    private static ulong Seed(string text)
    {
        ulong hash = 14695981039346656037;
        foreach (char c in text) hash = unchecked((hash ^ c) * 1099511628211);
        return hash;
    }

    /// <summary>The next number from 0 to 1 (SplitMix64).</summary>
    private static double Next(ref ulong state)
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15;
            ulong z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return ((z ^ (z >> 31)) >> 11) / (double)(1UL << 53);
        }
    }
}
