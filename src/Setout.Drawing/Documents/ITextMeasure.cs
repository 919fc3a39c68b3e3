using System.Text;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents;

/// <summary>The faces of the documents.</summary>
public enum FaceStyle
{
    /// <summary>Upright.</summary>
    Regular,

    /// <summary>Heavy.</summary>
    Heavy,

    /// <summary>Slanted.</summary>
    Slanted,
}

/// <summary>Which face a run is set in: decided here alone.</summary>
internal static class FaceStyles
{
    public static FaceStyle Of(Run run) => run.IsBold ? FaceStyle.Heavy : run.IsItalic ? FaceStyle.Slanted : FaceStyle.Regular;
}

/// <summary>The one place where the setting of text asks about a font.</summary>
public interface ITextMeasure
{
    /// <summary>Width of a text set at a size, in the unit of the size.</summary>
    /// <param name="text">One line; each character must be in the font.</param>
    /// <param name="style">The face.</param>
    /// <param name="size">Em; more than zero.</param>
    double Width(string text, FaceStyle style, double size);

    /// <summary>Whether the font can draw a character.</summary>
    bool Has(Rune character, FaceStyle style);
}
