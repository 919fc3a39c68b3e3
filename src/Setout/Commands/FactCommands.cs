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

/// <summary><c>setout mark FILE cut|assembled|fitted|bought|gone KEY...</c>, and <c>setout mark FILE cut --run N --plan DIR</c>.</summary>
internal sealed class MarkCommand : Command<MarkCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : PieceSettings
    {
        /// <summary>How far it has come.</summary>
        [CommandArgument(1, "<WHAT>")]
        [Description("cut, assembled, fitted or bought; gone for a blank that is no longer there.")]
        public string What { get; set; } = "";

        /// <summary>The keys.</summary>
        [CommandArgument(2, "[KEY]")]
        [Description("Parts such as L3.side, or one of several as L3.side#1; with gone the names of blanks; nothing with --run.")]
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

        /// <summary>A whole run.</summary>
        [CommandOption("--run <N>")]
        [Description("With cut: all that comes off this run of a plan, with the wood it took and left.")]
        public string? Run { get; set; }

        /// <summary>The plan of that run.</summary>
        [CommandOption("--plan <DIR>")]
        [Description("With --run: the folder of the plan that was cut by.")]
        public string? Plan { get; set; }

        /// <summary>The blank the parts came from.</summary>
        [CommandOption("--blank <NAME>")]
        [Description("For parts cut without a run: the blank in hand they came from, which is then gone; may stand several times.")]
        public string[] Blank { get; set; } = [];

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
            "gone" => Progress.Cut,
            _ => throw new UsageException($"'{settings.What}' is not known here.", "Use cut, assembled, fitted, bought or gone."),
        };
        bool isGone = settings.What == "gone";
        if (settings.Run is null && settings.Plan is not null) throw new UsageException("A plan is named, and no run of it.", "Add --run N.");
        if ((settings.Run is not null || settings.Blank.Length > 0) && (progress != Progress.Cut || isGone)) throw new UsageException("Runs are cut, and so is what comes from a blank.", $"Write 'setout mark FILE cut' with {(settings.Run is not null ? "--run" : "--blank")}.");
        if (settings.Run is not null && (settings.Keys.Length > 0 || settings.Sheet is not null || settings.Again || settings.To.Length > 0 || settings.Blank.Length > 0))
            throw new UsageException("A run says by itself what came off it.", "Leave out all but --run, --plan, --shop and --dry-run.");
        if (settings.Run is null && settings.Keys.Length == 0) throw new UsageException("This names nothing.", isGone ? "Name a blank, as the log does." : "Name parts, such as L3.side; or a run of a plan: --run 3 --plan DIR.");
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files) is not { } source) return ExitCode.Findings;
        if (settings.Run is { } run) return RunMarks.Run(terminal, files, source, run, settings.Plan, settings.Shop, settings.DryRun);
        if (isGone) return RunMarks.Gone(terminal, files, source, settings.Keys, settings.DryRun);
        if (settings.Blank.Length > 0) Told.Unread(terminal, files, source);
        SetPiece set = source.SetOut();
        ImmutableArray<string> keys = [.. settings.Keys.SelectMany(word => KeysOf(set, progress, word)).Distinct()];
        Again(set, progress, keys, settings.Again);
        var entry = new MarkEntry(Entry.NewId(), Entry.At(terminal), progress, keys, Given(set, progress, keys, settings.To, Marking.Figures(set, progress, keys, settings.Again)))
        {
            Chosen = Marking.Chosen(set, progress, keys, settings.Again),
            Took = [.. settings.Blank.Distinct().Select(b => RunMarks.Blank(files, source, b))],
            From = settings.Sheet is { } sheet ? SheetOf(set, progress, keys, sheet) : "",
        };
        if (!settings.DryRun) LogFile.Append(files.Log, entry);
        terminal.Out.WriteLine($"{settings.What}: {string.Join(", ", keys)}{(entry.From.Length > 0 ? $", from {entry.From}" : "")}{(settings.DryRun ? "; nothing was written" : $"; entry {entry.Id}")}");
        foreach (Part part in set.Parts.Where(p => progress == Progress.Cut && set.IsHeld(p) && keys.Any(k => k.Split('#')[0] == p.Key)))
            Told.Finding(terminal.Error, files.Piece, new("mark.waits", Severity.Warn, part.Key, $"{part.Name} was waiting for a reading of {part.HeldUntil[^1]}, and is marked cut without it; its figures stand as it was cut.", "If it is not cut, void the entry and take the reading first.", part.Place));
        PieceSource marked = source with { Log = new(source.Log.Entries.Add(entry)) };
        Told.Moved(terminal.Out, files, set, marked.SetOut(), marked.ShopInHand);
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

    // A sheet is known by its reading: another name would be a letter of some plan, or a slip, and give the part no thickness.
    private static string ReadSheet(SetPiece set, string material, string key, string sheet)
    {
        if (set.Worked.Values.ContainsKey(QuantityKey.Of(key, "thickness"))) return key;
        string start = material + BenchFacts.SheetWord;
        string[] known = [.. set.Worked.Order.Select(k => k.Text).Where(k => k.StartsWith(start, StringComparison.Ordinal) && k.EndsWith(".thickness", StringComparison.Ordinal)).Select(k => k[start.Length..^".thickness".Length]).Distinct().Order(StringComparer.Ordinal)];
        throw new UsageException($"No sheet '{sheet}' of {material} has been read; nothing was written.",
            $"{(known.Length > 0 ? $"Read are: {string.Join(", ", known)}. " : "")}Read it first: setout record FILE {material}.thickness READING --sheet {sheet}; or leave --sheet out.");
    }

    private static string SheetOf(SetPiece set, Progress progress, ImmutableArray<string> keys, string sheet)
    {
        if (progress != Progress.Cut) throw new UsageException("Only parts that are cut come from a sheet.", "Leave --sheet out.");
        string[] materials = [.. keys.Select(k => set.Parts.First(p => p.Key == k.Split('#')[0]).Material).Distinct()];
        return materials is [var one]
            ? ReadSheet(set, one, Commands.Keys.Sheet(set, one, sheet), sheet)
            : throw new UsageException($"These parts are of {string.Join(" and ", materials)}: they cannot have come from one sheet.", "Mark them one material at a time.");
    }
}
