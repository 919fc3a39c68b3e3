using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Diagnostics;
using System.Text;
using Setout.Core.SettingOut;
using Setout.Shop.Documents;
using Setout.Shop.Plans;
using Setout.Store;
using Setout.Workbench;

namespace Setout.Soak;

/// <summary>The two long runs, with their progress.</summary>
internal static class SoakRuns
{
    // Of ten cases so many are texts, the others forms.
    private const int TextsOfTen = 7, Workers = 2;

    /// <summary>Spoilt texts and forms; each case from its own seed, so that one can be run again alone.</summary>
    /// <returns>How many faults.</returns>
    public static async Task<int> FuzzAsync(int cases, int firstSeed, CancellationToken stop)
    {
        ImmutableArray<string> names = [.. SampleNames()];
        string folder = SampleFolder.Find()!, failures = Path.Combine("artifacts", "soak");
        ImmutableArray<string> pieces = [.. names.Select(n => File.ReadAllText(Path.Combine(folder, n + ".yaml")))];
        string shop = File.ReadAllText(Path.Combine(folder, "shop.yaml")), data = Directory.CreateTempSubdirectory("setout-soak-").FullName;
        Fill(data, names);
        var counts = new ConcurrentDictionary<string, int>();
        int done = 0, faults = 0, next = firstSeed - 1;
        var clock = Stopwatch.StartNew();
        using (RealProgram program = await RealProgram.StartAsync(data))
        {
            SetPiece set = PieceSource.Read(pieces[0], null, null).Source!.SetOut();
            var forms = new FormCases(program.Client, names, ["", .. names.Zip(pieces).SelectMany(p => PieceSource.Read(p.Second, null, null).Source!.SetOut().Piece.Keys.Keys).Distinct(), .. set.Worked.Order.Select(k => k.Text)], pieces, shop);
            var slow = new ConcurrentDictionary<int, long>();
            async Task WorkAsync()
            {
                for (int seed = Interlocked.Increment(ref next); seed < firstSeed + cases && !stop.IsCancellationRequested; seed = Interlocked.Increment(ref next))
                {
                    var random = new Random(seed);
                    string input = "";
                    slow[seed] = clock.ElapsedMilliseconds;
                    try
                    {
                        string outcome = random.Next(10) < TextsOfTen ? TextCases.Run(random, pieces, shop, i => input = i) : await forms.RunAsync(random, i => input = i);
                        // Of two that were sent at once either may be the one.
                        if (program.Told() is { Length: > 0 } told) throw new SoakException($"The program told of a fault: {told}");
                        counts.AddOrUpdate(outcome, 1, (_, n) => n + 1);
                    }
#pragma warning disable CA1031 // every exception is what is looked for
                    catch (Exception fault)
#pragma warning restore CA1031
                    {
                        Interlocked.Increment(ref faults);
                        Directory.CreateDirectory(failures);
                        string file = Path.Combine(failures, $"{seed}.txt");
                        // Half of a pair of signs has no bytes of its own.
                        await File.WriteAllBytesAsync(file, Encoding.UTF8.GetBytes($"{input}\n\n{fault}"), CancellationToken.None);
                        Console.WriteLine($"seed {seed}: {fault.GetType().Name}: {fault.Message} ({file})");
                    }
                    slow.TryRemove(seed, out _);
                    if (Interlocked.Increment(ref done) % 2000 == 0) Console.WriteLine($"{done} of {cases} cases, {faults} faults, {clock.Elapsed.TotalSeconds:0} s");
                }
            }
            var all = Task.WhenAll(Enumerable.Range(0, Workers).Select(_ => Task.Run(WorkAsync, CancellationToken.None)));
            while (await Task.WhenAny(all, Task.Delay(TimeSpan.FromSeconds(20), CancellationToken.None)) != all)
                foreach ((int seed, long from) in slow.Where(s => clock.ElapsedMilliseconds - s.Value > 20_000)) Console.WriteLine($"seed {seed} has been running for {(clock.ElapsedMilliseconds - from) / 1000} s");
            await all;
        }
        foreach (string wrong in KeptTexts.Broken(data))
        {
            faults++;
            Console.WriteLine(wrong);
        }
        foreach ((string outcome, int count) in counts.OrderBy(c => c.Key, StringComparer.Ordinal)) Console.WriteLine($"  {count,7} {outcome}");
        Console.WriteLine($"{done} cases from seed {firstSeed}, {faults} faults, {clock.Elapsed.TotalSeconds:0} s");
        if (faults == 0) Directory.Delete(data, recursive: true);
        else Console.WriteLine($"see {data}");
        return faults;
    }

    /// <summary>Four windows for a while.</summary>
    /// <returns>How many things are wrong afterwards.</returns>
    public static async Task<int> WindowsAsync(TimeSpan time, int seed, CancellationToken stop)
    {
        string data = Directory.CreateTempSubdirectory("setout-soak-").FullName;
        Fill(data, ["jar-cabinet", "plan-chest"]);
        var windows = new FourWindows(data, ["jar-cabinet", "plan-chest"]);
        var clock = Stopwatch.StartNew();
        await windows.RunAsync(seed, _ => clock.Elapsed < time && !stop.IsCancellationRequested, isKilled: true);
        ImmutableArray<string> missing = windows.Missing();
        foreach (string wrong in missing) Console.WriteLine(wrong);
        Console.WriteLine($"{FourWindows.Windows} windows, {clock.Elapsed.TotalSeconds:0} s: {windows.Acknowledged} changes and {windows.Facts} facts acknowledged, {windows.Refused} refused; {missing.Length} missing or broken{(missing.IsEmpty ? "" : $", see {data}")}");
        if (missing.IsEmpty) Directory.Delete(data, recursive: true);
        return missing.Length;
    }

    /// <summary>Puts samples and their shop into a data folder.</summary>
    private static void Fill(string data, ImmutableArray<string> names)
    {
        using DataFolder folder = DataFolder.Open(data, TimeProvider.System).Folder!;
        foreach (string name in (string[])[.. names, DocumentName.Shop])
        {
            string text = File.ReadAllText(Path.Combine(SampleFolder.Find()!, name + ".yaml"));
            folder.Database.Make(Change.Of("fill " + name, "2026-05-04T09:40:00Z", new NewDocument(name == DocumentName.Shop ? DocumentKind.Shop : DocumentKind.Piece, name, text, "sample")));
        }
    }

    private static IEnumerable<string> SampleNames() => Directory.EnumerateFiles(SampleFolder.Find()!, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Where(n => n != DocumentName.Shop && !n.EndsWith(".log", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
