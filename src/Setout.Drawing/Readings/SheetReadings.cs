using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Readings;

/// <summary>Draws where a sheet is read: in from the edges as far as the jaws reach, away from the corners.</summary>
public static class SheetReadings
{
    /// <summary>The room round the drawing, and what the border is drawn at least, so that a spot can be told from the edge.</summary>
    internal const double Margin = 3, LeastInset = 4.5;

    private const double Cross = 2.6, Ring = 1.5, Leading = 1.35;
    private const int Corners = 16;

    /// <summary>Draws.</summary>
    /// <exception cref="ArgumentException">There is no spot, or one lies in the border.</exception>
    public static Scene Draw(SheetInput input, ReadingPaper paper)
    {
        if (input.Spots.IsDefaultOrEmpty) throw new ArgumentException("A sheet is read at one spot at least.", nameof(input));
        if (input.Spots.Any(s => s.Along < input.Inset || s.Across < input.Inset || s.Along + input.Inset > input.Along || s.Across + input.Inset > input.Across))
            throw new ArgumentException("A spot lies in the border of the sheet, where it is not to be read.", nameof(input));
        double along = input.Along.ApproximateMillimetres, across = input.Across.ApproximateMillimetres;
        double scale = Math.Min((paper.Width - (2 * Margin)) / along, paper.Height / across);
        Box sheet = Box.At((paper.Width - (along * scale)) / 2, Margin, along * scale, across * scale);
        double inset = Math.Max(input.Inset.ApproximateMillimetres * scale, LeastInset);
        Box inner = sheet.Grown(-inset);

        var items = ImmutableArray.CreateBuilder<SceneItem>();
        items.Add(ShapeItem.Rectangle(sheet.Left, sheet.Top, sheet.Width, sheet.Height, Ink.Outline, Wash.Panel));
        for (int i = 1; i < 9; i++)
        {
            double y = inner.Top + (inner.Height * i / 9);
            // Short strokes by turns at either end say which way the grain runs and leave the words free.
            double x = i % 2 == 0 ? inner.Left + 4 : inner.Right - 22;
            items.Add(new LineItem(new(x, y), new(x + 18, y), Ink.Grain));
        }
        foreach ((Point from, Point to) in Sides(inner)) items.Add(new LineItem(from, to, Ink.Hidden));
        Point middle = sheet.Middle;
        items.Add(new TextItem(new(middle.X, middle.Y), input.Name.Bold(), paper.TextSize, Anchor.Middle, Ink.Outline));
        items.Add(new TextItem(new(middle.X, middle.Y + (paper.SmallSize * Leading)), input.InsetWords, paper.SmallSize, Anchor.Middle, Ink.Soft));
        foreach (SheetSpot spot in input.Spots)
        {
            // The border is drawn wider than it is, so a spot that lies on it is moved with it.
            double x = Kept(sheet.Left + (spot.Along.ApproximateMillimetres * scale), inner.Left, inner.Right), y = Kept(sheet.Top + (spot.Across.ApproximateMillimetres * scale), inner.Top, inner.Bottom);
            var drawn = ImmutableArray.CreateBuilder<SceneItem>();
            drawn.Add(new LineItem(new(x - Cross, y), new(x + Cross, y), Ink.Part));
            drawn.Add(new LineItem(new(x, y - Cross), new(x, y + Cross), Ink.Part));
            drawn.Add(Strokes.Ring(new(x, y), Ring, Corners, Ink.Outline, Wash.Paper));
            if (!spot.Figure.IsEmpty)
            {
                bool isLow = y > middle.Y;
                double baseline = isLow ? y - Cross - 1.6 : y + Cross + 1 + (paper.TextSize * TextMeasure.Ascent);
                double half = TextMeasure.Width(spot.Figure.Bold(), paper.TextSize) / 2;
                drawn.Add(new TextItem(new(Kept(x, inner.Left + half, inner.Right - half), baseline), spot.Figure.Bold(), paper.TextSize, Anchor.Middle, Ink.Outline));
            }
            items.Add(new GroupItem("", $"read here{(spot.Figure.IsEmpty ? "" : $": {spot.Figure.PlainText}")}", drawn.ToImmutable()));
        }
        double height = Notes.Put(items, input.Note, paper, sheet.Bottom + 2);
        return new(paper.Width, height, input.Title, input.Description, items.ToImmutable());
    }

    private static double Kept(double at, double low, double high) => Math.Clamp(at, low, high);

    private static IEnumerable<(Point From, Point To)> Sides(Box box) =>
    [
        (new(box.Left, box.Top), new(box.Right, box.Top)), (new(box.Right, box.Top), new(box.Right, box.Bottom)),
        (new(box.Right, box.Bottom), new(box.Left, box.Bottom)), (new(box.Left, box.Bottom), new(box.Left, box.Top)),
    ];
}

/// <summary>The soft words at the foot of a drawing.</summary>
internal static class Notes
{
    private const double Leading = 1.35;

    /// <summary>Adds them and gives the height of the paper.</summary>
    public static double Put(ImmutableArray<SceneItem>.Builder items, Phrase note, ReadingPaper paper, double top)
    {
        double y = top;
        foreach (Phrase line in TextMeasure.Wrap(note, paper.SmallSize, paper.Width - (2 * SheetReadings.Margin)))
        {
            y += paper.SmallSize * Leading;
            items.Add(new TextItem(new(SheetReadings.Margin, y), line, paper.SmallSize, Anchor.Start, Ink.Soft));
        }
        return y + SheetReadings.Margin;
    }
}
