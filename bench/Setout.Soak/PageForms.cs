using System.Collections.Immutable;
using System.Net;
using System.Text.RegularExpressions;

namespace Setout.Soak;

/// <summary>A field of a form.</summary>
/// <param name="Name">Under which it is sent.</param>
/// <param name="Kind">Its type, or <c>select</c> or <c>textarea</c>.</param>
/// <param name="Value">What stands in it.</param>
/// <param name="IsOn">Whether a box or one of several is ticked.</param>
/// <param name="Options">What can be chosen in a list.</param>
internal sealed record PageField(string Name, string Kind, string Value, bool IsOn, ImmutableArray<string> Options);

/// <summary>A form that a page offers.</summary>
/// <param name="Action">Where it is sent.</param>
/// <param name="IsMultipart">Whether it is sent in parts.</param>
/// <param name="Fields">Its fields, in order.</param>
internal sealed partial record PageForm(string Action, bool IsMultipart, ImmutableArray<PageField> Fields)
{
    /// <summary>The last word of where it is sent: what it asks for.</summary>
    public string Word => Action.Split('?')[0].Split('/')[^1];

    /// <summary>All forms of a page that change something.</summary>
    /// <param name="html">As this program writes pages: signs that mean something are written out in values.</param>
    public static ImmutableArray<PageForm> Of(string html) =>
    [
        .. Forms().Matches(html).Where(f => Attribute(f.Groups[1].Value, "method") == "post").Select(f => new PageForm(
            Attribute(f.Groups[1].Value, "action") ?? "", Attribute(f.Groups[1].Value, "enctype") == "multipart/form-data",
            [.. Inputs().Matches(f.Groups[2].Value).Select(Field).Where(i => i.Name.Length > 0)])),
    ];

    private static PageField Field(Match found)
    {
        string tag = found.Groups[1].Value, attributes = found.Groups[2].Value, inside = found.Groups[3].Value;
        string name = Attribute(attributes, "name") ?? "";
        if (tag == "textarea") return new(name, tag, WebUtility.HtmlDecode(inside), true, []);
        if (tag == "input") return new(name, Attribute(attributes, "type") ?? "text", Attribute(attributes, "value") ?? "", Ticked().IsMatch(attributes), []);
        (string Value, bool IsChosen)[] options = [.. Options().Matches(inside).Select(o => (Attribute(o.Groups[1].Value, "value") ?? WebUtility.HtmlDecode(o.Groups[2].Value), o.Groups[1].Value.Contains("selected", StringComparison.Ordinal)))];
        return new(name, tag, options.FirstOrDefault(o => o.IsChosen, options.FirstOrDefault()).Value ?? "", true, [.. options.Select(o => o.Value)]);
    }

    private static string? Attribute(string attributes, string name) =>
        Regex.Match(attributes, $"(?:^|\\s){name}=\"([^\"]*)\"", RegexOptions.CultureInvariant) is { Success: true } found ? WebUtility.HtmlDecode(found.Groups[1].Value) : null;

    [GeneratedRegex("<form\\b([^>]*)>(.*?)</form>", RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex Forms();

    [GeneratedRegex("<(input)\\b([^>]*?)/?>()|<(?<1>select|textarea)\\b(?<2>[^>]*)>(?<3>.*?)</\\k<1>>", RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex Inputs();

    [GeneratedRegex("<option\\b([^>]*)>(.*?)</option>", RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex Options();

    [GeneratedRegex("(?:^|\\s)checked\\b", RegexOptions.CultureInvariant)]
    private static partial Regex Ticked();
}
