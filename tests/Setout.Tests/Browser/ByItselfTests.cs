// Over 200 lines: what a page keeps while another comes is one list, told by one way of keeping answers back.
using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>A page that comes by itself comes whenever it is due, and takes nothing away from whoever is at it.</summary>
public sealed class ByItselfTests(Room room)
{
    // What the page hears of changes, and answers that are kept back until they are let go: all to forms, and the first to what is fetched after that was asked for.
    private const string Kept = """
        window.heard = [];
        const OwnSource = EventSource, ownFetch = fetch;
        window.EventSource = class extends OwnSource {
          constructor(url) {
            super(url);
            this.addEventListener('message', event => heard.push(event.data));
          }
        };
        window.keepNext = false;
        window.keep = () => new Promise(letGo => { window.letGo = letGo; });
        window.fetch = async (url, given) => {
          const isSent = given?.method === 'POST' && !String(url).endsWith('/trial'), isHere = String(url) === location.href && given?.method !== 'POST', isKept = isSent || window.keepNext === 'any' || (isHere && window.keepNext === 'here');
          if (isKept && !isSent) window.keepNext = false;
          if (isHere) window.looks = (window.looks ?? 0) + 1;
          const answer = await ownFetch(url, given);
          if (isKept && window.keeps) {
            const text = await answer.text();
            await window.keep();
            const late = new Response(text, { status: answer.status, headers: answer.headers });
            Object.defineProperty(late, 'url', { value: answer.url });
            return late;
          }
          return answer;
        };
        """;

    private async Task<Sheet> At(KeptShop shop, string path)
    {
        Sheet sheet = await room.OpenAsync(address: shop.Address);
        await sheet.Page.AddInitScriptAsync(Kept);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    // Whoever does not ask as a browser does waits for layouts: none of this piece becomes ready after it, so that nothing comes of one.
    private static Task ReadyAsync(KeptShop shop) => shop.Client.GetStringAsync("/piece/jar-cabinet/break-down");

    private static void Rename(KeptShop shop, string name) => shop.Change("jar-cabinet", t => System.Text.RegularExpressions.Regex.Replace(t, "(?m)^name: .*$", "name: " + name));

    private static ILocator Width(IPage page) => page.GetByLabel("Outside width of C", new() { Exact = true });

    private static Task HeardAsync(IPage page, int change) => page.WaitForFunctionAsync("change => heard.some(h => Number(h.split('.')[0]) >= change)", change);

    // The last change that the page heard of; it hears of how things stand as soon as it listens.
    private static async Task<int> ChangeAsync(IPage page)
    {
        await page.WaitForFunctionAsync("() => heard.length > 0");
        return await page.EvaluateAsync<int>("() => Number(heard.at(-1).split('.')[0])");
    }

    [Fact]
    public async Task Change_MadeBeforeThePageListens_IsShown()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await ReadyAsync(shop);
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        var changed = new TaskCompletionSource();
        await sheet.Page.RouteAsync("**/changes", async route =>
        {
            await changed.Task;
            await route.ContinueAsync();
        });
        await sheet.Page.GotoAsync("/piece/jar-cabinet?size=C.width");
        Rename(shop, "Spice cabinet");
        changed.SetResult();
        await Assertions.Expect(sheet.Page.Locator(".piece-name")).ToHaveTextAsync("Spice cabinet");
    }

