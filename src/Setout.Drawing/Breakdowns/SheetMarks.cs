using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>The short mark of each part: in it where it fits, else beside it at a leader.</summary>
internal sealed class SheetMarks(SheetGround sheet)
{
    private const double Pad = SheetGround.Pad;
    /// <summary>More parts of one mark than this without room for it are not marked one by one: leaders would hide the drawing.</summary>
    private const int MostAlike = 24;

    private readonly List<Phrase> _unmarked = [];
    private readonly ImmutableArray<SceneItem>[] _marks = new ImmutableArray<SceneItem>[sheet.Parts.Length];

    /// <summary>The lowest ink, labels under the sheet included.</summary>
    public double Lowest { get; private set; } = sheet.Outline.Bottom;

    /// <summary>How many marks found no room in their part.</summary>
    public int Outside { get; private set; }

    /// <summary>Parts that stand without their mark, in words.</summary>
    public IReadOnlyList<Phrase> Unmarked => _unmarked;

    /// <summary>The mark of a part, with its leader.</summary>
    public ImmutableArray<SceneItem> Of(int part) => _marks[part];

    /// <summary>
    /// Marks shrink to fit, turn where that lets them be larger, and never go under 7 pt. In a low part they step aside for the running
    /// figure of the cut that ends it. Parts of one shape are marked alike.
    /// </summary>
    public void PlaceInside()
    {
        foreach (IGrouping<(long, long), int> alike in Enumerable.Range(0, sheet.Parts.Length).GroupBy(i => (sheet.Input.Parts[i].Area.Width.Ticks, sheet.Input.Parts[i].Area.Height.Ticks)))
        {
            double most = sheet.Paper.MarkSize;
            double level = alike.Min(i => (Beside(i, most) ?? Alone(i, most, 0))?.Size ?? 0);
            double turned = alike.Min(i => Alone(i, most, 90)?.Size ?? 0);
            foreach (int i in alike)
            {
                TextItem? mark = turned > level * 1.3 ? Alone(i, turned, 90) : Beside(i, level) ?? Alone(i, level, 0);
                // Where the shape is too small for the longest mark of its kind, a shorter one may still fit.
                mark ??= Alone(i, most, 0) ?? Alone(i, most, 90);
                if (mark is not null && sheet.Book.TryTake(mark, sheet.Outline)) _marks[i] = [mark];
            }
        }
    }

    /// <summary>The paper that the figure ending a part would like, largest first.</summary>
    private IEnumerable<Box> Reserved(int part)
    {
        Box box = sheet.Parts[part];
        foreach (InnerCut cut in sheet.Endings[part])
        {
            foreach ((double size, FigurePlaces places) in new[] { FigurePlaces.Usual, FigurePlaces.WithoutArrow }.SelectMany(p => new[] { (sheet.Paper.SmallSize, p), (BreakdownPaper.LeastSize, p) }))
            {
                Box first = (cut.Axis == SheetAxis.Across ? InnerFigures.Before(cut, box.Right, box.Top, box.Bottom, size, places) : InnerFigures.Before(cut, box.Bottom, box.Left, box.Right, size, places)).First().Ink;
                if (box.Holds(first)) yield return first.Grown(0.5);
            }
        }
    }

    private TextItem? Beside(int part, double most)
    {
        Box box = sheet.Parts[part];
        Phrase mark = sheet.MarkOf(part);
        foreach (Box reserved in Reserved(part))
        {
            for (double size = most; size >= BreakdownPaper.LeastSize; size -= 0.25)
            {
                double half = TextMeasure.Width(mark, size) / 2;
                foreach (double x in new[] { box.Middle.X, (reserved.Left + box.Left) / 2, box.Left + Pad + half + 0.1 })
                {
                    TextItem text = LabelBook.Centred(new(x, box.Middle.Y), mark, size, Ink.Outline);
                    if (Fits(text, box) && !LabelBook.Tight(text).Overlaps(reserved)) return text;
                }
            }
        }
        return null;
    }

    private TextItem? Alone(int part, double most, double turn)
    {
        for (double size = most; size >= BreakdownPaper.LeastSize; size -= 0.25)
        {
            TextItem text = LabelBook.Centred(sheet.Parts[part].Middle, sheet.MarkOf(part), size, Ink.Outline, turn);
            if (Fits(text, sheet.Parts[part])) return text;
        }
        return null;
    }

    /// <summary>Room round a mark grows with it: a small one may come close to the edges of a thin strip.</summary>
    private bool Fits(TextItem text, Box room) => sheet.Book.IsFree(LabelBook.Tight(text), room.Grown(-Math.Max(0.3, 0.16 * text.Size)));

