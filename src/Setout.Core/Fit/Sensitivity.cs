using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>
/// By how much a quantity moves with each of those it is worked from, summed over all ways there. What is pinned by a reading or a fact ends the
/// way, for what lies behind it no longer counts. Of a least or a greatest the one that decides at the best values moves the whole. Landing on
/// the grid is taken as no change. It remembers what it unfolded.
/// </summary>
/// <param name="piece">The quantities with their values.</param>
internal sealed class Sensitivity(WorkedPiece piece)
{
    private readonly Dictionary<QuantityKey, ImmutableArray<(QuantityKey Key, Rational Times)>> _from = [];

    /// <summary>All that a quantity moves with, itself among it, through figures to cut and all.</summary>
    public Dictionary<QuantityKey, Rational> Of(QuantityKey quantity) => Of([(quantity, Rational.One)], throughFigures: true, []);

    /// <summary>All that a sum moves with. What cancels out is still there, zero times.</summary>
    /// <param name="sum">Each quantity so many times.</param>
    /// <param name="throughFigures">False to end the way at figures to cut: a person sets those, and they do not move by themselves.</param>
    /// <param name="ends">Where the way ends besides.</param>
    public Dictionary<QuantityKey, Rational> Of(ImmutableArray<(QuantityKey Key, Rational Times)> sum, bool throughFigures, ImmutableHashSet<QuantityKey> ends)
    {
        // In an order in which whoever uses a quantity comes before it, so that all ways are in before it is passed on.
        var order = new List<QuantityKey>();
        var seen = new HashSet<QuantityKey>();
        var pending = new Stack<(QuantityKey Key, bool Done)>();
        foreach ((QuantityKey key, Rational _) in sum) pending.Push((key, false));
        while (pending.TryPop(out (QuantityKey Key, bool Done) next))
        {
            if (next.Done)
            {
                order.Add(next.Key);
                continue;
            }
            if (!seen.Add(next.Key)) continue;
            pending.Push((next.Key, true));
            if (Ends(next.Key, throughFigures, ends)) continue;
            foreach ((QuantityKey from, Rational _) in From(next.Key)) pending.Push((from, false));
        }
        var times = new Dictionary<QuantityKey, Rational>();
        foreach ((QuantityKey key, Rational t) in sum) times[key] = times.GetValueOrDefault(key) + t;
        for (int i = order.Count - 1; i >= 0; i--)
        {
            if (!times.TryGetValue(order[i], out Rational own) || Ends(order[i], throughFigures, ends)) continue;
            foreach ((QuantityKey from, Rational t) in From(order[i])) times[from] = times.GetValueOrDefault(from) + (own * t);
        }
        return times;
    }

    /// <summary>True where nothing is looked for behind a quantity; the parameters are those of <see cref="Of(ImmutableArray{ValueTuple{QuantityKey, Rational}}, bool, ImmutableHashSet{QuantityKey})"/>.</summary>
    public bool Ends(QuantityKey key, bool throughFigures, ImmutableHashSet<QuantityKey> ends) =>
        ends.Contains(key) || !piece.Values.TryGetValue(key, out Worked? worked) || worked.Pin is not null || (!throughFigures && worked.Quantity.Working is ToCut);

    private ImmutableArray<(QuantityKey Key, Rational Times)> From(QuantityKey key)
    {
        if (_from.TryGetValue(key, out ImmutableArray<(QuantityKey, Rational)> known)) return known;
        return _from[key] = piece.Values[key].Quantity.Working switch
        {
            Sum sum => [.. sum.Terms.Where(t => t.Of is not null).Select(t => (t.Of!.Value, t.Times * sum.Share))],
            ToCut cut => [(cut.Exact, Rational.One)],
            Extreme extreme => Deciding(extreme),
            _ => [],
        };
    }

    private ImmutableArray<(QuantityKey, Rational)> Deciding(Extreme extreme)
    {
        ExactLength ValueOf(Term term) => (term.Figure?.Value ?? piece[term.Of!.Value]) * term.Times;
        Term best = extreme.IsLeast ? extreme.Of.MinBy(ValueOf)! : extreme.Of.MaxBy(ValueOf)!;
        return best.Of is { } of ? [(of, best.Times)] : [];
    }
}
