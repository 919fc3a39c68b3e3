using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>The small running figures of the cuts inside the strips.</summary>
internal sealed class InnerFigures(SheetGround sheet)
{
    private readonly List<SceneItem> _placed = [];
    private readonly List<InnerCut> _dropped = [];

    /// <summary>Those that found room.</summary>
    public IReadOnlyList<SceneItem> Placed => _placed;

    /// <summary>Those that did not: they are said under the drawing.</summary>
    public IReadOnlyList<InnerCut> Dropped => _dropped;

    /// <summary>Small running figures stand just before their cut; they move, turn, shrink, and at last go to the lines under the drawing.</summary>
    public void Place()
    {
        foreach (InnerCut cut in sheet.Input.InnerCuts.Where(c => !c.Figure.IsEmpty))
        {
            double at = cut.Axis == SheetAxis.Across ? sheet.View.X(cut.At) : sheet.View.Y(cut.At);
            double from = cut.Axis == SheetAxis.Across ? sheet.View.Y(cut.From) : sheet.View.X(cut.From), to = cut.Axis == SheetAxis.Across ? sheet.View.Y(cut.To) : sheet.View.X(cut.To);
            TextItem? placed = null;
            foreach (double size in new[] { sheet.Paper.SmallSize, (sheet.Paper.SmallSize + BreakdownPaper.LeastSize) / 2, BreakdownPaper.LeastSize })
            {
                IEnumerable<TextItem> tries = cut.Axis == SheetAxis.Across ? BeforeUpright(cut.Figure, at, from, to, size) : BeforeLevel(cut.Figure, at, from, to, size);
                placed = tries.Select(Taken).FirstOrDefault(t => t is not null);
                if (placed is not null) break;
            }
            if (placed is not null) _placed.Add(placed);
            else _dropped.Add(cut);
        }
    }

    // On waste the paper is laid under it: a figure crossed by hatching cannot be read.
    private TextItem? Taken(TextItem text)
        => sheet.CellOf(LabelBook.Tight(text)) is { } cell && sheet.Book.TryTake(text, cell) ? text with { HasGround = sheet.Waste.Contains(cell) } : null;

    public static IEnumerable<TextItem> BeforeUpright(Phrase figure, double x, double top, double bottom, double size)
    {
        const double off = 0.8;
        double up = TextMeasure.Ascent * size;
        TextItem Level(double px, double py, Anchor anchor) => new(new(px, py), figure, size, anchor, Ink.Soft);
        yield return Level(x - off, bottom - 0.9, Anchor.End);
        yield return Level(x - off, top + up + 0.6, Anchor.End);
        yield return new(new(x - off - (0.1 * size), bottom - 0.8), figure, size, Anchor.Start, Ink.Soft, 90);
        yield return new(new(x - off - (0.1 * size), top + 0.8), figure, size, Anchor.End, Ink.Soft, 90);
    }

    public static IEnumerable<TextItem> BeforeLevel(Phrase figure, double y, double left, double right, double size)
    {
        double up = TextMeasure.Ascent * size;
        yield return new(new(right - 0.8, y - 0.9), figure, size, Anchor.End, Ink.Soft);
        yield return new(new(left + 0.8, y - 0.9), figure, size, Anchor.Start, Ink.Soft);
        yield return new(new(right - (0.1 * size) - 0.6, y - 0.8), figure, size, Anchor.Start, Ink.Soft, 90);
        yield return new(new(left + up + 0.6, y - 0.8), figure, size, Anchor.Start, Ink.Soft, 90);
    }
}
