// Over 200 lines: the lists of all pages and forms, and what must hold of every one.
using Microsoft.Playwright;

namespace Setout.Tests.Browser;

public sealed class EveryPageTests(Room room)
{
    private static readonly int[] s_widths = [1440, 1024, 390];

    public static TheoryData<string> Pages
    {
        get
        {
            var pages = new TheoryData<string>("/");
            foreach (string piece in Samples.Names)
                foreach (string stage in new[] { "", "?size=C.width", "/buy", "/break-down", "/assemble", "/fit", "/facts", "/machine", "/finish" }) pages.Add($"/piece/{piece}{stage}");
            pages.Add("/piece/luthiers-bench?size=L3.side");
            pages.Add("/piece/luthiers-bench?view=plan");
            pages.Add("/piece/jar-cabinet?view=section&size=A");
            pages.Add("/piece/luthiers-bench?view=apart&size=L3.side");
            pages.Add("/piece/luthiers-bench?size=L");
            pages.Add("/piece/jar-cabinet?size=P");
            pages.Add("/piece/jar-cabinet/cost");
            pages.Add("/piece/jar-cabinet/text");
            foreach (string of in new[] { "", "?of=F", "?of=T", "?of=bench", "?of=boxes", "?of=L" }) pages.Add("/piece/luthiers-bench/says" + of);
            pages.Add("/piece/sewing-corner/says?of=varnish");
            pages.Add("/piece/jar-cabinet/history");
            pages.Add("/piece/jar-cabinet/history?state=4");
            pages.Add("/new");
            pages.Add("/keeping");
            pages.Add("/viewing?back=/keeping");
            pages.Add("/together");
            pages.Add("/together?piece=jar-cabinet&piece=luthiers-bench");
            pages.Add("/piece/plan-chest?view=side&size=C.depth");
            foreach (string shop in new[] { "", "?item=stock", "?item=stock.17", "?item=saws.guided", "/text" }) pages.Add("/shop" + shop);
            return pages;
        }
    }

