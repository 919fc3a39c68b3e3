using System.Globalization;
using Setout.Shop.Texts;

namespace Setout.Workbench.Shell;

/// <summary>Times in words, by the clock of this machine.</summary>
internal static class When
{
    /// <summary>Such as <c>today 10:42</c>, <c>yesterday 18:03</c> or <c>3 November 2026, 9:15</c>.</summary>
    /// <param name="at">An ISO 8601 time, as stores and logs give it; what is none is given back.</param>
    /// <param name="time">The clock.</param>
    public static string Of(string at, TimeProvider time) =>
        DateTimeOffset.TryParse(at, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset read) ? Of(read, time) : at;

    /// <summary>The same for a moment.</summary>
    public static string Of(DateTimeOffset at, TimeProvider time) => Of(TimeZoneInfo.ConvertTime(at, time.LocalTimeZone).DateTime, time);

    /// <summary>The same for a time of this machine.</summary>
    public static string Of(DateTime at, TimeProvider time)
    {
        string hour = at.ToString("H:mm", CultureInfo.InvariantCulture);
        return (time.GetLocalNow().Date - at.Date).Days switch
        {
            0 => "today " + hour,
            1 => "yesterday " + hour,
            _ => EntryTime.Say(at),
        };
    }
}
