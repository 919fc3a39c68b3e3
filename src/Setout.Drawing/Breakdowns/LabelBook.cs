using System.Buffers;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>Keeps what paper the labels have taken, so that no label lies on another.</summary>
internal sealed class LabelBook
{
    /// <summary>Paper left between the ink of two labels.</summary>
    private const double Clear = 0.3;

    private static readonly SearchValues<char> s_tails = SearchValues.Create("gjpqyQ,;()[]{}/|_");
    private readonly BoxGrid _taken = new();

    /// <summary>Everything taken so far.</summary>
    public IReadOnlyList<Box> Taken => _taken.All;

    /// <summary>What was taken on or beside some paper.</summary>
    public IEnumerable<Box> TakenNear(Box paper) => _taken.Near(paper).Select(i => _taken.All[i]);

    /// <summary>Takes paper whatever lies there.</summary>
    public void Take(Box box) => _taken.Add(box);

    /// <summary>Takes the paper of a text if it lies inside <paramref name="room"/> and on nothing else.</summary>
    public bool TryTake(TextItem text, Box room) => TryTake(Tight(text), room);

    /// <summary>Whether paper lies inside <paramref name="room"/> and clear of everything taken.</summary>
    public bool IsFree(Box ink, Box room) => room.Holds(ink) && !TakenNear(ink.Grown(Clear)).Any(ink.Grown(Clear).Overlaps);

    /// <summary>Takes paper if it lies inside <paramref name="room"/> and on nothing else.</summary>
    public bool TryTake(Box ink, Box room)
    {
        if (!IsFree(ink, room)) return false;
        _taken.Add(ink);
        return true;
    }

    /// <summary>A text centred on a point.</summary>
    public static TextItem Centred(Point middle, Phrase phrase, double size, Ink ink, double turn = 0, bool hasGround = false)
    {
        double drop = TextMeasure.Middle * size;
        Point at = turn == 0 ? new(middle.X, middle.Y + drop) : new(middle.X + drop, middle.Y);
        return new(at, phrase, size, Anchor.Middle, ink, turn, hasGround);
    }

    /// <summary>The ink of a label: capitals and digits have nothing under the baseline, so less is taken than for words with tails.</summary>
    public static Box Tight(TextItem text)
    {
        bool hasFraction = text.Text.Runs.Any(r => r.Figure is { HasFraction: true });
        bool hasTails = text.Text.Runs.Any(r => r.Figure is null && r.Words.AsSpan().ContainsAny(s_tails));
        double top = (hasFraction ? 0 : TextMeasure.Ascent - 0.72) * text.Size, bottom = hasTails ? 0 : (TextMeasure.Descent - (hasFraction ? TextMeasure.FractionDescent : 0.03)) * text.Size;
        Box box = Box.Of(text);
        return text.Turn == 0 ? box with { Top = box.Top + top, Bottom = box.Bottom - bottom } : box with { Left = box.Left + top, Right = box.Right - bottom };
    }
}
