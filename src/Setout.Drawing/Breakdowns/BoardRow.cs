using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>One board on the paper: name, bar, running figures under it.</summary>
internal sealed class BoardRow
{
    private const double Pad = 0.7, NameSize = 3.2, UsualHeight = 9, LeastHeight = 7, MostHeight = 18, LeadHeight = 3, FromFigure = 0.6;
    private readonly BoardBar _board;
    private readonly BreakdownPaper _paper;
    private readonly double _scale, _left, _barHeight, _nameHeight, _figuresHeight, _turnedSize;
    private readonly ImmutableArray<Phrase> _name, _homeless;
    private readonly ImmutableArray<BoardCut> _cuts;
    private readonly double[] _figureMiddles;
    private readonly int _figureRows;

    public BoardRow(BoardBar board, BreakdownPaper paper, double scale, double left, double content)
    {
        (_board, _paper, _scale, _left) = (board, paper, scale, left);
        _barHeight = board.Width.Sign > 0 ? Math.Clamp(board.Width.ApproximateMillimetres * scale, LeastHeight, MostHeight) : UsualHeight;
        _name = TextMeasure.Wrap(board.Name, NameSize, content - left);
        _nameHeight = (_name.Length * NameSize * 1.3) + 1;
        _cuts = [.. board.Cuts.OrderBy(c => c.At)];
        double[] wanted = [.. _cuts.Select(c => X(c.At))], widths = [.. _cuts.Select(c => TextMeasure.Width(c.Figure, paper.SmallSize))];
        double high = left + (board.Length.ApproximateMillimetres * scale) + 1;
        // Too many for one row: they are dealt to more rows in turn, with longer leaders.
        _figureRows = Math.Max(1, (int)Math.Ceiling((widths.Sum() + (widths.Length * 2)) / (high - left)));
        _figureMiddles = new double[_cuts.Length];
        for (int row = 0; row < _figureRows; row++)
        {
            int[] mine = [.. Enumerable.Range(0, _cuts.Length).Where(i => i % _figureRows == row)];
            double[] middles = Spread.Along([.. mine.Select(i => wanted[i])], [.. mine.Select(i => widths[i])], 1.6, left - 4, high);
            for (int m = 0; m < mine.Length; m++) _figureMiddles[mine[m]] = middles[m];
        }
        _turnedSize = board.Parts.Select(p => Largest(p, Area(p.Span, 0), 90)).Where(t => t is not null).Select(t => t!.Size).DefaultIfEmpty(0).Min();
        _homeless = TextMeasure.Wrap(Homeless(), paper.SmallSize, content - left);
        _figuresHeight = _cuts.IsEmpty ? 0 : LeadHeight + (paper.SmallSize * 1.25 * _figureRows);
    }

