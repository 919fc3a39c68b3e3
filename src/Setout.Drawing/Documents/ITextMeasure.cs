using System.Text;

namespace Setout.Drawing.Documents;

/// <summary>The one place where the setting of text asks about a font.</summary>
public interface ITextMeasure
{
    /// <summary>Width of a text set at a size, in the unit of the size.</summary>
    /// <param name="text">One line; each character must be in the font.</param>
    /// <param name="isBold">Heavy or regular.</param>
    /// <param name="size">Em; more than zero.</param>
    double Width(string text, bool isBold, double size);

    /// <summary>Whether the font can draw a character.</summary>
    bool Has(Rune character, bool isBold);
}
