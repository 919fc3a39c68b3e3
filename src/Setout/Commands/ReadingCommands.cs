using System.Collections.Immutable;
using System.ComponentModel;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Noting;
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
        else terminal.Out.WriteLine(string.Join("\n\n", workings.Select(w => string.Join('\n', WorkingLines.Of(w with { Remark = SpotWords.Of(set, w.Key, source.Shop.Accuracy) }, set.Piece.Unit).Concat(WorkingLines.Of(set, w.Key))))));
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

    /// <summary>The error for an unknown key.</summary>
    private static UsageException Unknown(SetPiece set, string key) => UsageException.Of(NotedKeys.Unknown(set, key));

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
        if (NotedReading.Instrument(settings.With ?? "") is { } unknown) throw UsageException.Of(unknown);
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files) is not { } source) return ExitCode.Findings;
        SetPiece before = source.SetOut();
        var typed = new ReadingWords(settings.Key, string.Join(' ', settings.Value)) { With = settings.With ?? "", Spot = settings.Spot ?? "", Sheet = settings.Sheet, IsForced = settings.Force };
        Noted<ReadingEntry> noted = NotedReading.Of(before, source.Shop.Accuracy, typed, Entry.NewId(), Entry.At(terminal));
        if (noted.Entry is not { } entry) throw UsageException.Of(noted.Fault!);
        ImmutableArray<ExactLength> values = entry.Values;
        PieceSource read = source with { Log = new(source.Log.Entries.Add(entry)) };
        SetPiece after = read.SetOut();
        if (!settings.DryRun) files.Append(entry);

        Worked worked = after.Worked.Values[entry.Key];
        string spots = values.Length > 1 ? $" ({values.Length} spots: {string.Join(", ", values.Select(v => SumFigure.Of(v, before.Piece.Unit)))})" : "";
        string over = WorkingLines.Over(worked.Over, before.Piece.Unit);
        terminal.Out.WriteLine($"read {worked.Quantity.Name}: {SumFigure.Of(worked.Value, before.Piece.Unit)} {before.Piece.Unit.Mark}{spots}, {over}{(settings.DryRun ? "; nothing was written" : $"; entry {entry.Id}")}");
        if (SpotWords.Of(after, entry.Key, source.Shop.Accuracy) is { Length: > 0 } spot && worked.Pin?.Values.Length == 1) terminal.Out.WriteLine($"  {spot}");
        // What is not new among the findings is said here.
        if (before.Facts.Pins.ContainsKey(entry.Key) && EarlyOpening.Of(after, entry.Key) is { } early) terminal.Out.WriteLine($"  {char.ToLowerInvariant(early.OfReading[0])}{early.OfReading[1..]}");
        Told.Moved(terminal.Out, files, before, after, read.ShopInHand);
        return ExitCode.Fine;
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