    /// <summary>With the room under it, names that found no place on the bar included.</summary>
    public double Height => _nameHeight + _barHeight + _figuresHeight + (_homeless.Length * _paper.SmallSize * 1.35) + 3.5;

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
            items.Add(new GroupItem("", note.Words.PlainText, [Hatch(note.Span, bar), Edged(note.Span, bar)]));
        }
        foreach (BoardNote note in _board.Kept)
        {
            ImmutableArray<SceneItem> words = [.. Words(note, bar, book, false)];
            items.Add(new GroupItem("", note.Words.PlainText, [.. Strokes.Grain(Area(note.Span, bar), false, note.Words.PlainText, 3, [.. book.Taken.Select(t => t.Grown(0.8))]), .. words]));
        }
        foreach (BoardPart part in _board.Parts)
        {
            Box box = Area(part.Span, bar);
            TextItem? mark = Mark(part, box);
            if (mark is not null) book.Take(LabelBook.Tight(mark));
            ImmutableArray<SceneItem> grain = Strokes.Grain(box, false, part.Key, 3, [.. book.Taken.Select(t => t.Grown(0.8))]);
            ImmutableArray<SceneItem> own = mark is null ? [] : [mark];
            items.Add(new GroupItem(part.Key, part.Title, [ShapeItem.Rectangle(box.Left, box.Top, box.Width, box.Height, part.IsHeld ? Ink.Dimension : Ink.Part, Wash.None), .. grain, .. own]));
        }
        items.AddRange(labels);
        items.Add(ShapeItem.Rectangle(_left, bar, end - _left, _barHeight, Ink.Outline, Wash.None));
        items.AddRange(Figures(bar));
        for (int i = 0; i < _homeless.Length; i++)
            items.Add(new TextItem(new(_left, bar + _barHeight + _figuresHeight + (_paper.SmallSize * (1 + (i * 1.35)))), _homeless[i], _paper.SmallSize, Anchor.Start, Ink.Soft));
        return new(_board.Key, _board.Name.PlainText, [.. items]);
    }

    private IEnumerable<SceneItem> Figures(double bar)
    {
        double under = bar + _barHeight, size = _paper.SmallSize;
        // The trued end: a heavy stroke and its 0 beside the bar.
        yield return new TextItem(new(_left - 1.2, bar + (_barHeight / 2) + (TextMeasure.Middle * size)), Phrase.Of("0"), size, Anchor.End, Ink.Dimension);
        for (int i = 0; i < _cuts.Length; i++)
        {
            double x = X(_cuts[i].At), row = i % _figureRows, baseline = under + LeadHeight + (TextMeasure.Ascent * size) + (row * size * 1.25);
            yield return new LineItem(new(x, bar), new(x, under + 0.9), _cuts[i].IsWaiting ? Ink.Hidden : Ink.Pencil);
            // Ends short of the figure: a line that touches it is read as part of it.
            yield return new LineItem(new(x, under + 0.9), new(_figureMiddles[i], baseline - (TextMeasure.Ascent * size) - FromFigure), Ink.Dimension);
        }
        for (int i = 0; i < _cuts.Length; i++)
        {
            double baseline = under + LeadHeight + (TextMeasure.Ascent * size) + (i % _figureRows * size * 1.25);
            yield return new TextItem(new(_figureMiddles[i], baseline), _cuts[i].Figure, size, Anchor.Middle, Ink.Dimension);
        }
    }

    private Box Area(BoardSpan span, double bar) => new(X(span.From), bar, X(span.To), bar + _barHeight);

    private HatchItem Hatch(BoardSpan span, double bar) => new(new(X(span.From), bar), X(span.To) - X(span.From), _barHeight);

    private ShapeItem Edged(BoardSpan span, double bar) => ShapeItem.Rectangle(X(span.From), bar, X(span.To) - X(span.From), _barHeight, Ink.Hidden, Wash.None);

    private static Phrase MarkOf(BoardPart part) => part.IsHeld ? Phrase.Of(part.Mark).Italic() : Phrase.Of(part.Mark).Bold();

    /// <summary>Level where that fits every part as long as this one, else turned: parts of one length are marked alike.</summary>
    private TextItem? Mark(BoardPart part, Box box) =>
        (_board.Parts.All(p => LengthOf(p) != LengthOf(part) || Largest(p, Area(p.Span, 0), 0) is not null) ? Largest(part, box, 0) : null)
        ?? (Largest(part, box, 90) is { } turned ? LabelBook.Centred(box.Middle, MarkOf(part), Math.Min(turned.Size, _turnedSize), Ink.Outline, 90) : null);

    private static Core.Measures.Length LengthOf(BoardPart part) => part.Span.To - part.Span.From;

    private TextItem? Largest(BoardPart part, Box box, double turn)
    {
        for (double size = _paper.MarkSize; size >= BreakdownPaper.LeastSize; size -= 0.25)
        {
            TextItem text = LabelBook.Centred(box.Middle, MarkOf(part), size, Ink.Outline, turn);
            if (box.Grown(-Math.Max(0.3, 0.16 * size)).Holds(LabelBook.Tight(text))) return text;
        }
        return null;
    }

    private IEnumerable<SceneItem> Words(BoardNote note, double bar, LabelBook book, bool onHatch)
    {
        if ((NoteText(note, note.Words, bar, onHatch) ?? NoteText(note, note.Brief, bar, onHatch)) is not { } text) yield break;
        book.Take(LabelBook.Tight(text));
        yield return text;
    }

    private TextItem? NoteText(BoardNote note, Phrase words, double bar, bool onHatch)
    {
        if (words.IsEmpty) return null;
        Box box = Area(note.Span, bar);
        for (double size = _paper.SmallSize; size >= BreakdownPaper.LeastSize; size -= 0.25)
        {
            TextItem text = LabelBook.Centred(box.Middle, words.Italic(), size, Ink.Outline, 0, onHatch);
            if (box.Grown(-Pad).Holds(LabelBook.Tight(text))) return text;
        }
        return null;
    }

    /// <summary>Marks and words that no size fits into their stretch are said under the bar, never left out.</summary>
    private Phrase Homeless()
    {
        IEnumerable<Phrase> marks = _board.Parts.Where(p => Mark(p, Area(p.Span, 0)) is null).Select(p => MarkOf(p).Add(" ends at ").Add(NearestFigure(p.Span.To)));
        IEnumerable<Phrase> words = _board.Defects.Concat(_board.Kept).Where(n => NoteText(n, n.Words, 0, false) is null).Select(n => n.Words);
        return marks.Concat(words).Aggregate(Phrase.Empty, (all, next) => all.IsEmpty ? next : all.Add(" · ").Add(next));
    }

    private Phrase NearestFigure(Core.Measures.Length at) =>
        _cuts.IsEmpty ? Phrase.Of("its end") : _cuts.MinBy(c => (c.At - at).Abs())!.Figure;
}
