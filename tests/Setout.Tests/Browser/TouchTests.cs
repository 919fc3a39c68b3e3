using System.Globalization;
using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>The drawing on a phone: a tap chooses, two fingers zoom, one moves what is zoomed and else the page; nothing is moved by accident, and what was chosen is moved by its handle.</summary>
public sealed class TouchTests(Room room)
{
    private static async Task<(Sheet Sheet, Fingers Fingers)> At(Room room, KeptShop shop, string path)
    {
        Sheet sheet = await room.OpenAsync(390, address: shop.Address, hasTouch: true);
        await sheet.Page.GotoAsync(path);
        return (sheet, await Fingers.OnAsync(sheet.Page));
    }

    private static ILocator Paper(IPage page) => page.Locator(".for-phone svg").First;

    private static ILocator Of(IPage page, string key) => page.Locator($".for-phone [data-key='{key}']").First;

    private static async Task<(float X, float Y)> MiddleAsync(ILocator what)
    {
        LocatorBoundingBoxResult box = await what.StandsAsync();
        return (box.X + (box.Width / 2), box.Y + (box.Height / 2));
    }

    private static async Task<double[]> SeenAsync(IPage page) => [.. (await Paper(page).GetAttributeAsync("viewBox"))!.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];

    // The page stands so that all of the paper is on the glass.
    private static async Task<LocatorBoundingBoxResult> ShownAsync(IPage page)
    {
        await Assertions.Expect(page.Locator("#margin .waiting")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        float[] box = await Paper(page).LookAsync<float[]>("e => { scrollTo(0, scrollY + e.getBoundingClientRect().top - 100); const r = e.getBoundingClientRect(); return [r.x, r.y, r.width, r.height]; }");
        return new() { X = box[0], Y = box[1], Width = box[2], Height = box[3] };
    }

    private static Task<double> ScrolledAsync(IPage page) => page.EvaluateAsync<double>("() => scrollY");

    private static Task SpreadAsync(Fingers fingers, (float X, float Y) at, float from, float to) =>
        fingers.MoveAsync([((at.X - from, at.Y), (at.X - to, at.Y)), ((at.X + from, at.Y), (at.X + to, at.Y))]);

    [Fact]
    public async Task Tap_Chooses()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        (Sheet sheet, Fingers fingers) = await At(room, shop, "/piece/jar-cabinet");
        await using Sheet open = sheet;
        await ShownAsync(sheet.Page);
        (float x, float y) = await MiddleAsync(Of(sheet.Page, "P"));
        await fingers.TapAsync(x, y);
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Slider, new() { Name = "Move P" })).ToBeVisibleAsync();
        Assert.Contains("size=P", sheet.Page.Url, StringComparison.Ordinal);
        Assert.Equal(1, shop.Database.Find("jar-cabinet")!.Revision);
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Swipe_OverTheWholeDrawing_ScrollsThePageAndMovesNothing()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        (Sheet sheet, Fingers fingers) = await At(room, shop, "/piece/jar-cabinet");
        await using Sheet open = sheet;
        await ShownAsync(sheet.Page);
        double before = await ScrolledAsync(sheet.Page);
        double[] whole = await SeenAsync(sheet.Page);
        (float x, float y) = await MiddleAsync(Of(sheet.Page, "P"));
        await fingers.SwipeAsync((x, y), (x, y - 120));
        await sheet.Page.WaitForFunctionAsync("before => scrollY > before + 60", before);
        Assert.Equal(whole, await SeenAsync(sheet.Page));
        Assert.DoesNotContain("size=", sheet.Page.Url, StringComparison.Ordinal);
        await Assertions.Expect(sheet.Page.Locator("#trial-bar")).ToBeHiddenAsync();
        Assert.Equal(1, shop.Database.Find("jar-cabinet")!.Revision);
    }

    [Fact]
    public async Task TwoFingers_ZoomWhereTheyAre_OneMovesWhatIsZoomed()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        (Sheet sheet, Fingers fingers) = await At(room, shop, "/piece/jar-cabinet");
        await using Sheet open = sheet;
        LocatorBoundingBoxResult box = await ShownAsync(sheet.Page);
        double scrolled = await ScrolledAsync(sheet.Page);
        double[] whole = await SeenAsync(sheet.Page);
        (float X, float Y) at = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await SpreadAsync(fingers, at, 30, 90);
        double[] close = await SeenAsync(sheet.Page);
        // Three times as far apart is three times as large, and the middle stays where it is.
        Assert.Equal(whole[2] / 3, close[2], whole[2] * 0.05);
        Assert.Equal(whole[0] + (whole[2] / 2), close[0] + (close[2] / 2), whole[2] * 0.03);
        Assert.Equal(scrolled, await ScrolledAsync(sheet.Page));
        Assert.Equal(1, await sheet.Page.EvaluateAsync<double>("() => visualViewport.scale"));
        await fingers.SwipeAsync(at, (at.X - 60, at.Y - 40));
        double[] moved = await SeenAsync(sheet.Page);
        Assert.Equal(close[0] + (60 * close[2] / box.Width), moved[0], close[2] * 0.05);
        Assert.Equal(close[1] + (40 * close[3] / box.Height), moved[1], close[3] * 0.05);
        Assert.Equal(close[2], moved[2], 0.001);
        Assert.Equal(scrolled, await ScrolledAsync(sheet.Page));
        Assert.DoesNotContain("size=", sheet.Page.Url, StringComparison.Ordinal);
        await SpreadAsync(fingers, at, 90, 20);
        Assert.Equal(whole, await SeenAsync(sheet.Page));
        await fingers.SwipeAsync(at, (at.X, at.Y - 120));
        await sheet.Page.WaitForFunctionAsync("before => scrollY > before + 60", scrolled);
        Assert.Empty(sheet.Complaints);
    }

    /// <summary>Fingers seldom move alike: what would scroll the page with one of them still zooms.</summary>
    [Fact]
    public async Task TwoFingers_OfWhichOneStandsStill_ZoomAndDoNotScroll()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        (Sheet sheet, Fingers fingers) = await At(room, shop, "/piece/jar-cabinet");
        await using Sheet open = sheet;
        LocatorBoundingBoxResult box = await ShownAsync(sheet.Page);
        double scrolled = await ScrolledAsync(sheet.Page);
        double[] whole = await SeenAsync(sheet.Page);
        (float X, float Y) at = (box.X + (box.Width / 2), box.Y + (box.Height * 0.7f));
        await fingers.MoveAsync([(at, at), ((at.X, at.Y - 60), (at.X, at.Y - 180))]);
        double[] close = await SeenAsync(sheet.Page);
        Assert.Equal(whole[2] / 3, close[2], whole[2] * 0.05);
        // What lay under the still finger lies there yet.
        Assert.Equal(whole[1] + (0.7 * whole[3]), close[1] + (0.7 * close[3]), whole[3] * 0.04);
        Assert.Equal(scrolled, await ScrolledAsync(sheet.Page));
        Assert.DoesNotContain("size=", sheet.Page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TwoFingers_OfWhichOneGoes_LeaveOneThatMovesWhatIsZoomed()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        (Sheet sheet, Fingers fingers) = await At(room, shop, "/piece/jar-cabinet");
        await using Sheet open = sheet;
        LocatorBoundingBoxResult box = await ShownAsync(sheet.Page);
        (float X, float Y) at = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await fingers.MoveAsync([((at.X - 30, at.Y), (at.X - 90, at.Y)), ((at.X + 30, at.Y), (at.X + 90, at.Y))], isLifted: false);
        double[] close = await SeenAsync(sheet.Page);
        await fingers.LeaveAsync((at.X - 90, at.Y), (at.X - 50, at.Y));
        double[] moved = await SeenAsync(sheet.Page);
        Assert.Equal(close[0] - (40 * close[2] / box.Width), moved[0], close[2] * 0.05);
        Assert.Equal(close[2], moved[2], 0.001);
        Assert.DoesNotContain("size=", sheet.Page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Divider_IsDraggedByItsHandleAndOnlyByThat()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        (Sheet sheet, Fingers fingers) = await At(room, shop, "/piece/jar-cabinet");
        await using Sheet open = sheet;
        IPage page = sheet.Page;
        await ShownAsync(page);
        (float X, float Y) at = await MiddleAsync(Of(page, "P"));
        await fingers.SwipeAsync(at, (at.X - 40, at.Y));
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeHiddenAsync();
        await fingers.TapAsync(at.X, at.Y);
        ILocator grip = page.GetByRole(AriaRole.Slider, new() { Name = "Move P" });
        await Assertions.Expect(grip).ToBeVisibleAsync();
        await ShownAsync(page);
        double scrolled = await ScrolledAsync(page);
        (float X, float Y) hold = await MiddleAsync(grip);
        // A finger that wavers moves nothing, and neither do two.
        await fingers.SwipeAsync(hold, (hold.X - 6, hold.Y + 4));
        await fingers.MoveAsync([(hold, (hold.X - 30, hold.Y)), ((hold.X, hold.Y + 60), (hold.X + 10, hold.Y + 90))]);
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeHiddenAsync();
        await fingers.MoveAsync([(hold, (hold.X - 40, hold.Y + 30))], isLifted: false);
        await Assertions.Expect(page.Locator("#grip-tip")).ToContainTextAsync("A, at its left:");
        await Assertions.Expect(page.Locator("#trial-bar")).ToBeVisibleAsync();
        Assert.Equal(1, shop.Database.Find("jar-cabinet")!.Revision);
        await fingers.LiftAsync();
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("revision 2");
        Assert.Equal(scrolled, await ScrolledAsync(page));
        await Assertions.Expect(grip).Not.ToHaveAttributeAsync("aria-valuenow", "20");
        Assert.Empty(sheet.Complaints);
    }
}
