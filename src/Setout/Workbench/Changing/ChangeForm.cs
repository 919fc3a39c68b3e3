using System.Globalization;

namespace Setout.Workbench.Changing;

/// <summary>What every form of a page sends along.</summary>
/// <param name="Id">Of the change, made when the page was made: a form sent twice changes things once.</param>
/// <param name="Revision">That the page showed.</param>
/// <param name="Back">The page to show afterwards, an address of this piece.</param>
internal sealed record ChangeForm(string Id, int Revision, string Back)
{
    /// <summary>What the names of fields begin with that are the edit's own.</summary>
    public const string Field = "field-";

    /// <summary>True where the page is to show what it showed, whatever was made.</summary>
    public bool IsStaying { get; init; }

    /// <summary>True where it goes back to the drawing, which then shows what was made; other pages stay where they are.</summary>
    public bool IsDrawing(string piecePath) => !IsStaying && (Back == piecePath || Back.StartsWith(piecePath + "?", StringComparison.Ordinal) || Back.StartsWith(piecePath + "#", StringComparison.Ordinal));

    /// <summary>The key of what was chosen on the page; empty for nothing.</summary>
    public string Chosen => Microsoft.AspNetCore.WebUtilities.QueryHelpers.ParseQuery(new Uri(new Uri("http://here"), Back).Query).TryGetValue("size", out Microsoft.Extensions.Primitives.StringValues size) ? size.ToString() : "";

    /// <summary>A new id.</summary>
    public static string NewId() => "w" + Guid.NewGuid().ToString("N", CultureInfo.InvariantCulture)[..16];

    /// <summary>What was typed, by the names of the fields.</summary>
    public static IReadOnlyDictionary<string, string> Values(IFormCollection form) =>
        form.Keys.Where(k => k.StartsWith(Field, StringComparison.Ordinal)).ToDictionary(k => k[Field.Length..], k => form[k].ToString());

    /// <summary>Takes it out of a form; null when it is not all there.</summary>
    public static ChangeForm? Of(IFormCollection form, string piecePath)
    {
        string id = form["change"].ToString(), back = form["back"].ToString();
        if (id.Length is 0 or > Shop.Documents.Change.LongestId || !int.TryParse(form["revision"].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out int revision)) return null;
        // Back to a page of this piece, and nowhere else.
        bool isOwn = Shell.Links.IsPlain(back) && (back == piecePath || back.StartsWith(piecePath + "?", StringComparison.Ordinal) || back.StartsWith(piecePath + "/", StringComparison.Ordinal) || back.StartsWith(piecePath + "#", StringComparison.Ordinal));
        return new(id, revision, isOwn ? back : piecePath) { IsStaying = form["stay"] == "yes" };
    }
}
