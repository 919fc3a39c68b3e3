using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Setting;

/// <summary>Sets a written sum: labels with their origin at the left, figures flush right under each other, signs in a column of their own.</summary>
internal static class WorkingSetter
{
    private const double Widest = 125, Between = 6, SignGap = 2.2;

    public static List<Strip> Set(Setter setter, WorkingBlock working)
    {
        double width = Math.Min(setter.Width, Widest);
        int element = setter.Element(ElementKind.Paragraph, setter.Parent);
        double sign = Math.Max(TextMeasure.Width(Phrase.Of("+"), SheetStyle.Figure), TextMeasure.Width(Phrase.Of(TextMeasure.Minus), SheetStyle.Figure));
        double widest = working.Terms.Select(t => t.Figure).Append(working.Sum.Bold())
            .Max(p => TextMeasure.Width(setter.Covered(p), SheetStyle.Figure));
        widest = Math.Min(widest + 0.01, width * 0.5);
        double labels = width - widest - SignGap - sign - Between;

        var strips = new List<Strip>();
        Strip title = Line(setter, element, working.Name.Bold(), Phrase.Empty, working.Result.Bold(), "", SheetStyle.Heading, 1.4 * SheetStyle.Figure, width, labels, widest, sign);
        strips.Add(title with { Gap = 6 });
        for (int i = 0; i < working.Terms.Length; i++)
        {
            WorkingTerm term = working.Terms[i];
            string shown = term.Sign switch { TermSign.Plus => "+", TermSign.Minus => TextMeasure.Minus, _ => "" };
            Strip line = Line(setter, element, term.Label, term.Origin, term.Figure, shown, SheetStyle.Body, SheetStyle.Figure, width, labels, widest, sign);
            bool isLast = i == working.Terms.Length - 1;
            strips.Add(line with
            {
                Pieces = [.. line.Pieces, new RulePiece(0, line.Height, width, line.Height, isLast ? SheetStyle.Rule : SheetStyle.RuleThin, isLast ? Shade.Ink : Shade.Faint)],
            });
        }
        strips.Add(Line(setter, element, working.SumLabel.Bold(), Phrase.Empty, working.Sum.Bold(), "", SheetStyle.Body, SheetStyle.Figure, width, labels, widest, sign));
        return [Setter.Joined(strips, 6)];
    }

    private static Strip Line(
        Setter setter, int element, Phrase label, Phrase origin, Phrase figure, string sign,
        double labelSize, double figureSize, double width, double labels, double widest, double signWidth)
    {
        // The figure and the label share the first baseline.
        double first = Math.Max(Setter.Baseline(labelSize), Setter.Baseline(figureSize));
        double down = first - Setter.Baseline(labelSize);
        double wanted = Math.Min(TextMeasure.Width(setter.Covered(figure), figureSize) + 0.01, width * 0.6);
        labels = Math.Min(labels, width - wanted - Between);
        var left = setter.Paragraph(label, 0, labels, labelSize, Shade.Ink, element, 0);
        if (!origin.Runs.IsEmpty) left.AddRange(setter.Paragraph(origin, 0, labels, SheetStyle.Small, Shade.Soft, element, 0));
        Strip words = Setter.Joined(left, 0);
        var pieces = words.Pieces.Select(p => p.Moved(0, down)).ToList();
        double height = down + words.Height;
        double room = sign.Length > 0 ? widest : width - labels - Between;
        double y = first - Setter.Baseline(figureSize);
        var figures = new List<Strip>();
        foreach ((Phrase text, double wide, double size) in setter.Lines(figure, room, figureSize))
        {
            var line = new List<LayoutPiece> { new TextPiece(width - wide, Setter.Baseline(figureSize), wide, size, text, Shade.Ink, element) };
            if (sign.Length > 0 && figures.Count == 0)
                line.Insert(0, new TextPiece(width - widest - SignGap - signWidth, Setter.Baseline(figureSize), TextMeasure.Width(Phrase.Of(sign), figureSize), figureSize, Phrase.Of(sign), Shade.Ink, element));
            figures.Add(new(figureSize * SheetStyle.Leading, line));
            pieces.AddRange(line.Select(p => p.Moved(0, y)));
            y += figureSize * SheetStyle.Leading;
            height = Math.Max(height, y);
        }
        const double Pad = 0.9;
        return new(height + (2 * Pad), [.. pieces.Select(p => p.Moved(0, Pad))]) { Split = (_, _) => [.. left, .. figures] };
    }
}
