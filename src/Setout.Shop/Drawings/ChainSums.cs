using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Elevations;

namespace Setout.Shop.Drawings;

/// <summary>Whether the figures of chains add up as they are shown.</summary>
internal static class ChainSums
{
    /// <summary>True where parts that fill a whole on the same side add up to another figure than that of the whole, because each is rounded by itself.</summary>
    /// <param name="chains">The chains round a view.</param>
    /// <param name="format">How lengths are shown.</param>
    public static bool AreRoundedApart(ImmutableArray<ElevationChain> chains, LengthFormat format) =>
        chains.Any(c => c.Spans.Length > 1 && IsClosed(c) && chains.Any(o => o.Side == c.Side && o != c && o.Spans.Any(w => w.From == c.Spans[0].From && w.To == c.Spans[^1].To
            && c.Spans.Aggregate(ExactLength.Zero, (sum, s) => sum + Shown(s, format)) != Shown(w, format))));

    private static bool IsClosed(ElevationChain chain) => chain.Spans.Zip(chain.Spans.Skip(1)).All(p => p.First.To == p.Second.From);

    private static ExactLength Shown(ElevationSpan span, LengthFormat format)
    {
        ExactLength length = (span.To - span.From).ToExact();
        return length - format.Format(length).Residue;
    }
}
