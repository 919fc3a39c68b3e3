using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>What a remedy is, in a word of the trade.</summary>
public enum RemedyKind
{
    /// <summary>Let it stand: every gap is inside its limits as it is.</summary>
    Accept,

    /// <summary>Put thin stuff behind the slides.</summary>
    Shim,

    /// <summary>Write another figure for something that is not cut or not set yet.</summary>
    ChangeUncut,

    /// <summary>Take a part that is cut and still loose to a smaller figure.</summary>
    Trim,

    /// <summary>Plane what stands together already: the sides of a box, an edge of a front.</summary>
    Plane,

    /// <summary>Take off what is only screwed, put it right and fix it again.</summary>
    TakeApart,

    /// <summary>Change what was bought for another size.</summary>
    Exchange,

    /// <summary>Cut a part, or make a whole box, anew.</summary>
    Recut,
}

/// <summary>The wood a remedy uses up.</summary>
/// <param name="Words">What is cut from which blank; empty for none.</param>
/// <param name="MustBuy">True when a sheet, a stick or a slide must be bought.</param>
/// <param name="Cost">Of the blanks that must be bought, as far as their prices are known.</param>
/// <param name="Area">Of the parts cut, as they come off the saw.</param>
public readonly record struct StockUse(string Words, bool MustBuy, Money Cost, Area Area)
{
    /// <summary>No wood at all.</summary>
    public static StockUse None { get; } = new("", false, Money.Zero, Area.Zero);
}

/// <summary>A quantity that a remedy moves.</summary>
/// <param name="Key">The gap.</param>
/// <param name="Before">As it is.</param>
/// <param name="After">As it will be.</param>
public readonly record struct GapMove(QuantityKey Key, ExactLength Before, ExactLength After);

/// <summary>
/// Something that can be done about an upset, proven: with its amendments the gap lands inside its limits, no other gap falls out, and
/// nothing stops the plan that did not before.
/// </summary>
/// <param name="Kind">What it is.</param>
/// <param name="Words">All of it in a sentence, with figures.</param>
/// <param name="Minutes">About how long it takes; common practice, no source.</param>
/// <param name="Stock">The wood it uses up.</param>
/// <param name="Steps">What to do, in order.</param>
/// <param name="Amendments">What the bench will know when it is done.</param>
/// <param name="Acts">What the log is to be told when it is done; readings are those to expect.</param>
/// <param name="Caution">The key of the caution that belongs to the work; empty for none.</param>
/// <param name="Parts">Keys of the parts that are worked on.</param>
/// <param name="Moves">The gaps it moves.</param>
public sealed record Remedy(
    RemedyKind Kind, string Words, int Minutes, StockUse Stock, ImmutableArray<string> Steps, ImmutableArray<Amendment> Amendments,
    ImmutableArray<MendingAct> Acts, string Caution, ImmutableArray<string> Parts, ImmutableArray<GapMove> Moves)
{
    /// <summary>What to type when it is done, so that the log knows it too.</summary>
    public ImmutableArray<string> Commands => [.. Acts.Select(a => a.Command)];

    /// <summary>The work in its words, without what it comes to: the same work may be offered for several upsets.</summary>
    public string Lead => (Words.LastIndexOf(": ", StringComparison.Ordinal) is > 0 and int at && Words[at..].Contains(" comes to ", StringComparison.Ordinal) ? Words[..at] : Words).TrimEnd('.');

    /// <summary>What of other upsets it stands instead of, in words, for the two undo each other or one is enough; empty where it goes with all the rest.</summary>
    public ImmutableArray<string> Instead { get; init; } = [];

    /// <summary>That as the end of its line, such as <c>instead of ...</c>; empty for nothing.</summary>
    public string InsteadWords => Instead.Length == 0 ? "" : $"instead of {string.Join("; and of ", Instead.Take(MostInstead))}{(Instead.Length > MostInstead ? $"; and of {Instead.Length - MostInstead} more" : "")}";

    private const int MostInstead = 3;
}

/// <summary>An upset with what can be done about it.</summary>
/// <param name="Upset">What is out.</param>
/// <param name="Remedies">Quickest first, then the one that uses least stock; may be empty.</param>
/// <param name="Words">Said when there is no proven remedy; else empty.</param>
public sealed record MendingAdvice(Upset Upset, ImmutableArray<Remedy> Remedies, string Words);
