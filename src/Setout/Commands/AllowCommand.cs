using System.ComponentModel;
using Setout.Core.SettingOut;
using Setout.Files;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout allow FILE CODE [KEY] --because TEXT</c>: lets a finding stand, with a reason.</summary>
internal sealed class AllowCommand : Command<AllowCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : PieceSettings
    {
        /// <summary>The code.</summary>
        [CommandArgument(1, "<CODE>")]
        [Description("The code of the finding, such as material.not-read; for what does not go upset.gap, upset.part or upset.bought.")]
        public string Code { get; set; } = "";

        /// <summary>The key.</summary>
        [CommandArgument(2, "[KEY]")]
        [Description("What it is about, such as back or L1.play; left out, the whole piece.")]
        public string Key { get; set; } = "";

        /// <summary>The reason.</summary>
        [CommandOption("--because <TEXT>", isRequired: true)]
        [Description("Why it may stand: it is told with the finding in every report.")]
        public string Because { get; set; } = "";

        /// <summary>Only say what it would do.</summary>
        [CommandOption("--dry-run")]
        [Description(OptionWords.DryRun)]
        public bool DryRun { get; set; }
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        if (OptionValue.IsMissing(settings.Because)) throw new UsageException("'--because' wants a reason.", "Write for example --because \"it only lies in a groove\".");
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files) is not { } source) return ExitCode.Findings;
        SetPiece set = source.SetOut();
        // Layouts take their time, and most findings are there without them.
        Noted<AllowEntry> noted = NotedAllow.Of(set, set.Findings, settings.Code, settings.Key, settings.Because, Entry.NewId(), Entry.At(terminal));
        if (noted.Fault?.Code == "note.finding")
            noted = NotedAllow.Of(set, Planner.Maker.Make(source, LayoutEffort.Usual, null, cancellationToken).Findings, settings.Code, settings.Key, settings.Because, Entry.NewId(), Entry.At(terminal));
        if (noted.Entry is not { } entry) throw UsageException.Of(noted.Fault!);
        if (!settings.DryRun) files.Append(entry);
        terminal.Out.WriteLine($"let stand: {entry.Said}");
        terminal.Out.WriteLine($"  because {entry.Because}{(settings.DryRun ? "; nothing was written" : $"; entry {entry.Id}")}");
        return ExitCode.Fine;
    }
}
