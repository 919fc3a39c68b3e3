using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>All that the piece file can say of a thing, said on its page.</summary>
public sealed class SaysTests(Room room)
{
    private static async Task<Sheet> At(Room room, KeptShop shop, string path, bool hasScript = true)
    {
        Sheet sheet = await room.OpenAsync(1024, hasScript: hasScript, address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task WhatWasNotSaid_Typed_StandsInTheTextAndThePageStays(bool hasScript)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench?size=F", hasScript);
        IPage page = sheet.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "All that can be said of F" }).ClickAsync();
        ILocator corners = page.GetByLabel("Corners", new() { Exact = true });
        await Assertions.Expect(corners).ToHaveValueAsync("");
        await corners.SelectOptionAsync("dowels");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set Corners" }).ClickAsync();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        Assert.EndsWith("/says?of=F", page.Url, StringComparison.Ordinal);
        await Assertions.Expect(page.GetByLabel("Corners", new() { Exact = true })).ToHaveValueAsync("dowels");
        Assert.Contains("corners: dowels", shop.Text("luthiers-bench"), StringComparison.Ordinal);
        Assert.Contains("# from the top", shop.Text("luthiers-bench"), StringComparison.Ordinal);
        // The usual again: the key goes.
        await page.GetByLabel("Corners", new() { Exact = true }).SelectOptionAsync("the usual");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set Corners" }).ClickAsync();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 3");
        Assert.Equal(File.ReadAllText(Samples.File("luthiers-bench")), shop.Text("luthiers-bench"));
    }

    [Fact]
    public async Task Handles_SaidWithAMistake_KeepWhatWasTypedAndSayWhy()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench/says?of=bench");
        IPage page = sheet.Page;
        await page.GetByText("Handles", new() { Exact = true }).ClickAsync();
        ILocator form = page.Locator("details[open]");
        await form.GetByLabel("Of", new() { Exact = true }).FillAsync("oak knob");
        await form.GetByLabel("Apart", new() { Exact = true }).FillAsync("3 in wide");
        await form.GetByText("Do it").ClickAsync();
        await Assertions.Expect(form.Locator(".fault")).ToBeVisibleAsync();
        await Assertions.Expect(form.GetByLabel("Apart", new() { Exact = true })).ToHaveValueAsync("3 in wide");
        await form.GetByLabel("Apart", new() { Exact = true }).FillAsync("3");
        await form.GetByText("Do it").ClickAsync();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Handles" })).ToBeVisibleAsync();
        Assert.Contains("of: oak knob", shop.Text("luthiers-bench"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/piece/luthiers-bench/says?of=nowhere")]
    [InlineData("/piece/luthiers-bench/says?of=L1.front")]
    public async Task NoSuchThing_IsNotFound(string path)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await shop.Client.GetAsync(path)).StatusCode);
    }

    /// <summary>A drawer that was put in shows the sizes of its front, and is marked on the drawing.</summary>
    [Fact]
    public async Task Drawer_Chosen_ShowsItsFront()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench?size=L1");
        await Assertions.Expect(sheet.Page.Locator("#working")).ToContainTextAsync("drawer L1, front height");
        await Assertions.Expect(sheet.Page.Locator(".for-desk .is-chosen").First).ToHaveAttributeAsync("data-key", "L1.front");
    }
}
