// Over 200 lines: what is read, marked, upset, mended and taken back is one story, told on one piece.
using System.Net;
using Microsoft.Playwright;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>Readings, marks, voidings and remedies on the pages, in a real browser against the real program and store.</summary>
public sealed class NotingTests(Room room)
{
    private const string Piece = "/piece/luthiers-bench";

    private static Log LogOf(KeptShop shop) => shop.Database.FactsOf(shop.Database.Find("luthiers-bench")!.Id).Read();

    private async Task<Sheet> At(KeptShop shop, string path, bool hasScript = true, int width = 1440)
    {
        Sheet sheet = await room.OpenAsync(width, hasScript: hasScript, address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    private static async Task ReadAsync(IPage page, string value, string sheet = "")
    {
        await page.GetByText("Read it", new() { Exact = true }).ClickAsync();
        await page.Locator("#read-value").FillAsync(value);
        if (sheet.Length > 0) await page.Locator("#read-sheet").FillAsync(sheet);
        await page.Locator("#read-value").PressAsync("Enter");
    }

    private static async Task<HttpStatusCode> PostAsync(KeptShop shop, string what, string change, params (string Name, string Value)[] fields)
    {
        using var form = new FormUrlEncodedContent([.. new[] { ("change", change), ("revision", "1"), ("back", Piece) }.Concat(fields).Select(f => KeyValuePair.Create(f.Item1, f.Item2))]);
        using HttpResponseMessage answer = await shop.Client.PostAsync($"{Piece}/{what}", form);
        return answer.StatusCode;
    }

    private static async Task UpsetAsync(KeptShop shop)
    {
        Assert.Equal(HttpStatusCode.Redirect, await PostAsync(shop, "read", "a1", ("key", "L.width"), ("value", "19 9/16")));
        Assert.Equal(HttpStatusCode.Redirect, await PostAsync(shop, "mark", "a2", ("progress", "cut"), ("what", "L1.side L1.end L1.bottom")));
        Assert.Equal(HttpStatusCode.Redirect, await PostAsync(shop, "read", "a3", ("key", "L.width"), ("value", "19 7/16")));
    }

    [Fact]
    public async Task Thickness_ReadOfOneSheet_CountsAndIsTold()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, $"{Piece}?size=boxes.thickness");
        await ReadAsync(sheet.Page, "0.465", "1");
        await Assertions.Expect(sheet.Page.Locator("#moved")).ToContainTextAsync("thickness of sheet 1: 0.465 in");
        await Assertions.Expect(sheet.Page.Locator("#voice")).ToContainTextAsync("No length or width of a part moved");
        Assert.Equal("boxes.sheet-1.thickness", Assert.IsType<ReadingEntry>(Assert.Single(LogOf(shop).Entries)).Key.Text);
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Opening_Read_MovesParts_InBothWindows_AndAfterAReloadAndARestart()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet other = await At(shop, Piece);
        await using Sheet sheet = await At(shop, $"{Piece}?size=L.width");
        await ReadAsync(sheet.Page, "19 7/16");
        foreach (IPage page in new[] { sheet.Page, other.Page })
        {
            await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync("ends of boxes, length");
            await Assertions.Expect(page.Locator(".for-desk [data-key^='L3.front'].is-moved")).ToHaveCountAsync(1);
        }
        string told = await sheet.Page.Locator("#moved .moved-rows").InnerTextAsync();
        await sheet.Page.ReloadAsync();
        await Assertions.Expect(sheet.Page.Locator("#moved .moved-rows")).ToHaveTextAsync(told, new() { UseInnerText = true });
        await shop.RestartAsync();
        await sheet.Page.ReloadAsync();
        await Assertions.Expect(sheet.Page.Locator("#moved .moved-rows")).ToHaveTextAsync(told, new() { UseInnerText = true });
    }

