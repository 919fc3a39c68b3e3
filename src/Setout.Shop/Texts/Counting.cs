using System.Globalization;
using System.Text.RegularExpressions;

namespace Setout.Shop.Texts;

/// <summary>When wood in the rack was counted: what was taken before that is no longer taken off the count.</summary>
/// <param name="Text">A day, which stands for its beginning, or a time with its offset, as written.</param>
public sealed partial record Counting(string Text)
{
    /// <summary>Reads a day or a time; null when it is neither.</summary>
    public static Counting? Read(string text) =>
        Pattern().IsMatch(text) && DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out _) ? new(text) : null;

    /// <summary>True when something that happened was over before the count. A day is that of the place where it happened.</summary>
    /// <param name="at">When it happened, as a log writes it.</param>
    public bool IsAfter(string at)
    {
        if (!DateTimeOffset.TryParse(at, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset time)) return false;
        return Text.Contains('T', StringComparison.Ordinal)
            ? time < DateTimeOffset.Parse(Text, CultureInfo.InvariantCulture)
            : DateOnly.FromDateTime(time.DateTime) < DateOnly.ParseExact(Text, "yyyy-MM-dd", CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"^\d{4}-\d\d-\d\d(T\d\d:\d\d:\d\d(\.\d{1,7})?(Z|[+-]\d\d:\d\d))?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
