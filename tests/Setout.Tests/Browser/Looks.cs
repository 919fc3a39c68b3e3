using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>
/// Looking at what stands on a page, and doing something to it, in one step. A page puts fresh regions in the place of the old ones by itself, when layouts become ready or another window changes something: what is
/// found first and used second may be gone at the second, and what is read of it, or done to it, is lost.
/// </summary>
internal static class Looks
{
    private const int Most = 100;

    // What was found and is gone when it is looked at is looked for anew.
    private const string One = "async (all, given) => all.length === 1 && all[0].isConnected ? [await ({0})(all[0], given)] : []";
    private const string Each = "async (all, given) => all.every(e => e.isConnected) ? [await ({0})(all, given)] : []";

    /// <summary>What a function of the page makes of the one element that this leads to, once it is there.</summary>
    /// <param name="what">Where it is; it must be one.</param>
    /// <param name="look">The function, such as <c>e => e.tagName</c>; what is given is its second argument.</param>
    /// <param name="given">What is given to it.</param>
    public static Task<T> LookAsync<T>(this ILocator what, string look, object? given = null) => UntilAsync<T>(what, () => Assertions.Expect(what).ToHaveCountAsync(1), One, look, given);

    /// <summary>What a function of the page makes of all elements that this leads to, however many there are just now.</summary>
    public static Task<T> LookAtAllAsync<T>(this ILocator what, string look, object? given = null) => UntilAsync<T>(what, () => Task.CompletedTask, Each, look, given);

    /// <summary>Does something to the one element that this leads to, once it is there.</summary>
    public static Task ActAsync(this ILocator what, string act, object? given = null) => what.LookAsync<bool>($"async (e, given) => {{ await ({act})(e, given); return true; }}", given);

    private static async Task<T> UntilAsync<T>(ILocator what, Func<Task> there, string frame, string look, object? given)
    {
        string whole = frame.Replace("{0}", look, StringComparison.Ordinal);
        for (int i = 0; i < Most; i++)
        {
            await there();
            try
            {
                T[] seen = await what.EvaluateAllAsync<T[]>(whole, given);
                if (seen.Length == 1) return seen[0];
            }
            catch (PlaywrightException gone) when (gone.Message.Contains("context was destroyed", StringComparison.Ordinal))
            {
                // Another page was loaded between.
            }
        }
        throw new InvalidOperationException($"{what} never stood still.");
    }
}
