using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Workings;

/// <summary>How a quantity gets its value. Pure data: evaluated by <see cref="Evaluation"/>, written out by whoever shows it.</summary>
public abstract record Working
{
    /// <summary>The quantities this one is worked from, each once or more.</summary>
    public abstract IEnumerable<QuantityKey> WorkedFrom { get; }
}

/// <summary>A value that stands by itself: given, a default, a rule's figure.</summary>
/// <param name="Value">The value.</param>
/// <param name="Origin">Where it comes from.</param>
public sealed record Stated(ExactLength Value, Origin Origin) : Working
{
    /// <inheritdoc/>
    public override IEnumerable<QuantityKey> WorkedFrom => [];
}

/// <summary>One term of a written sum: so many times a quantity or a figure.</summary>
/// <param name="Words">What it is, such as <c>slide, left and right</c>.</param>
/// <param name="Times">How often it counts; negative to take away.</param>
/// <param name="Of">The quantity, or null when <paramref name="Figure"/> is used.</param>
/// <param name="Figure">The figure with its origin, or null when <paramref name="Of"/> is used.</param>
public sealed record Term(string Words, Rational Times, QuantityKey? Of, Stated? Figure)
{
    /// <summary>For a thickness: the key of the part whose members these are, so that what they share is known; empty where it is no part's.</summary>
    public string Part { get; init; } = "";

    /// <summary>A quantity, so many times.</summary>
    public static Term From(string words, Rational times, QuantityKey of) => new(words, times, of, null);

    /// <summary>A figure with its origin, so many times.</summary>
    public static Term From(string words, Rational times, ExactLength value, Origin origin) => new(words, times, null, new(value, origin));
}

/// <summary>A written sum, shared out: (the terms added up) times <paramref name="Share"/>.</summary>
/// <param name="Terms">In the order a person would write them.</param>
/// <param name="Share">One for a plain sum, 1/n for an equal share; never zero.</param>
public sealed record Sum(ImmutableArray<Term> Terms, Rational Share) : Working
{
    /// <summary>A plain sum.</summary>
    public Sum(params ImmutableArray<Term> terms) : this(terms, Rational.One) { }

    /// <inheritdoc/>
    public override IEnumerable<QuantityKey> WorkedFrom => from term in Terms where term.Of is not null select term.Of!.Value;
}

/// <summary>The least or the greatest of several terms.</summary>
/// <param name="Of">One or more.</param>
/// <param name="IsLeast">True for the least, false for the greatest.</param>
public sealed record Extreme(ImmutableArray<Term> Of, bool IsLeast) : Working
{
    /// <inheritdoc/>
    public override IEnumerable<QuantityKey> WorkedFrom => from term in Of where term.Of is not null select term.Of!.Value;
}

/// <summary>The figure set on the saw: the exact size landed on the shop's grid in the direction that is safe for its kind.</summary>
/// <param name="Exact">The exact size.</param>
/// <param name="Grid">The shop's grid.</param>
/// <param name="Rounding">The safe direction.</param>
/// <param name="Why">Why that direction, in words.</param>
public sealed record ToCut(QuantityKey Exact, Grid Grid, Rounding Rounding, string Why) : Working
{
    /// <inheritdoc/>
    public override IEnumerable<QuantityKey> WorkedFrom => [Exact];
}

/// <summary>How several readings taken at one time make one value.</summary>
public enum Combining
{
    /// <summary>The mean: thickness at several spots.</summary>
    Mean,

    /// <summary>The smallest: an opening along a slide line.</summary>
    Narrowest,

    /// <summary>The largest: what must pass through.</summary>
    Widest,
}

/// <summary>Why the real thing may lie off what its working gives, over and above what it is worked from.</summary>
public enum Scatter
{
    /// <summary>Not at all: a sum, or a figure that somebody decides.</summary>
    None,

    /// <summary>The thickness of sheet goods: lot, sheet and spot.</summary>
    Sheet,

    /// <summary>The section of a stick.</summary>
    Section,

    /// <summary>What comes off the saw: the setting, and one cut from another.</summary>
    Cut,

    /// <summary>Where a part ends up when it is fixed.</summary>
    Placed,

    /// <summary>The size of something bought.</summary>
    Bought,
}

/// <summary>Anything measurable in the piece: a name for people, a permanent key, and its working.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Name">For people, such as <c>drawer L3, box width</c>.</param>
/// <param name="Working">How it gets its value while nobody has measured it.</param>
/// <param name="Combining">How several readings make one.</param>
/// <param name="Scatter">Why the real thing may lie off its working.</param>
public sealed record Quantity(QuantityKey Key, string Name, Working Working, Combining Combining = Combining.Mean, Scatter Scatter = Scatter.None);

/// <summary>A reading that pins a quantity: at the bench the reading beats the plan.</summary>
/// <param name="Values">What was read, one or more spots; combined by the rule of the quantity.</param>
/// <param name="Origin">Instrument and time, in words.</param>
/// <param name="EntryId">The latest entry of the log it comes from.</param>
public sealed record Pin(ImmutableArray<ExactLength> Values, Origin Origin, string EntryId)
{
    /// <summary>The instrument of each value; empty where it was not said. May be shorter than the values: what is missing was not said.</summary>
    public ImmutableArray<string> With { get; init; } = [];

    /// <summary>The spot of each value; empty where none was named. May be shorter than the values.</summary>
    public ImmutableArray<string> Spots { get; init; } = [];

    /// <summary>True for what was decided or done rather than measured: the figure a part was cut to, the slide that was bought.</summary>
    public bool IsFact { get; init; }

    /// <summary>
    /// True when an earlier reading of the same spot was superseded: whether the thing was worked on in between, or read wrongly the first time, is not
    /// known, so nothing can be learned about others from it.
    /// </summary>
    public bool IsReread { get; init; }

    /// <summary>Where its latest entry stands among those of the log, from 0: a lower one was read longer ago. 0 where there is no log.</summary>
    public int Position { get; init; }

    /// <summary>One value out of the spots.</summary>
    public ExactLength Combined(Combining combining) => combining switch
    {
        Combining.Narrowest => Values.Min(),
        Combining.Widest => Values.Max(),
        _ => Values.Aggregate(ExactLength.Zero, (sum, value) => sum + value) / Values.Length,
    };
}

/// <summary>A quantity with its value.</summary>
/// <param name="Quantity">What it is.</param>
/// <param name="Value">The value that counts: the reading if there is one, else the working's.</param>
/// <param name="Expected">What the working gives, also when a reading pins it.</param>
/// <param name="Pin">The reading, if there is one.</param>
public sealed record Worked(Quantity Quantity, ExactLength Value, ExactLength Expected, Pin? Pin)
{
    /// <summary>True when the working rests on a figure that nobody knows (<see cref="Origin.Unknown"/>) and nobody has read: then a reading is taken as it is, and is what was expected.</summary>
    public bool RestsOnUnknown { get; init; }

    /// <summary>Reading less expected: more than zero is over, less is under; zero without a reading.</summary>
    public ExactLength Over => Value - Expected;
}
