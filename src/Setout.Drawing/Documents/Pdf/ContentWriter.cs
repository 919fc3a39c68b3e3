using System.Globalization;
using System.Text;
using Setout.Drawing.Documents.Setting;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Pdf;

/// <summary>Writes what is on one page. Takes paper millimetres from the top left corner, y down; writes points from the lower left.</summary>
internal sealed class ContentWriter(double pageHeight, PdfFonts fonts)
{
    private const double PointsPerMillimetre = 1 / SheetStyle.Point;
    private readonly StringBuilder _out = new();
    private double _fill = -1, _stroke = -1;

    public byte[] ToBytes() => Encoding.ASCII.GetBytes(_out.ToString());

    /// <summary>Begins what belongs to a node of the reading order.</summary>
    public void Begin(string role, int mark) => _out.Append('/').Append(role).Append(" <</MCID ").Append(mark).Append(">> BDC\n");

    /// <summary>Begins decoration, which is not read aloud.</summary>
    public void BeginDecoration() => _out.Append("/Artifact BMC\n");

    public void End() => _out.Append("EMC\n");

    /// <summary>A line with round ends, so that lines meeting in a corner close it.</summary>
    public void Line(Point from, Point to, InkWeight ink) => Line(from, to, ink, ink.Dash.Length == 0 ? 1 : 0);

    /// <summary>A line with square ends.</summary>
    public void Rule(Point from, Point to, InkWeight ink) => Line(from, to, ink, 0);

    private void Line(Point from, Point to, InkWeight ink, int cap)
    {
        Pen(ink, cap);
        Op("m", X(from.X), Y(from.Y));
        Op("l", X(to.X), Y(to.Y));
        _out.Append("S\n");
    }

    /// <summary>A closed shape.</summary>
    /// <param name="corners">Two or more.</param>
    /// <param name="edge">Its edge, or null.</param>
    /// <param name="grey">Its fill, or null.</param>
    public void Shape(IReadOnlyList<Point> corners, InkWeight? edge, double? grey)
    {
        if (corners.Count < 2 || (edge is null && grey is null)) return;
        if (edge is { } ink) Pen(ink, 0);
        if (grey is { } fill) Fill(fill);
        for (int i = 0; i < corners.Count; i++) Op(i == 0 ? "m" : "l", X(corners[i].X), Y(corners[i].Y));
        _out.Append(edge is null ? "h f\n" : grey is null ? "s\n" : "b\n");
    }

    /// <summary>Draws inside a rectangle only.</summary>
    public void Clipped(double x, double y, double width, double height, Action draw)
    {
        (double fill, double stroke) = (_fill, _stroke);
        _out.Append("q\n");
        Op("re", X(x), Y(y + height), width * PointsPerMillimetre, height * PointsPerMillimetre);
        _out.Append("W n\n");
        draw();
        _out.Append("Q\n");
        (_fill, _stroke) = (fill, stroke);
    }

    /// <summary>A phrase on one line.</summary>
    /// <param name="phrase">What it says; every character must be in the font.</param>
    /// <param name="at">Left end of its baseline.</param>
    /// <param name="size">Em in millimetres.</param>
    /// <param name="turn">Degrees, counter-clockwise.</param>
    /// <param name="grey">0 black to 1 white.</param>
    public void Text(Phrase phrase, Point at, double size, double turn, double grey)
    {
        SetLine line = TextMeasure.Set(phrase, size);
        if (line.Stretches.IsEmpty) return;
        (double sin, double cos) = Math.SinCos(turn * Math.PI / 180);
        Fill(grey);
        _out.Append("BT\n");
        foreach ((TextStretch stretch, bool isSeen) in ReadText.Of(line, size)) Letters(stretch, isSeen, at, sin, cos);
        _out.Append("ET\n");
        foreach (TextStretch stretch in line.Stretches)
            if (stretch.Kind is not (StretchKind.Words or StretchKind.Gap)) Shapes(stretch, at, sin, cos);
    }

    private void Letters(TextStretch stretch, bool isSeen, Point at, double sin, double cos)
    {
        FontUse font = fonts.Of(stretch.Face);
        _out.Append('/').Append(font.Name).Append(' ');
        Op("Tf", stretch.Size * PointsPerMillimetre);
        Place("Tm", stretch, at, sin, cos, 1);
        if (!isSeen)
        {
            _out.Append("3 Tr ");
            Op("Tz", 100 * stretch.Width / font.Face.Width(stretch.Text, stretch.Size));
        }
        _out.Append('<').Append(font.Hex(stretch.Text)).Append("> Tj\n");
        if (!isSeen) _out.Append("0 Tr 100 Tz\n");
    }

    private void Shapes(TextStretch stretch, Point at, double sin, double cos)
    {
        FontUse font = fonts.Of(stretch.Face);
        double x = stretch.X;
        foreach (Rune rune in (stretch.Kind == StretchKind.Sign ? TextMeasure.Minus : stretch.Text).EnumerateRunes())
        {
            int glyph = font.Face.GlyphOf(rune);
            _out.Append("q ");
            Place("cm", stretch with { X = x }, at, sin, cos, stretch.Size * PointsPerMillimetre / font.Face.UnitsPerEm);
            _out.Append('/').Append(font.Shape(glyph)).Append(" Do Q\n");
            x += font.Face.Advances[glyph] * stretch.Size / font.Face.UnitsPerEm;
        }
    }

    private void Place(string op, TextStretch stretch, Point at, double sin, double cos, double scale)
    {
        double x = at.X + (stretch.X * cos) - (stretch.Rise * sin), y = at.Y - (stretch.X * sin) - (stretch.Rise * cos);
        foreach (double n in (ReadOnlySpan<double>)[cos * scale, sin * scale, -sin * scale, cos * scale]) Number(n, 6);
        Op(op, X(x), Y(y));
    }

    private void Pen(InkWeight ink, int cap)
    {
        if (_stroke != ink.Grey) Op("G", _stroke = ink.Grey);
        Op("w", ink.Weight * PointsPerMillimetre);
        _out.Append(cap).Append(" J 0 j [");
        foreach (double dash in ink.Dash) Number(dash * PointsPerMillimetre, 3);
        _out.Append("] 0 d\n");
    }

    private void Fill(double grey)
    {
        if (_fill != grey) Op("g", _fill = grey);
    }

    private static double X(double x) => x * PointsPerMillimetre;

    private double Y(double y) => (pageHeight - y) * PointsPerMillimetre;

    private void Op(string op, params ReadOnlySpan<double> numbers)
    {
        foreach (double number in numbers) Number(number, 4);
        _out.Append(op).Append('\n');
    }

    private void Number(double number, int decimals)
    {
        double rounded = Math.Round(number, decimals);
        // Minus zero and exponents are not numbers to PDF readers.
        _out.Append(rounded == 0 ? "0" : rounded.ToString(decimals == 6 ? "0.######" : "0.####", CultureInfo.InvariantCulture)).Append(' ');
    }
}
