using System.Collections.Immutable;

namespace Setout.Drawing.Elevations;

/// <summary>The round scales of both trades: metric and inch rules alike find their own among them.</summary>
public static class Scales
{
    /// <summary>Denominators, largest drawing first.</summary>
    public static ImmutableArray<int> Denominators { get; } = [1, 2, 4, 5, 8, 10, 12, 15, 16, 20, 24, 25, 32, 40, 48, 50, 64, 75, 96, 100, 128, 150, 200, 500, 1000];

    /// <summary>The first scale that fits; the smallest one where none does.</summary>
    public static int Largest(Func<int, bool> fits)
    {
        foreach (int denominator in Denominators)
            if (fits(denominator)) return denominator;
        return Denominators[^1];
    }
}
