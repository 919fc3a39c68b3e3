using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Workings;

/// <summary>
/// Sizes that must add up to a whole: fronts and gaps in a height, bays and posts in a width. One named term takes up what rounding
/// leaves, so the chain closes exactly by construction, and shows when readings no longer do.
/// </summary>
/// <param name="Name">For people.</param>
/// <param name="Whole">What they add up to.</param>
/// <param name="Terms">The terms, each so many times.</param>
/// <param name="TakesUp">The term that takes up the residue.</param>
public sealed record ClosedChain(string Name, QuantityKey Whole, ImmutableArray<Term> Terms, QuantityKey TakesUp)
{
    /// <summary>Terms less whole: zero when the chain closes, more when the terms are too long for it; null when a term has no value.</summary>
    public ExactLength? Misfit(WorkedPiece piece)
    {
        if (!piece.Values.TryGetValue(Whole, out Worked? whole)) return null;
        ExactLength total = -whole.Value;
        foreach (Term term in Terms)
        {
            if (term.Figure is { } figure) total += figure.Value * term.Times;
            else if (piece.Values.TryGetValue(term.Of!.Value, out Worked? worked)) total += worked.Value * term.Times;
            else return null;
        }
        return total;
    }
}

/// <summary>
/// Something picked from a series before the arithmetic: which slide, which screw. Says why, and by how much the deciding quantity must
/// change before the choice flips.
/// </summary>
/// <param name="Key">Permanent.</param>
/// <param name="Name">For people.</param>
/// <param name="Chosen">What was picked, in words.</param>
/// <param name="Value">Its length, where it has one.</param>
/// <param name="Reason">Why.</param>
/// <param name="Decides">The quantity that decides, if one does.</param>
/// <param name="FlipsUpAt">The deciding quantity's value from which the next larger would be picked; null if there is none.</param>
/// <param name="FlipsDownBelow">The deciding quantity's value below which the next smaller would be picked; null if there is none.</param>
public sealed record Choice(
    QuantityKey Key, string Name, string Chosen, ExactLength Value, string Reason,
    QuantityKey? Decides, ExactLength? FlipsUpAt, ExactLength? FlipsDownBelow);

/// <summary>A gap that must land inside limits: slide play, a gap between fronts.</summary>
/// <param name="Key">The quantity that is the gap.</param>
/// <param name="Name">For people.</param>
/// <param name="Least">The least it may be.</param>
/// <param name="Most">The most it may be.</param>
/// <param name="Source">Where the limits come from.</param>
public sealed record Gap(QuantityKey Key, string Name, ExactLength Least, ExactLength Most, string Source)
{
    /// <summary>The opening whose filling it belongs to, such as a bank of drawers; empty where it belongs to the structure.</summary>
    public string Group { get; init; } = "";

    /// <summary>The quantity that decides how large it is meant to be, where somebody may choose it: the play kept beside slides.</summary>
    public QuantityKey? Allowance { get; init; }
}
