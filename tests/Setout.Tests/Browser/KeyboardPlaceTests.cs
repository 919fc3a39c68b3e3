using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>After each act the keyboard is somewhere sensible: never nowhere, and never on another act of the same kind.</summary>
public sealed class KeyboardPlaceTests(Room room)
{
    private static async Task<Sheet> At(Room room, KeptShop shop, string path)
    {
        Sheet sheet = await room.OpenAsync(address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    // Waits for what is said, then tells what has the keyboard: its tag, the words on it and what it stands in.
    private static async Task<string> PlaceAsync(IPage page, string said)
    {
        await Assertions.Expect(page.Locator("#voice")).ToContainTextAsync(new Regex(said), new() { Timeout = 30_000 });
        return await page.EvaluateAsync<string>("() => { const e = document.activeElement; return `${e.tagName} ${e.getAttribute('aria-label') ?? e.textContent.trim().slice(0, 80)} in ${e.closest('[data-entry], [data-run], [data-choice]')?.outerHTML.slice(0, 120) ?? ''}`; }");
    }

    private static ReadingEntry Reading(string id, string of, int eighths) => new(id, $"2026-05-02T09:0{id[^1]}:00+00:00", new QuantityKey(of), [ExactLength.FromInches(Rational.Of(eighths, 8))], "rule", "");

    [Fact]
    public async Task Voided_TheKeyboardStaysWithWhatWasVoided_NotOnTheNextToVoid()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        foreach ((string id, string of) in new[] { ("e1", "L.width"), ("e2", "R.width"), ("e3", "F.depth") }) shop.Log("luthiers-bench", Reading(id, of, 157));
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench/facts");
        await sheet.Page.Locator("[data-entry='e2'] button").FocusAsync();
        await sheet.Page.Keyboard.PressAsync("Enter");
        string place = await PlaceAsync(sheet.Page, "e2|R|void|Void|taken back");
        Assert.Contains("data-entry=\"e2\"", place, StringComparison.Ordinal);
        Assert.DoesNotContain("BUTTON", place, StringComparison.Ordinal);
        await sheet.Page.Keyboard.PressAsync("Enter");
        Assert.Single(shop.Database.FactsOf(shop.Database.Find("luthiers-bench")!.Id).Read().Entries.OfType<VoidEntry>());
    }

    [Fact]
    public async Task RunCut_TheKeyboardGoesOnToTheNextRun()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/herb-rack/break-down");
        ILocator cut = sheet.Page.Locator(".runs .is-next button").First;
        await Assertions.Expect(cut).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await cut.FocusAsync();
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("#run-1.is-cut")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(sheet.Page.Locator("#run-2.is-next")).ToBeFocusedAsync(new() { Timeout = 30_000 });
        Assert.NotEmpty(await PlaceAsync(sheet.Page, "run 1|Run 1"));
    }

    [Fact]
    public async Task SheetPutIn_TheKeyboardIsInTheFirstFieldForOneMore_AndItIsSaidWhatWasAdded()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/shop?item=stock");
        await sheet.Page.Locator("[data-choice='add-stock-panel'] summary").First.ClickAsync();
        ILocator form = sheet.Page.Locator("[data-choice='add-stock-panel']");
        string first = (await form.Locator("input:not([type='hidden']), select").First.GetAttributeAsync("name"))!;
        await form.Locator("[name='field-panel']").FillAsync("birch plywood");
        await form.Locator("[name='field-label']").FillAsync("1/2");
        await form.Locator("[name='field-size']").FillAsync("96 x 48");
        await form.Locator("[name='field-have']").FillAsync("2");
        await form.Locator("[name='field-have']").PressAsync("Enter");
        await PlaceAsync(sheet.Page, "added: birch plywood");
        Assert.Equal(first, await sheet.Page.EvaluateAsync<string>("() => document.activeElement.getAttribute('name')"));
    }

    [Fact]
    public async Task DrawersPutIn_AndStateKept_TheKeyboardIsOnThePageAndWhatIsSaidIsNew()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=C.width");
        IPage page = sheet.Page;
        await page.Locator(".for-desk [data-key='C.width'] text").First.ClickAsync();
        await page.Locator("#sizing-size").FillAsync("39");
        await page.Locator("#sizing-size").PressAsync("Enter");
        await PlaceAsync(page, "39");
        await page.Locator(".save-point summary").First.ClickAsync();
        await page.Locator("#save-point").FillAsync("before the doors");
        await page.Locator("#save-point").PressAsync("Enter");
        Assert.DoesNotContain("BODY", await PlaceAsync(page, "This state is kept by that name"), StringComparison.Ordinal);
    }

    /// <summary>What no arrow leads to is reached in turn, so that nothing on the drawing is for the pointer alone.</summary>
    [Theory, InlineData("jar-cabinet"), InlineData("luthiers-bench"), InlineData("plan-chest")]
    public async Task PageDown_LeadsThroughAllThingsOfTheDrawing(string piece)
    {
        await using Sheet sheet = await room.OpenAsync();
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/" + piece);
        await page.Locator("#room").FocusAsync();
        string[] all = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('#room [data-key]')].filter(g => g.getAttribute('aria-label') && g.getBoundingClientRect().width > 0).map(g => g.dataset.key)");
        var met = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < all.Length; i++)
        {
            await page.Keyboard.PressAsync("PageDown");
            met.Add(await page.EvaluateAsync<string>("() => document.querySelector('#room .is-walked').dataset.key"));
        }
        Assert.Equal(all.Distinct().Order(StringComparer.Ordinal), met.Order(StringComparer.Ordinal));
        await page.Keyboard.PressAsync("Home");
        Assert.Equal(all[0], await page.EvaluateAsync<string>("() => document.querySelector('#room .is-walked').dataset.key"));
        Assert.Equal(0, await page.EvaluateAsync<int>("() => Math.round(scrollY)"));
    }

    [Fact]
    public async Task ReadAtBreakDown_ItIsSaidWhatMovedAndTheKeyboardIsOnThePage()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench/break-down");
        IPage page = sheet.Page;
        ILocator field = page.GetByLabel("It measures: bay L, clear width").First;
        // It stands open where something is due or waits; a page whose layouts became ready meanwhile is loaded anew.
        await Assertions.Expect(page.Locator(".runs")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await page.Locator("details", new() { HasText = "By batch" }).First.EvaluateAsync("d => d.open = true");
        await field.FillAsync("19 1/2");
        await field.PressAsync("Enter");
        Assert.DoesNotContain("BODY", await PlaceAsync(page, "moved"), StringComparison.Ordinal);
        await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync("clear width", new() { Timeout = 60_000 });
    }
}
