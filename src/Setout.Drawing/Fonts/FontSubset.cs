using System.Buffers.Binary;
using System.Text;

namespace Setout.Drawing.Fonts;

/// <summary>
/// A TrueType file that holds only the outlines used. Glyphs keep their numbers, unused ones are empty: the simplest subset that
/// every reader takes, and the same bytes for the same text.
/// </summary>
internal static class FontSubset
{
    private static readonly string[] s_copied = ["cvt ", "fpgm", "prep", "head", "hhea", "hmtx", "maxp"];

    public static byte[] Make(FontFile face, IEnumerable<int> glyphs)
    {
        var wanted = new SortedSet<int> { 0 };
        foreach (int glyph in glyphs) Add(face, glyph, wanted);

        using var outlines = new MemoryStream();
        var places = new byte[4 * (face.Advances.Count + 1)];
        for (int glyph = 0; glyph < face.Advances.Count; glyph++)
        {
            BinaryPrimitives.WriteInt32BigEndian(places.AsSpan(4 * glyph), (int)outlines.Length);
            if (!wanted.Contains(glyph)) continue;
            outlines.Write(face.Outline(glyph));
            while (outlines.Length % 4 != 0) outlines.WriteByte(0);
        }
        BinaryPrimitives.WriteInt32BigEndian(places.AsSpan(4 * face.Advances.Count), (int)outlines.Length);

        var tables = new SortedDictionary<string, byte[]>(StringComparer.Ordinal) { ["glyf"] = outlines.ToArray(), ["loca"] = places };
        foreach (string tag in s_copied)
            if (!face.Table(tag).IsEmpty) tables[tag] = face.Table(tag).ToArray();
        BinaryPrimitives.WriteInt16BigEndian(tables["head"].AsSpan(50), 1); // long places
        BinaryPrimitives.WriteInt32BigEndian(tables["head"].AsSpan(8), 0);
        return Assemble(tables);
    }

    private static void Add(FontFile face, int glyph, SortedSet<int> wanted)
    {
        if (!wanted.Add(glyph)) return;
        foreach ((int part, _, _) in GlyphOutline.Components(face.Outline(glyph))) Add(face, part, wanted);
    }

    private static byte[] Assemble(SortedDictionary<string, byte[]> tables)
    {
        int count = tables.Count, power = 1, log = 0;
        while (power * 2 <= count) (power, log) = (power * 2, log + 1);
        int at = 12 + (16 * count);
        var file = new byte[at + tables.Values.Sum(t => (t.Length + 3) / 4 * 4)];
        Span<byte> head = file;
        BinaryPrimitives.WriteInt32BigEndian(head, 0x00010000);
        BinaryPrimitives.WriteInt16BigEndian(head[4..], (short)count);
        BinaryPrimitives.WriteInt16BigEndian(head[6..], (short)(16 * power));
        BinaryPrimitives.WriteInt16BigEndian(head[8..], (short)log);
        BinaryPrimitives.WriteInt16BigEndian(head[10..], (short)(16 * (count - power)));
        int entry = 12, headAt = 0;
        foreach ((string tag, byte[] table) in tables)
        {
            table.CopyTo(file, at);
            if (tag == "head") headAt = at;
            Encoding.ASCII.GetBytes(tag, file.AsSpan(entry));
            BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(entry + 4), Checksum(file.AsSpan(at, (table.Length + 3) / 4 * 4)));
            BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(entry + 8), at);
            BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(entry + 12), table.Length);
            (entry, at) = (entry + 16, at + ((table.Length + 3) / 4 * 4));
        }
        BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(headAt + 8), unchecked(0xB1B0AFBA - Checksum(file)));
        return file;
    }

    private static uint Checksum(ReadOnlySpan<byte> data)
    {
        uint sum = 0;
        for (int i = 0; i < data.Length; i += 4) sum = unchecked(sum + BinaryPrimitives.ReadUInt32BigEndian(data[i..]));
        return sum;
    }
}
