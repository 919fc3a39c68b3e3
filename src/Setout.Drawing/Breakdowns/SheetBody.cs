using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>What lies inside the outline of a sheet. Places every mark and figure first, then draws the wood round them.</summary>
internal sealed class SheetBody
{
    private const double Pad = 0.7;
    private readonly SheetInput _input;
    private readonly BreakdownPaper _paper;
    private readonly SheetView _view;
    private readonly Box _sheet;
    private readonly LabelBook _book = new();
    private readonly ImmutableArray<Box> _parts, _waste, _kept;
    private readonly ImmutableArray<SceneItem>[] _marks;
    private readonly ImmutableArray<SceneItem>[] _keptWords;
    private readonly List<SceneItem> _figures = [];
    private readonly List<InnerCut> _dropped = [];
    private readonly List<Phrase> _unnamed = [];

    public SheetBody(SheetInput input, BreakdownPaper paper, SheetView view, Box sheet)
    {
        (_input, _paper, _view, _sheet) = (input, paper, view, sheet);
        _parts = [.. input.Parts.Select(p => view.Of(p.Area))];
        _waste = [.. input.Waste.Select(view.Of)];
        _kept = [.. input.Kept.Select(k => view.Of(k.Area))];
        _marks = new ImmutableArray<SceneItem>[_parts.Length];
        Lowest = sheet.Bottom;
        PlaceMarks();
        PlaceFigures();
        PlaceHomelessMarks();
        _keptWords = [.. input.Kept.Select((k, i) => KeptWords(k, _kept[i]))];
    }

    /// <summary>The lowest ink, labels under the sheet included.</summary>
    public double Lowest { get; private set; }

    /// <summary>Running figures that found no room in the drawing, in words for the lines under it.</summary>
    public IEnumerable<Phrase> LeftOver(double width, double size)
    {
        if (_dropped.Count == 0 && _unnamed.Count == 0) return [];
        Phrase all = Phrase.Of("no room above for: ");
        string between = "";
        foreach (InnerCut cut in _dropped)
        {
            // Named by the part that the cut frees: the one that ends at its line.
            int owner = OwnerOf(cut);
            all = all.Add(owner >= 0 ? $"{between}{_input.Parts[owner].Mark} to " : between).Add(cut.Figure);
            between = " · ";
        }
        foreach (Phrase words in _unnamed)
        {
            all = all.Add(between).Add(words);
            between = " · ";
        }
        return TextMeasure.Wrap(all, size, width);
    }

    public IEnumerable<SceneItem> Draw()
    {
        yield return ShapeItem.Rectangle(_sheet.Left, _sheet.Top, _sheet.Width, _sheet.Height, null, Wash.Panel);
        foreach (Box waste in _waste) yield return new GroupItem("", "waste", [new HatchItem(new(waste.Left, waste.Top), waste.Width, waste.Height)]);
        for (int i = 0; i < _kept.Length; i++)
            yield return new GroupItem(_input.Kept[i].Key, _input.Kept[i].Words.PlainText, [Clear(_kept[i]), .. Grain(_kept[i], _input.Kept[i].Key + i), .. _keptWords[i]]);
        for (int i = 0; i < _parts.Length; i++)
        {
            Box box = _parts[i];
            yield return new GroupItem(_input.Parts[i].Key, _input.Parts[i].Title,
                [ShapeItem.Rectangle(box.Left, box.Top, box.Width, box.Height, Ink.Part, Wash.None), Clear(box), .. Grain(box, _input.Parts[i].Key), .. _marks[i]]);
        }
        yield return new GroupItem("", "", [.. _input.InnerCuts.Select(Line), .. _figures]);
        yield return new GroupItem("", "", [ShapeItem.Rectangle(_sheet.Left, _sheet.Top, _sheet.Width, _sheet.Height, Ink.Outline, Wash.None)]);
    }

    private SceneItem Line(InnerCut cut) => cut.Axis == SheetAxis.Across
        ? new LineItem(new(_view.X(cut.At), _view.Y(cut.From)), new(_view.X(cut.At), _view.Y(cut.To)), Ink.Pencil)
        : new LineItem(new(_view.X(cut.From), _view.Y(cut.At)), new(_view.X(cut.To), _view.Y(cut.At)), Ink.Pencil);

    /// <summary>Nothing to see, but the whole face can be pointed at.</summary>
    private static ShapeItem Clear(Box box) => ShapeItem.Rectangle(box.Left, box.Top, box.Width, box.Height, null, Wash.None);

    private ImmutableArray<SceneItem> Grain(Box box, string seed) =>
        _input.Grain is { } run ? Strokes.Grain(box, run == SheetAxis.Across, seed, 5.5, [.. _book.Taken.Where(t => t.Overlaps(box)).Select(t => t.Grown(0.9))]) : [];

