using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Fit;

/// <summary>
/// A size in which the least or the greatest of several counts: the play of a slide is set by the narrowest of three spots, a gap by the prouder of two edges.
/// Spreads at the leaves, with sums, minima and maxima over them. Where a part can never be the one that counts, by exact worst case with shared causes
/// cancelled, it is dropped when the tree is made, so a minimum that is settled becomes a plain spread again (<see cref="AsSpread"/>) and can be asked of
/// <see cref="Convolution"/>; the others need <see cref="Simulation"/>.
/// </summary>
public abstract record SpreadTree
{
    private protected SpreadTree() { }

    /// <summary>The best value: that of all causes at no error. Not the mean, which a minimum pulls down.</summary>
    public abstract ExactLength Value { get; }

    /// <summary>It is never less than this. Reached exactly by a plain spread; with shared causes below a sum or a maximum, the true worst case may be less bad.</summary>
    public abstract ExactLength WorstLow { get; }

    /// <summary>It is never more than this; as <see cref="WorstLow"/>.</summary>
    public abstract ExactLength WorstHigh { get; }

    /// <summary>The plain spread that this is; null where a minimum or a maximum is left open.</summary>
    public Spread? AsSpread => this is PlainSpread plain ? plain.Spread : null;

    /// <summary>The causes that act anywhere in it, some of them more than once.</summary>
    public IEnumerable<Cause> Causes() => this switch
    {
        PlainSpread plain => plain.Spread.Effects.Select(effect => effect.Cause),
        ExtremeOf extreme => extreme.Parts.SelectMany(part => part.Causes()),
        SumOf sum => sum.Parts.SelectMany(part => part.Causes()),
        _ => [],
    };

    /// <summary>The same tree with one cause in the place of that of its id, wherever it acts. So a cause is tried narrower: "what if this were measured?"</summary>
    public SpreadTree With(Cause cause) => this switch
    {
        PlainSpread plain => plain.Spread.With(cause),
        ExtremeOf { IsLeast: true } least => Least([.. least.Parts.Select(part => part.With(cause))]),
        ExtremeOf greatest => Greatest([.. greatest.Parts.Select(part => part.With(cause))]),
        SumOf sum => sum.Parts.Select(part => part.With(cause)).Aggregate((a, b) => a + b),
        _ => this,
    };

    /// <summary>A plain spread is also a tree.</summary>
    public static implicit operator SpreadTree(Spread spread) => new PlainSpread(spread);

    /// <summary>The least of several.</summary>
    /// <exception cref="ArgumentException">There is none, or two causes of one id have different limits or shapes.</exception>
    public static SpreadTree Least(params ImmutableArray<SpreadTree> parts) => Extreme(isLeast: true, parts);

    /// <summary>The greatest of several.</summary>
    /// <exception cref="ArgumentException">There is none, or two causes of one id have different limits or shapes.</exception>
    public static SpreadTree Greatest(params ImmutableArray<SpreadTree> parts) => Extreme(isLeast: false, parts);

    /// <summary>The sum.</summary>
    /// <exception cref="ArgumentException">Two causes of one id have different limits or shapes.</exception>
    public static SpreadTree operator +(SpreadTree a, SpreadTree b) => (a, b) switch
    {
        (PlainSpread x, PlainSpread y) => x.Spread + y.Spread,
        (PlainSpread, _) => b.Plus(a),
        (_, PlainSpread) => a.Plus(b),
        _ => new SumOf([a, b]),
    };

    /// <summary>The difference.</summary>
    /// <exception cref="ArgumentException">Two causes of one id have different limits or shapes.</exception>
    public static SpreadTree operator -(SpreadTree a, SpreadTree b) => a + -b;

    /// <summary>The opposite: a least becomes a greatest.</summary>
    public static SpreadTree operator -(SpreadTree a) => a * -1;

    /// <summary>A rational multiple; below zero a least becomes a greatest.</summary>
    public static SpreadTree operator *(SpreadTree a, Rational times) => times.Sign == 0 ? Spread.Of(ExactLength.Zero) : a.Scaled(times);

