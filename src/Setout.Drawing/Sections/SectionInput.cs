using System.Collections.Immutable;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Sections;

/// <summary>A part as the plane cuts it.</summary>
/// <param name="Key">Its permanent key.</param>
/// <param name="Title">Words for it.</param>
/// <param name="Label">Its short name on the drawing; empty for none.</param>
/// <param name="Area">Its rectangle, as far as it goes.</param>
/// <param name="Taken">What is cut out of it there.</param>
public sealed record SectionPart(string Key, string Title, Phrase Label, ModelRect Area, ImmutableArray<ModelRect> Taken)
{
    /// <summary>Which way its hatching runs: neighbours take turns.</summary>
    public bool IsFalling { get; init; }

    /// <summary>What is bought and only stands there, such as a slide: broken, not hatched.</summary>
    public bool IsGhost { get; init; }

    /// <summary>What is not cut and stands beyond the plane: in thin lines, not hatched.</summary>
    public bool IsBeyond { get; init; }
}

/// <summary>A figure between two edges.</summary>
/// <param name="Span">Where it runs, what stands on it.</param>
/// <param name="IsUpright">Whether it runs up and down.</param>
/// <param name="At">Across the span, the place that it belongs to: the figure is set on the nearer side of the drawing.</param>
public sealed record SectionFigure(ElevationSpan Span, bool IsUpright, Core.Measures.Length At);

/// <summary>A section through some parts of a piece.</summary>
/// <param name="Caption">What it shows, in a few words.</param>
/// <param name="Window">What of the model is shown.</param>
/// <param name="Parts">What the plane cuts, and what is seen beyond it; painted in order, so the farthest comes first.</param>
/// <param name="Figures">The figures that matter.</param>
public sealed record SectionInput(string Caption, ModelRect Window, ImmutableArray<SectionPart> Parts, ImmutableArray<SectionFigure> Figures)
{
    /// <summary>Whether the floor is drawn, at height nought.</summary>
    public bool HasFloor { get; init; }
}