    private Phrase MarkOf(int part) => _input.Parts[part].IsHeld ? Phrase.Of(_input.Parts[part].Mark).Italic() : Phrase.Of(_input.Parts[part].Mark).Bold();

    /// <summary>Marks shrink to fit, turn where that lets them be larger, and never go under 7 pt.</summary>
    private void PlaceMarks()
    {
        for (int i = 0; i < _parts.Length; i++)
        {
            Phrase mark = MarkOf(i);
            TextItem? level = null, turned = null;
            for (double size = _paper.MarkSize; size >= BreakdownPaper.LeastSize; size -= 0.25)
            {
                level ??= Fitting(LabelBook.Centred(_parts[i].Middle, mark, size, Ink.Outline), _parts[i]);
                turned ??= Fitting(LabelBook.Centred(_parts[i].Middle, mark, size, Ink.Outline, 90), _parts[i]);
            }
            TextItem? best = turned is not null && (level is null || turned.Size > level.Size * 1.3) ? turned : level;
            if (best is null || !_book.TryTake(best, _sheet)) continue;
            _marks[i] = [best];
        }
    }

    private static TextItem? Fitting(TextItem text, Box room) => room.Grown(-Pad).Holds(LabelBook.Tight(text)) ? text : null;

    /// <summary>A mark with no room in its part goes to the nearest waste or keep, else under the sheet, at the end of a leader.</summary>
    private void PlaceHomelessMarks()
    {
        var under = new List<int>();
        for (int i = 0; i < _parts.Length; i++)
        {
            if (!_marks[i].IsDefault) continue;
            if (NearbySpot(i) is { } spot) _marks[i] = Led(_parts[i].Middle, spot);
            else under.Add(i);
        }
        under.Sort((a, b) => _parts[a].Middle.X.CompareTo(_parts[b].Middle.X));
        double size = BreakdownPaper.LeastSize;
        double[] middles = Spread.Along([.. under.Select(i => _parts[i].Middle.X)], [.. under.Select(i => TextMeasure.Width(MarkOf(i), size))], 1.5, _sheet.Left, _sheet.Right);
        double y = _sheet.Bottom + 5;
        for (int u = 0; u < under.Count; u++)
            _marks[under[u]] = Led(_parts[under[u]].Middle, LabelBook.Centred(new(middles[u], y), MarkOf(under[u]), size, Ink.Outline));
        if (under.Count > 0) Lowest = y + size;
    }

    private TextItem? NearbySpot(int part)
    {
        const double reach = 45;
        Phrase mark = MarkOf(part);
        double size = BreakdownPaper.LeastSize, width = TextMeasure.Width(mark, size);
        Point from = _parts[part].Middle;
        var spots = new List<(double Distance, Point At, Box Room, bool IsWaste)>();
        foreach ((Box room, bool isWaste) in _waste.Select(w => (w, true)).Concat(_kept.Select(k => (k, false))))
        {
            Box inner = new(room.Left + Pad + (width / 2), room.Top + Pad + (size / 2), room.Right - Pad - (width / 2), room.Bottom - Pad - (size / 2));
            if (inner.Width < 0 || inner.Height < 0) continue;
            for (int step = -4; step <= 4; step++)
            {
                var at = new Point(Math.Clamp(from.X + (step * (width + 1)), inner.Left, inner.Right), Math.Clamp(from.Y + (step * size * 1.2), inner.Top, inner.Bottom));
                spots.Add((Math.Sqrt(Math.Pow(at.X - from.X, 2) + Math.Pow(at.Y - from.Y, 2)), at, room, isWaste));
            }
        }
        foreach ((double distance, Point at, Box room, bool isWaste) in spots.OrderBy(s => s.Distance).Where(s => s.Distance < reach))
        {
            TextItem text = LabelBook.Centred(at, mark, size, Ink.Outline, 0, isWaste);
            if (_book.TryTake(text, room)) return text;
        }
        return null;
    }

    private static ImmutableArray<SceneItem> Led(Point from, TextItem text)
    {
        Box ink = LabelBook.Tight(text).Grown(0.4);
        var end = new Point(Math.Clamp(from.X, ink.Left, ink.Right), Math.Clamp(from.Y, ink.Top, ink.Bottom));
        return [new LineItem(from, end, Ink.Dimension), ShapeItem.Rectangle(from.X - 0.45, from.Y - 0.45, 0.9, 0.9, null, Wash.Metal), text];
    }

