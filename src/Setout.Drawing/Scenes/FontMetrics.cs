using System.Buffers.Binary;
using System.Text;

namespace Setout.Drawing.Scenes;

/// <summary>
/// The widths of a TrueType file: which signs it has and how far each moves the pen, in the font's own whole units. Reads the tables
/// <c>head</c>, <c>hhea</c>, <c>hmtx</c>, <c>OS/2</c> and <c>cmap</c> (formats 4 and 12) as the OpenType specification gives them;
/// kerning and ligatures are left out on purpose: no writer applies them, so every writer sets the same width.
/// </summary>
public sealed class FontMetrics
{
    private readonly Dictionary<int, int> _glyphs;
    private readonly ushort[] _advances;

    private FontMetrics(int unitsPerEm, int ascender, int descender, int capHeight, int xHeight, ushort[] advances, Dictionary<int, int> glyphs)
    {
        UnitsPerEm = unitsPerEm;
        Ascender = ascender;
        Descender = descender;
        CapHeight = capHeight;
        XHeight = xHeight;
        _advances = advances;
        _glyphs = glyphs;
    }

    /// <summary>Units in the em.</summary>
    public int UnitsPerEm { get; }

    /// <summary>Units above the baseline that a line needs.</summary>
    public int Ascender { get; }

    /// <summary>Units below the baseline that a line needs; negative.</summary>
    public int Descender { get; }

    /// <summary>Height of capitals, in units.</summary>
    public int CapHeight { get; }

    /// <summary>Height of small letters, in units.</summary>
    public int XHeight { get; }

    /// <summary>Every glyph's advance, for checks of the reading itself.</summary>
    internal IReadOnlyList<ushort> Advances => _advances;

    /// <summary>Whether the font has a glyph for a sign.</summary>
    public bool Has(Rune sign) => _glyphs.ContainsKey(sign.Value);

    /// <summary>How far a sign moves the pen, in units; the width of the missing-glyph box where the font lacks it.</summary>
    public int Advance(Rune sign)
    {
        int glyph = _glyphs.GetValueOrDefault(sign.Value);
        return _advances[Math.Min(glyph, _advances.Length - 1)];
    }

    /// <summary>The width of a text, in units.</summary>
    public int Advance(string text)
    {
        int sum = 0;
        foreach (Rune sign in text.EnumerateRunes()) sum += Advance(sign);
        return sum;
    }

    /// <summary>The width of a text in the unit of <paramref name="size"/>.</summary>
    /// <param name="text">The signs.</param>
    /// <param name="size">Height of the em.</param>
    public double Width(string text, double size) => Advance(text) * size / UnitsPerEm;

    /// <summary>Reads a TrueType file.</summary>
    /// <exception cref="InvalidDataException">A table is missing or the file is cut short.</exception>
    public static FontMetrics Read(byte[] file)
    {
        try
        {
            ReadOnlySpan<byte> all = file;
            ReadOnlySpan<byte> head = Table(all, "head"), hhea = Table(all, "hhea"), hmtx = Table(all, "hmtx"), os2 = Table(all, "OS/2");
            var advances = new ushort[U16(hhea, 34)];
            for (int i = 0; i < advances.Length; i++) advances[i] = U16(hmtx, i * 4);
            // The two heights came with version 2 of OS/2.
            bool hasHeights = U16(os2, 0) >= 2;
            int em = U16(head, 18);
            return new(em, I16(hhea, 4), I16(hhea, 6), hasHeights ? I16(os2, 88) : em * 7 / 10, hasHeights ? I16(os2, 86) : em / 2, advances, Glyphs(Table(all, "cmap")));
        }
        catch (Exception cut) when (cut is ArgumentOutOfRangeException or IndexOutOfRangeException)
        {
            throw new InvalidDataException("The font file is cut short.", cut);
        }
    }

    private static ReadOnlySpan<byte> Table(ReadOnlySpan<byte> file, string tag)
    {
        int count = U16(file, 4);
        for (int i = 0; i < count; i++)
        {
            ReadOnlySpan<byte> entry = file.Slice(12 + (i * 16), 16);
            if (Encoding.ASCII.GetString(entry[..4]) == tag) return file.Slice((int)U32(entry, 8), (int)U32(entry, 12));
        }
        throw new InvalidDataException($"The font file has no table '{tag}'.");
    }

    private static Dictionary<int, int> Glyphs(ReadOnlySpan<byte> cmap)
    {
        var glyphs = new Dictionary<int, int>();
        int count = U16(cmap, 2);
        for (int i = 0; i < count; i++)
        {
            int platform = U16(cmap, 4 + (i * 8)), encoding = U16(cmap, 6 + (i * 8));
            bool isUnicode = platform == 0 || (platform == 3 && encoding is 1 or 10);
            if (!isUnicode) continue;
            ReadOnlySpan<byte> table = cmap[(int)U32(cmap, 8 + (i * 8))..];
            if (U16(table, 0) == 4) ReadSegments(table, glyphs);
            else if (U16(table, 0) == 12) ReadGroups(table, glyphs);
        }
        return glyphs.Count > 0 ? glyphs : throw new InvalidDataException("The font file has no Unicode character map.");
    }

    /// <summary>Format 4: four parallel lists of segments, some with a detour through a list of glyphs.</summary>
    private static void ReadSegments(ReadOnlySpan<byte> table, Dictionary<int, int> glyphs)
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
                if ((glyph & 0xFFFF) != 0) glyphs[sign] = glyph & 0xFFFF;
            }
        }
    }

    private static void ReadGroups(ReadOnlySpan<byte> table, Dictionary<int, int> glyphs)
    {
        uint count = U32(table, 12);
        for (int g = 0; g < count; g++)
        {
            int at = 16 + (g * 12);
            int from = (int)U32(table, at), to = (int)U32(table, at + 4), glyph = (int)U32(table, at + 8);
            for (int sign = from; sign <= to; sign++) glyphs[sign] = glyph + sign - from;
        }
    }

    private static ushort U16(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadUInt16BigEndian(data[at..]);

    private static short I16(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadInt16BigEndian(data[at..]);

    private static uint U32(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadUInt32BigEndian(data[at..]);
}
