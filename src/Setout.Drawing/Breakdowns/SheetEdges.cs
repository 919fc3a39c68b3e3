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
        PrimaryCut[] figured = [.. cuts.Where(InnerLetters.HasEdgeFigure)], lettered = [.. cuts.Where(InnerLetters.HasEdgeLetter)];
        // Many narrow strips: figures and letters shrink so that all stand beside the sheet.
        double room = sheet.Height + paper.FigureSize;
        double size = Math.Clamp((room / (figured.Length + 1) / 1.02) - 0.5, BreakdownPaper.LeastSize, paper.FigureSize);
        double letterSize = Math.Clamp((room / Math.Max(1, lettered.Length) / 0.9) - 0.4, BreakdownPaper.LeastSize, paper.MarkSize);
        double drop = TextMeasure.Middle * size, letterDrop = TextMeasure.Middle * letterSize;
        double low = sheet.Top - (paper.FigureSize * 0.55), high = sheet.Bottom + (paper.FigureSize * 0.55);
        double[] wanted = [sheet.Top, .. figured.Select(c => view.Y(c.At))];
        double[] figures = Spread.Along(wanted, [.. wanted.Select(_ => size * 1.02)], 0.5, low, high);
        double[] letters = Spread.Along([.. lettered.Select(c => view.Y(c.At))], [.. lettered.Select(_ => letterSize * 0.9)], 0.4, low, high);
        double start = sheet.Left - overshoot, far = sheet.Right + overshoot;
        yield return new TextItem(new(start - 1.6, figures[0] + drop), Phrase.Of("0"), size, Anchor.End, Ink.Dimension);
        foreach (PrimaryCut cut in cuts)
        {
            double y = view.Y(cut.At);
            List<SceneItem> items = [new LineItem(new(cut.From is { } f ? view.X(f) : start, y), new(cut.To is { } t ? view.X(t) : far, y), InkOf(cut))];
            if (Array.IndexOf(figured, cut) is >= 0 and int n)
            {
                double at = figures[n + 1];
                if (Math.Abs(at - y) > 0.3) items.Add(new LineItem(new(start - 1.3, at), new(start, y), Ink.Dimension));
                items.Add(new TextItem(new(start - 1.6, at + drop), cut.Figure, size, Anchor.End, Ink.Dimension));
            }
            if (Array.IndexOf(lettered, cut) is >= 0 and int m)
            {
                double at = letters[m];
                if (Math.Abs(at - y) > 0.3) items.Add(new LineItem(new(far, y), new(far + 1.3, at), Ink.Pencil));
                items.Add(new TextItem(new(far + 1.7, at + letterDrop - (0.06 * letterSize)), Phrase.Of(cut.Letter).Bold(), letterSize, Anchor.Start, Ink.Pencil));
            }
            yield return new GroupItem("", Words(cut), [.. items]);
        }
        // A name stands beside the middle of its strip, where no letter stands.
        foreach (StripName strip in input.Strips.Where(s => s.Axis == SheetAxis.Along))
        {
            double y = (view.Y(strip.From) + view.Y(strip.To)) / 2;
            if (letters.Any(l => Math.Abs(l - y) < (letterSize + paper.SmallSize) / 2)) continue;
            yield return Name(strip, new(far + 1.7, y + (TextMeasure.Middle * paper.SmallSize)), paper.SmallSize, Anchor.Start);
        }
    }

    private static GroupItem Name(StripName strip, Point at, double size, Anchor anchor) =>
        new("", $"strip {strip.Name}", [new TextItem(at, Phrase.Of(strip.Name), size, anchor, Ink.Pencil)]);

    private static IEnumerable<SceneItem> Across(SheetInput input, BreakdownPaper paper, SheetView view, Box sheet, double overshoot)
    {
        PrimaryCut[] cuts = [.. input.PrimaryCuts.Where(c => c.Axis == SheetAxis.Across).OrderBy(c => c.At)];
        PrimaryCut[] edged = [.. cuts.Where(InnerLetters.HasEdgeFigure)];
        double size = paper.FigureSize;
        double[] wanted = [.. edged.Select(c => view.X(c.At))];
        // The 0 of the end keeps its place over the corner.
        double zero = TextMeasure.Width(Phrase.Of("0"), size);
        double[] figures = Spread.Along(wanted, [.. edged.Select(c => TextMeasure.Width(c.Figure, size))], 1.2, sheet.Left + (zero / 2) + 1.2, sheet.Right);
        double[] letters = Spread.Along(wanted, [.. edged.Select(c => TextMeasure.Width(Phrase.Of(c.Letter).Bold(), paper.MarkSize))], 1.2, sheet.Left, sheet.Right);
        double start = sheet.Top - overshoot, figureBase = start - 1.6, letterBase = figureBase - (size * 1.1);
        yield return edged.Length > 0 ? EndZero(new(sheet.Left, start), new(sheet.Left, sheet.Top - 0.5), figureBase, size) : EndZero(new(sheet.Left, sheet.Bottom + 0.5), new(sheet.Left, sheet.Bottom + 1.4), sheet.Bottom + 1.8 + (TextMeasure.Ascent * paper.SmallSize), paper.SmallSize);
        foreach (PrimaryCut cut in cuts)
        {
            double x = view.X(cut.At);
            List<SceneItem> items = [new LineItem(new(x, cut.From is { } f ? view.Y(f) : start), new(x, cut.To is { } t ? view.Y(t) : sheet.Bottom + 2), InkOf(cut))];
            if (Array.IndexOf(edged, cut) is >= 0 and int n)
            {
                if (Math.Abs(figures[n] - x) > 0.3) items.Add(new LineItem(new(x, start), new(figures[n], start - 1.2), Ink.Dimension));
                items.Add(new TextItem(new(figures[n], figureBase), cut.Figure, size, Anchor.Middle, Ink.Dimension));
                if (cut.Letter.Length > 0) items.Add(new TextItem(new(letters[n], letterBase), Phrase.Of(cut.Letter).Bold(), paper.MarkSize, Anchor.Middle, Ink.Pencil));
            }
            yield return new GroupItem("", Words(cut), [.. items]);
        }
        if (edged.Length == 0) yield break;
        foreach (StripName strip in input.Strips.Where(s => s.Axis == SheetAxis.Across))
        {
            double x = (view.X(strip.From) + view.X(strip.To)) / 2, half = TextMeasure.Width(Phrase.Of(strip.Name), paper.SmallSize) / 2;
            if (edged.Select((c, n) => (At: letters[n], Half: TextMeasure.Width(Phrase.Of(c.Letter).Bold(), paper.MarkSize) / 2)).Any(l => Math.Abs(l.At - x) < l.Half + half + 1)) continue;
            yield return Name(strip, new(x, letterBase), paper.SmallSize, Anchor.Middle);
        }
    }

    // The end that figures along the sheet run from.
    private static GroupItem EndZero(Point from, Point to, double baseline, double size) =>
        new("", "end 0", [new LineItem(from, to, Ink.Dimension), new TextItem(new(from.X, baseline), Phrase.Of("0"), size, Anchor.Middle, Ink.Dimension)]);

    private static Ink InkOf(PrimaryCut cut) => cut.IsWaiting ? Ink.Hidden : Ink.Pencil;

    private static string Words(PrimaryCut cut) => cut.Letter.Length == 0 ? $"later cut at {cut.Figure.PlainText}" : $"cut {cut.Letter} at {cut.Figure.PlainText}";
}
