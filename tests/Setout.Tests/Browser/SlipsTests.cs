using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>All slips of a form are told at once, each beside its field, with script and without; the keyboard is at the first, and whoever mends one is still told of the others.</summary>
public sealed class SlipsTests(Room room)
{
    private static readonly Dictionary<string, (string Address, string Form, (string Name, string Typed, string Words)[] Slips)> s_forms = new()
    {
        ["a well"] = ("/piece/luthiers-bench?size=K", "[data-choice='well'] > form",
            [("field-machine", "", "“Machine” is empty."), ("field-footprint", "18 by", "18 by"), ("field-table", "low", "'low' is not a figure."), ("field-front", "", "Type a length.")]),
        ["a case beside"] = ("/piece/luthiers-bench?size=F", "[data-choice='case-beside'] > form",
            [("field-width", "wide", "'wide' is not a figure."), ("field-height", "-2", "-2"), ("field-depth", "wide", "'wide' is not a figure.")]),
        ["sheets of the shop"] = ("/shop?item=stock", "[data-choice='add-stock-panel'] > form",
            [("field-panel", "", "is empty"), ("field-size", "96 by", "96 by"), ("field-price", "dear", "dear"), ("field-have", "two", "two")]),
        ["a saw"] = ("/shop?item=saws.fence", "[data-choice='set'] > form", [("field-widest", "wide", "wide"), ("field-narrowest", "slim", "slim")]),
        ["a finish"] = ("/piece/luthiers-bench/finish", "[data-choice^='say.finishes'] > form", [("field-finish", "", "is empty"), ("field-coats", "two", "two"), ("field-covers", "well", "well")]),
        ["a reading"] = ("/piece/luthiers-bench?size=boxes.thickness", "[data-choice='note-read'] > form", [("sheet", "no. 1", "cannot be the name of a sheet"), ("value", "thick", "'thick' is not a length")]),
    };

    private static async Task<(IPage Page, ILocator Form)> FilledAsync(IPage page, string which)
    {
        (string address, string selector, var slips) = s_forms[which];
        await page.GotoAsync(address);
        ILocator form = page.Locator(selector);
        await OpenAsync(page, form, selector);
        foreach ((string name, string typed, _) in slips) await form.Locator($"[name='{name}']").FillAsync(typed);
        return (page, form);
    }

    private static async Task OpenAsync(IPage page, ILocator form, string selector)
    {
        if (!await form.IsVisibleAsync()) await page.Locator(selector.Replace("> form", "> summary", StringComparison.Ordinal)).ClickAsync();
        if (await form.Locator(".more-fields:not([open]) > summary").CountAsync() > 0) await form.Locator(".more-fields > summary").ClickAsync();
    }

    public static TheoryData<string> Forms => [.. s_forms.Keys];

