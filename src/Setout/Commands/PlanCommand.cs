using System.Collections.Immutable;
using System.ComponentModel;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Drawing.Documents;
using Setout.Files;
using Setout.Shop.BenchSheets;
using Setout.Shop.Drawings;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Texts;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout plan FILE --out DIR</c>: the main job.</summary>
internal sealed class PlanCommand : Command<PlanCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : PieceSettings
    {
        /// <summary>Other pieces.</summary>
        [CommandArgument(1, "[WITH]")]
        [Description("More piece files of the same folder, to be broken down together: one layout, one set of runs.")]
        public string[] With { get; set; } = [];

        /// <summary>Where the plan goes.</summary>
        [CommandOption("-o|--out <DIR>", isRequired: true)]
        [Description("The folder for the plan; made when it is missing, replaced when it holds only an earlier plan.")]
        public string Out { get; set; } = "";

        /// <summary>The paper.</summary>
        [CommandOption("--paper <PAPER>")]
        [Description("letter or a4; without it letter for pieces in inches, a4 for millimetres.")]
        public string? Paper { get; set; }

        /// <summary>One stage.</summary>
        [CommandOption("--only <STAGE>")]
        [Description("Print the bench sheets of one stage alone, with their cautions: set-out, buy, break-down, machine, assemble, fit or finish. They are called by it, such as break-down-sheets.pdf; the other files are written as ever.")]
        public string? Only { get; set; }

        /// <summary>How long the layouts are searched for.</summary>
        [CommandOption("--seconds <N>")]
        [Description("Search the layouts for so long, 0.1 to 3600; without it so many steps that every machine gives the same plan.")]
        public string? Seconds { get; set; }

        /// <summary>An earlier plan.</summary>
        [CommandOption("--before <DIR>")]
        [Description("The folder of an earlier plan; its layouts of sheets stay where that costs nothing.")]
        public string? Before { get; set; }
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        Paper? paper = settings.Paper?.ToLowerInvariant() switch
        {
            null => null,
            "letter" => Paper.Letter,
            "a4" => Paper.A4,
            _ => throw new UsageException($"There is no paper '{settings.Paper}'.", "Use letter or a4."),
        };
        SheetStage? only = Stage(settings.Only);
        if (OptionValue.IsMissing(settings.Out)) throw new UsageException("'--out' wants a folder.", "Write for example --out plan.");
        LayoutEffort effort = Effort(settings.Seconds);
        SeveralPieces files = SeveralPieces.Of([settings.File, .. settings.With], settings.Shop, settings.Data);
        if (files.Read(terminal) is not { } source) return ExitCode.Findings;
        OutputFolder.Check(settings.Out);
        if (settings.Before is { } before)
        {
            TextRead<EarlierLayouts> read = EarlierPlanFile.Read(before);
            foreach (Finding finding in read.Findings) Told.Finding(terminal.Error, EarlierPlanFile.PathIn(before), finding);
            if (read.Value is not { } layouts) return ExitCode.Findings;
            if (EarlierPlanFile.Text(before, "--before").Value is { } text && SawnPlanJson.Read(text).Value is { } sawn) layouts = layouts.Without(sawn.Parted(source.Log));
            source = source.KeepingTo(layouts);
        }
        IProgress<string>? progress = terminal.ErrorIsTerminal ? new Telling(terminal.Error) : null;
        Plan plan = Planner.Maker.Make(source, effort, progress, cancellationToken);
        foreach (Finding finding in plan.Findings.Where(f => f.Severity == Severity.Stop)) Told.Finding(terminal.Error, files.Names, finding);
        if (plan.IsStopped)
        {
            terminal.Error.WriteLine("setout: the plan is stopped; nothing was written.");
            return ExitCode.Findings;
        }
        if (only?.WhyNone(plan) is { } none) throw new UsageException($"{none} Nothing was written.", "Leave out --only for all sheets there are.");
        Paper sheets = paper ?? (source.Piece.Unit == LengthUnit.Inch ? Paper.Letter : Paper.A4);
        // Drawing touches nothing outside, so it can be left behind in the middle of a page when it is not wanted any more.
        ImmutableArray<PlanFile> written = Task.Run(() => PlanFiles.Of(plan, files.Stand(), sheets, only, cancellationToken), cancellationToken)
            .WaitAsync(cancellationToken).GetAwaiter().GetResult();
        cancellationToken.ThrowIfCancellationRequested();
        ImmutableArray<string> beside = OutputFolder.Write(settings.Out, written);
        Summary(terminal.Out, plan, files, settings, written);
        if (!beside.IsEmpty) terminal.Error.WriteLine($"setout: beside it stays {string.Join(", ", beside)}, left by a plan that was broken off; remove it yourself when no other plan is being made there.");
        return ExitCode.Fine;
    }

    private static SheetStage? Stage(string? word)
    {
        if (word is null) return null;
        string stages = $"Use {string.Join(", ", SheetStages.Words.SkipLast(1))} or {SheetStages.Words.Last()}.";
        if (OptionValue.IsMissing(word)) throw new UsageException("'--only' wants a stage.", stages);
        return SheetStages.Of(word) ?? throw new UsageException(SheetStages.Unknown(word), stages);
    }

    private static LayoutEffort Effort(string? seconds)
    {
        if (seconds is null) return LayoutEffort.Usual;
        return decimal.TryParse(seconds, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal time) && time is >= 0.1m and <= 3600m
            ? LayoutEffort.Within(TimeSpan.FromSeconds((double)time), TimeProvider.System)
            : throw new UsageException($"'--seconds' wants a number from 0.1 to 3600{(OptionValue.IsMissing(seconds) ? "" : $", not '{seconds}'")}.", "Write for example --seconds 20.");
    }

    private static void Summary(TextWriter writer, Plan plan, SeveralPieces files, Settings settings, ImmutableArray<PlanFile> written)
    {
        writer.WriteLine($"{plan.Set.Piece.Name}: {plan.Set.Parts.Sum(p => p.Count)} parts{(plan.Source.Together is null ? $" on a grid of {plan.Set.Grid}" : " cut together")}, {(files.Each[0].Shop is { } shop ? "shop file " + shop : "a usual shop")}");
        foreach (SheetPlan sheets in plan.Sheets) writer.WriteLine($"  {sheets.Material.Name}: {Verdicts.Of(sheets)}");
        foreach (BoardPlan boards in plan.Boards) writer.WriteLine($"  {boards.Material.Name}: {Verdicts.Of(boards)}");
        if (RunWords.Summary(plan.Runs) is { Length: > 0 } sawn) writer.WriteLine($"  at the saws: {sawn}");
        // Where no sheet is laid, or none of these materials was there before, there is nothing to say.
        if (plan.Sheets.Any(s => s.Instance.Before is { Sheets.IsEmpty: false } && s.Outcome.Score.Sheets > 0))
            writer.WriteLine($"  as in the plan before: {Kept(plan)} of {plan.Sheets.Sum(s => s.Outcome.Score.Sheets)} sheets");
        if (plan.Cost > Money.Zero) writer.WriteLine($"  to buy: {$"{plan.Cost} {plan.Source.Shop.Currency}".TrimEnd()}{(plan.Unpriced > 0 ? $", without {plan.Unpriced} lines that have no price" : "")}");
        foreach (Finding finding in plan.Findings) Told.Finding(writer, files.Names, finding);
        writer.WriteLine($"{written.Length} files in {settings.Out} (rule set {Core.SettingOut.Whole.PieceSetOut.RuleSet}, inputs {plan.Source.Hash}{(settings.Seconds is null ? "" : $", layouts searched for {settings.Seconds} s on this machine")})");
    }

    private static int Kept(Plan plan) => plan.Sheets.Where(s => s.Instance.Before is not null).Sum(s => s.Outcome.Score.Sheets - s.Outcome.Score.Changed);

    private sealed class Telling(TextWriter writer) : IProgress<string>
    {
        public void Report(string value) => writer.WriteLine($"laying out {value}");
    }
}
