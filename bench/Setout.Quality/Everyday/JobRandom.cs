namespace Setout.Quality.Everyday;

/// <summary>SplitMix64 (Steele, Lea and Flood 2014): the same jobs for a seed on every machine and runtime.</summary>
internal sealed class JobRandom(int seed)
{
    private ulong _state = unchecked((ulong)seed * 0x9E3779B97F4A7C15UL);

    /// <summary>A whole number from <paramref name="least"/> to <paramref name="most"/>, both included.</summary>
    public int Between(int least, int most) => least + (int)(((Next() >> 32) * (ulong)(most - least + 1)) >> 32);

    public T OneOf<T>(params ReadOnlySpan<T> items) => items[Between(0, items.Length - 1)];

    private ulong Next()
    {
        unchecked
        {
            ulong z = _state += 0x9E3779B97F4A7C15UL;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
