using Setout.Core.Measures.Text;

namespace Setout.Workbench.Viewing;

/// <summary>How one person wants pages to be, in the browser that he uses. Nothing of a piece depends on it.</summary>
/// <param name="Unit">The unit that figures are shown in and bare figures are typed in; null for that of each piece.</param>
/// <param name="HasKeys">Whether single letters and signs do something.</param>
/// <param name="Moves">Whether things on the page may move; false also where the system says yes.</param>
internal sealed record Viewer(LengthUnit? Unit, bool HasKeys, bool Moves)
{
    private const string Cookie = "setout-viewer";

    /// <summary>A person who has chosen nothing.</summary>
    public static Viewer Usual { get; } = new(null, true, true);

    /// <summary>Who asks; the usual person where nobody does, or where what the browser keeps is not understood.</summary>
    public static Viewer Of(HttpContext? http)
    {
        string[] said = (http?.Request.Cookies[Cookie] ?? "").Split('.');
        return new(UnitOf(said[0]), !said.Contains("keys-off"), !said.Contains("still"));
    }

    /// <summary>By the fields of the form.</summary>
    public static Viewer Of(IFormCollection fields) => new(UnitOf(fields["unit"].ToString()), fields["keys"] != "off", fields["motion"] != "none");

    /// <summary>Lets the browser keep it for a year, for this program alone.</summary>
    public void Keep(HttpResponse response) => response.Cookies.Append(Cookie, $"{WordOf(Unit)}{(HasKeys ? "" : ".keys-off")}{(Moves ? "" : ".still")}",
        new() { HttpOnly = true, SameSite = SameSiteMode.Strict, MaxAge = TimeSpan.FromDays(365), Path = "/", IsEssential = true });

    /// <summary><c>in</c>, <c>mm</c> or, for that of each piece, <c>own</c>.</summary>
    public static string WordOf(LengthUnit? unit) => unit switch { LengthUnit.Inch => "in", LengthUnit.Millimetre => "mm", _ => "own" };

    private static LengthUnit? UnitOf(string word) => word switch { "in" => LengthUnit.Inch, "mm" => LengthUnit.Millimetre, _ => null };
}
