using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>The small running figures of the cuts inside the strips, each with its arrow at the cut.</summary>
internal sealed class InnerFigures(SheetGround sheet)
{
    // From the line of a cut to the tip of an arrow; from an arrow to its figure; from an edge to a figure that has its arrow between.
    private const double FromLine = 0.4, Apart = 0.5, Beyond = 2.2;
    private static readonly FigurePlaces[] s_places = [FigurePlaces.Usual, FigurePlaces.Between, FigurePlaces.WithoutArrow];
    private static readonly double[] s_between = [0.75, 0.6, 0.4, 0.25], s_along = [0.8, 0.65, 0.5, 0.35];
    private readonly List<SceneItem> _placed = [];
    private readonly List<InnerCut> _dropped = [];

    /// <summary>Those that found room.</summary>
    public IReadOnlyList<SceneItem> Placed => _placed;

    /// <summary>How many of them had no room for their arrow.</summary>
    public int WithoutArrow { get; private set; }

    /// <summary>Those that did not: they are said under the drawing.</summary>
    public IReadOnlyList<InnerCut> Dropped => _dropped;

    /// <summary>Small running figures stand just before their cut; they move, turn, shrink, and at last go to the lines under the drawing.</summary>
    public void Place()
    {
        foreach (InnerCut cut in sheet.Input.InnerCuts.Where(c => !c.Figure.IsEmpty))
        {
            double at = cut.Axis == SheetAxis.Across ? sheet.View.X(cut.At) : sheet.View.Y(cut.At);
            double from = cut.Axis == SheetAxis.Across ? sheet.View.Y(cut.From) : sheet.View.X(cut.From), to = cut.Axis == SheetAxis.Across ? sheet.View.Y(cut.To) : sheet.View.X(cut.To);
            GroupItem? placed = null;
            // A figure with no room for its arrow still tells more than a line under the drawing: the ring of its strip says where it runs from.
            double[] sizes = [sheet.Paper.SmallSize, (sheet.Paper.SmallSize + BreakdownPaper.LeastSize) / 2, BreakdownPaper.LeastSize];
            foreach ((FigurePlaces places, double size) in s_places.SelectMany(p => sizes.Select(s => (p, s))))
            {
                placed = Before(cut, at, from, to, size, places).Select(Taken).FirstOrDefault(t => t is not null);
                if (placed is not null) break;
            }
            if (placed is { Items: [_] }) WithoutArrow++;
            if (placed is not null) _placed.Add(placed);
            else _dropped.Add(cut);
        }
    }

    // On waste the paper is laid under it: a figure crossed by hatching cannot be read.
    private GroupItem? Taken(RunningFigure figure)
        => sheet.CellOf(figure.Ink) is { } cell && sheet.Book.TryTake(figure.Ink, cell) ? figure.Draw(sheet.Waste.Contains(cell)) : null;

    /// <summary>Places of the figure of a cut.</summary>
    public static IEnumerable<RunningFigure> Before(InnerCut cut, double at, double from, double to, double size, FigurePlaces places) =>
        cut.Axis == SheetAxis.Across ? BeforeUpright(cut.Figure, at, from, to, size, places) : BeforeLevel(cut.Figure, at, from, to, size, places);

    /// <summary>Places of the figure of an upright cut: before it, its arrow between figure and cut, or turned with the arrow at its end.</summary>
    private static IEnumerable<RunningFigure> BeforeUpright(Phrase figure, double x, double top, double bottom, double size, FigurePlaces places)
    {
        double arrow = places == FigurePlaces.WithoutArrow ? 0 : RunningFigure.ArrowLength;
        double up = TextMeasure.Ascent * size, middle = TextMeasure.Middle * size, beyond = arrow > 0 ? Beyond : 0.8, tip = x - FromLine, tail = tip - arrow, turned = x - 0.8 - (0.1 * size);
        RunningFigure Level(double baseline) => new(new(new(tail - Apart, baseline), figure, size, Anchor.End, Ink.Soft), new(tail, baseline - middle), new(tip, baseline - middle));
        RunningFigure Turned(double y, Anchor anchor, double level) => new(new(new(turned, y), figure, size, anchor, Ink.Soft, 90), new(tail, level), new(tip, level));
        if (places == FigurePlaces.Between) return s_between.Select(share => Level(top + ((bottom - top) * share) + middle));
        return [Level(bottom - 0.9), Level(top + up + 0.6), Turned(bottom - beyond, Anchor.Start, bottom - 1.1), Turned(top + beyond, Anchor.End, top + 1.1)];
    }

    /// <summary>Places of the figure of a level cut: over it at an end or between, with the arrow after or before the figure, or turned with the arrow under it.</summary>
    private static IEnumerable<RunningFigure> BeforeLevel(Phrase figure, double y, double left, double right, double size, FigurePlaces places)
    {
        double arrow = places == FigurePlaces.WithoutArrow ? 0 : RunningFigure.ArrowLength;
        double up = TextMeasure.Ascent * size, middle = TextMeasure.Middle * size, beyond = arrow > 0 ? Beyond : 0.8, tip = y - FromLine, tail = tip - arrow;
        RunningFigure Level(double x, Anchor anchor, double upright) => new(new(new(x, y - 0.9), figure, size, anchor, Ink.Soft), new(upright, tail), new(upright, tip));
        RunningFigure Turned(double x) => new(new(new(x, tail - Apart), figure, size, Anchor.Start, Ink.Soft, 90), new(x - middle, tail), new(x - middle, tip));
        RunningFigure Over(double x) => new(new(new(x, tail - Apart), figure, size, Anchor.Middle, Ink.Soft), new(x, tail), new(x, tip));
        // In a short cell the figure stands over its arrow.
        double half = (TextMeasure.Width(figure, size) / 2) + 0.6;
        if (places == FigurePlaces.Between) return [Over(right - half), Over(left + half), Over((left + right) / 2)];
        // Where a shorter part lies at the cut its ends are taken: somewhere between.
        return [Level(right - beyond, Anchor.End, right - 1.1), Level(left + beyond, Anchor.Start, left + 1.1),
            .. s_along.Select(share => left + ((right - left) * share)).Select(x => Level(x, Anchor.End, x + 1.1)),
            Turned(right - (0.1 * size) - 0.6), Turned(left + up + 0.6)];
    }
}

/// <summary>Where a running figure may stand.</summary>
internal enum FigurePlaces
{
    /// <summary>At the ends of its cut, with its arrow.</summary>
    Usual,

    /// <summary>Away from them, where both are taken.</summary>
    Between,

    /// <summary>At the ends, without its arrow: at last.</summary>
    WithoutArrow,
}
