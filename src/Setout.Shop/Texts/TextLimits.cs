using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>The most a text may hold. Counted while reading, so that a hostile text is refused early.</summary>
/// <param name="Bytes">Size of the text in UTF-8.</param>
/// <param name="Depth">Lists and maps inside each other.</param>
/// <param name="Nodes">Values, lists and maps in all.</param>
/// <param name="Findings">Mistakes that are told; a last finding says when there are more.</param>
public sealed record TextLimits(int Bytes = 8 * 1024 * 1024, int Depth = 40, int Nodes = 400_000, int Findings = 100)
{
    /// <summary>The usual limits.</summary>
    public static TextLimits Usual { get; } = new();

    /// <summary>The finding for a text that is too large.</summary>
    internal Finding TooLarge => new("text.too-large", Severity.Stop, "",
        $"The text is larger than {(Bytes >= 1024 * 1024 ? $"{Bytes / 1024 / 1024} MB" : $"{Bytes} bytes")}.", "Split the piece, or look whether this is the right file.", new(1, 1));
}

/// <summary>A value read, with everything that was wrong on the way; the value is null when nothing useful could be read.</summary>
/// <typeparam name="T">What was to be read.</typeparam>
/// <param name="Value">What was read, or null.</param>
/// <param name="Findings">All that is wrong, in the order of the text.</param>
public sealed record TextRead<T>(T? Value, ImmutableArray<Finding> Findings) where T : class
{
    /// <summary>True when nothing stops.</summary>
    public bool IsSound => Value is not null && Findings.All(f => f.Severity != Severity.Stop);
}
