using System.Text;

namespace Setout.Drawing.Documents.Fonts;

/// <summary>Measures with the fonts that are built in and that the PDF writer draws with.</summary>
public sealed class FontMeasure : ITextMeasure
{
    private FontMeasure()
    {
    }

    /// <summary>The only one: it holds no state.</summary>
    public static ITextMeasure Plex { get; } = new FontMeasure();

    /// <inheritdoc/>
    public double Width(string text, FaceStyle style, double size) => FontFace.Of(style).Width(text) * size;

    /// <inheritdoc/>
    public bool Has(Rune character, FaceStyle style) => FontFace.Of(style).GlyphOf(character.Value) != 0;
}
