// Over 200 lines: one way to write each thing of a scene, and all of them are one file.
using System.Text;

namespace Setout.Drawing.Scenes;

/// <summary>How a drawing is written.</summary>
public sealed record SvgOptions
{
    /// <summary>A file that opens by itself: real size, own style, paper behind, titles that show when pointed at.</summary>
    public static SvgOptions Standalone { get; } = new() { HasSize = true, HasStyle = true, HasPaper = true, HasTips = true };

    /// <summary>Part of a page that holds <see cref="SvgStyle.Sheet"/> and decides the size.</summary>
    public static SvgOptions Inline { get; } = new();

    /// <summary>Whether width and height are written, in millimetres.</summary>
    public bool HasSize { get; init; }

    /// <summary>Whether the style sheet is inside.</summary>
    public bool HasStyle { get; init; }

    /// <summary>Whether the paper is painted.</summary>
    public bool HasPaper { get; init; }

    /// <summary>Whether groups have a title element, which viewers show as a tip.</summary>
    public bool HasTips { get; init; }
}

/// <summary>
/// Writes a scene as SVG 1.1 with the roles of the WAI-ARIA Graphics Module: the same scene gives the same bytes. Text stays text; a fraction
/// is set small by position, and its signs in order read <c>23 1/4</c>. All words are escaped and nothing of them becomes markup.
/// </summary>
public static class SvgWriter
{
    /// <summary>Writes a scene.</summary>
    public static string Write(Scene scene, SvgOptions options)
    {
        var svg = new StringBuilder(16 * 1024);
        string width = Number(scene.Width), height = Number(scene.Height);
        svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\"");
        if (options.HasSize) svg.Append($" width=\"{width}mm\" height=\"{height}mm\"");
        svg.Append($" viewBox=\"0 0 {width} {height}\" class=\"{SvgStyle.RootClass}\" role=\"graphics-document document\" xml:lang=\"en\" aria-label=\"");
        Escape(svg, scene.Title);
        svg.Append("\">\n<title>");
        Escape(svg, scene.Title);
        svg.Append("</title>\n<desc>");
        Escape(svg, scene.Description);
        svg.Append("</desc>\n");
        if (options.HasStyle) svg.Append("<style>\n").Append(SvgStyle.Sheet).Append("</style>\n");
        if (options.HasPaper) svg.Append($"<rect class=\"so-paper\" width=\"{width}\" height=\"{height}\"/>\n");
        Items(svg, scene.Items, options);
        return svg.Append("</svg>\n").ToString();
    }

    /// <summary>A number as it stands in a drawing: at most three decimals, invariant, never minus nought.</summary>
    public static string Number(double value) => Append(new(), Thousandths(value)).ToString();

    private static long Thousandths(double value) => (long)Math.Round(value * 1000, MidpointRounding.AwayFromZero);

    /// <summary>Written by hand: a drawing has tens of thousands of numbers, and formatting them was most of its time.</summary>
    private static StringBuilder Append(StringBuilder svg, long thousandths)
    {
        if (thousandths < 0) svg.Append('-');
        (long whole, long rest) = Math.DivRem(Math.Abs(thousandths), 1000);
        svg.Append(whole);
        if (rest == 0) return svg;
        svg.Append('.').Append((char)('0' + (rest / 100)));
        if (rest % 100 != 0) svg.Append((char)('0' + (rest / 10 % 10)));
        if (rest % 10 != 0) svg.Append((char)('0' + (rest % 10)));
        return svg;
    }

    private static void Items(StringBuilder svg, IReadOnlyList<SceneItem> items, SvgOptions options)
    {
        for (int i = 0; i < items.Count; i++)
        {
            switch (items[i])
            {
                case LineItem first:
                    int end = i + 1;
                    while (end < items.Count && items[end] is LineItem next && next.Ink == first.Ink) end++;
                    var path = new LinePath(svg, first.Ink);
                    for (int line = i; line < end; line++) path.Add(((LineItem)items[line]).From, ((LineItem)items[line]).To);
                    path.End();
                    i = end - 1;
                    break;
                case HatchItem hatch:
                    var hatching = new LinePath(svg, Ink.Hatch);
                    foreach ((Point from, Point to) in Strokes.Hatch(hatch)) hatching.Add(from, to);
                    hatching.End();
                    break;
                case ShapeItem shape: Shape(svg, shape); break;
                case TextItem text: Text(svg, text); break;
                case GroupItem group: Group(svg, group, options); break;
                default: throw new NotSupportedException($"{items[i].GetType().Name} has no SVG.");
            }
        }
    }

    /// <summary>Lines of one ink become one path: a drawing of many grain lines stays a small document.</summary>
    private struct LinePath
    {
        private readonly StringBuilder _svg;
        private (long X, long Y)? _pen;

        public LinePath(StringBuilder svg, Ink ink)
        {
            _svg = svg;
            svg.Append("<path class=\"").Append(SvgStyle.LineClass(ink)).Append("\" d=\"");
        }

        public void Add(Point from, Point to)
        {
            (long X, long Y) start = (Thousandths(from.X), Thousandths(from.Y)), end = (Thousandths(to.X), Thousandths(to.Y));
            if (_pen != start) Put('M', start);
            Put('L', end);
            _pen = end;
        }

        public readonly void End() => _svg.Append("\"/>\n");

        private readonly void Put(char letter, (long X, long Y) at)
        {
            Append(_svg.Append(letter), at.X).Append(' ');
            Append(_svg, at.Y);
        }
    }

    private static void Shape(StringBuilder svg, ShapeItem shape)
    {
        string wash = shape.Wash == Wash.None ? shape.Edge is null ? "so-clear" : "" : SvgStyle.WashClass(shape.Wash);
        string classes = shape.Edge is { } edge ? $"{wash} {SvgStyle.LineClass(edge)}".Trim() : wash;
        if (IsUpright(shape))
        {
            Point a = shape.Corners[0], c = shape.Corners[2];
            svg.Append($"<rect class=\"{classes}\" x=\"{Number(a.X)}\" y=\"{Number(a.Y)}\" width=\"{Number(c.X - a.X)}\" height=\"{Number(c.Y - a.Y)}\"/>\n");
            return;
        }
        svg.Append($"<path class=\"{classes}\" d=\"M").AppendJoin('L', shape.Corners.Select(At)).Append("Z\"/>\n");
    }

    private static bool IsUpright(ShapeItem shape) =>
        shape.Corners.Length == 4 && shape.Corners[0].Y == shape.Corners[1].Y && shape.Corners[1].X == shape.Corners[2].X
        && shape.Corners[2].Y == shape.Corners[3].Y && shape.Corners[3].X == shape.Corners[0].X
        && shape.Corners[2].X >= shape.Corners[0].X && shape.Corners[2].Y >= shape.Corners[0].Y;

    private static void Text(StringBuilder svg, TextItem text)
    {
        SetLine line = TextMeasure.Set(text.Text, text.Size);
        if (line.Stretches.IsEmpty) return;
        string anchor = text.Anchor switch { Anchor.Middle => " text-anchor=\"middle\"", Anchor.End => " text-anchor=\"end\"", _ => "" };
        string turn = text.Turn == 0 ? "" : $" transform=\"rotate({Number(-text.Turn)} {Number(text.At.X)} {Number(text.At.Y)})\"";
        if (text.HasGround)
        {
            Box ground = Box.Ground(text);
            svg.Append($"<rect class=\"so-paper\" x=\"{Number(ground.Left)}\" y=\"{Number(ground.Top)}\" width=\"{Number(ground.Width)}\" height=\"{Number(ground.Height)}\"{turn}/>\n");
        }
        bool isPlain = line.Stretches.Length == 1;
        string face = isPlain ? FaceClass(line.Stretches[0].Face) : "";
        svg.Append($"<text class=\"{SvgStyle.TextClass(text.Ink)}{face}\" x=\"{Number(text.At.X)}\" y=\"{Number(text.At.Y)}\" font-size=\"{Number(text.Size)}\"{anchor}{turn}>");
        if (isPlain) Escape(svg, line.Stretches[0].Text);
        else Stretches(svg, line, text.Size);
        svg.Append("</text>\n");
    }

    private static void Stretches(StringBuilder svg, SetLine line, double size)
    {
        double pen = 0, rise = 0;
        foreach (TextStretch stretch in line.Stretches)
        {
            // The text is the hyphen that is copied; it stands in the middle of the minus's place.
            double spare = stretch.Kind == StretchKind.Sign ? (stretch.Width - Typeface.Font(stretch.Face).Width(stretch.Text, stretch.Size)) / 2 : 0;
            string dx = Number(stretch.X + spare - pen), dy = Number(rise - stretch.Rise), face = FaceClass(stretch.Face);
            svg.Append("<tspan");
            if (face.Length > 0) svg.Append($" class=\"{face.Trim()}\"");
            if (dx != "0") svg.Append($" dx=\"{dx}\"");
            if (dy != "0") svg.Append($" dy=\"{dy}\"");
            if (stretch.Size != size) svg.Append($" font-size=\"{Number(stretch.Size)}\"");
            svg.Append('>');
            Escape(svg, stretch.Text);
            svg.Append("</tspan>");
            (pen, rise) = (stretch.X + stretch.Width - spare, stretch.Rise);
        }
    }

    private static void Group(StringBuilder svg, GroupItem group, SvgOptions options)
    {
        svg.Append("<g");
        if (group.Title.Length > 0)
        {
            svg.Append(" role=\"graphics-object\" aria-label=\"");
            Escape(svg, group.Title);
            svg.Append('"');
        }
        if (group.Key.Length > 0)
        {
            svg.Append(" data-key=\"");
            Escape(svg, group.Key);
            svg.Append('"');
        }
        svg.Append(">\n");
        if (options.HasTips && group.Title.Length > 0)
        {
            svg.Append("<title>");
            Escape(svg, group.Title);
            svg.Append("</title>\n");
        }
        Items(svg, group.Items, options);
        svg.Append("</g>\n");
    }

    private static string FaceClass(Face face) => face switch { Face.SemiBold => " so-bold", Face.Italic => " so-italic", _ => "" };

    private static string At(Point point) => $"{Number(point.X)} {Number(point.Y)}";

    /// <summary>Escapes for text and attributes alike; signs that XML does not allow become the replacement sign.</summary>
    private static void Escape(StringBuilder svg, string text)
    {
        foreach (Rune sign in text.EnumerateRunes())
        {
            switch (sign.Value)
            {
                case '&': svg.Append("&amp;"); break;
                case '<': svg.Append("&lt;"); break;
                case '>': svg.Append("&gt;"); break;
                case '"': svg.Append("&quot;"); break;
                case '\'': svg.Append("&#39;"); break;
                case '\t' or '\n' or '\r': svg.Append(' '); break;
                case < ' ' or 0x7F or 0xFFFE or 0xFFFF: svg.Append('\uFFFD'); break;
                default: svg.Append(sign.ToString()); break;
            }
        }
    }
}
