using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>A sign of a drawing for which its key has words.</summary>
internal enum KeySign
{
    /// <summary>The line of a cut.</summary>
    Cut,

    /// <summary>The line of a cut that waits for a reading.</summary>
    Waiting,

    /// <summary>The ring that small figures run from.</summary>
    Origin,

    /// <summary>The arrow at the end of a running figure.</summary>
    Arrow,

    /// <summary>Hatching.</summary>
    Hatch,

    /// <summary>The thin broken edge of a flaw.</summary>
    Flaw,
}

/// <summary>The key under a drawing: each sign that occurs in it, drawn as there, with plain words after it.</summary>
internal sealed class DrawingKey
{
    // Two dashes and the gap between them, as a cut is printed; the step of lines is that of the words under a drawing.
    private const double CutSample = 13.2, SmallSample = 4.5, BeforeWords = 1.4, BetweenEntries = 5, Step = 1.5;
    private readonly double _size;
    private readonly ImmutableArray<(KeySign Sign, Phrase Words, double X, int Line)> _entries;
    private readonly int _lines;

    /// <summary>Sets the entries into lines.</summary>
    /// <param name="entries">In order.</param>
    /// <param name="size">Height of the em of the words.</param>
    /// <param name="width">The room across.</param>
    public DrawingKey(IEnumerable<(KeySign Sign, string Words)> entries, double size, double width)
    {
        _size = size;
        double x = 0;
        int line = 0;
        var set = ImmutableArray.CreateBuilder<(KeySign, Phrase, double, int)>();
        foreach ((KeySign sign, string words) in entries)
        {
            var phrase = Phrase.Of(words);
            double wide = SampleWidth(sign) + BeforeWords + TextMeasure.Width(phrase, size);
            if (x > 0 && x + wide > width) (x, line) = (0, line + 1);
            set.Add((sign, phrase, x, line));
            x += wide + BetweenEntries;
        }
        _entries = set.ToImmutable();
        _lines = _entries.IsEmpty ? 0 : line + 1;
    }

    /// <summary>With the room under it.</summary>
    public double Height => _lines == 0 ? 0 : (_lines * _size * Step) + 1;

    public IEnumerable<SceneItem> Draw(double left, double top)
    {
        foreach ((KeySign sign, Phrase words, double x, int line) in _entries)
        {
            double baseline = top + ((line + 0.8) * _size * Step), middle = baseline - (TextMeasure.Middle * _size), from = left + x;
            yield return new GroupItem("", "key", [.. Sample(sign, from, middle), new TextItem(new(from + SampleWidth(sign) + BeforeWords, baseline), words, _size, Anchor.Start, Ink.Soft)]);
        }
    }

    private static double SampleWidth(KeySign sign) => sign is KeySign.Cut or KeySign.Waiting ? CutSample : SmallSample;

    private static ImmutableArray<SceneItem> Sample(KeySign sign, double from, double middle) => sign switch
    {
        KeySign.Cut => [new LineItem(new(from, middle), new(from + CutSample, middle), Ink.Pencil)],
        KeySign.Waiting => [new LineItem(new(from, middle), new(from + CutSample, middle), Ink.Hidden)],
        KeySign.Origin => OriginMarks.Mark(new(from + 1.4, middle), 0.85, true),
        KeySign.Arrow => RunningFigure.Arrow(new(from + SmallSample - RunningFigure.ArrowLength, middle), new(from + SmallSample, middle)),
        KeySign.Hatch => [new HatchItem(new(from, middle - 1.3), SmallSample, 2.6), ShapeItem.Rectangle(from, middle - 1.3, SmallSample, 2.6, Ink.Soft, Wash.None)],
        _ => [ShapeItem.Rectangle(from, middle - 1.3, SmallSample, 2.6, Ink.Hidden, Wash.None)],
    };
}
