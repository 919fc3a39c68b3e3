using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>What cannot be taken is told beside the field it was typed into, which has the keyboard then and says that it is wrong.</summary>
public sealed class BlamingTests(Room room)
{
    [Theory]
    [InlineData("/piece/luthiers-bench?size=K", "drawers", "field-count", "many", "'many' is not a whole number.")]
    [InlineData("/piece/luthiers-bench?size=K", "posts", "field-at", "300", "281 1/2 in too much")]
    [InlineData("/piece/luthiers-bench?size=K", "across-at", "field-at", "12 by", "12 is understood; 'by' after it is not a unit.")]
    [InlineData("/shop?item=stock", "add-stock-panel", "field-size", "96 by", "96 by")]
    [InlineData("/shop?item=stock", "add-stock-panel", "field-have", "two", "'two'")]
    public async Task Form_RefusedForOneOfItsFields_SaysSoBesideThatFieldAndGivesItTheKeyboard(string address, string choice, string name, string typed, string words)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync(address);
        ILocator form = page.Locator($"[data-choice='{choice}'] > form"), field = form.Locator($"[name='{name}']");
        if (!await form.IsVisibleAsync()) await page.Locator($"[data-choice='{choice}'] > summary").ClickAsync();
        foreach ((string other, string value) in new[] { ("field-panel", "birch plywood"), ("field-label", "1/2"), ("field-size", "96 x 48"), ("field-have", "2") })
            if (await form.Locator($"[name='{other}']").CountAsync() > 0) await form.Locator($"[name='{other}']").FillAsync(value);
        await field.FillAsync(typed);
        await form.Locator("button[type='submit']").ClickAsync();
        ILocator fault = form.Locator(".fault");
        await Assertions.Expect(fault).ToContainTextAsync(words);
        // It is told where it was typed, not where it would stand in the text.
        await Assertions.Expect(fault).Not.ToContainTextAsync("Line");
        await Assertions.Expect(field).ToBeFocusedAsync();
        await Assertions.Expect(field).ToHaveAttributeAsync("aria-invalid", "true");
        Assert.Contains(words, await field.LookAsync<string>("e => e.getAttribute('aria-describedby').split(' ').map(id => document.getElementById(id).textContent).join(' ')"), StringComparison.Ordinal);
        Assert.True(await field.LookAsync<bool>("e => e.nextElementSibling.matches('.fault')"), "it is not told beside the field");
        await Axe.FindsNothingAsync(page, $"{address}, {name} refused", ColorScheme.Light);
        // Whoever mends it is told no longer.
        await field.FillAsync("2");
        await Assertions.Expect(field).Not.ToHaveAttributeAsync("aria-invalid", "true");
        Assert.Empty(await field.LookAsync<string[]>("e => (e.getAttribute('aria-describedby') ?? '').split(' ').filter(id => id && !document.getElementById(id))"));
    }

    [Fact]
    public async Task Field_ThatOneHasNotComeTo_IsNoMistakeWhileAnotherIsTypedIn()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/luthiers-bench?size=T");
        await page.Locator("[data-choice='well'] > summary").ClickAsync();
        ILocator form = page.Locator("[data-choice='well'] > form");
        Task<IResponse> answered = page.WaitForResponseAsync(a => a.Url.EndsWith("/trial", StringComparison.Ordinal));
        await form.Locator("input[type='text']").First.PressSequentiallyAsync("3");
        await answered;
        await page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => setTimeout(done)))");
        await Assertions.Expect(form.Locator(".fault")).ToBeHiddenAsync();
        await Assertions.Expect(form.Locator("[aria-invalid]")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Form_RefusedWithoutScript_MarksTheFieldOnThePageThatSaysSo()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address, hasScript: false);
        IPage page = sheet.Page;
        await page.GotoAsync("/shop?item=stock");
        await page.Locator("[data-choice='add-stock-panel'] > summary").ClickAsync();
        ILocator form = page.Locator("[data-choice='add-stock-panel'] > form");
        foreach ((string other, string value) in new[] { ("field-panel", "birch plywood"), ("field-label", "1/2"), ("field-size", "96 by"), ("field-have", "2") }) await form.Locator($"[name='{other}']").FillAsync(value);
        await form.Locator("button[type='submit']").ClickAsync();
        ILocator field = page.Locator("[name='field-size']");
        await Assertions.Expect(field).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(field).ToHaveAttributeAsync("aria-describedby", new System.Text.RegularExpressions.Regex("^typed-[0-9]+-fault$"));
        await Assertions.Expect(field).ToBeFocusedAsync();
        await Assertions.Expect(page.Locator("[aria-invalid]")).ToHaveCountAsync(1);
    }
}
