using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Readings;

/// <summary>A spot where the thickness of a sheet is read.</summary>
/// <param name="Along">From the left end, along the grain.</param>
/// <param name="Across">From the upper edge.</param>
/// <param name="Figure">What was read there; empty where nothing was.</param>
public sealed record SheetSpot(Length Along, Length Across, Phrase Figure);

/// <summary>A sheet with the spots where it is read.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Description">Sentences for someone who cannot see it.</param>
/// <param name="Along">Its length along the grain; above zero.</param>
/// <param name="Across">Its width; above zero.</param>
/// <param name="Name">Written in its middle.</param>
/// <param name="Inset">How far the spots stay from edges and corners.</param>
/// <param name="InsetWords">Said of that border.</param>
/// <param name="Spots">At least one; each at least <paramref name="Inset"/> from the edges.</param>
/// <param name="Note">Under the sheet, soft.</param>
public sealed record SheetInput(
    string Title, string Description, Length Along, Length Across, Phrase Name, Length Inset, Phrase InsetWords, ImmutableArray<SheetSpot> Spots, Phrase Note);

/// <summary>What is seen from above.</summary>
public enum SeenFromAbove
{
    /// <summary>A bay between its slide panels: read inside, the narrowest counts.</summary>
    Opening,

    /// <summary>A box that is glued: read over its sides, the widest counts.</summary>
    Box,
}

/// <summary>A width that was read.</summary>
/// <param name="FromFront">How far behind the front.</param>
/// <param name="Width">What was read; above zero.</param>
/// <param name="Figure">The same as it is written.</param>
/// <param name="Spot">Where that is, in a word such as <c>front</c>.</param>
public sealed record WidthRead(Length FromFront, Length Width, Phrase Figure, string Spot);

/// <summary>A bay or a box from above, its front at the foot of the drawing, with the widths that were read.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Description">Sentences for someone who cannot see it.</param>
/// <param name="Seen">Which of the two.</param>
/// <param name="Depth">From front to back; above zero.</param>
/// <param name="Wall">How thick the panels beside it, or its sides, are.</param>
/// <param name="Slide">How thick a slide is, drawn dashed because it is not there when one reads; none for nought.</param>
/// <param name="Reads">Two or more, from front to back.</param>
/// <param name="Exaggerated">How many times larger than they are the differences of the widths are drawn; 1 or more.</param>
/// <param name="WallWords">Said of a wall, at the left.</param>
/// <param name="Note">Under it, soft.</param>
public sealed record WidthsInput(
    string Title, string Description, SeenFromAbove Seen, Length Depth, Length Wall, Length Slide, ImmutableArray<WidthRead> Reads, int Exaggerated, Phrase WallWords, Phrase Note)
{
    /// <summary>The reading that counts: the narrowest of an opening, the widest of a box; the one nearest to the front where several are alike.</summary>
    public WidthRead Counts => Seen == SeenFromAbove.Opening ? Reads.MinBy(r => r.Width)! : Reads.MaxBy(r => r.Width)!;
}

/// <summary>Sizes of drawings of readings, in paper millimetres.</summary>
/// <param name="Width">The width of the paper; all of it is used. At least 100.</param>
/// <param name="Height">The most height of what is drawn, its words not counted.</param>
public sealed record ReadingPaper(double Width, double Height)
{
    /// <summary>Figures and names; default 4 (11.3 pt).</summary>
    public double TextSize { get; init; } = 4;

    /// <summary>Soft words; default 3.4 (9.6 pt).</summary>
    public double SmallSize { get; init; } = 3.4;
}
