using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>
/// By how much a quantity moves when one that it is worked from moves by one: the sums followed down, each factor with its sign. A reading
/// ends the way, for what lies behind it no longer counts. Landing on the grid is taken as no change, which only the proof can settle.
/// </summary>
internal static class Sensitivity
{
    public static IReadOnlyDictionary<QuantityKey, Rational> Of(WorkedPiece piece, QuantityKey quantity)
    {
        var reach = new Dictionary<QuantityKey, Rational> { [quantity] = Rational.One };
        foreach (QuantityKey key in Outermost(piece, quantity))
        {
            foreach ((QuantityKey from, Rational factor) in Direct(piece, key))
                reach[from] = reach.GetValueOrDefault(from, 0) + (reach[key] * factor);
        }
        return reach;
    }

    /// <summary>All that it is worked from, each before what it is itself worked from.</summary>
    private static List<QuantityKey> Outermost(WorkedPiece piece, QuantityKey quantity)
    {
        var order = new List<QuantityKey>();
        var seen = new HashSet<QuantityKey>();
        var pending = new Stack<(QuantityKey Key, bool IsDone)>([(quantity, false)]);
        while (pending.TryPop(out (QuantityKey Key, bool IsDone) next))
        {
            if (next.IsDone) order.Add(next.Key);
            else if (seen.Add(next.Key))
            {
                pending.Push((next.Key, true));
                foreach ((QuantityKey from, _) in Direct(piece, next.Key)) pending.Push((from, false));
            }
        }
        order.Reverse();
        return order;
    }

    private static IEnumerable<(QuantityKey From, Rational Factor)> Direct(WorkedPiece piece, QuantityKey key)
    {
        if (!piece.Values.TryGetValue(key, out Worked? worked) || worked.Pin is not null) return [];
        return worked.Quantity.Working switch
        {
            Sum sum => from term in sum.Terms where term.Of is not null select (term.Of!.Value, term.Times * sum.Share),
            ToCut cut => [(cut.Exact, Rational.One)],
            // Only the one that decides moves the whole; at a tie the first.
            Extreme extreme => extreme.Of.Where(t => t.Of is not null && ValueOf(piece, t) == worked.Value).Take(1).Select(t => (t.Of!.Value, t.Times)),
            _ => [],
        };
    }

    private static ExactLength ValueOf(WorkedPiece piece, Term term) => (term.Figure?.Value ?? piece[term.Of!.Value]) * term.Times;
}
