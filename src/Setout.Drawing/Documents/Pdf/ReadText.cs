using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Pdf;

/// <summary>
/// What a reader of text finds in a set line. Words are what is seen; signs and fractions are drawn as shapes, and their characters lie
/// over them unseen, on the line's own baseline, stretched to the width of what is drawn.
/// </summary>
internal static class ReadText
{
    /// <summary>
    /// Width of the space that is read between whole number and fraction, in em. It is that of a space between words and so wider than
    /// the gap that is seen: one reader tested takes the number and the fraction for one word when they stand closer than 0.15 em.
    /// </summary>
    private const double Gap = 0.26;

    /// <summary>Width of the space that ends a line: without it the last word and the first of the next run together when copied.</summary>
    private const double End = 0.1;

    /// <summary>The texts of a line in reading order, and whether each is seen.</summary>
    /// <param name="line">The line.</param>
    /// <param name="size">The em that it was set at.</param>
    public static IEnumerable<(TextStretch Stretch, bool IsSeen)> Of(SetLine line, double size)
    {
        string fraction = "";
        double begin = 0, read = 0;
        foreach (TextStretch stretch in line.Stretches)
        {
            switch (stretch.Kind)
            {
                case StretchKind.Gap:
                    yield return (stretch with { Size = size, Width = Gap * size }, false);
                    break;
                case StretchKind.Numerator:
                    (fraction, begin) = (stretch.Text, read);
                    break;
                case StretchKind.Slash:
                    fraction += stretch.Text;
                    break;
                case StretchKind.Denominator:
                    yield return (stretch with { Text = fraction + stretch.Text, X = begin, Rise = 0, Size = size, Width = stretch.X + stretch.Width - begin }, false);
                    break;
                default:
                    yield return (stretch, stretch.Kind == StretchKind.Words);
                    break;
            }
            read = stretch.Kind == StretchKind.Gap ? stretch.X + (Gap * size) : stretch.X + stretch.Width;
        }
        yield return (new(StretchKind.Gap, " ", Face.Regular, line.Width, 0, size, End * size), false);
    }
}
