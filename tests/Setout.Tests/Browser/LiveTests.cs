// Over 200 lines: one way of trying by figure, mouse, finger and keys, with what may come between.
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>Sizes typed on the drawing, trials, and dividers moved by hand, in a real browser against the real program and store.</summary>
public sealed class LiveTests(Room room)
{
    private static async Task<Sheet> At(Room room, KeptShop shop, string path, bool hasScript = true, int width = 1440)
    {
        Sheet sheet = await room.OpenAsync(width, hasScript: hasScript, address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    private static ILocator Dimension(IPage page, string key, string paper = "desk") => page.Locator($".for-{paper} [data-key='{key}']").First;

    private static ILocator Typed(IPage page) => page.Locator("#sizing-size");

    private static Regex Has(string words) => new(Regex.Escape(words));

    [Theory, InlineData(1440, "desk"), InlineData(1024, "desk"), InlineData(390, "phone")]
    public async Task Dimension_Clicked_IsTypedOverItsFigureAndFollowedBeforeItIsKept(int width, string paper)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet", width: width);
        IPage page = sheet.Page;
        await Dimension(page, "C.width", paper).Locator("text").First.ClickAsync();
        await Assertions.Expect(Typed(page)).ToBeFocusedAsync();
        await Assertions.Expect(Typed(page)).ToHaveValueAsync("38");
        Assert.Equal("38", await page.EvaluateAsync<string>("() => getSelection().toString()"));
        Assert.True(
            await Typed(page).LookAsync<bool>("(field, figure) => { const over = field.getBoundingClientRect(), at = document.querySelector(figure).getBoundingClientRect(), middle = at.top + at.height / 2; return over.top <= middle && over.bottom >= middle; }", $".for-{paper} [data-key='C.width'] text"),
            "the field does not lie over the figure");
        await Typed(page).FillAsync("40 1/2");
        await Assertions.Expect(Dimension(page, "C.width", paper)).ToHaveAttributeAsync("aria-label", Has("40 1/2"));
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#cost [data-cost-line]")).ToContainTextAsync("Against what is kept:");
        Assert.Equal(1, shop.Database.Find("jar-cabinet")!.Revision);
        await Typed(page).PressAsync("Escape");
        await Assertions.Expect(Dimension(page, "C.width", paper)).ToHaveAttributeAsync("aria-label", Has("38 in"));
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeHiddenAsync();
        await Assertions.Expect(Typed(page)).ToBeHiddenAsync();
        await Dimension(page, "C.width", paper).Locator("text").First.ClickAsync();
        await Typed(page).FillAsync("3'");
        await Typed(page).PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        await Assertions.Expect(Dimension(page, "C.width", paper)).ToHaveAttributeAsync("aria-label", Has("36 in"));
        Assert.Contains("width: 3'", shop.Text("jar-cabinet"), StringComparison.Ordinal);
        Assert.Empty(sheet.Complaints);
        Assert.Empty(sheet.Foreign);
    }

    [Fact]
    public async Task Field_WithWhatCannotBeRead_SaysWhyAndKeepsIt_TabTakesAndGoesOn()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet");
        IPage page = sheet.Page;
        await Dimension(page, "C.width").Locator("text").First.ClickAsync();
        await Typed(page).FillAsync("38 1/");
        await Assertions.Expect(page.Locator("#sizing .fault")).ToBeVisibleAsync();
        await Typed(page).PressAsync("Enter");
        await Assertions.Expect(page.Locator("#sizing .fault")).ToBeVisibleAsync();
        await Assertions.Expect(Typed(page)).ToHaveValueAsync("38 1/");
        await Typed(page).FillAsync("39");
        string first = (await page.Locator("#sizing-words").TextContentAsync())!;
        await Typed(page).PressAsync("Tab");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        await Assertions.Expect(page.Locator("#sizing-words")).Not.ToHaveTextAsync(first);
        await Assertions.Expect(page.Locator("#sizing")).ToBeVisibleAsync();
        Assert.Contains("width: 39", shop.Text("jar-cabinet"), StringComparison.Ordinal);
    }

