using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>
/// The marking-out drawing of one sheet: running dimensions from the reference edge, a short mark in each part, first cuts lettered in sawing
/// order, grain as fine lines, waste hatched, what to keep named. Sizes of parts stand elsewhere, on purpose.
/// </summary>
public static class SheetDrawing
{
    private const double Margin = 2, Overshoot = 3.5, HeaderSize = 4.8, SoftSize = 3.2;

    /// <summary>Draws. The sheet fills the width of the paper, or its height where that is less; the scene is as high as it needs.</summary>
    /// <exception cref="ArgumentException">The sheet has no extent.</exception>
    public static Scene Draw(SheetInput input, BreakdownPaper paper) => DrawOnBest(input, [paper]);

    /// <summary>
    /// Draws on the first paper on which every figure and word finds room in the drawing and every mark in its part and every arrow beside its figure; where there is none, on the one that leaves
    /// out least, and of those on the one with the fewest marks outside and arrows missing. A width other than the first is used for what is left out alone.
    /// </summary>
    /// <param name="input">The sheet.</param>
    /// <param name="papers">In the order in which they are liked; at least one.</param>
    /// <exception cref="ArgumentException">The sheet has no extent, or there is no paper.</exception>
    public static Scene DrawOnBest(SheetInput input, ImmutableArray<BreakdownPaper> papers)
    {
        if (papers.IsDefaultOrEmpty) throw new ArgumentException("A drawing needs paper.", nameof(papers));
        Drawn best = On(input, papers[0]);
        foreach (BreakdownPaper paper in papers.Skip(1))
        {
            bool isUsual = paper.Width == papers[0].Width;
            if (best.LeftOut == 0 && (best.Cramped == 0 || !isUsual)) continue;
            Drawn next = On(input, paper);
            if (next.LeftOut < best.LeftOut || (isUsual && next.LeftOut == best.LeftOut && next.Cramped < best.Cramped)) best = next;
        }
        return best.Scene;
    }

    private readonly record struct Drawn(Scene Scene, int LeftOut, int Cramped);

    private static Drawn On(SheetInput input, BreakdownPaper paper)
    {
        if (input.Along.Sign <= 0 || input.Across.Sign <= 0) throw new ArgumentException("The sheet has no extent.", nameof(input));
        double along = input.Along.ApproximateMillimetres, across = input.Across.ApproximateMillimetres;
        ImmutableArray<PrimaryCut> alongCuts = [.. input.PrimaryCuts.Where(c => c.Axis == SheetAxis.Along)];
        ImmutableArray<PrimaryCut> acrossCuts = [.. input.PrimaryCuts.Where(c => c.Axis == SheetAxis.Across)];
        double FigureWidth(IEnumerable<PrimaryCut> cuts) => cuts.Select(c => TextMeasure.Width(c.Figure, paper.FigureSize)).DefaultIfEmpty(0).Max();
        double left = Margin + Math.Max(FigureWidth(alongCuts), 4) + Overshoot + 3;
        double beside = alongCuts.Select(c => TextMeasure.Width(Phrase.Of(c.Letter).Bold(), paper.MarkSize))
            .Concat(input.Strips.Where(s => s.Axis == SheetAxis.Along).Select(s => TextMeasure.Width(Phrase.Of(s.Name), paper.SmallSize))).DefaultIfEmpty(0).Max();
        double right = Margin + Overshoot + 2 + beside;
        double content = paper.Width - (2 * Margin);

        var header = new HeaderBlock(input.HeaderLeft, input.HeaderNote, input.HeaderRight, HeaderSize, SoftSize, content);
        ImmutableArray<Phrase> note = TextMeasure.Wrap(input.ReferenceNote, SoftSize, paper.Width - left - right);
        double noteHeight = note.Length * SoftSize * 1.3;
        // Cuts square to the edge carry their letters and figures over the sheet, the cuts along it beside.
        // Where no cut has its figure over the sheet, the 0 of the end stands under it.
        double underZero = acrossCuts.Any(InnerLetters.HasEdgeFigure) ? 0 : 1.6;
        double overHeight = acrossCuts.IsEmpty ? 0 : (paper.MarkSize * 1.3) + (paper.FigureSize * 2.2);
        double top = Margin + header.Height + noteHeight + overHeight + 2;
        ImmutableArray<Phrase> footer = TextMeasure.Wrap(input.Footer, SoftSize, content);
        var key = new DrawingKey(SheetBody.Key(input), SoftSize, content);
        double under = key.Height + (footer.Length * SoftSize * 1.35) + (footer.IsEmpty ? 0 : 3) + Margin + 2 + underZero;
        double scale = Math.Min((paper.Width - left - right) / along, Math.Max(20, paper.Height - top - under) / across);
        var view = new SheetView(scale, left, top);
        Box sheet = view.Of(new(Length.Zero, Length.Zero, input.Along, input.Across));

        var body = new SheetBody(input, paper, view, sheet);
        var items = new List<SceneItem>();
        items.AddRange(header.Draw(Margin, Margin));
        for (int i = 0; i < note.Length; i++)
            items.Add(new TextItem(new(sheet.Left, Margin + header.Height + (SoftSize * (0.9 + (i * 1.3)))), note[i], SoftSize, Anchor.Start, Ink.Soft));
        items.AddRange(body.Draw());
        items.AddRange(SheetEdges.Draw(input, paper, view, sheet, Overshoot));
        items.AddRange(body.DrawOrigins());
        // Cuts across run a little past the far edge.
        double y = Math.Max(sheet.Bottom, body.Lowest) + 3 + underZero;
        items.AddRange(key.Draw(Margin, y));
        y += key.Height;
        foreach (Phrase line in body.LeftOver(content, SoftSize).Concat(footer))
        {
            y += SoftSize * 1.35;
            items.Add(new TextItem(new(Margin, y), line, SoftSize, Anchor.Start, Ink.Soft));
        }
        return new(new(paper.Width, y + Margin + 1, input.Title, input.Description, [.. items]), body.LeftOut, body.Cramped);
    }
}

/// <summary>Takes sheet lengths to the paper.</summary>
internal readonly record struct SheetView(double Scale, double Left, double Top)
{
    public double X(Length x) => Left + (x.ApproximateMillimetres * Scale);

    public double Y(Length y) => Top + (y.ApproximateMillimetres * Scale);

    public Box Of(SheetRect r) => new(X(r.X), Y(r.Y), X(r.Right), Y(r.Bottom));
}
