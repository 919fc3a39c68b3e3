// Soaks the program: spoilt texts and forms, then four windows at once against a program that is killed on the way. Stops at Ctrl-C and says what it has done.
// Usage: ./soak [fuzz [CASES [SEED]]] | [windows [SECONDS [SEED]]]
using System.Globalization;
using Setout.Soak;

int Number(int at, int usual) => args.Length > at ? int.Parse(args[at], CultureInfo.InvariantCulture) : usual;
using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    stop.Cancel();
};
string what = args.Length > 0 ? args[0] : "both";
if (what is not ("both" or "fuzz" or "windows"))
{
    Console.Error.WriteLine("Usage: ./soak [fuzz [CASES [SEED]]] | [windows [SECONDS [SEED]]]");
    return 2;
}
int faults = 0;
if (what is "both" or "fuzz") faults += await SoakRuns.FuzzAsync(what == "fuzz" ? Number(1, 100_000) : 100_000, what == "fuzz" ? Number(2, 1) : 1, stop.Token);
if (what is "both" or "windows" && !stop.IsCancellationRequested) faults += await SoakRuns.WindowsAsync(TimeSpan.FromSeconds(what == "windows" ? Number(1, 120) : 120), what == "windows" ? Number(2, 1) : 1, stop.Token);
Console.WriteLine(faults == 0 ? "no fault" : $"{faults} faults");
return faults == 0 ? 0 : 1;
