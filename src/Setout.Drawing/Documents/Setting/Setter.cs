using System.Collections.Immutable;
using System.Text;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Setting;

/// <summary>What all block setters share: the column, the reading order and the remarks. Lives for one document.</summary>
internal sealed class Setter(double width, double height, double lyingWidth, double lyingHeight)
{
    private readonly List<LayoutElement> _elements = [new(0, LayoutElement.Decoration, ElementKind.Document, "")];
    private readonly List<LayoutRemark> _remarks = [];

    /// <summary>Width of the column.</summary>
    public double Width { get; } = width;

    /// <summary>Height of the column.</summary>
    public double Height { get; } = height;

    /// <summary>Width of the column of a page lying down.</summary>
    public double LyingWidth { get; } = lyingWidth;

    /// <summary>Height of the column of a page lying down.</summary>
    public double LyingHeight { get; } = lyingHeight;

    public IReadOnlyList<LayoutElement> Elements => _elements;

    public IReadOnlyList<LayoutRemark> Remarks => _remarks;

    /// <summary>The element that blocks now lie in.</summary>
    public int Parent { get; set; }

    public int Element(ElementKind kind, int parent, string words = "")
    {
        _elements.Add(new(_elements.Count, parent, kind, words));
        return _elements.Count - 1;
    }

    public void Remark(string code, string words)
    {
        var remark = new LayoutRemark(code, words);
        if (!_remarks.Contains(remark)) _remarks.Add(remark);
    }

    /// <summary>The phrase with a mark in place of every character that the font cannot draw.</summary>
    public Phrase Covered(Phrase phrase) => phrase.Runs.All(r => r.ToString().EnumerateRunes().All(Typeface.Font(Typeface.Of(r)).Has))
        ? phrase
        : new([.. phrase.Runs.Select(Covered)]);

    private Run Covered(Run run)
    {
        string text = run.Figure is { } f ? f.Unit : run.Words;
        var clean = new StringBuilder();
        foreach (Rune character in text.EnumerateRunes())
        {
            if (Typeface.Font(Typeface.Of(run)).Has(character)) clean.Append(character.ToString());
            // A new line or a tab inside a phrase is a space; control characters have no shape to miss.
            else if (Rune.IsWhiteSpace(character)) clean.Append(' ');
            else
            {
                Remark("page.missing-glyph", $"The font has no U+{character.Value:X4}; a ? stands for it in \"{Shown(text)}\".");
                clean.Append('?');
            }
        }
        return run.Figure is { } figure ? run with { Figure = figure with { Unit = clean.ToString() } } : run with { Words = clean.ToString() };
    }

    public string Covered(string text) => Covered(Phrase.Of(text)).PlainText;

    private static string Shown(string text) => string.Concat(text.EnumerateRunes().Select(r => Rune.IsControl(r) ? " " : r.ToString()));

    /// <summary>Breaks a phrase, each line with the size at which it fits: a lone figure that is too wide is set smaller, and said.</summary>
    public IReadOnlyList<(Phrase Text, double Width, double Size)> Lines(Phrase phrase, double room, double size)
    {
        var lines = new List<(Phrase, double, double)>();
        ImmutableArray<BrokenLine> broken = LineBreaker.Break(Covered(phrase), size, room, LongWord.IsParted);
        // A text of nothing still takes its line.
        foreach (BrokenLine line in broken.IsEmpty ? [new(Phrase.Empty, 0)] : broken)
        {
            if (line.Width <= room + 1e-9) { lines.Add((line.Text, line.Width, size)); continue; }
            Remark("page.too-wide", $"\"{line.Text.PlainText}\" is wider than its column and is set smaller.");
            lines.Add((line.Text, room, size * room / line.Width));
        }
        return lines;
    }

    /// <summary>A phrase on one line, cut short with an ellipsis when it does not fit.</summary>
    public (string Text, double Width) OneLine(string text, double room, double size)
    {
        string shown = Covered(text);
        double wide = Typeface.Font(Face.Regular).Width(shown, size);
        if (wide <= room) return (shown, wide);
        Rune[] characters = [.. shown.EnumerateRunes()];
        for (int n = characters.Length - 1; n > 0; n--)
        {
            string cut = string.Concat(characters.Take(n).Select(r => r.ToString())).TrimEnd() + "…";
            wide = Typeface.Font(Face.Regular).Width(cut, size);
            if (wide <= room) return (cut, wide);
        }
        return ("", 0);
    }

    /// <summary>Lines of text as strips, one a line, so that a page can end between them; never a single line alone.</summary>
    public List<Strip> Paragraph(Phrase phrase, double left, double room, double size, Shade shade, int element, double gap)
    {
        IReadOnlyList<(Phrase Text, double Width, double Size)> lines = Lines(phrase, room, size);
        var strips = new List<Strip>();
        for (int i = 0; i < lines.Count; i++)
        {
            var piece = new TextPiece(left, Baseline(size), lines[i].Width, lines[i].Size, lines[i].Text, shade, element);
            strips.Add(new(size * SheetStyle.Leading, [piece])
            {
                Gap = i == 0 ? gap : 0,
                KeepsWithNext = i < lines.Count - 1 && (i == 0 || i == lines.Count - 2),
            });
        }
        return strips;
    }

    /// <summary>Where the baseline stands in a line, from its top.</summary>
    public static double Baseline(double size) => size * (((SheetStyle.Leading - TextMeasure.Ascent - TextMeasure.Descent) / 2) + TextMeasure.Ascent);

    /// <summary>Joins strips that must not be parted into one, which is split again between them if it is higher than a page.</summary>
    public static Strip Joined(IReadOnlyList<Strip> strips, double gap)
    {
        var pieces = ImmutableArray.CreateBuilder<LayoutPiece>();
        double y = 0;
        foreach (Strip strip in strips)
        {
            if (y > 0) y += strip.Gap;
            foreach (LayoutPiece piece in strip.Pieces) pieces.Add(piece.Moved(0, y));
            y += strip.Height;
        }
        return new(y, pieces.ToImmutable()) { Gap = gap, Split = (_, _) => strips };
    }
}
