// Times what a person waits for while typing: a full recompute of a large piece from its read text, collections included.
// Usage: dotnet run -c Release --project bench/Setout.Speed -- [runs]
//        dotnet run -c Release --project bench/Setout.Speed -- store FOLDER    times the store instead, on the disk of that folder (new or empty)
//        dotnet run -c Release --project bench/Setout.Speed -- browser PROGRAM [keys]    times keys in a real Chromium, against the built program (artifacts/bin/Setout/release/setout)
using System.Diagnostics;
using System.Globalization;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Shop.Plans;
using Setout.Speed;

if (args is ["store", var folder])
{
    StoreSpeed.Run(folder);
    return;
}
if (args is ["browser", var program, ..])
{
    await BrowserSpeed.RunAsync(program, args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 200);
    return;
}
int runs = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 2000;
string text = LargePiece.Text();
PieceSource source = PieceSource.Read(text, null, null).Source ?? throw new InvalidOperationException("The large piece cannot be read.");
SetPiece set = source.SetOut();
Console.WriteLine($"{set.Parts.Sum(p => p.Count)} parts, {set.Worked.Order.Length} quantities, {set.Findings.Length} findings, {Environment.ProcessorCount} cores, {runs} runs after 300 to warm up");
Measure("set out from the read text", () => source.SetOut());
Measure("read the text and set out", () => (PieceSource.Read(text, null, null).Source ?? throw new InvalidOperationException()).SetOut());

// A piece half built: every opening and thirty boxes read, some of them off, two of the sheets too.
PieceSource read = source with { Log = LargePiece.Readings(set) };
SetPiece told = read.SetOut();
Console.WriteLine($"{told.Facts.Pins.Count} quantities read, {told.Findings.Length - set.Findings.Length} findings more");
Measure("set out with readings, without what they tell", () => PieceSetOut.Of(read.Piece, read.Grid, read.Log.Facts()));
Measure("set out with readings", () => read.SetOut());

void Measure(string name, Func<SetPiece> work)
{
    for (int i = 0; i < 300; i++) work();
    var times = new double[runs];
    long before = GC.GetTotalAllocatedBytes();
    int[] collections = [GC.CollectionCount(0), GC.CollectionCount(1), GC.CollectionCount(2)];
    for (int i = 0; i < runs; i++)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }
    long bytes = (GC.GetTotalAllocatedBytes() - before) / runs;
    Array.Sort(times);
    double At(double share) => times[Math.Min(runs - 1, (int)(share * runs))];
    Console.WriteLine($"{name}: p50 {At(0.5):0.0} ms, p95 {At(0.95):0.0} ms, p99 {At(0.99):0.0} ms, max {times[^1]:0.0} ms; {bytes / 1024} KB a run; collections {GC.CollectionCount(0) - collections[0]}/{GC.CollectionCount(1) - collections[1]}/{GC.CollectionCount(2) - collections[2]}");
}
