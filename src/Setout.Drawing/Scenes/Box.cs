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
        double width = TextMeasure.Width(text.Text, text.Size);
        double start = text.Anchor switch { Anchor.Start => 0, Anchor.Middle => -width / 2, _ => -width };
        double up = TextMeasure.Ascent * text.Size, down = TextMeasure.Descent * text.Size;
        return text.Turn switch
        {
            0 => new(text.At.X + start, text.At.Y - up, text.At.X + start + width, text.At.Y + down),
            90 => new(text.At.X - up, text.At.Y - start - width, text.At.X + down, text.At.Y - start),
            _ => throw new ArgumentOutOfRangeException(nameof(text), text.Turn, "Texts are level or read upwards."),
        };
    }
}
