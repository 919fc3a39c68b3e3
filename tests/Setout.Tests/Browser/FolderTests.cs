using Microsoft.AspNetCore.Builder;
using Setout.Shop.Plans;
using Setout.Workbench;
using Setout.Workbench.Shelf;

namespace Setout.Tests.Browser;

public sealed class FolderTests
{
    [Fact]
    public async Task Shelf_WithAFileThatCannotBeRead_ShowsItWithItsPlace()
    {
        using TestFolder folder = new TestFolder().WithSamples();
        folder.Write("broken.yaml", "setout: 1\nname: Broken\nunit: in\nmateriels:\n  ply: {panel: mdf, label: 3/4}\n");
        File.WriteAllBytes(folder.Of("bytes.yaml"), [0xFF, 0xFE, 0x00, 0xC0]);
        await using Served served = await Served.At(folder.Path);
        string page = await served.Client.GetStringAsync("/");
        Assert.Contains("broken.yaml:4:1", page, StringComparison.Ordinal);
        Assert.Contains("materials", page, StringComparison.Ordinal);
        Assert.Contains("UTF-8", page, StringComparison.Ordinal);
        Assert.Contains("Jar cabinet", page, StringComparison.Ordinal);
        Assert.Contains("broken.yaml:4:1", await served.Client.GetStringAsync("/piece/broken"), StringComparison.Ordinal);
        Assert.Contains("broken.yaml:4:1", await served.Client.GetStringAsync("/piece/broken/buy"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_AfterTheFileChanged_ShowsTheNewSizes()
    {
        using TestFolder folder = new TestFolder().WithSamples();
        await using Served served = await Served.At(folder.Path);
        Assert.Contains("cabinet, outside width, 38", Plain(await served.Client.GetStringAsync("/piece/jar-cabinet")), StringComparison.Ordinal);
        await served.Client.GetStringAsync("/piece/jar-cabinet/buy");
        folder.Write("jar-cabinet.yaml", File.ReadAllText(folder.Of("jar-cabinet.yaml")).Replace("width: 38", "width: 39", StringComparison.Ordinal));
        Assert.Contains("cabinet, outside width, 39", Plain(await served.Client.GetStringAsync("/piece/jar-cabinet")), StringComparison.Ordinal);
        Assert.Contains("Hardwood plywood", await served.Client.GetStringAsync("/piece/jar-cabinet/buy"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_AfterAReading_ShowsItInRedPencil()
    {
        using TestFolder folder = new TestFolder().WithSamples();
        await using Served served = await Served.At(folder.Path);
        Assert.Equal(0, await new TestTerminal().RunAsync("record", folder.Of("luthiers-bench.yaml"), "L.width", "19", "15/32", "--with", "tape"));
        string page = await served.Client.GetStringAsync("/piece/luthiers-bench?size=L.width");
        Assert.Contains("is-red reading", page, StringComparison.Ordinal);
        Assert.Contains("under", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fit_AfterAReading_IsWorkedOutAnew()
    {
        using TestFolder folder = new TestFolder().WithSamples();
        await using Served served = await Served.At(folder.Path);
        string before = await served.Client.GetStringAsync("/piece/luthiers-bench/fit");
        Assert.Equal(before, await served.Client.GetStringAsync("/piece/luthiers-bench/fit"));
        Assert.Contains("<code class=\"soft\">boxes.thickness</code>", before, StringComparison.Ordinal);
        Assert.Equal(0, await new TestTerminal().RunAsync("record", folder.Of("luthiers-bench.yaml"), "boxes.thickness", "0.470in", "--with", "calliper"));
        string after = await served.Client.GetStringAsync("/piece/luthiers-bench/fit");
        Assert.DoesNotContain("<code class=\"soft\">boxes.thickness</code>", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fit_OfAStoppedPiece_SaysWhatStopsIt()
    {
        using TestFolder folder = new TestFolder().WithSamples();
        folder.Write("jar-cabinet.yaml", File.ReadAllText(folder.Of("jar-cabinet.yaml")).Replace("width: 38", "width: 3", StringComparison.Ordinal));
        await using Served served = await Served.At(folder.Path);
        string page = await served.Client.GetStringAsync("/piece/jar-cabinet/fit");
        Assert.Contains("Stop: ", page, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"gaps\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shelf_OfAnEmptyFolder_SaysHowToBegin()
    {
        using var folder = new TestFolder();
        await using Served served = await Served.At(folder.Path);
        string page = await served.Client.GetStringAsync("/");
        Assert.Contains("The shelf is empty", page, StringComparison.Ordinal);
        Assert.Contains(folder.Path, page, StringComparison.Ordinal);
    }

    [Fact]
    public void Example_OnTheEmptyShelf_IsAPieceThatCanBeSetOut()
    {
        (PieceSource? source, var findings) = PieceSource.Read(ShelfView.Example, null, null);
        Assert.Empty(findings);
        Assert.False(source!.SetOut().IsStopped);
        Assert.NotEmpty(source.SetOut().Parts);
    }

    [Fact]
    public async Task BenchSheets_OfAStoppedPlan_AreRefusedAndTheNotesSayWhy()
    {
        using TestFolder folder = new TestFolder().WithSamples();
        folder.Write("jar-cabinet.yaml", File.ReadAllText(folder.Of("jar-cabinet.yaml")).Replace("width: 38", "width: 380", StringComparison.Ordinal));
        await using Served served = await Served.At(folder.Path);
        using HttpResponseMessage answer = await served.Client.GetAsync("/piece/jar-cabinet/bench-sheets.pdf");
        Assert.Equal(System.Net.HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("part.too-long", await served.Client.GetStringAsync("/piece/jar-cabinet/break-down"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task BreakDown_ListsEveryRun()
    {
        using TestFolder folder = new TestFolder().WithSamples();
        await using Served served = await Served.At(folder.Path);
        string page = await served.Client.GetStringAsync("/piece/jar-cabinet/break-down");
        int runs = System.Text.RegularExpressions.Regex.Count(page, "data-run=\"[0-9]+\"");
        Assert.True(runs > 1);
        Assert.Contains($"Run {runs} of {runs}: ", Plain(page), StringComparison.Ordinal);
        Assert.Contains("To the rack", Plain(page), StringComparison.Ordinal);
    }

    private static string Plain(string html) => System.Text.RegularExpressions.Regex.Replace(html, "<[^>]+>", "");

    /// <summary>A workbench of its own.</summary>
    private sealed class Served(WebApplication app) : IAsyncDisposable
    {
        public HttpClient Client { get; } = new() { BaseAddress = new(WorkbenchHost.AddressOf(app)) };

        public static async Task<Served> At(string folder) => new(await WorkbenchHost.StartAsync(0, folder, new TestTerminal().Terminal, default));

        public async ValueTask DisposeAsync()
        {
            Client.Dispose();
            await app.DisposeAsync();
        }
    }
}
