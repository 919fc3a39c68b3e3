using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Fits;

/// <summary>
/// One gap as a gauge: blank paper between two uprights, hatching outside, and in it where the gap stands, how far it may go at the worst
/// and where it likely lies. What likely lies outside is a zigzag in red pencil, so that it is told by its shape too.
/// </summary>
internal sealed class GapGauge
{
    private const double FigureRoom = 1.3, AboveLine = 3, BetweenLines = 4.9, BelowLine = 2.7, ThickHalf = 0.4;
    private readonly GapRow _row;
    private readonly GapPaper _paper;
    private readonly double _left, _right, _scale, _middle;
    private readonly RuleEdge _rule;

    /// <summary>A gauge between two places across the paper.</summary>
    /// <param name="row">The gap.</param>
    /// <param name="paper">Sizes.</param>
    /// <param name="left">Where the hatching begins.</param>
    /// <param name="right">Where it ends.</param>
    /// <param name="scale">Paper millimetres for one of wood.</param>
    /// <param name="rule">The strokes under it.</param>
    public GapGauge(GapRow row, GapPaper paper, double left, double right, double scale, RuleEdge rule)
    {
        (_row, _paper, _left, _right, _scale, _rule) = (row, paper, left, right, scale, rule);
        _middle = MiddleOf(row);
    }

    /// <summary>How far a row reaches from the middle of its window, in millimetres of wood.</summary>
    public static double Reach(GapRow row) => new[] { row.Now.Low, row.Now.High, row.Most }.Max(l => Math.Abs(l.At.ApproximateMillimetres - MiddleOf(row)));

    /// <summary>Whether nought is worth a figure of its own: it can be seen and is neither end of the window.</summary>
    private bool ShowsNought => _row.Least.At.Sign != 0 && _row.Most.At.Sign != 0 && X(ExactLength.Zero) > _left + 1 && X(ExactLength.Zero) < _right - 1;

    /// <summary>From the top of the figures to the baseline of the first line's words.</summary>
    public double FirstBaseline => JawTop + AboveLine + (TextMeasure.Middle * _paper.TextSize);

    /// <summary>From line to line.</summary>
    public static double LineStep => BetweenLines;

    /// <summary>All of it.</summary>
    public double Height => JawTop + JawHeight + RuleEdge.Longest + (ShowsNought ? _paper.SmallSize : 0);

    private double JawTop => (_paper.SmallSize * TextMeasure.Ascent) + FigureRoom;

    private double JawHeight => AboveLine + (_row.Then is null ? 0 : BetweenLines) + BelowLine;

    /// <summary>Draws it.</summary>
    /// <param name="top">Where the figures begin.</param>
    public IEnumerable<SceneItem> Draw(double top)
    {
        double jaws = top + JawTop, bottom = jaws + JawHeight, least = X(_row.Least.At), most = X(_row.Most.At);
        if (least > _left) yield return new HatchItem(new(_left, jaws), least - _left, bottom - jaws);
        if (most < _right) yield return new HatchItem(new(most, jaws), _right - most, bottom - jaws);
        double line = jaws + AboveLine;
        foreach (SceneItem item in Ground(_row.Now, line).Concat(_row.Then is { } ground ? Ground(ground, line + BetweenLines) : [])) yield return item;
        foreach (SceneItem item in Strokes(bottom)) yield return item;
        foreach (double upright in new[] { least, most }) yield return new LineItem(new(upright, jaws - 0.6), new(upright, bottom), Ink.Outline);
        foreach (SceneItem item in Line(_row.Now, line).Concat(Stands(line))) yield return item;
        if (_row.Then is { } then) foreach (SceneItem item in Line(then, line + BetweenLines)) yield return item;
        foreach (SceneItem item in Figures(jaws - FigureRoom)) yield return item;
    }

    /// <summary>A slot of blank paper through the hatching where it likely lies, so that a zigzag is clear.</summary>
    private IEnumerable<SceneItem> Ground(GapReach reach, double y)
    {
        const double Half = 1.5, More = 0.7;
        (double from, double to) = Likely(reach);
        double low = Math.Max(_left, from - More), high = Math.Min(_right, to + More);
        yield return ShapeItem.Rectangle(low, y - Half, high - low, 2 * Half, null, Wash.Paper);
    }

    /// <summary>Where it likely lies, no further than the worst case, on the paper.</summary>
    private (double From, double To) Likely(GapReach reach)
    {
        double half = reach.Likely.Millimetres.Value * _scale, middle = X(reach.Middle);
        return (Kept(Math.Max(X(reach.Low.At), middle - half)), Kept(Math.Min(X(reach.High.At), middle + half)));
    }

