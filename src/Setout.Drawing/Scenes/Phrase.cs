using System.Collections.Immutable;
using Setout.Core.Measures.Text;

namespace Setout.Drawing.Scenes;

/// <summary>One run of a phrase: words, or a figure whose fraction is stacked when drawn and reads <c>23 1/4</c> when copied.</summary>
/// <param name="Words">The words, where this run is not a figure.</param>
/// <param name="Figure">The figure, where it is one.</param>
/// <param name="IsBold">Drawn heavy.</param>
public readonly record struct Run(string Words, Figure? Figure, bool IsBold)
{
    /// <summary>Drawn slanted: names of spaces and remarks. A run that is heavy too is drawn heavy and upright.</summary>
    public bool IsItalic { get; init; }

    /// <inheritdoc/>
    public override string ToString() => Figure?.ToString() ?? Words;
}

/// <summary>A line of text made of words and figures. Every writer draws the fractions itself; the plain text is the same everywhere.</summary>
/// <param name="Runs">In reading order.</param>
public sealed record Phrase(ImmutableArray<Run> Runs)
{
    /// <summary>Nothing.</summary>
    public static Phrase Empty { get; } = new([]);

    /// <summary>Words alone.</summary>
    public static Phrase Of(string words) => new([new Run(words, null, false)]);

    /// <summary>A figure alone.</summary>
    public static Phrase Of(Figure figure) => new([new Run("", figure, false)]);

    /// <summary>The same with words added.</summary>
    public Phrase Add(string words) => new(Runs.Add(new Run(words, null, false)));

    /// <summary>The same with a figure added.</summary>
    public Phrase Add(Figure figure) => new(Runs.Add(new Run("", figure, false)));

    /// <summary>The same, all heavy.</summary>
    public Phrase Bold() => new([.. Runs.Select(r => r with { IsBold = true })]);

    /// <summary>The same, all slanted.</summary>
    public Phrase Italic() => new([.. Runs.Select(r => r with { IsItalic = true })]);

    /// <summary>The same with another phrase after it.</summary>
    public Phrase Add(Phrase other) => new(Runs.AddRange(other.Runs));

    /// <summary>Whether there is nothing to draw.</summary>
    public bool IsEmpty => Runs.IsDefaultOrEmpty;

    /// <summary>The text as it is copied, searched and spoken.</summary>
    public string PlainText => string.Concat(Runs.Select(r => r.ToString()));

    /// <inheritdoc/>
    public override string ToString() => PlainText;
}
