using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Fit;

/// <summary>
/// A size with all that can move it: a best value and a sum of independent causes, each once. Sums of spreads keep what they share:
/// where the same error enters twice, its effects are added before anything is squared or drawn, so it doubles or cancels as it does in the wood.
/// </summary>
/// <param name="Value">The best value: that of all causes at no error.</param>
/// <param name="Effects">Each cause once, none of them zero times, in the order of the ids. Given otherwise, they are merged into that.</param>
public sealed record Spread(ExactLength Value, ImmutableArray<Effect> Effects)
{
    /// <summary>Each cause once, none of them zero times, in the (ordinal) order of the ids.</summary>
    /// <exception cref="ArgumentException">Two causes of one id have different limits or shapes.</exception>
    public ImmutableArray<Effect> Effects { get; init => field = Merged(value); } = Merged(Effects);

    /// <summary>A value that nothing moves.</summary>
    public static Spread Of(ExactLength value) => new(value, []);

    /// <summary>A value that one cause moves.</summary>
    public static Spread Of(ExactLength value, Cause cause) => new(value, [new Effect(cause, 1)]);

    /// <summary>True when the value cannot move: no cause has room between its limits.</summary>
    public bool IsCertain => Effects.All(effect => effect.Cause.Range.Sign == 0);

    /// <summary>The mean: the value and the middles of the causes, which matter when a cause is lopsided. Exact.</summary>
    public ExactLength Mean => Effects.Aggregate(Value, (sum, effect) => sum + effect.Mean);

    /// <summary>The least it can be, every cause at its worst. Exact. Source: arithmetic stack of limits, textbook of tolerance stack-up.</summary>
    public ExactLength WorstLow => Effects.Aggregate(Value, (sum, effect) => sum + effect.Least);

    /// <summary>The most it can be, every cause at its worst. Exact. Source: as <see cref="WorstLow"/>.</summary>
    public ExactLength WorstHigh => Effects.Aggregate(Value, (sum, effect) => sum + effect.Most);

    /// <summary>
    /// How far to either side of <see cref="Mean"/> it likely lies: the root of the sum of the squared half widths. Source: statistical stack
    /// of limits (root-sum-square), textbook of tolerance stack-up. It takes each half width as the same multiple of a standard deviation,
    /// so it is a rule of thumb; the chance itself comes from <see cref="Convolution"/>.
    /// </summary>
    public ApproximateLength RootSumSquare => RootOfSquares(Effects, static _ => 1);

    /// <summary>The standard deviation (combined standard uncertainty): half width over root 3 for an even cause, over root 6 for a peaked one. Source: GUM 4.3.7, 4.3.9 and 5.1.2.</summary>
    public ApproximateLength StandardDeviation => RootOfSquares(Effects, static shape => shape == Shape.Even ? 3 : 6);

    /// <summary>The sum; shared causes add up.</summary>
    /// <exception cref="ArgumentException">Two causes of one id have different limits or shapes.</exception>
    public static Spread operator +(Spread a, Spread b) => new(a.Value + b.Value, Together(a.Effects, b.Effects));

    /// <summary>The difference; shared causes cancel.</summary>
    /// <exception cref="ArgumentException">Two causes of one id have different limits or shapes.</exception>
    public static Spread operator -(Spread a, Spread b) => a + -b;

    /// <summary>The opposite.</summary>
    public static Spread operator -(Spread a) => a * -1;

    /// <summary>Moved by a length.</summary>
    public static Spread operator +(Spread a, ExactLength by) => a with { Value = a.Value + by };

    /// <summary>Moved by a length.</summary>
    public static Spread operator -(Spread a, ExactLength by) => a with { Value = a.Value - by };

    /// <summary>A rational multiple of ONE size: its errors grow with it. Several sizes alike are added, not multiplied, unless they share all their causes.</summary>
    public static Spread operator *(Spread a, Rational times) =>
        new(a.Value * times, [.. a.Effects.Select(effect => effect with { Times = effect.Times * times })]);

    /// <summary>A rational multiple.</summary>
    public static Spread operator *(Rational times, Spread a) => a * times;

