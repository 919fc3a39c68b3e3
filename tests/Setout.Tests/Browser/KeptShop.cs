using Microsoft.AspNetCore.Builder;
using Setout.Shop.Documents;
using Setout.Shop.Texts;
using Setout.Store;
using Setout.Workbench;
using Setout.Workbench.Pieces;

namespace Setout.Tests.Browser;

/// <summary>A workbench of its own, with a store of its own in a folder that goes with it.</summary>
internal sealed class KeptShop : IAsyncDisposable
{
    // Layouts of the same texts are the same in every shop: most tests are not about their coming, and need not work them out once more. Those of a test are few, and of the samples there are not many.
    private static readonly RememberedPlans s_laidOut = new(40);

    private readonly TestFolder _folder = new();
    private readonly RememberedPlans? _remembered;
    private WebApplication? _app;
    private int _changes;

    private KeptShop(RememberedPlans? remembered)
    {
        _remembered = remembered;
        Database = ShopDatabase.Open(_folder.Of("setout.db"), TimeProvider.System);
    }

    public ShopDatabase Database { get; }

    public string Place => _folder.Path;

    public TestTerminal Terminal { get; } = new();

    public string Address => WorkbenchHost.AddressOf(_app!);

    public HttpClient Client { get; private set; } = new();

    /// <summary>With the samples and their shop in it, or empty.</summary>
    /// <param name="hasSamples">False for an empty one; its layouts are worked out here.</param>
    /// <param name="isLaidOut">False where layouts are worked out here, also those that another test asked for.</param>
    public static async Task<KeptShop> OpenAsync(bool hasSamples = true, bool isLaidOut = true)
    {
        var shop = new KeptShop(hasSamples && isLaidOut ? s_laidOut : null);
        if (hasSamples)
        {
            foreach (string file in Directory.EnumerateFiles(Samples.Folder, "*.yaml").Order(StringComparer.Ordinal))
                shop.Keep(Path.GetFileNameWithoutExtension(file), File.ReadAllText(file));
        }
        await shop.StartAsync();
        return shop;
    }

    /// <summary>Puts a new document into the store.</summary>
    public void Keep(string name, string text) =>
        Taken(new NewDocument(name == DocumentName.Shop ? DocumentKind.Shop : DocumentKind.Piece, name, text, "new"));

    /// <summary>Changes the text of a piece as another window would.</summary>
    public void Change(string name, Func<string, string> edit)
    {
        Document there = Database.Find(name)!;
        Taken(new EditText(there.Id, there.Revision, "changed elsewhere", edit(there.Text)));
    }

    /// <summary>The same at this very moment, for what depends on which came first.</summary>
    public void ChangeNow(string name, Func<string, string> edit)
    {
        Document there = Database.Find(name)!;
        Assert.IsType<ChangeTaken>(Database.Make(Setout.Shop.Documents.Change.Of($"t{++_changes}", TimeProvider.System.GetUtcNow().ToString("yyyy-MM-ddTHH:mm:ss.fffZ", System.Globalization.CultureInfo.InvariantCulture),
            new EditText(there.Id, there.Revision, "changed elsewhere", edit(there.Text)))));
    }

    public string Text(string name) => Database.Find(name)!.Text;

    /// <summary>Appends an entry to the log of a piece.</summary>
    public void Log(string piece, LogEntry entry) => Database.FactsOf(Database.Find(piece)!.Id).Append(entry);

    /// <summary>Stops the program and starts it again on the same store and port.</summary>
    public async Task RestartAsync()
    {
        int port = new Uri(Address).Port;
        await _app!.DisposeAsync();
        Client.Dispose();
        await StartAsync(port);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        if (_app is not null) await _app.DisposeAsync();
        Database.Dispose();
        _folder.Dispose();
    }

    private async Task StartAsync(int port = 0)
    {
        _app = await WorkbenchHost.StartAsync(port, Database, Place, Samples.Folder, Terminal.Terminal, default, _remembered);
        Client = new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new(Address) };
        Client.DefaultRequestHeaders.Add("Origin", Address);
    }

    private void Taken(DocumentChange change) => Assert.IsType<ChangeTaken>(Database.Make(Setout.Shop.Documents.Change.Of($"t{++_changes}", "2026-11-27T10:00:00Z", change)));
}
