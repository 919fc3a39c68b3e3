using System.Collections.Immutable;
using Setout.Drawing.Documents.Fonts;
using Setout.Drawing.Documents.Pdf;
using Setout.Drawing.Documents.Setting;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents;

/// <summary>Draws scenes for print: 1 mm of a scene is 1 mm of paper, in the black and grey weights of one table.</summary>
public static class PdfScenes
{
    /// <summary>Saves one drawing on a page of exactly its size, at true scale.</summary>
    /// <param name="scene">The drawing; with a width and a height of more than zero.</param>
    /// <param name="language">Language tag.</param>
    /// <param name="stamp">What the file says of its making.</param>
    /// <param name="stream">Takes the file; left open.</param>
    /// <returns>What could not be drawn as asked.</returns>
    public static ImmutableArray<LayoutRemark> Save(Scene scene, string language, Stamp stamp, Stream stream)
    {
        var setter = new Setter(FontMeasure.Plex, scene.Width, scene.Height, scene.Height, scene.Width);
        Strip strip = SceneSetter.Set(setter, new SceneBlock(scene), 0);
        var page = new PageLayout(1, scene.Width, scene.Height, scene.Title, [.. strip.Pieces]);
        var layout = new DocumentLayout([page], [.. setter.Elements], [], [.. setter.Remarks]);
        PdfWriter.Write(layout, scene.Title, language, stamp, stream);
        return layout.Remarks;
    }

    internal static void Draw(ContentWriter content, ScenePiece piece)
    {
        // A line on the very edge keeps its full weight.
        const double Edge = 0.5;
        Scene scene = piece.Scene;
        content.Clipped(piece.X - Edge, piece.Y - Edge, (scene.Width * piece.Scale) + (2 * Edge), (scene.Height * piece.Scale) + (2 * Edge), () =>
        {
            foreach (SceneItem item in scene.Items) Draw(content, piece, item);
        });
    }

    private static void Draw(ContentWriter content, ScenePiece on, SceneItem item)
    {
        switch (item)
        {
            case LineItem line:
                content.Line(Place(on, line.From), Place(on, line.To), PrintInks.Of(line.Ink));
                break;
            case ShapeItem shape:
                content.Shape([.. shape.Corners.Select(c => Place(on, c))], shape.Edge is { } edge ? PrintInks.Of(edge) : null, PrintInks.GreyOf(shape.Wash));
                break;
            case HatchItem hatch:
                Hatch(content, Place(on, hatch.Corner), hatch.Width * on.Scale, hatch.Height * on.Scale);
                break;
            case TextItem text:
                Text(content, on, text);
                break;
            case GroupItem group:
                foreach (SceneItem inner in group.Items) Draw(content, on, inner);
                break;
            default:
                throw new ArgumentException($"No way to print {item.GetType().Name}.", nameof(item));
        }
    }

    private static Point Place(ScenePiece on, Point point) => new(on.X + (point.X * on.Scale), on.Y + (point.Y * on.Scale));

    private static void Hatch(ContentWriter content, Point corner, double width, double height)
    {
        if (!(width > 0 && height > 0)) return;
        double step = PrintInks.HatchStep * Math.Sqrt(2);
        content.Clipped(corner.X, corner.Y, width, height, () =>
        {
            // Lines rise to the right; each crosses the lower edge's line at its own x.
            for (double x = step / 2 - height; x < width; x += step)
                content.Line(new(corner.X + x, corner.Y + height), new(corner.X + x + height, corner.Y), PrintInks.Of(Ink.Hatch));
        });
    }

    private static void Text(ContentWriter content, ScenePiece on, TextItem text)
    {
        double size = text.Size * on.Scale;
        double width = PhraseSetting.WidthOf(text.Text, size, FontMeasure.Plex);
        double back = text.Anchor switch { Anchor.Middle => width / 2, Anchor.End => width, _ => 0 };
        (double sin, double cos) = Math.SinCos(text.Turn * Math.PI / 180);
        Point at = Place(on, text.At);
        var start = new Point(at.X - (back * cos), at.Y + (back * sin));
        if (text.HasGround)
        {
            double pad = 0.18 * size, top = PhraseSetting.StrokeTop * size, foot = PhraseSetting.StrokeFoot * size;
            Point P(double along, double up) => new(start.X + (along * cos) - (up * sin), start.Y - (along * sin) - (up * cos));
            content.Shape([P(-pad, foot - (pad / 2)), P(width + pad, foot - (pad / 2)), P(width + pad, top + (pad / 2)), P(-pad, top + (pad / 2))], null, 1);
        }
        content.Text(text.Text, start, size, text.Turn, PrintInks.GreyOfText(text.Ink));
    }
}
