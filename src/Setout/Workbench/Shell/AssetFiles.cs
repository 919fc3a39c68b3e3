using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Net.Http.Headers;
using Setout.Drawing.Scenes;

namespace Setout.Workbench.Shell;

/// <summary>
/// Style, script and fonts, all from inside the program: nothing is looked for beside it and no page asks another machine. Addresses carry
/// a hash of the content, so a browser keeps them for good and still sees a new version at once.
/// </summary>
public static partial class AssetFiles
{
    private sealed record Asset(byte[] Content, string Type, string Tag);

    // Each beside the pages it belongs to.
    private static readonly ImmutableArray<string> s_sheets = ["says.css", "noting.css", "shop.css", "live.css", "keeping.css"];
    private static readonly ImmutableArray<string> s_scripts = ["swapping.js", "workbench.js", "turning.js", "blaming.js", "changing.js", "trying.js", "sizing.js", "gripping.js", "zooming.js", "ways.js", "walking.js", "costing.js", "outline.js", "roving.js", "making.js", "live.js", "below.js", "shop.js", "texts.js"];

    private static readonly Lazy<ImmutableDictionary<string, Asset>> s_all = new(All);

    /// <summary>The address of an asset.</summary>
    /// <exception cref="KeyNotFoundException">There is none: a fault in the code.</exception>
    public static string Url(string name) => $"/assets/{s_all.Value[name].Tag}/{name}";

    /// <summary>The sheets of style that every page has, in order.</summary>
    public static ImmutableArray<string> Sheets => ["workbench.css", "drawing.css", .. s_sheets];

    /// <summary>The scripts that every page begins with; the others are asked for by these.</summary>
    public static ImmutableArray<string> Scripts => ["workbench.js", "turning.js", "changing.js", "live.js", "below.js", "shop.js", "texts.js"];

    /// <summary>Serves them.</summary>
    internal static void MapAssets(this IEndpointRouteBuilder routes) => routes.MapGet("/assets/{tag}/{name}", (string tag, string name, HttpContext http) =>
    {
        if (!s_all.Value.TryGetValue(name, out Asset? asset) || asset.Tag != tag) return Pages.Show<UnknownPage>(UnknownView.Page(http.Request.Path), StatusCodes.Status404NotFound);
        http.Response.Headers[HeaderNames.CacheControl] = "public, max-age=31536000, immutable";
        return Results.Bytes(asset.Content, asset.Type);
    });

    private static ImmutableDictionary<string, Asset> All()
    {
        var all = ImmutableDictionary.CreateBuilder<string, Asset>();
        foreach (Face face in Enum.GetValues<Face>()) all.Add(Typeface.FileName(face), Of(Typeface.File(face), "font/ttf"));
        all.Add("mark.svg", Of(Embedded("mark.svg"), "image/svg+xml"));
        // Each after those that it imports: their addresses carry their hashes.
        foreach (string script in s_scripts)
            all.Add(script, Of(Encoding.UTF8.GetBytes(Import().Replace(Encoding.UTF8.GetString(Embedded(script)), m => $"'../{all[m.Groups[1].Value].Tag}/{m.Groups[1].Value}'")), "text/javascript; charset=utf-8"));
        foreach (string sheet in s_sheets) all.Add(sheet, Of(Embedded(sheet), "text/css; charset=utf-8"));
        all.Add("drawing.css", Of(Encoding.UTF8.GetBytes(SvgStyle.Sheet), "text/css; charset=utf-8"));
        string faces = string.Concat(Enum.GetValues<Face>().Select(f => FontFace(f, $"../{all[Typeface.FileName(f)].Tag}/{Typeface.FileName(f)}")));
        all.Add("workbench.css", Of([.. Encoding.UTF8.GetBytes(faces), .. Embedded("workbench.css")], "text/css; charset=utf-8"));
        return all.ToImmutable();
    }

    [GeneratedRegex(@"'\./([a-z]+\.js)'")]
    private static partial Regex Import();

    private static string FontFace(Face face, string url)
    {
        (int weight, string style) = face switch { Face.SemiBold => (600, "normal"), Face.Italic => (400, "italic"), _ => (400, "normal") };
        return $"@font-face{{font-family:\"{Typeface.Family}\";font-weight:{weight};font-style:{style};font-display:block;src:url(\"{url}\") format(\"truetype\")}}\n";
    }

    private static Asset Of(byte[] content, string type) => new(content, type, Convert.ToHexStringLower(SHA256.HashData(content))[..12]);

    private static byte[] Embedded(string name)
    {
        using Stream stream = typeof(AssetFiles).Assembly.GetManifestResourceStream("workbench/" + name)
            ?? throw new InvalidOperationException($"{name} is not inside the program.");
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }
}