    /// <summary>Small running figures stand just before their cut; they move, turn, shrink, and at last go to the lines under the drawing.</summary>
    private void PlaceFigures()
    {
        ImmutableArray<Box> cells = [.. _parts, .. _waste, .. _kept];
        foreach (InnerCut cut in _input.InnerCuts.Where(c => !c.Figure.IsEmpty))
        {
            double at = cut.Axis == SheetAxis.Across ? _view.X(cut.At) : _view.Y(cut.At);
            double from = cut.Axis == SheetAxis.Across ? _view.Y(cut.From) : _view.X(cut.From), to = cut.Axis == SheetAxis.Across ? _view.Y(cut.To) : _view.X(cut.To);
            TextItem? placed = null;
            foreach (double size in new[] { _paper.SmallSize, (_paper.SmallSize + BreakdownPaper.LeastSize) / 2, BreakdownPaper.LeastSize })
            {
                IEnumerable<TextItem> tries = cut.Axis == SheetAxis.Across ? BeforeUpright(cut.Figure, at, from, to, size) : BeforeLevel(cut.Figure, at, from, to, size);
                placed = tries.FirstOrDefault(t => cells.Any(c => c.Grown(-0.35).Holds(LabelBook.Tight(t)) && _book.TryTake(t, c)));
                if (placed is not null) break;
            }
            if (placed is not null) _figures.Add(placed);
            else _dropped.Add(cut);
        }
    }

    private static IEnumerable<TextItem> BeforeUpright(Phrase figure, double x, double top, double bottom, double size)
    {
        const double off = 0.8;
        double up = TextMeasure.Ascent * size;
        TextItem Level(double px, double py, Anchor anchor, bool ground = false) => new(new(px, py), figure, size, anchor, Ink.Soft, 0, ground);
        yield return Level(x - off, bottom - 0.9, Anchor.End);
        yield return Level(x - off, top + up + 0.6, Anchor.End);
        yield return new(new(x - off - (0.1 * size), bottom - 0.8), figure, size, Anchor.Start, Ink.Soft, 90);
        yield return new(new(x - off - (0.1 * size), top + 0.8), figure, size, Anchor.End, Ink.Soft, 90);
    }

    private static IEnumerable<TextItem> BeforeLevel(Phrase figure, double y, double left, double right, double size)
    {
        double up = TextMeasure.Ascent * size;
        yield return new(new(right - 0.8, y - 0.9), figure, size, Anchor.End, Ink.Soft);
        yield return new(new(left + 0.8, y - 0.9), figure, size, Anchor.Start, Ink.Soft);
        yield return new(new(right - (0.1 * size) - 0.6, y - 0.8), figure, size, Anchor.Start, Ink.Soft, 90);
        yield return new(new(left + up + 0.6, y - 0.8), figure, size, Anchor.Start, Ink.Soft, 90);
    }

    private int OwnerOf(InnerCut cut)
    {
        double at = cut.Axis == SheetAxis.Across ? _view.X(cut.At) : _view.Y(cut.At);
        double middle = cut.Axis == SheetAxis.Across ? (_view.Y(cut.From) + _view.Y(cut.To)) / 2 : (_view.X(cut.From) + _view.X(cut.To)) / 2;
        for (int i = 0; i < _parts.Length; i++)
        {
            Box p = _parts[i];
            bool ends = cut.Axis == SheetAxis.Across
                ? Math.Abs(p.Right - at) < 0.6 && p.Top <= middle && middle <= p.Bottom
                : Math.Abs(p.Bottom - at) < 0.6 && p.Left <= middle && middle <= p.Right;
            if (ends) return i;
        }
        return -1;
    }

    private ImmutableArray<SceneItem> KeptWords(KeptPiece kept, Box box)
    {
        ImmutableArray<SceneItem> whole = KeptWords(kept.Words.Italic(), box);
        if (!whole.IsEmpty || kept.Words.IsEmpty) return whole;
        _unnamed.Add(kept.Words);
        return KeptWords(Phrase.Of("keep").Italic(), box);
    }

    private ImmutableArray<SceneItem> KeptWords(Phrase words, Box box)
    {
        for (double size = _paper.FigureSize; size >= BreakdownPaper.LeastSize; size -= 0.25)
        {
            foreach (double turn in new[] { 0.0, 90.0 })
            {
                // Homeless marks may have taken the middle.
                foreach (double share in new[] { 0.5, 0.35, 0.65, 0.2, 0.8 })
                {
                    Point at = turn == 0 ? new(box.Middle.X, box.Top + (box.Height * share)) : new(box.Left + (box.Width * share), box.Middle.Y);
                    TextItem text = LabelBook.Centred(at, words, size, Ink.Outline, turn);
                    if (box.Grown(-Pad).Holds(LabelBook.Tight(text)) && _book.TryTake(text, box)) return [text];
                }
            }
        }
        return [];
    }
}
