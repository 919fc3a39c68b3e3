using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>A piece is changed on its drawing, in a real browser against the real program and store.</summary>
public sealed class EditingTests(Room room)
{
    private static async Task<Sheet> At(Room room, KeptShop shop, string path, bool hasScript = true, int width = 1440)
    {
        Sheet sheet = await room.OpenAsync(width, hasScript: hasScript, address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    private static ILocator Field(IPage page, string label) => page.GetByLabel(label, new() { Exact = true });

    [Fact]
    public async Task Dimension_Clicked_TypedAndEntered_MovesDrawingAndPartsWithoutLeavingThePage()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet");
        IPage page = sheet.Page;
        await page.EvaluateAsync("() => { window.same = true; }");
        await page.Locator(".for-desk [data-key='C.width']").First.ClickAsync();
        ILocator width = Field(page, "Outside width of C");
        await Assertions.Expect(width).ToHaveValueAsync("38");
        await width.FillAsync("1' 8 1/2\" + 20");
        await width.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        await Assertions.Expect(page.Locator(".for-desk [data-key='C.width']").First).ToHaveAttributeAsync("aria-label", new System.Text.RegularExpressions.Regex("40 1/2"));
        Assert.True(await page.EvaluateAsync<bool>("() => window.same === true"));
        Assert.Contains("# A wall cabinet", shop.Text("jar-cabinet"), StringComparison.Ordinal);
        Assert.Empty(sheet.Complaints);
        Assert.Empty(sheet.Foreign);
    }

    [Fact]
    public async Task Field_WithWhatCannotBeRead_KeepsItAndSaysWhyBesideIt()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=C.width");
        ILocator width = Field(sheet.Page, "Outside width of C");
        await width.FillAsync("38 1/");
        await width.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("#choices .fault")).ToBeVisibleAsync();
        await Assertions.Expect(width).ToHaveValueAsync("38 1/");
        await width.PressAsync("Escape");
        await Assertions.Expect(width).ToHaveValueAsync("38");
        Assert.Equal(1, shop.Database.Find("jar-cabinet")!.Revision);
    }

    [Fact]
    public async Task Opening_Divided_ThenUndoneAndRedoneByKeys_OutlivesARestart()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench?size=K");
        IPage page = sheet.Page;
        await page.GetByText("Shelves", new() { Exact = true }).ClickAsync();
        await page.Locator("[data-choice='shelves'] button").ClickAsync();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        string made = shop.Text("luthiers-bench");
        Assert.NotEqual(File.ReadAllText(Samples.File("luthiers-bench")), made);
        await page.Locator("body").PressAsync("Control+z");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 3");
        Assert.Equal(File.ReadAllText(Samples.File("luthiers-bench")), shop.Text("luthiers-bench"));
        await shop.RestartAsync();
        await page.ReloadAsync();
        await page.Locator("body").PressAsync("Control+Shift+z");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 4");
        Assert.Equal(made, shop.Text("luthiers-bench"));
    }

    [Fact]
    public async Task TwoWindows_OneChanges_TheOtherFollowsAndIsNeverWrittenOver()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet one = await At(room, shop, "/piece/jar-cabinet?size=C.width");
        await using Sheet other = await At(room, shop, "/piece/jar-cabinet?size=C.width");
        await Assertions.Expect(Field(other.Page, "Outside width of C")).ToHaveValueAsync("38");
        await Field(one.Page, "Outside width of C").FillAsync("39");
        await Field(one.Page, "Outside width of C").PressAsync("Enter");
        await Assertions.Expect(one.Page.Locator("#history")).ToContainTextAsync("revision 2");
        await Assertions.Expect(other.Page.Locator("#history")).ToContainTextAsync("revision 2");
        await Assertions.Expect(Field(other.Page, "Outside width of C")).ToHaveValueAsync("39");
        // Half typed there while it is changed here: kept there, and refused when it is sent.
        await Field(other.Page, "Outside width of C").FillAsync("50");
        await Field(one.Page, "Outside width of C").FillAsync("40");
        await Field(one.Page, "Outside width of C").PressAsync("Enter");
        await Assertions.Expect(other.Page.Locator("#elsewhere")).ToHaveCountAsync(1);
        await Assertions.Expect(Field(other.Page, "Outside width of C")).ToHaveValueAsync("50");
        await Field(other.Page, "Outside width of C").PressAsync("Enter");
        await Assertions.Expect(other.Page.Locator("#choices .fault")).ToBeVisibleAsync();
        Assert.Contains("width: 40", shop.Text("jar-cabinet"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Piece_BegunFromNothingWithoutAScript_IsDrawnAndChanged()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        await using Sheet sheet = await At(room, shop, "/", hasScript: false, width: 390);
        IPage page = sheet.Page;
        await Field(page, "Its name").FillAsync("Seed drawers");
        await Field(page, "Width outside").FillAsync("24");
        await Field(page, "Height outside").FillAsync("30");
        await Field(page, "Depth outside").FillAsync("16");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(shop.Address + "/piece/seed-drawers");
        await page.GotoAsync("/piece/seed-drawers?size=C");
        await page.GetByText("Drawers", new() { Exact = true }).ClickAsync();
        await page.Locator("[data-choice='drawers']").GetByLabel("How many").FillAsync("4");
        await page.Locator("[data-choice='drawers'] button").ClickAsync();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        Assert.Contains("drawers", shop.Text("seed-drawers"), StringComparison.Ordinal);
        await Assertions.Expect(page.Locator(".for-phone svg").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Turning_ByKeysAndByHand_TurnsAndKeepsPartsChoosable()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench?view=apart");
        IPage page = sheet.Page;
        ILocator turning = page.Locator("[data-turning]");
        await Assertions.Expect(turning).ToHaveAttributeAsync("data-turning", "32 22 0.4");
        await turning.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(turning).ToHaveAttributeAsync("data-turning", "37 22 0.4");
        LocatorBoundingBoxResult box = await turning.StandsAsync();
        await page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + (box.Width / 2) + 40, box.Y + (box.Height / 2) + 20, new() { Steps = 4 });
        await page.Mouse.UpAsync();
        await Assertions.Expect(turning).Not.ToHaveAttributeAsync("data-turning", "37 22 0.4");
        Assert.DoesNotContain("size=", page.Url, StringComparison.Ordinal);
        // The script does the same sums as the server: at the same standpoint it draws the same lines.
        // It draws with the next picture on the glass, and says then from where; both are looked at together.
        const string look = "() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done([location.href, [...document.querySelectorAll('.for-desk svg g[data-key]')].map(g => g.dataset.key + ' ' + g.childElementCount).join('|')]))))";
        string[] drawn = await page.EvaluateAsync<string[]>(look);
        await page.GotoAsync(drawn[0]);
        Assert.Equal(drawn, await page.EvaluateAsync<string[]>(look));
        await page.Locator(".outline a").First.ClickAsync();
        await Assertions.Expect(page.Locator("#working .working-title").First).ToBeVisibleAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("view=apart"));
        Assert.Empty(sheet.Complaints);
    }
}
