using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>Somebody at the page who finds things by what is written on them, and nothing else. Counts what was done.</summary>
internal abstract class Hand(IPage page)
{
    // A page is there at once on a machine of its own; this is for one that has other work.
    private const float Patience = 30_000;

    public IPage Page { get; } = page;

    /// <summary>How many presses and words it took.</summary>
    public int Acts { get; private set; }

    public static Hand Of(bool isKeyboard, IPage page) => isKeyboard ? new Keys(page) : new Pointer(page);

    /// <summary>Presses what has these words on it.</summary>
    public Task PressAsync(AriaRole role, string words, bool isWhole = true) => PressAsync(Page.GetByRole(role, new() { Name = words, Exact = isWhole }).Locator("visible=true").First);

    /// <summary>Presses it.</summary>
    public async Task PressAsync(ILocator what)
    {
        Acts++;
        await Assertions.Expect(what).ToBeVisibleAsync(new() { Timeout = Patience });
        await DoPressAsync(what);
    }

    /// <summary>Opens what is folded under these words, if it is not open yet.</summary>
    public async Task<ILocator> OpenAsync(string words, bool isWhole = true)
    {
        ILocator summary = isWhole ? Page.Locator("summary:visible").Filter(new() { HasTextRegex = new($"^\\s*{System.Text.RegularExpressions.Regex.Escape(words)}\\s*$") }).First : Page.Locator("summary:visible").Filter(new() { HasText = words }).First;
        await Assertions.Expect(summary).ToBeVisibleAsync(new() { Timeout = Patience });
        ILocator fold = summary.Locator("xpath=..");
        if (await fold.GetAttributeAsync("open") is null) await PressAsync(summary);
        await Assertions.Expect(fold).ToHaveAttributeAsync("open", "", new() { Timeout = Patience });
        return fold;
    }

    /// <summary>Types into the field with this label.</summary>
    public async Task TypeAsync(string label, string text)
    {
        Acts++;
        ILocator field = Page.GetByLabel(label, new() { Exact = true }).Locator("visible=true").First;
        await Assertions.Expect(field).ToBeVisibleAsync(new() { Timeout = Patience });
        await DoTypeAsync(field, text);
        await Assertions.Expect(field).ToHaveValueAsync(text, new() { Timeout = Patience });
    }

    /// <summary>Chooses one of several.</summary>
    public async Task ChooseAsync(string label)
    {
        Acts++;
        ILocator one = Page.GetByLabel(label, new() { Exact = true });
        await DoChooseAsync(one);
        await Assertions.Expect(one).ToBeCheckedAsync();
    }

    /// <summary>Chooses something in the outline of the drawing.</summary>
    public async Task PickAsync(string words)
    {
        Acts++;
        ILocator item = Page.GetByRole(AriaRole.Treeitem, new() { Name = words, Exact = true });
        await Assertions.Expect(item).ToBeVisibleAsync(new() { Timeout = Patience });
        await DoPickAsync(item);
        await Assertions.Expect(item).ToHaveAttributeAsync("aria-current", "true", new() { Timeout = Patience });
    }

    protected abstract Task DoPressAsync(ILocator what);

    protected abstract Task DoTypeAsync(ILocator field, string text);

    protected abstract Task DoChooseAsync(ILocator one);

    protected abstract Task DoPickAsync(ILocator item);

    private sealed class Pointer(IPage page) : Hand(page)
    {
        protected override Task DoPressAsync(ILocator what) => what.ClickAsync();

        protected override async Task DoTypeAsync(ILocator field, string text)
        {
            await field.ClickAsync(new() { ClickCount = 3 });
            await field.PressAsync("ControlOrMeta+a");
            await Page.Keyboard.TypeAsync(text);
        }

        protected override Task DoChooseAsync(ILocator one) => one.ClickAsync();

        protected override Task DoPickAsync(ILocator item) => item.ClickAsync();
    }

    /// <summary>With the keyboard alone: what no key leads to is not there.</summary>
    private sealed class Keys(IPage page) : Hand(page)
    {
        private const int Most = 500;

        protected override async Task DoPressAsync(ILocator what)
        {
            await ReachAsync(what);
            await Page.Keyboard.PressAsync("Enter");
        }

        protected override async Task DoTypeAsync(ILocator field, string text)
        {
            await ReachAsync(field);
            await Page.Keyboard.PressAsync("ControlOrMeta+a");
            await Page.Keyboard.TypeAsync(text);
        }

        protected override async Task DoChooseAsync(ILocator one)
        {
            ILocator chosen = Page.Locator($"input[name='{await one.GetAttributeAsync("name")}']:checked");
            await ReachAsync(chosen);
            for (int i = 0; i < 10 && !await one.IsCheckedAsync(); i++) await Page.Keyboard.PressAsync("ArrowDown");
        }

        protected override async Task DoPickAsync(ILocator item)
        {
            await ReachAsync(Page.Locator("[role='tree'] a[tabindex='0']"));
            await Page.Keyboard.PressAsync("Home");
            for (int i = 0; !await IsFocusedAsync(item); i++)
            {
                Assert.True(i < Most, $"No arrow key leads to {item}.");
                await Page.Keyboard.PressAsync("ArrowDown");
            }
            await Page.Keyboard.PressAsync("Enter");
        }

        private async Task ReachAsync(ILocator what)
        {
            for (int i = 0; !await IsFocusedAsync(what); i++)
            {
                Assert.True(i < Most, $"No Tab leads to {what}.");
                await Page.Keyboard.PressAsync("Tab");
            }
            // Who goes by keys sees where he is.
            Assert.True(await what.EvaluateAsync<bool>("e => { const s = getComputedStyle(e); return s.outlineStyle !== 'none' || s.boxShadow !== 'none' || e.matches(':focus-visible'); }"), $"{what} does not show that it has the keyboard.");
        }

        private static Task<bool> IsFocusedAsync(ILocator what) => what.EvaluateAsync<bool>("e => e === document.activeElement");
    }
}
