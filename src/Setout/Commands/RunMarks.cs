using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Runs;
using Setout.Shop.Texts;

namespace Setout.Commands;

/// <summary>Marks of a whole run of a printed plan, and of blanks that are gone.</summary>
internal static class RunMarks
{
    /// <summary><c>setout mark FILE cut --run N --plan DIR</c>.</summary>
    public static int Run(Terminal terminal, PieceFiles files, PieceSource source, string number, string? folder, bool dryRun)
    {
        if (!int.TryParse(number, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int run)) throw new UsageException($"'{number}' is not the number of a run.", "Write for example --run 3.");
        if (folder is null) throw new UsageException("Runs are numbered within a plan.", "Name the folder of the plan that you cut by: --plan DIR.");
        string path = EarlierPlanFile.PathIn(folder);
        TextRead<string> text = EarlierPlanFile.Text(folder, "--plan");
        TextRead<SawnPlan> read = text.Value is { } json ? SawnPlanJson.Read(json) : new(null, text.Findings);
        foreach (Finding finding in read.Findings) Told.Finding(terminal.Error, path, finding);
        if (read.Value is not { } plan) return ExitCode.Findings;
        SetPiece set = source.SetOut();
        (MarkEntry? entry, Finding? refusal) = RunMarking.Of(source, set, plan, run, Entry.NewId(), Entry.At(terminal));
        if (refusal is not null)
        {
            Told.Finding(terminal.Error, path, refusal);
            return ExitCode.Findings;
        }
        if (!dryRun) LogFile.Append(files.Log, entry!);
        PieceSource marked = source with { Log = new(source.Log.Entries.Add(entry!)) };
        terminal.Out.WriteLine($"run {run} of {plan.Runs.Runs.Length} is cut{(dryRun ? "; nothing was written" : $"; entry {entry!.Id}")}");
        SetPiece after = marked.SetOut();
        foreach (string line in RunMarkLines.Of(after, entry!, RunMarking.Next(marked.Log, plan), plan.Runs.Runs.Length)) terminal.Out.WriteLine(line);
        Told.Moved(terminal.Out, files, set, after, marked.ShopInHand);
        return ExitCode.Fine;
    }

    /// <summary><c>setout mark FILE gone BLANK...</c>: blanks that were cut some other way, spoiled or given away.</summary>
    public static int Gone(Terminal terminal, PieceFiles files, PieceSource source, string[] names, bool dryRun)
    {
        var entry = new MarkEntry(Entry.NewId(), Entry.At(terminal), Progress.Cut, [], System.Collections.Immutable.ImmutableDictionary<QuantityKey, Core.Measures.ExactLength>.Empty)
        {
            Took = [.. names.Distinct().Select(n => Blank(source, n))],
        };
        if (!dryRun) LogFile.Append(files.Log, entry);
        terminal.Out.WriteLine($"gone: {string.Join(", ", names)}{(dryRun ? "; nothing was written" : $"; entry {entry.Id}")}");
        return ExitCode.Fine;
    }

    /// <summary>A blank in hand, to be taken.</summary>
    /// <exception cref="UsageException">There is none of that name.</exception>
    public static TakenWood Blank(PieceSource source, string name)
    {
        WoodLedger ledger = WoodLedger.Of(source.Log);
        if (ledger.Blanks.FirstOrDefault(b => b.Name == name) is { } blank) return new(blank.Of, WoodSource.Blank, name, null);
        string known = string.Join(", ", ledger.Blanks.Select(b => b.Name));
        throw new UsageException($"There is no blank '{name}' in hand.", NearestWord.Of(name, ledger.Blanks.Select(b => b.Name)) is { } guess ? $"Did you mean '{guess}'?" : known.Length > 0 ? $"In hand: {known}." : "The log has left none.");
    }
}
