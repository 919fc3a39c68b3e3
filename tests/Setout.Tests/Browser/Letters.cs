using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>The first letters of a name, typed where a list is gone through by them.</summary>
internal static class Letters
{
    /// <summary>Types them one after another without a pause: letters that come a while after the last begin another name, and between strokes over the wire that while may pass.</summary>
    public static Task TypeAsync(IPage page, string letters) =>
        page.EvaluateAsync("letters => { for (const key of letters) document.activeElement.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true })); }", letters);
}
