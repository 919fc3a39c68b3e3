namespace Setout.Drawing.Scenes;

/// <summary>How a line is drawn in one medium.</summary>
/// <param name="Weight">Millimetres; in print of the paper, whatever the scale of the drawing.</param>
/// <param name="Grey">0 black to 1 white. On the screen the theme colours the line instead.</param>
/// <param name="Dash">Lengths of dashes and gaps in millimetres; empty for a solid line.</param>
internal readonly record struct InkWeight(double Weight, double Grey, double[] Dash);

/// <summary>
/// The one table of weights, for screen and print side by side. Print is black and greys only: the red pencil of the screen is its
/// heaviest line, dashed long, so that cuts are told from edges without colour. Common practice of drawing offices, no source.
/// </summary>
internal static class Inks
{
    private static (InkWeight Screen, InkWeight Print) Of(Ink ink) => ink switch
    {
        Ink.Outline => (new(0.5, 0, []), new(0.5, 0, [])),
        Ink.Part => (new(0.3, 0, []), new(0.35, 0, [])),
        Ink.Hidden => (new(0.25, 0, [1.2, 1]), new(0.18, 0.2, [1.6, 1])),
        Ink.Dimension => (new(0.18, 0, []), new(0.18, 0, [])),
        Ink.Grain => (new(0.18, 0, []), new(0.13, 0.55, [])),
        Ink.Hatch => (new(0.15, 0, []), new(0.13, 0.35, [])),
        Ink.Pencil => (new(0.42, 0, []), new(0.7, 0, [6, 1.2])),
        Ink.Soft => (new(0.2, 0, []), new(0.18, 0.35, [])),
        _ => throw new ArgumentOutOfRangeException(nameof(ink), ink, "An ink without a weight."),
    };

    public static InkWeight OnScreen(Ink ink) => Of(ink).Screen;

    public static InkWeight InPrint(Ink ink) => Of(ink).Print;

    /// <summary>Printed words of less weight: 7.5 to 1 on white (WCAG 2.1 relative luminance, worked out for grey 0.33).</summary>
    public const double Soft = 0.33;

    /// <summary>Printed rules between rows.</summary>
    public const double Faint = 0.62;

    /// <summary>Grey of a printed text in an ink: grain and hatching are lines, their words must stay legible.</summary>
    public static double GreyOfText(Ink ink) => ink is Ink.Soft or Ink.Grain or Ink.Hatch ? Soft : 0;

    /// <summary>Grey of a printed fill, or null for none. Wood and panels stay white: toner is for lines.</summary>
    public static double? GreyOf(Wash wash) => wash switch
    {
        Wash.None => null,
        Wash.Metal => 0.82,
        _ => 1,
    };
}
