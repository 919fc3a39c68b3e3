// Over 200 lines: all that a hand does on a page, counted in one place.
using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>
/// Somebody at the page who finds things by what is written on them, and nothing else. Counts what was done, what led nowhere, and how often help was looked up.
/// </summary>
internal abstract class Hand
{
    // A page is there at once on a machine of its own; this is for one that has other work.
    private const float Patience = 30_000;

    // What of a page anybody sees or types, without what goes on by itself: how far a layout has come, what is spoken.
    private const string Stand = """
        () => {
          let words = document.body.innerText;
          for (const live of document.querySelectorAll('[data-laying], [aria-live]')) if (live.innerText) words = words.replaceAll(live.innerText, '');
          const fields = [...document.querySelectorAll('input, select, textarea')].map(f => f.type === 'checkbox' || f.type === 'radio' ? f.checked : f.value);
          return [location.href, words, [...document.querySelectorAll('details')].map(d => d.open), [...document.querySelectorAll('dialog')].map(d => d.open), fields].join('\u0001');
        }
        """;

    private readonly List<string> _deadEnds = [];
    private readonly TaskCompletionSource _never = new();
    private bool _isHelpOpen;

    protected Hand(IPage page)
    {
        Page = page;
        page.Response += (_, answer) =>
        {
            if (answer.Status >= 400 && !answer.Url.EndsWith("/favicon.ico", StringComparison.Ordinal)) _deadEnds.Add($"refused: {answer.Request.Method} {answer.Url}: {answer.Status}");
        };
        page.Request += (_, asked) =>
        {
            if (asked.IsNavigationRequest && asked.Url.Contains("/docs/", StringComparison.Ordinal)) Helped++;
        };
    }

    public IPage Page { get; }

    /// <summary>How many presses and words it took.</summary>
    public int Acts { get; private set; }

    /// <summary>How many keys went down on the way, those of words typed not counted; none by mouse.</summary>
    public int Strokes { get; protected set; }

    /// <summary>How many things were chosen on the drawing itself.</summary>
    public int OnDrawing { get; protected set; }

    /// <summary>Presses after which everything stood as before, and refusals.</summary>
    public IReadOnlyList<string> DeadEnds => _deadEnds;

    /// <summary>How often the list of keys or a page of the documentation was opened.</summary>
    public int Helped { get; private set; }

    public static Hand Of(bool isKeyboard, IPage page) => isKeyboard ? new Keys(page) : new Pointer(page);

    /// <summary>Presses what has these words on it.</summary>
    public Task PressAsync(AriaRole role, string words, bool isWhole = true) => PressAsync(Page.GetByRole(role, new() { Name = words, Exact = isWhole }).Locator("visible=true").First);

    /// <summary>Presses it.</summary>
    /// <param name="what">What is pressed.</param>
    /// <param name="leads">What comes of it beside the page, such as a download; nothing by default.</param>
    /// <param name="patience">For how many milliseconds something is waited for that comes of it.</param>
    public async Task PressAsync(ILocator what, Task? leads = null, float patience = Patience)
    {
        Acts++;
        await Assertions.Expect(what).ToBeVisibleAsync(new() { Timeout = Patience });
        string before = await Page.EvaluateAsync<string>(Stand);
        await DoPressAsync(what);
        Task<IJSHandle> changes = Page.WaitForFunctionAsync($"before => ({Stand.Trim()})() !== before", before, new() { Timeout = patience });
        if (await Task.WhenAny(changes, leads ?? _never.Task) == changes && changes.IsFaulted) _deadEnds.Add($"nothing came of pressing {what}");
        await LookAsync();
    }

    // The list of keys is seen when it is opened, and again only when it was closed between.
    private async Task LookAsync()
    {
        bool isOpen = await Page.Locator("#keys[open]").CountAsync() > 0;
        if (isOpen && !_isHelpOpen) Helped++;
        _isHelpOpen = isOpen;
    }

