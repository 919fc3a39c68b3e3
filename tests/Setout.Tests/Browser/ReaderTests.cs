using System.Net;
using System.Text.RegularExpressions;
using Setout.Core.Measures.Text;
using Setout.Shop.Texts;
using UglyToad.PdfPig;

namespace Setout.Tests.Browser;

/// <summary>Whoever reads a page, or a sheet printed from one, is sent to a page and told no command.</summary>
public sealed partial class ReaderTests(Room room)
{
    [GeneratedRegex(@"\bsetout (allow|check|fit|mark|parts|plan|record|void|why)\b[^<]{0,60}|\bFILE\b[^<]{0,40}|[(]saws: [^<]{0,40}")]
    private static partial Regex Command();

    private static string Text(byte[] pdf)
    {
        using var read = PdfDocument.Open(pdf);
        return string.Join(" ", read.GetPages().Select(p => string.Join(" ", p.GetWords().Select(w => w.Text))));
    }

    [Fact]
    public async Task Pages_OfAllSamples_TellNoCommand()
    {
        using HttpClient client = new() { BaseAddress = new(room.Address) };
        // As a browser asks: what waits for layouts says so and does not keep the others.
        client.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        foreach (string page in EveryPageTests.Pages.Select(p => p.Data).Where(p => !p.EndsWith("/text", StringComparison.Ordinal)))
        {
            using HttpResponseMessage answer = await client.GetAsync(page);
            string[] told = [.. Command().Matches(WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync())).Select(m => m.Value)];
            Assert.True(told.Length == 0, $"{page} tells: {string.Join("; ", told)}");
        }
    }

    [Fact]
    public async Task SizesThatRunsAskToRead_LeadToWhereTheyAreRead()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string page = WebUtility.HtmlDecode(await shop.Client.GetStringAsync("/piece/luthiers-bench/break-down"));
        Assert.Matches("enter them at\\s*<a href=\"/piece/luthiers-bench\\?size=carcase.thickness#working\">“carcase, thickness”</a>", page[page.IndexOf("id=\"runs\"", StringComparison.Ordinal)..]);
    }

    [Fact]
    public async Task Remedies_OnPages_LeadToTheSizeAndToTheKeyTheyName()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string page = WebUtility.HtmlDecode(await shop.Client.GetStringAsync("/piece/jar-cabinet"));
        Assert.Matches("and enter it at\\s*<a href=\"/piece/jar-cabinet\\?size=birch.thickness#working\">“birch, thickness”</a>", page);
        Assert.Matches("enter it at\\s*<a href=\"/piece/jar-cabinet\\?size=B2.width#working\">“opening B2, clear width”</a>", WebUtility.HtmlDecode(await shop.Client.GetStringAsync("/piece/jar-cabinet/assemble")));
        shop.Change("jar-cabinet", t => t.Replace("unit: in", "unit: in\ngrid: 1/4", StringComparison.Ordinal));
        Assert.Matches("Set\\s*<a href=\"/piece/jar-cabinet/says[^\"]*\">“grid”</a>\\s*to ", WebUtility.HtmlDecode(await shop.Client.GetStringAsync("/piece/jar-cabinet")));
    }

    [Fact]
    public async Task Sheets_PrintedFromAPage_SayWhereOnTheWorkbenchAndThoseOfTheCommandSayTheCommand()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string printed = Text(await shop.Client.GetByteArrayAsync("/piece/jar-cabinet/bench-sheets.pdf"));
        Assert.DoesNotContain("setout ", printed, StringComparison.Ordinal);
        foreach (string said in new[] { "“birch, thickness”", "“This run is cut”, under “Break down”", "the stage “Fit” has a field for each", "“drawer G1, box width as built”" }) Assert.Contains(said, printed, StringComparison.Ordinal);
        using var folder = new TestFolder().WithSamples();
        var terminal = new TestTerminal();
        await terminal.RunAsync(["plan", folder.Of("jar-cabinet.yaml"), "--out", folder.Of("plan")]);
        string written = Text(await File.ReadAllBytesAsync(folder.Of("plan", "bench-sheets.pdf")));
        foreach (string said in new[] { "setout record FILE birch.thickness READING", "setout record FILE KEY READING", "setout mark FILE cut --run N" }) Assert.Contains(said, written, StringComparison.Ordinal);
        Assert.DoesNotContain("workbench", written, StringComparison.Ordinal);
    }

    /// <summary>What is let stand on a page is let stand at the terminal too: a finding says the same to both.</summary>
    [Fact]
    public async Task Finding_LetStandOnAPage_StandsForTheCommandLineToo()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Log("jar-cabinet", new ReadingEntry("r1", "2026-11-27T10:00:00Z", new("birch.thickness"), [LengthText.Parse("11/16", LengthUnit.Inch).Value, LengthText.Parse("3/4", LengthUnit.Inch).Value], "calliper", ""));
        using var form = new FormUrlEncodedContent([new("change", "a1"), new("revision", "1"), new("back", "/piece/jar-cabinet"), new("code", "reading.outlier"), new("on", "birch"), new("because", "two lots")]);
        using HttpResponseMessage answer = await shop.Client.PostAsync("/piece/jar-cabinet/allow", form);
        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, await answer.Content.ReadAsStringAsync());
        var terminal = new TestTerminal();
        await terminal.RunAsync(["check", "@jar-cabinet", "--data", shop.Place]);
        Assert.Contains("two lots", terminal.Out, StringComparison.Ordinal);
    }
}
