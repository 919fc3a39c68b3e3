using System.Buffers.Binary;
using System.Text;

namespace Setout.Drawing.Fonts;

/// <summary>
/// A TrueType file, read for what the writers need: which signs it has, how far each moves the pen, its outlines and its tables as they
/// stand. Reads <c>head</c>, <c>hhea</c>, <c>hmtx</c>, <c>maxp</c>, <c>post</c>, <c>OS/2</c> (version 2 and later), <c>loca</c>,
/// <c>glyf</c> and <c>cmap</c> (formats 4 and 12) as the OpenType specification gives them, in the font's own whole units. Kerning and
/// ligatures are left out on purpose: no writer applies them, so every writer sets the same width.
/// </summary>
internal sealed class FontFile
{
    private readonly byte[] _file;
    private readonly Dictionary<string, Range> _tables = [];
    private readonly Dictionary<int, int> _glyphs = [];
    private readonly int[] _advances;
    private readonly Range[] _outlines;

    private FontFile(byte[] file)
    {
        _file = file;
        for (int i = 0, at = 12; i < U16(file, 4); i++, at += 16)
        {
            int from = I32(file, at + 8);
            _tables[Encoding.ASCII.GetString(file, at, 4)] = from..(from + I32(file, at + 12));
        }
        ReadOnlySpan<byte> head = Needed("head"), hhea = Needed("hhea"), hmtx = Needed("hmtx"), loca = Needed("loca");
        UnitsPerEm = U16(head, 18);
        Box = (I16(head, 36), I16(head, 38), I16(head, 40), I16(head, 42));
        (Ascender, Descender) = (I16(hhea, 4), I16(hhea, 6));
        CapHeight = I16(Needed("OS/2"), 88);
        ItalicAngle = I32(Needed("post"), 4) / 65536.0;

        int count = U16(Needed("maxp"), 4), measured = U16(hhea, 34), glyf = _tables["glyf"].Start.Value;
        _advances = new int[count];
        _outlines = new Range[count];
        bool isLong = U16(head, 50) == 1;
        for (int i = 0; i < count; i++)
        {
            _advances[i] = U16(hmtx, 4 * Math.Min(i, measured - 1));
            (int from, int to) = isLong ? (I32(loca, 4 * i), I32(loca, (4 * i) + 4)) : (2 * U16(loca, 2 * i), 2 * U16(loca, (2 * i) + 2));
            _outlines[i] = (glyf + from)..(glyf + to);
        }
        _ = file.AsSpan()[_outlines[^1]];
        ReadCharacters(Needed("cmap"));
    }

    /// <summary>Units in the em.</summary>
    public int UnitsPerEm { get; }

    /// <summary>The box that holds every glyph.</summary>
    public (int Left, int Bottom, int Right, int Top) Box { get; }

    /// <summary>Above the baseline.</summary>
    public int Ascender { get; }

    /// <summary>Below the baseline; negative.</summary>
    public int Descender { get; }

    /// <summary>Height of capitals and figures.</summary>
    public int CapHeight { get; }

    /// <summary>Slant in degrees counter-clockwise from upright; negative for a face that leans to the right.</summary>
    public double ItalicAngle { get; }

    /// <summary>The advance of each glyph.</summary>
    public IReadOnlyList<int> Advances => _advances;

    /// <summary>The glyph of a sign; 0, the box for what is missing, where the font has none.</summary>
    public int GlyphOf(Rune sign) => _glyphs.GetValueOrDefault(sign.Value);

    /// <summary>Whether the font has a glyph for a sign.</summary>
    public bool Has(Rune sign) => _glyphs.ContainsKey(sign.Value);

    /// <summary>The width of a text, in units.</summary>
    public int Advance(string text)
    {
        int sum = 0;
        foreach (Rune sign in text.EnumerateRunes()) sum += _advances[GlyphOf(sign)];
        return sum;
    }

    /// <summary>The width of a text in the unit of <paramref name="size"/>, the height of the em.</summary>
    public double Width(string text, double size) => Advance(text) * size / UnitsPerEm;

    /// <summary>A table as it stands in the file; empty when there is none.</summary>
    public ReadOnlySpan<byte> Table(string tag) => _tables.TryGetValue(tag, out Range table) ? _file.AsSpan()[table] : [];

    /// <summary>The outline data of a glyph; empty for a space.</summary>
    public ReadOnlySpan<byte> Outline(int glyph) => _file.AsSpan()[_outlines[glyph]];

    /// <summary>Reads a TrueType file.</summary>
    /// <exception cref="InvalidDataException">A table is missing or the file is cut short.</exception>
    public static FontFile Read(byte[] file)
    {
        try
        {
            return new(file);
        }
        catch (Exception cut) when (cut is ArgumentOutOfRangeException or IndexOutOfRangeException or KeyNotFoundException)
        {
            throw new InvalidDataException("The font file is cut short.", cut);
        }
    }

    private ReadOnlySpan<byte> Needed(string tag) =>
        _tables.TryGetValue(tag, out Range table) ? _file.AsSpan()[table] : throw new InvalidDataException($"The font file has no table '{tag}'.");

    private void ReadCharacters(ReadOnlySpan<byte> cmap)
    {
        for (int i = 0; i < U16(cmap, 2); i++)
        {
            int platform = U16(cmap, 4 + (i * 8)), encoding = U16(cmap, 6 + (i * 8));
            bool isUnicode = platform == 0 || (platform == 3 && encoding is 1 or 10);
            if (!isUnicode) continue;
            ReadOnlySpan<byte> table = cmap[I32(cmap, 8 + (i * 8))..];
            if (U16(table, 0) == 4) ReadSegments(table);
            else if (U16(table, 0) == 12) ReadGroups(table);
        }
        if (_glyphs.Count == 0) throw new InvalidDataException("The font file has no Unicode character map.");
    }

    /// <summary>Format 4: four parallel lists of segments, some with a detour through a list of glyphs.</summary>
    private void ReadSegments(ReadOnlySpan<byte> table)
    {
        int twice = U16(table, 6);
        int ends = 14, starts = 16 + twice, deltas = starts + twice, offsets = deltas + twice;
        for (int s = 0; s < twice; s += 2)
        {
            int from = U16(table, starts + s), to = U16(table, ends + s), delta = U16(table, deltas + s), offset = U16(table, offsets + s);
            for (int sign = from; sign <= to && sign != 0xFFFF; sign++)
            {
                int glyph = offset == 0 ? sign + delta : U16(table, offsets + s + offset + ((sign - from) * 2));
                if (offset != 0 && glyph != 0) glyph += delta;
                if ((glyph & 0xFFFF) != 0) _glyphs[sign] = glyph & 0xFFFF;
            }
        }
    }

    private void ReadGroups(ReadOnlySpan<byte> table)
    {
        for (int g = 0; g < I32(table, 12); g++)
        {
            int at = 16 + (g * 12), from = I32(table, at), glyph = I32(table, at + 8);
            for (int sign = from; sign <= I32(table, at + 4); sign++) _glyphs[sign] = glyph + sign - from;
        }
    }

    private static int U16(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadUInt16BigEndian(data[at..]);

    private static int I16(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadInt16BigEndian(data[at..]);

    private static int I32(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadInt32BigEndian(data[at..]);
}
