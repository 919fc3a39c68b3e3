using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Dimensioning;

/// <summary>Where a chain stands round the drawing.</summary>
public enum Side
{
    /// <summary>Over the drawing, figures level.</summary>
    Above,

    /// <summary>Under the drawing, figures level.</summary>
    Below,

    /// <summary>Left of the drawing, figures read from the right.</summary>
    Left,

    /// <summary>Right of the drawing, figures read from the right.</summary>
    Right,
}

/// <summary>One dimension: from here to there, and the figure.</summary>
/// <param name="From">Paper millimetres along the chain: x for level chains, y for upright ones.</param>
/// <param name="To">The other end; larger than <paramref name="From"/>.</param>
/// <param name="Figure">What stands on the line.</param>
/// <param name="IsMarked">Drawn with the red pencil, and heavy.</param>
/// <param name="Key">The quantity's key, or empty.</param>
/// <param name="Title">Words for it.</param>
public sealed record DimensionSpan(double From, double To, Phrase Figure, bool IsMarked = false, string Key = "", string Title = "")
{
    /// <summary>Where the extension line of <see cref="From"/> begins, across the chain in paper millimetres: the edge it measures. Null for the outline.</summary>
    public double? FromFoot { get; init; }

    /// <summary>As <see cref="FromFoot"/>, of <see cref="To"/>.</summary>
    public double? ToFoot { get; init; }
}

/// <summary>Dimensions on one line. Spans may touch or leave gaps, never overlap.</summary>
/// <param name="Side">Where it stands; chains of one side are stacked outwards in their order.</param>
/// <param name="Spans">In any order.</param>
public sealed record DimensionChain(Side Side, ImmutableArray<DimensionSpan> Spans);

/// <summary>Sizes of dimensions, in paper millimetres.</summary>
public sealed record DimensionStyle
{
    /// <summary>Height of the em of the figures; default 4 (11.3 pt).</summary>
    public double FigureSize { get; init; } = 4;

    /// <summary>From the outline to the nearest figure; default 3.</summary>
    public double Clearance { get; init; } = 3;

    /// <summary>Between the rows of two chains; default 1.6.</summary>
    public double RowGap { get; init; } = 1.6;

    /// <summary>Half the width and height of the slanted end strokes; default 1.1.</summary>
    public double Tick { get; init; } = 1.1;
}

/// <summary>A figure where it came to stand.</summary>
/// <param name="Span">What it belongs to.</param>
/// <param name="Text">The text as drawn.</param>
/// <param name="Ink">What its signs cover.</param>
/// <param name="IsAside">Whether its span was too short, so that a leader brings it to the next row.</param>
public sealed record PlacedFigure(DimensionSpan Span, TextItem Text, Box Ink, bool IsAside);

/// <summary>Dimensions ready to be painted.</summary>
/// <param name="Items">Lines first, then a group for each figure.</param>
/// <param name="Figures">Every figure with its place.</param>
/// <param name="Bounds">Everything that was drawn, outline included.</param>
public sealed record DimensionLayout(ImmutableArray<SceneItem> Items, ImmutableArray<PlacedFigure> Figures, Box Bounds);
