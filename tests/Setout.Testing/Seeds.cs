using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using CsCheck;

namespace Setout.Testing;

/// <summary>
/// Checks what must hold of anything a generator gives. The seeds are those of the test's name, so that one commit answers alike everywhere; what fails is
/// made smaller and told with its seed. With <c>SETOUT_SEEDS=new</c> in the environment the seeds are new each time, to look for what the usual ones do not
/// find; with <c>SETOUT_SEEDS=</c> and a number, those of that number.
/// </summary>
public static class Seeds
{
    private const int SmallerTries = 20;

    /// <summary>Runs a check over what a generator gives; it throws where it does not hold.</summary>
    /// <typeparam name="T">What is generated.</typeparam>
    /// <param name="gen">The generator.</param>
    /// <param name="check">Throws where what must hold does not.</param>
    /// <param name="iter">How many are tried.</param>
    /// <param name="threads">How many run at once; none given: as many as there are processors.</param>
    /// <param name="print">How one is shown when it fails.</param>
    /// <param name="test">The test's name, from which the seeds come.</param>
    /// <param name="file">The test's file.</param>
    /// <exception cref="CsCheckException">One failed; the message has its seed.</exception>
    public static void Holds<T>(this Gen<T> gen, Action<T> check, int iter = 100, int threads = -1, Func<T, string>? print = null, [CallerMemberName] string test = "", [CallerFilePath] string file = "")
    {
        ulong start = Start(Path.GetFileNameWithoutExtension(file) + '.' + test);
        var gate = new Lock();
        (int At, string Seed)? first = null;
        Parallel.For(0, iter, new ParallelOptions { MaxDegreeOfParallelism = threads }, (i, loop) =>
        {
            if (loop.ShouldExitCurrentIteration && loop.LowestBreakIteration < i) return;
            var random = new PCG((uint)i, start);
            string seed = random.ToString();
            try
            {
                check(gen.Generate(random, null, out _));
            }
            catch (Exception)
            {
                // What it was is told by the run below, of the same seed.
                lock (gate)
                    if (first is null || i < first.Value.At) first = (i, seed);
                loop.Break();
            }
        });
        if (first is not { } failed) return;
        gen.Sample(check, seed: failed.Seed, iter: SmallerTries * (long)iter, threads: threads, print: print);
        throw new CsCheckException($"Seed {failed.Seed} failed once and held when it was tried again.");
    }

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, int, Func{T, string}?, string, string)"/>
    public static void Holds<T>(this Gen<T> gen, Func<T, bool> check, int iter = 100, int threads = -1, Func<T, string>? print = null, [CallerMemberName] string test = "", [CallerFilePath] string file = "") =>
        gen.Holds(value => True(check(value)), iter, threads, print, test, file);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, int, Func{T, string}?, string, string)"/>
    public static void Holds<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> check, int iter = 100, int threads = -1, [CallerMemberName] string test = "", [CallerFilePath] string file = "") =>
        gen.Holds(v => check(v.Item1, v.Item2), iter, threads, null, test, file);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, int, Func{T, string}?, string, string)"/>
    public static void Holds<T1, T2>(this Gen<(T1, T2)> gen, Func<T1, T2, bool> check, int iter = 100, int threads = -1, [CallerMemberName] string test = "", [CallerFilePath] string file = "") =>
        gen.Holds(v => True(check(v.Item1, v.Item2)), iter, threads, null, test, file);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, int, Func{T, string}?, string, string)"/>
    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> check, int iter = 100, int threads = -1, [CallerMemberName] string test = "", [CallerFilePath] string file = "") =>
        gen.Holds(v => check(v.Item1, v.Item2, v.Item3), iter, threads, null, test, file);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, int, Func{T, string}?, string, string)"/>
    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Func<T1, T2, T3, bool> check, int iter = 100, int threads = -1, [CallerMemberName] string test = "", [CallerFilePath] string file = "") =>
        gen.Holds(v => True(check(v.Item1, v.Item2, v.Item3)), iter, threads, null, test, file);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, int, Func{T, string}?, string, string)"/>
    public static void Holds<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Action<T1, T2, T3, T4> check, int iter = 100, int threads = -1, [CallerMemberName] string test = "", [CallerFilePath] string file = "") =>
        gen.Holds(v => check(v.Item1, v.Item2, v.Item3, v.Item4), iter, threads, null, test, file);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, int, Func{T, string}?, string, string)"/>
    public static void Holds<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Func<T1, T2, T3, T4, bool> check, int iter = 100, int threads = -1, [CallerMemberName] string test = "", [CallerFilePath] string file = "") =>
        gen.Holds(v => True(check(v.Item1, v.Item2, v.Item3, v.Item4)), iter, threads, null, test, file);

    private static void True(bool holds)
    {
        if (!holds) throw new CsCheckException("It does not hold.");
    }

    private static ulong Start(string name)
    {
        string? asked = Environment.GetEnvironmentVariable("SETOUT_SEEDS");
        ulong of = asked switch
        {
            null or "" => 0,
            "new" => (ulong)DateTime.UtcNow.Ticks,
            _ => ulong.Parse(asked, NumberStyles.None, CultureInfo.InvariantCulture),
        };
        // FNV-1a, 64 bits: the same on every machine, which a string's own hash is not.
        return Encoding.UTF8.GetBytes(name).Aggregate(14695981039346656037UL ^ of, (hash, b) => unchecked((hash ^ b) * 1099511628211UL));
    }
}