    private IEnumerable<SceneItem> Line(GapReach reach, double y)
    {
        const double End = 1.2;
        double low = X(reach.Low.At), high = X(reach.High.At);
        yield return new LineItem(new(Kept(low), y), new(Kept(high), y), Ink.Part);
        foreach ((double at, int away) in new[] { (low, -1), (high, 1) })
        {
            if (at >= _left && at <= _right)
            {
                yield return new LineItem(new(at, y - End), new(at, y + End), Ink.Part);
                continue;
            }
            // It goes on beyond the paper: an arrow head instead of an end.
            foreach (int side in new[] { -1, 1 }) yield return new LineItem(new(Kept(at), y), new(Kept(at) - (away * 1.6), y + (side * End)), Ink.Part);
        }
        (double from, double to) = Likely(reach);
        double least = X(_row.Least.At), most = X(_row.Most.At);
        // A stroke of the heaviest ink is not heavy enough beside the uprights: three side by side are.
        if (Math.Min(to, most) > Math.Max(from, least))
            foreach (double off in new[] { -ThickHalf, 0, ThickHalf }) yield return new LineItem(new(Math.Max(from, least), y + off), new(Math.Min(to, most), y + off), Ink.Outline);
        foreach (SceneItem item in Zigzag(from, Math.Min(to, least), y).Concat(Zigzag(Math.Max(from, most), to, y))) yield return item;
    }

    /// <summary>Where it stands: a stroke across its line, ringed in red pencil where that is outside.</summary>
    private IEnumerable<SceneItem> Stands(double y)
    {
        const double Tick = 2.3, Ring = 2.9;
        const int Corners = 20;
        double at = X(_row.Stands);
        if (at < _left || at > _right) yield break;
        yield return new LineItem(new(at, y - Tick), new(at, y + Tick), Ink.Outline);
        if (_row.Stands >= _row.Least.At && _row.Stands <= _row.Most.At) yield break;
        yield return Scenes.Strokes.Ring(new(at, y), Ring, Corners, Ink.Pencil, Wash.None);
    }

    private static IEnumerable<SceneItem> Zigzag(double from, double to, double y)
    {
        const double Half = 0.95, Pitch = 0.95;
        if (to - from < 0.3) yield break;
        int strokes = Math.Max(2, (int)Math.Round((to - from) / Pitch));
        double step = (to - from) / strokes;
        double At(int i) => i == 0 || i == strokes ? y : y + (i % 2 == 0 ? Half : -Half);
        for (int i = 0; i < strokes; i++) yield return new LineItem(new(from + (i * step), At(i)), new(from + ((i + 1) * step), At(i + 1)), Ink.Pencil);
    }

    private IEnumerable<SceneItem> Strokes(double y)
    {
        double step = _rule.Step.ApproximateMillimetres;
        yield return new LineItem(new(_left, y), new(_right, y), Ink.Dimension);
        for (long i = (long)Math.Ceiling(Wood(_left) / step); i * step <= Wood(_right); i++)
        {
            double x = X(i * step);
            yield return new LineItem(new(x, y), new(x, y + _rule.Stroke(i)), Ink.Dimension);
        }
        if (ShowsNought) yield return new TextItem(new(X(ExactLength.Zero), y + RuleEdge.Longest + (TextMeasure.CapHeight * _paper.SmallSize) + 0.4), Phrase.Of("0"), _paper.SmallSize, Anchor.Middle, Ink.Soft);
    }

    /// <summary>The ends of the window always; the worst case where there is room beside them.</summary>
    private IEnumerable<SceneItem> Figures(double y)
    {
        const double Apart = 1.6, MostMoved = 5, MostMovedEnd = 1.2;
        List<(GapLimit Limit, bool IsEnd)> ends = [(_row.Least, true), (_row.Most, true)];
        foreach (GapLimit worst in new[] { _row.Now.Low, _row.Now.High })
            if (worst.At != _row.Least.At && worst.At != _row.Most.At) ends.Add((worst, false));
        while (true)
        {
            ends.Sort((a, b) => a.Limit.At.CompareTo(b.Limit.At));
            double[] wanted = [.. ends.Select(e => Kept(X(e.Limit.At)))];
            double[] middles = Spread.Along(wanted, [.. ends.Select(e => TextMeasure.Width(Said(e), _paper.SmallSize))], Apart, _left, _right);
            // A figure pushed away from its line says something else: the worst case gives way, both ends of it.
            if (ends.Count > 2 && ends.Where((e, i) => Math.Abs(middles[i] - wanted[i]) > (e.IsEnd ? MostMovedEnd : MostMoved)).Any())
            {
                ends.RemoveAll(e => !e.IsEnd);
                continue;
            }
            foreach (((GapLimit Limit, bool IsEnd) end, double middle) in ends.Zip(middles))
                yield return new TextItem(new(middle, y), Said(end), _paper.SmallSize, Anchor.Middle, end.IsEnd ? Ink.Dimension : Ink.Soft);
            yield break;
        }
    }

    private static Phrase Said((GapLimit Limit, bool IsEnd) end) => end.IsEnd ? end.Limit.Figure.Bold() : end.Limit.Figure;

    private static double MiddleOf(GapRow row) => (row.Least.At.ApproximateMillimetres + row.Most.At.ApproximateMillimetres) / 2;

    private double X(ExactLength at) => X(at.ApproximateMillimetres);

    private double X(double wood) => ((_left + _right) / 2) + ((wood - _middle) * _scale);

    private double Wood(double x) => _middle + ((x - ((_left + _right) / 2)) / _scale);

    private double Kept(double x) => Math.Clamp(x, _left, _right);
}
