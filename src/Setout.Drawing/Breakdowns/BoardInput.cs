using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>A length on a board.</summary>
/// <param name="From">Running distance from the trued end.</param>
/// <param name="To">Running distance; larger.</param>
public readonly record struct BoardSpan(Length From, Length To);

/// <summary>A part cut from a board.</summary>
/// <param name="Key">Its permanent key.</param>
/// <param name="Title">Words for it, with its size.</param>
/// <param name="Mark">The short mark.</param>
/// <param name="Span">Its place.</param>
public sealed record BoardPart(string Key, string Title, string Mark, BoardSpan Span)
{
    /// <summary>Whether work on it is held back until a reading: its mark is slanted.</summary>
    public bool IsHeld { get; init; }
}

/// <summary>A cut square across a board.</summary>
/// <param name="At">Running distance from the trued end.</param>
/// <param name="Figure">The running figure.</param>
public sealed record BoardCut(Length At, Phrase Figure)
{
    /// <summary>Whether it waits for a reading: drawn thin.</summary>
    public bool IsWaiting { get; init; }
}

/// <summary>A stretch with words: a defect to cut round, or what is kept.</summary>
public sealed record BoardNote(BoardSpan Span, Phrase Words)
{
    /// <summary>Fewer words, which stand on the stretch where it has no room for all of them; the whole stands under the bar then. Empty, the default, for none.</summary>
    public Phrase Brief { get; init; } = Phrase.Empty;
}

/// <summary>One board.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">What stands over it, such as <c>board 3, poplar 4/4, 96 in</c>.</param>
/// <param name="Length">Its length.</param>
public sealed record BoardBar(string Key, Phrase Name, Length Length)
{
    /// <summary>The board that this bar is a lane of; bars of one board that follow each other stay together on a drawing where they fit. Empty for a bar by itself.</summary>
    public string Board { get; init; } = "";

    /// <summary>Its width; the bar is as high as the scale makes it, within limits that keep marks legible. Zero for a usual bar.</summary>
    public Length Width { get; init; }

    /// <summary>Parts.</summary>
    public ImmutableArray<BoardPart> Parts { get; init; } = [];

    /// <summary>Cuts with running figures.</summary>
    public ImmutableArray<BoardCut> Cuts { get; init; } = [];

    /// <summary>Waste, hatched.</summary>
    public ImmutableArray<BoardSpan> Waste { get; init; } = [];

    /// <summary>Defects, hatched and named.</summary>
    public ImmutableArray<BoardNote> Defects { get; init; } = [];

    /// <summary>What is kept.</summary>
    public ImmutableArray<BoardNote> Kept { get; init; } = [];
}

/// <summary>Boards on one drawing, all at one scale.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Description">Sentences for someone who cannot see it.</param>
/// <param name="Boards">In sawing order.</param>
public sealed record BoardsInput(string Title, string Description, ImmutableArray<BoardBar> Boards)
{
    /// <summary>At the head on the left.</summary>
    public Phrase HeaderLeft { get; init; } = Phrase.Empty;

    /// <summary>After it, smaller and soft.</summary>
    public Phrase HeaderNote { get; init; } = Phrase.Empty;

    /// <summary>At the head on the right, soft.</summary>
    public Phrase HeaderRight { get; init; } = Phrase.Empty;

    /// <summary>Under the boards, soft.</summary>
    public Phrase Footer { get; init; } = Phrase.Empty;
}