    [Fact]
    public async Task Reading_ThatLooksLikeASlip_IsAskedAboutBesideItsField_AndTakenAllTheSame()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, $"{Piece}?size=L.width");
        await ReadAsync(sheet.Page, "91 1/2");
        await Assertions.Expect(sheet.Page.Locator("[data-choice='note-read'] .fault")).ToContainTextAsync("19 1/2");
        await Assertions.Expect(sheet.Page.Locator("#read-value")).ToHaveValueAsync("91 1/2");
        // Right below what was typed, between what is measured.
        await Assertions.Expect(sheet.Page.Locator("[data-choice='note-read'] .note-value + .fault + .all-the-same")).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator("[data-choice='note-read'] .fault")).ToContainTextAsync("of “bay L, clear width between slide panels”");
        await Assertions.Expect(sheet.Page.Locator("#read-value")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("#read-value")).ToHaveAttributeAsync("aria-invalid", "true");
        Assert.Empty(LogOf(shop).Entries);
        await sheet.Page.GetByLabel("take it all the same").CheckAsync();
        await sheet.Page.Locator("#read-value").PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("#moved")).ToContainTextAsync("91 1/2");
        Assert.Single(LogOf(shop).Entries);
    }

    [Fact]
    public async Task Reading_WithoutAScript_IsRefusedWithItsWords_AndTakenFromThere()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, $"{Piece}?size=L.width", hasScript: false, width: 390);
        await ReadAsync(sheet.Page, "ninteen");
        await Assertions.Expect(sheet.Page.Locator("h1")).ToHaveTextAsync("Nothing was written");
        await Assertions.Expect(sheet.Page.GetByLabel("What was read")).ToHaveValueAsync("ninteen");
        await Assertions.Expect(sheet.Page.GetByLabel("What was read")).ToHaveAttributeAsync("aria-invalid", "true");
        await sheet.Page.GetByLabel("What was read").FillAsync("19 1/2");
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Send it again" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#moved")).ToContainTextAsync("bay L, clear width between slide panels: 19 1/2 in");
    }

    [Fact]
    public async Task Drawer_MarkedCut_ThenUpset_IsMendedByOneClick_AndVoidingMovesBack()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await UpsetAsync(shop);
        await using Sheet sheet = await At(shop, $"{Piece}?size=L1.side");
        IPage page = sheet.Page;
        await Assertions.Expect(page.Locator(".stage.is-upset")).ToContainTextAsync("Fit");
        ILocator upset = page.Locator("[data-upset='L1.play']");
        await upset.Locator(".remedies summary").First.ClickAsync();
        await upset.GetByRole(AriaRole.Button, new() { Name = "It is done so" }).First.ClickAsync();
        await Assertions.Expect(upset).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator(".stage.is-upset")).ToHaveCountAsync(0);
        int mended = LogOf(shop).Entries.Length;
        Assert.True(mended > 3);

        await page.GotoAsync($"{Piece}/facts");
        await page.Locator("[data-entry]", new() { HasText = "cut: drawer L1 front and back of the box" }).First.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(page.Locator("[data-entry] s").First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync("Taken back");
        await Assertions.Expect(page.Locator("[data-upset='L1.play']")).ToHaveCountAsync(1);
        Assert.Equal(mended + 1, LogOf(shop).Entries.Length);
        Assert.Empty(sheet.Complaints);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Remedy_OfSeveralFacts_IsTakenBackByOnePress(bool fromWhatMoved)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await UpsetAsync(shop);
        await using Sheet sheet = await At(shop, $"{Piece}?size=L1.side");
        IPage page = sheet.Page;
        int before = LogOf(shop).Entries.Length;
        string upsets = await page.Locator("[data-upset]").LookAtAllAsync<string>("all => all.map(u => u.dataset.upset).join(' ')");
        ILocator upset = page.Locator("[data-upset='L1.play']");
        // The one that comes to the most: what is cut anew and what is read then.
        await upset.Locator(".remedies summary").Last.ClickAsync();
        ILocator done = upset.GetByRole(AriaRole.Button, new() { Name = "It is done so" }).Last, values = upset.Locator(".remedies details[open] input[type='text']");
        foreach (ILocator value in await values.AllAsync())
        {
            // Nobody is asked to send what he did not measure.
            await Assertions.Expect(value).ToHaveValueAsync("");
            await done.ClickAsync();
            await Assertions.Expect(value).ToHaveAttributeAsync("aria-invalid", "true");
            Assert.Equal(before, LogOf(shop).Entries.Length);
            await value.FillAsync((await value.LookAsync<string>("e => document.getElementById(e.getAttribute('aria-describedby').split(' ').at(-1)).textContent"))["It should come to ".Length..].TrimEnd('.'));
        }
        await done.ClickAsync();
        await Assertions.Expect(upset).ToHaveCountAsync(0);
        int written = LogOf(shop).Entries.Length - before;
        Assert.True(written > 1, $"{written} entries");
        if (fromWhatMoved) await page.GetByRole(AriaRole.Button, new() { Name = "Take back what was noted" }).ClickAsync();
        else
        {
            await page.GotoAsync($"{Piece}/facts");
            await page.GetByRole(AriaRole.Button, new() { Name = $"Take back all {written} that were written in one" }).ClickAsync();
        }
        await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync("Taken back");
        await Assertions.Expect(page.Locator("[data-upset='L1.play']")).ToHaveCountAsync(1);
        // All of them in one change, and nothing else.
        Assert.Equal(before + (2 * written), LogOf(shop).Entries.Length);
        Assert.Equal(before, LogOf(shop).Standing.Count());
        await page.GotoAsync($"{Piece}?size=L1.side");
        Assert.Equal(upsets, await page.Locator("[data-upset]").LookAtAllAsync<string>("all => all.map(u => u.dataset.upset).join(' ')"));
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task DueAtTheSaw_WholeDrawersAreOffered()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        Assert.Equal(HttpStatusCode.Redirect, await PostAsync(shop, "read", "a1", ("key", "L.width"), ("value", "19 9/16")));
        string page = await shop.Client.GetStringAsync($"{Piece}/break-down");
        System.Text.RegularExpressions.Match whole = System.Text.RegularExpressions.Regex.Match(page, "<option value=\"([^\"]+)\">all of drawer L1, ");
        Assert.True(whole.Success);
        Assert.Equal(HttpStatusCode.Redirect, await PostAsync(shop, "mark", "a2", ("progress", "cut"), ("what", whole.Groups[1].Value)));
        Assert.All(Assert.IsType<MarkEntry>(LogOf(shop).Entries[^1]).Keys, k => Assert.StartsWith("L1.", k, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Part_OfSeveral_IsMarkedOneByOne()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, $"{Piece}?size=F.post");
        await sheet.Page.GetByText("Mark them cut", new() { Exact = true }).First.ClickAsync();
        await sheet.Page.Locator("#mark-cut-what").SelectOptionAsync("F.post#3");
        await sheet.Page.Locator("[data-choice='mark-cut'] button").ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#bench-notes")).ToContainTextAsync("1 of 8 cut");
        Assert.Equal(["F.post#3"], Assert.IsType<MarkEntry>(Assert.Single(LogOf(shop).Entries)).Keys);
    }

    [Fact]
    public async Task Stage_SaysWhatIsHeld_AndIsReadRightThere()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, $"{Piece}/break-down");
        ILocator bay = sheet.Page.Locator(".stand-rows > li", new() { HasText = "bay L" }).Last;
        await Assertions.Expect(bay).ToContainTextAsync("wait for a reading of bay L, clear width");
        await bay.Locator("input[name='value']").FillAsync("19 1/2");
        await bay.Locator("input[name='value']").PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator(".stand-rows > li", new() { HasText = "bay L" }).Last).Not.ToContainTextAsync("wait for a reading", new() { Timeout = 20000 });
        Assert.Equal("L.width", Assert.IsType<ReadingEntry>(Assert.Single(LogOf(shop).Entries)).Key.Text);
    }

    [Fact]
    public async Task Upset_LetStand_KeepsItsReasonOnThePage()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await UpsetAsync(shop);
        await using Sheet sheet = await At(shop, $"{Piece}/facts");
        ILocator upset = sheet.Page.Locator("[data-upset='L1.play']");
        await upset.GetByText("Let it stand", new() { Exact = true }).First.ClickAsync();
        await upset.GetByLabel("Let it stand because").FillAsync("it only holds rags");
        await upset.GetByLabel("Let it stand because").PressAsync("Enter");
        await Assertions.Expect(upset).ToContainTextAsync("Because it only holds rags");
        await Assertions.Expect(sheet.Page.Locator(".stage.is-upset")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Facts_SentTwice_AreWrittenOnce_AndFromElsewhereNot()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        Assert.Equal(HttpStatusCode.Redirect, await PostAsync(shop, "read", "b1", ("key", "L.width"), ("value", "19 1/2")));
        Assert.Equal(HttpStatusCode.Redirect, await PostAsync(shop, "read", "b1", ("key", "L.width"), ("value", "19 1/2")));
        LogEntry read = Assert.Single(LogOf(shop).Entries);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PostAsync(shop, "read", "b2", ("key", "L.width"), ("value", "<b>")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PostAsync(shop, "mark", "b3", ("progress", "burnt"), ("what", "L1.side")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PostAsync(shop, "mark", "b4", ("progress", "cut"), ("what", "L1.sid")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PostAsync(shop, "void", "b5", ("entry", "e-none")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PostAsync(shop, "mend", "b6", ("upset", "L1.play"), ("remedy", "glue it")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PostAsync(shop, "allow", "b7", ("code", "no.such"), ("on", "L1"), ("because", "so")));
        Assert.Equal(HttpStatusCode.Redirect, await PostAsync(shop, "void", "b8", ("entry", read.Id)));
        Assert.Equal(HttpStatusCode.Redirect, await PostAsync(shop, "void", "b8", ("entry", read.Id)));
        Assert.Equal(2, LogOf(shop).Entries.Length);
        shop.Client.DefaultRequestHeaders.Remove("Origin");
        Assert.Equal(HttpStatusCode.Forbidden, await PostAsync(shop, "read", "b9", ("key", "L.width"), ("value", "19 1/2")));
    }
}
