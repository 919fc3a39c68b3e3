using System.Globalization;

namespace Setout.Quality;

/// <summary>
/// Fifty of the instances of a set of ten classes and five sizes (20, 40, 60, 80, 100 parts): one of each class and size. Of the five
/// with an odd number the one numbered 1 + 2 x ((class + place of the size) mod 5) is taken, so no class and no size always gives the same number.
/// </summary>
internal static class SubsetRule
{
    private static readonly int[] Sizes = [20, 40, 60, 80, 100];

    /// <summary>Ids of file A: class, number of parts, number 1 to 10 within them.</summary>
    public static IEnumerable<string> A => Each((c, s, number) => string.Create(CultureInfo.InvariantCulture, $"A-c{c:00}-n{Sizes[s]:000}-i{number:00}"));

    /// <summary>Ids of pisinger: numbers run through the sizes of a class, ten to a size.</summary>
    public static IEnumerable<string> Pisinger => Each((c, s, number) => string.Create(CultureInfo.InvariantCulture, $"B-pisinger-MB_C{c}_{(10 * s) + number}"));

    private static IEnumerable<string> Each(Func<int, int, int, string> name) =>
        from c in Enumerable.Range(1, 10)
        from s in Enumerable.Range(0, Sizes.Length)
        select name(c, s, 1 + (2 * ((c + s) % 5)));
}
