namespace Setout.Core.Fit;

/// <summary>
/// Random numbers that can be asked for in any order: the number of a sample is a hash of where it stands, so that a cause keeps its numbers whatever
/// else is drawn. The hash is the output step of SplitMix64 on a counter, as in its own definition (Steele, Lea and Flood, "Fast splittable
/// pseudorandom number generators", OOPSLA 2014); names are hashed by FNV-1a (Fowler, Noll and Vo), 64 bits. Equal on every machine and runtime.
/// </summary>
internal static class SeededNumbers
{
    private const ulong Golden = 0x9E3779B97F4A7C15UL;
    private const double Unit = 1.0 / (1UL << 53);

    /// <summary>Where the numbers of a name begin.</summary>
    public static ulong Stream(int seed, string id)
    {
        unchecked
        {
            ulong hash = 0xCBF29CE484222325UL;
            foreach (char letter in id)
            {
                hash = (hash ^ (byte)letter) * 0x100000001B3UL;
                hash = (hash ^ (byte)(letter >> 8)) * 0x100000001B3UL;
            }
            return Mix(hash + Mix((ulong)seed + Golden));
        }
    }

    /// <summary>Fills a row with numbers from 0 to 1, all equally likely: those of the samples from <paramref name="start"/> on.</summary>
    public static void Even(ulong stream, int start, Span<double> row)
    {
        unchecked
        {
            ulong at = stream + ((ulong)start * Golden);
            for (int i = 0; i < row.Length; i++) row[i] = (Mix(at += Golden) >> 11) * Unit;
        }
    }

    /// <summary>Fills a row with numbers from 0 to 1, likeliest in the middle: means of two even ones.</summary>
    public static void Peaked(ulong stream, int start, Span<double> row)
    {
        unchecked
        {
            // The second of each pair comes from a stream of its own.
            ulong at = stream + ((ulong)start * Golden), other = Mix(stream) + ((ulong)start * Golden);
            for (int i = 0; i < row.Length; i++)
                row[i] = ((Mix(at += Golden) >> 11) + (Mix(other += Golden) >> 11)) * (Unit / 2);
        }
    }

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
