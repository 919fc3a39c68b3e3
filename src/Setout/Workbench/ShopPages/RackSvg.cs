using Setout.Drawing.Scenes;

namespace Setout.Workbench.ShopPages;

/// <summary>Small drawings that keep one scale on a page: their size is written with them.</summary>
internal static class RackSvg
{
    // Pixels of the page for a millimetre of paper.
    private const double Enlarged = 3;

    /// <summary>A scene as part of a page.</summary>
    public static string Of(Scene scene)
    {
        string svg = SvgWriter.Write(scene, SvgOptions.Inline);
        return $"<svg width=\"{SvgWriter.Number(scene.Width * Enlarged)}\" height=\"{SvgWriter.Number(scene.Height * Enlarged)}\"{svg["<svg".Length..]}";
    }
}
