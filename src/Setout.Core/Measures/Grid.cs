namespace Setout.Core.Measures;

/// <summary>The step that a shop sets its fences and stops to. The step is more than zero; the default value is not a grid.</summary>
public readonly record struct Grid
{
    private Grid(Length step) => Step = step;

    /// <summary>The step; more than zero.</summary>
    public Length Step { get; }

    /// <summary>1/16 in.</summary>
    public static Grid Sixteenth { get; } = new(Length.FromInches(1, 16));

    /// <summary>1/32 in.</summary>
    public static Grid ThirtySecond { get; } = new(Length.FromInches(1, 32));

    /// <summary>1/64 in.</summary>
    public static Grid SixtyFourth { get; } = new(Length.FromInches(1, 64));

    /// <summary>0.5 mm.</summary>
    public static Grid HalfMillimetre { get; } = new(Length.FromTicks(Length.TicksPerMillimetre / 2));

    /// <summary>1 mm.</summary>
    public static Grid Millimetre { get; } = new(Length.FromMillimetres(1));

    /// <summary>A grid of any step more than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is zero or less.</exception>
    public static Grid FromStep(Length step) => step.Sign > 0
        ? new(step)
        : throw new ArgumentOutOfRangeException(nameof(step), step, "A grid needs a step of more than zero.");

    /// <summary>True when the length is a whole number of steps.</summary>
    /// <exception cref="DivideByZeroException">This is the default value, which has no step.</exception>
    public bool Holds(ExactLength length) => (length.Ticks / Step.Ticks).IsWhole;

    /// <summary>The denominator of the inch if the step is one part of it (32 for 1/32 in), else null, as for every metric step.</summary>
    public int? InchDenominator
    {
        get
        {
            if (Step.Sign == 0 || Length.TicksPerInch % Step.Ticks != 0) return null;
            int denominator = (int)(Length.TicksPerInch / Step.Ticks);
            // An inch is 127 fifths of a millimetre, so 0.2 mm is 1/127 in and 0.1 mm is 1/254 in: those are metric steps.
            return denominator % 127 == 0 ? null : denominator;
        }
    }

    /// <summary>The step with its unit.</summary>
    public override string ToString() => InchDenominator is { } d ? (d == 1 ? "1 in" : $"1/{d} in") : Step.ToString();
}
