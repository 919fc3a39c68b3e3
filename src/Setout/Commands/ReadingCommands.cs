using System.Collections.Immutable;
using System.ComponentModel;
using System.Globalization;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout why FILE KEY</c>: the working of a quantity, or of both sizes of a part.</summary>
internal sealed class WhyCommand : Command<WhyCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : JsonSettings
    {
        /// <summary>The key.</summary>
        [CommandArgument(1, "<KEY>")]
        [Description("A quantity such as L3.box.width, or a part such as L3.side.")]
        public string Key { get; set; } = "";
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files, settings.Json) is not { } source) return ExitCode.Findings;
        SetPiece set = source.SetOut();
        ImmutableArray<WrittenWorking> workings = Keys.WorkingsOf(set, settings.Key);
        if (settings.Json) Told.Json(terminal, PlanJson.WriteWorkings(workings, set.Piece.Unit));
        else terminal.Out.WriteLine(string.Join("\n\n", workings.Select(w => string.Join('\n', WorkingLines.Of(w, set.Piece.Unit).Concat(WorkingLines.Of(set, w.Key))))));
        return ExitCode.Fine;
    }
}

/// <summary>Finds what a key means.</summary>
internal static class Keys
{
    /// <summary>The workings behind a key.</summary>
    /// <exception cref="UsageException">There is no such key; the nearest is named.</exception>
    public static ImmutableArray<WrittenWorking> WorkingsOf(SetPiece set, string key)
    {
        // The mark pencilled on a part names it as well as its key.
        if ((set.Parts.FirstOrDefault(p => p.Key == key) ?? set.Parts.FirstOrDefault(p => p.Mark == key)) is { } part)
            return [.. new[] { part.Length, part.Width }.Distinct().SelectMany(s => WrittenWorking.Of(set.Worked, s))];
        if (SizeOf(set, key) is { } size) return WrittenWorking.Of(set.Worked, size);
        return WrittenWorking.Of(set.Worked, new QuantityKey(key)) is { } working ? [working] : throw Unknown(set, key);
    }

    /// <summary>The quantity that a reading of a key pins: for a size that is cut, the figure as cut.</summary>
    public static QuantityKey Pinned(SetPiece set, string key)
    {
        // What a box is to aim for is nobody's to measure: what is measured is the box.
        if (key.EndsWith(".box.width", StringComparison.Ordinal) && set.Worked.Values.ContainsKey(QuantityKey.Of(key[..^".box.width".Length], "box.as-built"))) return QuantityKey.Of(key[..^".box.width".Length], "box.as-built");
        if (set.Worked.Values.ContainsKey(new(key))) return SizeOf(set, key)?.AsCut ?? new QuantityKey(key);
        if (set.Piece.Materials.ContainsKey(key)) return QuantityKey.Of(key, "thickness");
        // A sheet that nobody has read yet is not among the quantities.
        if (SheetName(key) is var (material, sheet)) return QuantityKey.Of(Sheet(set, material, sheet), "thickness");
        throw Unknown(set, key);
    }

    /// <summary>The key of a sheet of a material.</summary>
    /// <exception cref="UsageException">There is no such material in sheets, or the name of the sheet has signs that keys do not have.</exception>
    public static string Sheet(SetPiece set, string material, string sheet)
    {
        if (set.Piece.Materials.GetValueOrDefault(material) is not Core.Pieces.Panel)
            throw new UsageException($"'{material}' is not sheet goods of this piece.", $"Name one of {string.Join(", ", set.Piece.Materials.Values.OfType<Core.Pieces.Panel>().Select(m => m.Name).Order(StringComparer.Ordinal))}.");
        if (sheet.Length is 0 or > 20 || !sheet.All(c => char.IsAsciiLetterOrDigit(c) || c == '-')) throw new UsageException($"'{sheet}' cannot be the name of a sheet.", "Use letters, digits and hyphens, such as 1 or oak-2.");
        return material + BenchFacts.SheetWord + sheet;
    }

    private static (string Material, string Sheet)? SheetName(string key)
    {
        int at = key.IndexOf(BenchFacts.SheetWord, StringComparison.Ordinal);
        if (at <= 0) return null;
        string sheet = key[(at + BenchFacts.SheetWord.Length)..];
        return (key[..at], sheet.EndsWith(".thickness", StringComparison.Ordinal) ? sheet[..^".thickness".Length] : sheet);
    }

    /// <summary>The error for an unknown key.</summary>
    public static UsageException Unknown(SetPiece set, string key)
    {
        IEnumerable<string> known = set.Worked.Order.Select(k => k.Text).Concat(set.Parts.Select(p => p.Key));
        return new($"There is no quantity or part '{key}'.", NearestWord.Of(key, known) is { } guess ? $"Did you mean '{guess}'?" : "'setout parts FILE' lists the parts.");
    }

    private static PartSize? SizeOf(SetPiece set, string key) =>
        set.Worked.Values.ContainsKey(new QuantityKey(key).AsCut) ? new(new(key), new QuantityKey(key).ToCut, new QuantityKey(key).AsCut) : null;
}

