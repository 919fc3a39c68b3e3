namespace Setout.Drawing.Scenes;

/// <summary>An upright rectangle on the paper, in millimetres, y down.</summary>
public readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    /// <summary>A box from corner and size.</summary>
    public static Box At(double left, double top, double width, double height) => new(left, top, left + width, top + height);

    /// <summary>Across.</summary>
    public double Width => Right - Left;

    /// <summary>Down.</summary>
    public double Height => Bottom - Top;

    /// <summary>The middle.</summary>
    public Point Middle => new((Left + Right) / 2, (Top + Bottom) / 2);

    /// <summary>Whether the two share more than an edge.</summary>
    public bool Overlaps(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    /// <summary>Whether <paramref name="inner"/> lies inside, edges included.</summary>
    public bool Holds(Box inner) => inner.Left >= Left && inner.Top >= Top && inner.Right <= Right && inner.Bottom <= Bottom;

    /// <summary>The smallest box round both.</summary>
    public Box With(Box other) =>
        new(Math.Min(Left, other.Left), Math.Min(Top, other.Top), Math.Max(Right, other.Right), Math.Max(Bottom, other.Bottom));

    /// <summary>Larger by so much on every side; smaller when negative.</summary>
    public Box Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);

    /// <summary>Moved.</summary>
    public Box Moved(double dx, double dy) => new(Left + dx, Top + dy, Right + dx, Bottom + dy);

    /// <summary>The ink of a text: what no other text may touch.</summary>
    public static Box Of(TextItem text)
    {
        Box level = Level(text);
        return text.Turn switch
        {
            0 => level,
            90 => new(text.At.X - text.At.Y + level.Top, text.At.Y + text.At.X - level.Right, text.At.X - text.At.Y + level.Bottom, text.At.Y + text.At.X - level.Left),
            _ => throw new ArgumentOutOfRangeException(nameof(text), text.Turn, "Texts are level or read upwards."),
        };
    }

    /// <summary>The ink of a text before it is turned about its place.</summary>
    internal static Box Level(TextItem text)
    {
        double width = TextMeasure.Width(text.Text, text.Size);
        double left = text.At.X - (text.Anchor switch { Anchor.Start => 0, Anchor.Middle => width / 2, _ => width });
        return new(left, text.At.Y - (TextMeasure.Ascent * text.Size), left + width, text.At.Y + (TextMeasure.Descent * text.Size));
    }

    /// <summary>The paper laid under a text that asks for it, before it is turned about its place.</summary>
    internal static Box Ground(TextItem text) => Level(text).Grown(0.1 * text.Size);
}