    /// <summary>Opens what is folded under these words, if it is not open yet.</summary>
    public async Task<ILocator> OpenAsync(string words, bool isWhole = true)
    {
        ILocator summary = isWhole ? Page.Locator("summary:visible").Filter(new() { HasTextRegex = new($"^\\s*{System.Text.RegularExpressions.Regex.Escape(words)}\\s*$") }).First : Page.Locator("summary:visible").Filter(new() { HasText = words }).First;
        await Assertions.Expect(summary).ToBeVisibleAsync(new() { Timeout = Patience });
        ILocator fold = summary.Locator("xpath=..");
        if (!await fold.LookAsync<bool>("d => d.open")) await PressAsync(summary);
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

    /// <summary>Chooses something that the outline of the drawing names.</summary>
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

        // On the drawing, at a place where nothing else lies over it; what is not drawn itself, or is covered, in the outline.
        protected override async Task DoPickAsync(ILocator item)
        {
            string? key = await item.GetAttributeAsync("data-outline");
            float[]? at = key is null ? null : await Page.EvaluateAsync<float[]?>(Seen, key);
            if (at is null)
            {
                await item.ClickAsync();
                return;
            }
            OnDrawing++;
            // From its corner: a fresh one may take its place, and then stand elsewhere.
            await Page.Locator($"#drawing [data-key='{key}']").Nth((int)at[0]).ClickAsync(new() { Position = new() { X = at[1], Y = at[2] } });
        }

        private const string Seen = """
            key => {
              const own = [...document.querySelectorAll(`#drawing [data-key='${key}']`)];
              for (const [nth, thing] of own.entries()) {
                if (thing.getClientRects().length === 0) continue;
                thing.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
                const box = thing.getBoundingClientRect(), parts = 12;
                // From the middle outwards, as one points.
                const places = [...Array(parts * parts).keys()].map(i => [(i % parts + 0.5) / parts, (Math.floor(i / parts) + 0.5) / parts]).sort((a, b) => Math.hypot(a[0] - 0.5, a[1] - 0.5) - Math.hypot(b[0] - 0.5, b[1] - 0.5));
                for (const [across, down] of places) {
                  const x = box.left + box.width * across, y = box.top + box.height * down;
                  if (document.elementFromPoint(x, y)?.closest('[data-key]') === thing) return [nth, x - box.left, y - box.top];
                }
              }
              return null;
            }
            """;
    }

    /// <summary>With the keyboard alone: what no key leads to is not there.</summary>
    private sealed class Keys(IPage page) : Hand(page)
    {
        private const int Most = 500;

        protected override async Task DoPressAsync(ILocator what)
        {
            await ReachAsync(what);
            await StrikeAsync("Enter");
        }

        protected override async Task DoTypeAsync(ILocator field, string text)
        {
            await ReachAsync(field);
            await StrikeAsync("ControlOrMeta+a");
            await Page.Keyboard.TypeAsync(text);
        }

        protected override async Task DoChooseAsync(ILocator one)
        {
            ILocator chosen = Page.Locator($"input[name='{await one.GetAttributeAsync("name")}']:checked");
            await ReachAsync(chosen);
            for (int i = 0; i < 10 && !await one.IsCheckedAsync(); i++) await StrikeAsync("ArrowDown");
        }

        protected override async Task DoPickAsync(ILocator item)
        {
            await ReachAsync(Page.Locator("[role='tree'] a[tabindex='0']"));
            await StrikeAsync("Home");
            await StrikeUntilFocusedAsync(item, "ArrowDown");
            await StrikeAsync("Enter");
        }

        private async Task ReachAsync(ILocator what)
        {
            // Where the keyboard is there already, it goes one step back and comes again: how it looks without is seen first.
            if (await IsFocusedAsync(what)) await StrikeAsync("Shift+Tab");
            string without = await what.LookAsync<string>(Look);
            await StrikeUntilFocusedAsync(what, "Tab");
            // Who goes by keys sees where he is: by an outline, a shadow, a border or another ground that was not there before.
            string with = await what.LookAsync<string>(Look);
            Assert.True(with != without, $"{what} does not show that it has the keyboard: {with}");
        }

        private const string Look = """
            e => ['', '::before', '::after'].map(of => {
              const s = getComputedStyle(e, of || null), isOutlined = s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) > 0 && !/, 0\)$|^transparent$/.test(s.outlineColor);
              return [of, isOutlined ? `${s.outlineStyle} ${s.outlineWidth} ${s.outlineColor}` : 'no outline', s.boxShadow, s.borderColor, s.borderWidth, s.backgroundColor, s.textDecorationLine].join('; ');
            }).join(' | ')
            """;

        private const string Sought = "e => { window.sought = e; }";

        private async Task StrikeUntilFocusedAsync(ILocator what, string key)
        {
            // To look it up by its words at each stroke would take longer than the stroke; it is looked up anew when a fresh one took its place.
            await what.ActAsync(Sought);
            for (int i = 0; ; i++)
            {
                string stand = await Page.EvaluateAsync<string>("() => !window.sought?.isConnected ? 'gone' : window.sought === document.activeElement ? 'focused' : ''");
                if (stand == "focused") return;
                if (stand == "gone")
                {
                    await what.ActAsync(Sought);
                    continue;
                }
                Assert.True(i < Most, $"No {key} leads to {what}.");
                await StrikeAsync(key);
            }
        }

        private Task StrikeAsync(string key)
        {
            Strokes++;
            return Page.Keyboard.PressAsync(key);
        }

        private static Task<bool> IsFocusedAsync(ILocator what) => what.LookAsync<bool>("e => e === document.activeElement");
    }
}
