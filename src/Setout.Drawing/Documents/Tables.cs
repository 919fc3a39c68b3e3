using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents;

/// <summary>How the width of a column is found.</summary>
public enum WidthRule
{
    /// <summary>As wide as its widest cell, if there is room.</summary>
    Fit,

    /// <summary>So many millimetres.</summary>
    Fixed,

    /// <summary>A share of what the others leave.</summary>
    Share,
}

/// <summary>The width of a column. Columns that ask for more than the page has are all made narrower in proportion.</summary>
/// <param name="Rule">How it is found.</param>
/// <param name="Amount">Millimetres for <see cref="WidthRule.Fixed"/>, the share for <see cref="WidthRule.Share"/>; more than zero.</param>
public readonly record struct ColumnWidth(WidthRule Rule, double Amount)
{
    /// <summary>As wide as its widest cell.</summary>
    public static ColumnWidth Fit => new(WidthRule.Fit, 0);

    /// <summary>So many millimetres.</summary>
    public static ColumnWidth Millimetres(double amount) => new(WidthRule.Fixed, Positive(amount));

    /// <summary>A share of what is left.</summary>
    public static ColumnWidth Share(double amount) => new(WidthRule.Share, Positive(amount));

    private static double Positive(double amount) => amount > 0
        ? amount
        : throw new ArgumentOutOfRangeException(nameof(amount), amount, "More than zero.");
}

/// <summary>At which edge of its column a cell stands.</summary>
public enum ColumnAlign
{
    /// <summary>The left edge: words.</summary>
    Left,

    /// <summary>The right edge: figures.</summary>
    Right,

    /// <summary>The middle.</summary>
    Centre,
}

/// <summary>A column.</summary>
/// <param name="Title">Head of the column, repeated on each page.</param>
/// <param name="Width">Its width.</param>
/// <param name="Align">Where cells stand.</param>
/// <param name="Size">Size of the text; <see cref="TextSize.Figure"/> for figures that someone cuts by.</param>
public sealed record Column(string Title, ColumnWidth Width, ColumnAlign Align = ColumnAlign.Left, TextSize Size = TextSize.Body);

/// <summary>A cell: one or more phrases, each beginning a line of its own.</summary>
public sealed record Cell(ImmutableArray<Phrase> Phrases)
{
    /// <summary>A cell of one phrase.</summary>
    public static Cell Of(Phrase phrase) => new([phrase]);

    /// <summary>A cell of words.</summary>
    public static Cell Of(string words) => new([Phrase.Of(words)]);
}

/// <summary>A line of a table.</summary>
public abstract record TableRow;

/// <summary>A row with one cell a column. Never split, unless it is longer than a page.</summary>
public sealed record CellRow(ImmutableArray<Cell> Cells) : TableRow
{
    /// <summary>A row from cells.</summary>
    public static CellRow Of(params ReadOnlySpan<Cell> cells) => new([.. cells]);
}

/// <summary>A row that names the rows below it. Stays with the next, and is repeated with "continued" where a page ends among them.</summary>
public sealed record GroupRow(Phrase Title) : TableRow;

/// <summary>Whether rows carry a box to tick.</summary>
public enum TickBoxes
{
    /// <summary>None.</summary>
    None,

    /// <summary>At the left of each row.</summary>
    EachRow,
}

/// <summary>A table. Its head is repeated on each page.</summary>
/// <param name="Columns">At least one.</param>
/// <param name="Rows">In order; each <see cref="CellRow"/> has as many cells as there are columns.</param>
/// <param name="TickBoxes">Whether rows have boxes to tick.</param>
public sealed record TableBlock(ImmutableArray<Column> Columns, ImmutableArray<TableRow> Rows, TickBoxes TickBoxes = TickBoxes.None) : Block;
