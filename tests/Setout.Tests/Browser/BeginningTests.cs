using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>What cannot be taken of a new piece is told at once, all of it, each slip beside its field; nothing that was typed or chosen is lost.</summary>
public sealed class BeginningTests(Room room)
{
    private static readonly (string Name, string Typed, string Words)[] s_slips =
    [
        ("name", "", "Its name: nothing is typed here. Type what you call it, such as Tool chest."),
        ("width", "seven", "Width outside: 'seven' is not a figure. Write figures, such as 590."),
        ("height", "", "Height outside: nothing is typed here. Type it in millimetres, such as 750."),
        ("depth", "3 1/", "Depth outside: 3 is understood; the fraction '1/' has no figure below its stroke. Write the figure below the stroke, as in 3 1/2."),
    ];

    [Theory]
    [InlineData("/", true), InlineData("/", false), InlineData("/new", true), InlineData("/new", false)]
    public async Task Form_WithSeveralSlips_TellsEachBesideItsFieldAndKeepsAllThatWasTypedAndChosen(string address, bool hasScript)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(390, address: shop.Address, hasScript: hasScript);
        IPage page = sheet.Page;
        await page.GotoAsync(address);
        await page.GetByLabel("a frame of posts and rails").CheckAsync();
        await page.GetByLabel("millimetres").CheckAsync();
        ILocator form = page.Locator("form.begin-form");
        foreach ((string name, string typed, string _) in s_slips) await form.Locator($"[name='{name}']").FillAsync(typed);
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        foreach ((string name, string typed, string words) in s_slips)
        {
            ILocator field = form.Locator($"[name='{name}']");
            await Assertions.Expect(field).ToHaveAttributeAsync("aria-invalid", "true");
            await Assertions.Expect(field).ToHaveValueAsync(typed);
            // Directly below its field, and belonging to it.
            await Assertions.Expect(form.Locator($"[name='{name}'] + .fault")).ToHaveTextAsync(words);
            await Assertions.Expect(field).ToHaveAttributeAsync("aria-describedby", new Regex($"^begin-{name}-fault"));
        }
        await Assertions.Expect(form.Locator("[name='name']")).ToBeFocusedAsync();
        await Assertions.Expect(page.GetByLabel("a frame of posts and rails")).ToBeCheckedAsync();
        await Assertions.Expect(page.GetByLabel("millimetres")).ToBeCheckedAsync();
        if (hasScript) Assert.EndsWith(address, page.Url, StringComparison.Ordinal);
        if (hasScript) await Axe.FindsNothingAsync(page, $"{address} refused", ColorScheme.Light);
        foreach ((string name, string good) in new[] { ("name", "Low table"), ("width", "1200"), ("height", "450"), ("depth", "600") }) await form.Locator($"[name='{name}']").FillAsync(good);
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await page.WaitForURLAsync("**/piece/low-table");
        Assert.Contains("unit: mm", shop.Text("low-table"), StringComparison.Ordinal);
        Assert.Contains("frame: F", shop.Text("low-table"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Slip_ThatIsMended_IsToldNoLongerAndTheOthersAre()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        ILocator form = page.Locator("form.begin-form"), height = form.Locator("[name='height']");
        await Assertions.Expect(form.Locator("[aria-invalid='true']")).ToHaveCountAsync(4);
        await height.FillAsync("30");
        await Assertions.Expect(form.Locator("[aria-invalid='true']")).ToHaveCountAsync(3);
        await Assertions.Expect(form.Locator(".is-height .fault")).ToHaveCountAsync(0);
        // What is worth knowing of a height still belongs to it.
        await Assertions.Expect(height).ToHaveAttributeAsync("aria-describedby", "begin-height-hint");
    }

    [Fact]
    public async Task Height_OfATopAlone_IsNotAskedAndWhatWasTypedComesBack()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        await using Sheet sheet = await room.OpenAsync(address: shop.Address, hasScript: false);
        IPage page = sheet.Page;
        await page.GotoAsync("/");
        ILocator height = page.GetByLabel("Height outside");
        await height.FillAsync("34");
        await Assertions.Expect(page.GetByText("Without a top that is put on later")).ToBeVisibleAsync();
        await page.GetByLabel("a top alone").CheckAsync();
        await Assertions.Expect(height).ToBeHiddenAsync();
        await Assertions.Expect(page.GetByText("Without a top that is put on later")).ToBeHiddenAsync();
        await page.GetByLabel("a case of sheets").CheckAsync();
        await Assertions.Expect(height).ToHaveValueAsync("34");
    }

    [Fact]
    public async Task Another_BegunFromAPieceUnderANameThatCannotBe_IsToldThere()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/");
        ILocator acts = page.Locator("[data-choice='acts jar-cabinet']"), form = acts.Locator("form[action$='/begin-from']");
        await acts.Locator("summary").ClickAsync();
        await form.Locator("[name='to']").FillAsync("a/b");
        await form.Locator("button").ClickAsync();
        await Assertions.Expect(form.Locator(".fault")).ToContainTextAsync("The name holds '/'");
        await Assertions.Expect(form.Locator("[name='to']")).ToHaveValueAsync("a/b");
        Assert.EndsWith("/", page.Url, StringComparison.Ordinal);
        await form.Locator("[name='to']").FillAsync("second jar cabinet");
        await form.Locator("button").ClickAsync();
        await page.WaitForURLAsync("**/piece/second%20jar%20cabinet");
    }
}
