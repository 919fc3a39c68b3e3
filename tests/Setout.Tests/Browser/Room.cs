using Microsoft.Playwright;
using Setout.Tests.Browser;

[assembly: AssemblyFixture(typeof(Room))]

namespace Setout.Tests.Browser;

/// <summary>The workbench with the samples on a free port, and one browser, for all tests.</summary>
public sealed class Room : IAsyncLifetime
{
    // The browser is Debian's, most often without the windows around its pages: those take longer to open than the pages. It asks nothing of the network by itself.
    private static readonly string[] s_arguments =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private KeptShop? _shop;
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private Lazy<Task<IBrowser>>? _windowed;

    /// <summary>Where the workbench answers, without a slash at the end.</summary>
    public string Address { get; private set; } = "";

    /// <summary>What the workbench told of faults.</summary>
    public string Faults => _shop!.Terminal.Error;

    /// <summary>Where its pieces are kept.</summary>
    public string Place => _shop!.Place;

    public async ValueTask InitializeAsync()
    {
        // What is expected comes when it comes: a machine that has much else to do is no fault of the pages.
        Assertions.SetDefaultExpectTimeout(30_000);
        _shop = await KeptShop.OpenAsync();
        Address = _shop.Address;
        _playwright = await Playwright.CreateAsync();
        _browser = await LaunchAsync("/usr/bin/chromium-headless-shell");
        _windowed = new(() => LaunchAsync("/usr/bin/chromium"));
    }

    private Task<IBrowser> LaunchAsync(string program) => _playwright!.Chromium.LaunchAsync(new() { ExecutablePath = program, Args = s_arguments });

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        if (_windowed is { IsValueCreated: true }) await (await _windowed.Value).DisposeAsync();
        _playwright?.Dispose();
        if (_shop is not null) await _shop.DisposeAsync();
    }

    /// <summary>A window of its own.</summary>
    /// <param name="width">How wide it is, in pixels.</param>
    /// <param name="scheme">The theme that is asked for.</param>
    /// <param name="hasScript">False for a browser that runs no script.</param>
    /// <param name="address">Of the workbench; that of this room by default.</param>
    /// <param name="hasTouch">True for a screen that is touched.</param>
    /// <param name="isWindowed">True for the browser as people have it, with all that is around its pages.</param>
    internal async Task<Sheet> OpenAsync(int width = 1440, ColorScheme scheme = ColorScheme.Light, bool hasScript = true, string? address = null, bool hasTouch = false, bool isWindowed = false)
    {
        IBrowserContext context = await (isWindowed ? await _windowed!.Value : _browser!).NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = width < 600 ? 844 : 900 },
            ColorScheme = scheme,
            JavaScriptEnabled = hasScript,
            BaseURL = address ?? Address,
            ReducedMotion = ReducedMotion.Reduce,
            HasTouch = hasTouch,
            IsMobile = hasTouch,
        });
        return new(context, await context.NewPageAsync(), address ?? Address);
    }
}

/// <summary>A page with what it said and asked for.</summary>
internal sealed class Sheet : IAsyncDisposable
{
    private readonly IBrowserContext _context;

    public Sheet(IBrowserContext context, IPage page, string address)
    {
        _context = context;
        Page = page;
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning") Complaints.Add(message.Text);
        };
        page.PageError += (_, error) => Complaints.Add(error);
        context.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(address + "/", StringComparison.Ordinal)) Foreign.Add(request.Url);
        };
    }

    public IPage Page { get; }

    public List<string> Complaints { get; } = [];

    public List<string> Foreign { get; } = [];

    public ValueTask DisposeAsync() => _context.DisposeAsync();
}
