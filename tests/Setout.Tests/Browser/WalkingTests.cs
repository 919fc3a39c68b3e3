using Microsoft.Playwright;
using Setout.Testing;

namespace Setout.Tests.Browser;

/// <summary>The drawing gone through by keys: every thing on it is led to, and heard as itself.</summary>
public sealed class WalkingTests(Room room)
{
    // All that can be gone to, in the order of the drawing; by its place among all, since several may share a key.
    private const string All = "const all = [...document.querySelectorAll('#room [data-key]')].filter(g => g.getAttribute('aria-label') && g.getBoundingClientRect().width > 0);";

    private const string Press = "const room = document.getElementById('room'), at = () => all.indexOf(room.querySelector('.is-walked')), press = key => room.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));";

    public static TheoryData<string> Pieces => [.. Directory.EnumerateFiles(Samples.Folder, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Where(n => n != "shop").Order(StringComparer.Ordinal)];

    private static async Task<bool> IsDrawnAsync(IPage page, string path)
    {
        await page.GotoAsync(path);
        if (await page.Locator("#room").CountAsync() > 0)
        {
            await page.Locator("#room").FocusAsync();
            return true;
        }
        await Assertions.Expect(page.Locator("#drawing")).ToContainTextAsync("There is nothing to draw");
        return false;
    }

    private static async Task WalkToAsync(IPage page, int index)
    {
        await page.Keyboard.PressAsync("Home");
        for (int i = 0; i < index; i++) await page.Keyboard.PressAsync("PageDown");
    }

    private static Task<int> WalkedAsync(IPage page) => page.EvaluateAsync<int>("() => { " + All + " return all.findIndex(g => g.classList.contains('is-walked')); }");

    private static Task<string[]> KeysAsync(IPage page) => page.EvaluateAsync<string[]>("() => { " + All + " return all.map(g => g.dataset.key); }");

    [Theory, MemberData(nameof(Pieces))]
    public async Task PageDownAndUp_LeadThroughAllThingsInTurn(string piece)
    {
        await using Sheet sheet = await room.OpenAsync();
        IPage page = sheet.Page;
        if (!await IsDrawnAsync(page, "/piece/" + piece)) return;
        int count = (await KeysAsync(page)).Length;
        var met = new List<int>();
        for (int i = 0; i < count; i++)
        {
            await page.Keyboard.PressAsync("PageDown");
            met.Add(await WalkedAsync(page));
        }
        Assert.Equal(Enumerable.Range(0, count), met);
        for (int i = count - 2; i >= 0; i--)
        {
            await page.Keyboard.PressAsync("PageUp");
            Assert.Equal(i, await WalkedAsync(page));
        }
        Assert.Equal(0, await page.EvaluateAsync<int>("() => Math.round(scrollY)"));
    }

    /// <summary>From the first thing arrows lead to each, and from each back to the first: nothing is left out and one gets stuck nowhere.</summary>
    [Theory, MemberData(nameof(Pieces))]
    public async Task Arrows_LeadToEveryThingAndBack(string piece)
    {
        await using Sheet sheet = await room.OpenAsync();
        IPage page = sheet.Page;
        foreach ((string view, int width) in new[] { ("", 1440), ("?view=plan", 1440), ("?view=side", 1440), ("?view=section", 1440), ("", 390) })
        {
            await page.SetViewportSizeAsync(width, 900);
            if (!await IsDrawnAsync(page, $"/piece/{piece}{view}")) return;
            // Where each arrow leads from each thing: the one where one is, as long as it has an arrow that was not pressed there, else the next.
            string left = await page.EvaluateAsync<string>("() => { " + All + Press + """
                const arrows = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'], ways = all.map(() => ({}));
                press('Home');
                for (let open = all.length * arrows.length, turns = 0; open > 0;) {
                  if (++turns > 100 * all.length) return 'Page Down does not lead on';
                  const from = at(), arrow = arrows.find(a => !(a in ways[from]));
                  if (arrow === undefined) { press('PageDown'); continue; }
                  press(arrow);
                  ways[from][arrow] = at();
                  open--;
                }
                const met = next => {
                  const there = new Set([0]), open = [0];
                  while (open.length > 0) for (const to of next(open.pop())) if (!there.has(to)) { there.add(to); open.push(to); }
                  return there;
                };
                const out = met(from => Object.values(ways[from])), back = met(to => all.map((_, i) => i).filter(i => Object.values(ways[i]).includes(to)));
                return all.map((g, i) => [g.dataset.key, out.has(i), back.has(i)]).filter(([, isOut, isBack]) => !isOut || !isBack).map(([key, isOut]) => `${key} ${isOut ? 'leads nowhere' : 'is not led to'}`).join(', ');
                }
                """);
            Assert.True(left.Length == 0, $"{piece}{view} at {width} px: {left}");
        }
    }

    [Fact]
    public async Task Thing_DrawnInTwoPlaces_StaysTheOneThatIsWalkedWhenItIsDrawnAnew()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        Assert.True(await IsDrawnAsync(page, "/piece/sewing-corner"));
        string[] keys = await KeysAsync(page);
        int second = Array.LastIndexOf(keys, "S1");
        Assert.NotEqual(Array.IndexOf(keys, "S1"), second);
        await WalkToAsync(page, second);
        Assert.Equal(second, await WalkedAsync(page));
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync(url => url.Contains("size=S1", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator("#working .working-title").First).ToContainTextAsync("shelf S1");
        await Assertions.Expect(page.Locator("#room")).ToBeFocusedAsync();
        Assert.Equal(Array.LastIndexOf(await KeysAsync(page), "S1"), await WalkedAsync(page));
        // A trial draws it anew too.
        shop.Change("sewing-corner", t => t + "\n");
        await page.ReloadAsync();
        await page.Locator("#room").FocusAsync();
        await WalkToAsync(page, second);
        await page.EvaluateAsync("() => { const paper = document.querySelector('#room .for-desk'); paper.replaceChildren(paper.firstElementChild.cloneNode(true)); paper.querySelector('.is-walked').classList.remove('is-walked'); document.dispatchEvent(new Event('setout:drawn')); }");
        Assert.Equal(second, await WalkedAsync(page));
        await page.Keyboard.PressAsync("PageDown");
        Assert.Equal((second + 1) % keys.Length, await WalkedAsync(page));
    }

    /// <summary>Who hears the drawing can tell each thing from every other, posts and what is drawn twice too.</summary>
    [Theory, MemberData(nameof(Pieces))]
    public async Task Things_AreHeardAsThemselves(string piece)
    {
        await using Sheet sheet = await room.OpenAsync();
        IPage page = sheet.Page;
        foreach (string view in new[] { "", "?view=plan", "?view=side", "?view=section" })
        {
            if (!await IsDrawnAsync(page, $"/piece/{piece}{view}")) return;
            string[] said = await page.EvaluateAsync<string[]>("() => { " + All + Press + " press('Home'); return all.map(() => { const said = document.getElementById('voice').textContent; press('PageDown'); return said; }); }");
            Assert.NotEmpty(said);
            Assert.True(said.Distinct().Count() == said.Length, $"{piece}{view}: {string.Join("; ", said.GroupBy(s => s).Where(g => g.Count() > 1).Select(g => g.Key))}");
        }
    }

    [Fact]
    public async Task Posts_AreHeardByWhereTheyStand_AndTheTextSaysHowManyThereAre()
    {
        await using Sheet sheet = await room.OpenAsync();
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/luthiers-bench");
        await Assertions.Expect(page.Locator(".for-desk [data-key='F.post#3']")).ToHaveAttributeAsync("aria-label", "bench frame post, 33 1/4 x 3 1/2 in, front, 2nd of 4 from the left");
        await Assertions.Expect(page.Locator(".for-desk [data-key='L.rail#3']")).ToHaveAttributeAsync("aria-label", "bay L rail, 21 x 3 1/2 in, front upper");
        await Assertions.Expect(page.Locator("[data-outline='F.post']")).ToHaveTextAsync("bench frame post, 33 1/4 x 3 1/2 in, 4 drawn");
    }
}
