using System.Globalization;
using System.Text;

namespace Setout.Drawing.Scenes;

/// <summary>The colours of one surface. Every text keeps 4.5:1 and every line that carries meaning 3:1 against every ground it may lie on; a test sums it.</summary>
/// <param name="Paper">The paper.</param>
/// <param name="Wood">Tint of solid wood.</param>
/// <param name="Panel">Tint of panels, fronts and sheets.</param>
/// <param name="Metal">Handles and slides.</param>
/// <param name="Text">Ink of words and outlines.</param>
/// <param name="Soft">Words of less weight and dimension lines.</param>
/// <param name="Grain">Lines of the grain: ornament, no meaning hangs on them alone.</param>
/// <param name="Hatch">Hatching.</param>
/// <param name="Pencil">The red pencil.</param>
public sealed record SvgTheme(string Paper, string Wood, string Panel, string Metal, string Text, string Soft, string Grain, string Hatch, string Pencil)
{
    /// <summary>Ink on paper.</summary>
    public static SvgTheme Light { get; } = new("#f6f2e8", "#efe6d2", "#fdfaf1", "#22262a", "#22262a", "#5a5e5f", "#d3c6a6", "#857f70", "#b23a22");

    /// <summary>Chalk on a dark board: the same order of weight.</summary>
    public static SvgTheme Dark { get; } = new("#1d2124", "#2d2b25", "#25292c", "#e9e3d5", "#ece7da", "#aba799", "#4c483b", "#8d8878", "#ff8a6e");

    /// <summary>Black on white, with nothing left to colour or tint.</summary>
    public static SvgTheme Print { get; } = new("#ffffff", "#ffffff", "#ffffff", "#000000", "#000000", "#000000", Grey(Ink.Grain), Grey(Ink.Hatch), "#000000");

    private static string Grey(Ink ink)
    {
        int part = (int)Math.Round(Inks.InPrint(ink).Grey * 255);
        return $"#{part:x2}{part:x2}{part:x2}";
    }

    /// <summary>The person's own colours, where the system forces them.</summary>
    public static SvgTheme Forced { get; } = new("Canvas", "Canvas", "Canvas", "CanvasText", "CanvasText", "CanvasText", "GrayText", "CanvasText", "CanvasText");
}

/// <summary>The one style sheet of all drawings. Values are written out, not variables, so that plain SVG viewers follow it.</summary>
public static class SvgStyle
{
    /// <summary>The class on the root of every drawing.</summary>
    public const string RootClass = "so-drawing";

    private static readonly Lazy<string> s_sheet = new(Whole);

    /// <summary>The whole sheet: light, dark, print, forced colours. A page with several drawings holds it once.</summary>
    public static string Sheet => s_sheet.Value;

    /// <summary>The class of lines of an ink.</summary>
    public static string LineClass(Ink ink) => $"so-{Name(ink)}";

    /// <summary>The class of texts of an ink.</summary>
    public static string TextClass(Ink ink) => $"so-t-{Name(ink)}";

    /// <summary>The class of areas of a wash.</summary>
    public static string WashClass(Wash wash) => $"so-{wash.ToString().ToLowerInvariant()}";

    /// <summary>The colour rules of a theme.</summary>
    /// <param name="theme">The colours.</param>
    /// <param name="scope">What stands before each rule, such as <c>[data-theme=dark] </c>; empty for none.</param>
    public static string Colours(SvgTheme theme, string scope = "")
    {
        var css = new StringBuilder();
        void Rule(string classes, string body) => css.Append(string.Join(',', classes.Split(' ').Select(c => $"{scope}.so-{c}"))).Append('{').Append(body).Append("}\n");
        Rule("paper", $"fill:{theme.Paper}");
        Rule("wood", $"fill:{theme.Wood}");
        Rule("panel", $"fill:{theme.Panel}");
        Rule("metal", $"fill:{theme.Metal}");
        Rule("outline part hidden", $"stroke:{theme.Text}");
        Rule("dimension soft", $"stroke:{theme.Soft}");
        Rule("grain", $"stroke:{theme.Grain}");
        Rule("hatch", $"stroke:{theme.Hatch}");
        Rule("pencil", $"stroke:{theme.Pencil}");
        Rule("t-outline t-part t-hidden t-dimension t-grain t-hatch", $"fill:{theme.Text}");
        Rule("t-soft", $"fill:{theme.Soft}");
        Rule("t-pencil", $"fill:{theme.Pencil}");
        return css.ToString();
    }

    // No text-rendering: with geometricPrecision the browser set texts 1 to 3 % wider than the font says; as it is, they measured within 0.15 %.
    private static string Whole()
    {
        var css = new StringBuilder();
        css.Append($".{RootClass}{{font-family:\"{Typeface.Family}\",\"Helvetica Neue\",Arial,\"Liberation Sans\",sans-serif;font-kerning:none;font-variant-ligatures:none;forced-color-adjust:none}}\n");
        css.Append($".{RootClass} path,.{RootClass} rect{{fill:none;stroke:none}}\n.{RootClass} text{{stroke:none;white-space:pre}}\n");
        foreach (Ink ink in Enum.GetValues<Ink>())
            css.Append($".{RootClass} .{LineClass(ink)}{{{Stroke(Inks.OnScreen(ink))};stroke-linecap:{(ink is Ink.Outline or Ink.Part ? "square" : "round")};stroke-linejoin:{(ink == Ink.Grain ? "round" : "miter")}}}\n");
        css.Append($".so-clear{{pointer-events:all}}\n.so-bold{{font-weight:600}}\n.so-italic{{font-style:italic}}\n");
        string scope = $".{RootClass} ";
        css.Append(Colours(SvgTheme.Light, scope));
        css.Append("@media screen and (prefers-color-scheme:dark){\n").Append(Colours(SvgTheme.Dark, scope)).Append("}\n");
        css.Append("@media print{\n").Append(Colours(SvgTheme.Print, scope));
        foreach (Ink ink in Enum.GetValues<Ink>())
            css.Append($"{scope}.{LineClass(ink)}{{{Stroke(Inks.InPrint(ink))}{(Inks.InPrint(ink).Dash.Length == 0 ? "" : ";stroke-linecap:butt")}}}\n");
        // Without colours of our own the pencil is told by its weight alone.
        css.Append("}\n@media (forced-colors:active){\n").Append(Colours(SvgTheme.Forced, scope)).Append($"{scope}.so-pencil{{{Stroke(Inks.InPrint(Ink.Pencil) with { Dash = [] })}}}\n}}\n");
        return css.ToString();
    }

    private static string Stroke(InkWeight ink) => string.Create(CultureInfo.InvariantCulture, $"stroke-width:{ink.Weight}{(ink.Dash.Length == 0 ? "" : ";stroke-dasharray:")}{string.Join(' ', ink.Dash)}");

    private static string Name(Ink ink) => ink.ToString().ToLowerInvariant();
}
