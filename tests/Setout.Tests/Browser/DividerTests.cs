using Microsoft.Playwright;
using Setout.Testing;

namespace Setout.Tests.Browser;

/// <summary>Every kind of divider moved by pointer and by keys; what stands still says why.</summary>
public sealed class DividerTests(Room room)
{
    private const string Name = "every-divider";

    private static async Task<KeptShop> OpenAsync()
    {
        KeptShop shop = await KeptShop.OpenAsync();
        shop.Keep(Name, EveryDivider.Text);
        return shop;
    }

    private static ILocator Grip(IPage page, string key) => page.GetByRole(AriaRole.Slider, new() { Name = $"Move {key}", Exact = true });

    public static TheoryData<string, bool, string, string, double> Kinds => new()
    {
        { "P", true, "A", "at its left", 500 },
        { "E", false, "A1", "above it", 300 },
        { "H", false, "B1", "above it", 400 },
        { "M", true, "L", "at its left", 500 },
        { "R", false, "L1", "above it", 250 },
    };

    [Theory, MemberData(nameof(Kinds))]
    public async Task Divider_DraggedByMouse_MovesWithoutBeingChosenFirst(string key, bool isAcross, string before, string side, double size)
    {
        await using KeptShop shop = await OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync($"/piece/{Name}?size={key}");
        await Assertions.Expect(Grip(page, key)).ToBeVisibleAsync();
        LocatorBoundingBoxResult box = await Grip(page, key).StandsAsync();
        (float x, float y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.GotoAsync($"/piece/{Name}");
        await Assertions.Expect(Grip(page, key)).ToHaveCountAsync(0);
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(isAcross ? x + 25 : x, isAcross ? y : y + 25, new() { Steps = 5 });
        await Assertions.Expect(page.Locator("#grip-tip")).ToContainTextAsync($"{before}, {side}:");
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync();
        await page.Mouse.UpAsync();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        await page.GotoAsync($"/piece/{Name}?size={key}");
        await Assertions.Expect(Grip(page, key)).ToBeVisibleAsync();
        Assert.True(double.Parse((await Grip(page, key).GetAttributeAsync("aria-valuenow"))!, System.Globalization.CultureInfo.InvariantCulture) > size + 10);
        Assert.Empty(sheet.Complaints);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Divider_MovedByKeys_GoesByTheGridAndStaysWithEnter(string key, bool isAcross, string before, string side, double size)
    {
        await using KeptShop shop = await OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync($"/piece/{Name}?size={key}");
        await Assertions.Expect(Grip(page, key)).ToBeVisibleAsync();
        await page.Locator("#room").FocusAsync();
        // Across its way it does not go, and says so.
        await page.Keyboard.PressAsync(isAcross ? "Shift+ArrowDown" : "Shift+ArrowRight");
        await Assertions.Expect(page.Locator("#stays")).ToHaveTextAsync($"{key} goes {(isAcross ? "to the left and right" : "up and down")} only.");
        await page.Keyboard.PressAsync(isAcross ? "Shift+ArrowRight" : "Shift+ArrowDown");
        await Assertions.Expect(Grip(page, key)).ToBeFocusedAsync();
        await page.Keyboard.PressAsync(isAcross ? "Shift+ArrowRight" : "Shift+ArrowDown");
        await Assertions.Expect(Grip(page, key)).ToHaveAttributeAsync("aria-valuetext", $"{before}, {side}: {(size + 10.5).ToString(System.Globalization.CultureInfo.InvariantCulture)} mm");
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        await Assertions.Expect(Grip(page, key)).ToHaveAttributeAsync("aria-valuenow", (size + 10.5).ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.Empty(sheet.Complaints);
    }

    [Theory]
    [InlineData("S1", "share its height evenly")]
    [InlineData("G1.front", "type the height of a front")]
    [InlineData("C.side", "type one of those")]
    [InlineData("K", "choose M")]
    public async Task Thing_ThatStandsStill_SaysWhyWhenMovedByKeys(string key, string words)
    {
        await using KeptShop shop = await OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync($"/piece/{Name}?size={key}");
        await page.Locator("#room").FocusAsync();
        await Assertions.Expect(page.Locator("#stays")).ToBeHiddenAsync();
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await Assertions.Expect(page.Locator("#stays")).ToContainTextAsync(words);
        await Assertions.Expect(page.Locator("#voice")).ToContainTextAsync(words);
        await Assertions.Expect(page.Locator("#room")).ToBeFocusedAsync();
        Assert.Equal(1, shop.Database.Find(Name)!.Revision);
    }

    [Fact]
    public async Task WalkedThing_MovedByKeys_IsChosenFirst()
    {
        await using KeptShop shop = await OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync($"/piece/{Name}?size=A2");
        await page.Locator("#room").FocusAsync();
        for (int i = 0; i < 20 && await page.Locator(".for-desk .is-walked[data-key^='E']").CountAsync() == 0; i++) await page.Keyboard.PressAsync(i % 2 == 0 ? "ArrowUp" : "ArrowRight");
        string walked = (await page.Locator(".for-desk .is-walked").First.GetAttributeAsync("data-key"))!.Split('#')[0];
        await page.Keyboard.PressAsync("Shift+ArrowDown");
        await page.WaitForURLAsync(url => url.Contains($"size={walked}", StringComparison.Ordinal));
    }

    private static async Task WalkToAsync(IPage page, string key)
    {
        await page.Locator("#room").FocusAsync();
        await page.Keyboard.PressAsync("Home");
        for (int i = 0; i < 80 && await page.Locator(".for-desk .is-walked").First.GetAttributeAsync("data-key") != key; i++) await page.Keyboard.PressAsync("PageDown");
        await Assertions.Expect(page.Locator(".for-desk .is-walked").First).ToHaveAttributeAsync("data-key", key);
    }

    [Fact]
    public async Task Divider_ChosenByEnter_HasTheKeyboardAtItsHandle_AndEscapeGoesBackToTheDrawing()
    {
        await using KeptShop shop = await OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync($"/piece/{Name}");
        await WalkToAsync(page, "P");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(Grip(page, "P")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(Grip(page, "P")).ToHaveAttributeAsync("aria-valuetext", "A, at its left: 500.5 mm");
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeHiddenAsync();
        await Assertions.Expect(Grip(page, "P")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#room")).ToBeFocusedAsync();
        await Assertions.Expect(page.Locator(".for-desk .is-walked")).ToHaveAttributeAsync("data-key", "P");
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(page.Locator(".for-desk .is-walked")).Not.ToHaveAttributeAsync("data-key", "P");
        // What is no divider leaves the keyboard on the drawing.
        await WalkToAsync(page, "S1");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync(url => url.Contains("size=S1", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator("#voice")).ToContainTextAsync("shelf S1");
        await Assertions.Expect(page.Locator("#room")).ToBeFocusedAsync();
        Assert.Equal(1, shop.Database.Find(Name)!.Revision);
        Assert.Empty(sheet.Complaints);
    }

    /// <summary>A handle is made by the script: a page that comes by itself, as when layouts are ready, leaves the keyboard on it.</summary>
    [Fact]
    public async Task Handle_WithTheKeyboard_KeepsItWhenAPageComesByItself()
    {
        await using KeptShop shop = await OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync($"/piece/{Name}?size=P");
        await Assertions.Expect(page.Locator("#margin .waiting")).ToHaveCountAsync(0);
        await Grip(page, "P").FocusAsync();
        shop.Change(Name, t => t.Replace("name: ", "name: New ", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator(".head-name")).ToContainTextAsync("New ");
        await Assertions.Expect(Grip(page, "P")).ToBeFocusedAsync();
    }

    /// <summary>All posts of a frame are chosen together; the handle is that of those where one is.</summary>
    [Theory, InlineData("F.post#3", "M1"), InlineData("F.post#5", "M2"), InlineData("F.post#1", "")]
    public async Task PostsOfAFrame_MoveTheDividerWhereOneIs(string post, string divider)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/luthiers-bench");
        await WalkToAsync(page, post);
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync(url => url.Contains("size=F.post", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator(".grip")).ToHaveCountAsync(2);
        await Assertions.Expect(divider.Length > 0 ? Grip(page, divider) : page.Locator("#room")).ToBeFocusedAsync();
        await page.Locator("#room").FocusAsync();
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        if (divider.Length > 0) await Assertions.Expect(Grip(page, divider)).ToBeFocusedAsync();
        else await Assertions.Expect(page.Locator("#stays")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync(new() { Visible = divider.Length > 0 });
    }
}
