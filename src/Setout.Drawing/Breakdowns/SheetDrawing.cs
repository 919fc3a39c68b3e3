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
    public static Scene Draw(SheetInput input, BreakdownPaper paper)
    {
        if (input.Along.Sign <= 0 || input.Across.Sign <= 0) throw new ArgumentException("The sheet has no extent.", nameof(input));
        double along = input.Along.ApproximateMillimetres, across = input.Across.ApproximateMillimetres;
        ImmutableArray<PrimaryCut> alongCuts = [.. input.PrimaryCuts.Where(c => c.Axis == SheetAxis.Along)];
        ImmutableArray<PrimaryCut> acrossCuts = [.. input.PrimaryCuts.Where(c => c.Axis == SheetAxis.Across)];
        double FigureWidth(IEnumerable<PrimaryCut> cuts) => cuts.Select(c => TextMeasure.Width(c.Figure, paper.FigureSize)).DefaultIfEmpty(0).Max();
        double left = Margin + Math.Max(FigureWidth(alongCuts), 4) + Overshoot + 3;
        double right = Margin + Overshoot + (alongCuts.IsEmpty ? 2 : 2 + alongCuts.Max(c => TextMeasure.Width(Phrase.Of(c.Letter).Bold(), paper.MarkSize)));
        double content = paper.Width - (2 * Margin);

        var header = new HeaderBlock(input.HeaderLeft, input.HeaderNote, input.HeaderRight, HeaderSize, SoftSize, content);
        ImmutableArray<Phrase> note = TextMeasure.Wrap(input.ReferenceNote, SoftSize, paper.Width - left - right);
        double noteHeight = note.Length * SoftSize * 1.3;
        // Cuts square to the edge carry their letters and figures over the sheet, the cuts along it beside.
        double overHeight = acrossCuts.IsEmpty ? 0 : (paper.MarkSize * 1.3) + (paper.FigureSize * 2.2);
        double top = Margin + header.Height + noteHeight + overHeight + 2;
        ImmutableArray<Phrase> footer = TextMeasure.Wrap(input.Footer, SoftSize, content);
        double under = (footer.Length * SoftSize * 1.35) + (footer.IsEmpty ? 0 : 3) + Margin + 2;
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
        double y = Math.Max(sheet.Bottom, body.Lowest) + 3;
        foreach (Phrase line in body.LeftOver(content, SoftSize).Concat(footer))
        {
            y += SoftSize * 1.35;
            items.Add(new TextItem(new(Margin, y), line, SoftSize, Anchor.Start, Ink.Soft));
        }
        return new(paper.Width, y + Margin + 1, input.Title, input.Description, [.. items]);
    }
}

/// <summary>Takes sheet lengths to the paper.</summary>
internal readonly record struct SheetView(double Scale, double Left, double Top)
{
    public double X(Length x) => Left + (x.ApproximateMillimetres * Scale);

    public double Y(Length y) => Top + (y.ApproximateMillimetres * Scale);

    public Box Of(SheetRect r) => new(X(r.X), Y(r.Y), X(r.Right), Y(r.Bottom));
}
