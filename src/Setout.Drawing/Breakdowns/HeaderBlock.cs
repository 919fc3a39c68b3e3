using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>The line over a drawing: what it is, a note after it, a remark on the right; under each other where the paper is narrow.</summary>
internal sealed class HeaderBlock
{
    private readonly ImmutableArray<(ImmutableArray<TextItem> Texts, double Below)> _lines;

    public HeaderBlock(Phrase left, Phrase note, Phrase right, double size, double softSize, double width)
    {
        const double between = 2.5, least = 6;
        double leftWidth = TextMeasure.Width(left, size), noteWidth = TextMeasure.Width(note, softSize), rightWidth = TextMeasure.Width(right, softSize);
        double noteAt = left.IsEmpty ? 0 : leftWidth + between;
        bool noteFits = noteAt + noteWidth <= width;
        bool rightFits = (noteFits ? noteAt + noteWidth : leftWidth) + least + rightWidth <= width;
        ImmutableArray<(ImmutableArray<TextItem>, double)>.Builder lines = ImmutableArray.CreateBuilder<(ImmutableArray<TextItem>, double)>();
        TextItem Soft(Phrase text, double x, Anchor anchor) => new(new(x, 0), text, softSize, anchor, Ink.Soft);
        ImmutableArray<Phrase> heads = TextMeasure.Wrap(left, size, width);
        for (int i = 0; i < Math.Max(heads.Length, 1); i++)
        {
            List<TextItem> line = heads.IsEmpty ? [] : [new(new(0, 0), heads[i], size, Anchor.Start, Ink.Outline)];
            if (i == 0 && heads.Length <= 1)
            {
                if (noteFits && !note.IsEmpty) line.Add(Soft(note, noteAt, Anchor.Start));
                if (rightFits && !right.IsEmpty) line.Add(Soft(right, width, Anchor.End));
            }
            if (line.Count > 0) lines.Add(([.. line], size * 1.25));
        }
        bool isOneHead = heads.Length <= 1;
        if (!(noteFits && isOneHead)) Under(note);
        if (!(rightFits && isOneHead)) Under(right);
        _lines = lines.ToImmutable();

        void Under(Phrase text)
        {
            foreach (Phrase line in TextMeasure.Wrap(text, softSize, width)) lines.Add(([Soft(line, 0, Anchor.Start)], softSize * 1.35));
        }
    }

    /// <summary>With the room under it.</summary>
    public double Height => _lines.IsEmpty ? 0 : _lines.Sum(l => l.Below) + 3.5;

    public IEnumerable<SceneItem> Draw(double left, double top)
    {
        double y = top;
        foreach ((ImmutableArray<TextItem> texts, double below) in _lines)
        {
            y += below;
            foreach (TextItem text in texts) yield return text with { At = new(left + text.At.X, y - (below * 0.2)) };
        }
    }
}
