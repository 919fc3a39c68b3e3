using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>What a long form is sent by stays in sight while one is in it, and never lies over what has the keyboard.</summary>
public sealed class LongFormsTests(Room room)
{
    /// <summary>Which sheet, which spot, what was read, by what: in the order in which one does it.</summary>
    [Fact]
    public async Task Reading_OfASheet_AsksInTheOrderInWhichOneReads()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync("/piece/luthiers-bench?size=boxes.thickness");
        Assert.Equal(["sheet", "spot", "value", "with", "Note the reading"], await sheet.Page.Locator("[data-choice='note-read'] form").LookAsync<string[]>(
            "f => [...f.querySelectorAll('input:not([type=\"hidden\"], [type=\"checkbox\"]), select, button')].map(e => e.name || e.textContent)"));
    }

    /// <summary>One who presses the button sees that there is more to say.</summary>
    [Fact]
    public async Task Fields_BelowTheButton_AreCountedBesideIt()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(390, address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/luthiers-bench?size=K");
        ILocator fold = page.Locator("[data-choice='well']"), row = fold.Locator(".do-it");
        await fold.Locator(":scope > summary").ClickAsync();
        await fold.ActAsync("d => d.querySelector('input:not([type=\"hidden\"]), select').scrollIntoView({ block: 'end' })");
        await Assertions.Expect(row).ToHaveAttributeAsync("data-below", new System.Text.RegularExpressions.Regex("^[1-9][0-9]* more fields? below$"));
        await fold.ActAsync("d => d.querySelector('.do-it').scrollIntoView({ block: 'end' })");
        await fold.ActAsync("d => [...d.querySelectorAll('input:not([type=\"hidden\"]), select')].filter(f => f.getClientRects().length > 0).at(-1).scrollIntoView({ block: 'center' })");
        await Assertions.Expect(row).ToHaveAttributeAsync("data-below", "");
    }

    [Theory]
    [InlineData("/piece/luthiers-bench?size=K", "[data-choice='well']", 1440)]
    [InlineData("/piece/luthiers-bench?size=K", "[data-choice='well']", 390)]
    [InlineData("/piece/luthiers-bench/says?of=T", "[data-choice='say.slots.more0']", 1440)]
    [InlineData("/piece/luthiers-bench/says?of=T", "[data-choice='say.slots.more0']", 390)]
    [InlineData("/shop?item=stock", "[data-choice='add-stock-panel']", 1440)]
    [InlineData("/shop?item=stock", "[data-choice='add-stock-panel']", 390)]
    [InlineData("/piece/luthiers-bench/finish", "[data-choice^='say.finishes']", 390)]
    public async Task Button_OfALongForm_IsInSightFromEachOfItsFields_AndOverNone(string address, string choice, int width)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(width, address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync(address);
        ILocator fold = page.Locator(choice);
        await fold.ActAsync("d => { d.open = true; for (const more of d.querySelectorAll('details')) more.open = true; }");
        ILocator fields = fold.Locator("form :is(input:not([type='hidden']), select):visible");
        int count = await fields.CountAsync();
        Assert.True(count > 2);
        await page.Locator(choice).Locator(":scope > summary").FocusAsync();
        for (int i = 0; i < count; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            // A fold within is one stop more.
            if (await page.EvaluateAsync<bool>("() => document.activeElement.matches('summary')")) await page.Keyboard.PressAsync("Tab");
            string seen = await fold.LookAsync<string>("""
                d => {
                  const field = document.activeElement, button = d.querySelector('.do-it').getBoundingClientRect(), at = field.getBoundingClientRect();
                  if (!d.contains(field) || !field.matches('input, select')) return `the keyboard is at ${field.outerHTML.slice(0, 80)}`;
                  if (button.top < 0 || button.bottom > innerHeight + 1) return `${field.name}: the button is out of sight, ${button.top} of ${innerHeight}`;
                  return at.bottom > button.top + 1 || at.top < 0 ? `${field.name}: it lies under the button, ${at.bottom} below ${button.top}` : '';
                }
                """);
            Assert.Equal("", seen);
        }
    }
}
