using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents;

/// <summary>One thing that a section holds.</summary>
public abstract record Block
{
    /// <summary>Whether it stays on the page of what follows it. Headings always do.</summary>
    public bool KeepsWithNext { get; init; }
}

/// <summary>How large a text is set.</summary>
public enum TextSize
{
    /// <summary>Origins and remarks, 9 pt, soft.</summary>
    Small,

    /// <summary>Running text, 10.5 pt.</summary>
    Body,

    /// <summary>A figure that someone cuts by, 14 pt heavy.</summary>
    Figure,

    /// <summary>One figure that a page is about, 24 pt heavy: legible at arm's length.</summary>
    Large,
}

/// <summary>A heading inside a section. Stays with what follows.</summary>
public sealed record HeadingBlock(Phrase Text) : Block
{
    /// <summary>A heading of words.</summary>
    public HeadingBlock(string text) : this(Phrase.Of(text))
    {
    }
}

/// <summary>Running text. Breaks at spaces, never inside a figure.</summary>
public sealed record ParagraphBlock(Phrase Text, TextSize Size = TextSize.Body) : Block
{
    /// <summary>A paragraph of words.</summary>
    public ParagraphBlock(string text, TextSize size = TextSize.Body) : this(Phrase.Of(text), size)
    {
    }
}

/// <summary>A ruled box that begins with the word Caution. Not split unless it is longer than a page.</summary>
/// <param name="Lines">One paragraph each.</param>
public sealed record CautionBlock(ImmutableArray<Phrase> Lines) : Block;

/// <summary>How a drawing takes its place.</summary>
public enum ScenePlace
{
    /// <summary>In the column among the text.</summary>
    InColumn,

    /// <summary>On a page of its own, lying down if the drawing is then larger.</summary>
    WholePage,
}

/// <summary>A drawing: at its true size if that fits, else made smaller with a note that says so. Never split.</summary>
public sealed record SceneBlock(Scene Scene, ScenePlace Place = ScenePlace.InColumn) : Block;

/// <summary>What a term of a written sum does.</summary>
public enum TermSign
{
    /// <summary>The first term: no sign.</summary>
    None,

    /// <summary>Added.</summary>
    Plus,

    /// <summary>Taken away.</summary>
    Minus,
}

/// <summary>One term of a written sum.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Origin">Where it comes from: given, rule, default, reading. May be empty.</param>
/// <param name="Sign">Its sign.</param>
/// <param name="Figure">Its figure, such as <c>2 x 1/2</c>.</param>
public sealed record WorkingTerm(Phrase Label, Phrase Origin, TermSign Sign, Phrase Figure);

/// <summary>The working of a size, written as a sum: the size large, its terms, a rule, the sum.</summary>
/// <param name="Name">Name of the size.</param>
/// <param name="Result">The figure to cut.</param>
/// <param name="Terms">In order.</param>
/// <param name="SumLabel">Label of the sum.</param>
/// <param name="Sum">The sum.</param>
public sealed record WorkingBlock(Phrase Name, Phrase Result, ImmutableArray<WorkingTerm> Terms, Phrase SumLabel, Phrase Sum) : Block;

/// <summary>One step to do and tick.</summary>
/// <param name="Text">What to do.</param>
/// <param name="Note">A remark below it; may be empty.</param>
/// <param name="Caution">A caution that belongs to this step; may be empty.</param>
public sealed record Step(Phrase Text, Phrase Note, Phrase Caution)
{
    /// <summary>A step without a remark.</summary>
    public Step(Phrase text) : this(text, Phrase.Empty, Phrase.Empty)
    {
    }
}

/// <summary>Numbered steps, each with a box to tick.</summary>
/// <param name="Steps">In order.</param>
/// <param name="First">The number of the first.</param>
public sealed record StepsBlock(ImmutableArray<Step> Steps, int First = 1) : Block;

/// <summary>Blocks that stay together on a page, unless they are longer than one. Drawings cannot be among them.</summary>
/// <param name="Blocks">In reading order.</param>
public sealed record TogetherBlock(ImmutableArray<Block> Blocks) : Block;

/// <summary>What follows begins on a new page.</summary>
public sealed record PageBreakBlock : Block;
