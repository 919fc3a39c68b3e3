using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>Letters and figures of first cuts that begin or end inside the sheet: they stand at the cut's own ends, so that no line runs over a part it does not cut.</summary>
internal sealed class InnerLetters(SheetGround sheet)
{
    private readonly List<SceneItem> _placed = [];
    private readonly List<Phrase> _dropped = [];

    /// <summary>Those that found room.</summary>
    public IReadOnlyList<SceneItem> Placed => _placed;

    /// <summary>Those that did not, in words.</summary>
    public IReadOnlyList<Phrase> Dropped => _dropped;

    /// <summary>Whether the figure of a cut stands at the edge of the sheet.</summary>
    public static bool HasEdgeFigure(PrimaryCut cut) => cut.From is null;

    /// <summary>Whether the letter of a cut stands at the edge of the sheet: beside it for cuts along, over it for cuts across.</summary>
    public static bool HasEdgeLetter(PrimaryCut cut) => cut.Letter.Length > 0 && (cut.Axis == SheetAxis.Along ? cut.To is null : cut.From is null);

    public void Place()
    {
        foreach (PrimaryCut cut in sheet.Input.PrimaryCuts)
        {
            Phrase letter = Phrase.Of(cut.Letter).Bold();
            if (cut.Letter.Length > 0 && !HasEdgeLetter(cut) && !TryPlace(cut, letter, 0.8 * sheet.Paper.MarkSize, Ink.Pencil, true)) _dropped.Add(Phrase.Of($"cut {cut.Letter}"));
            if (!HasEdgeFigure(cut) && !TryPlace(cut, cut.Figure, sheet.Paper.SmallSize, Ink.Dimension, false)) _dropped.Add(Phrase.Of($"{(cut.Letter.Length > 0 ? cut.Letter : "cut")}\u00A0at\u00A0").Add(cut.Figure));
        }
    }

    private bool TryPlace(PrimaryCut cut, Phrase phrase, double most, Ink ink, bool isLetter)
    {
        foreach (double size in new[] { most, BreakdownPaper.LeastSize })
        {
            IEnumerable<(Point At, Anchor Anchor)> spots = cut.Axis == SheetAxis.Along ? Along(cut, size, isLetter) : Across(cut, size);
            foreach ((Point at, Anchor anchor) in spots)
            {
                var text = new TextItem(at, phrase, size, anchor, ink);
                if (sheet.CellOf(LabelBook.Tight(text)) is not { } cell || !sheet.Book.TryTake(text, cell)) continue;
                _placed.Add(text);
                return true;
            }
        }
        return false;
    }

    /// <summary>Just over or under the line: figures at its beginning, letters at its end.</summary>
    private IEnumerable<(Point, Anchor)> Along(PrimaryCut cut, double size, bool isLetter)
    {
        const double off = 0.9;
        double y = sheet.View.Y(cut.At), over = y - off, under = y + off + (TextMeasure.Ascent * size);
        double from = (cut.From is { } f ? sheet.View.X(f) : sheet.Outline.Left) + off, to = (cut.To is { } t ? sheet.View.X(t) : sheet.Outline.Right) - off;
        (Point, Anchor)[] begin = [(new(from, over), Anchor.Start), (new(from, under), Anchor.Start)], end = [(new(to, over), Anchor.End), (new(to, under), Anchor.End)];
        return isLetter ? [.. end, .. begin] : [.. begin, .. end];
    }

    /// <summary>Beside the line, at its beginning and then at its end.</summary>
    private IEnumerable<(Point, Anchor)> Across(PrimaryCut cut, double size)
    {
        const double off = 0.9;
        double x = sheet.View.X(cut.At), up = TextMeasure.Ascent * size;
        double from = (cut.From is { } f ? sheet.View.Y(f) : sheet.Outline.Top) + off + up, to = (cut.To is { } t ? sheet.View.Y(t) : sheet.Outline.Bottom) - off;
        return [(new(x - off, from), Anchor.End), (new(x + off, from), Anchor.Start), (new(x - off, to), Anchor.End), (new(x + off, to), Anchor.Start)];
    }
}
