using Setout.Core.Measures.Text;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

public sealed class KeptTests
{
    [Fact]
    public async Task Shelf_WithAFileThatCannotBeRead_ShowsItWithItsPlace()
    {
        await using KeptShop served = await KeptShop.OpenAsync();
        served.Keep("broken", "setout: 1\nname: Broken\nunit: in\nmateriels:\n  ply: {panel: mdf, label: 3/4}\n");
        string page = await served.Client.GetStringAsync("/");
        Assert.Contains("href=\"/piece/broken/text?line=4\" data-line>line 4 of the text of broken<", page, StringComparison.Ordinal);
        Assert.Contains("materials", page, StringComparison.Ordinal);
        Assert.Contains("Jar cabinet", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/piece/broken/text?line=4\" data-line>line 4 of the text of broken<", await served.Client.GetStringAsync("/piece/broken"), StringComparison.Ordinal);
        Assert.Contains("href=\"/piece/broken/text?line=4\" data-line>line 4 of the text of broken<", await served.Client.GetStringAsync("/piece/broken/buy"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_AfterTheFileChanged_ShowsTheNewSizes()
    {
        await using KeptShop served = await KeptShop.OpenAsync();
        Assert.Contains("cabinet, outside width, 38", Plain(await served.Client.GetStringAsync("/piece/jar-cabinet")), StringComparison.Ordinal);
        await served.Client.GetStringAsync("/piece/jar-cabinet/buy");
        served.Change("jar-cabinet", t => t.Replace("width: 38", "width: 39", StringComparison.Ordinal));
        Assert.Contains("cabinet, outside width, 39", Plain(await served.Client.GetStringAsync("/piece/jar-cabinet")), StringComparison.Ordinal);
        Assert.Contains("Hardwood plywood", await served.Client.GetStringAsync("/piece/jar-cabinet/buy"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_AfterAReading_ShowsItInRedPencil()
    {
        await using KeptShop served = await KeptShop.OpenAsync();
        served.Log("luthiers-bench", Reading("L.width", "19 15/32", "tape"));
        string page = await served.Client.GetStringAsync("/piece/luthiers-bench?size=L.width");
        Assert.Contains("is-red reading", page, StringComparison.Ordinal);
        Assert.Contains("under", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fit_AfterAReading_IsWorkedOutAnew()
    {
        await using KeptShop served = await KeptShop.OpenAsync();
        string before = await served.Client.GetStringAsync("/piece/luthiers-bench/fit");
        // Each form has an id of its own, and a page says how many layouts were ready when it was asked for.
        static string Alike(string html) => System.Text.RegularExpressions.Regex.Replace(html, "name=\"change\" value=\"[^\"]+\"|data-stand=\"[^\"]+\"", "");
        Assert.Equal(Alike(before), Alike(await served.Client.GetStringAsync("/piece/luthiers-bench/fit")));
        Assert.Contains("<span class=\"unseen\">: boxes, thickness</span>", before, StringComparison.Ordinal);
        served.Log("luthiers-bench", Reading("boxes.thickness", "0.470in", "calliper"));
        string after = await served.Client.GetStringAsync("/piece/luthiers-bench/fit");
        Assert.DoesNotContain("<span class=\"unseen\">: boxes, thickness</span>", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fit_OfAStoppedPiece_SaysWhatStopsIt()
    {
        await using KeptShop served = await KeptShop.OpenAsync();
        served.Change("jar-cabinet", t => t.Replace("width: 38", "width: 3", StringComparison.Ordinal));
        string page = await served.Client.GetStringAsync("/piece/jar-cabinet/fit");
        Assert.Contains("Stop: ", page, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"gaps\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shelf_OfAnEmptyFolder_SaysHowToBegin()
    {
        await using KeptShop served = await KeptShop.OpenAsync(hasSamples: false);
        string page = await served.Client.GetStringAsync("/");
        Assert.Contains("The shelf is empty", page, StringComparison.Ordinal);
        Assert.Contains(served.Place, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task BenchSheets_OfAStoppedPlan_AreRefusedAndTheNotesSayWhy()
    {
        await using KeptShop served = await KeptShop.OpenAsync();
        served.Change("jar-cabinet", t => t.Replace("width: 38", "width: 380", StringComparison.Ordinal));
        using HttpResponseMessage answer = await served.Client.GetAsync("/piece/jar-cabinet/bench-sheets.pdf");
        Assert.Equal(System.Net.HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("part.too-long", await served.Client.GetStringAsync("/piece/jar-cabinet/break-down"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task BreakDown_ListsEveryRun()
    {
        await using KeptShop served = await KeptShop.OpenAsync();
        string page = await served.Client.GetStringAsync("/piece/jar-cabinet/break-down");
        int runs = System.Text.RegularExpressions.Regex.Count(page, "data-run=\"[0-9]+\"");
        Assert.True(runs > 1);
        Assert.Contains($"Run {runs} of {runs}: ", Plain(page), StringComparison.Ordinal);
        Assert.Contains("To the rack", Plain(page), StringComparison.Ordinal);
    }

    private static string Plain(string html) => System.Text.RegularExpressions.Regex.Replace(html, "<[^>]+>", "");

    private static ReadingEntry Reading(string key, string value, string with) =>
        new("r" + value.GetHashCode(StringComparison.Ordinal).ToString("x8"), "2026-11-27T10:00:00Z", new(key), [LengthText.Parse(value, LengthUnit.Inch).Value], with, "");
}
