using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
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
                // Axe is slow and a theme does not depend on the width: once for each theme, and once for the narrow page.
                if (width == 1024 || (width == 390 && scheme == ColorScheme.Dark)) continue;
                AxeResult found = await sheet.Page.RunAxe();
                Assert.True(found.Violations.Length == 0,
                    $"{path}, {scheme}, {width} px: {string.Join("; ", found.Violations.Select(v => $"{v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"))}");
            }
        }
        Assert.True(sheet.Complaints.Count == 0, $"{path}: {string.Join("; ", sheet.Complaints)}");
        Assert.True(sheet.Foreign.Count == 0, $"{path} asked for {string.Join(", ", sheet.Foreign)}");
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
        Assert.All(asked.Skip(1).Where(a => a is not ("/changes" or "/piece/luthiers-bench/cost")), a => Assert.StartsWith("/assets/", a, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Page_InForcedColoursAndPrint_KeepsTheDrawing()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync("/piece/luthiers-bench?size=L3.front");
        await sheet.Page.EmulateMediaAsync(new() { ForcedColors = ForcedColors.Active });
        Assert.True(await sheet.Page.Locator(".for-desk svg").IsVisibleAsync());
        await sheet.Page.EmulateMediaAsync(new() { ForcedColors = ForcedColors.None, Media = Media.Print });
        Assert.True(await sheet.Page.Locator(".for-desk svg").IsVisibleAsync());
        Assert.False(await sheet.Page.Locator(".stages").IsVisibleAsync());
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
