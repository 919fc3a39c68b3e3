using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>One board on the paper: name, bar, running figures under it.</summary>
internal sealed class BoardRow
{
    private const double Pad = 0.7, NameSize = 3.2, UsualHeight = 9, LeastHeight = 7, MostHeight = 18, LeadHeight = 2.6;
    private readonly BoardBar _board;
    private readonly BreakdownPaper _paper;
    private readonly double _scale, _left, _barHeight, _nameHeight, _figuresHeight;
    private readonly ImmutableArray<Phrase> _name;
    private readonly ImmutableArray<BoardCut> _cuts;
    private readonly double[] _figureMiddles;
    private readonly int _figureRows;

    public BoardRow(BoardBar board, BreakdownPaper paper, double scale, double left, double content)
    {
        (_board, _paper, _scale, _left) = (board, paper, scale, left);
        _barHeight = board.Width.Sign > 0 ? Math.Clamp(board.Width.ApproximateMillimetres * scale, LeastHeight, MostHeight) : UsualHeight;
        _name = TextMeasure.Wrap(board.Name, NameSize, content);
        _nameHeight = (_name.Length * NameSize * 1.3) + 1;
        _cuts = [.. board.Cuts.OrderBy(c => c.At)];
        double[] wanted = [.. _cuts.Select(c => X(c.At))], widths = [.. _cuts.Select(c => TextMeasure.Width(c.Figure, paper.SmallSize))];
        double high = left + (board.Length.ApproximateMillimetres * scale) + 1;
        // Too many for one row: every second one goes a row lower, with a longer leader.
        _figureRows = widths.Sum() + (widths.Length * 2) > high - left ? 2 : 1;
        _figureMiddles = new double[_cuts.Length];
        for (int row = 0; row < _figureRows; row++)
        {
            int[] mine = [.. Enumerable.Range(0, _cuts.Length).Where(i => i % _figureRows == row)];
            double[] middles = Spread.Along([.. mine.Select(i => wanted[i])], [.. mine.Select(i => widths[i])], 1.6, left - 4, high);
            for (int m = 0; m < mine.Length; m++) _figureMiddles[mine[m]] = middles[m];
        }
        _figuresHeight = _cuts.IsEmpty ? 0 : LeadHeight + (paper.SmallSize * 1.25 * _figureRows);
    }

    /// <summary>With the room under it, names that found no place on the bar included.</summary>
    public double Height => _nameHeight + _barHeight + _figuresHeight + (Homeless().Count > 0 ? _paper.SmallSize * 1.4 : 0) + 4;

    private double X(Core.Measures.Length at) => _left + (at.ApproximateMillimetres * _scale);

    public GroupItem Draw(double top)
    {
        var items = new List<SceneItem>();
        double y = top;
        foreach (Phrase line in _name)
        {
            y += NameSize * 1.3;
            items.Add(new TextItem(new(_left, y - (0.3 * NameSize)), line, NameSize, Anchor.Start, Ink.Outline));
        }
        double bar = top + _nameHeight, end = X(_board.Length);
        items.Add(ShapeItem.Rectangle(_left, bar, end - _left, _barHeight, null, Wash.Wood));
        var book = new LabelBook();
        List<SceneItem> labels = [];
        foreach (BoardSpan waste in _board.Waste) items.Add(new GroupItem("", "waste", [Hatch(waste, bar)]));
        foreach (BoardNote note in _board.Defects)
        {
            labels.AddRange(Words(note, bar, book, true));
            items.Add(new GroupItem("", note.Words.PlainText, [Hatch(note.Span, bar)]));
        }
        foreach (BoardNote note in _board.Kept) labels.AddRange(Words(note, bar, book, false));
        foreach (BoardPart part in _board.Parts)
        {
            Box box = Area(part.Span, bar);
            TextItem? mark = Mark(part, box);
            if (mark is not null) book.Take(LabelBook.Tight(mark));
            ImmutableArray<SceneItem> grain = Strokes.Grain(box, false, part.Key, 3, [.. book.Taken.Select(t => t.Grown(0.8))]);
            ImmutableArray<SceneItem> own = mark is null ? [] : [mark];
            items.Add(new GroupItem(part.Key, part.Title, [ShapeItem.Rectangle(box.Left, box.Top, box.Width, box.Height, Ink.Part, Wash.None), .. grain, .. own]));
        }
        items.AddRange(labels);
        items.Add(ShapeItem.Rectangle(_left, bar, end - _left, _barHeight, Ink.Outline, Wash.None));
        items.AddRange(Figures(bar));
        Phrase homeless = Phrase.Empty;
        foreach (Phrase words in Homeless()) homeless = homeless.IsEmpty ? words : homeless.Add(" · ").Add(words);
        if (!homeless.IsEmpty)
            items.Add(new TextItem(new(_left, bar + _barHeight + _figuresHeight + _paper.SmallSize), homeless, _paper.SmallSize, Anchor.Start, Ink.Soft));
        return new(_board.Key, _board.Name.PlainText, [.. items]);
    }

