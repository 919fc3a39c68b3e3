using System.IO.Compression;
using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Setout.Commands;
using Setout.Core.Measures.Text;
using Setout.Drawing.Documents;
using Setout.Files;
using Setout.Shop.Documents;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>The shelf and the history of a piece.</summary>
public sealed class ShelfTests(Room room)
{
    private static FormUrlEncodedContent Form(params (string Name, string Value)[] fields) => new(fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));

    private static async Task<(HttpStatusCode Status, string Location, string Page)> Post(KeptShop shop, string path, params (string, string)[] fields)
    {
        using HttpResponseMessage answer = await shop.Client.PostAsync(path, Form(fields));
        return (answer.StatusCode, answer.Headers.Location?.ToString() ?? "", WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync()));
    }

    [Fact]
    public async Task Piece_RenamedPutAwayAndTakenBack_KeepsFactsAndHistory()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Log("jar-cabinet", new ReadingEntry("r1", "2026-11-27T10:00:00Z", new("birch.thickness"), [LengthText.Parse("23/32", LengthUnit.Inch).Value], "", ""));
        Assert.Equal("/", (await Post(shop, "/piece/jar-cabinet/rename", ("change", "a"), ("revision", "1"), ("back", "/"), ("to", "jar cabinet"))).Location);
        // The answer was lost, and the form is sent again.
        Assert.Equal("/", (await Post(shop, "/piece/jar-cabinet/rename", ("change", "a"), ("revision", "1"), ("back", "/"), ("to", "jar cabinet"))).Location);
        Assert.Null(shop.Database.Find("jar-cabinet"));
        Assert.Single(shop.Database.FactsOf("jar cabinet").Read().Entries);
        Assert.Equal("/", (await Post(shop, "/piece/jar%20cabinet/put-away", ("change", "b"), ("revision", "2"), ("back", "/"))).Location);
        string shelf = await shop.Client.GetStringAsync("/");
        Assert.Contains("Put away: 1", shelf, StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"/piece/jar%20cabinet\"", shelf, StringComparison.Ordinal);
        Assert.Contains("This piece was put away", await shop.Client.GetStringAsync("/piece/jar%20cabinet/history"), StringComparison.Ordinal);
        Assert.Equal("/piece/jar%20cabinet/history", (await Post(shop, "/piece/jar%20cabinet/take-back", ("change", "c"), ("revision", "3"), ("back", "/piece/jar%20cabinet/history"))).Location);
        Assert.Contains("href=\"/piece/jar%20cabinet\"", await shop.Client.GetStringAsync("/"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("shop", HttpStatusCode.UnprocessableEntity)]
    [InlineData("../x", HttpStatusCode.UnprocessableEntity)]
    [InlineData("", HttpStatusCode.UnprocessableEntity)]
    [InlineData("CON", HttpStatusCode.UnprocessableEntity)]
    [InlineData("Plan-Chest", HttpStatusCode.UnprocessableEntity)]
    public async Task Name_ThatCannotBe_IsRefusedWithWhatWasTypedAndChangesNothing(string name, HttpStatusCode wanted)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        foreach (string word in new[] { "rename", "begin-from" })
        {
            (HttpStatusCode status, _, string page) = await Post(shop, $"/piece/jar-cabinet/{word}", ("change", word), ("revision", "1"), ("back", "/"), ("to", name));
            if (word == "begin-from" && name == "Plan-Chest") continue;
            Assert.Equal(wanted, status);
            Assert.Contains("data-fault", page, StringComparison.Ordinal);
            Assert.Contains(name, page, StringComparison.Ordinal);
        }
        Assert.Equal(1, shop.Database.Find("jar-cabinet")!.Revision);
    }

    [Fact]
    public async Task Piece_BegunFromAnother_HasItsSizesAndNoFacts()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Log("jar-cabinet", new ReadingEntry("r1", "2026-11-27T10:00:00Z", new("birch.thickness"), [LengthText.Parse("23/32", LengthUnit.Inch).Value], "", ""));
        Assert.Equal("/piece/second", (await Post(shop, "/piece/jar-cabinet/begin-from", ("change", "a"), ("to", "second"))).Location);
        Assert.Equal(shop.Text("jar-cabinet"), shop.Text("second"));
        Assert.Empty(shop.Database.FactsOf("second").Read().Entries);
    }

    [Fact]
    public async Task History_OfABranch_SaysWhatWasLeftAndGoesBackInOneStep()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string first = shop.Text("jar-cabinet");
        async Task Width(string id, int revision, string width) =>
            Assert.Equal(HttpStatusCode.Redirect, (await Post(shop, "/piece/jar-cabinet/edit", ("change", id), ("revision", $"{revision}"), ("back", "/piece/jar-cabinet"), ("key", "C.width"), ("choice", "width"), ("field-size", width))).Status);
        await Width("a", 1, "40");
        string wide = shop.Text("jar-cabinet");
        await Post(shop, "/piece/jar-cabinet/save-point", ("change", "b"), ("revision", "2"), ("back", "/piece/jar-cabinet"), ("point", "the wide one"));
        await Post(shop, "/piece/jar-cabinet/undo", ("change", "c"), ("revision", "3"), ("back", "/piece/jar-cabinet"));
        string page = WebUtility.HtmlDecode(await shop.Client.GetStringAsync("/piece/jar-cabinet/history"));
        Assert.Contains("undone; redo makes it again", page, StringComparison.Ordinal);
        await Width("d", 4, "36");
        page = WebUtility.HtmlDecode(await shop.Client.GetStringAsync("/piece/jar-cabinet/history"));
        Assert.Contains("undone, then done instead: width of case C: 38 to 36", page, StringComparison.Ordinal);
        Assert.Contains("the wide one", page, StringComparison.Ordinal);
        string state = Regex.Match(page, "history\\?state=([0-9]+)\">width of case C: 38 to 40").Groups[1].Value;
        string shown = WebUtility.HtmlDecode(await shop.Client.GetStringAsync($"/piece/jar-cabinet/history?state={state}"));
        Assert.Contains("Going back to it changes", shown, StringComparison.Ordinal);
        Assert.Contains("Go back to this state", shown, StringComparison.Ordinal);
        Assert.Contains("<svg", shown, StringComparison.Ordinal);
        await Post(shop, "/piece/jar-cabinet/go-back", ("change", "e"), ("revision", "5"), ("back", "/piece/jar-cabinet/history"), ("state", state));
        Assert.Equal(wide, shop.Text("jar-cabinet"));
        await Post(shop, "/piece/jar-cabinet/undo", ("change", "f"), ("revision", "6"), ("back", "/piece/jar-cabinet"));
        Assert.Contains("width: 36", shop.Text("jar-cabinet"), StringComparison.Ordinal);
        (HttpStatusCode none, _, _) = await Post(shop, "/piece/jar-cabinet/go-back", ("change", "g"), ("revision", "7"), ("back", "/piece/jar-cabinet/history"), ("state", "99999"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, none);
        Assert.NotEqual(first, wide);
    }

    [Fact]
    public async Task History_OfATextWithMistakes_IsShownAndLeadsBack()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Change("jar-cabinet", t => t.Replace("unit: in", "unit: ells", StringComparison.Ordinal));
        string page = await shop.Client.GetStringAsync("/piece/jar-cabinet/history");
        string state = Regex.Matches(page, "history\\?state=([0-9]+)")[^1].Groups[1].Value;
        Assert.Contains("Go back to this state", await shop.Client.GetStringAsync($"/piece/jar-cabinet/history?state={state}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shelf_InABrowser_RenamesBesideTheFieldAndKeepsWhatWasTypedWhenRefused()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(390, address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/");
        ILocator card = page.Locator(".shelf > li", new() { HasText = "Jar cabinet" });
        await card.GetByText("Rename, copy, put away").ClickAsync();
        ILocator name = card.GetByLabel("Its name on the shelf and in commands");
        await name.FillAsync("plan-chest");
        await name.PressAsync("Enter");
        await Assertions.Expect(card.Locator(".fault").First).ToContainTextAsync("There is a document 'plan-chest' already");
        await Assertions.Expect(name).ToHaveValueAsync("plan-chest");
        await name.FillAsync("jars");
        await name.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".shelf h2 a[href='/piece/jars']")).ToHaveCountAsync(1);
        Assert.NotNull(shop.Database.Find("jars"));
        Assert.Empty(sheet.Foreign);
    }

    [Fact]
    public async Task Pieces_TickedOnTheShelf_AreBrokenDownTogether()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(hasScript: false, address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/");
        await page.GetByLabel("Break down Jar cabinet with others").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Break down together" }).ClickAsync();
        await Assertions.Expect(page.GetByText("Pieces that are broken down together")).ToBeVisibleAsync();
        await page.GetByLabel("Luthiers' bench").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Break down together" }).ClickAsync();
        // Without a script nothing comes by itself. Three breakdowns are searched, and other tests want the processors too: one looks again as often as it takes.
        ILocator again = page.GetByRole(AriaRole.Link, new() { Name = "look again" }).First, saves = page.GetByRole(AriaRole.Heading, new() { Name = "What it saves" });
        await Assertions.Expect(again.Or(saves).First).ToBeVisibleAsync();
        while (await again.CountAsync() > 0) await again.ClickAsync();
        await Assertions.Expect(saves).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("[data-run]").Nth(1)).ToBeAttachedAsync();
        // What is printed of them is fetched here, and no command is told.
        Assert.DoesNotContain("setout ", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        string sheets = (await page.GetByRole(AriaRole.Link, new() { Name = "Bench sheets of all of them (PDF)" }).GetAttributeAsync("href"))!, all = (await page.GetByRole(AriaRole.Link, new() { Name = "All files of this plan (ZIP)" }).GetAttributeAsync("href"))!;
        foreach (string piece in new[] { "jar-cabinet", "luthiers-bench" }) await Assertions.Expect(page.Locator($"#papers a[href='/piece/{piece}/bench-sheets.pdf']")).ToHaveCountAsync(1);
        byte[] pdf = await shop.Client.GetByteArrayAsync(sheets);
        using var read = UglyToad.PdfPig.PdfDocument.Open(pdf);
        string text = string.Join(" ", read.GetPages().Select(p => p.Text));
        Assert.Contains("JC-", text, StringComparison.Ordinal);
        Assert.Contains("LB-", text, StringComparison.Ordinal);
        // The same files that the command writes, among them the very same sheets.
        using var archive = new ZipArchive(new MemoryStream(await shop.Client.GetByteArrayAsync(all)));
        PieceSource source = PiecesTogether.Of(new[] { "jar-cabinet", "luthiers-bench" }.Select(n => (n + ".yaml", PieceFiles.Of(Samples.File(n), null).Read().Source!))).Source!;
        Assert.Equal(PlanFiles.Of(Planner.Maker.Make(source, LayoutEffort.Usual), "", Paper.Letter).Select(f => f.Path).Order(StringComparer.Ordinal), archive.Entries.Select(e => e.FullName).Order(StringComparer.Ordinal));
        using var zipped = new MemoryStream();
        await archive.GetEntry("bench-sheets.pdf")!.Open().CopyToAsync(zipped);
        Assert.Equal(pdf, zipped.ToArray());
    }
}