    /// <summary>On a page for which nothing is laid out: no layout that becomes ready brings it either.</summary>
    [Fact]
    public async Task Change_MadeWhileAFormIsUnderWay_IsShownAfterwards()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("shop", "setout-shop: 1\nname: yard\nunit: mm\nstock:\n  - {panel: birch plywood, label: 18 mm, size: 1500 x 1250, have: 2, price: 98.00}\n");
        await using Sheet sheet = await At(shop, "/shop?item=stock.0");
        IPage page = sheet.Page;
        int change = await ChangeAsync(page);
        await page.EvaluateAsync("() => { window.keeps = true; }");
        ILocator price = page.Locator("[data-choice='set'] [name='field-price']");
        await price.FillAsync("91");
        await price.PressAsync("Enter");
        // The page that answers it is made, and on its way.
        await page.WaitForFunctionAsync("() => window.letGo");
        shop.Change("shop", t => t.Replace("name: yard", "name: back yard", StringComparison.Ordinal));
        await HeardAsync(page, change + 2);
        await page.EvaluateAsync("() => { window.letGo(); }");
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("back yard");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 3");
        await Assertions.Expect(price).ToHaveValueAsync("91");
    }

    /// <summary>"Send or take back what you typed to see it": whoever takes it back sees it, and can go on from there.</summary>
    [Fact]
    public async Task Change_MadeWhileSomethingIsTyped_IsShownWhenThatIsTakenBack()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await ReadyAsync(shop);
        await using Sheet sheet = await At(shop, "/piece/jar-cabinet?size=C.width");
        IPage page = sheet.Page;
        await Width(page).FillAsync("50 1/");
        Rename(shop, "Spice cabinet");
        await Assertions.Expect(page.Locator("#elsewhere")).ToHaveCountAsync(1);
        await Assertions.Expect(Width(page)).ToHaveValueAsync("50 1/");
        await Width(page).PressAsync("Escape");
        await Assertions.Expect(page.Locator(".piece-name")).ToHaveTextAsync("Spice cabinet");
        await Width(page).FillAsync("44");
        await Width(page).PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 3");
    }

    /// <summary>The same of a field over the drawing, which is out of sight when it is let be; what was said is gone with it.</summary>
    [Theory, InlineData("30 1/"), InlineData("30 1/2")]
    public async Task Change_MadeWhileASizeIsTypedOnTheDrawing_IsSaidInSight_AndShownWhenItIsLetBe(string typed)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/piece/jar-cabinet?size=C.width");
        IPage page = sheet.Page;
        await page.Locator(".for-desk [data-key='C.width'] text").First.ClickAsync();
        ILocator size = page.Locator("#sizing-size");
        await Assertions.Expect(size).ToBeFocusedAsync();
        await size.FillAsync(typed);
        Rename(shop, "Spice cabinet");
        await Assertions.Expect(page.Locator("#elsewhere")).ToBeInViewportAsync();
        await Assertions.Expect(size).ToHaveValueAsync(typed);
        await size.PressAsync("Escape");
        await Assertions.Expect(page.Locator(".piece-name")).ToHaveTextAsync("Spice cabinet");
        await Assertions.Expect(page.Locator("#elsewhere")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("#voice")).Not.ToContainTextAsync("another window");
    }

    /// <summary>Whoever follows a link sees how it stands now: nothing is said any more of what is not shown.</summary>
    [Fact]
    public async Task Change_MadeElsewhere_IsNotSaidAnyMore_WhenALinkShowsIt()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/piece/jar-cabinet?size=C.width");
        IPage page = sheet.Page;
        await Width(page).FillAsync("50 1/");
        Rename(shop, "Spice cabinet");
        await Assertions.Expect(page.Locator("#elsewhere")).ToBeInViewportAsync();
        await page.Locator("#parts [data-part='P'] .part-name").ClickAsync();
        await Assertions.Expect(page.Locator(".piece-name")).ToHaveTextAsync("Spice cabinet");
        await Assertions.Expect(page.Locator("#elsewhere")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Pieces_TickedOnTheShelf_StayTicked()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/");
        IPage page = sheet.Page;
        int change = await ChangeAsync(page);
        ILocator tick = page.GetByLabel("Break down Luthiers' bench with others");
        await tick.CheckAsync();
        Rename(shop, "Spice cabinet");
        await HeardAsync(page, change + 1);
        await Assertions.Expect(page.Locator("#voice")).ToContainTextAsync("changed in another window");
        await Assertions.Expect(tick).ToBeCheckedAsync();
        // Nor does a form beside it take it away.
        ILocator acts = page.Locator("[data-choice='acts plan-chest']");
        await acts.Locator("summary").ClickAsync();
        await acts.Locator("form[action$='/rename'] [name='to']").FillAsync("chest");
        await acts.Locator("form[action$='/rename'] [name='to']").PressAsync("Enter");
        await Assertions.Expect(page.Locator("#shelf h2 a[href='/piece/chest']")).ToHaveCountAsync(1);
        await Assertions.Expect(tick).ToBeCheckedAsync();
    }

    /// <summary>A page that has other regions is loaded whole.</summary>
    [Fact]
    public async Task Fold_ThatIsOpen_StaysOpenWhenThePageIsLoadedAnew()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/piece/jar-cabinet?size=C.width");
        IPage page = sheet.Page;
        await page.EvaluateAsync("() => { window.same = true; }");
        await page.Locator(".save-point summary").ClickAsync();
        await Assertions.Expect(page.Locator("#save-point")).ToBeVisibleAsync();
        shop.Change("jar-cabinet", t => t.Replace("width: 38", "width: 3", StringComparison.Ordinal));
        await page.WaitForFunctionAsync("() => window.same === undefined && document.getElementById('history')?.textContent.includes('revision 2')");
        await Assertions.Expect(page.Locator("#save-point")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Fold_ThatCameOpenAndWasShut_StaysShut()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/piece/luthiers-bench?size=F.height");
        ILocator open = sheet.Page.Locator("[data-choice='height'][open]");
        await open.Locator(":scope > summary").ClickAsync();
        await Assertions.Expect(open).ToHaveCountAsync(0);
        await ComeByItselfAsync(shop, sheet.Page);
        await Assertions.Expect(sheet.Page.Locator("[data-choice='height']")).ToHaveCountAsync(1);
        await Assertions.Expect(open).ToHaveCountAsync(0);
    }

    /// <summary>Forms that add different things each have a fold "More".</summary>
    [Fact]
    public async Task Fold_ThatWasOpened_OpensNoOtherOfTheSameWords()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/shop?item=stock");
        IPage page = sheet.Page;
        ILocator all = page.Locator("[data-choice^='add-'] details"), open = page.Locator("[data-choice^='add-'] details[open]");
        Assert.True(await all.LookAtAllAsync<int>("all => all.length") > 1);
        await all.First.ActAsync("fold => { fold.open = fold.closest('[data-choice]').open = true; window.before = fold; }");
        shop.Change("plan-chest", t => t + "# another remark\n");
        await page.WaitForFunctionAsync("() => !window.before.isConnected");
        await Assertions.Expect(open).ToHaveCountAsync(1);
    }

    // Another piece is changed: the same comes of it as of layouts that become ready.
    private static async Task ComeByItselfAsync(KeptShop shop, IPage page)
    {
        await page.EvaluateAsync("() => { window.before = document.getElementById('drawing'); }");
        shop.Change("plan-chest", t => t + "# another remark\n");
        await page.WaitForFunctionAsync("() => !window.before.isConnected");
    }

    /// <summary>What is asked before it is done stays asked, with the keyboard on the answer.</summary>
    [Fact]
    public async Task Question_WhetherAnEditIsUndoneAllTheSame_StaysAsked()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.ChangeNow("luthiers-bench", t => t.Replace("        width: 21\n", "        width: 20 1/2\n", StringComparison.Ordinal));
        using var form = new FormUrlEncodedContent([new("change", "m1"), new("revision", "2"), new("back", "/piece/luthiers-bench"), new("progress", "cut"), new("what", "L1.side L1.end")]);
        using HttpResponseMessage marked = await shop.Client.PostAsync("/piece/luthiers-bench/mark", form);
        await using Sheet sheet = await At(shop, "/piece/luthiers-bench");
        IPage page = sheet.Page;
        await page.Locator("body").PressAsync("Control+z");
        ILocator sure = page.GetByRole(AriaRole.Button, new() { Name = "Undo it all the same" });
        await Assertions.Expect(sure).ToBeFocusedAsync();
        await ComeByItselfAsync(shop, page);
        await Assertions.Expect(page.Locator("#history .fault").First).ToContainTextAsync("drawer L1");
        await Assertions.Expect(sure).ToBeFocusedAsync();
        await sure.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 3");
    }

    [Fact]
    public async Task Words_UnderTheDrawing_AndBesideAFieldThatIsEmpty_Stay()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/piece/jar-cabinet?size=C.width");
        IPage page = sheet.Page;
        await Width(page).FillAsync("40");
        await Width(page).PressAsync("Enter");
        await Assertions.Expect(page.Locator("#made")).ToContainTextAsync("40");
        await ComeByItselfAsync(shop, page);
        await Assertions.Expect(page.Locator("#made")).ToContainTextAsync("40");
        await page.Locator("#room").FocusAsync();
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await Assertions.Expect(page.Locator("#stays")).ToBeVisibleAsync();
        await page.Locator("[data-choice='note-read'] > summary").ClickAsync();
        ILocator read = page.Locator("#read-value");
        await read.PressAsync("Enter");
        await Assertions.Expect(read).ToHaveAttributeAsync("aria-invalid", "true");
        await ComeByItselfAsync(shop, page);
        await Assertions.Expect(page.Locator("#stays")).ToBeVisibleAsync();
        await Assertions.Expect(read).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(read).ToBeFocusedAsync();
    }

    /// <summary>A list that was left is come back to where one was in it.</summary>
    [Theory, InlineData("#parts .bench-list a[tabindex='0']"), InlineData("#outline a[tabindex='0']")]
    public async Task List_LeftByTab_IsComeBackToAtItsPlace(string stop)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/piece/luthiers-bench?size=L1.front");
        IPage page = sheet.Page;
        await page.Locator(stop).First.FocusAsync();
        foreach (string key in new[] { "Home", "ArrowDown", "ArrowDown" }) await page.Keyboard.PressAsync(key);
        string place = await page.EvaluateAsync<string>("() => document.activeElement.outerHTML");
        await page.Keyboard.PressAsync("Tab");
        await ComeByItselfAsync(shop, page);
        await page.Keyboard.PressAsync("Shift+Tab");
        Assert.Equal(place, await page.EvaluateAsync<string>("() => document.activeElement.outerHTML"));
    }

    /// <summary>What the layouts find is noted when they are there; a form that is under way beside it is answered where it stands.</summary>
    [Fact]
    public async Task Refusal_OfAFormBesideWhichNotesCome_IsTold()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Log("luthiers-bench", new Setout.Shop.Texts.ReadingEntry("r1", "2026-11-27T10:00:00Z", new("L.width"), [Setout.Core.Measures.ExactLength.FromInches(Setout.Core.Measures.Rational.Of(157, 8))], "rule", ""));
        await using Sheet sheet = await At(shop, "/piece/luthiers-bench");
        IPage page = sheet.Page;
        await Assertions.Expect(page.Locator("#margin .waiting")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await page.RouteAsync("**/void", route => route.FulfillAsync(new() { Status = 422, ContentType = "text/html", Body = "<p data-fault>No room left.</p>" }));
        await page.EvaluateAsync("""
            () => {
              const waits = document.createElement('p');
              waits.className = 'waiting';
              window.margin = document.getElementById('margin');
              margin.append(waits);
              [window.keeps, window.keepNext] = [true, 'here'];
              document.dispatchEvent(new Event('setout:swapped'));
            }
            """);
        await page.WaitForFunctionAsync("() => window.letGo");
        await page.EvaluateAsync("() => { [window.look, window.letGo, window.looks] = [window.letGo, null, 0]; }");
        await page.Locator("#moved").GetByRole(AriaRole.Button, new() { Name = "Take back what was read" }).ClickAsync();
        await page.WaitForFunctionAsync("() => window.letGo");
        await page.EvaluateAsync("() => { window.look(); }");
        // It is looked for again, or it has come.
        await page.WaitForFunctionAsync("() => window.looks > 0 || !window.margin.isConnected");
        await page.EvaluateAsync("() => { window.letGo(); }");
        await Assertions.Expect(page.Locator("#moved .fault:visible")).ToContainTextAsync("No room left.");
    }

    /// <summary>Why the first was refused is not told of the second, which goes on to the next size.</summary>
    [Fact]
    public async Task Size_MendedBeforeItsRefusalCame_IsTakenAndGoesOn()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/piece/jar-cabinet");
        IPage page = sheet.Page;
        ILocator typed = page.Locator("#sizing-size");
        await page.Locator(".for-desk [data-key='C.width'] text").First.ClickAsync();
        await typed.FillAsync("38 1/");
        await page.EvaluateAsync("() => { window.keeps = true; }");
        await typed.PressAsync("Enter");
        await page.WaitForFunctionAsync("() => window.letGo");
        await page.EvaluateAsync("() => { [window.first, window.letGo] = [window.letGo, null]; }");
        await typed.FillAsync("39");
        await typed.PressAsync("Tab");
        await page.WaitForFunctionAsync("() => window.letGo");
        await page.EvaluateAsync("() => { window.first(); return new Promise(done => requestAnimationFrame(() => setTimeout(done, 0))); }");
        await Assertions.Expect(page.Locator("#sizing .fault")).ToBeHiddenAsync();
        await page.EvaluateAsync("() => { window.letGo(); }");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        await Assertions.Expect(typed).ToBeFocusedAsync();
    }

    [Fact]
    public async Task Link_PressedAfterAnother_IsTheOneThatIsFollowed()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/shop");
        IPage page = sheet.Page;
        await page.EvaluateAsync("() => { [window.keeps, window.keepNext] = [true, 'any']; }");
        await page.Locator(".bay a[data-stay]").First.ClickAsync();
        await page.WaitForFunctionAsync("() => window.letGo");
        await page.Locator(".shop-lines a[data-stay]", new() { HasText = "Within" }).First.ClickAsync();
        ILocator tape = page.Locator("[data-choice='set'] [name='field-tape']");
        await Assertions.Expect(tape).ToBeVisibleAsync();
        await page.EvaluateAsync("() => { window.letGo(); return new Promise(done => requestAnimationFrame(() => setTimeout(done, 0))); }");
        await Assertions.Expect(tape).ToBeVisibleAsync();
        Assert.Contains("item=", page.Url, StringComparison.Ordinal);
    }
}