    private IEnumerable<SceneItem> Figures(double bar)
    {
        double under = bar + _barHeight, size = _paper.SmallSize;
        // The trued end: a heavy stroke and its 0 beside the bar.
        yield return new TextItem(new(_left - 1.2, bar + (_barHeight / 2) + (TextMeasure.CapHeight / 2 * size)), Phrase.Of("0"), size, Anchor.End, Ink.Dimension);
        for (int i = 0; i < _cuts.Length; i++)
        {
            double x = X(_cuts[i].At), row = i % _figureRows, baseline = under + LeadHeight + (TextMeasure.Ascent * size) + (row * size * 1.25);
            yield return new LineItem(new(x, bar), new(x, under + 0.9), Ink.Pencil);
            yield return new LineItem(new(x, under + 0.9), new(_figureMiddles[i], baseline - (TextMeasure.Ascent * size)), Ink.Dimension);
        }
        for (int i = 0; i < _cuts.Length; i++)
        {
            double baseline = under + LeadHeight + (TextMeasure.Ascent * size) + (i % _figureRows * size * 1.25);
            yield return new TextItem(new(_figureMiddles[i], baseline), _cuts[i].Figure, size, Anchor.Middle, Ink.Dimension);
        }
    }

    private Box Area(BoardSpan span, double bar) => new(X(span.From), bar, X(span.To), bar + _barHeight);

    private HatchItem Hatch(BoardSpan span, double bar) => new(new(X(span.From), bar), X(span.To) - X(span.From), _barHeight);

    private static Phrase MarkOf(BoardPart part) => part.IsHeld ? Phrase.Of(part.Mark).Italic() : Phrase.Of(part.Mark).Bold();

    private TextItem? Mark(BoardPart part, Box box)
    {
        foreach (double turn in new[] { 0.0, 90.0 })
        {
            for (double size = _paper.MarkSize; size >= BreakdownPaper.LeastSize; size -= 0.25)
            {
                TextItem text = LabelBook.Centred(box.Middle, MarkOf(part), size, Ink.Outline, turn);
                if (box.Grown(-Pad).Holds(LabelBook.Tight(text))) return text;
            }
        }
        return null;
    }

    private IEnumerable<SceneItem> Words(BoardNote note, double bar, LabelBook book, bool onHatch)
    {
        if (NoteText(note, bar, onHatch) is not { } text) yield break;
        book.Take(LabelBook.Tight(text));
        yield return text;
    }

    private TextItem? NoteText(BoardNote note, double bar, bool onHatch)
    {
        Box box = Area(note.Span, bar);
        for (double size = _paper.SmallSize; size >= BreakdownPaper.LeastSize; size -= 0.25)
        {
            TextItem text = LabelBook.Centred(box.Middle, note.Words.Italic(), size, Ink.Outline, 0, onHatch);
            if (box.Grown(-Pad).Holds(LabelBook.Tight(text))) return text;
        }
        return null;
    }

    /// <summary>Marks and words that no size fits into their stretch are said in a line under the bar, never left out.</summary>
    private List<Phrase> Homeless() =>
    [
        .. _board.Parts.Where(p => Mark(p, Area(p.Span, 0)) is null).Select(p => MarkOf(p).Add(" ends at ").Add(NearestFigure(p.Span.To))),
        .. _board.Defects.Concat(_board.Kept).Where(n => NoteText(n, 0, false) is null).Select(n => n.Words),
    ];

    private Phrase NearestFigure(Core.Measures.Length at) =>
        _cuts.IsEmpty ? Phrase.Of("its end") : _cuts.MinBy(c => (c.At - at).Abs())!.Figure;
}
