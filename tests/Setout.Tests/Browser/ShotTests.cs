using Microsoft.Playwright;
namespace Setout.Tests.Browser;
public sealed class ShotTests(Room room)
{
    [Fact]
    public async Task Shots()
    {
        foreach ((int w, ColorScheme c) in new[] { (1440, ColorScheme.Light), (1024, ColorScheme.Dark), (390, ColorScheme.Light), (390, ColorScheme.Dark) })
        {
            await using Sheet s = await room.OpenAsync(w, c);
            await s.Page.GotoAsync("/piece/luthiers-bench/fit");
            await s.Page.EvaluateAsync("() => document.fonts.ready.then(() => 0)");
            await s.Page.ScreenshotAsync(new() { Path = $"/tmp/fp/web-{w}-{c}.png", FullPage = true });
        }
        await using Sheet p = await room.OpenAsync(800);
        await p.Page.GotoAsync("/piece/plan-chest/fit");
        await p.Page.PdfAsync(new() { Path = "/tmp/fp/web-print.pdf", PreferCSSPageSize = true });
        await p.Page.GotoAsync("/piece/amateur-workbench/fit");
        await p.Page.ScreenshotAsync(new() { Path = "/tmp/fp/web-none.png", FullPage = true });
    }
}
