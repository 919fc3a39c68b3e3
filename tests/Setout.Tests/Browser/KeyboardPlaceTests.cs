// Over 200 lines: one act after another, and where the keyboard is after each.
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
        await Assertions.Expect(form.Locator($"[name='{first}']").First).ToBeFocusedAsync();
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

    [Fact]
    public async Task ReadAtBreakDown_ItIsSaidWhatMovedAndTheKeyboardIsOnThePage()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench/break-down");
        IPage page = sheet.Page;
        ILocator field = page.GetByLabel("It measures: bay L, clear width").First;
        // It stands open where something is due or waits.
        await Assertions.Expect(page.Locator(".runs")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await page.Locator("details", new() { HasText = "By batch" }).First.ActAsync("d => d.open = true");
        await field.FillAsync("19 1/2");
        await field.PressAsync("Enter");
        Assert.DoesNotContain("BODY", await PlaceAsync(page, "moved"), StringComparison.Ordinal);
        await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync("clear width", new() { Timeout = 60_000 });
    }

    // What has the keyboard, once it is there: where a page is swapped more than once it goes along.
    private static Task HasKeyboardAsync(IPage page, string selector) => Assertions.Expect(page.Locator(selector).First).ToBeFocusedAsync(new() { Timeout = 30_000 });

    // By the keyboard alone.
    private static async Task PressAsync(ILocator what)
    {
        await what.FocusAsync();
        await what.PressAsync("Enter");
    }

    /// <summary>A link to another size of this page takes the keyboard along to its working, as it does by loading the page.</summary>
    [Theory]
    [InlineData(".nearby li:not(:has([aria-current])) a")]
    [InlineData("#parts [data-part='L3.side'] .sizes a")]
    [InlineData("#parts [data-part='L3.side'] .part-name")]
    [InlineData("#working a.term")]
    [InlineData("#chosen-line a")]
    public async Task LinkToASize_TakesTheKeyboardAlongToItsWorking(string link)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench?size=L1.front");
        IPage page = sheet.Page;
        // The line under the drawing is there where the working stands far below.
        if (link.StartsWith("#chosen-line", StringComparison.Ordinal)) await page.SetViewportSizeAsync(390, 844);
        await PressAsync(page.Locator(link).First);
        await HasKeyboardAsync(page, "#working");
        await Assertions.Expect(page.Locator("#working .working-title").First).ToBeInViewportAsync();
    }

    [Fact]
    public async Task LinkToAPlaceOfThePage_TakesTheKeyboardAlong_AndATabOrATreeKeepsIt()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench?size=L1.front");
        IPage page = sheet.Page;
        await PressAsync(page.Locator(".views a", new() { HasTextString = "parts" }));
        await HasKeyboardAsync(page, "#parts");
        await page.Locator("[role='tree'] a[tabindex='0']").FocusAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        string item = await page.EvaluateAsync<string>("() => document.activeElement.getAttribute('href')");
        await page.Keyboard.PressAsync("Enter");
        await HasKeyboardAsync(page, $"[role='tree'] a[href='{item}'][aria-current='true']");
        await PressAsync(page.Locator(".views a", new() { HasTextString = "side" }));
        await HasKeyboardAsync(page, ".views a[aria-current='true']");
    }

    [Fact]
    public async Task PieceOnTheShelf_PutAwayAndTakenBack_TheKeyboardIsWhereItIs_AndItIsSaidWhich()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/");
        IPage page = sheet.Page;
        await PressAsync(page.GetByLabel("Rename, copy, put away: Jar cabinet", new() { Exact = true }));
        await PressAsync(page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Put away ?: Jar cabinet$") }));
        await PlaceAsync(page, "Jar cabinet is put away; it can be taken back.");
        await HasKeyboardAsync(page, ".put-away > summary");
        await page.Keyboard.PressAsync("Enter");
        string name = (await page.Locator(".put-away li a").First.TextContentAsync())!;
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Enter");
        await PlaceAsync(page, $"{name} is on the shelf again.");
        await HasKeyboardAsync(page, "#shelf h2 a[href='/piece/jar-cabinet']");
    }

    [Fact]
    public async Task DrawerMarkedCutUpsetAndMended_TheKeyboardIsWithWhatCameOfIt()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Log("luthiers-bench", Reading("e1", "L.width", 157));
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench?size=L1");
        IPage page = sheet.Page;
        await PressAsync(page.Locator("[data-choice='mark-cut'] > summary"));
        await PressAsync(page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Mark them cut ?: drawer L1$") }));
        await PlaceAsync(page, "Cut: drawer L1");
        await HasKeyboardAsync(page, "#bench-notes");
        await page.GotoAsync("/piece/luthiers-bench?size=L");
        await PressAsync(page.Locator("[data-choice='note-read'] > summary"));
        await page.Locator("#read-value").FillAsync("19 7/16");
        await page.Locator("#read-value").PressAsync("Enter");
        await PlaceAsync(page, "1 upset");
        await HasKeyboardAsync(page, "#read-value");
        await PressAsync(page.Locator(".remedies summary", new() { HasTextString = "Trim" }).First);
        await PressAsync(page.Locator(".remedies details[open] button").First);
        await PlaceAsync(page, "2 figures to cut moved");
        await HasKeyboardAsync(page, "#moved");
        await PressAsync(page.Locator("#moved").GetByRole(AriaRole.Button, new() { NameRegex = new("^Take back") }));
        await PlaceAsync(page, "Taken back: cut");
        await HasKeyboardAsync(page, "#moved");
    }

    [Fact]
    public async Task WellPutIn_TheKeyboardIsWithWhatCanBeDoneWithIt()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench?size=T");
        IPage page = sheet.Page;
        await PressAsync(page.Locator("[data-choice='well'] > summary"));
        // Nought is typed for the bay: it is chosen by how far it is from the left.
        foreach (string? typed in new[] { null, "30", "jointer", "18 x 14", "12", "4" })
        {
            await page.Keyboard.PressAsync("Tab");
            if (typed is not null) await page.Keyboard.TypeAsync(typed);
        }
        await page.Keyboard.PressAsync("Enter");
        await PlaceAsync(page, "Well W for jointer in top T");
        await HasKeyboardAsync(page, "#choices");
        Assert.Contains("size=W", page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PageThatComesWhileWordsOfAFieldAreChosen_KeepsThemChosen_AndTheNextKeyReplacesThem()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=C.width");
        ILocator field = sheet.Page.Locator("[data-choice='width'] [name='field-size']");
        if (!await field.IsVisibleAsync()) await sheet.Page.Locator("[data-choice='width'] summary").First.ClickAsync();
        await field.FocusAsync();
        await field.PressAsync("ControlOrMeta+a");
        shop.Change("jar-cabinet", t => t.Replace("name: Jar cabinet", "name: Spice cabinet", StringComparison.Ordinal));
        await Assertions.Expect(sheet.Page.Locator(".piece-name")).ToHaveTextAsync("Spice cabinet", new() { Timeout = 30_000 });
        await Assertions.Expect(sheet.Page.Locator("h1")).ToContainTextAsync("Spice cabinet");
        await Assertions.Expect(field).ToBeFocusedAsync();
        await sheet.Page.Keyboard.TypeAsync("40 1/16");
        await Assertions.Expect(field).ToHaveValueAsync("40 1/16");
    }
}
