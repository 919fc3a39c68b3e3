namespace Setout.Core.Workings;

/// <summary>
/// The permanent name of a quantity: the key of its owner and what it measures, joined by dots, such as <c>L3.box.width</c>.
/// It never depends on where the owner stands among its neighbours, so inserting a drawer moves no reading.
/// </summary>
/// <param name="Text">Letters, digits, dots and hyphens; compared as written.</param>
public readonly record struct QuantityKey(string Text) : IComparable<QuantityKey>
{
    /// <summary>What follows the key of a size for the figure that is set on the saw.</summary>
    public const string ToCutSuffix = ".to-cut";

    /// <summary>What follows the key of a size for the figure that came off the saw.</summary>
    public const string AsCutSuffix = ".as-cut";

    /// <summary>The key of something that belongs to <paramref name="owner"/>.</summary>
    public static QuantityKey Of(string owner, string what) => new($"{owner}.{what}");

    /// <summary>The key of the owner: all before the first dot.</summary>
    public string Owner => Text.IndexOf('.', StringComparison.Ordinal) is >= 0 and int dot ? Text[..dot] : Text;

    /// <summary>The size that this is the figure to cut or as cut of; itself where it is neither.</summary>
    public QuantityKey Exact => Text.EndsWith(ToCutSuffix, StringComparison.Ordinal) ? new(Text[..^ToCutSuffix.Length])
        : Text.EndsWith(AsCutSuffix, StringComparison.Ordinal) ? new(Text[..^AsCutSuffix.Length]) : this;

    /// <summary>The figure to cut of this size.</summary>
    public QuantityKey ToCut => new(Text + ToCutSuffix);

    /// <summary>True for a figure as cut.</summary>
    public bool IsAsCut => Text.EndsWith(AsCutSuffix, StringComparison.Ordinal);

    /// <summary>The figure as cut of this size.</summary>
    public QuantityKey AsCut => new(Text + AsCutSuffix);

    /// <inheritdoc/>
    public int CompareTo(QuantityKey other) => string.CompareOrdinal(Text, other.Text);

    /// <summary>Order of text.</summary>
    public static bool operator <(QuantityKey a, QuantityKey b) => a.CompareTo(b) < 0;

    /// <summary>Order of text.</summary>
    public static bool operator >(QuantityKey a, QuantityKey b) => a.CompareTo(b) > 0;

    /// <summary>Order of text.</summary>
    public static bool operator <=(QuantityKey a, QuantityKey b) => a.CompareTo(b) <= 0;

    /// <summary>Order of text.</summary>
    public static bool operator >=(QuantityKey a, QuantityKey b) => a.CompareTo(b) >= 0;

    /// <inheritdoc/>
    public override string ToString() => Text;
}
