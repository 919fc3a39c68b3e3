using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>What stands in words and not by colour or place alone, what is one stop of the Tab key, and what follows after a change.</summary>
public sealed class HeardTests(Room room)
{
    private static async Task<Sheet> At(Room room, KeptShop shop, string path, bool hasScript = true)
    {
        Sheet sheet = await room.OpenAsync(address: shop.Address, hasScript: hasScript);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    [Fact]
    public async Task Foot_FollowsTheRevisionWithoutLoadingThePage()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=C.width");
        IPage page = sheet.Page;
        await Assertions.Expect(page.Locator(".foot")).ToContainTextAsync("from revision 1 ");
        await page.EvaluateAsync("() => { document.documentElement.dataset.same = 'yes'; }");
        await page.Locator(".for-desk [data-key='C.width'] text").First.ClickAsync();
        await page.Locator("#sizing-size").FillAsync("39");
        await page.Locator("#sizing-size").PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2", new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator(".foot")).ToContainTextAsync("from revision 2 ");
        // What another window did is told there too.
        shop.Change("jar-cabinet", t => t.Replace("name: Jar cabinet", "name: Jam cabinet", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator(".foot")).ToContainTextAsync("from revision 3 ", new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator(".piece-name")).ToHaveTextAsync("Jam cabinet");
        await Assertions.Expect(page.Locator(".foot [data-keys]")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-same", "yes");
    }

    [Fact]
    public async Task Part_MarkedCut_SaysInWordsThatItIsTakenAsPlanned_UntilItIsRead()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench?size=L1.front");
        IPage page = sheet.Page;
        ILocator part = page.Locator("#parts [data-part='L1.front']");
        await Assertions.Expect(part).Not.ToContainTextAsync("cut");
        await page.Locator("[data-choice='mark-cut'] > summary").ClickAsync();
        await page.Locator("[data-choice='mark-cut'] button").ClickAsync();
        await Assertions.Expect(page.Locator("#working .reading").First).ToContainTextAsync("marked cut; taken as planned", new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator("#working")).Not.ToContainTextAsync("read at the bench");
        await Assertions.Expect(page.Locator("#bench-notes")).ToContainTextAsync("It is cut; taken as planned.");
        await Assertions.Expect(part.Locator(".count")).ToContainTextAsync(", cut");
        await page.Locator("[data-choice='note-read'] > summary").ClickAsync();
        await page.Locator("#read-value").FillAsync("21 31/32");
        await page.Locator("#read-value").PressAsync("Enter");
        await Assertions.Expect(page.Locator("#working")).ToContainTextAsync("read at the bench", new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator("#bench-notes")).Not.ToContainTextAsync("taken as planned");
    }

    /// <summary>Two acts of one name on a page are two riddles to whoever hears them one by one.</summary>
    [Theory]
    [InlineData("/piece/luthiers-bench/buy")]
    [InlineData("/piece/luthiers-bench/break-down")]
    [InlineData("/piece/luthiers-bench?size=T")]
    [InlineData("/piece/luthiers-bench/finish")]
    [InlineData("/")]
    public async Task Buttons_SayWhatTheyAreAbout(string path)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        foreach ((string id, string of) in new[] { ("e1", "L.width"), ("e2", "R.width") }) shop.Log("luthiers-bench", new Setout.Shop.Texts.ReadingEntry(id, "2026-05-02T09:00:00+00:00", new(of), [Setout.Core.Measures.ExactLength.FromInches(Setout.Core.Measures.Rational.Of(157, 8))], "rule", ""));
        // Two finishes of which nobody has said how far they go.
        shop.Change("luthiers-bench", t => t + "\nfinishes:\n  oil: {finish: hard oil, coats: 1, on: L1}\n  wax: {finish: hard wax, coats: 1, on: T}\n");
        await using Sheet sheet = await At(room, shop, path);
        IPage page = sheet.Page;
        await Assertions.Expect(page.Locator(path.EndsWith("break-down", StringComparison.Ordinal) ? ".runs" : "main")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator(".waiting-note")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        string[] names = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('main button[type=submit], .stand button[type=submit]')].map(b => (b.getAttribute('aria-label') ?? b.textContent).replace(/\\s+/g, ' ').trim())");
        Assert.True(names.Length > 1, string.Join("; ", names));
        string[] twice = [.. names.GroupBy(n => n).Where(g => g.Count() > 1).Select(g => g.Key)];
        Assert.True(twice.Length == 0, string.Join("; ", twice));
    }

