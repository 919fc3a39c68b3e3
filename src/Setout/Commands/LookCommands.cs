using System.ComponentModel;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout check FILE</c>: findings.</summary>
internal sealed class CheckCommand : Command<CheckCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : JsonSettings
    {
        /// <summary>From which severity the exit code is 1.</summary>
        [CommandOption("--fail-on <SEVERITY>")]
        [Description("stop, warn or note: from what on the exit code is 1 (default stop).")]
        [DefaultValue("stop")]
        public string FailOn { get; set; } = "stop";
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        if (settings.FailOn.Any(char.IsAsciiDigit) || !Enum.TryParse(settings.FailOn, ignoreCase: true, out Severity least))
            throw new UsageException($"There is no severity '{settings.FailOn}'.", "Use stop, warn or note.");
        PieceFiles files = settings.Files;
        (PieceSource? source, var texts) = files.Read();
        if (source is null)
        {
            if (settings.Json) Told.Json(terminal, PlanJson.WriteFindings(texts.Select(t => t.Finding)));
            else foreach (SourceFinding finding in texts) Told.Finding(terminal.Error, files.FileOf(finding.Text), finding.Finding);
            return ExitCode.Findings;
        }
        Plan plan = Planner.Maker.Make(source, LayoutEffort.Usual, null, cancellationToken);
        if (settings.Json) Told.Json(terminal, PlanJson.WriteFindings(plan.Findings));
        else
        {
            foreach (Finding finding in plan.Findings) Told.Finding(terminal.Out, files.Piece, finding);
            int Count(Severity severity) => plan.Findings.Count(f => f.Severity == severity);
            terminal.Out.WriteLine($"{Count(Severity.Stop)} stop, {Count(Severity.Warn)} warn, {Count(Severity.Note)} note (rule set {PieceSetOut.RuleSet}, inputs {source.Hash})");
        }
        return plan.Findings.Any(f => f.Severity >= least) ? ExitCode.Findings : ExitCode.Fine;
    }
}

/// <summary><c>setout parts FILE</c>: the parts with their figures to cut.</summary>
internal sealed class PartsCommand : Command<JsonSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, JsonSettings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files, settings.Json) is not { } source) return ExitCode.Findings;
        SetPiece set = source.SetOut();
        if (settings.Json) Told.Json(terminal, PlanJson.WriteParts(set));
        else Table(terminal.Out, set);
        foreach (Finding finding in set.Findings.Where(f => f.Severity == Severity.Stop)) Told.Finding(terminal.Error, files.Piece, finding);
        return set.IsStopped ? ExitCode.Findings : ExitCode.Fine;
    }

    private static void Table(TextWriter writer, SetPiece set)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Unit);
        var rows = set.Parts.Select(p => new[]
        {
            p.Key, p.Mark, p.Name, p.Material, $"{p.Count}", format.Bare.Text(set.Worked[p.Length.ToCut]), format.Bare.Text(set.Worked[p.Width.ToCut]),
            format.Text(set.Worked[p.Thickness]), p.Grain == Core.Pieces.Grain.Keep ? "keep" : "free", set.EdgesOf(p), WeightWords.Short(Weights.OfOne(set, p), set.Piece.Unit),
        }).Prepend(["key", "mark", "name", "material", "count", "length", "width", "thickness", "grain", "edges", "each weighs"]).ToList();
        int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length))];
        foreach (string[] row in rows)
            writer.WriteLine(string.Join("  ", row.Select((cell, c) => c is (>= 4 and <= 7) or 10 ? cell.PadLeft(widths[c]) : cell.PadRight(widths[c]))).TrimEnd());
        foreach (IGrouping<string, Part> material in set.Parts.GroupBy(p => p.Material))
            writer.WriteLine($"{material.Key}: {WeightWords.Of(Weights.Of(set, material), set.Piece.Unit)}");
        if (set.Parts.Length > 0) writer.WriteLine(WeightWords.Whole(set));
    }
}

/// <summary><c>setout doctor</c>: what the program stands on.</summary>
internal sealed class DoctorCommand : Command<DoctorCommand.Settings>
{
    /// <summary>It takes nothing.</summary>
    internal sealed class Settings : CommandSettings;

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        terminal.Out.WriteLine(SetoutProgram.Version);
        terminal.Out.WriteLine($"runtime: {System.Runtime.InteropServices.RuntimeInformation.FrameworkDescription} on {System.Runtime.InteropServices.RuntimeInformation.OSDescription}");
        terminal.Out.WriteLine($"program: {AppContext.BaseDirectory}");
        terminal.Out.WriteLine($"fonts: {string.Join(", ", Enum.GetValues<Drawing.Scenes.Face>().Select(f => $"{Drawing.Scenes.Typeface.FileName(f)} ({Drawing.Scenes.Typeface.File(f).Length / 1024} KB, inside the program)"))}");
        terminal.Out.WriteLine($"samples: {Workbench.SampleFolder.Find() ?? "not found"}");
        terminal.Out.WriteLine($"data: {Store.DataPlace.Find(null)}");
        terminal.Out.WriteLine("network: none is used; the workbench listens on this machine only");
        return ExitCode.Fine;
    }
}
