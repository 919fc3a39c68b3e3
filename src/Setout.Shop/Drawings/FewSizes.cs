using Setout.Core.Workings;

namespace Setout.Shop.Drawings;

/// <summary>That only the most needed sizes are drawn, and those of what is chosen.</summary>
internal sealed class FewSizes
{
    private readonly QuantityKey _chosen;

    /// <param name="chosen">The key of a size, part, opening or member; empty for none.</param>
    public FewSizes(string chosen) => _chosen = new QuantityKey(chosen.Split('#')[0]).Exact;

    /// <summary>Whether the widths of bays are drawn; default true.</summary>
    public bool HasBays { get; init; } = true;

    /// <summary>Whether a size is that which is chosen, or one of what is chosen.</summary>
    /// <param name="size">The key of the size; empty for one that has none.</param>
    /// <param name="owner">What it belongs to; empty for nothing.</param>
    public bool IsOfChosen(string size, string owner) => _chosen.Text.Length > 0
        && ((size.Length > 0 && new QuantityKey(size).Exact == _chosen) || (owner.Length > 0 && (owner == _chosen.Text || owner == _chosen.Owner)));
}