    [Fact]
    public async Task ListsOfLinks_AreOneStopEach_WithArrowsInside_AndAllStopsWithoutScript()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        const string Path = "/piece/luthiers-bench?size=L1.front";
        await using Sheet sheet = await At(room, shop, Path);
        IPage page = sheet.Page;
        static Task<int[]> Stops(IPage page) => page.EvaluateAsync<int[]>("() => [...document.querySelectorAll('.nearby ul, #parts .bench-list')].map(l => [...l.querySelectorAll('a')].filter(a => a.tabIndex >= 0).length)");
        Assert.All(await Stops(page), n => Assert.Equal(1, n));
        // Beside the size that is shown stands the next; down the list of parts one stays in the column.
        await page.Locator(".nearby a[tabindex='0']").First.FocusAsync();
        string first = await page.EvaluateAsync<string>("() => document.activeElement.textContent");
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.NotEqual(first, await page.EvaluateAsync<string>("() => document.activeElement.textContent"));
        ILocator lines = page.Locator("#parts .bench-list").First.Locator("li");
        await lines.Nth(0).Locator(".sizes a").First.FocusAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        await Assertions.Expect(lines.Nth(1).Locator(".sizes a").First).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(lines.Nth(1).Locator(".sizes a").Nth(1)).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Home");
        await Assertions.Expect(lines.Nth(0).Locator("a").First).ToBeFocusedAsync();
        // Left and come back to, it is where one was; and the lists of a fresh page are the same.
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Shift+Tab");
        await Assertions.Expect(lines.Nth(1).Locator("a").First).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#working")).ToBeFocusedAsync(new() { Timeout = 30_000 });
        Assert.All(await Stops(page), n => Assert.Equal(1, n));
        await using Sheet still = await At(room, shop, Path, hasScript: false);
        Assert.True(await still.Page.Locator("#parts .bench-list a").CountAsync() > 20);
        Assert.Equal(0, await still.Page.Locator(".nearby a[tabindex], #parts .bench-list a[tabindex]").CountAsync());
    }

    /// <summary>A press goes to what stood under it, though a fresh one took its place before it was let go.</summary>
    [Fact]
    public async Task Press_WhileATrialPutsAFreshListThere_IsNotLost()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=C.width");
        IPage page = sheet.Page;
        ILocator link = page.Locator("#parts [data-part='P'] .part-name");
        LocatorBoundingBoxResult box = await link.StandsAsync(isBrought: true);
        await page.Mouse.MoveAsync(box.X + 5, box.Y + (box.Height / 2));
        await page.Mouse.DownAsync();
        await page.EvaluateAsync("() => { window.before = document.getElementById('parts'); const field = document.getElementById('f-outside-width') ?? [...document.querySelectorAll('#choices input[type=text]')].find(f => f.value === '38'); field.value = '40'; field.dispatchEvent(new Event('input', { bubbles: true })); }");
        await page.WaitForFunctionAsync("() => !window.before.isConnected");
        Assert.DoesNotContain("size=P", page.Url, StringComparison.Ordinal);
        await page.Mouse.UpAsync();
        await page.WaitForURLAsync(new Regex("size=P"), new() { WaitUntil = WaitUntilState.Commit });
        await Assertions.Expect(page.Locator("#working .working-title").First).ToContainTextAsync("partition P", new() { Timeout = 30_000 });
    }

    /// <summary>One does not wait for the program: what is typed into the next form while the one before is sent stays there.</summary>
    [Fact]
    public async Task Field_TypedInWhileAnotherFormIsSent_KeepsWhatWasTyped()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=C.width");
        IPage page = sheet.Page;
        var typed = new TaskCompletionSource();
        await page.RouteAsync("**/edit", async route =>
        {
            await typed.Task;
            await route.ContinueAsync();
        });
        await page.Locator(".save-point summary").ClickAsync();
        await page.GetByLabel("Outside width of C", new() { Exact = true }).FillAsync("40");
        await page.GetByLabel("Outside width of C", new() { Exact = true }).PressAsync("Enter");
        await page.Locator("#save-point").FillAsync("wide");
        typed.SetResult();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2", new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator("#save-point")).ToHaveValueAsync("wide");
        await Assertions.Expect(page.Locator("#save-point")).ToBeFocusedAsync();
        await page.Locator("#save-point").PressAsync("Enter");
        await Assertions.Expect(page.Locator("#voice")).ToContainTextAsync("This state is kept by that name", new() { Timeout = 30_000 });
    }

    /// <summary>What is half typed for one thing never stands in the form of another, which has the same fields.</summary>
    [Fact]
    public async Task Field_TypedInForOneOpening_IsNotFilledInForTheNext()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=A");
        IPage page = sheet.Page;
        await page.Locator("[data-choice='opening-before'] > summary").ClickAsync();
        await page.Locator("#f-opening-before-size").FillAsync("9");
        await page.Locator("[data-choice='opening-after'] > summary").ClickAsync();
        await page.Locator("#f-opening-after-size").FillAsync("5");
        await page.Locator("#f-opening-after-size").PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2", new() { Timeout = 30_000 });
        Assert.DoesNotContain("size=A#", page.Url + "#", StringComparison.Ordinal);
        await Assertions.Expect(page.Locator("#f-opening-before-size")).ToHaveValueAsync("");
    }
}
