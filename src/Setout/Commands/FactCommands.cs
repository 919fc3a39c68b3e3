using System.Collections.Immutable;
using System.ComponentModel;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout mark FILE cut|assembled|fitted|bought KEY...</c>.</summary>
internal sealed class MarkCommand : Command<MarkCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : PieceSettings
    {
        /// <summary>How far it has come.</summary>
        [CommandArgument(1, "<WHAT>")]
        [Description("cut, assembled, fitted or bought.")]
        public string What { get; set; } = "";

        /// <summary>The keys.</summary>
        [CommandArgument(2, "<KEY>")]
        [Description("Parts such as L3.side, or one of several as L3.side#1.")]
        public string[] Keys { get; set; } = [];

        /// <summary>The sheet they came from.</summary>
        [CommandOption("--sheet <NAME>")]
        [Description("For parts cut: the sheet they came from, as it was read, such as 1.")]
        public string? Sheet { get; set; }

        /// <summary>Cut again.</summary>
        [CommandOption("--again")]
        [Description("For parts that are cut already: they were cut again, to what the plan asks for now. For slides: others were bought.")]
        public bool Again { get; set; }

        /// <summary>Other figures.</summary>
        [CommandOption("--to <SIZE=LENGTH>")]
        [Description("For parts cut to another figure than the plan's: the size and its figure, such as L1.end.length=17 17/32; may stand several times.")]
        public string[] To { get; set; } = [];

        /// <summary>Only say what it would do.</summary>
        [CommandOption("--dry-run")]
        [Description("Write nothing.")]
        public bool DryRun { get; set; }
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        Progress progress = settings.What switch
        {
            "cut" => Progress.Cut,
            "assembled" => Progress.Assembled,
            "fitted" => Progress.Fitted,
            "bought" => Progress.Bought,
            _ => throw new UsageException($"'{settings.What}' is not known here.", "Use cut, assembled, fitted or bought."),
        };
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files) is not { } source) return ExitCode.Findings;
        SetPiece set = source.SetOut();
        ImmutableArray<string> keys = [.. settings.Keys.SelectMany(word => KeysOf(set, progress, word)).Distinct()];
        Again(set, progress, keys, settings.Again);
        var entry = new MarkEntry(Entry.NewId(), Entry.At(terminal), progress, keys, Given(set, progress, keys, settings.To, Marking.Figures(set, progress, keys, settings.Again)))
        {
            Chosen = Marking.Chosen(set, progress, keys, settings.Again),
            From = settings.Sheet is { } sheet ? SheetOf(set, progress, keys, sheet) : "",
        };
        if (!settings.DryRun) LogFile.Append(files.Log, entry);
        terminal.Out.WriteLine($"{settings.What}: {string.Join(", ", keys)}{(entry.From.Length > 0 ? $", from {entry.From}" : "")}{(settings.DryRun ? "; nothing was written" : $"; entry {entry.Id}")}");
        foreach (Part part in set.Parts.Where(p => progress == Progress.Cut && set.IsHeld(p) && keys.Any(k => k.Split('#')[0] == p.Key)))
            terminal.Out.WriteLine($"  {part.Name} was waiting for a reading of {part.HeldUntil[^1]}; its figures stand as it was cut.");
        Told.Moved(terminal.Out, files, set, (source with { Log = new(source.Log.Entries.Add(entry)) }).SetOut(), source.Shop);
        return ExitCode.Fine;
    }

    private static ImmutableDictionary<QuantityKey, ExactLength> Given(
        SetPiece set, Progress progress, ImmutableArray<string> keys, string[] given, ImmutableDictionary<QuantityKey, ExactLength> figures)
    {
        if (given.Length > 0 && progress != Progress.Cut) throw new UsageException("Only parts that are cut have figures they were cut to.", "Leave --to out.");
        foreach (string words in given)
        {
            int at = words.IndexOf('=', StringComparison.Ordinal);
            if (at <= 0) throw new UsageException($"'{words}' does not say which size was cut to what.", "Write it as L1.end.length=17 17/32, in quotes where it has blanks.");
            string key = words[..at].Trim();
            if (!figures.ContainsKey(new(key)))
                throw new UsageException($"'{key}' is not a size of {string.Join(", ", keys)}.", $"Name one of {string.Join(", ", figures.Keys.Select(k => k.Text).Order(StringComparer.Ordinal))}.");
            ParseResult<ExactLength> read = LengthText.Parse(words[(at + 1)..].Trim(), set.Piece.Unit);
            if (!read.IsRead) throw new UsageException($"'{words[(at + 1)..].Trim()}' is not a length: {read.Fault!.Words}", read.Fault.Remedy);
            if (read.Value.Sign <= 0) throw new UsageException($"Nothing is cut to {words[(at + 1)..].Trim()}.", "Give a length above 0.");
            figures = figures.SetItem(new(key), read.Value);
        }
        return figures;
    }

    private static ImmutableArray<string> KeysOf(SetPiece set, Progress progress, string word)
    {
        string plain = word.Split('#')[0];
        if (Marking.Parts(set, progress, word) is { Length: > 0 } parts)
        {
            if (word.Contains('#') && set.Parts.First(p => p.Key == plain) is var part && !(int.TryParse(word[(word.IndexOf('#') + 1)..], out int n) && n >= 1 && n <= part.Count && word == BenchFacts.Member(plain, n)))
                throw new UsageException($"There is no '{word}': {part.Name} is {part.Count} off.", $"Use {plain}#1 to {plain}#{part.Count}.");
            return progress == Progress.Bought ? [word] : parts;
        }
        if (progress == Progress.Bought && (set.Piece.Keys.ContainsKey(plain) || set.Hardware.Any(h => h.Name == word))) return [word];
        throw set.Piece.Keys.ContainsKey(plain) || set.Piece.Materials.ContainsKey(plain)
            ? new UsageException($"'{word}' has no parts of its own that could be {progress.ToString().ToLowerInvariant()}.", "Name the part, such as L3.side; 'setout parts FILE' lists them.")
            : Commands.Keys.Unknown(set, word);
    }

    private static void Again(SetPiece set, Progress progress, ImmutableArray<string> keys, bool again)
    {
        if (progress != Progress.Cut || again) return;
        foreach (string key in keys)
        {
            string[] halves = key.Split('#');
            Part part = set.Parts.First(p => p.Key == halves[0]);
            bool isCut = halves.Length == 2 ? set.Facts.StateOf(part.Key, int.Parse(halves[1], System.Globalization.CultureInfo.InvariantCulture)) > PartState.Planned : set.Facts.CutOf(part) == part.Count;
            if (isCut) throw new UsageException($"{part.Name} ({key}) is cut already; nothing was written.", "Add --again if it was cut anew, or void the entry that says so.");
        }
    }

    private static string SheetOf(SetPiece set, Progress progress, ImmutableArray<string> keys, string sheet)
    {
        if (progress != Progress.Cut) throw new UsageException("Only parts that are cut come from a sheet.", "Leave --sheet out.");
        string[] materials = [.. keys.Select(k => set.Parts.First(p => p.Key == k.Split('#')[0]).Material).Distinct()];
        return materials is [var one]
            ? Commands.Keys.Sheet(set, one, sheet)
            : throw new UsageException($"These parts are of {string.Join(" and ", materials)}: they cannot have come from one sheet.", "Mark them one material at a time.");
    }
}

