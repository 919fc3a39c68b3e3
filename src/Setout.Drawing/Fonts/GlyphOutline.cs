using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace Setout.Drawing.Fonts;

/// <summary>
/// The outline of a glyph as PDF path operators in font units. Only figures and signs of fractions are drawn this way, so simple
/// outlines and shifted compositions are all that is read.
/// </summary>
internal static class GlyphOutline
{
    /// <summary>Path operators, filled at the end.</summary>
    /// <exception cref="NotSupportedException">The glyph is composed with a scale.</exception>
    public static string Path(FontFile face, int glyph)
    {
        var path = new StringBuilder();
        Append(face, glyph, 0, 0, path);
        return path.Append("f\n").ToString();
    }

    private static void Append(FontFile face, int glyph, int dx, int dy, StringBuilder path)
    {
        ReadOnlySpan<byte> data = face.Outline(glyph);
        if (data.IsEmpty) return;
        int contours = I16(data, 0);
        if (contours < 0)
        {
            foreach ((int part, int x, int y) in Components(data)) Append(face, part, dx + x, dy + y, path);
            return;
        }
        (double X, double Y, bool On)[] points = Points(data, contours, dx, dy);
        int first = 0;
        for (int c = 0; c < contours; c++)
        {
            int last = U16(data, 10 + (2 * c));
            AppendContour(points.AsSpan(first, last - first + 1), path);
            first = last + 1;
        }
    }

    /// <summary>The glyphs that a composed glyph is made of, with their shift.</summary>
    public static List<(int Glyph, int X, int Y)> Components(ReadOnlySpan<byte> data)
    {
        var parts = new List<(int, int, int)>();
        if (data.IsEmpty || I16(data, 0) >= 0) return parts;
        int at = 10, flags;
        do
        {
            flags = U16(data, at);
            int glyph = U16(data, at + 2);
            bool words = (flags & 1) != 0;
            (int x, int y) = words ? (I16(data, at + 4), I16(data, at + 6)) : (unchecked((sbyte)data[at + 4]), unchecked((sbyte)data[at + 5]));
            parts.Add((glyph, x, y));
            at += (words ? 8 : 6) + ((flags & 8) != 0 ? 2 : (flags & 0x40) != 0 ? 4 : (flags & 0x80) != 0 ? 8 : 0);
        }
        while ((flags & 0x20) != 0);
        return parts;
    }

    private static (double, double, bool)[] Points(ReadOnlySpan<byte> data, int contours, int dx, int dy)
    {
        int count = U16(data, 10 + (2 * (contours - 1))) + 1;
        int at = 10 + (2 * contours);
        at += 2 + U16(data, at);
        var flags = new byte[count];
        for (int i = 0; i < count; i++)
        {
            byte flag = data[at++];
            flags[i] = flag;
            if ((flag & 8) == 0) continue;
            for (int more = data[at++]; more > 0; more--) flags[++i] = flag;
        }
        var points = new (double X, double Y, bool On)[count];
        int value = dx;
        for (int i = 0; i < count; i++)
        {
            value += Step(data, ref at, flags[i], 2, 0x10);
            points[i] = (value, 0, (flags[i] & 1) != 0);
        }
        value = dy;
        for (int i = 0; i < count; i++)
        {
            value += Step(data, ref at, flags[i], 4, 0x20);
            points[i].Y = value;
        }
        return points;
    }

    private static int Step(ReadOnlySpan<byte> data, ref int at, byte flag, int isShort, int same)
    {
        if ((flag & isShort) != 0) return (flag & same) != 0 ? data[at++] : -data[at++];
        if ((flag & same) != 0) return 0;
        at += 2;
        return I16(data, at - 2);
    }

    private static void AppendContour(ReadOnlySpan<(double X, double Y, bool On)> points, StringBuilder path)
    {
        int n = points.Length, begin = 0;
        while (begin < n && !points[begin].On) begin++;
        // These fonts begin every contour of a figure on the curve; one that does not would need a made-up point.
        if (begin == n) throw new NotSupportedException("An outline without a point on its curve.");
        (double x, double y) = (points[begin].X, points[begin].Y);
        Line(path, "m", x, y);
        for (int i = 1; i <= n; i++)
        {
            (double X, double Y, bool On) p = points[(begin + i) % n];
            if (p.On)
            {
                Line(path, "l", p.X, p.Y);
                (x, y) = (p.X, p.Y);
                continue;
            }
            (double X, double Y, bool On) next = points[(begin + i + 1) % n];
            (double ex, double ey) = next.On ? (next.X, next.Y) : ((p.X + next.X) / 2, (p.Y + next.Y) / 2);
            // A quadratic curve written as the cubic that PDF knows.
            Line(path, "c", x + (2 * (p.X - x) / 3), y + (2 * (p.Y - y) / 3), ex + (2 * (p.X - ex) / 3), ey + (2 * (p.Y - ey) / 3), ex, ey);
            (x, y) = (ex, ey);
            if (next.On) i++;
        }
        path.Append("h\n");
    }

    private static void Line(StringBuilder path, string op, params ReadOnlySpan<double> numbers)
    {
        foreach (double number in numbers) path.Append(Math.Round(number, 1).ToString("0.#", CultureInfo.InvariantCulture)).Append(' ');
        path.Append(op).Append('\n');
    }

    private static int U16(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadUInt16BigEndian(data[at..]);

    private static int I16(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadInt16BigEndian(data[at..]);
}
