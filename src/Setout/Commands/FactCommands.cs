using System.ComponentModel;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout mark FILE cut|assembled|fitted|finished|bought|gone KEY...</c>, and <c>setout mark FILE cut --run N --plan DIR</c>.</summary>
internal sealed class MarkCommand : Command<MarkCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : PieceSettings
    {
        /// <summary>How far it has come.</summary>
        [CommandArgument(1, "<WHAT>")]
        [Description("cut, assembled, fitted, finished or bought; gone for a blank that is no longer there.")]
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
        [Description(OptionWords.DryRun)]
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
            "finished" => Progress.Finished,
            "bought" => Progress.Bought,
            "gone" => Progress.Cut,
            _ => throw new UsageException($"'{settings.What}' is not known here.", "Use cut, assembled, fitted, finished, bought or gone."),
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
        Noted<MarkEntry> noted = NotedMark.Of(set, new(progress, [.. settings.Keys]) { Sheet = settings.Sheet, IsAgain = settings.Again, To = [.. settings.To] }, Entry.NewId(), Entry.At(terminal));
        if (noted.Entry is not { } named) throw UsageException.Of(noted.Fault!);
        MarkEntry entry = named with { Took = [.. settings.Blank.Distinct().Select(b => RunMarks.Blank(files, source, b))] };
        if (!settings.DryRun) files.Append(entry);
        terminal.Out.WriteLine($"{settings.What}: {string.Join(", ", entry.Keys)}{(entry.From.Length > 0 ? $", from {entry.From}" : "")}{(settings.DryRun ? "; nothing was written" : $"; entry {entry.Id}")}");
        foreach (Finding early in NotedMark.Waited(set, entry).Concat(NotedMark.NotReady(set, entry))) Told.Finding(terminal.Error, files.Piece, early);
        PieceSource marked = source with { Log = new(source.Log.Entries.Add(entry)) };
        SetPiece after = marked.SetOut();
        foreach (Finding early in NotedMark.Early(after, entry)) Told.Finding(terminal.Error, files.Piece, early);
        Told.Moved(terminal.Out, files, set, after, marked.ShopInHand);
        return ExitCode.Fine;
    }
}
