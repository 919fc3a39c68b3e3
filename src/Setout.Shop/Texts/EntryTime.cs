using System.Globalization;
using System.Text.RegularExpressions;

namespace Setout.Shop.Texts;

/// <summary>The time of an entry as a person says it: by the clock of the bench, and not as a log writes it.</summary>
public static partial class EntryTime
{
    /// <summary>Such as <c>12 March 2026, 9:40</c>.</summary>
    /// <param name="at">An ISO 8601 time, as logs give it; what is none is given back.</param>
    public static string Say(string at) => DateTimeOffset.TryParse(at, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset read) ? Say(read.DateTime) : at;

    /// <summary>The same for a time of a clock on the wall.</summary>
    public static string Say(DateTime at) => at.ToString("d MMMM yyyy, H:mm", CultureInfo.InvariantCulture);

    /// <summary>The words with all times in them said so.</summary>
    /// <param name="words">Words as a working has them.</param>
    /// <param name="say">How a time is said; null for the clock of the bench.</param>
    public static string In(string words, Func<string, string>? say = null) => Iso().Replace(words, m => (say ?? Say)(m.Value));

    [GeneratedRegex(@"\b\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:\d\d)?", RegexOptions.CultureInvariant)]
    private static partial Regex Iso();
}
