using Microsoft.Playwright;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>Edits are undone and facts taken back, each in its own place; what an undo would upset is said before it is done.</summary>
public sealed class TakingBackTests(Room room)
{
    private const string Piece = "/piece/luthiers-bench";

    private static Log LogOf(KeptShop shop) => shop.Database.FactsOf(shop.Database.Find("luthiers-bench")!.Id).Read();

    private static async Task PostAsync(KeptShop shop, string what, string change, params (string Name, string Value)[] fields)
    {
        using var form = new FormUrlEncodedContent([.. new[] { ("change", change), ("revision", "2"), ("back", Piece) }.Concat(fields).Select(f => KeyValuePair.Create(f.Item1, f.Item2))]);
        using HttpResponseMessage answer = await shop.Client.PostAsync($"{Piece}/{what}", form);
        Assert.Equal(System.Net.HttpStatusCode.Redirect, answer.StatusCode);
    }

    // The bay is made wider, then the sides and ends of one of its drawers are cut.
    private static async Task<KeptShop> CutAfterAnEditAsync()
    {
        KeptShop shop = await KeptShop.OpenAsync();
        shop.ChangeNow("luthiers-bench", t => t.Replace("        width: 21\n", "        width: 20 1/2\n", StringComparison.Ordinal));
        await PostAsync(shop, "mark", "m1", ("progress", "cut"), ("what", "L1.side L1.end"));
        return shop;
    }

    private async Task<Sheet> At(KeptShop shop, string path, bool hasScript = true, int width = 1440)
    {
        Sheet sheet = await room.OpenAsync(width, hasScript: hasScript, address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    [Fact]
    public async Task Undo_OfAnEditThatACutPartGoesBy_IsAskedAbout_AndDoneByAPressOfItsOwn()
    {
        await using KeptShop shop = await CutAfterAnEditAsync();
        await using Sheet sheet = await At(shop, Piece);
        IPage page = sheet.Page;
        ILocator sure = page.GetByRole(AriaRole.Button, new() { Name = "Undo it all the same" });
        await Assertions.Expect(sure).ToHaveCountAsync(0);
        // By key as by press; the same key once more asks once more.
        for (int i = 0; i < 2; i++)
        {
            await page.Locator("body").PressAsync("Control+z");
            await Assertions.Expect(page.Locator("#history .fault").First).ToContainTextAsync("drawer L1");
            await Assertions.Expect(sure).ToBeFocusedAsync();
        }
        Assert.Equal(2, shop.Database.Find("luthiers-bench")!.Revision);
        await sure.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 3");
        await Assertions.Expect(page.Locator("#upsets")).ToContainTextAsync("drawer L1");
        Assert.Single(LogOf(shop).Entries);
        // Back again moves the cut part to where it goes: nothing is asked.
        await page.Locator("[data-key-redo]").ClickAsync();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 4");
        Assert.All(sheet.Complaints, c => Assert.Contains("422", c, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Undo_WithoutAScript_IsAskedAboutOnAPage()
    {
        await using KeptShop shop = await CutAfterAnEditAsync();
        await using Sheet sheet = await At(shop, Piece, hasScript: false, width: 390);
        await sheet.Page.Locator("[data-key-undo]").ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("h1")).ToHaveTextAsync("Nothing was changed");
        await Assertions.Expect(sheet.Page.Locator("#fault")).ToContainTextAsync("drawer L1");
        Assert.Equal(2, shop.Database.Find("luthiers-bench")!.Revision);
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Undo it all the same" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#history")).ToContainTextAsync("revision 3");
    }

    [Fact]
    public async Task Undo_ThatUpsetsNothing_IsNotAskedAbout()
    {
        await using KeptShop shop = await CutAfterAnEditAsync();
        shop.ChangeNow("luthiers-bench", t => t.Replace("left: 1, right: 1", "left: 2, right: 2", StringComparison.Ordinal));
        await using Sheet sheet = await At(shop, Piece);
        await sheet.Page.Locator("[data-key-undo]").ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#history")).ToContainTextAsync("revision 4");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Reading_TakenBackByMistake_IsPutBackWithItsFigure(bool hasScript)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await PostAsync(shop, "read", "r1", ("key", "L.width"), ("value", "19 7/16"));
        await using Sheet sheet = await At(shop, Piece, hasScript);
        IPage page = sheet.Page;
        // Not to be mistaken for undoing an edit.
        await page.Locator("#moved").GetByRole(AriaRole.Button, new() { Name = "Take back what was read" }).ClickAsync();
        await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync("Taken back: read bay L");
        await page.Locator("#moved").GetByRole(AriaRole.Button, new() { Name = "Put it back" }).ClickAsync();
        await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync("Put back: read bay L, clear width between slide panels: 19 7/16 in");
        Assert.Single(LogOf(shop).Standing);

        await page.GotoAsync($"{Piece}/facts");
        await page.GetByRole(AriaRole.Button, new() { Name = "Void it: read bay L" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Void it" })).ToHaveCountAsync(0);
        Assert.Empty(LogOf(shop).Standing);
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it back: read bay L" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Void it: read bay L" })).ToHaveCountAsync(1);
        Assert.Single(LogOf(shop).Standing);
        // Nothing of it is gone.
        Assert.Equal(5, LogOf(shop).Entries.Length);
        Assert.Empty(sheet.Complaints);
    }
}
