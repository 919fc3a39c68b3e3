using Setout.Core.Measures;
using Setout.Cutting.Runs;

namespace Setout.Shop.Runs;

/// <summary>Where the straight edge of a hand-held saw is clamped.</summary>
/// <param name="At">From the reference side, or for truing from the raw side, to the edge that the shoe runs along.</param>
/// <param name="IsOnNearSide">True where the straight edge lies between that side and the cut, false where it lies beyond the cut.</param>
public readonly record struct StraightEdge(Length At, bool IsOnNearSide)
{
    /// <summary>
    /// The place for a figure. A piece that is brought to size has the straight edge on it, so that the blade runs in the waste; one that is narrower than the shoe is wide cannot, and
    /// the straight edge lies beyond the cut. A side that is trued has the straight edge on the good wood beyond the figure.
    /// </summary>
    /// <param name="kind">What the cut does.</param>
    /// <param name="figure">Its figure.</param>
    /// <param name="kerf">What the blade takes.</param>
    /// <param name="shoe">From the edge of the shoe to the near side of the blade.</param>
    public static StraightEdge For(RunKind kind, Length figure, Length kerf, Length shoe) => kind is RunKind.True or RunKind.Clear
        ? new(figure + shoe, false)
        : figure >= shoe ? new(figure - shoe, true) : new(figure + kerf + shoe, false);
}