    /// <summary>The same causes with another in the place of the one of its id; as it was if there is none. So a cause is tried narrower: "what if this were measured?"</summary>
    public Spread With(Cause cause) => Effects.Any(effect => effect.Cause.Id == cause.Id)
        ? this with { Effects = [.. Effects.Select(effect => effect.Cause.Id == cause.Id ? effect with { Cause = cause } : effect)] }
        : this;

    /// <summary>Equality of value and effects.</summary>
    public bool Equals(Spread? other) => other is not null && Value == other.Value && Effects.AsSpan().SequenceEqual(other.Effects.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Value, Effects.Length, Effects.IsEmpty ? default : Effects[0]);

    private static ImmutableArray<Effect> Merged(ImmutableArray<Effect> effects)
    {
        if (effects.IsDefaultOrEmpty) return [];
        if (IsMerged(effects)) return effects;
        Effect[] sorted = [.. effects.OrderBy(effect => effect.Cause.Id, StringComparer.Ordinal)];
        var merged = ImmutableArray.CreateBuilder<Effect>(sorted.Length);
        for (int i = 0, next; i < sorted.Length; i = next)
        {
            Effect first = sorted[i];
            Rational times = first.Times;
            for (next = i + 1; next < sorted.Length && sorted[next].Cause.Id == first.Cause.Id; next++)
                times += Agreed(first.Cause, sorted[next]).Times;
            if (times.Sign != 0) merged.Add(new Effect(first.Cause, times));
        }
        return merged.DrainToImmutable();
    }

    // Both are in order already: sums are made by the thousand, and sorting them anew would be most of the work.
    private static ImmutableArray<Effect> Together(ImmutableArray<Effect> a, ImmutableArray<Effect> b)
    {
        if (a.IsEmpty || b.IsEmpty) return a.IsEmpty ? b : a;
        var merged = ImmutableArray.CreateBuilder<Effect>(a.Length + b.Length);
        int i = 0, j = 0;
        while (i < a.Length && j < b.Length)
        {
            int order = string.CompareOrdinal(a[i].Cause.Id, b[j].Cause.Id);
            if (order < 0) merged.Add(a[i++]);
            else if (order > 0) merged.Add(b[j++]);
            else
            {
                Rational times = a[i].Times + Agreed(a[i].Cause, b[j++]).Times;
                if (times.Sign != 0) merged.Add(new Effect(a[i].Cause, times));
                i++;
            }
        }
        while (i < a.Length) merged.Add(a[i++]);
        while (j < b.Length) merged.Add(b[j++]);
        return merged.DrainToImmutable();
    }

    private static bool IsMerged(ImmutableArray<Effect> effects)
    {
        for (int i = 0; i < effects.Length; i++)
            if (effects[i].Times.Sign == 0 || (i > 0 && string.CompareOrdinal(effects[i - 1].Cause.Id, effects[i].Cause.Id) >= 0)) return false;
        return true;
    }

    private static Effect Agreed(Cause first, Effect next) => first.ActsAs(next.Cause)
        ? next
        : throw new ArgumentException($"The error '{first.Id}' stands with two different spreads, {first.Low} to {first.High} and {next.Cause.Low} to {next.Cause.High}. One id is one error: give the other an id of its own.");

    private static ApproximateLength RootOfSquares(ImmutableArray<Effect> effects, Func<Shape, double> divisor)
    {
        // The widest is taken out before squaring, so that neither huge nor tiny widths leave the range of a double.
        double[] halves = [.. effects.Select(effect => effect.Range.ApproximateMillimetres / 2 / Math.Sqrt(divisor(effect.Cause.Shape)))];
        double widest = halves.Append(0).Max();
        if (widest == 0) return new(new Estimate(0, 0));
        double value = widest * Math.Sqrt(halves.Sum(half => half / widest * (half / widest)));
        // Every term is rounded some ten times and positive, and each addition once more: far less than this.
        return new(new Estimate(value, value * (effects.Length + 30) / (1L << 52)));
    }
}