    /// <summary>This and a plain spread: it goes into the parts, where shared causes can meet.</summary>
    private protected abstract SpreadTree Plus(SpreadTree plain);

    /// <summary>So many times, not zero.</summary>
    private protected abstract SpreadTree Scaled(Rational times);

    private static SpreadTree Extreme(bool isLeast, ImmutableArray<SpreadTree> parts)
    {
        if (parts.IsDefaultOrEmpty) throw new ArgumentException("The least or the greatest of nothing was asked for: give one size or more.");
        var open = new List<SpreadTree>();
        foreach (SpreadTree part in parts)
        {
            if (open.Exists(other => Settles(other, part))) continue;
            open.RemoveAll(other => Settles(part, other));
            open.Add(part);
        }
        return open.Count == 1 ? open[0] : new ExtremeOf(isLeast, [.. open]);

        // True when b never counts beside a. Only plain spreads are compared: their difference is exact, shared causes and all.
        bool Settles(SpreadTree a, SpreadTree b) => a.AsSpread is { } x && b.AsSpread is { } y
            && (isLeast ? (x - y).WorstHigh.Sign <= 0 : (x - y).WorstLow.Sign >= 0);
    }
}

/// <summary>A spread as it is.</summary>
/// <param name="Spread">The spread.</param>
public sealed record PlainSpread(Spread Spread) : SpreadTree
{
    /// <inheritdoc/>
    public override ExactLength Value => Spread.Value;

    /// <inheritdoc/>
    public override ExactLength WorstLow => Spread.WorstLow;

    /// <inheritdoc/>
    public override ExactLength WorstHigh => Spread.WorstHigh;

    private protected override SpreadTree Plus(SpreadTree plain) => this + plain;

    private protected override SpreadTree Scaled(Rational times) => Spread * times;
}

/// <summary>The least of several sizes, or the greatest; made by <see cref="SpreadTree.Least"/> and <see cref="SpreadTree.Greatest"/>.</summary>
public sealed record ExtremeOf : SpreadTree
{
    internal ExtremeOf(bool isLeast, ImmutableArray<SpreadTree> parts) => (IsLeast, Parts) = (isLeast, parts);

    /// <summary>True for the least, false for the greatest.</summary>
    public bool IsLeast { get; }

    /// <summary>Two or more.</summary>
    public ImmutableArray<SpreadTree> Parts { get; }

    /// <inheritdoc/>
    public override ExactLength Value => Pick(part => part.Value);

    /// <inheritdoc/>
    public override ExactLength WorstLow => Pick(part => part.WorstLow);

    /// <inheritdoc/>
    public override ExactLength WorstHigh => Pick(part => part.WorstHigh);

    private ExactLength Pick(Func<SpreadTree, ExactLength> of) => IsLeast ? Parts.Min(of) : Parts.Max(of);

    private protected override SpreadTree Plus(SpreadTree plain) => new ExtremeOf(IsLeast, [.. Parts.Select(part => part + plain)]);

    private protected override SpreadTree Scaled(Rational times) => new ExtremeOf(IsLeast == times.Sign > 0, [.. Parts.Select(part => part * times)]);
}

/// <summary>A sum of sizes of which more than one is not plain; made by adding.</summary>
public sealed record SumOf : SpreadTree
{
    internal SumOf(ImmutableArray<SpreadTree> parts) => Parts = parts;

    /// <summary>Two or more, none of them plain.</summary>
    public ImmutableArray<SpreadTree> Parts { get; }

    /// <inheritdoc/>
    public override ExactLength Value => Parts.Aggregate(ExactLength.Zero, static (sum, part) => sum + part.Value);

    /// <inheritdoc/>
    public override ExactLength WorstLow => Parts.Aggregate(ExactLength.Zero, static (sum, part) => sum + part.WorstLow);

    /// <inheritdoc/>
    public override ExactLength WorstHigh => Parts.Aggregate(ExactLength.Zero, static (sum, part) => sum + part.WorstHigh);

    private protected override SpreadTree Plus(SpreadTree plain) => new SumOf(Parts.SetItem(0, Parts[0] + plain));

    private protected override SpreadTree Scaled(Rational times) => new SumOf([.. Parts.Select(part => part * times)]);
}
