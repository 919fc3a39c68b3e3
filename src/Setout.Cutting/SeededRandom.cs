namespace Setout.Cutting;

/// <summary>
/// A small random source of our own, so that a seed gives the same layout on every machine and runtime: SplitMix64
/// (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014).
/// </summary>
internal sealed class SeededRandom(int seed)
{
    private ulong _state = unchecked((ulong)seed * 0x9E3779B97F4A7C15UL);

    /// <summary>A number from 0 to <paramref name="end"/> - 1.</summary>
    public int Below(int end) => (int)(((Next() >> 32) * (ulong)end) >> 32);

    /// <summary>True once in <paramref name="times"/> times on average.</summary>
    public bool OnceIn(int times) => Below(times) == 0;

    /// <summary>64 bits.</summary>
    public ulong Bits() => Next();

    private ulong Next() => unchecked(Mix(_state += 0x9E3779B97F4A7C15UL));

    private static ulong Mix(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
