using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Noting;
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
    public static int Run(Terminal terminal, PieceFiles files, PieceSource source, string number, string? folder, string? shop, bool dryRun)
    {
        if (!int.TryParse(number, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int run)) throw new UsageException($"'{number}' is not the number of a run.", "Write for example --run 3.");
        if (folder is null) throw new UsageException("Runs are numbered within a plan.", "Name the folder of the plan that you cut by: --plan DIR.");
        string path = EarlierPlanFile.PathIn(folder);
        TextRead<string> text = EarlierPlanFile.Text(folder, "--plan");
        TextRead<SawnPlan> read = text.Value is { } json ? SawnPlanJson.Read(json) : new(null, text.Findings);
        foreach (Finding finding in read.Findings) Told.Finding(terminal.Error, path, finding);
        if (read.Value is not { } plan) return ExitCode.Findings;
        SeveralPieces several = new([files]);
        if (!plan.Pieces.IsEmpty)
        {
            several = SeveralPieces.Beside(files, plan.Pieces, shop);
            if (several.Read(terminal) is not { } all) return ExitCode.Findings;
            source = all;
        }
        Told.Unread(terminal, files, source);
        SetPiece set = source.SetOut();
        (MarkEntry? entry, Finding? refusal) = RunMarking.Of(source, set, plan, run, Entry.NewId(), Entry.At(terminal));
        if (refusal is not null)
        {
            Told.Finding(terminal.Error, path, refusal);
            return ExitCode.Findings;
        }
        PieceSource marked = source.Together is { } together ? together.With(together.Split(entry!)) : source with { Log = new(source.Log.Entries.Add(entry!)) };
        if (!dryRun) Append(several, source, entry!);
        terminal.Out.WriteLine($"run {run} of {plan.Runs.Runs.Length} is cut{(dryRun ? "; nothing was written" : $"; entry {entry!.Id}")}");
        foreach (string line in RunMarkLines.Of(marked.SetOut(), entry!, RunMarking.Next(marked.Log, plan), plan.Runs.Runs.Length)) terminal.Out.WriteLine(line);
        if (source.Together is not { } before)
        {
            SetPiece after = marked.SetOut();
            foreach (Finding early in NotedMark.Early(after, entry!)) Told.Finding(terminal.Error, files.Piece, early);
            Told.Moved(terminal.Out, files, set, after, marked.ShopInHand);
        }
        else
        {
            foreach ((MemberPiece was, MemberPiece now, PieceFiles of) in before.Members.Zip(marked.Together!.Members, several.Each))
            {
                terminal.Out.WriteLine($"{was.Source.Piece.Name}:");
                Told.Moved(terminal.Out, of, was.Set, now.Set, now.Source.ShopInHand);
            }
        }
        return ExitCode.Fine;
    }

    // One act in several logs. Where one of them cannot be written, what was written before is taken back, so that no log tells of half a run.
    private static void Append(SeveralPieces several, PieceSource source, MarkEntry entry)
    {
        if (source.Together is not { } together)
        {
            several.Each[0].Append(entry);
            return;
        }
        PieceFiles.Append([.. together.Split(entry).Select(e => (several.Each[together.Members.IndexOf(e.Member)], (LogEntry)e.Entry))]);
    }

    /// <summary><c>setout mark FILE gone BLANK...</c>: blanks that were cut some other way, spoiled or given away.</summary>
    public static int Gone(Terminal terminal, PieceFiles files, PieceSource source, string[] names, bool dryRun)
    {
        Told.Unread(terminal, files, source);
        var entry = new MarkEntry(Entry.NewId(), Entry.At(terminal), Progress.Cut, [], System.Collections.Immutable.ImmutableDictionary<QuantityKey, Core.Measures.ExactLength>.Empty)
        {
            Took = [.. names.Distinct().Select(n => Blank(files, source, n))],
        };
        if (!dryRun) files.Append(entry);
        terminal.Out.WriteLine($"gone: {string.Join(", ", names)}{(dryRun ? "; nothing was written" : $"; entry {entry.Id}")}");
        return ExitCode.Fine;
    }

    /// <summary>A blank in hand, to be taken.</summary>
    /// <exception cref="UsageException">There is none of that name.</exception>
    public static TakenWood Blank(PieceFiles files, PieceSource source, string name)
    {
        WoodLedger ledger = source.Ledger;
        LeftBlank[] inHand = [.. ledger.For(source.FileName)];
        if (inHand.FirstOrDefault(b => b.Name == name) is { } blank)
        {
            string? of = blank.By.Name == source.FileName ? blank.Wood.Of : StockInHand.MaterialOf(source.Piece, blank);
            return of is not null ? new(of, WoodSource.Blank, name, null)
                : throw new UsageException($"This piece has no wood as that of the blank '{name}', which {blank.By.Spoken(source.Piece)} left.", $"Say it there: setout mark {files.Beside(blank.By.Name)} gone {name}.");
        }
        if (ledger.Blanks.FirstOrDefault(b => b.Name == name) is { } theirs)
            throw new UsageException($"The blank '{name}' is still to be cut on for {theirs.By.Spoken(source.Piece)}.", $"Say it there: setout mark {files.Beside(theirs.By.Name)} gone {name}.");
        if (ledger.TakersOf(name).FirstOrDefault(t => t.By.Name != source.FileName) is { } taker)
            throw new UsageException($"The blank '{name}' is gone: {FactSentences.Named(new LoggedMark(taker.By, taker.Entry), source, source.SetOut())} took it.", $"If it did not: setout void {files.Beside(taker.By.Name)} {taker.Entry.Id}.");
        string known = string.Join(", ", inHand.Select(b => b.Name));
        throw new UsageException($"There is no blank '{name}' in hand.", NearestWord.Of(name, inHand.Select(b => b.Name)) is { } guess ? $"Did you mean '{guess}'?" : known.Length > 0 ? $"In hand: {known}." : "The logs have left none.");
    }
}
