using System.Collections.Immutable;
using System.ComponentModel;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Drawing.Documents;
using Setout.Files;
using Setout.Shop.Drawings;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout plan FILE --out DIR</c>: the main job.</summary>
internal sealed class PlanCommand : Command<PlanCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : PieceSettings
    {
        /// <summary>Where the plan goes.</summary>
        [CommandOption("-o|--out <DIR>", isRequired: true)]
        [Description("The folder for the plan; made when it is missing, replaced when it holds only an earlier plan.")]
        public string Out { get; set; } = "";

        /// <summary>The paper.</summary>
        [CommandOption("--paper <PAPER>")]
        [Description("letter or a4; without it letter for pieces in inches, a4 for millimetres.")]
        public string? Paper { get; set; }
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
        // The library puts a word of its own where an option has no value.
        if (string.IsNullOrWhiteSpace(settings.Out) || settings.Out == "__default_command") throw new UsageException("'--out' wants a folder.", "Write for example --out plan.");
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files) is not { } source) return ExitCode.Findings;
        OutputFolder.Check(settings.Out);
        IProgress<string>? progress = terminal.ErrorIsTerminal ? new Telling(terminal.Error) : null;
        Plan plan = Planner.Maker.Make(source, SolverOptions.Default, progress, cancellationToken);
        foreach (Finding finding in plan.Findings.Where(f => f.Severity == Severity.Stop)) Told.Finding(terminal.Error, files.Piece, finding);
        if (plan.IsStopped)
        {
            terminal.Error.WriteLine("setout: the plan is stopped; nothing was written.");
            return ExitCode.Findings;
        }
        ImmutableArray<PlanFile> written = PlanFiles.Of(plan, files.Stand(), paper ?? (source.Piece.Unit == LengthUnit.Inch ? Paper.Letter : Paper.A4), cancellationToken);
        cancellationToken.ThrowIfCancellationRequested();
        OutputFolder.Write(settings.Out, written);
        Summary(terminal.Out, plan, files, settings.Out, written);
        return ExitCode.Fine;
    }

    private static void Summary(TextWriter writer, Plan plan, PieceFiles files, string folder, ImmutableArray<PlanFile> written)
    {
        writer.WriteLine($"{plan.Set.Piece.Name}: {plan.Set.Parts.Sum(p => p.Count)} parts on a grid of {plan.Set.Grid}, {(files.Shop is null ? "a usual shop" : "shop file " + files.Shop)}");
        foreach (SheetPlan sheets in plan.Sheets) writer.WriteLine($"  {sheets.Material.Name}: {MarkingOut.Verdict(sheets)}");
        foreach (BoardPlan boards in plan.Boards) writer.WriteLine($"  {boards.Material.Name}: {BoardBars.Verdict(boards)}");
        if (plan.Cost > Money.Zero) writer.WriteLine($"  to buy: {$"{plan.Cost} {plan.Source.Shop.Currency}".TrimEnd()}{(plan.Unpriced > 0 ? $", without {plan.Unpriced} lines that have no price" : "")}");
        foreach (Finding finding in plan.Findings) Told.Finding(writer, files.Piece, finding);
        writer.WriteLine($"{written.Length} files in {folder} (rule set {Core.SettingOut.PieceSetOut.RuleSet}, inputs {plan.Source.Hash})");
    }

    private sealed class Telling(TextWriter writer) : IProgress<string>
    {
        public void Report(string value) => writer.WriteLine($"laying out {value}");
    }
}