    [Theory, MemberData(nameof(Pages))]
    public async Task Page_AtEachWidthInBothThemes_FitsAndIsAccessibleAndAsksNothingOutside(string path)
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync(path);
        await sheet.Page.EvaluateAsync("() => document.fonts.ready.then(() => 0)");
        foreach (ColorScheme scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await sheet.Page.EmulateMediaAsync(new() { ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
            foreach (int width in s_widths)
            {
                await sheet.Page.SetViewportSizeAsync(width, 900);
                int over = await sheet.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
                Assert.True(over <= 0, $"{path} at {width} px, {scheme}: {over} px too wide");
                // A theme does not depend on the width.
                if (scheme == ColorScheme.Light && width != 1024) await Axe.FindsNothingAsync(sheet.Page, $"{path}, {width} px", scheme);
            }
        }
        await sheet.Page.SetViewportSizeAsync(s_widths[0], 900);
        await Axe.FindsNothingInDarkAsync(sheet.Page, path);
        Assert.True(sheet.Complaints.Count == 0, $"{path}: {string.Join("; ", sheet.Complaints)}");
        Assert.True(sheet.Foreign.Count == 0, $"{path} asked for {string.Join(", ", sheet.Foreign)}");
    }

    /// <summary>Forms that are refused, as a browser without script sends them: where to, with what, and how that is answered.</summary>
    public static TheoryData<string, string, int> Refused => new()
    {
        { "/piece/jar-cabinet/edit", "revision=1&key=C.width&choice=width&field-size=wide", 422 },
        { "/piece/jar-cabinet/edit", "revision=99&key=C.width&choice=width&field-size=40", 409 },
        { "/piece/jar-cabinet/text", "revision=99&text=setout: 1\n", 409 },
        { "/piece/jar-cabinet/read", "revision=1&key=C.width&value=wide", 422 },
        { "/piece/jar-cabinet/read", "revision=1&key=C.width&value=400", 422 },
        { "/piece/jar-cabinet/mark", "revision=1&progress=cut&what=nothing", 422 },
        { "/piece/jar-cabinet/mark", "revision=1&progress=eaten&what=C", 422 },
        { "/piece/jar-cabinet/void", "revision=1&entry=none", 422 },
        { "/piece/jar-cabinet/allow", "revision=1&code=none&on=C&because=so", 422 },
        { "/piece/jar-cabinet/mend", "revision=1&upset=C&remedy=none", 422 },
        { "/piece/jar-cabinet/bought", "revision=1&item=none", 422 },
        { "/piece/jar-cabinet/cut", "revision=1&plan=none&run=1", 409 },
        { "/piece/jar-cabinet/save-point", "revision=1&point=", 422 },
        { "/piece/jar-cabinet/go-back", "revision=1&state=999", 422 },
        { "/piece/jar-cabinet/rename", "revision=1&to=../x", 422 },
        { "/piece/jar-cabinet/begin-from", "to=CON", 422 },
        { "/new", "name=Chest&kind=case&unit=in&width=wide&height=30&depth=18", 422 },
        { "/shop/edit", "revision=1&key=stock&choice=none", 422 },
        { "/shop/text", "revision=99&text=setout-shop: 1\n", 409 },
        { "/shop/gone", "revision=1&piece=jar-cabinet&blank=none", 422 },
        { "/keeping/import/do", "seen=none", 422 },
        { "/keeping/import/take-back", "made=none", 422 },
        { "/keeping/restore", "backup=none.db", 404 },
    };

    [Theory, MemberData(nameof(Refused))]
    public async Task Form_RefusedWithoutScript_IsAPageThatIsAccessibleInBothThemes(string to, string fields, int status)
    {
        await using Sheet sheet = await room.OpenAsync(390);
        IPage page = sheet.Page;
        await page.GotoAsync("/viewing");
        IResponse answer = await page.RunAndWaitForResponseAsync(() => page.EvaluateAsync("""
            ([to, fields]) => {
              const form = document.createElement('form');
              [form.method, form.action] = ['post', to];
              for (const [name, value] of [['change', 'refused' + Math.random()], ...fields.split('&').map(f => f.split(/=(.*)/s))]) {
                const field = document.createElement('input');
                [field.type, field.name, field.value] = ['hidden', name, value];
                form.append(field);
              }
              document.body.append(form);
              form.submit();
            }
            """, new[] { to, fields }), a => a.Request.Method == "POST");
        Assert.Equal(status, answer.Status);
        // The page it was sent from has a heading too.
        await Assertions.Expect(page).ToHaveURLAsync(room.Address + to);
        await page.WaitForLoadStateAsync();
        await Assertions.Expect(page.Locator("main h1")).ToHaveCountAsync(1);
        await Axe.FindsNothingInBothThemesAsync(page, $"{to} {fields}");
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0, "wider than the screen");
        // The page says what is wrong in words of its own, not of the machine.
        Assert.DoesNotContain("Exception", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("upload", "notes.db", "no backup")]
    [InlineData("upload", "", "")]
    [InlineData("texts", "nothing.txt", "nothing")]
    [InlineData("texts", "texts.zip", "PK and nothing else")]
    [InlineData("texts", "", "")]
    public async Task Upload_ThatIsRefused_IsAPageThatIsAccessibleInBothThemes(string field, string file, string text)
    {
        await using Sheet sheet = await room.OpenAsync(390);
        IPage page = sheet.Page;
        await page.GotoAsync("/keeping");
        if (file.Length > 0) await page.SetInputFilesAsync("#" + field, new FilePayload { Name = file, MimeType = "application/octet-stream", Buffer = System.Text.Encoding.UTF8.GetBytes(text) });
        await page.RunAndWaitForResponseAsync(() => page.EvaluateAsync("id => { document.getElementById(id).form.submit(); }", field), a => a.Request.Method == "POST");
        await Assertions.Expect(page).Not.ToHaveURLAsync(room.Address + "/keeping");
        await page.WaitForLoadStateAsync();
        await Assertions.Expect(page.Locator("main .is-red").First).ToBeVisibleAsync();
        await Axe.FindsNothingInBothThemesAsync(page, $"{field} {file}");
    }

    [Theory]
    [InlineData("/piece/luthiers-bench?size=L"), InlineData("/piece/jar-cabinet?size=C"), InlineData("/piece/plan-chest?size=C.depth"), InlineData("/piece/luthiers-bench/says?of=T")]
    [InlineData("/piece/jar-cabinet/buy"), InlineData("/piece/jar-cabinet/break-down"), InlineData("/piece/luthiers-bench/fit"), InlineData("/piece/luthiers-bench/assemble")]
    [InlineData("/"), InlineData("/shop?item=stock"), InlineData("/shop?item=saws.guided"), InlineData("/together?piece=jar-cabinet&piece=luthiers-bench")]
    public async Task Page_WithAllFoldsOpen_FitsAndIsAccessibleInBothThemes(string path)
    {
        await using Sheet sheet = await room.OpenAsync(390);
        await sheet.Page.GotoAsync(path);
        Assert.True(await sheet.Page.EvaluateAsync<int>("() => { const folds = [...document.querySelectorAll('details')]; folds.forEach(d => { d.open = true; }); return folds.length; }") > 0, $"{path} has no folds");
        Assert.True(await sheet.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0, $"{path} is wider than the screen");
        await Axe.FindsNothingInBothThemesAsync(sheet.Page, path);
    }

    [Theory]
    [InlineData("/nowhere", 404), InlineData("/piece/none", 404), InlineData("/piece/none/fit", 404), InlineData("/piece/luthiers-bench/says?of=none", 404), InlineData("/keeping/restore?backup=none", 404), InlineData("/keeping/backup/none.db", 404)]
    [InlineData("/together?piece=none&piece=jar-cabinet", 404), InlineData("/together?piece=jar-cabinet&piece=broken", 200)]
    [InlineData("/piece/broken", 200), InlineData("/piece/broken/text", 200), InlineData("/piece/broken/history", 200), InlineData("/piece/away", 404), InlineData("/piece/away/history", 200), InlineData("/keeping/restore", 200), InlineData("/shop/empty", 200)]
    public async Task Page_OfWhatIsNotThereOrCannotBeRead_IsAccessibleInBothThemes(string path, int status)
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: path != "/shop/empty");
        if (path != "/shop/empty")
        {
            shop.Keep("broken", "setout: 1\nunit: ells\nname: Broken\n");
            shop.Keep("away", shop.Text("jar-cabinet"));
            await shop.Client.PostAsync("/piece/away/put-away", new FormUrlEncodedContent(new Dictionary<string, string> { ["change"] = "a", ["revision"] = "1", ["back"] = "/" }));
        }
        await using Sheet sheet = await room.OpenAsync(390, address: shop.Address);
        string asked = path == "/shop/empty" ? "/shop" : path;
        if (path == "/keeping/restore")
        {
            await shop.Client.PostAsync("/keeping/backup", new FormUrlEncodedContent([]));
            asked += "?backup=" + Path.GetFileName(Directory.EnumerateFiles(Path.Combine(shop.Place, "backups"), "*.db").First());
        }
        IResponse? answer = await sheet.Page.GotoAsync(asked);
        Assert.Equal(status, answer!.Status);
        await Axe.FindsNothingInBothThemesAsync(sheet.Page, path);
    }

    [Fact]
    public async Task Page_OnceLoaded_AskedOnlyForItsOwnAssets()
    {
        await using Sheet sheet = await room.OpenAsync(390, ColorScheme.Dark);
        var asked = new List<string>();
        sheet.Page.Request += (_, request) => asked.Add(new Uri(request.Url).AbsolutePath);
        await sheet.Page.GotoAsync("/piece/luthiers-bench");
        await sheet.Page.EvaluateAsync("() => document.fonts.ready.then(() => 0)");
        Assert.Contains(asked, a => a.EndsWith("/workbench.css", StringComparison.Ordinal));
        Assert.Contains(asked, a => a.EndsWith("/IBMPlexSans-Regular.ttf", StringComparison.Ordinal));
        // Itself it asks for anew when layouts become ready meanwhile.
        Assert.All(asked.ToArray().Where(a => a is not ("/changes" or "/piece/luthiers-bench" or "/piece/luthiers-bench/cost")), a => Assert.StartsWith("/assets/", a, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Page_InForcedColoursAndPrint_KeepsTheDrawing()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync("/piece/luthiers-bench?size=L3.front");
        await sheet.Page.EmulateMediaAsync(new() { ForcedColors = ForcedColors.Active });
        await Assertions.Expect(sheet.Page.Locator(".for-desk svg")).ToBeVisibleAsync();
        await sheet.Page.EmulateMediaAsync(new() { ForcedColors = ForcedColors.None, Media = Media.Print });
        await Assertions.Expect(sheet.Page.Locator(".for-desk svg")).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator(".stages")).ToBeHiddenAsync();
        string ink = await sheet.Page.EvaluateAsync<string>("() => getComputedStyle(document.querySelector('.is-chosen rect')).stroke");
        Assert.Equal("rgb(0, 0, 0)", ink);
    }

    [Fact]
    public async Task Page_WhenTypeIsSet_UsesTheEmbeddedTypeface()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync("/piece/luthiers-bench");
        Assert.True(await sheet.Page.EvaluateAsync<bool>("() => document.fonts.ready.then(() => [...document.fonts].some(f => f.family.includes('IBM Plex Sans') && f.status === 'loaded'))"));
    }
}