/// <summary><c>setout void FILE ENTRY</c>: takes an entry back by a later one.</summary>
internal sealed class VoidCommand : Command<VoidCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : PieceSettings
    {
        /// <summary>The entry.</summary>
        [CommandArgument(1, "<ENTRY>")]
        [Description("The id of the entry, as the command that made it said.")]
        public string Entry { get; set; } = "";
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files) is not { } source) return ExitCode.Findings;
        LogEntry? voided = source.Log.Entries.FirstOrDefault(e => e.Id == settings.Entry);
        if (voided is null)
            throw new UsageException($"There is no entry '{settings.Entry}' in '{files.Log}'.", NearestWord.Of(settings.Entry, source.Log.Entries.Select(e => e.Id)) is { } guess ? $"Did you mean '{guess}'?" : "");
        if (voided is not VoidEntry && !source.Log.Standing.Contains(voided)) throw new UsageException($"Entry '{settings.Entry}' is void already.", "");
        var entry = new VoidEntry(Commands.Entry.NewId(), Commands.Entry.At(terminal), settings.Entry);
        LogFile.Append(files.Log, entry);
        terminal.Out.WriteLine($"void: {settings.Entry}; entry {entry.Id}");
        Told.Moved(terminal.Out, files, source.SetOut(), (source with { Log = new(source.Log.Entries.Add(entry)) }).SetOut(), source.Shop);
        return ExitCode.Fine;
    }
}
