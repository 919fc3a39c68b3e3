using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>Holds a page against the rules of axe.</summary>
internal static class Axe
{
    // What alone is asked of the second theme: the rest of a page is the same in both.
    private static readonly string[] s_ofColours = ["color-contrast", "link-in-text-block"];

    // Only what is wrong is told whole: telling of all that is right takes longer than finding it out.
    private static readonly HashSet<ResultType> s_wrong = [ResultType.Violations];

    /// <summary>Nothing is found: all rules in the light, those of colours in the dark.</summary>
    public static async Task FindsNothingInBothThemesAsync(IPage page, string where)
    {
        await FindsNothingAsync(page, where, ColorScheme.Light);
        await FindsNothingInDarkAsync(page, where);
    }

    /// <summary>Nothing is found by the rules of colours in the dark, of a page whose light one was held against all.</summary>
    public static Task FindsNothingInDarkAsync(IPage page, string where) => FindsNothingAsync(page, where, ColorScheme.Dark, s_ofColours);

    /// <summary>Nothing is found in one theme.</summary>
    /// <param name="page">The page, of any theme; it is shown in this one.</param>
    /// <param name="where">What it is, for whoever reads of a failure.</param>
    /// <param name="scheme">The theme.</param>
    /// <param name="rules">The rules to hold it against; all by default.</param>
    public static async Task FindsNothingAsync(IPage page, string where, ColorScheme scheme, params string[] rules)
    {
        await page.EmulateMediaAsync(new() { ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
        AxeRunOptions options = new() { ResultTypes = s_wrong };
        if (rules.Length > 0) options.RunOnly = new RunOnlyOptions { Type = "rule", Values = [.. rules] };
        // A page that comes by itself waits as long as something is asked for: it would take away what is just being looked through.
        await page.EvaluateAsync("() => { document.documentElement.dataset.asking = 'axe'; }");
        AxeResult found = await page.RunAxe(options);
        await page.EvaluateAsync("() => { delete document.documentElement.dataset.asking; }");
        Assert.True(found.Violations.Length == 0, $"{where}, {scheme}: {string.Join("; ", found.Violations.Select(v => $"{v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"))}");
    }
}
