using System.Collections.Immutable;

namespace Setout.Drawing.Scenes;

/// <summary>A place on the drawing in paper millimetres, x to the right, y down.</summary>
public readonly record struct Point(double X, double Y);

/// <summary>What a line or a text is for. The writers decide weight and colour, once, for screen, dark and print.</summary>
public enum Ink
{
    /// <summary>The outline of the piece, a sheet, the floor.</summary>
    Outline,

    /// <summary>Edges of parts.</summary>
    Part,

    /// <summary>Edges behind something.</summary>
    Hidden,

    /// <summary>Dimension lines and their figures.</summary>
    Dimension,

    /// <summary>Lines of the grain.</summary>
    Grain,

    /// <summary>Hatching of waste and of cut faces.</summary>
    Hatch,

    /// <summary>The red pencil: cuts, and what needs attention. Never the only sign: always with a word, a letter or a weight.</summary>
    Pencil,

    /// <summary>Words of less weight.</summary>
    Soft,
}

/// <summary>What an area is filled with.</summary>
public enum Wash
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The paper, covering what is behind.</summary>
    Paper,

    /// <summary>Solid wood.</summary>
    Wood,

    /// <summary>Panels and fronts.</summary>
    Panel,

    /// <summary>Metal: slides, handles.</summary>
    Metal,
}

/// <summary>Which end of a text its place names.</summary>
public enum Anchor
{
    /// <summary>The left end.</summary>
    Start,

    /// <summary>The middle.</summary>
    Middle,

    /// <summary>The right end.</summary>
    End,
}

/// <summary>One thing drawn.</summary>
public abstract record SceneItem;

/// <summary>A straight line.</summary>
public sealed record LineItem(Point From, Point To, Ink Ink) : SceneItem;

/// <summary>A closed shape, filled, edged or both.</summary>
public sealed record ShapeItem(ImmutableArray<Point> Corners, Ink? Edge, Wash Wash) : SceneItem
{
    /// <summary>A rectangle.</summary>
    public static ShapeItem Rectangle(double x, double y, double width, double height, Ink? edge, Wash wash) =>
        new([new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height)], edge, wash);
}

/// <summary>Slanted hatching inside a rectangle: waste, or a cut face.</summary>
public sealed record HatchItem(Point Corner, double Width, double Height) : SceneItem
{
    /// <summary>Whether the lines fall to the right instead of rising, so that one cut part is told from the next.</summary>
    public bool IsFalling { get; init; }
}

/// <summary>A text. <paramref name="At"/> is on its baseline.</summary>
/// <param name="At">The anchored point on the baseline.</param>
/// <param name="Text">What it says.</param>
/// <param name="Size">Height of the letters' em in paper millimetres.</param>
/// <param name="Anchor">Which end <paramref name="At"/> names.</param>
/// <param name="Ink">Its weight of meaning.</param>
/// <param name="Turn">Degrees, counter-clockwise positive: 90 reads upwards.</param>
/// <param name="HasGround">Whether the paper is laid under it so that lines do not cross the figures.</param>
public sealed record TextItem(Point At, Phrase Text, double Size, Anchor Anchor, Ink Ink, double Turn = 0, bool HasGround = false) : SceneItem;

/// <summary>Things that belong together: a part, an opening, a dimension. Carries the key of what it shows and its words for a screen reader.</summary>
/// <param name="Key">The permanent key of what is shown, or empty.</param>
/// <param name="Title">Words for it.</param>
/// <param name="Items">What it is made of, painted in order.</param>
public sealed record GroupItem(string Key, string Title, ImmutableArray<SceneItem> Items) : SceneItem;

/// <summary>A drawing: a sheet of paper of a size, with things on it painted in order. Pure data; writers turn it into SVG or PDF.</summary>
/// <param name="Width">Paper millimetres.</param>
/// <param name="Height">Paper millimetres.</param>
/// <param name="Title">What the drawing shows.</param>
/// <param name="Description">A sentence or more for someone who cannot see it.</param>
/// <param name="Items">Painted in order.</param>
public sealed record Scene(double Width, double Height, string Title, string Description, ImmutableArray<SceneItem> Items);
