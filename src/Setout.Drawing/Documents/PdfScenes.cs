using System.Collections.Immutable;
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
        var setter = new Setter(scene.Width, scene.Height, scene.Height, scene.Width);
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
                content.Line(Place(on, line.From), Place(on, line.To), Inks.InPrint(line.Ink));
                break;
            case ShapeItem shape:
                content.Shape([.. shape.Corners.Select(c => Place(on, c))], shape.Edge is { } edge ? Inks.InPrint(edge) : null, Inks.GreyOf(shape.Wash));
                break;
            case HatchItem hatch:
                Hatch(content, on, hatch);
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

    /// <summary>Laid over the paper, not the drawing: lines lie equally far apart at every scale.</summary>
    private static void Hatch(ContentWriter content, ScenePiece on, HatchItem hatch)
    {
        foreach ((Point from, Point to) in Strokes.Hatch(hatch with { Corner = Place(on, hatch.Corner), Width = hatch.Width * on.Scale, Height = hatch.Height * on.Scale }))
            content.Line(from, to, Inks.InPrint(Ink.Hatch));
    }

    private static void Text(ContentWriter content, ScenePiece on, TextItem text)
    {
        (double sin, double cos) = Math.SinCos(text.Turn * Math.PI / 180);
        Point Turned(double x, double y)
        {
            double along = x - text.At.X, down = y - text.At.Y;
            return Place(on, new(text.At.X + (along * cos) + (down * sin), text.At.Y - (along * sin) + (down * cos)));
        }
        if (text.HasGround)
        {
            Box g = Box.Ground(text);
            content.Shape([Turned(g.Left, g.Bottom), Turned(g.Right, g.Bottom), Turned(g.Right, g.Top), Turned(g.Left, g.Top)], null, Inks.GreyOf(Wash.Paper));
        }
        content.Text(text.Text, Turned(Box.Level(text).Left, text.At.Y), text.Size * on.Scale, text.Turn, Inks.GreyOfText(text.Ink));
    }
}
