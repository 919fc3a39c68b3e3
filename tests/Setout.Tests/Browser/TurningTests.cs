using System.Globalization;
using Microsoft.Playwright;
using Setout.Testing;

namespace Setout.Tests.Browser;

/// <summary>The view with parts apart: its sides by name, looking closer, holes, and from a part to its size, working and sheet.</summary>
public sealed class TurningTests(Room room)
{
    private static ILocator Turning(IPage page) => page.Locator("[data-turning]");

    // Each path with its member and its place on the paper.
    private static Task<string[]> DrawnAsync(IPage page) => page.EvaluateAsync<string[]>("""
        () => [...document.querySelectorAll('.turning .for-desk g[data-key]')].flatMap(g => [...g.querySelectorAll('path, rect')].map(p => {
          const box = p.getBBox();
          return [g.dataset.key, box.x, box.y, box.width, box.height].join(' ');
        }))
        """);

    /// <summary>The same on the paper to a twentieth of a millimetre; what covers nothing may come in any order.</summary>
    private static void AssertSame(string[] expected, string[] actual)
    {
        List<string[]> left = [.. actual.Select(a => a.Split(' '))];
        foreach (string[] one in expected.Select(e => e.Split(' ')))
        {
            int at = left.FindIndex(l => l[0] == one[0] && Enumerable.Range(1, 4).All(i => Math.Abs(double.Parse(l[i], CultureInfo.InvariantCulture) - double.Parse(one[i], CultureInfo.InvariantCulture)) < 0.05));
            Assert.True(at >= 0, $"{string.Join(' ', one)} is not drawn");
            left.RemoveAt(at);
        }
        Assert.Empty(left);
    }

    [Theory]
    [InlineData("from the front", "0 0")]
    [InlineData("from the right", "90 0")]
    [InlineData("from behind", "180 0")]
    [InlineData("from the left", "270 0")]
    [InlineData("from above", "0 90")]
    public async Task Side_ByItsName_IsTheSameWithAndWithoutScript(string words, string standpoint)
    {
        await using Sheet sheet = await room.OpenAsync();
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/jar-cabinet?view=apart");
        await page.GetByRole(AriaRole.Link, new() { Name = words, Exact = true }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(Turning(page)).ToHaveAttributeAsync("data-turning", $"{standpoint} 0.4");
        string[] numbers = standpoint.Split(' ');
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex($"turn={numbers[0]}&tip={numbers[1]}"));
        string[] turned = await DrawnAsync(page);
        await page.ReloadAsync();
        AssertSame(turned, await DrawnAsync(page));
        Assert.Empty(sheet.Complaints);
        await using Sheet still = await room.OpenAsync(hasScript: false);
        await still.Page.GotoAsync("/piece/jar-cabinet?view=apart");
        await still.Page.GetByRole(AriaRole.Link, new() { Name = words, Exact = true }).ClickAsync();
        await Assertions.Expect(Turning(still.Page)).ToHaveAttributeAsync("data-turning", $"{standpoint} 0.4");
    }

