using PdfSharp.Pdf;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Pdf;

/// <summary>The faces used in one file.</summary>
internal sealed class PdfFonts
{
    // The tag before a subset's name only has to differ from font to font within a file; a fixed one keeps the bytes the same.
    private readonly FontUse[] _uses =
    [
        new(Face.Regular, "F1", "STOUTR"), new(Face.SemiBold, "F2", "STOUTH"), new(Face.Italic, "F3", "STOUTS"),
    ];

    public FontUse Of(Face face) => _uses[(int)face];

    /// <summary>The resources that every page shares.</summary>
    public PdfDictionary Resources(PdfDocument pdf)
    {
        PdfDictionary resources = PdfObjects.Dictionary(pdf, "");
        var fonts = new PdfDictionary(pdf);
        var shapes = new PdfDictionary(pdf);
        foreach (FontUse use in _uses)
        {
            if (use.IsUsed) fonts.Elements.SetReference("/" + use.Name, use.Font(pdf));
            foreach ((int glyph, string name) in use.Shapes) shapes.Elements.SetReference("/" + name, use.ShapeForm(pdf, glyph));
        }
        resources.Elements["/Font"] = fonts;
        resources.Elements["/XObject"] = shapes;
        return resources;
    }
}
