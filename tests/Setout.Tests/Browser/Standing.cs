using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>Where things stand on the glass.</summary>
internal static class Standing
{
    /// <summary>Its box in pixels of the window, once layouts are ready: what they find makes a page longer.</summary>
    /// <param name="what">What is looked for; it must be seen.</param>
    /// <param name="isBrought">True when it is brought into view first.</param>
    public static async Task<LocatorBoundingBoxResult> StandsAsync(this ILocator what, bool isBrought = false)
    {
        await Assertions.Expect(what.Page.Locator("#margin .waiting")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await Assertions.Expect(what).ToBeVisibleAsync();
        float[] box = await what.LookAsync<float[]>(
            "(e, isBrought) => { if (isBrought) e.scrollIntoView({ block: 'nearest' }); const r = e.getBoundingClientRect(); return [r.x, r.y, r.width, r.height]; }", isBrought);
        return new() { X = box[0], Y = box[1], Width = box[2], Height = box[3] };
    }
}
