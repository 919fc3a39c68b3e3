using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>The first cuts with their letters, and the running dimensions at the edges of the sheet. Where cuts are close their figures spread and a short line leads to each.</summary>
internal static class SheetEdges
{
    public static IEnumerable<SceneItem> Draw(SheetInput input, BreakdownPaper paper, SheetView view, Box sheet, double overshoot)
    {
        foreach (SceneItem item in Along(input, paper, view, sheet, overshoot)) yield return item;
        foreach (SceneItem item in Across(input, paper, view, sheet, overshoot)) yield return item;
    }

    private static IEnumerable<SceneItem> Along(SheetInput input, BreakdownPaper paper, SheetView view, Box sheet, double overshoot)
    {
        PrimaryCut[] cuts = [.. input.PrimaryCuts.Where(c => c.Axis == SheetAxis.Along).OrderBy(c => c.At)];
        // Many narrow strips: figures and letters shrink so that all stand beside the sheet.
        double room = sheet.Height + paper.FigureSize;
        double size = Math.Clamp((room / (cuts.Length + 1) / 1.02) - 0.5, BreakdownPaper.LeastSize, paper.FigureSize);
        double letterSize = Math.Clamp((room / Math.Max(1, cuts.Length) / 0.9) - 0.4, BreakdownPaper.LeastSize, paper.MarkSize);
        double drop = TextMeasure.CapHeight / 2 * size, letterDrop = TextMeasure.CapHeight / 2 * letterSize;
        double low = sheet.Top - (paper.FigureSize * 0.55), high = sheet.Bottom + (paper.FigureSize * 0.55);
        double[] wanted = [sheet.Top, .. cuts.Select(c => view.Y(c.At))];
        double[] figures = Spread.Along(wanted, [.. wanted.Select(_ => size * 1.02)], 0.5, low, high);
        double[] letters = Spread.Along([.. wanted.Skip(1)], [.. cuts.Select(_ => letterSize * 0.9)], 0.4, low, high);
        double start = sheet.Left - overshoot, far = sheet.Right + overshoot;
        yield return new TextItem(new(start - 1.6, figures[0] + drop), Phrase.Of("0"), size, Anchor.End, Ink.Dimension);
        for (int i = 0; i < cuts.Length; i++)
        {
            double y = wanted[i + 1];
            double from = cuts[i].From is { } f ? view.X(f) : start, to = cuts[i].To is { } t ? view.X(t) : far;
            bool reachesLeft = cuts[i].From is null, reachesRight = cuts[i].To is null;
            var items = new List<SceneItem> { new LineItem(new(from, y), new(to, y), Ink.Pencil) };
            // A cut that stops short of an edge is led to it in a thin line, so that its figure is still read at the edge.
            if (!reachesLeft) items.Add(new LineItem(new(start, y), new(from, y), Ink.Dimension));
            if (Math.Abs(figures[i + 1] - y) > 0.3) items.Add(new LineItem(new(start - 1.3, figures[i + 1]), new(start, y), Ink.Dimension));
            double edge = reachesRight ? far : to;
            if (Math.Abs(letters[i] - y) > 0.3) items.Add(new LineItem(new(edge, y), new(edge + 1.3, letters[i]), Ink.Pencil));
            items.Add(new TextItem(new(start - 1.6, figures[i + 1] + drop), cuts[i].Figure, size, Anchor.End, Ink.Dimension));
            items.Add(new TextItem(new(edge + 1.7, letters[i] + letterDrop - (0.06 * letterSize)), Phrase.Of(cuts[i].Letter).Bold(), letterSize, Anchor.Start, Ink.Pencil, 0, !reachesRight));
            yield return new GroupItem("", Words(cuts[i]), [.. items]);
        }
    }

    private static IEnumerable<SceneItem> Across(SheetInput input, BreakdownPaper paper, SheetView view, Box sheet, double overshoot)
    {
        PrimaryCut[] cuts = [.. input.PrimaryCuts.Where(c => c.Axis == SheetAxis.Across).OrderBy(c => c.At)];
        double size = paper.FigureSize;
        double[] wanted = [.. cuts.Select(c => view.X(c.At))];
        double[] figures = Spread.Along(wanted, [.. cuts.Select(c => TextMeasure.Width(c.Figure, size))], 1.2);
        double[] letters = Spread.Along(wanted, [.. cuts.Select(c => TextMeasure.Width(Phrase.Of(c.Letter).Bold(), paper.MarkSize))], 1.2);
        double start = sheet.Top - overshoot, figureBase = start - 1.6, letterBase = figureBase - (size * 1.1);
        for (int i = 0; i < cuts.Length; i++)
        {
            double x = wanted[i];
            double from = cuts[i].From is { } f ? view.Y(f) : start, to = cuts[i].To is { } t ? view.Y(t) : sheet.Bottom + 2;
            var items = new List<SceneItem> { new LineItem(new(x, from), new(x, to), Ink.Pencil) };
            if (cuts[i].From is not null) items.Add(new LineItem(new(x, start), new(x, from), Ink.Dimension));
            if (Math.Abs(figures[i] - x) > 0.3) items.Add(new LineItem(new(x, start), new(figures[i], start - 1.2), Ink.Dimension));
            items.Add(new TextItem(new(figures[i], figureBase), cuts[i].Figure, size, Anchor.Middle, Ink.Dimension));
            items.Add(new TextItem(new(letters[i], letterBase), Phrase.Of(cuts[i].Letter).Bold(), paper.MarkSize, Anchor.Middle, Ink.Pencil));
            yield return new GroupItem("", Words(cuts[i]), [.. items]);
        }
    }

    private static string Words(PrimaryCut cut) => $"cut {cut.Letter} at {cut.Figure.PlainText}";
}
