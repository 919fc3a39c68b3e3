using System.ComponentModel;
using Setout.Core.Workings;
using Setout.Store;
using Setout.Workbench;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout serve</c>, and <c>setout</c> alone: the workbench.</summary>
internal sealed class ServeCommand : AsyncCommand<ServeCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : CommandSettings
    {
        /// <summary>The port.</summary>
        [CommandOption("-p|--port <PORT>")]
        [Description("The port on this machine; 0 for any free one.")]
        [DefaultValue(5280)]
        public int Port { get; set; } = 5280;

        /// <summary>The data folder.</summary>
        [CommandOption("--data <DIR>")]
        [Description("The folder in which the workbench keeps its pieces; without it that of SETOUT_DATA, else the usual place of this system.")]
        public string? Data { get; set; }
    }

    /// <inheritdoc/>
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        if (settings.Port is < 0 or > 65535) throw new UsageException($"There is no port {settings.Port}.", "Use 0 to 65535.");
        using (DataFolder folder = StoreRefusal.Open(settings.Data))
        {
            foreach (Finding warning in folder.Warnings) await terminal.Error.WriteLineAsync($"setout: {warning.Words} {warning.Remedy}");
            await WorkbenchHost.RunAsync(settings.Port, folder, terminal, cancellationToken);
        }
        return ExitCode.Fine;
    }
}