    /// <summary>A mark with no room in its part goes to the nearest waste or keep, else under the sheet, at the end of a leader.</summary>
    public void PlaceOutside()
    {
        foreach (IGrouping<string, int> alike in Enumerable.Range(0, sheet.Parts.Length).Where(i => _marks[i].IsDefault).GroupBy(i => sheet.Input.Parts[i].Mark))
        {
            int[] rest = [.. alike.Skip(1)];
            if (rest.Length < MostAlike) continue;
            foreach (int i in rest) _marks[i] = [];
            Outside += rest.Length;
            _unmarked.Add(Phrase.Of($"{alike.Key} on {rest.Length} more of its parts"));
        }
        List<int> under = [];
        for (int i = 0; i < sheet.Parts.Length; i++)
        {
            if (!_marks[i].IsDefault) continue;
            Outside++;
            if (NearbySpot(i) is { } spot) _marks[i] = Led(sheet.Parts[i], spot);
            else under.Add(i);
        }
        if (under.Count == 0) return;
        under.Sort((a, b) => sheet.Parts[a].Middle.X.CompareTo(sheet.Parts[b].Middle.X));
        // Below the 0 of the end.
        const double size = BreakdownPaper.LeastSize, gap = 1.5, first = 6.4;
        double Wide(int part) => TextMeasure.Width(sheet.MarkOf(part), size);
        int rows = Math.Max(1, (int)Math.Ceiling(under.Sum(i => Wide(i) + gap) / sheet.Outline.Width));
        for (int row = 0; row < rows; row++)
        {
            int[] mine = [.. under.Where((_, n) => n % rows == row)];
            double[] middles = Spread.Along([.. mine.Select(i => sheet.Parts[i].Middle.X)], [.. mine.Select(Wide)], gap, sheet.Outline.Left, sheet.Outline.Right);
            for (int m = 0; m < mine.Length; m++)
                _marks[mine[m]] = Led(sheet.Parts[mine[m]], LabelBook.Centred(new(middles[m], sheet.Outline.Bottom + first + (row * size * 1.4)), sheet.MarkOf(mine[m]), size, Ink.Outline));
        }
        Lowest = sheet.Outline.Bottom + first + (rows * size * 1.4);
    }

    private TextItem? NearbySpot(int part)
    {
        const double reach = 45;
        Phrase mark = sheet.MarkOf(part);
        Box own = sheet.Parts[part];
        double size = BreakdownPaper.LeastSize, width = TextMeasure.Width(mark, size);
        var spots = new List<(double Distance, Point From, Point At, Box Room, bool IsWaste)>();
        foreach ((Box room, bool isWaste) in sheet.Waste.Select(w => (w, true)).Concat(sheet.Kept.Select(k => (k, false))))
        {
            Box inner = new(room.Left + Pad + (width / 2), room.Top + Pad + (size / 2), room.Right - Pad - (width / 2), room.Bottom - Pad - (size / 2));
            if (inner.Width < 0 || inner.Height < 0) continue;
            foreach (double x in new[] { own.Left, own.Middle.X, own.Right })
            {
                for (int step = -4; step <= 4; step++)
                {
                    var at = new Point(Math.Clamp(x + (step * (width + 1)), inner.Left, inner.Right), Math.Clamp(own.Middle.Y + (step * size * 1.2), inner.Top, inner.Bottom));
                    Point from = Root(own, at);
                    spots.Add((Math.Sqrt(Math.Pow(at.X - from.X, 2) + Math.Pow(at.Y - from.Y, 2)), from, at, room, isWaste));
                }
            }
        }
        foreach ((_, Point from, Point at, Box room, bool isWaste) in spots.OrderBy(s => s.Distance).Where(s => s.Distance < reach))
        {
            TextItem text = LabelBook.Centred(at, mark, size, Ink.Outline, 0, isWaste);
            // A leader never runs through another label.
            if (sheet.Book.TakenNear(Between(from, at)).Any(t => Meets(t, from, at))) continue;
            if (sheet.Book.TryTake(text, room)) return text;
        }
        return null;
    }

    /// <summary>Where a leader takes root: on the middle line of the part, as near to its mark as it can be.</summary>
    private static Point Root(Box part, Point mark)
    {
        double inset = Math.Min(3, Math.Min(part.Width, part.Height) / 2);
        return new(Math.Clamp(mark.X, part.Left + inset, part.Right - inset), Math.Clamp(mark.Y, part.Top + inset, part.Bottom - inset));
    }

    private static Box Between(Point a, Point b) => new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));

    private static bool Meets(Box box, Point a, Point b)
    {
        const int steps = 40;
        return Enumerable.Range(0, steps + 1).Select(i => new Point(a.X + ((b.X - a.X) * i / steps), a.Y + ((b.Y - a.Y) * i / steps)))
            .Any(p => p.X > box.Left && p.X < box.Right && p.Y > box.Top && p.Y < box.Bottom);
    }

    private static ImmutableArray<SceneItem> Led(Box part, TextItem text)
    {
        Point from = Root(part, LabelBook.Tight(text).Middle);
        Box ink = LabelBook.Tight(text).Grown(0.4);
        var end = new Point(Math.Clamp(from.X, ink.Left, ink.Right), Math.Clamp(from.Y, ink.Top, ink.Bottom));
        return [new LineItem(from, end, Ink.Dimension), ShapeItem.Rectangle(from.X - 0.45, from.Y - 0.45, 0.9, 0.9, null, Wash.Metal), text];
    }
}
