using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>Keeps what paper the labels have taken, so that no label lies on another.</summary>
internal sealed class LabelBook
{
    private readonly List<Box> _taken = [];

    /// <summary>Everything taken so far.</summary>
    public IReadOnlyList<Box> Taken => _taken;

    /// <summary>Takes paper whatever lies there.</summary>
    public void Take(Box box) => _taken.Add(box);

    /// <summary>Takes the paper of a text if it lies inside <paramref name="room"/> and on nothing else.</summary>
    public bool TryTake(TextItem text, Box room)
    {
        Box ink = Tight(text);
        if (!room.Holds(ink) || _taken.Any(ink.Overlaps)) return false;
        _taken.Add(ink);
        return true;
    }

    /// <summary>A text centred on a point.</summary>
    public static TextItem Centred(Point middle, Phrase phrase, double size, Ink ink, double turn = 0, bool hasGround = false)
    {
        double drop = TextMeasure.CapHeight / 2 * size;
        Point at = turn == 0 ? new(middle.X, middle.Y + drop) : new(middle.X + drop, middle.Y);
        return new(at, phrase, size, Anchor.Middle, ink, turn, hasGround);
    }

    /// <summary>The ink of marks and figures: they have hardly anything under the baseline, so less is taken than for words.</summary>
    public static Box Tight(TextItem text)
    {
        Box box = Box.Of(text);
        double spare = (TextMeasure.Descent - 0.1) * text.Size;
        return text.Turn == 0 ? box with { Bottom = box.Bottom - spare } : box with { Right = box.Right - spare };
    }
}
