using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Setout.Commands;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Store;
using Setout.Workbench.Assembling;
using Setout.Workbench.Beginning;
using Setout.Workbench.BenchSheets;
using Setout.Workbench.Breakdown;
using Setout.Workbench.Buying;
using Setout.Workbench.Changing;
using Setout.Workbench.Finishing;
using Setout.Workbench.Fitting;
using Setout.Workbench.Keeping;
using Setout.Workbench.Machining;
using Setout.Workbench.Noting;
using Setout.Workbench.Pieces;
using Setout.Workbench.PieceTexts;
using Setout.Workbench.Says;
using Setout.Workbench.SetOut;
using Setout.Workbench.Shelf;
using Setout.Workbench.ShopPages;
using Setout.Workbench.Shell;
using Setout.Workbench.States;
using Setout.Workbench.Together;
using Setout.Workbench.Viewing;

namespace Setout.Workbench;

/// <summary>The workbench as a web server on this machine only.</summary>
internal static class WorkbenchHost
{
    /// <summary>Runs it until it is stopped; says its address once it answers.</summary>
    /// <exception cref="UsageException">The port is taken.</exception>
    public static async Task RunAsync(int port, DataFolder data, Terminal terminal, CancellationToken cancel)
    {
        await using WebApplication app = await StartAsync(port, data.Database, data.Path, SampleFolder.Find(), terminal, cancel);
        data.Announce(AddressOf(app));
        await terminal.Out.WriteLineAsync($"Setout workbench: {AddressOf(app)}\nPieces are kept in {data.Path}\nStop it with Ctrl-C. 'setout --help' lists the commands.");
        // From here on stopping is the ordinary end, also when it comes at once.
        await terminal.Out.FlushAsync(CancellationToken.None);
        await app.WaitForShutdownAsync(cancel);
    }

    /// <summary>Starts it.</summary>
    /// <param name="port">0 for any free one.</param>
    /// <param name="store">Where pieces are kept.</param>
    /// <param name="place">Where that is, for people.</param>
    /// <param name="samples">The folder of samples; null for none.</param>
    /// <param name="terminal">Where faults are told.</param>
    /// <param name="cancel">Gives up starting.</param>
    /// <param name="remembered">Plans that are ready already; none by default.</param>
    /// <exception cref="UsageException">The port is taken.</exception>
    internal static async Task<WebApplication> StartAsync(int port, ShopDatabase store, string place, string? samples, Terminal terminal, CancellationToken cancel, RememberedPlans? remembered = null)
    {
        WebApplication app = Build(port, store, place, samples, terminal, remembered ?? new(RememberedPlans.Steps));
        try
        {
            await app.StartAsync(cancel);
            return app;
        }
        catch (IOException taken) when (taken.InnerException is AddressInUseException)
        {
            await app.DisposeAsync();
            throw new UsageException($"Port {port} is taken{PortHolder.Of(port)}.", "Stop that, or let '--port 0' pick a free one.");
        }
        catch
        {
            await app.DisposeAsync();
            throw;
        }
    }

    /// <summary>Where it answers.</summary>
    internal static string AddressOf(WebApplication app) => app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();

    private static WebApplication Build(int port, ShopDatabase store, string place, string? samples, Terminal terminal, RememberedPlans remembered)
    {
        // The content root is named so that a folder without reading rights underfoot cannot stop the start.
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = [], ApplicationName = "setout", ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            if (port == 0) server.Listen(System.Net.IPAddress.Loopback, 0);
            else server.ListenLocalhost(port);
        });
        builder.Services.AddRazorComponents();
        builder.Services.AddSingleton<IDocumentStore>(store);
        builder.Services.AddHttpContextAccessor();
        builder.Services.AddSingleton(all => new KeptPieces(store, place, Hand.Pages, () => Viewer.Of(all.GetRequiredService<IHttpContextAccessor>().HttpContext).Unit));
        builder.Services.AddSingleton(new Samples(samples));
        builder.Services.AddSingleton<ChangeWatch>();
        builder.Services.AddSingleton<PieceChanges>();
        builder.Services.AddSingleton<ChangeMaker>();
        builder.Services.AddSingleton<ShopChanges>();
        builder.Services.AddSingleton<BoughtChanges>();
        builder.Services.AddSingleton<RunDesk>();
        builder.Services.AddSingleton<RunChanges>();
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddSingleton(remembered);
        builder.Services.AddSingleton<PlanDesk>();
        builder.Services.AddSingleton<BenchDesk>();
        builder.Services.AddSingleton<FactChanges>();
        builder.Services.AddSingleton<PieceDoor>();
        builder.Services.AddSingleton<Trials>();
        builder.Services.AddSingleton<Comparing>();
        builder.Services.AddSingleton(new DataKeeping(place, store, TimeProvider.System));
        builder.Services.AddSingleton<ShelfChanges>();
        builder.Services.AddSingleton<Uploads>();

        WebApplication app = builder.Build();
        app.UseSafeHeaders();
        app.UseOwnNamesOnly();
        app.UsePlainFaults(terminal);
        app.UseOwnPostsOnly();
        app.UseStand();
        app.MapShelf();
        app.MapSetOut();
        app.MapLive();
        app.MapBuying();
        app.MapBreakdown();
        app.MapAssembling();
        app.MapFitting();
        app.MapNoting();
        app.MapMachining();
        app.MapFinishing();
        app.MapBenchSheets();
        app.MapText();
        app.MapSays();
        app.MapChanges();
        app.MapBeginning();
        app.MapShop();
        app.MapShelfChanges();
        app.MapStates();
        app.MapKeeping();
        app.MapRestoring();
        app.MapImporting();
        app.MapTogether();
        app.MapViewing();
        app.MapAssets();
        app.MapFallback("{**path}", (HttpContext http) => Pages.Show<UnknownPage>(UnknownView.Page(http.Request.Path), StatusCodes.Status404NotFound));
        return app;
    }
}