    [Theory]
    [MemberData(nameof(Forms))]
    public async Task Form_WithSeveralSlips_TellsEachBesideItsField(string which)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        (IPage page, ILocator form) = await FilledAsync(sheet.Page, which);
        (string Name, string Typed, string Words)[] slips = s_forms[which].Slips;
        await form.Locator("button[type='submit']").ClickAsync();
        foreach ((string name, string typed, string words) in slips)
        {
            ILocator field = form.Locator($"[name='{name}']");
            await Assertions.Expect(field).ToHaveAttributeAsync("aria-invalid", "true");
            await Assertions.Expect(field).ToHaveValueAsync(typed);
            Assert.Contains(words, await DescribedAsync(field), StringComparison.Ordinal);
            Assert.True(await field.LookAsync<bool>("e => (e.closest('p, .note-value') ?? e).nextElementSibling.matches('.fault:not([hidden])')"), $"{name} is not told of beside it");
        }
        await Assertions.Expect(form.Locator("[aria-invalid]")).ToHaveCountAsync(slips.Length);
        await Assertions.Expect(form.Locator($"[name='{slips[0].Name}']")).ToBeFocusedAsync();
        await Axe.FindsNothingAsync(page, $"{which} refused", ColorScheme.Light);
        // Whoever mends one is told of the others still.
        await form.Locator($"[name='{slips[1].Name}']").PressSequentiallyAsync("1");
        await Assertions.Expect(form.Locator($"[name='{slips[0].Name}']")).ToHaveAttributeAsync("aria-invalid", "true");
        Assert.Contains(slips[0].Words, await DescribedAsync(form.Locator($"[name='{slips[0].Name}']")), StringComparison.Ordinal);
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(form.Locator("[aria-invalid]")).ToHaveCountAsync(0);
        await Assertions.Expect(form.Locator(".fault:not([hidden])")).ToHaveCountAsync(0);
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public async Task Form_WithSeveralSlips_TellsEachBesideItsField_WithoutAScript(string which)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(390, address: shop.Address, hasScript: false);
        IPage page = sheet.Page;
        (string address, string selector, var slips) = s_forms[which];
        await page.GotoAsync(address);
        ILocator form = page.Locator(selector);
        await OpenAsync(page, form, selector);
        foreach ((string name, string typed, _) in slips) await form.Locator($"[name='{name}']").FillAsync(typed);
        await form.Locator("button[type='submit']").ClickAsync();
        foreach ((string name, string typed, string words) in slips)
        {
            ILocator field = page.Locator($"[name='{name}']");
            await Assertions.Expect(field).ToHaveAttributeAsync("aria-invalid", "true");
            await Assertions.Expect(field).ToHaveValueAsync(typed);
            await Assertions.Expect(page.Locator($"[name='{name}'] + .fault")).ToContainTextAsync(words);
        }
        await Assertions.Expect(page.Locator("[aria-invalid]")).ToHaveCountAsync(slips.Length);
        await Assertions.Expect(page.Locator("[aria-invalid]").First).ToBeFocusedAsync();
    }

    /// <summary>What is told of a field already is not said anew with each key that is pressed in another.</summary>
    [Fact]
    public async Task Slip_ToldAlready_StaysAsItIsWhileAnotherIsMended()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        (IPage page, ILocator form) = await FilledAsync(sheet.Page, "a case beside");
        await form.Locator("button[type='submit']").ClickAsync();
        await Assertions.Expect(form.Locator("[aria-invalid]")).ToHaveCountAsync(3);
        await form.ActAsync("f => { f.querySelector('[name=\"field-depth\"] + .fault').dataset.seen = 'yes'; }");
        Task<IResponse> answered = page.WaitForResponseAsync(a => a.Url.EndsWith("/trial", StringComparison.Ordinal));
        await form.Locator("[name='field-width']").FillAsync("24");
        await answered;
        await Assertions.Expect(form.Locator("[aria-invalid]")).ToHaveCountAsync(2);
        await Assertions.Expect(form.Locator("[name='field-depth'] + .fault[data-seen='yes']")).ToHaveTextAsync("'wide' is not a figure. Write figures, such as 23 1/4.");
        await form.Locator("[name='field-height']").FillAsync("33 1/4");
        await form.Locator("[name='field-depth']").FillAsync("20");
        await Assertions.Expect(form.Locator("[aria-invalid]")).ToHaveCountAsync(0);
        await form.Locator("button[type='submit']").ClickAsync();
        await Assertions.Expect(page.Locator("#made")).ToContainTextAsync("beside F");
    }

    [Fact]
    public async Task Shop_BegunWithSlips_TellsEachBesideItsField()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/shop");
        await page.Locator("[name='field-grid']").FillAsync("fine");
        await page.Locator("[name='field-kerf']").FillAsync("thin");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin the shop" }).ClickAsync();
        await Assertions.Expect(page.Locator("[aria-invalid]")).ToHaveCountAsync(2);
        await Assertions.Expect(page.Locator("[name='field-grid']")).ToBeFocusedAsync();
        Assert.Contains("fine", await DescribedAsync(page.Locator("[name='field-grid']")), StringComparison.Ordinal);
        Assert.Contains("thin", await DescribedAsync(page.Locator("[name='field-kerf']")), StringComparison.Ordinal);
    }

    private static Task<string> DescribedAsync(ILocator field) => field.LookAsync<string>("e => (e.getAttribute('aria-describedby') ?? '').split(' ').map(id => document.getElementById(id)?.textContent ?? '').join(' ')");
}
