using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>The words in what is kept: as large as they fit, level or turned, on one line or up to three.</summary>
internal sealed class KeptNames(SheetGround sheet)
{
    private const int MostLines = 3;
    private const double Step = 1.15;
    private readonly ImmutableArray<SceneItem>[] _words = new ImmutableArray<SceneItem>[sheet.Kept.Length];
    private readonly List<Phrase> _dropped = [];

    /// <summary>The words that found no room, even broken; the piece says only that it is kept.</summary>
    public IReadOnlyList<Phrase> Dropped => _dropped;

    /// <summary>The words of one kept piece.</summary>
    public ImmutableArray<SceneItem> Of(int kept) => _words[kept];

    public void Place()
    {
        for (int i = 0; i < _words.Length; i++)
        {
            Phrase words = sheet.Input.Kept[i].Words;
            _words[i] = words.IsEmpty ? [] : Words(words.Italic(), sheet.Kept[i]);
            if (_words[i].IsEmpty && !sheet.Input.Kept[i].Brief.IsEmpty) _words[i] = Words(sheet.Input.Kept[i].Brief.Italic(), sheet.Kept[i]);
            if (!_words[i].IsEmpty || words.IsEmpty) continue;
            _dropped.Add(words);
            _words[i] = Words(Phrase.Of("keep").Italic(), sheet.Kept[i]);
        }
    }

    /// <summary>Whole before large: words on one line may be a quarter smaller than they could be on two, and are broken in three only where nothing else fits.</summary>
    private ImmutableArray<SceneItem> Words(Phrase words, Box box)
    {
        double large = sheet.Paper.FigureSize, modest = Math.Max(BreakdownPaper.LeastSize, large * 0.75);
        foreach ((int lines, double least) in new[] { (1, modest), (2, modest), (1, BreakdownPaper.LeastSize), (2, BreakdownPaper.LeastSize), (MostLines, BreakdownPaper.LeastSize) })
            if (Words(words, box, lines, large, least) is { IsEmpty: false } set) return set;
        return [];
    }

    private ImmutableArray<SceneItem> Words(Phrase words, Box box, int most, double large, double least)
    {
        Box room = box.Grown(-SheetGround.Pad);
        for (double size = large; size >= least; size -= 0.25)
        {
            (double Turn, ImmutableArray<Phrase> Lines)[] ways = [(0, TextMeasure.Wrap(words, size, room.Width)), (90, TextMeasure.Wrap(words, size, room.Height))];
            foreach ((double turn, ImmutableArray<Phrase> lines) in ways.Where(w => w.Lines.Length <= most).OrderBy(w => w.Lines.Length))
            {
                // Homeless marks may have taken the middle.
                foreach (double share in new[] { 0.5, 0.35, 0.65, 0.2, 0.8 })
                {
                    ImmutableArray<TextItem> set = [.. lines.Select((line, i) => At(line, (i - ((lines.Length - 1) / 2.0)) * size * Step))];
                    Box ink = set.Select(LabelBook.Tight).Aggregate((all, next) => all.With(next));
                    if (sheet.Book.TryTake(ink, room)) return [.. set];

                    TextItem At(Phrase line, double off) => LabelBook.Centred(
                        turn == 0 ? new(box.Middle.X, box.Top + (box.Height * share) + off) : new(box.Left + (box.Width * share) + off, box.Middle.Y), line, size, Ink.Outline, turn);
                }
            }
        }
        return [];
    }
}
