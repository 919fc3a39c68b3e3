using System.Net;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>The page of several pieces broken down together.</summary>
public sealed class TogetherTests
{
    private const string Both = "?piece=luthiers-bench&piece=jar-cabinet";

    private static async Task<string> ReadyAsync(KeptShop shop)
    {
        // Laid out already, they are on the page at once.
        foreach (string piece in new[] { "luthiers-bench", "jar-cabinet" }) await shop.Client.GetStringAsync($"/piece/{piece}/break-down");
        string page = "";
        // One looks again as often as it takes.
        while (!page.Contains("saving-title", StringComparison.Ordinal)) page = WebUtility.HtmlDecode(await shop.Client.GetStringAsync("/together" + Both));
        return page;
    }

    [Fact]
    public async Task Notes_ComeAfterTheSaving_AndLeadIntoTheirPieces()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        // Far off what its sheets are: told of the one piece.
        shop.Log("luthiers-bench", new ReadingEntry("r1", "2026-11-27T10:00:00Z", new("L.width"), [ExactLength.FromInches(Rational.Of(20, 1))], "rule", ""));
        string page = await ReadyAsync(shop);
        Assert.InRange(page.IndexOf("class=\"note ", StringComparison.Ordinal), page.IndexOf("saving-title", StringComparison.Ordinal), int.MaxValue);
        string[] notes = [.. Regex.Matches(page, "<div class=\"note [^>]*data-code.*?</div>", RegexOptions.Singleline).Select(m => m.Value)];
        // Each name of a size in them that stands in curly quotes leads to its working, in the piece that is named before it.
        string unread = notes.First(n => n.Contains("material.not-read", StringComparison.Ordinal));
        Assert.Matches("for [^<]*at\\s*<a href=\"/piece/(luthiers-bench|jar-cabinet)[^\"]*thickness[^\"]*\">", unread);
        Assert.Contains(notes, n => n.Contains("href=\"/piece/luthiers-bench", StringComparison.Ordinal) && n.Contains("Luthiers", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task Sheets_NameTheRevisionOfEachPiece()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Change("luthiers-bench", t => t + "\n");
        await ReadyAsync(shop);
        using var read = UglyToad.PdfPig.PdfDocument.Open(await shop.Client.GetByteArrayAsync("/together/bench-sheets.pdf" + Both));
        string foot = Regex.Replace(read.GetPage(1).Text, " ", "");
        Assert.Matches("madefromrevision2ofLuthiers'bench,1ofJarcabinet,astheystoodat[0-9]{1,2}[A-Z][a-z]+20", foot);
        Assert.Contains("ruleset", foot, StringComparison.Ordinal);
    }
}
