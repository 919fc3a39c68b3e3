using System.Collections.Immutable;
using System.ComponentModel;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Files;
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
        var figures = ImmutableDictionary.CreateBuilder<QuantityKey, ExactLength>();
        foreach (string key in settings.Keys)
        {
            string plain = key.Split('#')[0];
            Part? part = set.Parts.FirstOrDefault(p => p.Key == plain);
            bool known = part is not null || (progress == Progress.Bought ? set.Piece.Keys.ContainsKey(plain) || set.Hardware.Any(h => h.Name == key) : progress != Progress.Cut && set.Piece.Keys.ContainsKey(plain));
            if (!known) throw progress == Progress.Cut && set.Piece.Keys.ContainsKey(plain) ? new UsageException($"'{key}' is not a part.", "Name the part that is cut, such as L3.side; 'setout parts FILE' lists them.") : Commands.Keys.Unknown(set, key);
            if (part is not null && key.Contains('#') && !(int.TryParse(key[(key.IndexOf('#') + 1)..], out int n) && n >= 1 && n <= part.Count))
                throw new UsageException($"There is no '{key}': {part.Name} is {part.Count} off.", $"Use {plain}#1 to {plain}#{part.Count}.");
            if (part is null || progress != Progress.Cut) continue;
            foreach (PartSize size in new[] { part.Length, part.Width }.Where(s => s.ToCut != s.Exact)) figures[size.Exact] = set.Worked[size.ToCut];
        }
        var entry = new MarkEntry(Entry.NewId(), Entry.At(terminal), progress, [.. settings.Keys.Distinct()], figures.ToImmutable());
        if (!settings.DryRun) LogFile.Append(files.Log, entry);
        terminal.Out.WriteLine($"{settings.What}: {string.Join(", ", settings.Keys)}{(settings.DryRun ? "; nothing was written" : $"; entry {entry.Id}")}");
        return ExitCode.Fine;
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
        LogFile.Append(files.Log, new VoidEntry(Commands.Entry.NewId(), Commands.Entry.At(terminal), settings.Entry));
        terminal.Out.WriteLine($"void: {settings.Entry}");
        return ExitCode.Fine;
    }
}
