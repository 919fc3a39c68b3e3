using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>A small ring on each edge that small figures run from, with a short line the way they run.</summary>
internal sealed class OriginMarks(SheetGround sheet)
{
    private const double Radius = 0.85, Stub = 1.6, FromEnd = 1.95;
    private const int Corners = 16;
    private readonly List<SceneItem> _placed = [];

    /// <summary>One for every edge that figures run from.</summary>
    public IReadOnlyList<SceneItem> Placed => _placed;

    /// <summary>
    /// Takes the paper of every ring before any other label: a figure without its origin says nothing. Each strip has its own, at the end of its
    /// edge where the figures stand.
    /// </summary>
    public void Place()
    {
        foreach ((SheetAxis axis, Core.Measures.Length origin, Core.Measures.Length from, Core.Measures.Length to) in
            sheet.Input.InnerCuts.Where(c => !c.Figure.IsEmpty).Select(c => (c.Axis, c.Origin, c.From, c.To)).Distinct())
        {
            bool isAcross = axis == SheetAxis.Across;
            double at = isAcross ? sheet.View.X(origin) : sheet.View.Y(origin);
            double begin = isAcross ? sheet.View.Y(from) : sheet.View.X(from), end = isAcross ? sheet.View.Y(to) : sheet.View.X(to);
            double middle = (begin + end) / 2, radius = Math.Clamp(((end - begin) / 2) - 0.3, 0.35, Radius);
            double[] spots = end - begin < 2 * FromEnd ? [middle] : [end - FromEnd, begin + FromEnd, middle];
            ImmutableArray<(Point At, Box Ink)> tries = [.. spots.Select(s => isAcross
                ? (new Point(at, s), new Box(at - radius, s - radius, at + radius + Stub, s + radius))
                : (new Point(s, at), new Box(s - radius, at - radius, s + radius, at + radius + Stub)))];
            (Point place, Box ink) = tries.Append(tries[0]).Where((t, i) => i == tries.Length || !sheet.Book.TakenNear(t.Ink).Any(t.Ink.Overlaps)).First();
            sheet.Book.Take(ink);
            _placed.Add(new GroupItem("", "figures run from here", Mark(place, radius, isAcross)));
        }
    }

    /// <summary>The ring with its line, to the right or down.</summary>
    public static ImmutableArray<SceneItem> Mark(Point at, double radius, bool toTheRight)
    {
        Point root = toTheRight ? new(at.X + radius, at.Y) : new(at.X, at.Y + radius), end = toTheRight ? new(root.X + Stub, root.Y) : new(root.X, root.Y + Stub);
        return [new LineItem(root, end, Ink.Dimension), Strokes.Ring(at, radius, Corners, Ink.Dimension, Wash.Paper)];
    }
}
