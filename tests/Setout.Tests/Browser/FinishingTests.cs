using System.Net;
using Microsoft.Playwright;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>The stage of finishing: said, reckoned, marked; with the keyboard alone, and without a script.</summary>
public sealed class FinishingTests(Room room)
{
    private const string Bench = "/piece/luthiers-bench";

    private static async Task<HttpStatusCode> PostAsync(KeptShop shop, string change, params (string Name, string Value)[] fields)
    {
        using var form = new FormUrlEncodedContent([.. new[] { ("change", change), ("revision", "1"), ("back", Bench) }.Concat(fields).Select(f => KeyValuePair.Create(f.Item1, f.Item2))]);
        using HttpResponseMessage answer = await shop.Client.PostAsync($"{Bench}/mark", form);
        return answer.StatusCode;
    }

    private async Task<Sheet> At(KeptShop shop, string path, bool hasScript = true)
    {
        Sheet sheet = await room.OpenAsync(1024, hasScript: hasScript, address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    private static async Task SayAsync(IPage page, string covers)
    {
        await page.Locator("details[data-choice^='say.finishes'] > summary").PressAsync("Enter");
        await page.Locator("details[data-choice^='say.finishes'] .more-fields > summary").PressAsync("Enter");
        await page.GetByLabel("Its name").FillAsync("varnish");
        await page.GetByLabel("Finish", new() { Exact = true }).FillAsync("clear varnish");
        await page.GetByLabel("Coats").FillAsync("3");
        if (covers.Length > 0)
        {
            await page.GetByLabel("Covers").FillAsync(covers);
            await page.GetByLabel("Can", new() { Exact = true }).FillAsync("1 quart");
        }
        await page.GetByLabel("Coats").PressAsync("Enter");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Finish_SaidWhereThereIsNone_TellsAreaAndCans_AndStandsOnTheBuyingList(bool hasScript)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, Bench + "/finish", hasScript);
        IPage page = sheet.Page;
        await Assertions.Expect(page.Locator("#main")).ToContainTextAsync("Nobody has said yet what this piece is finished with");
        await Assertions.Expect(page.Locator(".cautions")).ToContainTextAsync("warm up by themselves");
        await Assertions.Expect(page.Locator(".cautions")).ToContainTextAsync("Local codes and licensed practice take precedence");
        await SayAsync(page, "125 sq ft per quart");
        // 222.697 sq ft three times is 668.09; at 125 to a quart 5.35: six.
        await Assertions.Expect(page.Locator("#main")).ToContainTextAsync("222.7 sq ft x 3 coats = 668.09 sq ft; 125 sq ft per quart and coat by its label: 5.35 quarts, which is 6 cans of 1 quart.");
        await Assertions.Expect(page.Locator("#stand-title")).ToContainTextAsync("held until it is cut or built");
        Assert.Contains("varnish: {finish: clear varnish, coats: 3, covers: 125 sq ft per quart, can: 1 quart}", shop.Text("luthiers-bench"), StringComparison.Ordinal);
        // Whoever does not ask for a page by that name gets the whole list, once the layouts are there.
        Assert.Contains("clear varnish, can of 1 quart", await shop.Client.GetStringAsync(new Uri(Bench + "/buy", UriKind.Relative)), StringComparison.Ordinal);
        Assert.Empty(sheet.Complaints);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Finish_OnEverything_IsToldAtItsField_ThenMade_TheFormFolds_AndItIsUndoneHere(bool hasScript)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, Bench + "/finish", hasScript);
        IPage page = sheet.Page;
        ILocator form = page.Locator("details[data-choice^='say.finishes']"), on = form.GetByLabel("On", new() { Exact = true });
        await form.Locator("> summary").PressAsync("Enter");
        // Its name is asked of nobody.
        await Assertions.Expect(page.GetByLabel("Its name")).ToBeHiddenAsync();
        await page.GetByLabel("Finish", new() { Exact = true }).FillAsync("hard oil");
        await page.GetByLabel("Coats").FillAsync("2");
        await on.FillAsync("everything");
        await on.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#main")).ToContainTextAsync("No part or material is 'everything'.");
        if (hasScript)
        {
            await Assertions.Expect(on).ToHaveAttributeAsync("aria-invalid", "true");
            await on.FillAsync("");
            await on.PressAsync("Enter");
        }
        else
        {
            await page.GotoAsync(Bench + "/finish");
            await form.Locator("> summary").PressAsync("Enter");
            await page.GetByLabel("Finish", new() { Exact = true }).FillAsync("hard oil");
            await page.GetByLabel("Coats").FillAsync("2");
            await page.GetByLabel("Coats").PressAsync("Enter");
        }
        await Assertions.Expect(page.Locator("#finish-hard-oil")).ToContainTextAsync("Hard oil, 2 coats");
        await Assertions.Expect(form).Not.ToHaveAttributeAsync("open", "");
        if (hasScript) await Assertions.Expect(page.Locator("#finish-hard-oil")).ToBeFocusedAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Undo the edit: finish hard-oil") }).ClickAsync();
        await Assertions.Expect(page.Locator("#main")).ToContainTextAsync("Nobody has said yet what this piece is finished with");
        Assert.EndsWith("/finish", new Uri(page.Url).AbsolutePath, StringComparison.Ordinal);
        Assert.DoesNotContain("hard oil", shop.Text("luthiers-bench"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Coverage_NotSaid_IsAskedRightThere()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, Bench + "/finish");
        IPage page = sheet.Page;
        await SayAsync(page, "");
        await Assertions.Expect(page.Locator("#main")).ToContainTextAsync("read it on the can");
        // Each field says once what it wants.
        string[] said = [.. await page.Locator(".finish-ask p.small:not(.fault)").AllInnerTextsAsync()];
        Assert.NotEmpty(said);
        Assert.Equal(said.Distinct(), said);
        await page.GetByLabel("Covers").First.FillAsync("10 to 12 m2 per l");
        await page.GetByLabel("Covers").First.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".finish-ask .fault").First).ToContainTextAsync("range");
        await page.GetByLabel("Covers").First.FillAsync("10 m2 per l");
        await page.GetByLabel("Covers").First.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#main")).ToContainTextAsync("10 m² per l and coat by its label");
    }

    [Fact]
    public async Task Parts_MarkedFinished_AreSettled_AndAVoidingTakesThatBack()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Change("luthiers-bench", t => t + "\nfinishes:\n  oil: {finish: hard oil, coats: 1, covers: 100 sq ft per quart, on: L1}\n");
        Assert.Equal(HttpStatusCode.Redirect, await PostAsync(shop, "m1", ("progress", "cut"), ("what", "L1.side L1.end")));
        await using Sheet sheet = await At(shop, Bench + "/finish");
        IPage page = sheet.Page;
        await Assertions.Expect(page.Locator("#stand-title")).ToHaveTextAsync("0 of 6 finished, 4 due, 2 held until it is cut or built");
        await page.Locator("#stand summary").First.PressAsync("Enter");
        await page.Locator("#stand details details > summary").First.PressAsync("Enter");
        await page.Locator("#stand .note-form button").First.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#stand-title")).ToHaveTextAsync("4 of 6 finished, 2 held until it is cut or built");
        await Assertions.Expect(page.Locator(".stage[aria-current='page']")).ToContainTextAsync("2 held");
        await Assertions.Expect(page.Locator(".finish-parts")).ToContainTextAsync(["finished; before step", ""]);
        var mark = (MarkEntry)shop.Database.FactsOf(shop.Database.Find("luthiers-bench")!.Id).Read().Entries[^1];
        Assert.Equal((Progress.Finished, "L1.side L1.end", 0), (mark.Progress, string.Join(' ', mark.Keys), mark.Figures.Count));
        await page.GotoAsync(Bench + "?size=L1.side");
        await Assertions.Expect(page.Locator(".bench-notes")).ToContainTextAsync("finished");
        await page.GotoAsync(Bench + "/facts");
        await page.Locator(".fact-lines button").First.ClickAsync();
        await Assertions.Expect(page.Locator("#main")).ToContainTextAsync("taken back: finished");
        await page.GotoAsync(Bench + "/finish");
        await Assertions.Expect(page.Locator("#stand-title")).ToContainTextAsync("4 due");
        Assert.Empty(sheet.Complaints);
    }
}
