using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents;

/// <summary>How dark something is printed. Never carries a meaning alone.</summary>
public enum Shade
{
    /// <summary>Full ink.</summary>
    Ink,

    /// <summary>Grey, for words of less weight; dark enough to read (contrast above 7 to 1 on white).</summary>
    Soft,

    /// <summary>Light grey, for rules between rows.</summary>
    Faint,
}

/// <summary>One positioned thing on a page. Millimetres from the top left corner, y down.</summary>
/// <param name="Element">Number of the <see cref="LayoutElement"/> it belongs to; <see cref="LayoutElement.Decoration"/> for none.</param>
public abstract record LayoutPiece(int Element)
{
    /// <summary>The same moved.</summary>
    public abstract LayoutPiece Moved(double x, double y);
}

/// <summary>One line of text.</summary>
/// <param name="X">Left end.</param>
/// <param name="Y">Baseline.</param>
/// <param name="Width">Width as measured.</param>
/// <param name="Size">Em in millimetres.</param>
/// <param name="Text">What it says.</param>
/// <param name="Shade">How dark.</param>
/// <param name="Element">What it belongs to.</param>
public sealed record TextPiece(double X, double Y, double Width, double Size, Phrase Text, Shade Shade, int Element) : LayoutPiece(Element)
{
    /// <inheritdoc/>
    public override LayoutPiece Moved(double x, double y) => this with { X = X + x, Y = Y + y };
}

/// <summary>A straight rule.</summary>
public sealed record RulePiece(double X1, double Y1, double X2, double Y2, double Weight, Shade Shade) : LayoutPiece(LayoutElement.Decoration)
{
    /// <inheritdoc/>
    public override LayoutPiece Moved(double x, double y) => this with { X1 = X1 + x, Y1 = Y1 + y, X2 = X2 + x, Y2 = Y2 + y };
}

/// <summary>A ruled rectangle: a box to tick, the frame of a caution.</summary>
public sealed record BoxPiece(double X, double Y, double Width, double Height, double Weight) : LayoutPiece(LayoutElement.Decoration)
{
    /// <inheritdoc/>
    public override LayoutPiece Moved(double x, double y) => this with { X = X + x, Y = Y + y };
}

/// <summary>A drawing.</summary>
/// <param name="X">Left edge.</param>
/// <param name="Y">Upper edge.</param>
/// <param name="Scale">1 for true size.</param>
/// <param name="Scene">The drawing.</param>
/// <param name="Element">What it belongs to.</param>
public sealed record ScenePiece(double X, double Y, double Scale, Scene Scene, int Element) : LayoutPiece(Element)
{
    /// <inheritdoc/>
    public override LayoutPiece Moved(double x, double y) => this with { X = X + x, Y = Y + y };
}

/// <summary>What a text is, for reading aloud.</summary>
public enum ElementKind
{
    /// <summary>The whole.</summary>
    Document,

    /// <summary>A section.</summary>
    Section,

    /// <summary>Title of the document.</summary>
    Title,

    /// <summary>Title of a section.</summary>
    SectionTitle,

    /// <summary>A heading.</summary>
    Heading,

    /// <summary>A paragraph.</summary>
    Paragraph,

    /// <summary>A caution.</summary>
    Caution,

    /// <summary>A table.</summary>
    Table,

    /// <summary>A row.</summary>
    Row,

    /// <summary>A cell that is the head of a column or of a group.</summary>
    HeadCell,

    /// <summary>A cell.</summary>
    Cell,

    /// <summary>A list of steps.</summary>
    Steps,

    /// <summary>One step.</summary>
    Step,

    /// <summary>A drawing.</summary>
    Figure,
}

/// <summary>A node of the reading order.</summary>
/// <param name="Id">Its number: its place in <see cref="DocumentLayout.Elements"/>.</param>
/// <param name="Parent">Number of what it lies in; <see cref="Decoration"/> for the root.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Words">Words for a drawing; else empty.</param>
public sealed record LayoutElement(int Id, int Parent, ElementKind Kind, string Words)
{
    /// <summary>The number of what is not read aloud.</summary>
    public const int Decoration = -1;
}

/// <summary>One page.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Width">Millimetres.</param>
/// <param name="Height">Millimetres.</param>
/// <param name="Section">Title of the section shown at its foot.</param>
/// <param name="Pieces">In reading order.</param>
public sealed record PageLayout(int Number, double Width, double Height, string Section, ImmutableArray<LayoutPiece> Pieces)
{
    /// <summary>The texts on it, in reading order.</summary>
    public IEnumerable<TextPiece> Texts => Pieces.OfType<TextPiece>();
}

/// <summary>A bookmark.</summary>
/// <param name="Title">Its words.</param>
/// <param name="Page">Page number from 1.</param>
public sealed record Bookmark(string Title, int Page);

/// <summary>What could not be set as asked.</summary>
/// <param name="Code">Stable code: <c>page.missing-glyph</c>, <c>page.too-wide</c>, <c>page.split</c>, <c>page.small-drawing</c>.</param>
/// <param name="Words">What and where.</param>
public sealed record LayoutRemark(string Code, string Words);

/// <summary>A document with everything in its place: the input of the PDF writer, and what tests look at.</summary>
/// <param name="Pages">In order.</param>
/// <param name="Elements">Reading order, as a tree; the first is the document.</param>
/// <param name="Bookmarks">In order.</param>
/// <param name="Remarks">What could not be set as asked; empty when all is well.</param>
public sealed record DocumentLayout(
    ImmutableArray<PageLayout> Pages, ImmutableArray<LayoutElement> Elements, ImmutableArray<Bookmark> Bookmarks, ImmutableArray<LayoutRemark> Remarks);