    /// <summary>What is told in the field makes it larger than it was put on the paper.</summary>
    [Fact]
    public async Task Field_WithASlip_OnAPhone_StaysOnThePaper()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet", width: 390);
        IPage page = sheet.Page;
        await Dimension(page, "C.width", "phone").Locator("text").First.ClickAsync();
        await Typed(page).FillAsync("30 1/");
        await Assertions.Expect(page.Locator("#sizing .fault")).ToBeVisibleAsync();
        await page.WaitForFunctionAsync("() => { const field = document.getElementById('sizing').getBoundingClientRect(), paper = document.getElementById('drawing').getBoundingClientRect(); return field.left >= paper.left && field.right <= paper.right; }");
    }

    /// <summary>What is tried while the program is slow to answer is not lost to a page that comes meanwhile.</summary>
    [Fact]
    public async Task Trial_StillAskedForWhenAnotherWindowChangesThePiece_Stands()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=P");
        IPage page = sheet.Page;
        await Assertions.Expect(page.Locator("#margin .waiting")).ToHaveCountAsync(0);
        var slow = new TaskCompletionSource();
        await page.RouteAsync("**/trial", async route =>
        {
            await slow.Task;
            await route.ContinueAsync();
        });
        await page.GetByRole(AriaRole.Slider, new() { Name = "Move P" }).FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        // What was asked for before may be answered yet.
        Task<IRequest> told = page.WaitForRequestAsync(a => a.Url.EndsWith("/piece/jar-cabinet?size=P", StringComparison.Ordinal) && a.Method == "GET", new() { Timeout = 1500 });
        shop.Change("jar-cabinet", t => t + "\n");
        // Without waiting, the page would be asked for by now, and take the place of what is tried.
        await Assert.ThrowsAsync<TimeoutException>(() => told);
        slow.SetResult();
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#voice")).ToContainTextAsync("changed in another window");
    }

    /// <summary>The section is a drawing like the others: what stands on it is typed there, and it stays the section.</summary>
    [Fact]
    public async Task Dimension_OnTheSection_IsTypedThere()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?view=section&size=B");
        IPage page = sheet.Page;
        await Dimension(page, "C.height").Locator("text").First.ClickAsync();
        await Assertions.Expect(Typed(page)).ToHaveValueAsync("32");
        await Typed(page).FillAsync("33");
        await Assertions.Expect(Dimension(page, "C.height")).ToHaveAttributeAsync("aria-label", Has("33"));
        await Typed(page).PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        Assert.Contains("height: 33", shop.Text("jar-cabinet"), StringComparison.Ordinal);
        Assert.Contains("view=section", page.Url, StringComparison.Ordinal);
        await page.Locator("#room").FocusAsync();
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await Assertions.Expect(page.Locator("#stays")).ToContainTextAsync("moved in the view from the front");
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Dimension_ThatFollows_OffersWhatItFollowsFrom()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench");
        IPage page = sheet.Page;
        await Dimension(page, "T.height").Locator("text").First.ClickAsync();
        await page.Locator("#sizing .from button").GetByText("Outside height of F").ClickAsync();
        await Assertions.Expect(Typed(page)).ToHaveValueAsync("33 1/4");
        await Typed(page).FillAsync("34 1/4");
        await Assertions.Expect(Dimension(page, "T.height")).ToHaveAttributeAsync("aria-label", Has("35 in"));
        await Typed(page).PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        Assert.Contains("height: 34 1/4", shop.Text("luthiers-bench"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Partition_DraggedByMouse_SnapsAndIsOneStep_EscapePutsItBack()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet");
        IPage page = sheet.Page;
        string before = shop.Text("jar-cabinet");
        LocatorBoundingBoxResult box = await Dimension(page, "P").StandsAsync();
        LocatorBoundingBoxResult side = await Dimension(page, "C.side#1").StandsAsync();
        (float x, float y) = (box.X + (box.Width / 2), box.Y + (box.Height * 0.3f));
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x - 60, y, new() { Steps = 5 });
        await Assertions.Expect(page.Locator("#grip-tip")).ToContainTextAsync("A, at its left:");
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Escape");
        await page.Mouse.UpAsync();
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeHiddenAsync();
        Assert.Equal(before, shop.Text("jar-cabinet"));
        LocatorBoundingBoxResult back = await Dimension(page, "P").StandsAsync();
        Assert.Equal(box.X, back.X, 0.5f);
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x - 60, y, new() { Steps = 5 });
        await page.Mouse.UpAsync();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        // Chains may change sides meanwhile: it is held against the case, not against the paper.
        float Inside(LocatorBoundingBoxResult of, LocatorBoundingBoxResult side) => of.X - side.X;
        LocatorBoundingBoxResult left = await Dimension(page, "C.side#1").StandsAsync();
        Assert.True(Inside(await Dimension(page, "P").StandsAsync(), left) < Inside(box, side) - 30);
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Partition_NudgedByKeys_MovesByTheGridAndIsKeptWithEnter()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=P");
        IPage page = sheet.Page;
        ILocator grip = page.GetByRole(AriaRole.Slider, new() { Name = "Move P" });
        await Assertions.Expect(grip).ToHaveAttributeAsync("aria-valuenow", "20");
        await grip.FocusAsync();
        await page.Keyboard.PressAsync("ArrowLeft");
        await Assertions.Expect(grip).ToHaveAttributeAsync("aria-valuetext", "A, at its left: 19 31/32 in");
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await Assertions.Expect(grip).ToHaveAttributeAsync("aria-valuetext", "A, at its left: 20 31/32 in");
        await Assertions.Expect(Dimension(page, "A.width")).ToHaveAttributeAsync("aria-label", Has("20 31/32"));
        Assert.Equal(1, shop.Database.Find("jar-cabinet")!.Revision);
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        Assert.Contains("width: 20 31/32", shop.Text("jar-cabinet"), StringComparison.Ordinal);
        await Assertions.Expect(grip).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeHiddenAsync();
        await Assertions.Expect(grip).ToHaveAttributeAsync("aria-valuenow", "20.96875");
    }

    [Fact]
    public async Task Drawing_WalkedByKeys_IsOneTabStopAndOpensWhatItStandsOn()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=A");
        IPage page = sheet.Page;
        Assert.Equal(1, await page.EvaluateAsync<int>("() => document.querySelectorAll('#room[tabindex=\"0\"], #room [tabindex=\"0\"], #room a').length"));
        await page.Locator("#room").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(page.Locator(".for-desk .is-walked")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("#voice")).Not.ToBeEmptyAsync();
        for (int i = 0; i < 12 && await page.Locator(".for-desk .is-walked[data-key$='.width']").CountAsync() == 0; i++) await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(Typed(page)).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#room")).ToBeFocusedAsync();
    }

    [Fact]
    public async Task Zoom_ByWheelAndKeys_StaysOverTypingAndKeeping()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet");
        IPage page = sheet.Page;
        Task<string?> Seen() => page.Locator(".for-desk svg").First.GetAttributeAsync("viewBox");
        string whole = (await Seen())!;
        LocatorBoundingBoxResult figure = await Dimension(page, "A.width").Locator("text").First.StandsAsync();
        await page.Mouse.MoveAsync(figure.X + (figure.Width / 2), figure.Y + (figure.Height / 2));
        await page.Keyboard.DownAsync("Control");
        await page.Mouse.WheelAsync(0, -120);
        await page.Keyboard.UpAsync("Control");
        await Assertions.Expect(page.Locator(".for-desk svg").First).Not.ToHaveAttributeAsync("viewBox", whole);
        await page.Locator("#room").FocusAsync();
        await page.Keyboard.PressAsync("+");
        await page.Keyboard.PressAsync("-");
        string close = (await Seen())!;
        Assert.NotEqual(whole, close);
        await Dimension(page, "A.width").Locator("text").First.ClickAsync();
        Assert.Equal(close, await Seen());
        await Typed(page).FillAsync("19");
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync();
        await Typed(page).PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        Assert.Equal(close, await Seen());
        await page.GetByRole(AriaRole.Button, new() { Name = "fit", Exact = true }).ClickAsync();
        Assert.Equal(whole, await Seen());
    }

    [Fact]
    public async Task Cost_OfAStep_IsToldAgainstTheOneBeforeAndAgainstAPinnedOne()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=C.width");
        IPage page = sheet.Page;
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare with this from now on" }).ClickAsync();
        await page.GetByLabel("Outside width of C", new() { Exact = true }).FillAsync("44");
        await page.GetByLabel("Outside width of C", new() { Exact = true }).PressAsync("Enter");
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        await Assertions.Expect(page.Locator("#cost [data-cost-line]")).ToContainTextAsync("Against “");
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare with the step before again" }).ClickAsync();
        await Assertions.Expect(page.Locator("#cost [data-cost-line]")).ToContainTextAsync("Against the step before:");
        await page.GetByRole(AriaRole.Link, new() { Name = "What it cost" }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("What it has come to");
    }

    [Fact]
    public async Task Outline_IsATree_OpenedClosedAndSearchedByKeys()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench");
        IPage page = sheet.Page;
        Task<string> Active() => page.EvaluateAsync<string>("() => document.activeElement.textContent.trim()");
        Assert.Equal(1, await page.Locator("#outline a[tabindex='0']").CountAsync());
        await page.Locator("#outline a[tabindex='0']").FocusAsync();
        await page.Keyboard.PressAsync("Home");
        Assert.StartsWith("bench frame F", await Active(), StringComparison.Ordinal);
        int open = await page.Locator("#outline a:visible").CountAsync();
        await page.Keyboard.PressAsync("ArrowLeft");
        Assert.Equal("false", await page.EvaluateAsync<string>("() => document.activeElement.getAttribute('aria-expanded')"));
        Assert.True(await page.Locator("#outline a:visible").CountAsync() < open);
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.Equal(open, await page.Locator("#outline a:visible").CountAsync());
        await Letters.TypeAsync(page, "posts m2");
        Assert.Equal("posts M2", await Active());
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Slider, new() { Name = "Move M2" })).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("End");
        Assert.StartsWith("bench top, height", await Active(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Part_Chosen_TellsOnWhichSheetAndInWhichRunItIsCut()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=P");
        IPage page = sheet.Page;
        ILocator place = page.Locator("#working .places a").First;
        await Assertions.Expect(place).ToContainTextAsync("on sheet", new() { Timeout = 30000 });
        await Assertions.Expect(place).ToContainTextAsync("run");
        string run = (await place.GetAttributeAsync("href"))!.Split('#')[1];
        await place.ClickAsync();
        await Assertions.Expect(page.Locator("#" + run)).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Trial_WithoutAScriptOrFromElsewhere_ChangesNothing()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        var fields = new Dictionary<string, string> { ["key"] = "C.width", ["choice"] = "width", ["field-size"] = "40", ["part"] = "drawing" };
        foreach (string part in new[] { "drawing", "page", "plan" })
        {
            fields["part"] = part;
            using HttpResponseMessage answer = await shop.Client.PostAsync("/piece/jar-cabinet/trial", new FormUrlEncodedContent(fields));
            Assert.Equal(System.Net.HttpStatusCode.OK, answer.StatusCode);
            Assert.Contains("40 in", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
        fields["field-size"] = "40 1/";
        using HttpResponseMessage refused = await shop.Client.PostAsync("/piece/jar-cabinet/trial", new FormUrlEncodedContent(fields));
        Assert.Equal("application/json", refused.Content.Headers.ContentType!.MediaType);
        Assert.Contains("has no figure below its stroke", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var elsewhere = new HttpClient { BaseAddress = new(shop.Address) };
        using HttpResponseMessage foreign = await elsewhere.PostAsync("/piece/jar-cabinet/trial", new FormUrlEncodedContent(fields));
        Assert.Equal(System.Net.HttpStatusCode.Forbidden, foreign.StatusCode);
        Assert.Equal(1, shop.Database.Find("jar-cabinet")!.Revision);
        Assert.Contains("width: 38", shop.Text("jar-cabinet"), StringComparison.Ordinal);
    }

    [Theory, InlineData(1440, ColorScheme.Light), InlineData(390, ColorScheme.Dark)]
    public async Task Page_WithAFieldOpenATrialAndAGrip_IsAccessibleAndFits(int width, ColorScheme scheme)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=P", width: width);
        IPage page = sheet.Page;
        await page.EmulateMediaAsync(new() { ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
        await Assertions.Expect(page.Locator(".grip")).ToBeVisibleAsync();
        await FindNothingAsync("a grip");
        await Dimension(page, "C.width", width < 600 ? "phone" : "desk").Locator("text").First.ClickAsync();
        await FindNothingAsync("an open field");
        await Typed(page).FillAsync("41");
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync();
        await FindNothingAsync("a trial");
        await page.GotoAsync("/piece/jar-cabinet/cost");
        await FindNothingAsync("what it cost");

        async Task FindNothingAsync(string where)
        {
            await Axe.FindsNothingAsync(page, where, scheme);
            Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0, $"{where} is too wide");
        }
    }

    /// <summary>On paper nothing stands that only a hand at the screen could use.</summary>
    [Fact]
    public async Task SetOut_Printed_HasTheDrawingAndNoControls()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=A");
        IPage page = sheet.Page;
        await Assertions.Expect(page.Locator(".zoom")).ToBeVisibleAsync();
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await Assertions.Expect(page.Locator(".for-desk svg").First).ToBeVisibleAsync();
        foreach (string control in new[] { ".zoom", "#room-keys", ".says-link", "#cost", ".choices", ".bench-notes" }) await Assertions.Expect(page.Locator(control).First).ToBeHiddenAsync();
    }
}
