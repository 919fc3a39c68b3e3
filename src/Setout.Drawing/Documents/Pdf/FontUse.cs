using System.Globalization;
using System.Text;
using PdfSharp.Pdf;
using Setout.Drawing.Fonts;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Pdf;

/// <summary>One face in one file: which glyphs are used, and in the end the font dictionaries.</summary>
internal sealed class FontUse(Face face, string name, string tag)
{
    private readonly SortedDictionary<int, int> _characters = [];
    private readonly SortedDictionary<int, string> _shapes = [];

    public FontFile Face { get; } = Typeface.Font(face);

    /// <summary>Name in the resources of a page.</summary>
    public string Name { get; } = name;

    /// <summary>The glyph numbers of a text in hexadecimal.</summary>
    public string Hex(string text)
    {
        var hex = new StringBuilder();
        foreach (Rune rune in text.EnumerateRunes())
        {
            int glyph = Face.GlyphOf(rune);
            if (glyph == 0) throw new InvalidOperationException($"U+{rune.Value:X4} came to the writer without a glyph.");
            _characters.TryAdd(glyph, rune.Value);
            hex.Append(glyph.ToString("X4", CultureInfo.InvariantCulture));
        }
        return hex.ToString();
    }

    /// <summary>The name of a glyph as a drawn shape.</summary>
    public string Shape(int glyph)
    {
        string shape = $"{Name}g{glyph}";
        _shapes.TryAdd(glyph, shape);
        return shape;
    }

    public bool IsUsed => _characters.Count > 0;

    public IEnumerable<KeyValuePair<int, string>> Shapes => _shapes;

    /// <summary>A shape of a glyph in font units, drawn as often as it is wanted from one place in the file.</summary>
    public PdfDictionary ShapeForm(PdfDocument pdf, int glyph)
    {
        var form = PdfObjects.Stream(pdf, Encoding.ASCII.GetBytes(GlyphOutline.Path(Face, glyph)));
        form.Elements.SetName("/Type", "/XObject");
        form.Elements.SetName("/Subtype", "/Form");
        form.Elements["/BBox"] = PdfObjects.Numbers(pdf, Face.Box.Left, Face.Box.Bottom, Face.Box.Right, Face.Box.Top);
        return form;
    }

    /// <summary>The font for the resources, with the outlines used and the way back from glyphs to characters.</summary>
    public PdfDictionary Font(PdfDocument pdf)
    {
        double unit = 1000.0 / Face.UnitsPerEm;
        string full = $"{tag}+{Path.GetFileNameWithoutExtension(Typeface.FileName(face))}";

        byte[] subset = FontSubset.Make(Face, _characters.Keys);
        PdfDictionary file = PdfObjects.Stream(pdf, subset);
        file.Elements.SetInteger("/Length1", subset.Length);

        PdfDictionary descriptor = PdfObjects.Dictionary(pdf, "/FontDescriptor");
        descriptor.Elements.SetName("/FontName", "/" + full);
        descriptor.Elements.SetInteger("/Flags", Face.ItalicAngle == 0 ? 32 : 32 + 64); // no symbols; slanted
        descriptor.Elements["/FontBBox"] = PdfObjects.Numbers(pdf, Face.Box.Left * unit, Face.Box.Bottom * unit, Face.Box.Right * unit, Face.Box.Top * unit);
        descriptor.Elements.SetReal("/ItalicAngle", Face.ItalicAngle);
        descriptor.Elements.SetReal("/Ascent", Face.Ascender * unit);
        descriptor.Elements.SetReal("/Descent", Face.Descender * unit);
        descriptor.Elements.SetReal("/CapHeight", Face.CapHeight * unit);
        descriptor.Elements.SetInteger("/StemV", 80);
        descriptor.Elements.SetReference("/FontFile2", file);

        var widths = new PdfArray(pdf);
        foreach (int glyph in _characters.Keys)
        {
            widths.Elements.Add(new PdfInteger(glyph));
            widths.Elements.Add(PdfObjects.Numbers(pdf, Face.Advances[glyph] * unit));
        }

        var system = new PdfDictionary(pdf);
        system.Elements.SetString("/Registry", "Adobe");
        system.Elements.SetString("/Ordering", "Identity");
        system.Elements.SetInteger("/Supplement", 0);

        PdfDictionary inner = PdfObjects.Dictionary(pdf, "/Font");
        inner.Elements.SetName("/Subtype", "/CIDFontType2");
        inner.Elements.SetName("/BaseFont", "/" + full);
        inner.Elements["/CIDSystemInfo"] = system;
        inner.Elements.SetReference("/FontDescriptor", descriptor);
        inner.Elements["/W"] = widths;
        inner.Elements.SetName("/CIDToGIDMap", "/Identity");

        var descendants = new PdfArray(pdf);
        descendants.Elements.Add(inner.Reference!);
        PdfDictionary font = PdfObjects.Dictionary(pdf, "/Font");
        font.Elements.SetName("/Subtype", "/Type0");
        font.Elements.SetName("/BaseFont", "/" + full);
        font.Elements.SetName("/Encoding", "/Identity-H");
        font.Elements["/DescendantFonts"] = descendants;
        font.Elements.SetReference("/ToUnicode", PdfObjects.Stream(pdf, Encoding.ASCII.GetBytes(CharacterMap())));
        return font;
    }

    private string CharacterMap()
    {
        var map = new StringBuilder("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n");
        map.Append("/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n");
        map.Append("1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n");
        foreach (KeyValuePair<int, int>[] part in _characters.Chunk(100))
        {
            map.Append(part.Length).Append(" beginbfchar\n");
            foreach ((int glyph, int character) in part) map.Append($"<{glyph:X4}> <{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(new Rune(character).ToString()))}>\n");
            map.Append("endbfchar\n");
        }
        return map.Append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n").ToString();
    }
}
