using System.Collections.Concurrent;
using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Materials;

/// <summary>A rule of the trade with its figure.</summary>
/// <param name="Id">Cited by the code, such as <c>SS1</c>.</param>
/// <param name="Words">What it rules.</param>
/// <param name="Figure">The figure as text.</param>
/// <param name="Basis">Basis code.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record TradeRule(string Id, string Words, string Figure, string Basis, string Source)
{
    // Read once: every drawer asks for a dozen of them.
    private static readonly ConcurrentDictionary<string, ImmutableArray<ExactLength>> s_read = new(StringComparer.Ordinal);

    private static readonly ConcurrentDictionary<string, ImmutableArray<Rational>> s_shares = new(StringComparer.Ordinal);

    /// <summary>The figure as a length.</summary>
    public ExactLength Length => Series is [var only] ? only : throw new InvalidOperationException($"{Id} is a series: {Figure}.");

    /// <summary>The figure as a series of lengths.</summary>
    public ImmutableArray<ExactLength> Series => s_read.GetOrAdd(Figure, f => [.. f.Split(';', StringSplitOptions.TrimEntries).Select(CsvFacts.Length)]);

    /// <summary>The figure as a share of something, such as a third.</summary>
    public Rational Share => Shares is [var only] ? only : throw new InvalidOperationException($"{Id} is a series: {Figure}.");

    /// <summary>The figure as a series of shares.</summary>
    public ImmutableArray<Rational> Shares => s_shares.GetOrAdd(Figure, f => [.. f.Split(';', StringSplitOptions.TrimEntries).Select(CsvFacts.Share)]);

    /// <summary>The source with its basis in words.</summary>
    public string Cited => Source == "common practice, no source" ? Source : $"{Source} ({Id})";
}

/// <summary>The rules that the code cites by their id.</summary>
public static class TradeRules
{
    private static readonly Lazy<ImmutableDictionary<string, TradeRule>> s_rules = new(() =>
        new[] { "drawer-rules.csv", "door-rules.csv", "top-rules.csv", "wood-rules.csv" }.SelectMany(CsvFacts.Read).ToImmutableDictionary(r => r["id"], r => new TradeRule(r["id"], r["rule"], r["figure"], r["basis"], r["source"])));

    private static readonly Lazy<ImmutableArray<(ExactLength Stock, ExactLength Screw, string Source)>> s_pocketScrews = new(() =>
        [.. CsvFacts.Read("pocket-screws.csv").Select(r => (CsvFacts.Length(r["stock"]), CsvFacts.Length(r["length"]), r["source"]))]);

    /// <summary>The rule of an id.</summary>
    /// <exception cref="KeyNotFoundException">There is none: a fault in the code.</exception>
    public static TradeRule Get(string id) => s_rules.Value[id];

    /// <summary>
    /// The pocket screw for stock of a thickness: the row of the nearest thickness, the thinner at a tie. Null when the stock is
    /// further than 3/32 in from any row.
    /// </summary>
    public static (ExactLength Screw, string Source)? PocketScrewFor(ExactLength stock)
    {
        (ExactLength Stock, ExactLength Screw, string Source) best = s_pocketScrews.Value.MinBy(r => ((r.Stock - stock).Abs(), r.Stock));
        return (best.Stock - stock).Abs() <= ExactLength.FromInches(Rational.Of(3, 32)) ? (best.Screw, best.Source) : null;
    }
}
