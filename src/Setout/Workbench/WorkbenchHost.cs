using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Setout.Commands;

namespace Setout.Workbench;

/// <summary>The workbench as a web server on this machine only.</summary>
internal static class WorkbenchHost
{
    /// <summary>Runs it until it is cancelled; says its address once it answers.</summary>
    public static async Task RunAsync(int port, string? pieces, Terminal terminal, CancellationToken cancel)
    {
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = [], ApplicationName = "setout" });
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(server => server.ListenLocalhost(port));
        await using WebApplication app = builder.Build();
        app.MapGet("/", () => "Setout");
        await app.StartAsync(cancel);
        string address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        await terminal.Out.WriteLineAsync($"Setout workbench: {address}  (pieces: {pieces ?? "none"})\nStop it with Ctrl-C. 'setout --help' lists the commands.");
        await app.WaitForShutdownAsync(cancel);
    }
}
