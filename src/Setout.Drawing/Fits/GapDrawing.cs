using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Fits;

/// <summary>
/// Gaps under each other, each as a gauge with its window in the middle of the paper, all at one scale where that is legible: between the
/// uprights it fits, the stroke is where it stands, the thick line where it likely lies, the thin line the worst case.
/// </summary>
public static class GapDrawing
{
    private const double Margin = 2, Leading = 1.3, BetweenRows = 3.5, BetweenColumns = 4;

    // Of the bar: what the widest window may take, so that there is hatching to see. Paper millimetres: what the narrowest must have, for its figures.
    private const double MostWindow = 0.5, LeastWindow = 7.5;

    /// <summary>Draws. Rows that do not fit the height go on to further drawings of the same scale.</summary>
    /// <returns>One scene or more; none has less than one row.</returns>
    /// <exception cref="ArgumentException">There is no gap, or one has no window.</exception>
    public static ImmutableArray<Scene> Draw(GapsInput input, GapPaper paper)
    {
        if (input.Rows.IsDefaultOrEmpty || input.Rows.Any(r => r.Most.At <= r.Least.At)) throw new ArgumentException("A drawing of gaps needs gaps that have a window.", nameof(input));
        double content = paper.Width - (2 * Margin);
        bool isNarrow = paper.Width < GapPaper.Narrow;
        double words = input.Rows.Max(r => WordsOf(r).Max(w => TextMeasure.Width(w, paper.TextSize)));
        double names = isNarrow ? 0 : content * 0.33;
        double left = Margin + names + (isNarrow ? 0 : BetweenColumns), right = paper.Width - Margin - words - BetweenColumns;
        double scale = Scale(input.Rows, right - left);
        ImmutableArray<Row> rows = [.. input.Rows.Select(r => new Row(r, input.Unit, paper, left, right, Math.Min(scale, MostWindow * (right - left) / Window(r)), isNarrow ? content : names, isNarrow))];
        ImmutableArray<Phrase> footer = TextMeasure.Wrap(Footer(input, rows), paper.SmallSize, content);
        double footerHeight = footer.IsEmpty ? 0 : (footer.Length * paper.SmallSize * Leading) + 2;

        ImmutableArray<Scene>.Builder scenes = ImmutableArray.CreateBuilder<Scene>();
        int next = 0;
        while (next < rows.Length)
        {
            var items = new List<SceneItem>();
            double y = Margin;
            int first = next;
            while (next < rows.Length && (next == first || y + rows[next].Height + footerHeight + Margin <= paper.Height))
            {
                if (next > first) items.Add(new LineItem(new(Margin, y - (BetweenRows / 2)), new(paper.Width - Margin, y - (BetweenRows / 2)), Ink.Hatch));
                items.Add(rows[next].Draw(y));
                y += rows[next++].Height + BetweenRows;
            }
            if (next == rows.Length)
            {
                foreach (Phrase line in footer)
                {
                    y += paper.SmallSize * Leading;
                    items.Add(new TextItem(new(Margin, y - (BetweenRows / 2)), line, paper.SmallSize, Anchor.Start, Ink.Soft));
                }
            }
            string title = first == 0 && next == rows.Length ? input.Title : $"{input.Title} ({scenes.Count + 1})";
            scenes.Add(new(paper.Width, y + Margin, title, input.Description, [.. items]));
        }
        return scenes.ToImmutable();
    }

    /// <summary>As large as the widest reach allows, but neither so large that a window fills the bar nor so small that the narrowest has no room for its figures.</summary>
    private static double Scale(ImmutableArray<GapRow> rows, double bar)
    {
        double most = Math.Min((bar / 2) - 1, MostWindow * bar);
        double scale = Math.Min(most / rows.Max(GapGauge.Reach), MostWindow * bar / rows.Max(Window));
        return Math.Max(scale, LeastWindow / rows.Min(Window));
    }

    private static double Window(GapRow row) => row.Most.At.ApproximateMillimetres - row.Least.At.ApproximateMillimetres;

    private static Phrase Footer(GapsInput input, ImmutableArray<Row> rows)
    {
        if (input.Footer.IsEmpty || rows.Select(r => r.Rule).Distinct().Count() > 1) return input.Footer;
        LengthFormat format = input.Unit == LengthUnit.Inch ? LengthFormat.Inches(64) : LengthFormat.Millimetres(1);
        return input.Footer.Add(" The strokes below are those of a rule, ").Add(format.Format(rows[0].Rule.Step)).Add(" apart.");
    }

    /// <summary>The words at the right of a gauge, one a line.</summary>
    private static ImmutableArray<Phrase> WordsOf(GapRow row)
    {
        var words = ImmutableArray.CreateBuilder<Phrase>();
        words.Add(row.Now.Chance.Bold());
        if (row.Then is { } then) words.Add(Phrase.Of("then ").Add(then.Chance));
        if (!row.Out.IsEmpty) words.Add(row.Out.Bold());
        return words.ToImmutable();
    }

    /// <summary>A row measured: its name in lines, its gauge.</summary>
    private sealed class Row
    {
        private readonly GapRow _row;
        private readonly GapPaper _paper;
        private readonly ImmutableArray<(Phrase Text, double Size, Ink Ink)> _names;
        private readonly GapGauge _gauge;
        private readonly double _right;
        private readonly bool _isNarrow;

        public Row(GapRow row, LengthUnit unit, GapPaper paper, double left, double right, double scale, double names, bool isNarrow)
        {
            (_row, _paper, _right, _isNarrow) = (row, paper, right, isNarrow);
            Rule = RuleEdge.For(unit, scale);
            _gauge = new(row, paper, left, right, scale, Rule);
            _names =
            [
                .. TextMeasure.Wrap(row.Name, paper.TextSize, names).Select(l => (l, paper.TextSize, Ink.Outline)),
                .. TextMeasure.Wrap(row.Note, paper.SmallSize, names).Select(l => (l, paper.SmallSize, Ink.Soft)),
            ];
        }

        public RuleEdge Rule { get; }

        private double NamesHeight => _names.Sum(n => n.Size * Leading);

        private double GaugeTop => _isNarrow ? NamesHeight + 1 : 0;

        private double WordsHeight => _gauge.FirstBaseline + ((WordsOf(_row).Length - 1) * GapGauge.LineStep) + (TextMeasure.Descent * _paper.TextSize);

        public double Height => Math.Max(_isNarrow ? 0 : NamesHeight, GaugeTop + Math.Max(_gauge.Height, WordsHeight));

        public GroupItem Draw(double top)
        {
            // What is pointed at is the whole row.
            var items = new List<SceneItem> { ShapeItem.Rectangle(Margin, top, _paper.Width - (2 * Margin), Height, null, Wash.None) };
            double y = top;
            foreach ((Phrase text, double size, Ink ink) in _names)
            {
                items.Add(new TextItem(new(Margin, y + (size * 0.95)), text, size, Anchor.Start, ink));
                y += size * Leading;
            }
            items.AddRange(_gauge.Draw(top + GaugeTop));
            ImmutableArray<Phrase> words = WordsOf(_row);
            for (int i = 0; i < words.Length; i++)
            {
                bool isOut = !_row.Out.IsEmpty && i == words.Length - 1;
                items.Add(new TextItem(new(_right + BetweenColumns, top + GaugeTop + _gauge.FirstBaseline + (i * GapGauge.LineStep)), words[i], _paper.TextSize, Anchor.Start, isOut ? Ink.Pencil : Ink.Outline));
            }
            return new(_row.Key, _row.Title, [.. items]);
        }
    }
}