/// <summary><c>setout record FILE KEY VALUE...</c>: a reading goes into the log, and what it moves is told.</summary>
internal sealed class RecordCommand : Command<RecordCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : PieceSettings
    {
        /// <summary>The key.</summary>
        [CommandArgument(1, "<KEY>")]
        [Description("What was measured, such as carcase.thickness, L.width or L3.end.length.")]
        public string Key { get; set; } = "";

        /// <summary>The words of the value.</summary>
        [CommandArgument(2, "<VALUE>")]
        [Description("What was read, such as 23 7/32 or 23-7/32in or 590mm; several spots apart by commas.")]
        public string[] Value { get; set; } = [];

        /// <summary>The instrument.</summary>
        [CommandOption("--with <INSTRUMENT>")]
        [Description("tape, rule or calliper.")]
        public string? With { get; set; }

        /// <summary>The spot.</summary>
        [CommandOption("--spot <SPOT>")]
        [Description("Where on the thing it was read, so that readings at several spots stand together.")]
        public string? Spot { get; set; }

        /// <summary>The sheet.</summary>
        [CommandOption("--sheet <NAME>")]
        [Description("For a thickness: the one sheet that was read, by the name you give it, such as 1.")]
        public string? Sheet { get; set; }

        /// <summary>Take it all the same.</summary>
        [CommandOption("--force")]
        [Description("Take a reading that lies further off than wood or a tape explains.")]
        public bool Force { get; set; }

        /// <summary>Only say what it would do.</summary>
        [CommandOption("--dry-run")]
        [Description("Say what the reading would move, and write nothing.")]
        public bool DryRun { get; set; }
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        if (settings.With is not (null or "tape" or "rule" or "calliper"))
            throw new UsageException($"There is no instrument '{settings.With}'.", "Use tape, rule or calliper.");
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files) is not { } source) return ExitCode.Findings;
        SetPiece before = source.SetOut();
        QuantityKey key = settings.Sheet is { } sheet
            ? QuantityKey.Of(Keys.Sheet(before, settings.Key.EndsWith(".thickness", StringComparison.Ordinal) ? settings.Key[..^".thickness".Length] : settings.Key, sheet), "thickness")
            : Keys.Pinned(before, settings.Key);
        ImmutableArray<ExactLength> values = Values(string.Join(' ', settings.Value), before.Piece.Unit);
        var entry = new ReadingEntry(Entry.NewId(), Entry.At(terminal), key, values, settings.With ?? "", settings.Spot ?? "");
        if (!settings.Force) Believable(before, source.Shop.Accuracy, entry);
        PieceSource read = source with { Log = new(source.Log.Entries.Add(entry)) };
        SetPiece after = read.SetOut();
        if (!settings.DryRun) LogFile.Append(files.Log, entry);

        LengthFormat format = LengthFormat.For(before.Piece.Unit);
        Worked worked = after.Worked.Values[key];
        string spots = values.Length > 1 ? $" ({values.Length} spots: {string.Join(", ", values.Select(v => WorkingLines.Figure(v, before.Piece.Unit)))})" : "";
        string over = WorkingLines.Over(worked.Over, before.Piece.Unit);
        terminal.Out.WriteLine($"read {worked.Quantity.Name}: {WorkingLines.Figure(worked.Value, before.Piece.Unit)} {(before.Piece.Unit == LengthUnit.Inch ? "in" : "mm")}{spots}, {over}{(settings.DryRun ? "; nothing was written" : $"; entry {entry.Id}")}");
        Told.Moved(terminal.Out, files, before, after, read.ShopInHand);
        return ExitCode.Fine;
    }

    /// <summary>A slip, or a value too far off, is asked about before it becomes a fact.</summary>
    private static void Believable(SetPiece set, Accuracy accuracy, ReadingEntry entry)
    {
        if (ReadingChecks.SlipOf(set, accuracy, entry.Key, entry.Values, entry.With) is { } slip)
            throw new UsageException($"{slip.Words(set.Piece.Unit)} of {entry.Key}; nothing was written.", $"Record {slip.LikelyText(set.Piece.Unit)} if that is what it was; add --force if it is so as you wrote it.");
        LengthFormat format = LengthFormat.For(set.Piece.Unit);
        if (ReadingChecks.FarOf(set, accuracy, entry.Key, entry.Values, entry.With) is var (value, expected))
            throw new UsageException($"{format.Text(value)} is far from the {format.Text(expected)} expected of {entry.Key}; nothing was written.", "Measure again, look at the unit, or add --force if it is so.");
    }

    private static ImmutableArray<ExactLength> Values(string text, LengthUnit unit)
    {
        // In inches a comma parts two spots; in millimetres one between two digits is a decimal comma, unless a fraction stands beside it.
        bool decimals = unit == LengthUnit.Millimetre && !text.Contains('/', StringComparison.Ordinal);
        var spots = System.Text.RegularExpressions.Regex.Split(text, decimals ? @",(?!\d)|(?<!\d)," : ",").Where(s => s.Trim().Length > 0).ToList();
        if (spots.Count == 0) throw new UsageException("There is no value.", "Give what was read, such as 23 7/32.");
        return
        [
            .. spots.Select(spot =>
            {
                ParseResult<ExactLength> read = LengthText.Parse(spot.Trim(), unit);
                if (!read.IsRead) throw new UsageException($"'{spot.Trim()}' is not a length: {read.Fault!.Words}", read.Fault.Remedy);
                if (read.Value.Sign <= 0) throw new UsageException($"'{spot.Trim()}' cannot be a reading.", "Give a length above 0.");
                return read.Value;
            }),
        ];
    }
}

/// <summary>What new entries of a log carry.</summary>
internal static class Entry
{
    /// <summary>An id of its own, eight hexadecimal digits.</summary>
    public static string NewId() => "e" + Guid.NewGuid().ToString("n", CultureInfo.InvariantCulture)[..8];

    /// <summary>Now, with the offset of the place.</summary>
    public static string At(Terminal terminal) => terminal.Clock.GetLocalNow().ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture);
}
