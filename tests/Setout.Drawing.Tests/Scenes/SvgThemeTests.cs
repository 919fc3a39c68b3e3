using System.Globalization;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Scenes;

/// <summary>Contrast after WCAG 2.2 (success criteria 1.4.3 and 1.4.11; definition of relative luminance and contrast ratio).</summary>
public sealed class SvgThemeTests
{
    public static TheoryData<string> Themes => ["light", "dark", "print"];

    private static SvgTheme Named(string name) => name switch { "light" => SvgTheme.Light, "dark" => SvgTheme.Dark, _ => SvgTheme.Print };

    [Theory]
    [MemberData(nameof(Themes))]
    public void Theme_Texts_StandOutFromEveryGround(string name)
    {
        SvgTheme theme = Named(name);
        foreach (string ground in new[] { theme.Paper, theme.Wood, theme.Panel })
            foreach (string text in new[] { theme.Text, theme.Soft, theme.Pencil })
                Assert.True(Contrast(text, ground) >= 4.5, $"{text} on {ground} is {Contrast(text, ground):0.00}");
    }

    [Theory]
    [MemberData(nameof(Themes))]
    public void Theme_LinesThatMatter_StandOutFromEveryGround(string name)
    {
        SvgTheme theme = Named(name);
        foreach (string ground in new[] { theme.Paper, theme.Wood, theme.Panel })
            foreach (string line in new[] { theme.Text, theme.Soft, theme.Pencil, theme.Metal, theme.Hatch })
                Assert.True(Contrast(line, ground) >= 3, $"{line} on {ground} is {Contrast(line, ground):0.00}");
    }

    [Fact]
    public void Contrast_BlackOnWhite_IsTwentyOne() => Assert.Equal(21, Contrast("#000000", "#ffffff"), 6);

    [Fact]
    public void Print_Colours_AreGrey() =>
        Assert.All(new[] { SvgTheme.Print.Paper, SvgTheme.Print.Pencil, SvgTheme.Print.Wood, SvgTheme.Print.Hatch, SvgTheme.Print.Grain }, c => Assert.True(c[1..3] == c[3..5] && c[3..5] == c[5..7]));

    private static double Contrast(string a, string b)
    {
        (double x, double y) = (Luminance(a), Luminance(b));
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(string colour)
    {
        double Channel(int at)
        {
            double c = int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        }
        return (0.2126 * Channel(1)) + (0.7152 * Channel(3)) + (0.0722 * Channel(5));
    }
}
