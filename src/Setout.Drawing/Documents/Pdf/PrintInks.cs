using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Pdf;

/// <summary>How a line is printed.</summary>
/// <param name="Weight">Millimetres on the paper, whatever the scale of the drawing.</param>
/// <param name="Grey">0 black to 1 white.</param>
/// <param name="Dash">Lengths of dashes and gaps in millimetres; empty for a solid line.</param>
internal readonly record struct InkWeight(double Weight, double Grey, double[] Dash);

/// <summary>
/// The one table of print weights. Black and greys only: the red pencil of the screen is the heaviest line here, dashed long, so that
/// cuts are told from edges without colour. Common practice of drawing offices, no source.
/// </summary>
internal static class PrintInks
{
    public static InkWeight Of(Ink ink) => ink switch
    {
        Ink.Outline => new(0.5, 0, []),
        Ink.Part => new(0.35, 0, []),
        Ink.Hidden => new(0.18, 0.2, [1.6, 1.0]),
        Ink.Dimension => new(0.18, 0, []),
        Ink.Grain => new(0.13, 0.55, []),
        Ink.Hatch => new(0.13, 0.35, []),
        Ink.Pencil => new(0.7, 0, [6, 1.2]),
        Ink.Soft => new(0.18, 0.35, []),
        _ => throw new ArgumentOutOfRangeException(nameof(ink), ink, "An ink without a weight."),
    };

    /// <summary>Grey of a text in an ink: grain and hatching are lines, their words must stay legible.</summary>
    public static double GreyOfText(Ink ink) => ink is Ink.Soft or Ink.Grain or Ink.Hatch ? Soft : 0;

    /// <summary>Grey of a fill, or null for none. Wood and panels stay white: toner is for lines.</summary>
    public static double? GreyOf(Wash wash) => wash switch
    {
        Wash.None => null,
        Wash.Metal => 0.82,
        _ => 1,
    };

    /// <summary>Words of less weight: 7.5 to 1 on white (WCAG 2.1 relative luminance, worked out for grey 0.33).</summary>
    public const double Soft = 0.33;

    public const double Faint = 0.62;

    /// <summary>Distance between hatch lines, millimetres square to them.</summary>
    public const double HatchStep = 2;

    public static double GreyOf(Shade shade) => shade switch { Shade.Soft => Soft, Shade.Faint => Faint, _ => 0 };
}
