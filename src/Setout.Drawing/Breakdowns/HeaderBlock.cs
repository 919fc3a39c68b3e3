using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>The line over a drawing: what it is on the left, a remark on the right; under each other where the paper is narrow.</summary>
internal sealed class HeaderBlock
{
    private readonly ImmutableArray<Phrase> _left, _right;
    private readonly double _size, _softSize;
    private readonly bool _isOneLine;

    public HeaderBlock(Phrase left, Phrase right, double size, double softSize, double width)
    {
        (_size, _softSize) = (size, softSize);
        _left = TextMeasure.Wrap(left, size, width);
        _right = TextMeasure.Wrap(right, softSize, width);
        _isOneLine = _left.Length <= 1 && _right.Length <= 1
            && _left.Sum(l => TextMeasure.Width(l, size)) + _right.Sum(r => TextMeasure.Width(r, softSize)) + 6 <= width;
    }

    /// <summary>With the room under it.</summary>
    public double Height => _left.IsEmpty && _right.IsEmpty ? 0
        : 3.5 + (_isOneLine ? Math.Max(_left.Length * _size, _right.Length * _softSize) * 1.25 : (_left.Length * _size * 1.25) + (_right.Length * _softSize * 1.3));

    public IEnumerable<SceneItem> Draw(double left, double top, double right)
    {
        double y = top;
        foreach (Phrase line in _left)
        {
            y += _size * 1.25;
            yield return new TextItem(new(left, y - (0.25 * _size)), line, _size, Anchor.Start, Ink.Outline);
        }
        if (_isOneLine)
        {
            double baseline = _left.IsEmpty ? top + _softSize : y - (0.25 * _size);
            foreach (Phrase line in _right) yield return new TextItem(new(right, baseline), line, _softSize, Anchor.End, Ink.Soft);
            yield break;
        }
        foreach (Phrase line in _right)
        {
            y += _softSize * 1.3;
            yield return new TextItem(new(left, y - (0.25 * _softSize)), line, _softSize, Anchor.Start, Ink.Soft);
        }
    }
}
