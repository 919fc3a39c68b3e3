using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>
/// A rectangle on a sheet, measured from the trued reference corner: x along the reference edge, y away from it. On the paper the reference
/// edge is at the head, x runs to the right and y down.
/// </summary>
public readonly record struct SheetRect(Length X, Length Y, Length Width, Length Height)
{
    /// <summary>The far end along the reference edge.</summary>
    public Length Right => X + Width;

    /// <summary>The far side from the reference edge.</summary>
    public Length Bottom => Y + Height;
}

/// <summary>Which way a cut or the grain runs.</summary>
public enum SheetAxis
{
    /// <summary>Parallel to the reference edge: a rip of a sheet that lies along it.</summary>
    Along,

    /// <summary>Square to the reference edge.</summary>
    Across,
}

/// <summary>A part on the sheet.</summary>
/// <param name="Key">Its permanent key.</param>
/// <param name="Title">Words for it; this is where its size is told to a screen reader.</param>
/// <param name="Mark">The short mark pencilled on it, such as <c>L3</c>.</param>
/// <param name="Area">Its finished place.</param>
public sealed record SheetPart(string Key, string Title, string Mark, SheetRect Area)
{
    /// <summary>Whether work on it is held back until a reading: its mark is slanted and its title should say why.</summary>
    public bool IsHeld { get; init; }
}

/// <summary>A first cut, lettered in sawing order.</summary>
/// <param name="Letter">Its letter; two signs at most; empty for a cut that waits.</param>
/// <param name="At">Running distance of its line from the reference corner.</param>
/// <param name="Axis">Which way it runs.</param>
/// <param name="Figure">The running dimension as written at the edge.</param>
public sealed record PrimaryCut(string Letter, Length At, SheetAxis Axis, Phrase Figure)
{
    /// <summary>Where along its line it begins; null for the edge of the sheet. A cut that begins inside has its figure at its own beginning.</summary>
    public Length? From { get; init; }

    /// <summary>Where along its line it ends; null for the far edge of the sheet.</summary>
    public Length? To { get; init; }

    /// <summary>Whether it waits for a reading: drawn thin.</summary>
    public bool IsWaiting { get; init; }
}

/// <summary>A cut inside a strip, with a small running figure.</summary>
/// <param name="At">Running distance of its line.</param>
/// <param name="Axis">Which way it runs.</param>
/// <param name="From">Where along its line it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Figure">The running figure; empty for none.</param>
public sealed record InnerCut(Length At, SheetAxis Axis, Length From, Length To, Phrase Figure)
{
    /// <summary>Where the figure runs from, as a running distance like <see cref="At"/>: the edge of the strip or length that this cut divides. Zero for the edge of the sheet.</summary>
    public Length Origin { get; init; }

    /// <summary>Whether it waits for a reading: drawn thin.</summary>
    public bool IsWaiting { get; init; }
}

/// <summary>What a strip is called once it is off.</summary>
/// <param name="Name">Its name, such as <c>A.1</c>.</param>
/// <param name="Axis">Which way it runs.</param>
/// <param name="From">Where it begins, as a running distance.</param>
/// <param name="To">Where it ends.</param>
public sealed record StripName(string Name, SheetAxis Axis, Length From, Length To);

/// <summary>What is kept for the rack, with its words.</summary>
public sealed record KeptPiece(string Key, SheetRect Area, Phrase Words)
{
    /// <summary>What is said where there is no room for all the words; empty for nothing shorter.</summary>
    public Phrase Brief { get; init; } = Phrase.Empty;
}

/// <summary>All that the marking-out drawing of one sheet shows.</summary>
/// <param name="Title">What it is, such as <c>Birch 3/4, sheet B</c>.</param>
/// <param name="Description">Sentences for someone who cannot see it: the cuts in order.</param>
/// <param name="Along">Length of the sheet along the reference edge.</param>
/// <param name="Across">Its extent away from the reference edge.</param>
public sealed record SheetInput(string Title, string Description, Length Along, Length Across)
{
    /// <summary>Parts.</summary>
    public ImmutableArray<SheetPart> Parts { get; init; } = [];

    /// <summary>First cuts in sawing order.</summary>
    public ImmutableArray<PrimaryCut> PrimaryCuts { get; init; } = [];

    /// <summary>Cuts inside the strips.</summary>
    public ImmutableArray<InnerCut> InnerCuts { get; init; } = [];

    /// <summary>Waste.</summary>
    public ImmutableArray<SheetRect> Waste { get; init; } = [];

    /// <summary>What is kept.</summary>
    public ImmutableArray<KeptPiece> Kept { get; init; } = [];

    /// <summary>Names of strips, beside the letters of the first cuts where there is room.</summary>
    public ImmutableArray<StripName> Strips { get; init; } = [];

    /// <summary>Which way the grain runs; null for a sheet without.</summary>
    public SheetAxis? Grain { get; init; } = SheetAxis.Along;

    /// <summary>At the head on the left: what the sheet is.</summary>
    public Phrase HeaderLeft { get; init; } = Phrase.Empty;

    /// <summary>After it, smaller and soft: how it reads, which face is up.</summary>
    public Phrase HeaderNote { get; init; } = Phrase.Empty;

    /// <summary>At the head on the right, soft.</summary>
    public Phrase HeaderRight { get; init; } = Phrase.Empty;

    /// <summary>Over the reference edge, soft, such as <c>reference edge 0: trued, against the fence for a</c>.</summary>
    public Phrase ReferenceNote { get; init; } = Phrase.Empty;

    /// <summary>Under the drawing, soft.</summary>
    public Phrase Footer { get; init; } = Phrase.Empty;
}

/// <summary>Sizes of breakdown drawings in paper millimetres.</summary>
/// <param name="Width">The width of the paper; all of it is used.</param>
/// <param name="Height">The most height that may be used.</param>
public sealed record BreakdownPaper(double Width, double Height)
{
    /// <summary>
    /// As high as a drawing of a sheet may become where its strips are narrow or its figures find no room; counts where <see cref="Height"/> is more. Default 200: what
    /// fits a page of Letter or A4 below its heading, our own.
    /// </summary>
    public double MostHeight { get; init; } = 200;

    /// <summary>The most height of the first drawing of boards, where it shares its page with something; null for <see cref="Height"/>.</summary>
    public double? FirstHeight { get; init; }

    /// <summary>Running dimensions; default 3.9 (11 pt).</summary>
    public double FigureSize { get; init; } = 3.9;

    /// <summary>Small running figures of the strips; default 3 (8.5 pt).</summary>
    public double SmallSize { get; init; } = 3;

    /// <summary>Marks at their largest; default 5.</summary>
    public double MarkSize { get; init; } = 5;

    /// <summary>No mark and no figure is smaller: 7 pt.</summary>
    public const double LeastSize = 2.47;
}
