using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Setout.Core.Measures;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>Two people at one bench, one with a rule in inches and one with a rule in millimetres.</summary>
public sealed class ViewingTests(Room room)
{
    private static async Task<Sheet> InMillimetres(Room room, KeptShop shop, string path)
    {
        Sheet sheet = await room.OpenAsync(address: shop.Address);
        await sheet.Page.GotoAsync(path);
        await sheet.Page.GetByRole(AriaRole.Link, new() { Name = "How figures are shown" }).ClickAsync();
        await sheet.Page.GetByLabel("in millimetres").CheckAsync();
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Show it so" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#in-other-unit")).ToContainTextAsync("What you type without a unit is read in millimetres.");
        return sheet;
    }

    private static ILocator Dimension(IPage page, string key) => page.Locator($".for-desk [data-key='{key}']").First;

    [Fact]
    public async Task SizeTypedInMillimetres_IsThatForEverybody()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet other = await room.OpenAsync(address: shop.Address);
        await other.Page.GotoAsync("/piece/jar-cabinet");
        await using Sheet sheet = await InMillimetres(room, shop, "/piece/jar-cabinet");
        await Assertions.Expect(Dimension(sheet.Page, "C.width")).ToHaveAttributeAsync("aria-label", new Regex("965\\.2 mm"));
        await Dimension(sheet.Page, "C.width").Locator("text").First.ClickAsync();
        ILocator typed = sheet.Page.Locator("#sizing-size");
        // What stands in the text names its unit, so that Enter alone never turns inches into millimetres.
        await Assertions.Expect(typed).ToHaveValueAsync("38 in");
        await typed.FillAsync("1016");
        await Assertions.Expect(Dimension(sheet.Page, "C.width")).ToHaveAttributeAsync("aria-label", new Regex("1016 mm"));
        await typed.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("#history")).ToContainTextAsync("revision 2");
        Assert.Contains("width: 1016 mm", shop.Text("jar-cabinet"), StringComparison.Ordinal);
        await Assertions.Expect(Dimension(other.Page, "C.width")).ToHaveAttributeAsync("aria-label", new Regex("40 in"));
        await Assertions.Expect(other.Page.Locator("#in-other-unit")).ToHaveCountAsync(0);
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task ReadingTypedInMillimetres_IsWrittenAsThat()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await InMillimetres(room, shop, "/piece/luthiers-bench?size=L.width");
        await sheet.Page.Locator("#note-read summary, summary:has-text('Read it')").First.ClickAsync();
        await sheet.Page.Locator("#read-value").FillAsync("496,5");
        await sheet.Page.Locator("#read-value").PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("main")).ToContainTextAsync("496.5");
        ReadingEntry read = Assert.IsType<ReadingEntry>(Assert.Single(shop.Database.FactsOf(shop.Database.Find("luthiers-bench")!.Id).Read().Entries));
        Assert.Equal(ExactLength.FromMillimetres(Rational.Of(993, 2)), Assert.Single(read.Values));
    }

    [Fact]
    public async Task DividerMovedByKeys_LandsOnTheGridOfThePiece()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await InMillimetres(room, shop, "/piece/jar-cabinet?size=P");
        ILocator grip = sheet.Page.GetByRole(AriaRole.Slider, new() { Name = "Move P" });
        await grip.FocusAsync();
        await sheet.Page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(grip).ToHaveAttributeAsync("aria-valuetext", "A, at its left: 20 1/32 in, about 508.8 mm");
        await Assertions.Expect(Dimension(sheet.Page, "A.width")).ToHaveAttributeAsync("aria-label", new Regex("508\\.8 mm"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("#history")).ToContainTextAsync("revision 2");
        // A step of the grid is 1/32 in: nothing of millimetres gets into where it lands.
        Assert.Contains("width: 20 1/32 in", shop.Text("jar-cabinet"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task PagesOfAllStages_SayTheUnitAndItsHazard()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        using HttpResponseMessage kept = await shop.Client.PostAsync("/viewing", new FormUrlEncodedContent([new("unit", "mm"), new("back", "/piece/jar-cabinet")]));
        string cookie = Assert.Single(kept.Headers.GetValues("Set-Cookie")).Split(';')[0];
        foreach (string stage in new[] { "", "/buy", "/break-down", "/machine", "/assemble", "/fit", "/facts", "/says" })
        {
            using HttpRequestMessage asked = new(HttpMethod.Get, "/piece/jar-cabinet" + stage);
            asked.Headers.Add("Cookie", cookie);
            using HttpResponseMessage answer = await shop.Client.SendAsync(asked);
            Assert.True((await answer.Content.ReadAsStringAsync()).Contains("id=\"in-other-unit\"", StringComparison.Ordinal), stage);
        }
        using HttpRequestMessage sheets = new(HttpMethod.Get, "/piece/jar-cabinet/bench-sheets.pdf");
        sheets.Headers.Add("Cookie", cookie);
        using HttpResponseMessage pdf = await shop.Client.SendAsync(sheets);
        Assert.Equal(HttpStatusCode.OK, pdf.StatusCode);
    }

    [Theory]
    [InlineData("https://elsewhere.example/", "/")]
    [InlineData("//elsewhere.example", "/")]
    [InlineData("/\\elsewhere.example", "/")]
    [InlineData("", "/")]
    [InlineData("/piece/jar-cabinet?size=A", "/piece/jar-cabinet?size=A")]
    public async Task Back_LeadsToNoOtherProgram(string asked, string to)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        using HttpResponseMessage answer = await shop.Client.PostAsync("/viewing", new FormUrlEncodedContent([new("unit", "own"), new("back", asked)]));
        Assert.Equal(to, answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task SingleKeysAndMovement_CanBeTurnedOff()
    {
        await using Sheet sheet = await room.OpenAsync();
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/jar-cabinet");
        await page.Keyboard.PressAsync("?");
        await Assertions.Expect(page.Locator("#keys")).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Escape");
        await page.GotoAsync("/viewing?back=/piece/jar-cabinet");
        await page.GetByLabel("only Tab, Enter, Esc, arrows and keys with Ctrl").CheckAsync();
        await page.GetByLabel("none").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Show it so" }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/piece/jar-cabinet$"));
        await page.Keyboard.PressAsync("?");
        await Assertions.Expect(page.Locator("#keys")).ToBeHiddenAsync();
        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.NoPreference });
        Assert.DoesNotContain("0.12s", await page.Locator("a").First.LookAsync<string>("e => getComputedStyle(e).transitionDuration"), StringComparison.Ordinal);
    }
}
