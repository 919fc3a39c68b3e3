using System.Collections.Immutable;
using System.ComponentModel;
using Setout.Core.Fit;
using Setout.Core.Fit.Mending;
using Setout.Core.SettingOut;
using Setout.Files;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout fit FILE</c>: what will fit, before it is cut.</summary>
internal sealed class FitCommand : Command<FitCommand.Settings>
{
    // More gaps than a person reads at once; --all shows the rest.
    private const int Shown = 16;

    /// <summary>What it takes.</summary>
    internal sealed class Settings : JsonSettings
    {
        /// <summary>List every gap.</summary>
        [CommandOption("--all")]
        [Description("List every gap, not only those least likely to fit.")]
        public bool All { get; set; }

        /// <summary>The seed.</summary>
        [CommandOption("--seed <N>")]
        [Description("Seed of the draws for several gaps together (default 1).")]
        [DefaultValue(FitCheck.UsualSeed)]
        public int Seed { get; set; } = FitCheck.UsualSeed;
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files, settings.Json) is not { } source) return ExitCode.Findings;
        SetPiece set = source.SetOut();
        FitReport report = FitCheck.Of(set, source.Shop.Accuracy, settings.Seed, cancellationToken);
        if (settings.Json) Told.Json(terminal, FitJson.Write(set, report));
        else
        {
            foreach (string line in FitLines.Of(set, report, settings.All ? int.MaxValue : Shown)) terminal.Out.WriteLine(line);
            (ImmutableArray<Upset> open, ImmutableArray<(Upset Upset, string Because)> stand) = LettingStand.Of(Remedies.UpsetsOf(set), source.Log);
            if (open.Length > 0)
                foreach (string line in MendingLines.Of(Remedies.For(set, source.Shop.Shims, Blanks.Of(set, source.ShopInHand), u => open.Any(o => o.Words == u.Words), settings.All ? int.MaxValue : Shown))) terminal.Out.WriteLine(line);
            foreach ((Upset upset, string because) in stand) terminal.Out.WriteLine($"  let stand: {upset.Words} Because: {because}");
        }
        return ExitCode.Fine;
    }
}
