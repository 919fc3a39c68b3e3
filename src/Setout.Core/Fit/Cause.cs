using Setout.Core.Measures;

namespace Setout.Core.Fit;

/// <summary>What an error comes from. Thickness comes in three layers (lot, sheet, spot) and a cut in two (setting, repeat), so that what is shared can be told from what is not.</summary>
public enum CauseKind
{
    /// <summary>The lot that sheets were bought in: shared by all of its sheets.</summary>
    Lot,

    /// <summary>One sheet against its lot: shared by all that is cut from it.</summary>
    Sheet,

    /// <summary>One spot against its sheet.</summary>
    Spot,

    /// <summary>The section of one stick.</summary>
    Section,

    /// <summary>A fence or a stop off its figure: shared by all that is cut at that setting.</summary>
    Setting,

    /// <summary>One cut against another at the same setting.</summary>
    Repeat,

    /// <summary>A part off its place when it is fixed.</summary>
    Placing,

    /// <summary>Bought hardware off its sheet.</summary>
    Bought,

    /// <summary>An instrument that reads long or short: shared by all that is read with it.</summary>
    Scale,

    /// <summary>One reading of an instrument.</summary>
    Reading,

    /// <summary>A figure rounded to a grid, where what was rounded away is not known.</summary>
    Rounding,
}

/// <summary>How likely the values between two limits are.</summary>
public enum Shape
{
    /// <summary>All equally likely: nothing but the limits is known. Source: rectangular distribution, JCGM 100:2008 (GUM) 4.3.7.</summary>
    Even,

    /// <summary>The middle likeliest, falling in a straight line to nothing at the limits. Source: triangular distribution, JCGM 100:2008 (GUM) 4.3.9.</summary>
    Peaked,
}

/// <summary>
/// One independent source of error: how far something lies from its best value. Causes of different ids know nothing of each other; what
/// errors share is a cause of its own.
/// </summary>
/// <param name="Id">The same id is the same error, wherever it acts.</param>
/// <param name="Kind">What it comes from.</param>
/// <param name="Words">For people.</param>
/// <param name="Low">The lowest it can be; not above <paramref name="High"/>.</param>
/// <param name="High">The highest it can be. The middle need not be zero: a setting may be known to run long.</param>
/// <param name="Shape">How likely the values in between are.</param>
/// <exception cref="ArgumentException">The limits are the wrong way round.</exception>
public sealed record Cause(string Id, CauseKind Kind, string Words, ExactLength Low, ExactLength High, Shape Shape)
{
    /// <summary>The highest it can be.</summary>
    public ExactLength High { get; } = Low <= High
        ? High
        : throw new ArgumentException($"The error '{Id}' runs from {Low} to {High}: give the lower limit first.");

    /// <summary>The lowest it can be.</summary>
    public ExactLength Low { get; } = Low;

    /// <summary>The middle between the limits, which is its mean: both shapes are symmetric.</summary>
    public ExactLength Middle => (Low + High) / 2;

    /// <summary>From the lowest to the highest; zero or more.</summary>
    public ExactLength Range => High - Low;

    /// <summary>The same error between other limits: what is left of it once something is measured.</summary>
    /// <exception cref="ArgumentException">The limits are the wrong way round.</exception>
    public Cause Between(ExactLength low, ExactLength high) => new(Id, Kind, Words, low, high, Shape);

    /// <summary>True when the other cause has the same limits and shape: what two causes of one id must agree on.</summary>
    internal bool ActsAs(Cause other) => ReferenceEquals(this, other) || (Low == other.Low && High == other.High && Shape == other.Shape);
}

/// <summary>A cause and how many times it enters a size: two sides of one sheet take its error twice, a box inside an opening takes it with the sign turned.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Times">So many times, of either sign.</param>
public readonly record struct Effect(Cause Cause, Rational Times)
{
    /// <summary>The least that it adds.</summary>
    public ExactLength Least => (Times.Sign < 0 ? Cause.High : Cause.Low) * Times;

    /// <summary>The most that it adds.</summary>
    public ExactLength Most => (Times.Sign < 0 ? Cause.Low : Cause.High) * Times;

    /// <summary>The mean of what it adds.</summary>
    public ExactLength Mean => Cause.Middle * Times;

    /// <summary>From the least that it adds to the most; zero or more.</summary>
    public ExactLength Range => Cause.Range * (Times.Sign < 0 ? -Times : Times);
}
