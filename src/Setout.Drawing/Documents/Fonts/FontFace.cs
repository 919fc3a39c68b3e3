using System.Buffers.Binary;
using System.Reflection;
using System.Text;

namespace Setout.Drawing.Documents.Fonts;

/// <summary>A TrueType font read for its widths, its character map and its outlines. Nothing else in it is looked at.</summary>
internal sealed class FontFace
{
    private readonly byte[] _file;
    private readonly Dictionary<string, (int Offset, int Length)> _tables = [];
    private readonly ushort[] _glyphs = new ushort[0x10000];
    private readonly int[] _widths;
    private readonly int[] _places;

    /// <summary>The regular face of the documents.</summary>
    public static FontFace Regular { get; } = FromResource("IBMPlexSans-Regular.ttf");

    /// <summary>The heavy face of the documents.</summary>
    public static FontFace Bold { get; } = FromResource("IBMPlexSans-SemiBold.ttf");

    /// <summary>The slanted face of the documents.</summary>
    public static FontFace Italic { get; } = FromResource("IBMPlexSans-Italic.ttf");

    public static FontFace Of(FaceStyle style) => style switch { FaceStyle.Heavy => Bold, FaceStyle.Slanted => Italic, _ => Regular };

    private FontFace(string name, byte[] file)
    {
        (Name, _file) = (name, file);
        for (int i = 0; i < U16(4); i++)
        {
            int at = 12 + (16 * i);
            _tables[Encoding.ASCII.GetString(file, at, 4)] = (I32(at + 8), I32(at + 12));
        }
        int head = _tables["head"].Offset, hhea = _tables["hhea"].Offset;
        UnitsPerEm = U16(head + 18);
        Box = (I16(head + 36), I16(head + 38), I16(head + 40), I16(head + 42));
        (Ascent, Descent) = (I16(hhea + 4), I16(hhea + 6));
        CapHeight = I16(_tables["OS/2"].Offset + 88);
        ItalicAngle = I32(_tables["post"].Offset + 4) / 65536.0;
        GlyphCount = U16(_tables["maxp"].Offset + 4);

        int measured = U16(hhea + 34), hmtx = _tables["hmtx"].Offset;
        _widths = new int[GlyphCount];
        for (int i = 0; i < GlyphCount; i++) _widths[i] = U16(hmtx + (4 * Math.Min(i, measured - 1)));

        bool isLong = U16(head + 50) == 1;
        int loca = _tables["loca"].Offset;
        _places = new int[GlyphCount + 1];
        for (int i = 0; i <= GlyphCount; i++) _places[i] = isLong ? I32(loca + (4 * i)) : 2 * U16(loca + (2 * i));
        ReadCharacters();
    }

    /// <summary>Name of the file without its ending.</summary>
    public string Name { get; }

    public int UnitsPerEm { get; }

    public (int Left, int Bottom, int Right, int Top) Box { get; }

    /// <summary>Height above the baseline that the font claims, in units.</summary>
    public int Ascent { get; }

    /// <summary>Below the baseline; negative.</summary>
    public int Descent { get; }

    /// <summary>Height of capitals and figures, in units.</summary>
    public int CapHeight { get; }

    /// <summary>Slant in degrees counter-clockwise from upright; negative for a face that leans to the right.</summary>
    public double ItalicAngle { get; }

    public int GlyphCount { get; }

    /// <summary>The glyph of a character, or 0 when the font has none.</summary>
    public int GlyphOf(int character) => character < _glyphs.Length ? _glyphs[character] : 0;

    /// <summary>Advance of a glyph in units.</summary>
    public int WidthOf(int glyph) => _widths[glyph];

    /// <summary>A table as it stands in the file.</summary>
    public ReadOnlySpan<byte> Table(string tag) =>
        _tables.TryGetValue(tag, out (int Offset, int Length) table) ? _file.AsSpan(table.Offset, table.Length) : [];

    /// <summary>The outline data of a glyph; empty for a space.</summary>
    public ReadOnlySpan<byte> Outline(int glyph) =>
        _file.AsSpan(_tables["glyf"].Offset + _places[glyph], _places[glyph + 1] - _places[glyph]);

    /// <summary>Width of a text in em.</summary>
    public double Width(string text)
    {
        long units = 0;
        foreach (Rune rune in text.EnumerateRunes()) units += _widths[GlyphOf(rune.Value)];
        return units / (double)UnitsPerEm;
    }

    private void ReadCharacters()
    {
        int cmap = _tables["cmap"].Offset;
        for (int i = 0; i < U16(cmap + 2); i++)
        {
            int at = cmap + I32(cmap + 8 + (8 * i));
            // Format 4 covers all that these fonts hold; characters beyond the basic plane count as missing.
            if (U16(at) == 4) { ReadSegments(at); return; }
        }
        throw new InvalidDataException($"The font {Name} has no character map of format 4.");
    }

    private void ReadSegments(int at)
    {
        int segments = U16(at + 6) / 2;
        int ends = at + 14, starts = ends + (2 * segments) + 2, deltas = starts + (2 * segments), offsets = deltas + (2 * segments);
        for (int s = 0; s < segments; s++)
        {
            int first = U16(starts + (2 * s)), last = U16(ends + (2 * s)), delta = U16(deltas + (2 * s)), offset = U16(offsets + (2 * s));
            for (int c = first; c <= last && c != 0xFFFF; c++)
            {
                int glyph = offset == 0 ? c : U16(offsets + (2 * s) + offset + (2 * (c - first)));
                if (glyph != 0 || offset == 0) glyph = (glyph + delta) & 0xFFFF;
                if (glyph != 0) _glyphs[c] = (ushort)glyph;
            }
        }
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_file.AsSpan(at));

    private int I16(int at) => BinaryPrimitives.ReadInt16BigEndian(_file.AsSpan(at));

    private int I32(int at) => BinaryPrimitives.ReadInt32BigEndian(_file.AsSpan(at));

    private static FontFace FromResource(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font {name} is not built into this program.");
        var file = new byte[stream.Length];
        stream.ReadExactly(file);
        return new(Path.GetFileNameWithoutExtension(name), file);
    }
}
