using Setout.Core.Measures;

namespace Setout.Core.Fit;

/// <summary>How a chance was found.</summary>
public enum ChanceMethod
{
    /// <summary>The worst case alone settles it: exactly 0 or exactly 1.</summary>
    Certain,

    /// <summary>From the distribution of the sum; the bound is proven.</summary>
    Convolution,

    /// <summary>By seeded drawing; the bound is one of three standard deviations (Wilson), passed about once in 370 times.</summary>
    Simulation,
}

/// <summary>A chance with its bound.</summary>
/// <param name="Share">0 to 1, and how far the true chance may lie from that.</param>
/// <param name="Method">How it was found.</param>
public readonly record struct Chance(Estimate Share, ChanceMethod Method)
{
    /// <summary>It cannot fail.</summary>
    public static Chance Sure { get; } = new(new Estimate(1, 0), ChanceMethod.Certain);

    /// <summary>It cannot happen.</summary>
    public static Chance Never { get; } = new(new Estimate(0, 0), ChanceMethod.Certain);

    /// <summary>The lowest that the bound allows, 0 to 1.</summary>
    public double AtLeast => Math.Max(0, Share.Value - Share.Error);

    /// <summary>The highest that the bound allows, 0 to 1.</summary>
    public double AtMost => Math.Min(1, Share.Value + Share.Error);

    /// <summary>True when the bounds of the two do not meet: the one is surely more than the other.</summary>
    public bool IsSurelyAbove(Chance other) => AtLeast > other.AtMost;
}