    /// <summary>What the script draws while a hand turns it is what the server draws, holes and grooves too.</summary>
    [Fact]
    public async Task Piece_WithAWell_TurnedByKeysIsWhatTheServerDraws()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Keep("tops", await File.ReadAllTextAsync(Repository.PathOf("tests/Setout.Shop.Tests/SettingOut/Pieces/tops.yaml")));
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/tops?view=apart");
        await Turning(page).FocusAsync();
        foreach (string key in new[] { "ArrowRight", "ArrowUp", "ArrowUp", "+", "+" }) await page.Keyboard.PressAsync(key);
        await Assertions.Expect(Turning(page)).ToHaveAttributeAsync("data-turning", "37 32 0.6");
        string[] turned = await DrawnAsync(page);
        await page.ReloadAsync();
        AssertSame(turned, await DrawnAsync(page));
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Piece_IsLookedAtCloserAndTurnedThere()
    {
        await using Sheet sheet = await room.OpenAsync();
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/jar-cabinet?view=apart");
        ILocator paper = page.Locator(".turning .for-desk svg");
        double[] Numbers(string box) => [.. box.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
        double[] whole = Numbers((await paper.GetAttributeAsync("viewBox"))!);
        await page.GetByRole(AriaRole.Button, new() { Name = "Larger" }).ClickAsync();
        double[] close = Numbers((await paper.GetAttributeAsync("viewBox"))!);
        Assert.Equal(whole[2] / 1.5, close[2], 3);
        await Turning(page).FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(Turning(page)).ToHaveAttributeAsync("data-turning", "37 22 0.4");
        Assert.Equal(close, Numbers((await paper.GetAttributeAsync("viewBox"))!));
        // It is not drawn smaller because less of the paper is seen.
        string[] turned = await DrawnAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "fit", Exact = true }).ClickAsync();
        Assert.Equal(whole, Numbers((await paper.GetAttributeAsync("viewBox"))!));
        await page.ReloadAsync();
        AssertSame(turned, await DrawnAsync(page));
    }

    [Theory, InlineData(false), InlineData(true)]
    public async Task Part_ChosenThere_LeadsToItsSizeItsWorkingAndItsSheet(bool isKeyboard)
    {
        await using Sheet sheet = await room.OpenAsync();
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/jar-cabinet/break-down");
        await page.GotoAsync("/piece/jar-cabinet?view=apart&turn=0&tip=0&apart=0.4");
        if (isKeyboard)
        {
            await page.Locator("#outline a[tabindex='0']").FocusAsync();
            await page.Keyboard.PressAsync("Home");
            await Letters.TypeAsync(page, "partition p");
            await page.Keyboard.PressAsync("Enter");
        }
        else await page.Locator(".turning .for-desk g[data-key='P']").First.ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("view=apart.*size=P|size=P.*view=apart"));
        await Assertions.Expect(page.Locator(".turning .for-desk g[data-key='P'].is-chosen").First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#working .working-title").First).ToContainTextAsync("partition P");
        await Assertions.Expect(page.Locator("#working table.sum").First).ToBeVisibleAsync();
        ILocator place = page.Locator("#working .places a").First;
        await Assertions.Expect(place).ToContainTextAsync("on ", new() { Timeout = 60_000 });
        if (isKeyboard)
        {
            await place.FocusAsync();
            await page.Keyboard.PressAsync("Enter");
        }
        else await place.ClickAsync();
        await page.WaitForURLAsync(url => url.Contains("/break-down", StringComparison.Ordinal));
    }

    /// <summary>What is chosen or changed turns nothing: one looks from where one has gone.</summary>
    [Theory]
    [InlineData("#outline [data-outline='P']")]
    [InlineData("#parts [data-part='P'] .part-name")]
    [InlineData("#parts [data-part='P'] .sizes a")]
    [InlineData(".turning .for-desk g[data-key='P']")]
    public async Task Choice_WhereverItIsMade_KeepsTheStandpoint(string choice)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/jar-cabinet?view=apart&turn=0&tip=0&apart=0.4");
        await Turning(page).FocusAsync();
        foreach (string key in new[] { "ArrowRight", "ArrowUp", "+" }) await page.Keyboard.PressAsync(key);
        await Assertions.Expect(Turning(page)).ToHaveAttributeAsync("data-turning", "5 5 0.5");
        await page.Locator(choice).First.ClickAsync();
        await Assertions.Expect(page.Locator(".turning .for-desk g[data-key='P'].is-chosen").First).ToBeAttachedAsync();
        await Assertions.Expect(Turning(page)).ToHaveAttributeAsync("data-turning", "5 5 0.5");
        Assert.Contains("view=apart", page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Change_MadeInTheTurnedView_KeepsTheStandpoint()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/jar-cabinet?view=apart&size=C.width");
        await Turning(page).FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(Turning(page)).ToHaveAttributeAsync("data-turning", "37 22 0.4");
        await page.Locator("[data-choice='note-read'] > summary").ClickAsync();
        await page.Locator("#read-value").FillAsync("38");
        await page.Locator("#read-value").PressAsync("Enter");
        await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync("38", new() { Timeout = 30_000 });
        await Assertions.Expect(Turning(page)).ToHaveAttributeAsync("data-turning", "37 22 0.4");
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("turn=37"));
    }

    [Theory, InlineData(true), InlineData(false)]
    public async Task Edit_MadeInTheTurnedView_IsSeenFromTheSamePlace(bool hasScript)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address, hasScript: hasScript);
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/jar-cabinet?view=apart&turn=37&tip=22&apart=0.4");
        await page.Locator("#outline [data-outline='P']").ClickAsync();
        await Assertions.Expect(page.Locator("#working .working-title").First).ToContainTextAsync("partition P");
        await Assertions.Expect(Turning(page)).ToHaveAttributeAsync("data-turning", "37 22 0.4");
        ILocator form = page.Locator("[data-choice='move'] > form");
        if (!await form.IsVisibleAsync()) await page.Locator("[data-choice='move'] > summary").ClickAsync();
        await form.Locator("input[type='text']").First.FillAsync("19");
        await form.Locator("button[type='submit']").ClickAsync();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2", new() { Timeout = 30_000 });
        await Assertions.Expect(Turning(page)).ToHaveAttributeAsync("data-turning", "37 22 0.4");
    }
}
